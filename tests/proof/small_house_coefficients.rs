//! Coefficients of a planned house that have been measured on real ones.

use serde::Deserialize;
use warmfold::model::{Scenario, Tightness, Vessels, WaterStore, Zone, bundled_catalogue};
use warmfold::physics::air::exchange_w_per_k;
use warmfold::season::drive::HourDrive;
use warmfold::season::openings::Openings;
use warmfold::season::plan::Plan;

use super::figure::{Expected, Figure, hold, published};

#[derive(Deserialize)]
struct Cases {
    water: Water,
    calm_leakage: CalmLeakage,
}

#[derive(Deserialize)]
struct Water {
    what: String,
    expected: Expected,
    source: String,
    because: String,
}

#[derive(Deserialize)]
struct CalmLeakage {
    expected: Expected,
    difference_k: f64,
    houses: Vec<(String, Tightness)>,
    source: String,
    because: String,
}

fn plan(scenario: &Scenario) -> Plan {
    Plan::new(scenario, bundled_catalogue()).expect("a house")
}

/// Water to air per exposed surface of a house with drums, W/m²K.
fn water_w_per_m2k() -> f64 {
    let drums = Vessels { zone: Zone::House, ..Vessels::default() };
    let exposed_m2 = f64::from(drums.count) * drums.exposed_area_m2_each;
    let water = WaterStore { present: true, vessels: vec![drums] };
    plan(&Scenario { water, ..Scenario::default() }).house.water_to_air_w_per_k / exposed_m2
}

/// Air changes of a shut house an hour in calm air.
fn calm_changes_per_h(tightness: Tightness, difference_k: f64) -> f64 {
    let mut scenario = Scenario::default();
    scenario.house.tightness = tightness;
    let plan = plan(&scenario);
    let leakage = Openings::of(&scenario, &plan).leakage_w_per_k(&HourDrive::default(), difference_k);
    leakage / exchange_w_per_k(plan.shell.volume_m3, 1.0)
}

pub fn figures() -> Vec<Figure> {
    let Cases { water, calm_leakage: leakage } = published("small_house_coefficients");
    let water = Figure {
        what: water.what,
        source: water.source,
        unit: "W/(m²·K)".into(),
        decimals: 1,
        expected: water.expected,
        tolerance_because: water.because,
        got: water_w_per_m2k(),
    };
    let leaking = leakage.houses.iter().map(|(name, tightness)| Figure {
        what: format!("air that a shut house, {name}, leaks in calm weather"),
        source: leakage.source.clone(),
        unit: "changes/h".into(),
        decimals: 2,
        expected: leakage.expected,
        tolerance_because: leakage.because.clone(),
        got: calm_changes_per_h(*tightness, leakage.difference_k),
    });
    std::iter::once(water).chain(leaking).collect()
}

#[test]
fn small_house_coefficients_agree() {
    hold(&figures());
}
