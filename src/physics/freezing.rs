//! Water that freezes and thaws within a step.

use super::network::Network;
use super::step::{SMALLEST_PIECE, State, Step, Thermostat};

#[derive(PartialEq)]
pub(super) enum Phase {
    Liquid,
    Freezing,
    Ice,
}

pub(super) fn phase(ice_share: f64) -> Phase {
    if ice_share <= 0.0 {
        Phase::Liquid
    } else if ice_share >= 1.0 {
        Phase::Ice
    } else {
        Phase::Freezing
    }
}

/// Mean heat into a node over a piece, heaters included, W.
fn heat_into(network: &Network, piece: &Step, thermostats: &[Thermostat], node: usize) -> f64 {
    let heaters: f64 = thermostats.iter().zip(&piece.heater_w).filter(|(t, _)| t.node == node).map(|(_, w)| w).sum();
    network.net_flow_w(node, &piece.mean_c) + heaters
}

/// Share of the piece after which the first store reaches its freezing point or runs out of water or ice.
pub(super) fn first_phase_change(
    network: &Network,
    start: &State,
    piece: &Step,
    thermostats: &[Thermostat],
    piece_s: f64,
) -> Option<f64> {
    let mut earliest: Option<f64> = None;
    for &(node, water) in &network.waters {
        let (from, to) = (start.temperature_c[node], piece.end.temperature_c[node]);
        let ice = start.ice_share[node];
        let share = match phase(ice) {
            Phase::Liquid if to < 0.0 && from > 0.0 => from / (from - to),
            Phase::Ice if to > 0.0 && from < 0.0 => from / (from - to),
            Phase::Freezing => {
                let melted =
                    heat_into(network, piece, thermostats, node) * piece_s / (water.mass_kg * water.fusion_j_per_kg);
                if melted > ice {
                    ice / melted
                } else if -melted > 1.0 - ice {
                    (1.0 - ice) / -melted
                } else {
                    continue;
                }
            }
            Phase::Liquid | Phase::Ice => continue,
        };
        let share = share.clamp(SMALLEST_PIECE, 1.0);
        earliest = Some(earliest.map_or(share, |e: f64| e.min(share)));
    }
    earliest
}

/// Turns what went past a freezing point into ice or water, so that no heat is lost.
pub(super) fn settle_phases(
    network: &Network,
    start: &State,
    piece: &mut Step,
    thermostats: &[Thermostat],
    piece_s: f64,
) {
    for &(node, water) in &network.waters {
        let fusion_k_liquid = water.fusion_j_per_kg / water.liquid_j_per_kgk;
        let fusion_k_ice = water.fusion_j_per_kg / water.ice_j_per_kgk;
        let (mut t, mut ice) = (piece.end.temperature_c[node], start.ice_share[node]);
        match phase(ice) {
            Phase::Liquid if t < 0.0 => (t, ice) = (0.0, -t / fusion_k_liquid),
            Phase::Ice if t > 0.0 => (t, ice) = (0.0, 1.0 - t / fusion_k_ice),
            Phase::Freezing => {
                let heat_j = heat_into(network, piece, thermostats, node) * piece_s;
                ice -= heat_j / (water.mass_kg * water.fusion_j_per_kg);
                if ice < 0.0 {
                    (t, ice) = (-ice * fusion_k_liquid, 0.0);
                } else if ice > 1.0 {
                    (t, ice) = (-(ice - 1.0) * fusion_k_ice, 1.0);
                }
            }
            Phase::Liquid | Phase::Ice => {}
        }
        piece.end.temperature_c[node] = t;
        piece.end.ice_share[node] = ice;
    }
}
