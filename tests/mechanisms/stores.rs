//! Stores beside air that is held: each gives its heat off along the exponential of its own capacity and surface.

use warmfold::model::{Scenario, Vessels, Zone, bundled_catalogue};
use warmfold::physics::step::Thermostat;
use warmfold::season::drive::{DriveSettings, HourDrive};
use warmfold::season::house_model::HouseModel;
use warmfold::season::layout::ZoneNodes;
use warmfold::season::plan::Plan;

use crate::house::{FLOOR_M2, agrees, bare, run};
use crate::weather::{Hour, constant};

/// A heater ends each step at its setpoint and has one power over it, so that the air is a little off within: with
/// steps of two minutes by less than this share of what the stores have to give.
const STEPPED: f64 = 1e-3;
const STEP_S: f64 = 120.0;

/// Follows the house for some hours with its air held, from the temperatures that `begin` sets: floor, water, ice share.
fn follow(scenario: &Scenario, held_c: f64, hours: usize, begin: impl Fn(&ZoneNodes, &mut [f64])) -> (f64, f64, f64) {
    let plan = Plan::new(scenario, bundled_catalogue()).expect("a house");
    let drive = HourDrive::new(&plan, DriveSettings::of(scenario), &constant(&Hour::default()), 0);
    let mut model = HouseModel::new(&plan, scenario, held_c).expect("a network");
    let nodes = plan.layout.house;
    begin(&nodes, &mut model.state.temperature_c);
    let held = [Thermostat { node: nodes.air, setpoint_c: held_c, min_w: -1e7, max_w: 1e7 }];
    for _ in 0..hours * 30 {
        model.step(&drive, STEP_S, &held, true);
    }
    let water = nodes.water.unwrap_or(nodes.floor);
    (model.state.temperature_c[nodes.floor], model.state.temperature_c[water], model.state.ice_share[water])
}

/// One drum of 200 L that shows 1.5 m².
fn with_drum() -> Scenario {
    let mut scenario = bare();
    scenario.water.present = true;
    let drum =
        Vessels { zone: Zone::House, count: 1, litres_each: 200.0, exposed_area_m2_each: 1.5, ..Vessels::default() };
    scenario.water.vessels = vec![drum];
    scenario
}

#[test]
fn the_floor_gives_off_a_hand_breadth() {
    // 0.12 m of 2.0 MJ/m³K behind 8 W/m²K: 8.33 h.
    let (floor_c, ..) = follow(&bare(), 10.0, 10, |nodes, t| t[nodes.floor] = 20.0);
    agrees(floor_c - 10.0, 10.0 * (-10.0_f64 * 3600.0 * 8.0 / (0.12 * 2.0e6)).exp(), STEPPED);
}

#[test]
fn benches_and_medium_add_store_and_surface() {
    let mut scenario = bare();
    (scenario.bench.present, scenario.bench.zone) = (true, Zone::House);
    (scenario.bench.length_m, scenario.bench.width_m, scenario.bench.medium_depth_m) = (5.0, 1.0, 0.10);
    let (floor_c, ..) = follow(&scenario, 10.0, 10, |nodes, t| t[nodes.floor] = 20.0);
    let capacity = FLOOR_M2 * 0.12 * 2.0e6 + 5.0 * 0.10 * 3.0e6;
    agrees(floor_c - 10.0, 10.0 * (-10.0 * 3600.0 * 8.0 * (FLOOR_M2 + 5.0) / capacity).exp(), STEPPED);
}

#[test]
fn a_drum_gives_its_warmth_off_for_a_day() {
    let (_, water_c, ice) = follow(&with_drum(), 5.0, 12, |nodes, t| t[nodes.water.expect("a drum")] = 15.0);
    agrees(water_c - 5.0, 10.0 * (-12.0_f64 * 3600.0 * 7.0 * 1.5 / (200.0 * 4186.0)).exp(), STEPPED);
    assert_eq!(ice, 0.0);
}

#[test]
fn a_drum_at_the_freezing_point_stays_there_while_it_freezes() {
    // From 0 °C in air held at −5 °C: each hour freezes 7 × 1.5 × 5 W of 334 kJ/kg.
    let (_, water_c, ice) = follow(&with_drum(), -5.0, 48, |nodes, t| t[nodes.water.expect("a drum")] = 0.0);
    assert_eq!(water_c, 0.0);
    agrees(ice, 48.0 * 3600.0 * 7.0 * 1.5 * 5.0 / (200.0 * 334_000.0), STEPPED);
}

#[test]
fn trays_cool_by_their_own_depth_when_the_mains_fail() {
    // 0.05 m of 3.0 MJ/m³K behind 14 W/m²K, both faces of a tray: 2.98 h. Over an hour in which the air falls along a
    // straight line, a body lags it by the exact solution below. From the second hour on the air bends so little (it
    // follows the floor, 8 h) that the line errs by less than 1e-3 of what trays are warmer than air.
    let mut scenario = bare();
    (scenario.bench.present, scenario.bench.zone, scenario.bench.medium_depth_m) = (true, Zone::House, 0.05);
    scenario.crop.zone = Zone::House;
    let cut = run(&scenario, &Hour::default()).summary.power_cut;
    let per_h = 3600.0 * 14.0 / (0.05 * 3.0e6);
    for k in 2..8 {
        let (air_c, fall_k) = (cut.air_c[k - 1], cut.air_c[k] - cut.air_c[k - 1]);
        let lag_k = fall_k / per_h;
        let left_k = (cut.trays_c[k - 1] - air_c + lag_k) * f64::exp(-per_h);
        agrees(cut.trays_c[k] - cut.air_c[k], left_k - lag_k, 1e-3);
    }
}
