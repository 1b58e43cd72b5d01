//! The bare house, its runs, and its own loss by hand.

use warmfold::model::{Scenario, Season, Shape, Study, TentBase, TentOpening, Tightness, Zone, bundled_catalogue};
use warmfold::season::{RunOptions, ScenarioRun, run_scenario_with};

use crate::weather::{Hour, constant};

/// Runs at rest in constant weather come to within this share of their end: the floor, the slowest store without water,
/// has had six days, 17 of its time constants of 8.3 h; what is left is the solver's rounding.
pub const AT_REST: f64 = 1e-4;

/// Air held, °C, while outdoors is at 0 °C.
pub const HELD_C: f64 = 10.0;
pub const LENGTH_M: f64 = 6.0;
pub const WIDTH_M: f64 = 2.0;
const EAVES_M: f64 = 1.6;
const RIDGE_M: f64 = 2.4;
pub const FLOOR_M2: f64 = LENGTH_M * WIDTH_M;
pub const VOLUME_M3: f64 = FLOOR_M2 * (EAVES_M + RIDGE_M) / 2.0;
/// ρ c_p, J/m³K.
pub const RHO_CP: f64 = 1206.0;

/// Slope of the roof: cosine of its tilt.
pub fn roof_cosine() -> f64 {
    (WIDTH_M / 2.0) / roof_slope_m()
}

fn roof_slope_m() -> f64 {
    (WIDTH_M / 2.0).hypot(RIDGE_M - EAVES_M)
}

/// Upright faces, m².
pub fn walls_m2() -> f64 {
    2.0 * LENGTH_M * EAVES_M + WIDTH_M * (EAVES_M + RIDGE_M)
}

/// Both slopes, m².
pub fn roof_m2() -> f64 {
    2.0 * LENGTH_M * roof_slope_m()
}

pub fn skin_m2() -> f64 {
    walls_m2() + roof_m2()
}

/// The bare house, its air held without limit.
pub fn bare() -> Scenario {
    let mut scenario = Scenario::default();
    let house = &mut scenario.house;
    (house.shape, house.length_m, house.width_m) = (Shape::Gable, LENGTH_M, WIDTH_M);
    (house.eaves_height_m, house.ridge_height_m) = (EAVES_M, RIDGE_M);
    (house.shelter_class, house.tightness) = (1, Tightness::Rate(0.0));
    // A house of two metres has no floor further than a metre from its edge: no link to deep ground.
    (house.edge_f_w_per_mk, house.planted_share) = (0.0, 0.0);
    scenario.bench.present = false;
    scenario.vents.present = false;
    scenario.heater.zone = Zone::House;
    (scenario.heater.setpoint_day_c, scenario.heater.setpoint_night_c) = (Some(HELD_C), Some(HELD_C));
    let tent = &mut scenario.tent;
    (tent.base, tent.opening, tent.planted_share) = (TentBase::Bench, TentOpening::Never, 0.0);
    (tent.length_m, tent.width_m, tent.height_m, tent.air_changes_per_h) = (4.0, 1.2, 0.9, 0.0);
    scenario
}

/// Three days.
pub fn study() -> Study {
    let season = Season { from_month: 3, from_day: 10, to_month: 3, to_day: 12 };
    Study { season, ..Study::default() }
}

/// Three days of a scenario in this weather.
pub fn run_limited(scenario: &Scenario, hour: &Hour, unlimited_heat: bool) -> ScenarioRun {
    let options = RunOptions { unlimited_heat, ..RunOptions::default() };
    run_scenario_with(&study(), scenario, &constant(hour), bundled_catalogue(), &|| false, options).expect("a run")
}

pub fn run(scenario: &Scenario, hour: &Hour) -> ScenarioRun {
    run_limited(scenario, hour, true)
}

/// Heat in the last hour, W.
pub fn heat_w(scenario: &Scenario, hour: &Hour) -> f64 {
    last(&run(scenario, hour).hours.heater_w)
}

pub fn last(column: &[f64]) -> f64 {
    *column.last().expect("hours")
}

/// h_r = 4σT³ between outdoors and sky, W/m²K.
pub fn h_r(outdoor_c: f64, sky_c: f64) -> f64 {
    4.0 * 5.670_374_419e-8 * (273.15 + (outdoor_c + sky_c) / 2.0).powi(3)
}

/// U of single film with an added resistance in wind at the house, W/m²K.
pub fn film_u(wind_m_per_s: f64, h_r: f64, added: f64) -> f64 {
    1.0 / (1.0 / 6.5 - 1.0 / (4.0 + 4.0 * 6.7 + h_r) + 1.0 / (4.0 + 4.0 * wind_m_per_s + h_r) + added)
}

/// The bare skin in still air under cloud, W/K.
pub fn calm_skin_w_per_k() -> f64 {
    skin_m2() * film_u(0.0, h_r(0.0, 0.0), 0.0)
}

/// Conductance of two in series, W/K.
pub fn series(a: f64, b: f64) -> f64 {
    1.0 / (1.0 / a + 1.0 / b)
}

/// Fails unless a figure is as the hand formula has it, to this share of it.
#[track_caller]
pub fn agrees(got: f64, by_hand: f64, share: f64) {
    assert!(by_hand.abs() > 0.0 && (got / by_hand - 1.0).abs() <= share, "got {got}, by hand {by_hand}");
}

#[test]
fn the_bare_house_loses_its_skin_and_nothing_else() {
    let run = run(&bare(), &Hour::default());
    agrees(last(&run.hours.heater_w), calm_skin_w_per_k() * HELD_C, AT_REST);
    for other in [&run.hours.leakage_loss_w, &run.hours.vent_loss_w, &run.hours.ground_loss_w, &run.hours.sun_w] {
        assert!(last(other).abs() < 1e-9);
    }
}
