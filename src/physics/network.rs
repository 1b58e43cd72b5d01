//! A small thermal network: nodes with heat capacity, conductances between them, boundaries and heat inputs.
//!
//! The topology is fixed; conductances, boundaries and inputs change from step to step. The plant house is one
//! instance of it, a published room another. Solving is a sparse LDLᵀ factorisation whose order and fill are worked
//! out once.

/// Most nodes that a network can have.
pub const MAX_NODES: usize = 12;

/// One value per node.
pub type NodeValues = [f64; MAX_NODES];

/// Water that can freeze, in a node of its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FreezingStore {
    /// Water, kg.
    pub mass_kg: f64,
    /// Specific heat of the liquid, J/(kg·K).
    pub liquid_j_per_kgk: f64,
    /// Specific heat of ice, J/(kg·K).
    pub ice_j_per_kgk: f64,
    /// Heat of fusion, J/kg.
    pub fusion_j_per_kg: f64,
}

/// A node of the network.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Node {
    /// A capacity in J/K; zero makes it algebraic.
    Capacity(f64),
    /// A well-mixed store of water that freezes at 0 °C.
    Water(FreezingStore),
}

/// A conductance between two nodes; its value is set per step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Link(usize);

/// One elimination: the node and the nodes that it still touches, with the slots of those couplings.
#[derive(Debug, Clone)]
struct Pivot {
    node: usize,
    /// (neighbour, slot of the coupling).
    neighbours: Vec<(usize, usize)>,
    /// (slot of a, slot of b, slot of a–b) for each pair of neighbours.
    fill: Vec<(usize, usize, usize)>,
}

/// The network.
#[derive(Debug, Clone)]
pub struct Network {
    pub(super) nodes: Vec<Node>,
    pivots: Vec<Pivot>,
    /// Per link: its two nodes and its slot.
    links: Vec<(usize, usize, usize)>,
    slots: usize,
    link_w_per_k: Vec<f64>,
    pub(super) boundary_w_per_k: NodeValues,
    /// Heat into each node from boundaries at 0 °C reference and inputs: Σ g·T + W.
    pub(super) source_w: NodeValues,
}

/// A factorised system, ready to solve.
#[derive(Debug, Clone, Copy)]
pub(super) struct Factor {
    inverse_diagonal: NodeValues,
    lower: [f64; MAX_SLOTS],
}

/// Couplings, fill included, that a network of [`MAX_NODES`] can have.
const MAX_SLOTS: usize = MAX_NODES * (MAX_NODES - 1) / 2;

impl Network {
    /// A network of these nodes with these links; `None` if there are more than [`MAX_NODES`] nodes or a link names a
    /// node that does not exist or the same node twice.
    #[must_use]
    pub fn new(nodes: &[Node], links: &[(usize, usize)]) -> Option<Self> {
        let valid = |&(a, b): &(usize, usize)| a < nodes.len() && b < nodes.len() && a != b;
        if nodes.len() > MAX_NODES || !links.iter().all(valid) {
            return None;
        }
        let mut slot_of = [[usize::MAX; MAX_NODES]; MAX_NODES];
        let mut slots = 0;
        let mut slot = |a: usize, b: usize| {
            if slot_of[a][b] == usize::MAX {
                slot_of[a][b] = slots;
                slot_of[b][a] = slots;
                slots += 1;
            }
            slot_of[a][b]
        };
        let placed: Vec<_> = links.iter().map(|&(a, b)| (a, b, slot(a, b))).collect();
        let pivots = elimination_order(nodes.len(), links)
            .into_iter()
            .map(|(node, touching)| Pivot {
                node,
                neighbours: touching.iter().map(|&n| (n, slot(node, n))).collect(),
                fill: pairs(&touching).map(|(a, b)| (slot(node, a), slot(node, b), slot(a, b))).collect(),
            })
            .collect();
        Some(Self {
            nodes: nodes.to_vec(),
            pivots,
            link_w_per_k: vec![0.0; placed.len()],
            links: placed,
            slots,
            boundary_w_per_k: [0.0; MAX_NODES],
            source_w: [0.0; MAX_NODES],
        })
    }

    /// Number of nodes.
    #[must_use]
    pub fn len(&self) -> usize {
        self.nodes.len()
    }

    /// Whether there are no nodes.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.nodes.is_empty()
    }

    /// The link at this place of the list given to [`Network::new`]; `None` beyond it.
    #[must_use]
    pub fn link(&self, index: usize) -> Option<Link> {
        (index < self.links.len()).then_some(Link(index))
    }

    /// Sets a conductance, W/K.
    pub fn set_link(&mut self, link: Link, w_per_k: f64) {
        self.link_w_per_k[link.0] = w_per_k;
    }

    /// Clears all boundaries and inputs.
    pub fn clear_sources(&mut self) {
        self.boundary_w_per_k = [0.0; MAX_NODES];
        self.source_w = [0.0; MAX_NODES];
    }

    /// Adds a conductance to a boundary of this temperature, W/K and °C.
    pub fn add_boundary(&mut self, node: usize, w_per_k: f64, boundary_c: f64) {
        self.boundary_w_per_k[node] += w_per_k;
        self.source_w[node] += w_per_k * boundary_c;
    }

    /// Adds a heat input, W.
    pub fn add_input(&mut self, node: usize, w: f64) {
        self.source_w[node] += w;
    }

    /// Sets a node's boundaries and inputs at once: Σ g in W/K and Σ g·T + inputs in W.
    pub fn set_node(&mut self, node: usize, boundary_w_per_k: f64, source_w: f64) {
        self.boundary_w_per_k[node] = boundary_w_per_k;
        self.source_w[node] = source_w;
    }

    /// Heat that flows into a node from links, boundaries and inputs at these temperatures, W.
    #[must_use]
    pub fn net_flow_w(&self, node: usize, temperatures: &NodeValues) -> f64 {
        let mut flow = self.source_w[node] - self.boundary_w_per_k[node] * temperatures[node];
        for (&(a, b, _), &g) in self.links.iter().zip(&self.link_w_per_k) {
            if a == node {
                flow += g * (temperatures[b] - temperatures[a]);
            } else if b == node {
                flow += g * (temperatures[a] - temperatures[b]);
            }
        }
        flow
    }

    /// Factorises `diag(extra) + K`, K the conductance matrix with its boundaries.
    pub(super) fn factorise(&self, extra_w_per_k: &NodeValues) -> Factor {
        let mut diagonal = [0.0; MAX_NODES];
        for ((d, extra), boundary) in diagonal.iter_mut().zip(extra_w_per_k).zip(&self.boundary_w_per_k) {
            *d = extra + boundary;
        }
        let mut lower = [0.0; MAX_SLOTS];
        for (&(a, b, slot), &g) in self.links.iter().zip(&self.link_w_per_k) {
            diagonal[a] += g;
            diagonal[b] += g;
            lower[slot] -= g;
        }
        let mut inverse_diagonal = [0.0; MAX_NODES];
        for pivot in &self.pivots {
            // A node without any tie keeps its temperature: its row is 0 = 0.
            let inverse = if diagonal[pivot.node] > 0.0 { 1.0 / diagonal[pivot.node] } else { 0.0 };
            inverse_diagonal[pivot.node] = inverse;
            for &(a, b, ab) in &pivot.fill {
                lower[ab] -= lower[a] * inverse * lower[b];
            }
            for &(node, slot) in &pivot.neighbours {
                let coupling = lower[slot];
                lower[slot] = coupling * inverse;
                diagonal[node] -= coupling * lower[slot];
            }
        }
        Factor { inverse_diagonal, lower }
    }

    /// Solves the factorised system in place: right-hand side in, temperatures out.
    pub(super) fn solve(&self, factor: &Factor, values: &mut NodeValues) {
        for pivot in &self.pivots {
            let value = values[pivot.node];
            for &(node, slot) in &pivot.neighbours {
                values[node] -= factor.lower[slot] * value;
            }
        }
        for pivot in self.pivots.iter().rev() {
            let mut value = values[pivot.node] * factor.inverse_diagonal[pivot.node];
            for &(node, slot) in &pivot.neighbours {
                value -= factor.lower[slot] * values[node];
            }
            values[pivot.node] = value;
        }
    }

    /// Couplings including fill, for tests.
    #[must_use]
    pub fn couplings(&self) -> usize {
        self.slots
    }

    /// Steady temperatures with some nodes held: `held` gives the temperature of the nodes that are.
    ///
    /// A node without any tie comes out at 0 °C.
    #[must_use]
    pub fn steady(&self, held: &[(usize, f64)]) -> NodeValues {
        let mut extra = [0.0; MAX_NODES];
        let mut values = self.source_w;
        for &(node, t_c) in held {
            extra[node] = HOLD_W_PER_K;
            values[node] += HOLD_W_PER_K * t_c;
        }
        let factor = self.factorise(&extra);
        self.solve(&factor, &mut values);
        for &(node, t_c) in held {
            values[node] = t_c;
        }
        values
    }
}

/// Conductance that stands for "held at": 1e12 times a strong coupling, so the held node moves less than 1e-9 K.
pub(super) const HOLD_W_PER_K: f64 = 1e15;

fn pairs(nodes: &[usize]) -> impl Iterator<Item = (usize, usize)> + '_ {
    nodes.iter().enumerate().flat_map(|(i, &a)| nodes[i + 1..].iter().map(move |&b| (a, b)))
}

/// Minimum-degree order: each node with the not yet eliminated nodes that it touches then, fill included.
fn elimination_order(count: usize, links: &[(usize, usize)]) -> Vec<(usize, Vec<usize>)> {
    let mut touches = [[false; MAX_NODES]; MAX_NODES];
    for &(a, b) in links {
        touches[a][b] = true;
        touches[b][a] = true;
    }
    let mut left: Vec<usize> = (0..count).collect();
    let mut order = Vec::with_capacity(count);
    while let Some(&node) = left.iter().min_by_key(|&&n| left.iter().filter(|&&m| touches[n][m]).count()) {
        left.retain(|&n| n != node);
        let touching: Vec<usize> = left.iter().copied().filter(|&n| touches[node][n]).collect();
        for (a, b) in pairs(&touching) {
            touches[a][b] = true;
            touches[b][a] = true;
        }
        order.push((node, touching));
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_mesh_solves_like_gaussian_elimination() {
        // Four nodes all linked: the answer of a dense solve, checked by putting it back into the equations.
        let nodes = [Node::Capacity(0.0); 4];
        let links = [(0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3)];
        let mut network = Network::new(&nodes, &links).expect("valid network");
        for i in 0..links.len() {
            let link = network.link(i).expect("link");
            network.set_link(link, 1.0 + i as f64);
        }
        network.add_boundary(0, 5.0, -10.0);
        network.add_boundary(3, 2.0, 4.0);
        network.add_input(2, 70.0);
        let t = network.steady(&[]);
        for node in 0..4 {
            assert!(network.net_flow_w(node, &t).abs() < 1e-9, "node {node}");
        }
    }

    #[test]
    fn a_chain_needs_no_fill() {
        let network = Network::new(&[Node::Capacity(1.0); 5], &[(0, 1), (1, 2), (2, 3), (3, 4)]).expect("valid");
        assert_eq!(network.couplings(), 4);
    }

    #[test]
    fn wrong_links_are_refused() {
        assert!(Network::new(&[Node::Capacity(1.0)], &[(0, 0)]).is_none());
        assert!(Network::new(&[Node::Capacity(1.0)], &[(0, 1)]).is_none());
        assert!(Network::new(&[Node::Capacity(1.0); 13], &[]).is_none());
    }
}
