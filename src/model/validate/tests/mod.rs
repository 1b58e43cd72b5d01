//! Each rule broken once, on its own: here those of the whole study, in [`parts`] those between the parts of a scenario.

mod parts;

use super::*;
use crate::model::bundled_catalogue;
use crate::model::{
    BehindPartyWall, CostLine, CutStarts, Drawn, Fuel, FuelPrice, FuelUnit, HeatTarget, PartCovering, PartException,
    Scenario, Shape, Sheet, Tightness, WeatherChoice, Zone,
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
fn a_power_cut_has_a_day_of_the_season() {
    let at = |month, day, hour| found(|study| study.hard_night.cut_starts = CutStarts::At { month, day, hour });
    assert_eq!(at(12, 24, 17), Vec::<String>::new());
    one(&at(7, 1, 17), "hard_night.cut_starts", &["outside the season", "coldest twelve hours"]);
    one(&at(2, 30, 17), "hard_night.cut_starts", &["no day 30"]);
    one(&at(12, 24, 24), "hard_night.cut_starts", &["24", "from 0 to 23"]);
    one(&found(|study| study.hard_night.cut_hours = 0), "hard_night.cut_hours", &["from 1 to 96"]);
    let mut study = Study::default();
    study.hard_night.cut_starts = CutStarts::At { month: 7, day: 1, hour: 17 };
    assert!(problems(&study, bundled_catalogue()).iter().all(|p| p.severity() == Severity::Warning));
}

#[test]
fn winters_are_neither_too_few_for_one_in_ten_nor_without_end() {
    assert_eq!(found(|study| study.many_winters.count = 1000), Vec::<String>::new());
    for count in [19, 1001] {
        one(&found(|study| study.many_winters.count = count), "many_winters.count", &["20 to 1", "000"]);
    }
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
        piped: false,
        source: "weighed".to_owned(),
    };
    one(&found(|s| s.own.fuels.push(fuel.clone())), "own.fuels[0].units[0].kwh_gross_per_unit", &["0 kWh"]);
    one(&found(|s| s.own.fuels.push(Fuel { units: Vec::new(), ..fuel.clone() })), "own.fuels[0].units", &["add one"]);
}

#[test]
fn a_purchase_that_lasts_no_time_is_refused() {
    let line = |life_years| CostLine { life_years, ..CostLine::default() };
    one(&found(|s| s.scenarios[0].costs.push(line(0.0))), "scenarios[0].costs[0].life_years", &["0.5"]);
    assert!(found(|s| s.scenarios[0].costs.push(line(4.0))).is_empty());
    one(&found(|s| s.prices.winters = 0), "prices.winters", &["1"]);
}
