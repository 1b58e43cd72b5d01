//! The trays in a power cut.

use crate::model::{Scenario, TentBase, Zone};
use crate::physics::step::State;
use crate::physics::stores::{MEDIUM_CAPACITY, TRAY_TO_AIR};
use crate::season::plan::{Plan, actual_zone};
use crate::season::thermostats::zone_nodes;

/// The potting medium: a hung tent's bench store, elsewhere a body of its own depth beside the balance.
pub(super) struct Trays {
    pub(super) now_c: f64,
    air_node: usize,
    /// Node that is the trays themselves.
    store_node: Option<usize>,
    /// 1/s.
    rate: f64,
}

impl Trays {
    pub(super) fn of(scenario: &Scenario, plan: &Plan, start: &State) -> Option<Self> {
        let bench = &scenario.bench;
        if !bench.present || bench.medium_depth_m <= 0.0 {
            return None;
        }
        let zone = actual_zone(bench.zone, scenario);
        let nodes = zone_nodes(&plan.layout, zone);
        let hung = zone == Zone::Tent && scenario.tent.base != TentBase::Floor;
        Some(Self {
            now_c: start.temperature_c[nodes.floor],
            air_node: nodes.air,
            store_node: hung.then_some(nodes.floor),
            rate: TRAY_TO_AIR / (bench.medium_depth_m * MEDIUM_CAPACITY),
        })
    }

    pub(super) fn step(&mut self, mean_c: &[f64], end_c: &[f64], dt_s: f64) -> f64 {
        self.now_c = match self.store_node {
            Some(node) => end_c[node],
            None => {
                let air_c = mean_c[self.air_node];
                air_c + (self.now_c - air_c) * (-self.rate * dt_s).exp()
            }
        };
        self.now_c
    }
}
