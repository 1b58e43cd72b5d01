//! Any study gives a sound page.

use super::opening::{opened, runs};
use super::{DEMOS, class_is, page, row_of, saving, sound, warmfold, words};
use warmfold::model::{CostLine, Measure, Scenario, Shape, Study, bundled_catalogue};
use warmfold::report::{Explored, Report, WeatherUsed, html};
use warmfold::season::ScenarioRun;
use warmfold::units::UnitSystem;

#[test]
fn the_worked_examples_print_in_both_unit_systems() {
    let folder = tempfile::tempdir().expect("a folder");
    for demo in DEMOS {
        for units in ["metric", "imperial"] {
            let out = folder.path().join(format!("{units}.html"));
            let output = warmfold(&["report", demo, "--out", &out.to_string_lossy(), "--units", units]);
            assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
            let page = std::fs::read_to_string(&out).expect("written");
            let document = sound(&page, demo);
            let text = words(document.root_element());
            assert_eq!(text.contains("°F"), units == "imperial", "{demo}");
            assert!(text.contains(env!("CARGO_PKG_VERSION")));
            for heading in [
                "In short",
                "The houses",
                "Side by side",
                "The winter",
                "Hard nights",
                "Power cut",
                "Air",
                "Damp",
                "Prices",
                "Cautions",
                "Sources",
            ] {
                assert!(text.contains(heading), "{demo}: {heading}");
            }
        }
    }
}

#[test]
fn names_from_the_study_are_escaped_everywhere() {
    let (mut study, climate) = opened();
    let nasty = "<b>&\" </td>";
    study.title = format!("{nasty} title");
    study.notes = format!("{nasty} notes");
    study.prices.electricity.origin = nasty.to_owned();
    study.prices.currency = "<$>".to_owned();
    study.scenarios.truncate(2);
    study.scenarios[0].name = nasty.to_owned();
    study.scenarios[1].notes = nasty.to_owned();
    study.scenarios[0].crop.name = nasty.to_owned();
    study.scenarios[0].costs =
        vec![CostLine { measure: Measure::Other, note: nasty.to_owned(), price: 3.0, life_years: 2.0 }];
    let page = page(&study, &climate, UnitSystem::Metric, &runs(&study, &climate), Vec::new());
    let document = sound(&page, "nasty");
    assert!(!document.descendants().any(|node| node.has_tag_name("b") && words(node).is_empty()));
    let named = document.descendants().filter(|node| class_is(node, "named") && words(*node) == nasty);
    assert!(named.count() >= 4, "the name stands as typed where the scenario is named");
    assert!(words(document.root_element()).contains("<$>"));
}

#[test]
fn one_scenario_and_many_with_long_names_fit() {
    let (study, climate) = opened();
    let long =
        "Inner tent over hoops round the long bench run, with film, fleece, drums and a heater of its own ".repeat(2);
    let runs = runs(&study, &climate);
    for count in [1, 6, 15] {
        let mut study = study.clone();
        let scenario = |i: usize| Scenario { name: format!("{long}{i}"), ..study.scenarios[i % 4].clone() };
        study.scenarios = (0..count).map(scenario).collect();
        let runs: Vec<ScenarioRun> = (0..count).map(|i| runs[i % 4].clone()).collect();
        let page = page(&study, &climate, UnitSystem::Imperial, &runs, Vec::new());
        let document = sound(&page, "long names");
        let widest = document
            .descendants()
            .filter(|node| node.has_tag_name("tr"))
            .map(|row| row.children().filter(|cell| cell.has_tag_name("td") || cell.has_tag_name("th")).count());
        assert!(widest.max().expect("tables") <= 9, "more columns than a page holds");
        assert_eq!(row_of(&document, "heat").len(), count);
        // A cited source is an "engineering reference"; what scenarios are compared with is "the reference".
        assert_eq!(words(document.root_element()).contains("the reference"), count > 1, "{count}");
        assert_eq!(document.descendants().filter(|node| class_is(node, "house")).count(), count);
    }
}

#[test]
fn odd_studies_give_a_page_without_broken_numbers() {
    let (study, climate) = opened();
    let bare = |change: &dyn Fn(&mut Study)| {
        let mut study = study.clone();
        study.scenarios.truncate(2);
        change(&mut study);
        study
    };
    let odd: [(&str, Study); 6] = [
        ("no heater", bare(&|s| s.scenarios.iter_mut().for_each(|s| s.heater.present = false))),
        ("no price", bare(&|s| s.prices.fuels.clear())),
        (
            "nothing known costs",
            bare(&|s| {
                s.prices.fuels.clear();
                s.scenarios.remove(0);
            }),
        ),
        (
            "a week",
            bare(&|s| {
                (s.season.from_month, s.season.from_day, s.season.to_month, s.season.to_day) = (12, 29, 1, 4);
            }),
        ),
        (
            "all hidden, free",
            bare(&|s| {
                s.scenarios.iter_mut().for_each(|s| s.shown = false);
                s.prices.electricity.price_per_kwh = 0.0;
            }),
        ),
        (
            "shapes",
            bare(&|s| {
                s.scenarios[0].house.shape = Shape::FlatBox;
                s.scenarios[1].house.shape = Shape::LeanTo;
                s.scenarios[1].heater.setpoint_day_c = None;
                s.scenarios[1].heater.rated_w = 0.0;
            }),
        ),
    ];
    for (what, study) in odd {
        let runs = runs(&study, &climate);
        let saving = saving(&study, &climate, &runs);
        for units in [UnitSystem::Metric, UnitSystem::Imperial] {
            sound(&page(&study, &climate, units, &runs, saving.clone()), what);
        }
    }
}

#[test]
fn a_study_that_was_not_run_still_gives_its_inputs() {
    let (study, climate) = opened();
    let report = Report {
        study: &study,
        catalogue: bundled_catalogue(),
        weather: WeatherUsed { climate: &climate, credit: "", notes: &[] },
        runs: Vec::new(),
        saving: Vec::new(),
        air: Vec::new(),
        hard_nights: Vec::new(),
        explored: Explored::default(),
        marks: &[],
        units: UnitSystem::Metric,
        program_version: "1.2.3",
    };
    let page = html(&report);
    let text = words(sound(&page, "not run").root_element());
    assert!(text.contains("could not be run") && text.contains("Inputs of the reference"));
}
