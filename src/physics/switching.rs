//! Where in a step a thermostat begins to hold.
//!
//! One power for the whole step would begin to heat before the setpoint is reached from above, and would spread what
//! full power does in its first minutes. So the step is cut where the setpoint is reached.

use super::network::{Network, Node};
use super::step::{MAX_THERMOSTATS, SMALLEST_PIECE, State, Step, Thermostat, linear_step};

/// Nearer than this to its setpoint a thermostat is taken as holding, K.
const HOLDING_K: f64 = 0.05;
/// Trials after the first that look for the crossing; each gains about a digit.
const TRIALS: usize = 2;

/// Share of the piece at which the first thermostat reaches its setpoint from a distance.
pub(super) fn first_switch(
    network: &Network,
    start: &State,
    piece: &Step,
    thermostats: &[Thermostat],
    piece_s: f64,
) -> Option<f64> {
    let mut earliest: Option<f64> = None;
    for (i, (thermostat, w)) in thermostats.iter().zip(&piece.heater_w).enumerate() {
        let distance_k = start.temperature_c[thermostat.node] - thermostat.setpoint_c;
        let limit_w = if distance_k > 0.0 { thermostat.min_w } else { thermostat.max_w };
        let algebraic = matches!(network.nodes[thermostat.node], Node::Capacity(c) if c <= 0.0);
        if distance_k.abs() > HOLDING_K && *w != limit_w && !algebraic {
            let share = crossing(network, start, thermostats, i, limit_w, piece_s);
            earliest = share.into_iter().chain(earliest).reduce(f64::min);
        }
    }
    earliest
}

/// Share of the piece after which thermostat `i`, run at `limit_w`, has brought its node to setpoint: regula falsi.
fn crossing(
    network: &Network,
    start: &State,
    thermostats: &[Thermostat],
    i: usize,
    limit_w: f64,
    piece_s: f64,
) -> Option<f64> {
    let mut trial = [*thermostats.first()?; MAX_THERMOSTATS];
    for (to, from) in trial.iter_mut().zip(thermostats) {
        *to = *from;
    }
    let trial = trial.get_mut(..thermostats.len().min(MAX_THERMOSTATS))?;
    let watched = trial.get_mut(i)?;
    (watched.min_w, watched.max_w) = (limit_w, limit_w);
    let (node, setpoint_c) = (watched.node, watched.setpoint_c);
    let distance_k = |share: f64| {
        let tried = linear_step(network, None, start, piece_s * share, trial);
        tried.end.temperature_c[node] - setpoint_c
    };
    let mut before = (0.0, start.temperature_c[node] - setpoint_c);
    let mut after = (1.0, distance_k(1.0));
    if before.1 * after.1 >= 0.0 {
        return None;
    }
    let meet = |before: (f64, f64), after: (f64, f64)| {
        (before.0 + (after.0 - before.0) * before.1 / (before.1 - after.1)).max(SMALLEST_PIECE)
    };
    for _ in 0..TRIALS {
        let share = meet(before, after);
        let there = (share, distance_k(share));
        if there.1 * before.1 > 0.0 {
            before = there;
        } else {
            after = there;
        }
    }
    let share = meet(before, after);
    (share < 1.0 - SMALLEST_PIECE).then_some(share)
}
