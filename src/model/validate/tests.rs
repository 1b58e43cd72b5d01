//! Each rule broken once, on its own.

use super::*;
use crate::model::bundled_catalogue;
use crate::model::{
    BehindPartyWall, Drawn, Fuel, FuelPrice, FuelUnit, HeatTarget, PartCovering, PartException, Scenario, Shape, Sheet,
    Tightness, WeatherChoice, Zone,
};
use crate::model::{Part, TentBase, TentOpening};
use crate::units::UnitSystem;

/// Breaks the default study and returns `path: text` of what is found.
fn found(broken: impl FnOnce(&mut Study)) -> Vec<String> {
    let mut study = Study::default();
    broken(&mut study);
    problems(&study, bundled_catalogue()).iter().map(ToString::to_string).collect()
}

/// Breaks the first scenario.
fn in_scenario(broken: impl FnOnce(&mut Scenario)) -> Vec<String> {
    found(|study| {
        if let Some(scenario) = study.scenarios.first_mut() {
            broken(scenario);
        }
    })
}

/// Exactly one problem, at this path, with these words in its text.
fn one(found: &[String], path: &str, words: &[&str]) {
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].starts_with(&format!("{path}: ")), "{found:?}");
    for word in words {
        assert!(found[0].contains(word), "{found:?} lacks {word}");
    }
}

#[test]
fn the_default_study_is_sound() {
    assert_eq!(found(|_| {}), Vec::<String>::new());
    assert_eq!(in_scenario(|s| s.tent.present = true), Vec::<String>::new());
}

#[test]
fn all_problems_are_found_at_once_and_graded() {
    let mut study = Study::default();
    study.season.to_month = 13;
    study.scenarios[0].house.length_m = -1.0;
    study.scenarios[0].heater.fuel = "propane".to_owned();
    let all = problems(&study, bundled_catalogue());
    let paths: Vec<_> = all.iter().map(|p| p.path.as_str()).collect();
    // A house without length holds no bench either.
    assert_eq!(
        paths,
        [
            "season.to_month",
            "scenarios[0].house.length_m",
            "scenarios[0].bench.length_m",
            "scenarios[0].bench.count",
            "scenarios[0].heater.fuel"
        ]
    );
    assert_eq!(all[1].severity(), Severity::Error);
    assert_eq!(all[1].scenario, Some(0));
    assert_eq!(all[4].severity(), Severity::Warning);
}

#[test]
fn numbers_outside_their_range_name_value_range_and_unit() {
    let wide = in_scenario(|s| s.house.width_m = 25.0);
    one(&wide, "scenarios[0].house.width_m", &["Width", "25 m", "from 0.3 m to 20 m"]);
    one(
        &in_scenario(|s| s.heater.rated_w = f64::NAN),
        "scenarios[0].heater.rated_w",
        &["not a number", "0 W to 200000 W"],
    );
    one(
        &in_scenario(|s| s.heater.setpoint_night_c = Some(f64::INFINITY)),
        "scenarios[0].heater.setpoint_night_c",
        &["not a number"],
    );
    one(
        &in_scenario(|s| s.standby.setpoint_day_c = Some(99.0)),
        "scenarios[0].standby.setpoint_day_c",
        &["99 °C", "-5 °C to 35 °C"],
    );
    one(&in_scenario(|s| s.house.tightness = Tightness::Rate(31.0)), "scenarios[0].house.tightness", &["31 per hour"]);
    one(
        &in_scenario(|s| s.house.behind_party_wall = BehindPartyWall::HeldAt(f64::NAN)),
        "scenarios[0].house.behind_party_wall",
        &[],
    );
    one(&in_scenario(|s| s.tent.opening = TentOpening::Above(99.0)), "scenarios[0].tent.opening", &["0 °C to 60 °C"]);
    one(
        &in_scenario(|s| s.night_cover.drawn = Drawn::Between { from_hour: 25.0, to_hour: 7.0 }),
        "scenarios[0].night_cover.drawn.from_hour",
        &["0 h to 24 h"],
    );
    one(&found(|s| s.site.latitude_deg = Some(91.0)), "site.latitude_deg", &["-90 ° to 90 °"]);
    one(&found(|s| s.prices.electricity.price_per_kwh = -0.1), "prices.electricity.price_per_kwh", &[]);
}

#[test]
fn texts_follow_the_family_of_units() {
    let mut study = Study::default();
    study.scenarios[0].house.width_m = 25.0;
    let text = problems(&study, bundled_catalogue())[0].text(UnitSystem::Imperial);
    // 20 m = 65.6168 ft exactly to four decimals.
    assert!(text.contains("to 65.6168 ft"), "{text}");
}

#[test]
fn study_wide_rules() {
    one(&found(|s| s.season.from_day = 32), "season.from_day", &["1 to 31"]);
    one(
        &found(|s| (s.season.to_month, s.season.to_day) = (4, 31)),
        "season.to_day",
        &["month 4 has no day 31", "1 to 30"],
    );
    one(&found(|s| (s.season.to_month, s.season.to_day) = (2, 29)), "season.to_day", &["1 to 28"]);
    one(&found(|s| s.site.weather = WeatherChoice::Station(" ".to_owned())), "site.weather", &["empty"]);
    one(&found(|s| s.scenarios.clear()), "scenarios", &["at least one"]);
    one(&found(|s| s.reference = 1), "reference", &["counted from 0", "0 to 0"]);
    one(&found(|s| s.scenarios[0].name.clear()), "scenarios[0].name", &["empty"]);
    one(&found(|s| s.scenarios.push(Scenario::default())), "scenarios[1].name", &["\"Scenario\" stands twice"]);
    let many = found(|s| {
        s.scenarios = (0..=MOST_SCENARIOS).map(|i| Scenario { name: i.to_string(), ..Scenario::default() }).collect();
    });
    one(&many, "scenarios", &["51", "50"]);
}

#[test]
fn catalogue_keys_get_the_nearest_known_name() {
    one(
        &in_scenario(|s| s.covering.sheets = vec!["flim".to_owned()]),
        "scenarios[0].covering.sheets[0]",
        &["did you mean \"film\"?"],
    );
    one(
        &in_scenario(|s| s.tent.sheets = vec!["film".to_owned(), "flece".to_owned()]),
        "scenarios[0].tent.sheets[1]",
        &["\"fleece\""],
    );
    one(
        &in_scenario(|s| s.night_cover.screen = "energie-screen".to_owned()),
        "scenarios[0].night_cover.screen",
        &["\"energy-screen\""],
    );
    let fuel = in_scenario(|s| {
        s.heater.present = false;
        s.heater.fuel = "parafin".to_owned();
    });
    one(&fuel, "scenarios[0].heater.fuel", &["there is no fuel \"parafin\"", "kerosene"]);
}

#[test]
fn coverings() {
    one(&in_scenario(|s| s.covering.sheets.clear()), "scenarios[0].covering.sheets", &["at least one sheet"]);
    one(
        &in_scenario(|s| s.covering.sheets = vec!["bubble-liner".to_owned(), "glass".to_owned()]),
        "scenarios[0].covering.sheets[0]",
        &["liner", "outermost"],
    );
    let exception = |part, covering| PartException { part, covering };
    one(
        &in_scenario(|s| s.covering.exceptions = vec![exception(Part::Back, PartCovering::Opaque(9.0))]),
        "scenarios[0].covering.exceptions[0].covering",
        &["0.05 W/m²K to 7 W/m²K"],
    );
    one(
        &in_scenario(|s| s.covering.exceptions = vec![exception(Part::Ends, PartCovering::Opaque(0.5)); 2]),
        "scenarios[0].covering.exceptions[1].part",
        &["\"Ends\" stands twice"],
    );
    one(
        &in_scenario(|s| {
            s.house.shape = Shape::LeanTo;
            s.covering.exceptions = vec![exception(Part::Back, PartCovering::Opaque(0.5))];
        }),
        "scenarios[0].covering.exceptions[0].part",
        &["party wall"],
    );
    one(
        &in_scenario(|s| {
            s.night_cover.present = true;
            s.night_cover.parts.clear();
        }),
        "scenarios[0].night_cover.parts",
        &["no part"],
    );
}

#[test]
fn heights_of_the_house() {
    for shape in [Shape::Gable, Shape::LeanTo, Shape::Tunnel] {
        let low = in_scenario(|s| {
            s.house.shape = shape;
            s.house.ridge_height_m = 1.5;
        });
        one(&low, "scenarios[0].house.ridge_height_m", &["1.5 m", "1.6 m"]);
    }
    let flat = in_scenario(|s| {
        s.house.shape = Shape::FlatBox;
        s.house.eaves_height_m = 0.1;
        s.bench.present = false;
    });
    one(&flat, "scenarios[0].house.eaves_height_m", &["0.2 m"]);
}

#[test]
fn a_tent_that_does_not_fit_names_corner_and_overlap() {
    // Gable 3 m wide, eaves 1.6 m, ridge 2.4 m: 0.6 m off the middle the roof is at 1.6 + 0.8·(1 − 0.6/1.5) = 2.08 m.
    let high = in_scenario(|s| {
        s.tent.present = true;
        (s.tent.height_m, s.tent.base_height_m) = (1.5, 0.8);
    });
    assert_eq!(high.len(), 2, "{high:?}");
    assert!(high[0].contains("upper front corner stands 0.22 m above the roof, which is 2.08 m high"), "{high:?}");
    assert!(high[1].contains("upper back corner"), "{high:?}");
    // Moved 1.2 m forward its front side stands at 1.8 m, 0.3 m beyond the wall.
    let moved = in_scenario(|s| {
        s.tent.present = true;
        s.tent.offset_m = 1.2;
    });
    one(&moved, "scenarios[0].tent.width_m", &["front side stands 0.3 m beyond"]);
    let long = in_scenario(|s| {
        s.tent.present = true;
        s.tent.length_m = 6.5;
    });
    one(&long, "scenarios[0].tent.length_m", &["6.5 m", "6 m"]);
}

#[test]
fn a_round_arch_bounds_the_tent() {
    // Half circle of radius 1.5 m on the ground: at 0.9 m off the middle it is 1.2 m high (3-4-5 triangle).
    let place = |height_m: f64| {
        in_scenario(|s| {
            s.house.shape = Shape::Tunnel;
            (s.house.eaves_height_m, s.house.ridge_height_m) = (0.0, 1.5);
            (s.tent.present, s.tent.base) = (true, TentBase::Floor);
            (s.tent.width_m, s.tent.height_m) = (1.8, height_m);
        })
    };
    assert_eq!(place(1.2), Vec::<String>::new());
    assert!(place(1.3)[0].contains("0.1 m above the roof, which is 1.2 m high"));
}

#[test]
fn benches_and_vessels_have_room() {
    one(&in_scenario(|s| s.bench.length_m = 7.0), "scenarios[0].bench.length_m", &["7 m × 1 m", "6 m × 3 m"]);
    one(&in_scenario(|s| s.bench.count = 5), "scenarios[0].bench.count", &["20 m²", "18 m²"]);
    let in_tent = in_scenario(|s| {
        s.tent.present = true;
        s.bench.width_m = 1.3;
    });
    assert!(in_tent[0].contains("does not fit the tent's bench board"), "{in_tent:?}");
    let drums = in_scenario(|s| {
        s.water.present = true;
        s.water.vessels[0].count = 67;
    });
    // 67 × 0.27 m² = 18.09 m² on 18 m².
    one(&drums, "scenarios[0].water.vessels", &["18.09 m²", "18 m²"]);
    one(
        &in_scenario(|s| {
            (s.tent.present, s.tent.base) = (true, TentBase::Floor);
            s.bench.height_m = 0.95;
        }),
        "scenarios[0].bench.height_m",
        &["0.95 m is higher than the tent"],
    );
}

#[test]
fn vents_and_setpoints() {
    one(&in_scenario(|s| s.vents.full_at_c = 20.0), "scenarios[0].vents.full_at_c", &["not above 20 °C"]);
    let garden = in_scenario(|s| s.heater.setpoint_day_c = Some(21.0));
    one(&garden, "scenarios[0].heater.setpoint_day_c", &["heat the garden", "lower the setpoint"]);
    let tent = in_scenario(|s| {
        s.tent.present = true;
        s.heater.setpoint_day_c = Some(21.0);
    });
    assert_eq!(tent, Vec::<String>::new(), "a tent's heater does not open the vents of the house");
    let fan = in_scenario(|s| {
        (s.vents.fan_present, s.vents.fan_starts_at_c) = (true, 6.0);
        s.heater.setpoint_night_c = None;
    });
    one(&fan, "scenarios[0].heater.setpoint_day_c", &["fan starts"]);
}

#[test]
fn heaters_in_their_place() {
    one(
        &in_scenario(|s| s.heater.target = HeatTarget::Bench),
        "scenarios[0].heater.target",
        &["put up the tent or heat the air"],
    );
    one(&in_scenario(|s| s.heater.target = HeatTarget::Water), "scenarios[0].heater.target", &["add vessels"]);
    let elsewhere = in_scenario(|s| {
        (s.tent.present, s.water.present) = (true, true);
        s.heater.target = HeatTarget::Water;
    });
    one(&elsewhere, "scenarios[0].heater.target", &["no vessels stand in its zone"]);
    let standby = in_scenario(|s| {
        s.standby.present = true;
        s.standby.setpoint_night_c = Some(8.0);
    });
    one(&standby, "scenarios[0].standby.setpoint_night_c", &["8 °C at 0:00 is not below the first heater's 8 °C"]);
    let other_sensor = in_scenario(|s| {
        s.tent.present = true;
        (s.standby.present, s.standby.zone, s.standby.setpoint_night_c) = (true, Zone::House, Some(8.0));
    });
    assert_eq!(other_sensor, Vec::<String>::new());
    let pump = found(|s| {
        s.prices.fuels.push(FuelPrice::default());
        (s.scenarios[0].heater.heat_pump, s.scenarios[0].heater.fuel) = (true, "propane".to_owned());
    });
    one(&pump, "scenarios[0].heater.fuel", &["runs on electricity"]);
}

#[test]
fn prices_and_own_rows() {
    one(
        &found(|s| s.prices.fuels.push(FuelPrice { unit: "gal".to_owned(), ..FuelPrice::default() })),
        "prices.fuels[0].unit",
        &["Propane has no unit \"gal\"", "US gal"],
    );
    one(&found(|s| s.prices.fuels = vec![FuelPrice::default(); 2]), "prices.fuels[1].fuel", &["stands twice"]);
    one(
        &found(|s| s.prices.fuels.push(FuelPrice { fuel: "electricity".to_owned(), ..FuelPrice::default() })),
        "prices.fuels[0].fuel",
        &["tariff"],
    );
    let sheet = Sheet { key: "own".to_owned(), source: "measured".to_owned(), ..Sheet::default() };
    one(
        &found(|s| s.own.sheets.push(Sheet { emissivity: 0.5, ..sheet.clone() })),
        "own.sheets[0].emissivity",
        &["1.20"],
    );
    one(&found(|s| s.own.sheets = vec![sheet.clone(), sheet.clone()]), "own.sheets[1].key", &["stands twice"]);
    one(
        &found(|s| s.own.sheets.push(Sheet { source: String::new(), ..sheet.clone() })),
        "own.sheets[0].source",
        &["add a note"],
    );
    let fuel = Fuel {
        key: "straw".to_owned(),
        name: "Straw".to_owned(),
        units: vec![FuelUnit { unit: "bale".to_owned(), kwh_gross_per_unit: 0.0 }],
        net_per_gross: 0.9,
        co2_kg_per_kwh: None,
        source: "weighed".to_owned(),
    };
    one(&found(|s| s.own.fuels.push(fuel.clone())), "own.fuels[0].units[0].kwh_gross_per_unit", &["0 kWh"]);
    one(&found(|s| s.own.fuels.push(Fuel { units: Vec::new(), ..fuel.clone() })), "own.fuels[0].units", &["add one"]);
}
