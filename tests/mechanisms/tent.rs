//! The tent: wall, exchange, base, cover, and the sun that gets into it.

use warmfold::model::{NightCover, Scenario, TentBase, TentOpening, Zone};
use warmfold::season::ScenarioRun;

use crate::house::{AT_REST, FLOOR_M2, HELD_C, RHO_CP, agrees, bare, calm_skin_w_per_k, last, run, series};
use crate::weather::Hour;

const BASE_M2: f64 = 4.0 * 1.2;
const WALL_AND_TOP_M2: f64 = BASE_M2 + 2.0 * (4.0 + 1.2) * 0.9;
const TENT_M3: f64 = BASE_M2 * 0.9;

/// U of one wet film between calm rooms, W/m²K: a quarter of τ 0.7 is left, the rest has gone to ε.
pub fn wet_film_u() -> f64 {
    let left = 0.7 / 4.0;
    (2.5 + (0.2 + 0.7 - left) * 5.1) / 2.0 + left * 5.1
}

/// From the bench board's upper side through it, W/K.
fn base_w_per_k(u: f64) -> f64 {
    series(8.0 * BASE_M2, u * BASE_M2)
}

/// The bare house with a heated tent round a bench.
fn with_tent() -> Scenario {
    let mut scenario = bare();
    (scenario.tent.present, scenario.heater.zone, scenario.crop.zone) = (true, Zone::Tent, Zone::Tent);
    scenario
}

/// Steady heat: the tent's links in series with the skin.
#[track_caller]
fn holds_by_hand(scenario: &Scenario, tent_w_per_k: f64) -> ScenarioRun {
    let run = run(scenario, &Hour::default());
    agrees(last(&run.hours.heater_w), series(tent_w_per_k, calm_skin_w_per_k()) * HELD_C, AT_REST);
    agrees(last(&run.hours.tent_loss_w), last(&run.hours.heater_w), AT_REST);
    run
}

#[test]
fn a_tent_wall_stands_before_the_skin() {
    let wall = WALL_AND_TOP_M2 * wet_film_u();
    let run = holds_by_hand(&with_tent(), wall + base_w_per_k(3.0));
    let saved = 1.0 - last(&run.hours.heater_w) / (calm_skin_w_per_k() * HELD_C);
    assert!(saved > 0.5, "a small tent needs less than half of the house: {saved}");
}

#[test]
fn insulation_under_the_bench() {
    let mut scenario = with_tent();
    scenario.tent.base = TentBase::InsulatedBench;
    holds_by_hand(&scenario, WALL_AND_TOP_M2 * wet_film_u() + base_w_per_k(0.5));
}

#[test]
fn flaps_exchange_air_with_the_house() {
    let mut scenario = with_tent();
    scenario.tent.air_changes_per_h = 2.0;
    let exchange = RHO_CP * TENT_M3 * 2.0 / 3600.0;
    holds_by_hand(&scenario, WALL_AND_TOP_M2 * wet_film_u() + base_w_per_k(3.0) + exchange);
}

#[test]
fn an_opened_tent_exchanges_twenty_times_an_hour() {
    let mut scenario = with_tent();
    scenario.tent.opening = TentOpening::Above(4.0);
    let exchange = RHO_CP * TENT_M3 * 20.0 / 3600.0;
    let run = run(&scenario, &Hour::default());
    let by_hand = series(WALL_AND_TOP_M2 * wet_film_u() + base_w_per_k(3.0) + exchange, calm_skin_w_per_k()) * HELD_C;
    // The iteration of the opening stops within 0.005 K of 7 K.
    agrees(last(&run.hours.heater_w), by_hand, 1e-3);
}

#[test]
fn a_tent_opened_by_day_stands_open_in_light_and_shut_in_the_dark() {
    let mut scenario = with_tent();
    scenario.tent.opening = TentOpening::ByDay;
    let shut = WALL_AND_TOP_M2 * wet_film_u() + base_w_per_k(3.0);
    holds_by_hand(&scenario, shut);
    // Light of 6 W/m² is day, and its sun a few watts.
    let lit = run(&scenario, &Hour { diffuse_w_per_m2: 6.0, ..Hour::default() });
    let open = shut + RHO_CP * TENT_M3 * 20.0 / 3600.0;
    let dark_w = series(open, calm_skin_w_per_k()) * HELD_C;
    let saved_w = dark_w - last(&lit.hours.heater_w);
    assert!(saved_w > 0.0 && saved_w < last(&lit.hours.sun_w), "{saved_w} W saved");
}

#[test]
fn a_cover_over_the_tent_at_night() {
    let mut scenario = with_tent();
    scenario.tent.night_cover = NightCover { present: true, ..NightCover::default() };
    let wall = WALL_AND_TOP_M2 / (1.0 / wet_film_u() + 0.10);
    holds_by_hand(&scenario, wall + base_w_per_k(3.0));
}

#[test]
fn the_tent_takes_the_sun_over_its_top() {
    let run = run(&with_tent(), &Hour { diffuse_w_per_m2: 20.0, ..Hour::default() });
    let bare_run = crate::house::run(&bare(), &Hour { diffuse_w_per_m2: 20.0, ..Hour::default() });
    let kept = last(&bare_run.hours.sun_w);
    let tent_sun = kept * (BASE_M2 / FLOOR_M2) * 0.85;
    let tent_w_per_k = WALL_AND_TOP_M2 * wet_film_u() + base_w_per_k(3.0);
    let (air_c, heat_w) = (last(&run.hours.house_air_c), last(&run.hours.heater_w));
    // The house carries all heat and sun; the tent's sun on its bench board, 60 %, comes to its air but for what
    // leaves through the board.
    agrees(calm_skin_w_per_k() * air_c, heat_w + kept, AT_REST);
    let through_board = 0.6 * tent_sun * 3.0 / (8.0 + 3.0);
    agrees(heat_w + tent_sun - through_board, tent_w_per_k * (HELD_C - air_c), AT_REST);
}
