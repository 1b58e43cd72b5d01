//! Heat to the ground: the edge of the floor and its core.

use warmfold::model::Tightness;

use crate::house::{
    AT_REST, HELD_C, LENGTH_M, RHO_CP, VOLUME_M3, WIDTH_M, agrees, bare, calm_skin_w_per_k, heat_w, last, run, series,
    skin_m2,
};
use crate::weather::Hour;

#[test]
fn the_edge_loses_to_outdoors_through_the_floor() {
    let mut scenario = bare();
    scenario.house.edge_f_w_per_mk = 1.26;
    let run = run(&scenario, &Hour::default());
    let floor_to_air = 8.0 * LENGTH_M * WIDTH_M;
    let by_hand = series(floor_to_air, 1.26 * 2.0 * (LENGTH_M + WIDTH_M)) * HELD_C;
    agrees(last(&run.hours.ground_loss_w), by_hand, AT_REST);
    agrees(last(&run.hours.heater_w), calm_skin_w_per_k() * HELD_C + by_hand, AT_REST);
}

#[test]
fn the_baseline_counts_skin_leakage_and_edge() {
    // Handbook U 6.5 of film, 1.5 air changes an hour, edge 1.26 W/mK, times degree-hours; neither wind nor floor store.
    let mut scenario = bare();
    (scenario.house.edge_f_w_per_mk, scenario.house.tightness) = (1.26, Tightness::Rate(1.5));
    let summary = run(&scenario, &Hour::default()).summary;
    let w_per_k = 6.5 * skin_m2() + RHO_CP * VOLUME_M3 * 1.5 / 3600.0 + 1.26 * 2.0 * (LENGTH_M + WIDTH_M);
    agrees(summary.baseline_heat_kwh, w_per_k * HELD_C * summary.season_hours as f64 / 1000.0, 1e-9);
}

#[test]
fn the_core_takes_from_deep_ground_or_gives_to_it() {
    let mut scenario = bare();
    scenario.house.width_m = 4.0;
    let heat = |deep_ground_c: f64| heat_w(&scenario, &Hour { deep_ground_c: Some(deep_ground_c), ..Hour::default() });
    // All but a strip of a metre along the edge; k 1.4 W/mK over a metre.
    let core = 1.4 * (LENGTH_M - 2.0) * (4.0 - 2.0);
    let per_kelvin = series(8.0 * LENGTH_M * 4.0, core);
    agrees(heat(HELD_C) - heat(16.0), per_kelvin * 6.0, 10.0 * AT_REST);
    agrees(heat(0.0) - heat(HELD_C), per_kelvin * HELD_C, 10.0 * AT_REST);
}
