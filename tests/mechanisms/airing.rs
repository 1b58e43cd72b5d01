//! Advice on vents for the sunniest mild hour, and what other air would change.

use warmfold::model::{Scenario, bundled_catalogue};
use warmfold::season::airing::{AirAdvice, AirChanges, air_changes, flued, sunniest_mild_hour, with_higher_openers};
use warmfold::season::drive::{DriveSettings, drives_of};
use warmfold::season::plan::Plan;
use warmfold::season::{HourlySeries, ScenarioRun};

use crate::damp::burning;
use crate::house::{AT_REST, FLOOR_M2, HELD_C, RHO_CP, VOLUME_M3, agrees, bare, calm_skin_w_per_k, last, run, study};
use crate::weather::{Hour, constant};

/// A bright calm day at freezing.
const BRIGHT: Hour =
    Hour { outdoor_c: 0.0, sky_c: None, wind_m_per_s: 0.0, diffuse_w_per_m2: 300.0, deep_ground_c: None };

/// The bare house without heater, its openers within their way on a bright day.
fn vented() -> Scenario {
    let mut scenario = bare();
    scenario.heater.present = false;
    let vents = &mut scenario.vents;
    vents.present = true;
    (vents.inlet_area_m2, vents.outlet_area_m2, vents.height_difference_m) = (0.05, 0.1, 1.5);
    (vents.opens_at_c, vents.full_at_c, vents.allowed_rise_k) = (10.0, 30.0, 6.0);
    scenario
}

fn advice(run: &ScenarioRun) -> AirAdvice {
    run.summary.air_advice.expect("a season with sun")
}

#[test]
fn the_advice_balances_the_sun_by_hand() {
    let run = run(&vented(), &BRIGHT);
    let advice = advice(&run);
    let sun_w = last(&run.hours.sun_w);
    agrees(advice.warming_sun_w, sun_w, 1e-12);
    // Halving ends at a ten-thousandth of a kelvin.
    agrees(advice.rise_shut_k, sun_w / calm_skin_w_per_k(), 1e-5);
    let flow = (sun_w - 6.0 * calm_skin_w_per_k()) / (RHO_CP * 6.0);
    agrees(advice.flow_needed_m3_per_h, 3600.0 * flow, 1e-9);
    // Q = 0.65 A/√2 √(2 g H ΔT/T_o).
    let through_one = 0.65 / 2.0_f64.sqrt() * (2.0_f64 * 9.806_65 * 1.5 * 6.0 / 273.15).sqrt();
    agrees(advice.openings_still_m2.expect("a height"), flow / through_one, 1e-9);
    assert_eq!(advice.openings_still_m2, advice.openings_windy_m2, "no wind");
    agrees(advice.rule_openings_from_m2, 0.15 * FLOOR_M2, 1e-12);
    agrees(advice.rule_openings_to_m2, 0.20 * FLOOR_M2, 1e-12);
    agrees(advice.rule_fan_by_volume_m3_per_h, 60.0 * VOLUME_M3, 1e-12);
    // 8 cfm/ft², exactly 8 × 0.3048 m/min.
    agrees(advice.rule_fan_by_floor_m3_per_h, 8.0 * 0.3048 * 60.0 * FLOOR_M2, 1e-4);
}

#[test]
fn a_house_at_rest_is_as_the_advice_has_it() {
    let run = run(&vented(), &BRIGHT);
    // The iteration of the season stops within 0.005 K of some 20.
    agrees(last(&run.hours.house_air_c), advice(&run).rise_as_it_is_k, 1e-3);
    agrees(last(&run.hours.air_exchange_m3_per_h), advice(&run).flow_as_it_is_m3_per_h, 1e-3);
}

#[test]
fn wind_helps_and_without_a_height_it_is_all_there_is() {
    let mut scenario = vented();
    let hour = Hour { wind_m_per_s: 5.0, ..BRIGHT };
    let both = advice(&run(&scenario, &hour));
    scenario.vents.height_difference_m = 0.0;
    let wind_alone = advice(&run(&scenario, &hour));
    assert_eq!(wind_alone.openings_still_m2, None);
    // Q = 0.25 A v, site wind 0.85 of the mast's.
    let flow = wind_alone.flow_needed_m3_per_h / 3600.0;
    agrees(wind_alone.openings_windy_m2.expect("wind"), flow / (0.25 * 0.85 * 5.0), 1e-9);
    // Squares add, so that the areas' reciprocals do.
    let (still, windy) = (both.openings_still_m2.expect("a height"), both.openings_windy_m2.expect("wind"));
    agrees(windy.powi(-2), still.powi(-2) + (0.25 * 0.85 * 5.0 / flow).powi(2), 1e-9);
}

#[test]
fn the_hour_is_the_sunniest_of_the_mild_ones() {
    let scenario = bare();
    let mut climate = constant(&Hour { diffuse_w_per_m2: 100.0, ..Hour::default() });
    let set = |hour: &mut warmfold::weather::ClimateHour, outdoor_c: f64, light: f64| {
        (hour.outdoor_c, hour.global_w_per_m2, hour.diffuse_w_per_m2) = (outdoor_c, light, light);
    };
    // Of 100 hours ten are mild; the brightest of all is cold, the warmest dull, one dark and hot.
    for (k, hour) in climate.hours.iter_mut().enumerate() {
        set(hour, if k < 10 { 15.0 } else { 2.0 }, 100.0);
    }
    set(&mut climate.hours[4], 16.0, 400.0);
    set(&mut climate.hours[6], 25.0, 50.0);
    set(&mut climate.hours[8], 40.0, 0.0);
    set(&mut climate.hours[50], 1.0, 900.0);
    let plan = Plan::new(&scenario, bundled_catalogue()).expect("a plan");
    let drives = drives_of(&plan, DriveSettings::of(&scenario), &climate, 0..100).0;
    let series = HourlySeries { record: (0..100).collect(), ..HourlySeries::default() };
    assert_eq!(sunniest_mild_hour(&series, &drives, &climate), Some(4));
    assert_eq!(run(&scenario, &Hour::default()).summary.air_advice, None, "a season without sun");
}

fn changes(scenario: &Scenario, hour: &Hour) -> (ScenarioRun, AirChanges) {
    let climate = constant(hour);
    let whole = warmfold::season::run_scenario(&study(), scenario, &climate, bundled_catalogue(), &|| false);
    let whole = whole.expect("a run");
    let changes = air_changes(&study(), scenario, &climate, bundled_catalogue(), &whole.summary, &|| false);
    (whole, changes.expect("runs"))
}

#[test]
fn an_hour_of_airing_costs_the_heat_of_its_air() {
    let mut scenario = bare();
    scenario.heater.rated_w = 20_000.0;
    let (whole, changes) = changes(&scenario, &Hour::default());
    let airing = changes.morning_airing;
    // Ten changes in one hour of each of three days, 10 K.
    let by_hand_kwh = 3.0 * RHO_CP * VOLUME_M3 * 10.0 * HELD_C / 3.6e6;
    agrees(airing.heat_kwh, by_hand_kwh, 10.0 * AT_REST);
    let price = study().prices.electricity.price_per_kwh;
    agrees(airing.cost.expect("electricity has a price"), price * airing.heat_kwh, 1e-9);
    assert!(airing.hours_above_35_c == 0 && airing.hours_tent_wall_wet.is_none());
    assert_eq!((changes.higher_openers, changes.flue), (None, None));
    assert!(whole.summary.heat_delivered_kwh > 0.0);
}

#[test]
fn a_flue_takes_the_water_out_and_a_fifth_of_the_heat() {
    let (mut scenario, _) = burning();
    scenario.heater.rated_w = 20_000.0;
    let (whole, changes) = changes(&scenario, &Hour::default());
    let flue = changes.flue.expect("a flame without a flue");
    assert!(whole.summary.damp.hours_skin_wet > 60, "{:?}", whole.summary.damp);
    assert_eq!(flue.hours_skin_wet, -(whole.summary.damp.hours_skin_wet as i64));
    // The house is held all the same.
    assert!(flue.heat_kwh.abs() < 1e-9);
    assert!(changes.morning_airing.hours_skin_wet < 0, "{:?}", changes.morning_airing);
    // What it burns for the same heat: 0.921 before, the 80 % of a common unit heater after.
    let flued = flued(&scenario, bundled_catalogue()).expect("a flame").heater;
    assert!(flued.vented && flued.efficiency == 0.80);
    scenario.heater.vented = true;
    assert_eq!(self::changes(&scenario, &Hour::default()).1.flue, None);
}

#[test]
fn openers_are_raised_to_the_end_of_common_practice() {
    let mut scenario = vented();
    scenario.vents.fan_present = true;
    (scenario.vents.opens_at_c, scenario.vents.full_at_c, scenario.vents.fan_starts_at_c) = (12.0, 20.0, 26.0);
    let higher = with_higher_openers(&scenario).expect("they start low").vents;
    assert_eq!((higher.opens_at_c, higher.full_at_c, higher.fan_starts_at_c), (24.0, 32.0, 26.0));
    assert!(scenario.vents.begin_outside_practice() && !higher.begin_outside_practice());
    scenario.vents.opens_at_c = 24.0;
    assert_eq!(with_higher_openers(&scenario), None);
    (scenario.vents.present, scenario.vents.opens_at_c) = (false, 12.0);
    assert_eq!(with_higher_openers(&scenario), None, "no vents, nothing to raise");
}
