//! Sun that stays, and what of it leaves as vapour.

use warmfold::model::Scenario;

use crate::house::{
    AT_REST, FLOOR_M2, HELD_C, agrees, bare, calm_skin_w_per_k, last, roof_cosine, roof_m2, run, walls_m2,
};
use crate::weather::Hour;

/// Dull even light.
const DULL_W_PER_M2: f64 = 60.0;

fn dull(scenario: &Scenario) -> warmfold::season::ScenarioRun {
    run(scenario, &Hour { diffuse_w_per_m2: DULL_W_PER_M2, ..Hour::default() })
}

/// What stays of even light under film, W: `0.85 [c E + (1 − c) min(E, F)]`.
fn kept_by_hand_w(fullness: f64) -> f64 {
    // Sky that a facet sees, and a fifth of the light from the ground for the rest.
    let on = |sky_view: f64| DULL_W_PER_M2 * (sky_view + 0.2 * (1.0 - sky_view));
    let struck = walls_m2() * on(0.5) + roof_m2() * on((1.0 + roof_cosine()) / 2.0);
    let passed = 0.90 * 0.85 * 0.90 * struck;
    let floor = FLOOR_M2 * (passed / struck) * DULL_W_PER_M2;
    0.85 * (fullness * passed + (1.0 - fullness) * passed.min(floor))
}

#[test]
fn sun_saves_what_stays_of_it() {
    for fullness in [0.0, 0.3] {
        let mut scenario = bare();
        scenario.house.fullness = fullness;
        let run = dull(&scenario);
        agrees(last(&run.hours.sun_w), kept_by_hand_w(fullness), 1e-9);
        let saved = calm_skin_w_per_k() * HELD_C - last(&run.hours.heater_w);
        agrees(saved, kept_by_hand_w(fullness), 10.0 * AT_REST);
    }
}

#[test]
fn a_planted_floor_sends_its_share_away_as_vapour() {
    let mut scenario = bare();
    (scenario.house.planted_share, scenario.crop.transpiration_share) = (0.8, 0.5);
    let run = dull(&scenario);
    let vapour = 0.8 * 0.5 * kept_by_hand_w(0.3);
    agrees(last(&run.hours.vapour_w), vapour, 1e-9);
    let saved = calm_skin_w_per_k() * HELD_C - last(&run.hours.heater_w);
    agrees(saved, kept_by_hand_w(0.3) - vapour, 10.0 * AT_REST);
}
