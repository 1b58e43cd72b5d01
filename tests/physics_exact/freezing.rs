//! Well-mixed water that cools, freezes at 0 °C and cools on as ice; its published times stand in `tests/proof/`.

use crate::network::{network, run, run_each, state};
use warmfold::physics::network::{FreezingStore, Network, Node};
use warmfold::physics::stores::{HEAT_OF_FUSION, ICE_SPECIFIC_HEAT, WATER_SPECIFIC_HEAT};

const UA_W_PER_K: f64 = 14.24675;
const AIR_C: f64 = -5.0;
const MASS_KG: f64 = 200.0;
/// 200 kg freeze through 14.24675 W/K into −5 °C: 260.488 h.
const FREEZING_H: f64 = 260.488;
/// 0 °C is reached here.
const REACHES_0_C_H: f64 = 19.9762;

fn water(air_c: f64) -> Network {
    let store = FreezingStore {
        mass_kg: MASS_KG,
        liquid_j_per_kgk: WATER_SPECIFIC_HEAT,
        ice_j_per_kgk: ICE_SPECIFIC_HEAT,
        fusion_j_per_kg: HEAT_OF_FUSION,
    };
    let mut network = network(&[Node::Water(store)], &[]);
    network.add_boundary(0, UA_W_PER_K, air_c);
    network
}

#[test]
fn water_does_not_freeze_early_and_stays_at_0_degrees() {
    let store = water(AIR_C);
    for step_s in [600.0, 1200.0, 3600.0] {
        let mut hours = 0.0;
        run_each(&store, &state(&store, &[12.0]), 270.0, step_s, &[], |step| {
            let began_h = hours;
            hours += step_s / 3600.0;
            let (t, ice) = (step.end.temperature_c[0], step.end.ice_share[0]);
            if hours < REACHES_0_C_H {
                assert!(t > 0.0 && ice == 0.0, "after {hours} h: {t} °C, {ice} ice");
            } else if began_h > REACHES_0_C_H {
                assert!(t == 0.0 && ice > 0.0, "after {hours} h: {t} °C, {ice} ice");
            }
        });
    }
}

#[test]
fn the_heat_of_freezing_closes() {
    // The case allows 0.1 %; flows are taken from the means that the method weights, so rounding is all that is left.
    for (air_c, start_c, hours) in [(AIR_C, 12.0, 400.0), (7.0, 12.0, 100.0)] {
        let store = water(air_c);
        let start = state(&store, &[start_c]);
        let mut in_j = 0.0;
        let end = run_each(&store, &start, hours, 3600.0, &[], |step| {
            in_j += UA_W_PER_K * (air_c - step.mean_c[0]) * 3600.0;
        });
        let stored_j = end.enthalpy_j(&store, 0) - start.enthalpy_j(&store, 0);
        assert!((in_j / stored_j - 1.0).abs() < 1e-9, "{in_j} J in, {stored_j} J stored");
    }
}

#[test]
fn frozen_water_thaws_by_the_same_heat() {
    // Freezing and thawing are one latent heat: from ice at 0 °C, 5 K of warmth takes the same 260.488 h; 0.1 %.
    let store = water(5.0);
    let mut start = state(&store, &[0.0]);
    start.ice_share[0] = 1.0;
    let near = |hours: f64| run(&store, &start, hours, 1200.0, &[]);
    let (before, after) = (near(FREEZING_H * 0.999), near(FREEZING_H * 1.001));
    assert!(before.ice_share[0] > 0.0 && before.temperature_c[0] == 0.0, "{before:?}");
    assert!(after.ice_share[0] == 0.0 && after.temperature_c[0] > 0.0, "{after:?}");
}

#[test]
fn ice_does_not_depend_on_the_step() {
    // While it freezes the flow is constant, so steps of any length give the same ice; what is left is where the step
    // at 20 h is cut, 0.1 % of 100 h.
    let store = water(AIR_C);
    let ice = |step_s: f64| run(&store, &state(&store, &[12.0]), 120.0, step_s, &[]).ice_share[0];
    let long = ice(3600.0);
    for step_s in [600.0, 1200.0] {
        assert!((ice(step_s) / long - 1.0).abs() < 1e-3, "{step_s} s: {} and {long}", ice(step_s));
    }
}
