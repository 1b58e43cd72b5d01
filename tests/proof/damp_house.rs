//! Damp in a house: a measured night humidity, and the water of flames through a whole season.

use serde::Deserialize;
use warmfold::model::{Drawn, NightCover, Part, Scenario, Study, bundled_catalogue};
use warmfold::season::damp::{DampInputs, damp_season};
use warmfold::season::drive::{DriveSettings, drives_of};
use warmfold::season::house_model::HouseModel;
use warmfold::season::plan::Plan;
use warmfold::season::{HourlySeries, RunOptions};
use warmfold::weather::stats::mean;

use super::figure::{Expected, Figure, hold, published};
use super::glasshouse::{self, Screens};
use super::seasons;
use super::sheet::Sheets;

#[derive(Deserialize)]
struct Cases {
    humidity_because: String,
    humidity_tolerance_pct: f64,
    burner_water: Sheets<Burner>,
}

/// A heater without a flue, and the heat content that its fuel is counted by.
#[derive(Deserialize)]
struct Burner {
    fuel: String,
    gross_kwh_per_kg: f64,
    scenario: Scenario,
}

/// Mean humidity of the measured nights, both screens closed, %: the program is told air and weather, and takes the
/// ground under the plants as warm as the air.
fn night_humidity_pct(case: &glasshouse::Case, hours: &[glasshouse::Measured], nights: &[usize]) -> f64 {
    let climate = glasshouse::climate(case, hours);
    let mut scenario = case.scenario.clone();
    scenario.night_cover = NightCover {
        present: true,
        screen: "energy-plus-blackout".to_owned(),
        parts: vec![Part::Roof],
        drawn: Drawn::BySun,
    };
    let plan = Plan::new(&scenario, bundled_catalogue()).expect("a house");
    let (drives, faces) = drives_of(&plan, DriveSettings::of(&scenario), &climate, 0..hours.len());
    let model = HouseModel::new(&plan, &scenario, hours[0].t_in_c).expect("a network");
    let air_c: Vec<f64> = hours.iter().map(|hour| hour.t_in_c).collect();
    let leakage = |(drive, t_c): (_, &f64)| {
        warmfold::physics::air::flow_m3_per_h(model.openings().shut(drive, *t_c).leakage_w_per_k)
    };
    let series = HourlySeries {
        record: (0..hours.len()).collect(),
        air_exchange_m3_per_h: drives.iter().zip(&air_c).map(leakage).collect(),
        house_floor_c: air_c.clone(),
        house_air_c: air_c,
        heater_w: vec![0.0; hours.len()],
        standby_w: vec![0.0; hours.len()],
        ..HourlySeries::default()
    };
    let inputs = DampInputs {
        plan: &plan,
        scenario: &scenario,
        catalogue: bundled_catalogue(),
        climate: &climate,
        series: &series,
        drives: &drives,
        faces: &faces,
    };
    let humidity = damp_season(inputs).series.house_humidity;
    100.0 * mean(&nights.iter().map(|&k| humidity[k]).collect::<Vec<_>>())
}

/// Water that a season leaves in the house per fuel burnt, kg/kg.
fn water_kg_per_kg(burner: &Burner) -> f64 {
    let climate = seasons::climate("port-angeles-wa");
    let summary = seasons::run(&Study::default(), &burner.scenario, &climate, RunOptions::default()).summary;
    summary.damp.burner_water_kg / (summary.energy_bought_kwh / burner.gross_kwh_per_kg)
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("damp_house");
    let case: glasshouse::Case = published("glasshouse");
    let hours = glasshouse::measured();
    let nights = glasshouse::chosen(&hours, Screens::Both);
    let measured = mean(&nights.iter().map(|&k| hours[k].rh_in_pct).collect::<Vec<_>>());
    let night = Figure {
        what: "planted glasshouse with closed screens: relative humidity at night".into(),
        source: case.source.clone(),
        unit: "%".into(),
        decimals: 0,
        expected: Expected::Value(measured, file.humidity_tolerance_pct),
        tolerance_because: file.humidity_because,
        got: night_humidity_pct(&case, &hours, &nights),
    };
    let water = |b: &Burner| (format!("water that a winter of {} leaves in the house", b.fuel), water_kg_per_kg(b));
    std::iter::once(night).chain(file.burner_water.figures(water)).collect()
}

#[test]
fn damp_houses_agree() {
    hold(&figures());
}
