//! Air that goes in and out: leakage, vents, fan.

use warmfold::model::Tightness;

use crate::house::{AT_REST, HELD_C, RHO_CP, VOLUME_M3, agrees, bare, calm_skin_w_per_k, last, run};
use crate::weather::Hour;

/// Leakage in the last hour of a house of one air change per hour at design weather, W.
fn leakage_w(hour: &Hour, shelter_class: u32) -> f64 {
    let mut scenario = bare();
    (scenario.house.tightness, scenario.house.shelter_class) = (Tightness::Rate(1.0), shelter_class);
    let (tight, leaky) = (
        {
            let mut tight = scenario.clone();
            tight.house.tightness = Tightness::Rate(0.0);
            run(&tight, hour)
        },
        run(&scenario, hour),
    );
    let loss_w = last(&leaky.hours.leakage_loss_w);
    agrees(last(&leaky.hours.heater_w) - last(&tight.hours.heater_w), loss_w, 10.0 * AT_REST);
    loss_w
}

/// N = N_d √[(C_s ΔT + C_w v²)/(C_s 20 + C_w1 6.7²)] as heat, W.
fn by_hand_w(wind_coefficient: f64, wind_m_per_s: f64) -> f64 {
    let design = 0.000_145 * 20.0 + 0.000_319 * 6.7 * 6.7;
    let rate = ((0.000_145 * HELD_C + wind_coefficient * wind_m_per_s.powi(2)) / design).sqrt();
    RHO_CP * VOLUME_M3 * rate / 3600.0 * HELD_C
}

#[test]
fn warm_air_leaks_by_its_own_lift() {
    agrees(leakage_w(&Hour::default(), 1), by_hand_w(0.000_319, 0.0), AT_REST);
}

#[test]
fn wind_drives_leakage_and_shelter_tempers_it() {
    let hour = Hour { wind_m_per_s: 5.0, ..Hour::default() };
    agrees(leakage_w(&hour, 1), by_hand_w(0.000_319, 5.0), AT_REST);
    agrees(leakage_w(&hour, 5), by_hand_w(0.000_032, 5.0), AT_REST);
}

/// A bright day without heater: far warmer than the vents allow.
const BRIGHT: Hour =
    Hour { outdoor_c: 0.0, sky_c: None, wind_m_per_s: 0.0, diffuse_w_per_m2: 300.0, deep_ground_c: None };

#[test]
fn a_shut_house_warms_until_its_skin_carries_the_sun_away() {
    let mut scenario = bare();
    scenario.heater.present = false;
    let run = run(&scenario, &BRIGHT);
    agrees(last(&run.hours.house_air_c), last(&run.hours.sun_w) / calm_skin_w_per_k(), AT_REST);
}

#[test]
fn vents_open_with_the_air_and_carry_the_stack_flow() {
    let mut scenario = bare();
    scenario.heater.present = false;
    scenario.vents.present = true;
    (scenario.vents.inlet_area_m2, scenario.vents.outlet_area_m2) = (0.05, 0.1);
    (scenario.vents.opens_at_c, scenario.vents.full_at_c) = (10.0, 30.0);
    let run = run(&scenario, &BRIGHT);
    let air_c = last(&run.hours.house_air_c);
    let opening = (air_c - 10.0) / 20.0;
    assert!((0.1..0.9).contains(&opening), "{air_c}");
    let area = opening / (1.0_f64 / 0.05_f64.powi(2) + 1.0 / 0.1_f64.powi(2)).sqrt();
    let flow = 0.65 * area * (2.0 * 9.806_65 * 1.2 * air_c / 273.15).sqrt();
    // The iteration stops within 0.005 K of some 20.
    agrees(last(&run.hours.vent_loss_w), RHO_CP * flow * air_c, 1e-3);
    agrees(last(&run.hours.vent_loss_w) + calm_skin_w_per_k() * air_c, last(&run.hours.sun_w), 1e-3);
}

#[test]
fn wind_blows_through_open_vents() {
    let mut scenario = bare();
    scenario.heater.present = false;
    scenario.vents.present = true;
    (scenario.vents.inlet_area_m2, scenario.vents.outlet_area_m2) = (0.05, 0.1);
    (scenario.vents.opens_at_c, scenario.vents.full_at_c, scenario.vents.height_difference_m) = (5.0, 6.0, 0.0);
    let run = run(&scenario, &Hour { wind_m_per_s: 5.0, ..BRIGHT });
    let air_c = last(&run.hours.house_air_c);
    assert!(air_c > 6.0, "full open: {air_c}");
    // Q = 0.25 A v, the smaller opening; no height, no stack.
    agrees(last(&run.hours.vent_loss_w), RHO_CP * 0.25 * 0.05 * 0.85 * 5.0 * air_c, 1e-3);
}

#[test]
fn the_fan_carries_its_flow() {
    let mut scenario = bare();
    scenario.heater.present = false;
    scenario.vents.fan_present = true;
    (scenario.vents.fan_flow_m3_per_h, scenario.vents.fan_starts_at_c) = (200.0, 5.0);
    let run = run(&scenario, &BRIGHT);
    let air_c = last(&run.hours.house_air_c);
    assert!(air_c > 7.0, "full speed is 2 K above its thermostat: {air_c}");
    agrees(last(&run.hours.vent_loss_w), RHO_CP * 200.0 / 3600.0 * air_c, 1e-3);
    // It runs all hours at its rated watts.
    agrees(run.summary.fan_kwh, 0.060 * run.summary.season_hours as f64, 1e-6);
}
