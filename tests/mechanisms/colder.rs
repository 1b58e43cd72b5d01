//! The coldest spell taken colder, and the worst spell, of the bare house in even weather, by hand.

use warmfold::model::{Scenario, bundled_catalogue};
use warmfold::season::colder::{AFTER_HOURS, Bound, ColderSpell, SPELL_HOURS, colder_spell};
use warmfold::season::sizing::heater_size_w;
use warmfold::season::worst_spell::Strain;
use warmfold::season::{RunOptions, ScenarioRun, run_scenario_with};
use warmfold::weather::{Climate, OutdoorFigures};

use crate::house::{HELD_C, bare, film_u, h_r, run_limited, skin_m2, study};
use crate::weather::{Hour, constant};

const OUTDOOR_C: f64 = -10.0;
const LIMIT_C: f64 = 4.0;

/// Loss of the bare house in still air under cloud, W/K.
fn skin_w_per_k(outdoor_c: f64) -> f64 {
    skin_m2() * film_u(0.0, h_r(outdoor_c, outdoor_c), 0.0)
}

fn cold() -> Hour {
    Hour { outdoor_c: OUTDOOR_C, ..Hour::default() }
}

/// The bare house with a heater that holds it at −18 °C outdoors, and a crop that stands 6 K less.
fn heated() -> Scenario {
    let mut scenario = bare();
    scenario.heater.rated_w = skin_w_per_k(-18.0) * (HELD_C + 18.0);
    scenario.crop.limit_c = LIMIT_C;
    scenario
}

fn colder(scenario: &Scenario, by_k: f64) -> ColderSpell {
    colder_spell(&study(), scenario, &constant(&cold()), bundled_catalogue(), by_k, &|| false).expect("a spell")
}

/// At the end of three days the floor has come to within e^(−72/8.3) of its rest, 0.02 % of a difference of some 20 K.
const REST_K: f64 = 0.02;

#[test]
fn a_heater_at_full_output_leaves_what_its_loss_says() {
    let scenario = heated();
    let spell = colder(&scenario, 12.0);
    let outdoor_c = OUTDOOR_C - 12.0;
    let by_hand = outdoor_c + scenario.heater.rated_w / skin_w_per_k(outdoor_c);
    assert!(LIMIT_C < by_hand && by_hand < HELD_C, "{by_hand}");
    assert!((spell.crop_air_min_c - by_hand).abs() < REST_K, "{spell:?}, by hand {by_hand}");
    assert!(spell.holds && spell.hours_below_crop_limit == 0);
    assert_eq!((spell.outdoor_min_c, spell.crop_air_c.len()), (OUTDOOR_C, SPELL_HOURS + AFTER_HOURS));
    // It runs full from the hour in which the air has fallen below its setpoint until the cold has gone.
    let full = spell.hours_at_full_output;
    assert!((SPELL_HOURS - 2..=SPELL_HOURS + 2).contains(&full), "{full}");
    // This year's is held with some to spare.
    let this_year = colder(&scenario, 0.0);
    assert!(
        this_year.holds && (this_year.crop_air_min_c - HELD_C).abs() < REST_K && this_year.hours_at_full_output == 0
    );
}

#[test]
fn the_bound_is_where_full_output_just_keeps_the_limit() {
    let scenario = heated();
    let (mut warm_c, mut cold_c) = (0.0, -60.0);
    for _ in 0..60 {
        let middle_c = f64::midpoint(warm_c, cold_c);
        let keeps = scenario.heater.rated_w >= skin_w_per_k(middle_c) * (LIMIT_C - middle_c);
        if keeps { warm_c = middle_c } else { cold_c = middle_c }
    }
    let spell = colder(&scenario, 5.0);
    // The bound is sought to 0.02 K; what is left of the floor's warmth lets it be colder by as much again.
    let found_c = spell.holds_down_to_c.expect("a bound");
    assert!((found_c - warm_c).abs() < 0.02 + REST_K, "{found_c}, by hand {warm_c}");
    assert!(spell.most_colder_by_k.is_some_and(|k| (OUTDOOR_C - k - found_c).abs() < 1e-9));
}

#[test]
fn the_heater_that_is_needed_is_the_loss_at_the_limit() {
    for by_k in [0.0, 12.0, 25.0] {
        let outdoor_c = OUTDOOR_C - by_k;
        let by_hand = skin_w_per_k(outdoor_c) * (LIMIT_C - outdoor_c);
        let needed_w = colder(&heated(), by_k).heater_needed_w.expect("a heater");
        // Sought from above, to a hundredth; the floor's rest is 0.1 % of 14 K and more.
        assert!(-0.002 < needed_w / by_hand - 1.0 && needed_w / by_hand - 1.0 < 0.012, "{needed_w}, by hand {by_hand}");
    }
}

#[test]
fn a_house_without_heat_holds_as_cold_as_its_limit() {
    let mut scenario = heated();
    scenario.heater.present = false;
    let spell = colder(&scenario, 5.0);
    // Nothing warms it: its air is the outdoor air, so that the spell would have to be as mild as the limit. What it
    // keeps of the days before is gone after one.
    assert!(!spell.holds && spell.heater_needed_w.is_none());
    assert!((spell.crop_air_min_c - (OUTDOOR_C - 5.0)).abs() < REST_K, "{spell:?}");
    // Before the spell and behind it this year's −10 °C comes in, which no milder spell takes away.
    assert_eq!(spell.bound, Bound::Never);
    assert_eq!(spell.holds_down_to_c, None);
}

/// A mild week with a still cold night and a windy one that is less cold, each from 18:00 to 06:00.
fn two_nights(still_c: f64) -> Climate {
    let mut climate = constant(&Hour { outdoor_c: 0.0, ..Hour::default() });
    for hour in &mut climate.hours {
        let night = |day: u32| (hour.day == day && hour.hour > 18) || (hour.day == day + 1 && hour.hour <= 6);
        let (outdoor_c, wind_m_per_s) = match hour.month {
            3 if night(11) => (still_c, 0.0),
            3 if night(15) => (-11.0, 12.0),
            _ => continue,
        };
        (hour.outdoor_c, hour.sky_c, hour.wind_m_per_s) = (outdoor_c, outdoor_c, wind_m_per_s);
    }
    let outdoor_c: Vec<f64> = climate.hours.iter().map(|h| h.outdoor_c).collect();
    Climate { outdoor: OutdoorFigures::of(&outdoor_c), ..climate }
}

fn week(scenario: &Scenario, still_c: f64) -> ScenarioRun {
    let mut study = study();
    (study.season.from_day, study.season.to_day) = (10, 18);
    run_scenario_with(&study, scenario, &two_nights(still_c), bundled_catalogue(), &|| false, RunOptions::default())
        .expect("a run")
}

#[test]
fn the_worst_spell_is_the_one_that_asks_most_of_the_house() {
    let mut scenario = heated();
    // A bare house in a field: single film loses a third more in wind of 12 m/s.
    let windy_u = film_u(12.0, h_r(-11.0, -11.0), 0.0);
    let (still_w, windy_w) = (skin_w_per_k(-12.0) * (HELD_C + 12.0), skin_m2() * windy_u * (HELD_C + 11.0));
    assert!(1.05 * still_w < windy_w, "{still_w} {windy_w}");
    scenario.heater.rated_w = 2.0 * windy_w;
    let held = week(&scenario, -12.0).summary;
    assert_eq!((held.power_cut.starts_at.day, held.worst_spell.by), (11, Strain::Heat));
    assert!((13..=15).contains(&held.worst_spell.starts_at.day), "{:?}", held.worst_spell);
    assert_eq!(held.worst_spell.outdoor_min_c, -11.0);
    // With a heater between the two loads only the windy night falls short of the setpoint.
    scenario.heater.rated_w = f64::midpoint(still_w, windy_w);
    let short = week(&scenario, -12.0).summary;
    assert_eq!((short.worst_spell.by, short.worst_spell.outdoor_min_c), (Strain::Setpoint, -11.0));
    // All of the season's but the hour in which the heater catches up and comes off full output.
    let (of_spell, of_season) = (short.worst_spell.below_setpoint_kh, short.degree_hours_below_setpoint_kh);
    assert!(0.9 * of_season < of_spell && of_spell <= of_season, "{of_spell} of {of_season}");
    // Without one the house follows the outdoors, and a night that is twice as cold is worse than wind.
    scenario.heater.present = false;
    let bare = week(&scenario, -22.0).summary;
    assert_eq!((bare.worst_spell.by, bare.worst_spell.outdoor_min_c), (Strain::CropLimit, -22.0));
}

#[test]
fn stores_count_down_to_the_limit() {
    let mut scenario = heated();
    scenario.water.present = true;
    let drums = &mut scenario.water.vessels[0];
    drums.zone = warmfold::model::Zone::House;
    let kg = f64::from(drums.count) * drums.litres_each;
    let spell = run_limited(&scenario, &Hour { outdoor_c: 5.0, ..Hour::default() }, true).summary.worst_spell;
    // Held at 10 °C for days, water and 0.12 m of floor at 2 MJ/m³K are 6 K above the limit. A litre is a kilogram.
    let water_kwh = kg * 4186.0 * (HELD_C - LIMIT_C) / 3.6e6;
    let floor_kwh = 0.12 * 2.0e6 * crate::house::FLOOR_M2 * (HELD_C - LIMIT_C) / 3.6e6;
    let water = spell.water.expect("water");
    // The floor has come to within 0.1 %; a drum's water takes days and is within 5 %.
    assert!((water.last_kwh / water_kwh - 1.0).abs() < 0.05, "{water:?}, by hand {water_kwh}");
    assert!((spell.floor.last_kwh / floor_kwh - 1.0).abs() < 0.002, "{:?}, by hand {floor_kwh}", spell.floor);
}

#[test]
fn margins_are_what_the_heater_has_over_its_loads() {
    let scenario = heated();
    let s = run_limited(&scenario, &cold(), false).summary;
    // Handbook U in the handbook's wind.
    let load_w = skin_m2() * 6.5 * (HELD_C - OUTDOOR_C);
    for got in [s.design_load_w_99, s.design_load_w_99_6, s.design_load_w_coldest] {
        assert!((got / load_w - 1.0).abs() < 1e-9, "{got}, by hand {load_w}");
    }
    let margin_w = s.heater_margin_w_99_6.expect("a heater");
    assert!((margin_w - (scenario.heater.rated_w - load_w)).abs() < 1e-6);
    let largest_w = skin_w_per_k(OUTDOOR_C) * (HELD_C - OUTDOOR_C);
    let margin_w = s.heater_margin_w_largest_hour.expect("a heater");
    // The house begins as warm as outdoors and is heated up in the days before the season.
    assert!((margin_w - (scenario.heater.rated_w - largest_w)).abs() < 0.01 * largest_w, "{margin_w}");
    assert_eq!(s.next_heater_w, heater_size_w(load_w));
    assert!(s.next_heater_w.is_some_and(|size_w| size_w >= 1.1 * load_w));
}
