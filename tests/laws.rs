//! Laws that any plant house keeps, tried on random houses in a short cold season.

#[path = "common/seasons.rs"]
mod seasons;

use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use seasons::run;
use std::sync::LazyLock;
use warmfold::model::{
    ArchCurve, BehindPartyWall, Bench, Covering, Heater, House, NightCover, Scenario, Season, Shape, Study, Tent,
    TentBase, TentOpening, Tightness, Vessels, WaterStore, Zone,
};
use warmfold::season::{Hold, HourlySeries, RunOptions, ScenarioRun};
use warmfold::units::{STEFAN_BOLTZMANN, kelvin_from_c};
use warmfold::weather::{Climate, WeatherYear, bundled};

/// Stations with a hard winter, a sunny one and a mild cloudy one.
static CLIMATES: LazyLock<[Climate; 3]> =
    LazyLock::new(|| ["duluth-mn", "denver-co", "port-angeles-wa"].map(seasons::climate));

/// The hard winter without its sun: a further sheet takes light as well, which can cost a tent more than the sheet saves.
static DARK: LazyLock<Climate> = LazyLock::new(|| {
    let mut year = bundled::load("duluth-mn").expect("a bundled station");
    take_sun(&mut year);
    Climate::from_year(&year)
});

fn take_sun(year: &mut WeatherYear) {
    for record in &mut year.records {
        record.global_w_per_m2 = 0.0;
        record.direct_normal_w_per_m2 = 0.0;
        record.diffuse_w_per_m2 = 0.0;
    }
}

/// The last three weeks of January.
fn study() -> Study {
    Study { season: Season { from_month: 1, from_day: 10, to_month: 1, to_day: 30 }, ..Study::default() }
}

fn season(scenario: &Scenario, station: usize) -> ScenarioRun {
    run(&study(), scenario, &CLIMATES[station], RunOptions { unlimited_heat: true, ..RunOptions::default() })
}

fn heat_kwh(scenario: &Scenario, station: usize) -> f64 {
    season(scenario, station).summary.heat_delivered_kwh
}

fn house() -> impl Strategy<Value = House> {
    let shape = prop_oneof![Just(Shape::Gable), Just(Shape::LeanTo), Just(Shape::Tunnel), Just(Shape::FlatBox)];
    let arch = prop_oneof![Just(ArchCurve::Circle), Just(ArchCurve::HalfEllipse)];
    let size = (3.0..12.0, 2.5..6.0, 1.5..2.2, 0.3..1.2);
    (shape, arch, size, 0.0..360.0, 1u32..=5, 0.3..3.0, prop::bool::ANY).prop_map(
        |(shape, arch, (length_m, width_m, eaves_height_m, rise_m), front_faces_deg, shelter_class, rate, outdoors)| {
            House {
                shape,
                arch,
                length_m,
                width_m,
                eaves_height_m,
                ridge_height_m: eaves_height_m + rise_m,
                front_faces_deg,
                shelter_class,
                tightness: Tightness::Rate(rate),
                behind_party_wall: if outdoors { BehindPartyWall::Outdoors } else { BehindPartyWall::HeldAt(15.0) },
                ..House::default()
            }
        },
    )
}

fn sheet() -> impl Strategy<Value = String> {
    prop_oneof![Just("glass"), Just("film"), Just("ir-film"), Just("twinwall-8")].prop_map(str::to_owned)
}

fn tent() -> impl Strategy<Value = Tent> {
    let base = prop_oneof![Just(TentBase::Floor), Just(TentBase::Bench), Just(TentBase::InsulatedBench)];
    let opening = prop_oneof![Just(TentOpening::Never), Just(TentOpening::ByDay), Just(TentOpening::Above(28.0))];
    let size = (1.5..2.9, 0.8..2.0, 0.5..1.0);
    (base, opening, size, sheet(), 0.0..2.0).prop_map(
        |(base, opening, (length_m, width_m, height_m), sheet, air_changes_per_h)| Tent {
            present: true,
            base,
            opening,
            length_m,
            width_m,
            height_m,
            base_height_m: 0.5,
            sheets: vec![sheet],
            air_changes_per_h,
            ..Tent::default()
        },
    )
}

fn water() -> impl Strategy<Value = WaterStore> {
    let zone = prop_oneof![Just(Zone::House), Just(Zone::Tent)];
    (prop::bool::ANY, zone, 1u32..6, 20.0..208.0).prop_map(|(present, zone, count, litres_each)| {
        let surface = f64::powf(litres_each / 208.0, 2.0 / 3.0);
        let vessel = Vessels {
            zone,
            count,
            litres_each,
            exposed_area_m2_each: 1.25 * surface,
            sunlit_area_m2_each: 0.5 * surface,
            ..Vessels::default()
        };
        WaterStore { present, vessels: vec![vessel] }
    })
}

/// A heated house of any kind; the bench is as large as the smallest tent.
fn scenario() -> impl Strategy<Value = Scenario> {
    (house(), sheet(), tent(), prop::bool::ANY, water(), 2.0..12.0, prop::bool::ANY).prop_map(
        |(house, sheet, tent, with_tent, water, setpoint_c, night_cover)| Scenario {
            house,
            covering: Covering { sheets: vec![sheet], ..Covering::default() },
            night_cover: NightCover { present: night_cover, ..NightCover::default() },
            tent: Tent { present: with_tent, ..tent },
            water,
            heater: set(setpoint_c),
            bench: Bench { length_m: 1.0, width_m: 0.6, height_m: 0.5, ..Bench::default() },
            ..Scenario::default()
        },
    )
}

fn set(setpoint_c: f64) -> Heater {
    Heater { setpoint_day_c: Some(setpoint_c), setpoint_night_c: Some(setpoint_c), ..Heater::default() }
}

fn columns(hours: &HourlySeries) -> [&[f64]; 22] {
    [
        &hours.outdoor_c,
        &hours.house_air_c,
        &hours.house_floor_c,
        &hours.house_water_c,
        &hours.house_ice_share,
        &hours.tent_air_c,
        &hours.tent_floor_c,
        &hours.tent_water_c,
        &hours.tent_ice_share,
        &hours.heater_w,
        &hours.sun_w,
        &hours.vapour_w,
        &hours.skin_loss_w,
        &hours.leakage_loss_w,
        &hours.vent_loss_w,
        &hours.ground_loss_w,
        &hours.party_wall_loss_w,
        &hours.tent_loss_w,
        &hours.store_change_w,
        &hours.vent_opening,
        &hours.fan_share,
        &hours.cost,
    ]
}

/// A year without any difference: air, sky, ground and building at one temperature, no sun, wind as measured.
fn even_climate(t_c: f64) -> Climate {
    let mut year: WeatherYear = bundled::load("duluth-mn").expect("a bundled station");
    for record in &mut year.records {
        record.dry_bulb_c = t_c;
        record.infrared_w_per_m2 = Some(STEFAN_BOLTZMANN * kelvin_from_c(t_c).powi(4));
    }
    take_sun(&mut year);
    Climate::from_year(&year)
}

fn hold_h(hold: Hold) -> f64 {
    match hold {
        Hold::Hours(h) => h,
        Hold::Beyond => f64::INFINITY,
        Hold::NotApplicable => f64::NAN,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_further_sheet_never_costs_heat_in_the_dark(before in scenario(), further in sheet()) {
        let mut after = before.clone();
        after.covering.sheets.push(further);
        let [one, two] = [before, after].map(|s| {
            run(&study(), &s, &DARK, RunOptions { unlimited_heat: true, ..RunOptions::default() })
                .summary
                .heat_delivered_kwh
        });
        prop_assert!(two <= one, "{one} {two}");
    }

    #[test]
    fn a_further_sheet_on_the_tent_never_costs_heat(before in scenario(), further in sheet(), station in 0usize..3) {
        let mut after = before.clone();
        after.tent.sheets.push(further);
        let (one, two) = (heat_kwh(&before, station), heat_kwh(&after, station));
        prop_assert!(two <= one, "{one} {two}");
    }

    #[test]
    fn a_smaller_tent_never_costs_heat(before in scenario(), share in 0.7..1.0, station in 0usize..3) {
        let mut large = before;
        large.tent.present = true;
        let mut small = large.clone();
        small.tent.length_m *= share;
        small.tent.width_m *= share;
        small.tent.height_m *= share;
        let (more, less) = (heat_kwh(&large, station), heat_kwh(&small, station));
        prop_assert!(less <= more, "{more} {less}");
    }

    #[test]
    fn a_lower_setpoint_never_costs_heat(warm in scenario(), by_k in 0.5..4.0, station in 0usize..3) {
        let mut cool = warm.clone();
        cool.heater = set(warm.heater.setpoint_day_c.unwrap_or(0.0) - by_k);
        let (more, less) = (heat_kwh(&warm, station), heat_kwh(&cool, station));
        prop_assert!(less <= more, "{more} {less}");
    }

    #[test]
    fn without_a_difference_nothing_flows(mut still in scenario(), t_c in 0.5..12.0) {
        still.house.behind_party_wall = BehindPartyWall::Outdoors;
        still.heater = set(t_c);
        let run = run(&study(), &still, &even_climate(t_c), RunOptions::default());
        // Rounding of a few hundred W/K times 12 °C in double precision is below 1e-9 W; the deep ground comes from a
        // fit that may be off by 1e-12 K.
        let hours = &run.hours;
        for column in [
            &hours.heater_w,
            &hours.sun_w,
            &hours.skin_loss_w,
            &hours.leakage_loss_w,
            &hours.vent_loss_w,
            &hours.ground_loss_w,
            &hours.party_wall_loss_w,
            &hours.tent_loss_w,
            &hours.store_change_w,
        ] {
            prop_assert!(column.iter().all(|w| w.abs() < 1e-6), "{column:?}");
        }
    }

    #[test]
    fn everything_is_a_number(any in scenario(), station in 0usize..3) {
        let run = season(&any, station);
        for column in columns(&run.hours) {
            prop_assert!(column.iter().all(|value| value.is_finite()));
        }
        let heat = &run.hours.heater_w;
        prop_assert!(heat.iter().all(|w| *w >= 0.0));
        let summary = serde_json::to_string(&run.summary).expect("JSON");
        prop_assert!(!summary.contains("NaN") && !summary.contains("inf"));
    }

    #[test]
    fn more_water_never_shortens_a_power_cut(mut some in scenario(), station in 0usize..3) {
        some.water.present = true;
        // A cut that begins within 1 K of the limit is over before any water can help.
        some.heater = set(some.heater.setpoint_day_c.unwrap_or(0.0) + 1.0);
        let mut more = some.clone();
        more.water.vessels[0].count *= 2;
        let winter = Study { season: Season { from_month: 11, from_day: 15, to_month: 1, to_day: 30 }, ..Study::default() };
        let options = RunOptions { unlimited_heat: true, ..RunOptions::default() };
        let [few, many] = [some, more].map(|s| run(&winter, &s, &CLIMATES[station], options).summary.power_cut);
        let [none, some, more] = [few.without_water, few.with_water, many.with_water]
            .map(|times| hold_h(times.air_to_crop_limit_h));
        prop_assert!(none <= some, "{none} h without, {some} h with");
        // Twice the water has also taken more of the afternoon's sun from the floor: in 1 of 460 houses the air began
        // so much cooler that it held 4 s less. One step of a cut's first hours is allowed, 100 s.
        prop_assert!(some <= more + 100.0 / 3600.0, "{some} h with, {more} h with twice the water");
    }
}
