//! Steps a thermal network through time: a singly diagonally implicit Runge–Kutta method, thermostats, freezing.
//!
//! Conductances, boundaries and inputs are constant over a step; it is cut where water freezes or thaws and, if
//! wanted, where a thermostat begins to hold. Flows over the step follow from the mean
//! temperatures that the method itself weights, so the books of heat close to rounding.

use super::freezing::{Phase, first_phase_change, keeps_phases, phase, settle_phases};
use super::network::{Factor, HOLD_W_PER_K, MAX_NODES, Network, Node, NodeValues};
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
    let whole = linear_step(network, start, dt_s, thermostats);
    if keeps_phases(network, start, &whole) {
        whole
    } else {
        in_pieces(network, start, dt_s, thermostats, whole, first_phase_change)
    }
}

/// As [`advance`], but the step is cut as well where a thermostat reaches its setpoint from a distance, so that it
/// begins to hold there.
#[must_use]
pub fn advance_switching(network: &Network, start: &State, dt_s: f64, thermostats: &[Thermostat]) -> Step {
    let whole = linear_step(network, start, dt_s, thermostats);
    if keeps_phases(network, start, &whole) && first_switch(network, start, &whole, thermostats, dt_s).is_none() {
        whole
    } else {
        in_pieces(network, start, dt_s, thermostats, whole, first_event)
    }
}

/// Tells at which share of a piece it is to be cut.
type FindCut = fn(&Network, &State, &Step, &[Thermostat], f64) -> Option<f64>;

fn in_pieces(
    network: &Network,
    start: &State,
    dt_s: f64,
    thermostats: &[Thermostat],
    whole: Step,
    find_cut: FindCut,
) -> Step {
    let mut state = *start;
    let mut mean_c = [0.0; MAX_NODES];
    let mut heater_w = [0.0; MAX_THERMOSTATS];
    let mut left_s = dt_s;
    let mut piece = whole;
    for cut in 1..=MAX_PIECES {
        let mut piece_s = left_s;
        if cut < MAX_PIECES
            && let Some(share) = find_cut(network, &state, &piece, thermostats, left_s)
        {
            piece_s = left_s * share;
            piece = linear_step(network, &state, piece_s, thermostats);
        }
        settle_phases(network, &state, &mut piece, thermostats, piece_s);
        let weight = piece_s / dt_s;
        for (sum, mean) in mean_c.iter_mut().zip(&piece.mean_c) {
            *sum += weight * mean;
        }
        for (sum, w) in heater_w.iter_mut().zip(&piece.heater_w) {
            *sum += weight * w;
        }
        state = piece.end;
        left_s -= piece_s;
        if left_s <= 0.0 {
            break;
        }
        piece = linear_step(network, &state, left_s, thermostats);
    }
    Step { end: state, mean_c, heater_w }
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

/// End and mean of a step for one right-hand side.
#[derive(Clone, Copy)]
struct Response {
    end: NodeValues,
    mean: NodeValues,
}

/// One step without phase change inside: water that is partly ice is held at 0 °C.
pub(super) fn linear_step(network: &Network, start: &State, dt_s: f64, thermostats: &[Thermostat]) -> Step {
    match network.len() {
        0..=2 => sized_step::<2>(network, start, dt_s, thermostats),
        3 => sized_step::<3>(network, start, dt_s, thermostats),
        4 => sized_step::<4>(network, start, dt_s, thermostats),
        5 => sized_step::<5>(network, start, dt_s, thermostats),
        6 => sized_step::<6>(network, start, dt_s, thermostats),
        _ => sized_step::<MAX_NODES>(network, start, dt_s, thermostats),
    }
}

/// [`linear_step`] of at most `N` nodes.
fn sized_step<const N: usize>(network: &Network, start: &State, dt_s: f64, thermostats: &[Thermostat]) -> Step {
    let stage_s = GAMMA * dt_s;
    let mut storage = [0.0; MAX_NODES];
    let mut held = [0.0; MAX_NODES];
    for (i, node) in network.nodes.iter().enumerate() {
        match *node {
            Node::Capacity(c) => storage[i] = c / stage_s,
            Node::Water(water) => match phase(start.ice_share[i]) {
                Phase::Freezing => held[i] = HOLD_W_PER_K,
                Phase::Liquid => storage[i] = water.mass_kg * water.liquid_j_per_kgk / stage_s,
                Phase::Ice => storage[i] = water.mass_kg * water.ice_j_per_kgk / stage_s,
            },
        }
    }
    let mut extra = storage;
    for (e, h) in extra.iter_mut().zip(&held) {
        *e += h;
    }
    let factor = network.factorise::<N>(&extra);
    let stages = Stages { network, factor: &factor, storage: &storage };
    let (mut response, heater_w) = match thermostats {
        [] => {
            let [free] = stages.run(start, []);
            (free, [0.0; MAX_THERMOSTATS])
        }
        [one] => {
            let [free, unit] = stages.run(start, [one.node]);
            controlled(free, &[(*one, unit)])
        }
        [first, second, ..] => {
            let [free, a, b] = stages.run(start, [first.node, second.node]);
            controlled(free, &[(*first, a), (*second, b)])
        }
    };
    for (i, h) in held.iter().enumerate() {
        if *h > 0.0 {
            response.end[i] = 0.0;
            response.mean[i] = 0.0;
        }
    }
    let end = State { temperature_c: response.end, ice_share: start.ice_share };
    Step { end, mean_c: response.mean, heater_w }
}

struct Stages<'a, const N: usize> {
    network: &'a Network,
    factor: &'a Factor<N>,
    /// C/(γ h) per node.
    storage: &'a NodeValues,
}

impl<const N: usize> Stages<'_, N> {
    /// The free step first, then the response to one watt on each heated node.
    fn run<const H: usize, const L: usize>(&self, start: &State, heated: [usize; H]) -> [Response; L] {
        let mut source = first_lanes::<N, L>(&self.network.source_w);
        for (lane, node) in (1..L).zip(heated) {
            source[node][lane] = 1.0;
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
        std::array::from_fn(|l| Response { end: lane(&stage, l), mean: lane(&mean, l) })
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

/// One lane, zeros beyond the `N` nodes.
fn lane<const N: usize, const L: usize>(values: &[[f64; L]; N], l: usize) -> NodeValues {
    let mut of_lane = [0.0; MAX_NODES];
    for (to, from) in of_lane.iter_mut().zip(values) {
        *to = from[l];
    }
    of_lane
}

/// Finds each thermostat's power and adds its response: projected Gauss–Seidel, exact for one thermostat and for two
/// on the same node, converging for two that feel each other.
fn controlled(free: Response, heated: &[(Thermostat, Response)]) -> (Response, [f64; MAX_THERMOSTATS]) {
    let mut power = [0.0; MAX_THERMOSTATS];
    let passes = if heated.len() > 1 { CONTROL_PASSES } else { 1 };
    for _ in 0..passes {
        let before = power;
        for (i, (thermostat, own)) in heated.iter().enumerate() {
            let node = thermostat.node;
            let others: f64 = heated
                .iter()
                .zip(&power)
                .enumerate()
                .filter(|(j, _)| *j != i)
                .map(|(_, ((_, unit), p))| unit.end[node] * p)
                .sum();
            let missing_k = thermostat.setpoint_c - free.end[node] - others;
            let wanted = if own.end[node] > RESPONSE_FLOOR {
                missing_k / own.end[node]
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
    let mut response = free;
    for ((_, unit), p) in heated.iter().zip(&power) {
        for i in 0..MAX_NODES {
            response.end[i] += p * unit.end[i];
            response.mean[i] += p * unit.mean[i];
        }
    }
    (response, power)
}

/// Sweeps over two thermostats before the step is taken as it is; each sweep gains orders of magnitude.
const CONTROL_PASSES: usize = 60;
/// Below this response, K per W, a node cannot be moved: it is held at its freezing point.
const RESPONSE_FLOOR: f64 = 1e-12;
