//! The network's matrix in LDLᵀ form, ready to solve, and the forms of the last few matrices.
//!
//! From step to step only the ties of the last node change as a rule: its column stands last in the elimination, so
//! that all others are kept and one pivot is made anew.

use super::network::{MAX_NODES, Network, NodeValues};

/// A symmetric matrix of at most [`MAX_NODES`] rows in LDLᵀ form.
#[derive(Debug, Clone, Copy)]
pub(super) struct Factor {
    inverse_diagonal: NodeValues,
    /// Below the diagonal.
    lower: [NodeValues; MAX_NODES],
}

// Indices follow the textbook's matrix notation, and plain ranges let the compiler write the loops out.
#[allow(clippy::needless_range_loop, clippy::range_plus_one)]
impl Factor {
    /// Factorises a symmetric positive matrix, of which the part on and below the diagonal is read, and leaves there
    /// what remained of each diagonal element before it became a pivot.
    ///
    /// A row of zeros belongs to a node without any tie: it solves to zero.
    fn of<const N: usize>(matrix: &mut [[f64; N]; N]) -> Self {
        let mut factor = Self { inverse_diagonal: [0.0; MAX_NODES], lower: [[0.0; MAX_NODES]; MAX_NODES] };
        for k in 0..N {
            let inverse = inverse_of(matrix[k][k]);
            factor.inverse_diagonal[k] = inverse;
            for i in k + 1..N {
                let lower = matrix[i][k] * inverse;
                factor.lower[i][k] = lower;
                for j in k + 1..i + 1 {
                    matrix[i][j] -= lower * matrix[j][k];
                }
            }
        }
        factor
    }

    /// Solves for `L` right-hand sides of `N` nodes at once, in place.
    pub(super) fn solve<const N: usize, const L: usize>(&self, values: &mut [[f64; L]; N]) {
        for k in 0..N {
            for i in k + 1..N {
                for l in 0..L {
                    values[i][l] -= self.lower[i][k] * values[k][l];
                }
            }
        }
        for k in (0..N).rev() {
            for l in 0..L {
                values[k][l] *= self.inverse_diagonal[k];
            }
            for i in k + 1..N {
                for l in 0..L {
                    values[k][l] -= self.lower[i][k] * values[i][l];
                }
            }
        }
    }
}

fn inverse_of(pivot: f64) -> f64 {
    if pivot > 0.0 { 1.0 / pivot } else { 0.0 }
}

/// A factorised matrix and what it was made from, the last node's own ties excepted.
#[derive(Debug, Clone)]
struct Kept {
    ties: u64,
    extra_w_per_k: NodeValues,
    /// What links and eliminated nodes leave of the last diagonal element, W/K.
    rest_w_per_k: f64,
    factor: Factor,
}

impl Kept {
    fn new<const N: usize>(network: &Network, extra_w_per_k: &NodeValues) -> Self {
        let last = last_node(network);
        let mut matrix = network.link_matrix::<N>();
        for (node, row) in matrix.iter_mut().enumerate().take(last) {
            row[node] += extra_w_per_k[node] + network.boundary_w_per_k(node);
        }
        let factor = Factor::of(&mut matrix);
        let rest_w_per_k = matrix.get(last).map_or(0.0, |row| row[last]);
        Self { ties: network.ties(), extra_w_per_k: *extra_w_per_k, rest_w_per_k, factor }
    }

    fn serves(&self, network: &Network, extra_w_per_k: &NodeValues) -> bool {
        let last = last_node(network);
        self.ties == network.ties() && self.extra_w_per_k[..last] == extra_w_per_k[..last]
    }

    /// Puts the last node's own ties in.
    fn complete(&mut self, network: &Network, extra_w_per_k: &NodeValues) {
        let last = last_node(network);
        let own_w_per_k = extra_w_per_k[last] + network.boundary_w_per_k(last);
        self.factor.inverse_diagonal[last] = inverse_of(own_w_per_k + self.rest_w_per_k);
    }
}

fn last_node(network: &Network) -> usize {
    network.len().saturating_sub(1)
}

/// `diag(extra) + K` of the first `N` nodes in factorised form, K the conductance matrix with its boundaries. `N` must
/// be the number of nodes or more; rows beyond them are zero.
pub(super) fn factorise<const N: usize>(network: &Network, extra_w_per_k: &NodeValues) -> Factor {
    let mut made = Kept::new::<N>(network, extra_w_per_k);
    made.complete(network, extra_w_per_k);
    made.factor
}

/// Matrices that are kept: the steps of an hour by day and by night, with some to spare.
const SLOTS: usize = 8;

/// The factors of one network's last few matrices. Never to be used with another network.
#[derive(Debug, Clone, Default)]
pub(super) struct Factors {
    kept: Vec<Kept>,
    oldest: usize,
}

impl Factors {
    /// As [`factorise`], from what is kept if it serves.
    pub(super) fn of<const N: usize>(&mut self, network: &Network, extra_w_per_k: &NodeValues) -> &Factor {
        let found = self.kept.iter().position(|kept| kept.serves(network, extra_w_per_k));
        let slot = found.unwrap_or_else(|| self.keep(Kept::new::<N>(network, extra_w_per_k)));
        let kept = &mut self.kept[slot];
        kept.complete(network, extra_w_per_k);
        &kept.factor
    }

    /// Keeps a matrix in the place of the oldest; gives its slot.
    fn keep(&mut self, kept: Kept) -> usize {
        if self.kept.len() < SLOTS {
            self.kept.push(kept);
            return self.kept.len() - 1;
        }
        let slot = self.oldest;
        self.kept[slot] = kept;
        self.oldest = (slot + 1) % SLOTS;
        slot
    }
}

#[cfg(test)]
mod tests {
    use crate::physics::network::{Network, Node};
    use crate::physics::step::{State, Stepper, Thermostat};

    #[test]
    fn what_is_kept_gives_the_same_bits_as_a_fresh_start() {
        let nodes = [Node::Capacity(4e6), Node::Capacity(3e4), Node::Capacity(0.0), Node::Capacity(6e4)];
        let mut network = Network::new(&nodes, &[(0, 1), (1, 3), (2, 3), (0, 3)]).expect("valid network");
        for link in 0..4 {
            network.set_link(network.link(link).expect("link"), 20.0 + link as f64);
        }
        let mut kept = Stepper::new(network);
        let mut state = State::uniform(kept.network(), 9.0);
        let heater = Thermostat { node: 1, setpoint_c: 8.0, min_w: 0.0, max_w: 900.0 };
        for hour in 0..60_u32 {
            let network = kept.network_mut();
            // The last node's tie moves each time, a link now and then, another node's boundary once.
            network.set_node(3, 50.0 + f64::from(hour % 7), -300.0);
            network.set_node(0, if hour < 40 { 5.0 } else { 6.0 }, 30.0);
            let link = network.link(1).expect("link");
            network.set_link(link, if hour % 24 < 8 { 12.0 } else { 21.0 });
            for dt_s in [600.0, 1200.0, 1800.0] {
                let mut fresh = Stepper::new(kept.network().clone());
                assert_eq!(kept.steady(&[(1, 5.0)]), fresh.steady(&[(1, 5.0)]), "hour {hour}");
                let step = kept.advance_switching(&state, dt_s, &[heater]);
                assert_eq!(step, fresh.advance_switching(&state, dt_s, &[heater]), "hour {hour}");
                state = step.end;
            }
        }
    }
}
