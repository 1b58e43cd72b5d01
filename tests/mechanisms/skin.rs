//! The skin: wind, sky, covers and walls.

use warmfold::model::{BehindPartyWall, Drawn, NightCover, Part, PartCovering, PartException, Shape};

use crate::house::{
    AT_REST, HELD_C, LENGTH_M, agrees, bare, calm_skin_w_per_k, film_u, h_r, heat_w, roof_cosine, roof_m2, skin_m2,
    walls_m2,
};
use crate::weather::Hour;

#[test]
fn wind_strips_the_skin() {
    let hour = Hour { wind_m_per_s: 4.0, ..Hour::default() };
    // Open country: 0.85 of the mast's wind reaches the house.
    let windy = skin_m2() * film_u(0.85 * 4.0, h_r(0.0, 0.0), 0.0) * HELD_C;
    agrees(heat_w(&bare(), &hour), windy, AT_REST);
    assert!(windy > 1.15 * calm_skin_w_per_k() * HELD_C, "a sixth more at the least");
    let mut sheltered = bare();
    sheltered.house.shelter_class = 5;
    agrees(heat_w(&sheltered, &hour), skin_m2() * film_u(0.30 * 4.0, h_r(0.0, 0.0), 0.0) * HELD_C, AT_REST);
}

#[test]
fn a_cold_sky_draws_heat_from_what_sees_it() {
    let hour = Hour { sky_c: Some(-20.0), ..Hour::default() };
    let radiative = h_r(0.0, -20.0);
    // T_e = T_o − F ε_e h_r (T_o − T_sky)/h_e; film lets heat radiation through: ε_e 0.9. A wall sees half the sky.
    let felt_k = |sky_view: f64| sky_view * 0.9 * radiative * 20.0 / (4.0 + radiative);
    let (wall_k, roof_k) = (felt_k(0.5), felt_k((1.0 + roof_cosine()) / 2.0));
    let by_hand = film_u(0.0, radiative, 0.0) * (walls_m2() * (HELD_C + wall_k) + roof_m2() * (HELD_C + roof_k));
    let got = heat_w(&bare(), &hour);
    agrees(got, by_hand, AT_REST);
    assert!(got > 1.5 * calm_skin_w_per_k() * HELD_C, "half as much again in still air");
}

#[test]
fn an_infrared_blocking_film_loses_less() {
    let mut scenario = bare();
    scenario.covering.sheets = vec!["ir-film".to_owned()];
    let still = 4.0 + h_r(0.0, 0.0);
    let u = 1.0 / (1.0 / 5.33 - 1.0 / (26.8 + still) + 1.0 / still);
    agrees(heat_w(&scenario, &Hour::default()), skin_m2() * u * HELD_C, AT_REST);
}

#[test]
fn a_second_film_adds_its_gap() {
    let mut scenario = bare();
    scenario.covering.sheets = vec!["film".to_owned(), "film".to_owned()];
    let by_hand = skin_m2() * film_u(0.0, h_r(0.0, 0.0), 0.10) * HELD_C;
    agrees(heat_w(&scenario, &Hour::default()), by_hand, AT_REST);
}

#[test]
fn a_rigid_sheet_behind_adds_a_wider_gap_and_itself() {
    let mut scenario = bare();
    scenario.covering.sheets = vec!["film".to_owned(), "twinwall-4".to_owned()];
    let by_hand = skin_m2() * film_u(0.0, h_r(0.0, 0.0), 0.13 + 0.094) * HELD_C;
    agrees(heat_w(&scenario, &Hour::default()), by_hand, AT_REST);
}

#[test]
fn a_night_cover_adds_its_resistance_where_it_is_drawn() {
    let mut scenario = bare();
    scenario.night_cover = NightCover { present: true, parts: vec![Part::Roof], ..NightCover::default() };
    let u = |added: f64| film_u(0.0, h_r(0.0, 0.0), added);
    let by_hand = (walls_m2() * u(0.0) + roof_m2() * u(0.10)) * HELD_C;
    agrees(heat_w(&scenario, &Hour::default()), by_hand, AT_REST);
    // Between two clock hours: the last hour of the run ends at 24 and lies outside of 6 to 18.
    scenario.night_cover.drawn = Drawn::Between { from_hour: 6.0, to_hour: 18.0 };
    agrees(heat_w(&scenario, &Hour::default()), calm_skin_w_per_k() * HELD_C, 2e-3);
}

#[test]
fn boards_replace_the_film() {
    let mut scenario = bare();
    let boards = PartException { part: Part::Roof, covering: PartCovering::Opaque(2.0) };
    scenario.covering.exceptions = vec![boards];
    let radiative = h_r(0.0, 0.0);
    let u = 1.0 / (1.0 / 2.0 - 1.0 / (30.8 + radiative) + 1.0 / (4.0 + radiative));
    let by_hand = (walls_m2() * film_u(0.0, radiative, 0.0) + roof_m2() * u) * HELD_C;
    agrees(heat_w(&scenario, &Hour::default()), by_hand, AT_REST);
}

#[test]
fn a_warm_building_behind_the_party_wall_gives_heat() {
    let lean_to = |behind| {
        let mut scenario = bare();
        (scenario.house.shape, scenario.house.behind_party_wall) = (Shape::LeanTo, behind);
        scenario.house.width_m = 1.0;
        heat_w(&scenario, &Hour::default())
    };
    let through_w_per_k = 1.2 * LENGTH_M * 2.4;
    let (outdoors, as_warm, warmer) = (
        lean_to(BehindPartyWall::Outdoors),
        lean_to(BehindPartyWall::HeldAt(HELD_C)),
        lean_to(BehindPartyWall::HeldAt(20.0)),
    );
    agrees(outdoors - as_warm, through_w_per_k * HELD_C, 10.0 * AT_REST);
    agrees(as_warm - warmer, through_w_per_k * (20.0 - HELD_C), 10.0 * AT_REST);
}
