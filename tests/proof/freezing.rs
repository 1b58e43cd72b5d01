//! A vessel of water that cools, freezes at 0 °C and is ice at last.

use serde::Deserialize;
use warmfold::physics::network::{FreezingStore, Network, Node};
use warmfold::physics::stores::{HEAT_OF_FUSION, ICE_SPECIFIC_HEAT, WATER_SPECIFIC_HEAT};

use super::figure::{Expected, Figure, hold, published};
use super::network::{network, run, run_each, state};

#[derive(Deserialize)]
struct Case {
    name: String,
    source: String,
    mass_kg: f64,
    w_per_k: f64,
    air_c: f64,
    start_c: f64,
    step_s: f64,
    tolerance_k: f64,
    tolerance_because: String,
    share_tolerance: f64,
    share_because: String,
    /// Hours and °C.
    after_c: Vec<(f64, f64)>,
    begins_h: f64,
    lasts_h: f64,
    /// Hours and per cent.
    ice_after: (f64, f64),
}

impl Case {
    fn network(&self) -> Network {
        let store = FreezingStore {
            mass_kg: self.mass_kg,
            liquid_j_per_kgk: WATER_SPECIFIC_HEAT,
            ice_j_per_kgk: ICE_SPECIFIC_HEAT,
            fusion_j_per_kg: HEAT_OF_FUSION,
        };
        let mut network = network(&[Node::Water(store)], &[]);
        network.add_boundary(0, self.w_per_k, self.air_c);
        network
    }

    /// Hours at which the first ice and the last water are seen.
    ///
    /// At 0 °C the heat flow is constant, so the ice at the end of a step tells when within the step it began, and the
    /// water at the beginning of a step when it ended.
    fn begins_and_ends_h(&self) -> (f64, f64) {
        let network = self.network();
        let ice_per_s =
            -network.net_flow_w(0, &state(&network, &[0.0]).temperature_c) / (self.mass_kg * HEAT_OF_FUSION);
        let ice_per_h = ice_per_s * 3600.0;
        let (mut hours, mut ice, mut begins_h, mut ends_h) = (0.0, 0.0, f64::NAN, f64::NAN);
        let within_h = ((self.begins_h + self.lasts_h) * 1.1).ceil();
        run_each(&network, &state(&network, &[self.start_c]), within_h, self.step_s, &[], |step| {
            let ice_now = step.end.ice_share[0];
            if ice >= 1.0 {
                return;
            }
            if ice_now >= 1.0 {
                ends_h = hours + (1.0 - ice) / ice_per_h;
            }
            hours += self.step_s / 3600.0;
            if ice <= 0.0 && ice_now > 0.0 {
                begins_h = hours - ice_now / ice_per_h;
            }
            ice = ice_now;
        });
        (begins_h, ends_h)
    }
}

pub fn figures() -> Vec<Figure> {
    let case: Case = published("freezing");
    let network = case.network();
    let after = |hours: f64| run(&network, &state(&network, &[case.start_c]), hours, case.step_s, &[]);
    let figure = |what: &str, unit: &str, decimals, value: f64, got| Figure {
        what: format!("{}: {what}", case.name),
        source: case.source.clone(),
        unit: unit.into(),
        decimals,
        expected: Expected::Value(value, value * case.share_tolerance),
        tolerance_because: case.share_because.clone(),
        got,
    };
    let mut figures: Vec<Figure> = case
        .after_c
        .iter()
        .map(|&(hours, expected_c)| Figure {
            expected: Expected::Value(expected_c, case.tolerance_k),
            tolerance_because: case.tolerance_because.clone(),
            ..figure(&format!("after {hours} h"), "°C", 3, expected_c, after(hours).temperature_c[0])
        })
        .collect();
    let (begins_h, ends_h) = case.begins_and_ends_h();
    figures.push(figure("the first ice after", "h", 3, case.begins_h, begins_h));
    let (hours, percent) = case.ice_after;
    figures.push(figure(&format!("ice after {hours} h"), "%", 3, percent, after(hours).ice_share[0] * 100.0));
    figures.push(figure("from the first ice to the last water", "h", 2, case.lasts_h, ends_h - begins_h));
    figures
}

#[test]
fn freezing_agrees() {
    hold(&figures());
}
