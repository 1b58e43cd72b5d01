//! Steps a thermal network through time: a singly diagonally implicit Runge–Kutta method, thermostats, freezing.
//!
//! Conductances, boundaries and inputs are constant over a step; it is cut where water freezes or thaws and, if
//! wanted, where a thermostat begins to hold. Flows over the step follow from the mean
//! temperatures that the method itself weights, so the books of heat close to rounding.

use super::factor::{Factor, Factors, factorise};
use super::freezing::{Phase, first_phase_change, phase, settle_phases};
use super::network::{HOLD_W_PER_K, MAX_NODES, Network, Node, NodeValues};
use super::switching::first_switch;

/// Diagonal coefficient γ of the method: L-stable, third order.
///
/// # References
/// R. Alexander, Diagonally implicit Runge–Kutta methods for stiff O.D.E.'s, SIAM J. Numer. Anal. 14 (1977) 1006.
const GAMMA: f64 = 0.435_866_521_508_459;
const B1: f64 = -1.5 * GAMMA * GAMMA + 4.0 * GAMMA - 0.25;
const B2: f64 = 1.5 * GAMMA * GAMMA - 5.0 * GAMMA + 1.25;
/// Weights of earlier stages' slopes times γh, one row per stage.
const STAGES: [[f64; 2]; 3] = [[0.0, 0.0], [(1.0 - GAMMA) / 2.0 / GAMMA, 0.0], [B1 / GAMMA, B2 / GAMMA]];
/// Weights of the stages in the mean over the step.
const WEIGHTS: [f64; 3] = [B1, B2, GAMMA];

/// Temperatures and ice of all nodes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct State {
    /// °C.
    pub temperature_c: NodeValues,
    /// Share of a water node that is ice, 0 to 1.
    pub ice_share: NodeValues,
}

impl State {
    /// All nodes at one temperature; water is liquid and not below 0 °C.
    #[must_use]
    pub fn uniform(network: &Network, t_c: f64) -> Self {
        let mut temperature_c = [t_c; MAX_NODES];
        for (t, node) in temperature_c.iter_mut().zip(&network.nodes) {
            if matches!(node, Node::Water(_)) {
                *t = t.max(0.0);
            }
        }
        Self { temperature_c, ice_share: [0.0; MAX_NODES] }
    }

    /// Heat that a node holds above liquid water or matter at 0 °C, J.
    #[must_use]
    pub fn enthalpy_j(&self, network: &Network, node: usize) -> f64 {
        match network.nodes[node] {
            Node::Capacity(c) => c * self.temperature_c[node],
            Node::Water(water) => {
                let (t, ice) = (self.temperature_c[node], self.ice_share[node]);
                let specific = if ice >= 1.0 { water.ice_j_per_kgk } else { water.liquid_j_per_kgk };
                water.mass_kg * (specific * t - ice * water.fusion_j_per_kg)
            }
        }
    }
}

/// A heater with an ideal thermostat on its own node: the power that ends the step at setpoint, within its range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thermostat {
    /// Node that is heated and sensed.
    pub node: usize,
    /// °C.
    pub setpoint_c: f64,
    /// Least power, W: zero for a heater, negative for a cooler.
    pub min_w: f64,
    /// Most power, W.
    pub max_w: f64,
}

/// Thermostats that one step can have.
pub const MAX_THERMOSTATS: usize = 2;

/// What one step gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// State at its end.
    pub end: State,
    /// Mean temperatures over it, °C.
    pub mean_c: NodeValues,
    /// Mean power of each thermostat, W.
    pub heater_w: [f64; MAX_THERMOSTATS],
}

/// Pieces of one step that is cut where water freezes or thaws and where a thermostat begins to hold; more than they
/// need as a rule.
const MAX_PIECES: usize = 8;
/// Smallest share of a step that it is cut at.
pub(super) const SMALLEST_PIECE: f64 = 1e-3;

/// Advances the network by `dt_s` seconds; each thermostat has one power over the step, which is cut only where water
/// freezes or thaws. More than [`MAX_THERMOSTATS`] thermostats are cut to that number.
#[must_use]
pub fn advance(network: &Network, start: &State, dt_s: f64, thermostats: &[Thermostat]) -> Step {
    let whole = linear_step(network, None, start, dt_s, thermostats);
    finished(network, start, dt_s, thermostats, whole, first_phase_change)
}

/// A network that is stepped and solved again and again: it keeps what did not change since.
#[derive(Debug, Clone)]
pub struct Stepper {
    /// The network.
    network: Network,
    factors: Factors,
}

impl Stepper {
    /// A stepper of this network.
    #[must_use]
    pub fn new(network: Network) -> Self {
        Self { network, factors: Factors::default() }
    }

    /// The network.
    #[must_use]
    pub fn network(&self) -> &Network {
        &self.network
    }

    /// The network, to change its conductances, boundaries and inputs.
    pub fn network_mut(&mut self) -> &mut Network {
        &mut self.network
    }

    /// As [`advance`], but the step is cut as well where a thermostat reaches its setpoint from a distance, so that it
    /// begins to hold there.
    #[must_use]
    pub fn advance_switching(&mut self, start: &State, dt_s: f64, thermostats: &[Thermostat]) -> Step {
        let whole = linear_step(&self.network, Some(&mut self.factors), start, dt_s, thermostats);
        finished(&self.network, start, dt_s, thermostats, whole, first_event)
    }

    /// As [`Network::steady`].
    #[must_use]
    pub fn steady(&mut self, held: &[(usize, f64)]) -> NodeValues {
        self.network.steady_with(&mut self.factors, held)
    }
}

/// Tells at which share of a piece it is to be cut.
type FindCut = fn(&Network, &State, &Step, &[Thermostat], f64) -> Option<f64>;

/// The step, cut where it must be.
fn finished(
    network: &Network,
    start: &State,
    dt_s: f64,
    thermostats: &[Thermostat],
    mut whole: Step,
    find_cut: FindCut,
) -> Step {
    match find_cut(network, start, &whole, thermostats, dt_s) {
        None => {
            settle_phases(network, start, &mut whole, thermostats, dt_s);
            whole
        }
        Some(share) => in_pieces(network, start, dt_s, thermostats, share, find_cut),
    }
}

fn in_pieces(
    network: &Network,
    start: &State,
    dt_s: f64,
    thermostats: &[Thermostat],
    first_share: f64,
    find_cut: FindCut,
) -> Step {
    let mut done = Step { end: *start, mean_c: [0.0; MAX_NODES], heater_w: [0.0; MAX_THERMOSTATS] };
    let mut left_s = dt_s;
    let mut share = Some(first_share);
    for cut in 1..=MAX_PIECES {
        let piece_of = |piece_s| linear_step(network, None, &done.end, piece_s, thermostats);
        let (mut piece, piece_s) = match share.take() {
            Some(share) => (piece_of(left_s * share), left_s * share),
            None => {
                let rest = piece_of(left_s);
                match find_cut(network, &done.end, &rest, thermostats, left_s) {
                    Some(share) if cut < MAX_PIECES => (piece_of(left_s * share), left_s * share),
                    _ => (rest, left_s),
                }
            }
        };
        settle_phases(network, &done.end, &mut piece, thermostats, piece_s);
        let weight = piece_s / dt_s;
        for (sum, mean) in done.mean_c.iter_mut().zip(&piece.mean_c) {
            *sum += weight * mean;
        }
        for (sum, w) in done.heater_w.iter_mut().zip(&piece.heater_w) {
            *sum += weight * w;
        }
        done.end = piece.end;
        left_s -= piece_s;
        if left_s <= 0.0 {
            break;
        }
    }
    done
}

/// Share of the piece at which water first freezes or thaws or a thermostat first begins to hold.
fn first_event(
    network: &Network,
    start: &State,
    piece: &Step,
    thermostats: &[Thermostat],
    piece_s: f64,
) -> Option<f64> {
    let freezes = first_phase_change(network, start, piece, thermostats, piece_s);
    let switches = first_switch(network, start, piece, thermostats, piece_s);
    freezes.into_iter().chain(switches).reduce(f64::min)
}

/// One step without phase change inside: water that is partly ice is held at 0 °C.
pub(super) fn linear_step(
    network: &Network,
    factors: Option<&mut Factors>,
    start: &State,
    dt_s: f64,
    thermostats: &[Thermostat],
) -> Step {
    match network.len() {
        0..=2 => sized_step::<2>(network, factors, start, dt_s, thermostats),
        3 => sized_step::<3>(network, factors, start, dt_s, thermostats),
        4 => sized_step::<4>(network, factors, start, dt_s, thermostats),
        5 => sized_step::<5>(network, factors, start, dt_s, thermostats),
        6 => sized_step::<6>(network, factors, start, dt_s, thermostats),
        _ => sized_step::<MAX_NODES>(network, factors, start, dt_s, thermostats),
    }
}

/// [`linear_step`] of at most `N` nodes.
fn sized_step<const N: usize>(
    network: &Network,
    factors: Option<&mut Factors>,
    start: &State,
    dt_s: f64,
    thermostats: &[Thermostat],
) -> Step {
    let stage_s = GAMMA * dt_s;
    let mut storage = [0.0; N];
    let mut extra = [0.0; MAX_NODES];
    for (i, node) in network.nodes.iter().enumerate().take(N) {
        let capacity = match *node {
            Node::Capacity(c) => c,
            Node::Water(water) => match phase(start.ice_share[i]) {
                Phase::Freezing => {
                    extra[i] = HOLD_W_PER_K;
                    continue;
                }
                Phase::Liquid => water.mass_kg * water.liquid_j_per_kgk,
                Phase::Ice => water.mass_kg * water.ice_j_per_kgk,
            },
        };
        storage[i] = capacity / stage_s;
        extra[i] = storage[i];
    }
    let once;
    let factor = match factors {
        Some(factors) => factors.of::<N>(network, &extra),
        None => {
            once = factorise::<N>(network, &extra);
            &once
        }
    };
    let stages = Stages { network, factor, storage: &storage };
    let mut step = match thermostats {
        [] => stages.run::<1>(start, &[]),
        [one] => stages.run::<2>(start, &[*one]),
        [first, second, ..] => stages.run::<3>(start, &[*first, *second]),
    };
    for (i, extra) in extra.iter().enumerate() {
        if *extra == HOLD_W_PER_K {
            step.end.temperature_c[i] = 0.0;
            step.mean_c[i] = 0.0;
        }
    }
    step
}

struct Stages<'a, const N: usize> {
    network: &'a Network,
    factor: &'a Factor,
    /// C/(γ h) per node.
    storage: &'a [f64; N],
}

impl<const N: usize> Stages<'_, N> {
    /// The step. Its first lane is the free step, each further one the response to one watt of a thermostat.
    fn run<const L: usize>(&self, start: &State, thermostats: &[Thermostat]) -> Step {
        let mut source = first_lanes::<N, L>(&self.network.source_w);
        for (lane, thermostat) in (1..L).zip(thermostats) {
            source[thermostat.node][lane] = 1.0;
        }
        let from = first_lanes::<N, L>(&start.temperature_c);
        let mut slopes = [[[0.0; L]; N]; 2];
        let mut stage = [[0.0; L]; N];
        let mut mean = [[0.0; L]; N];
        for (s, weights) in STAGES.iter().enumerate() {
            let mut base = [[0.0; L]; N];
            for i in 0..N {
                for l in 0..L {
                    // Slopes are kept as K per γh, hence the division by γ in the weights.
                    base[i][l] = from[i][l] + weights[0] * slopes[0][i][l] + weights[1] * slopes[1][i][l];
                    stage[i][l] = self.storage[i] * base[i][l] + source[i][l];
                }
            }
            self.factor.solve(&mut stage);
            for i in 0..N {
                for l in 0..L {
                    mean[i][l] += WEIGHTS[s] * stage[i][l];
                    if s < 2 {
                        let slope = stage[i][l] - base[i][l];
                        slopes[s][i][l] = if self.storage[i] > 0.0 { slope } else { 0.0 };
                    }
                }
            }
        }
        let heater_w = powers(&stage, thermostats);
        let end = State { temperature_c: combined(&stage, &heater_w), ice_share: start.ice_share };
        Step { end, mean_c: combined(&mean, &heater_w), heater_w }
    }
}

/// The first `N` nodes' values in the first of `L` lanes.
fn first_lanes<const N: usize, const L: usize>(values: &NodeValues) -> [[f64; L]; N] {
    let mut lanes = [[0.0; L]; N];
    for (lanes, value) in lanes.iter_mut().zip(values) {
        if let Some(first) = lanes.first_mut() {
            *first = *value;
        }
    }
    lanes
}

/// The first lane and each further one times its power, zeros beyond the `N` nodes.
fn combined<const N: usize, const L: usize>(lanes: &[[f64; L]; N], heater_w: &[f64; MAX_THERMOSTATS]) -> NodeValues {
    let mut values = [0.0; MAX_NODES];
    for (value, lanes) in values.iter_mut().zip(lanes) {
        *value = lanes[0] + lanes[1..].iter().zip(heater_w).map(|(response, w)| response * w).sum::<f64>();
    }
    values
}

/// Each thermostat's power from the ends of all lanes: projected Gauss–Seidel, exact for one thermostat and for two on
/// the same node, converging for two that feel each other.
fn powers<const N: usize, const L: usize>(end: &[[f64; L]; N], thermostats: &[Thermostat]) -> [f64; MAX_THERMOSTATS] {
    let mut power = [0.0; MAX_THERMOSTATS];
    let passes = if thermostats.len() > 1 { CONTROL_PASSES } else { 1 };
    for _ in 0..passes {
        let before = power;
        for (i, thermostat) in thermostats.iter().enumerate() {
            let lanes = &end[thermostat.node];
            let response = lanes[i + 1];
            let others: f64 = (0..thermostats.len()).filter(|j| *j != i).map(|j| lanes[j + 1] * power[j]).sum();
            let missing_k = thermostat.setpoint_c - lanes[0] - others;
            let wanted = if response > RESPONSE_FLOOR {
                missing_k / response
            } else if missing_k > 0.0 {
                thermostat.max_w
            } else {
                thermostat.min_w
            };
            power[i] = wanted.clamp(thermostat.min_w, thermostat.max_w.max(thermostat.min_w));
        }
        if before == power {
            break;
        }
    }
    power
}

/// Sweeps over two thermostats before the step is taken as it is; each sweep gains orders of magnitude.
const CONTROL_PASSES: usize = 60;
/// Below this response, K per W, a node cannot be moved: it is held at its freezing point.
const RESPONSE_FLOOR: f64 = 1e-12;
