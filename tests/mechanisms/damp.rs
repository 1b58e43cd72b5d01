//! Vapour: outdoor air, flames, wet beds, the sun's share, cold covers, the tent.

use warmfold::model::{Drawn, Heater, NightCover, Scenario, TentOpening, Tightness, Zone};
use warmfold::season::ScenarioRun;

use crate::house::{AT_REST, FLOOR_M2, HELD_C, RHO_CP, VOLUME_M3, agrees, bare, film_u, h_r, last, run, skin_m2};
use crate::tent::wet_film_u;
use crate::weather::Hour;

/// Vapour of saturated air, kg/m³: Magnus over water and the gas law, written out.
fn saturated(t_c: f64) -> f64 {
    611.2 * (17.62 * t_c / (243.12 + t_c)).exp() / (461.524 * (273.15 + t_c))
}

/// m³/s from which a cover takes what is above its saturation.
fn transfer(area_m2: f64) -> f64 {
    2.5 / RHO_CP * area_m2
}

/// Inner side of the bare skin at night, °C.
fn inner_skin_c(u: f64) -> f64 {
    HELD_C - 0.13 * u * HELD_C
}

/// The bare house with one air change an hour at its own weather: calm, 10 K.
pub fn leaky() -> (Scenario, f64) {
    let mut scenario = bare();
    scenario.house.tightness = Tightness::Rate(3.0);
    let (drive, design): (f64, f64) = (0.000_145 * HELD_C, 0.000_145 * 20.0 + 0.000_319 * 6.7 * 6.7);
    (scenario, 3.0 * (drive / design).sqrt() * VOLUME_M3 / 3600.0)
}

/// Density in the last hour, kg/m³.
fn house_density(run: &ScenarioRun) -> f64 {
    last(&run.hours.damp.house_humidity) * saturated(HELD_C)
}

/// Straight lines in the table of saturation: 3·10⁻⁵, and what is at rest.
const TABLE: f64 = 2e-4;

#[test]
fn without_sources_the_house_holds_the_vapour_of_outdoors() {
    let (scenario, air_m3_per_s) = leaky();
    let run = run(&scenario, &Hour::default());
    agrees(house_density(&run), saturated(0.0), TABLE);
    agrees(last(&run.hours.air_exchange_m3_per_h), 3600.0 * air_m3_per_s, AT_REST);
    assert_eq!(run.summary.damp.hours_skin_wet, 0);
    assert!(run.summary.damp.skin_condensed_kg == 0.0 && run.summary.damp.mist_kg == 0.0);
    assert!(run.summary.damp.evaporated_kg == 0.0 && run.summary.damp.burner_water_kg == 0.0);
}

/// A propane heater without a flue: the heater holds the house as the electric one does.
pub fn burning() -> (Scenario, f64) {
    let (mut scenario, air_m3_per_s) = leaky();
    (scenario.heater.fuel, scenario.heater.efficiency) = ("propane".to_owned(), 0.921);
    (scenario, air_m3_per_s)
}

/// Propane C₃H₈: four molecules of water of 18.015 from one of 44.097 g/mol; 50.35 MJ/kg gross.
fn propane_water_kg(heat_j: f64) -> f64 {
    heat_j / 0.921 / 50.35e6 * 4.0 * 18.015 / 44.097
}

#[test]
fn a_flame_without_a_flue_leaves_its_water_on_the_cover() {
    let (scenario, air_m3_per_s) = burning();
    let run = run(&scenario, &Hour::default());
    let heat_w = last(&run.hours.heater_w);
    let heat_j = 3.6e6 * run.summary.heat_delivered_kwh;
    // Molar masses as printed have five digits.
    agrees(run.summary.damp.burner_water_kg, propane_water_kg(heat_j), 1e-4);
    // At rest: water of the flame = what air carries out + what condenses.
    let (cover, cold) = (transfer(skin_m2()), saturated(inner_skin_c(film_u(0.0, h_r(0.0, 0.0), 0.0))));
    let density = (propane_water_kg(heat_w) + air_m3_per_s * saturated(0.0) + cover * cold) / (air_m3_per_s + cover);
    agrees(house_density(&run), density, TABLE);
    let condensed_g = 3.6e6 * transfer(1.0) * (density - cold);
    assert!(condensed_g > 1.0);
    // The difference of two densities of 7 g/m³ by less than 1: the table's error counts tenfold.
    agrees(last(&run.hours.damp.skin_condensation_g_per_m2h), condensed_g, 10.0 * TABLE);
    let hours = run.summary.season_hours;
    assert!(run.summary.damp.hours_skin_wet >= hours - 1, "{} of {hours}", run.summary.damp.hours_skin_wet);
}

#[test]
fn only_what_burns_inside_makes_water() {
    let (mut scenario, _) = burning();
    let burnt = |change: &dyn Fn(&mut Heater), scenario: &mut Scenario| {
        change(&mut scenario.heater);
        run(scenario, &Hour::default()).summary.damp.burner_water_kg
    };
    assert!(burnt(&|_| (), &mut scenario) > 0.0);
    assert!(burnt(&|h| h.vented = true, &mut scenario) == 0.0);
    assert!(burnt(&|h| (h.vented, h.heat_pump) = (false, true), &mut scenario) == 0.0);
    // A fuel whose hydrogen is not known: what its gross heat has above its net, 6 % of heating oil's.
    let oil_kg = burnt(&|h| (h.heat_pump, h.fuel) = (false, "heating-oil".to_owned()), &mut scenario);
    let heat_j = 3.6e6 * run(&scenario, &Hour::default()).summary.heat_delivered_kwh;
    agrees(oil_kg, heat_j / 0.921 * 0.06 / 2.442e6, 1e-9);
}

#[test]
fn a_wet_bed_evaporates_by_night_only() {
    let (mut scenario, air_m3_per_s) = leaky();
    scenario.house.planted_share = 0.2;
    let dark = run(&scenario, &Hour::default());
    let bed = 0.2 * FLOOR_M2 / 1200.0;
    // Neither edge nor ground: the floor is as warm as the air.
    let density = (air_m3_per_s * saturated(0.0) + bed * saturated(HELD_C)) / (air_m3_per_s + bed);
    assert!(density < saturated(inner_skin_c(film_u(0.0, h_r(0.0, 0.0), 0.0))), "the cover stays dry");
    agrees(house_density(&dark), density, TABLE);
    // 40 W/m² of light: the sun's share, 2.45 MJ/kg, and no bed.
    let light = run(&scenario, &Hour { diffuse_w_per_m2: 40.0, ..Hour::default() });
    let vapour_kg = 3600.0 * light.hours.vapour_w.iter().sum::<f64>() / 2.45e6;
    agrees(light.summary.damp.evaporated_kg, vapour_kg, 1e-12);
}

#[test]
fn what_the_air_cannot_hold_is_mist() {
    let (mut scenario, _) = leaky();
    let tent = &mut scenario.tent;
    (tent.present, tent.opening, tent.planted_share, tent.air_changes_per_h) = (true, TentOpening::Never, 1.0, 0.0);
    scenario.crop.transpiration_share = 0.7;
    let run = run(&scenario, &Hour { diffuse_w_per_m2: 400.0, ..Hour::default() });
    let (tent_c, house_c) = (last(&run.hours.tent_air_c), last(&run.hours.house_air_c));
    let wall_c = tent_c - 0.13 * wet_film_u() * (tent_c - house_c);
    let wall_kg_per_s = transfer(4.0 * 1.2 + 2.0 * (4.0 + 1.2) * 0.9) * (saturated(tent_c) - saturated(wall_c));
    let vapour_kg_per_s = last(&run.hours.vapour_w) / 2.45e6;
    assert!(vapour_kg_per_s > wall_kg_per_s, "{vapour_kg_per_s} {wall_kg_per_s}");
    agrees(last(&run.hours.damp.tent_mist_g_per_h), 3.6e6 * (vapour_kg_per_s - wall_kg_per_s), 10.0 * TABLE);
    agrees(last(&run.hours.damp.tent_humidity), 1.0, 1e-12);
    // The crop stands in the tent; the first hour begins as dry as outdoors.
    assert!(run.summary.damp.hours_crop_humidity_90 >= run.summary.season_hours - 1);
}

#[test]
fn a_drawn_cover_is_the_surface_that_runs_wet() {
    let (mut scenario, _) = burning();
    let open = run(&scenario, &Hour::default());
    scenario.night_cover = NightCover { present: true, drawn: Drawn::BySun, ..NightCover::default() };
    let drawn = run(&scenario, &Hour::default());
    let u = film_u(0.0, h_r(0.0, 0.0), 0.10);
    let condensed_g = last(&drawn.hours.damp.skin_condensation_g_per_m2h);
    let cold = saturated(inner_skin_c(u));
    agrees(condensed_g, 3.6e6 * transfer(1.0) * (house_density(&drawn) - cold), 10.0 * TABLE);
    assert!(house_density(&drawn) > house_density(&open), "a warmer surface leaves more in the air");
}

#[test]
fn a_tent_keeps_its_vapour_and_gives_the_house_what_its_air_takes() {
    let (mut scenario, air_m3_per_s) = leaky();
    let tent = &mut scenario.tent;
    (tent.present, tent.opening, tent.planted_share, tent.air_changes_per_h) = (true, TentOpening::Never, 1.0, 2.0);
    scenario.crop.zone = Zone::Tent;
    let run = run(&scenario, &Hour::default());
    let (base_m2, volume_m3) = (4.0 * 1.2, 4.0 * 1.2 * 0.9);
    let tent_c = last(&run.hours.tent_air_c);
    let exchange = 2.0 * volume_m3 / 3600.0;
    let bed = base_m2 / 1200.0;
    let bed_density = saturated(last(&run.hours.tent_floor_c));
    let inside = last(&run.hours.damp.tent_humidity) * saturated(tent_c);
    let house = house_density(&run);
    // Unheated, the tent is as warm as the house: its wall stays dry while its bed evaporates into house and outdoors.
    agrees(bed * (bed_density - inside), exchange * (inside - house), 1e-2);
    agrees(exchange * (inside - house), air_m3_per_s * (house - saturated(0.0)), 1e-2);
    assert!(run.summary.damp.hours_tent_wall_wet == Some(0) && inside > house);
}

#[test]
fn a_cover_below_freezing_gathers_frost() {
    let (scenario, _) = burning();
    let outdoor_c = -20.0;
    let run = run(&scenario, &Hour { outdoor_c, ..Hour::default() });
    let inner_c = HELD_C - 0.13 * film_u(0.0, h_r(outdoor_c, outdoor_c), 0.0) * (HELD_C - outdoor_c);
    assert!(inner_c < -3.0, "{inner_c}");
    // Magnus over ice; over water it would hold 3 % more at −3 °C.
    let frosted = 611.2 * (22.46 * inner_c / (272.62 + inner_c)).exp() / (461.524 * (273.15 + inner_c));
    let condensed_g = 3.6e6 * transfer(1.0) * (house_density(&run) - frosted);
    agrees(last(&run.hours.damp.skin_condensation_g_per_m2h), condensed_g, 10.0 * TABLE);
}
