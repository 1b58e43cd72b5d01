//! What the page prints is what was worked out: bars, marks, checks.

use super::opening::{opened, runs};
use super::{class_is, number, page, parsed, saving, sound, words};
use roxmltree::Node;
use std::path::Path;
use warmfold::checks::{Case, checks};
use warmfold::model::bundled_catalogue;
use warmfold::report::{Explored, Report, WeatherUsed, html};
use warmfold::storage::{read_bytes, read_file};
use warmfold::units::UnitSystem;

#[test]
fn the_bars_add_up_to_the_printed_totals() {
    let (study, climate) = opened();
    let runs = runs(&study, &climate);
    let page = page(&study, &climate, UnitSystem::Metric, &runs, saving(&study, &climate, &runs));
    let document = parsed(&page);
    let figures: Vec<Node> = document.descendants().filter(|node| class_is(node, "steps")).collect();
    assert_eq!(figures.len(), study.scenarios.len());
    for (figure, run) in figures.iter().zip(&runs) {
        for (column, first, last) in [
            ("heat", run.summary.baseline_heat_kwh, run.summary.heat_delivered_kwh),
            ("money", run.summary.baseline_cost.expect("priced"), f64::NAN),
        ] {
            let printed: Vec<f64> =
                figure.descendants().filter(|node| class_is(node, column)).map(|node| number(&words(node))).collect();
            assert_eq!(printed.len(), 9, "a total, seven differences, a total");
            let sum: f64 = printed[..8].iter().sum();
            assert_eq!(sum, printed[8], "{}: {column} {printed:?}", run.summary.name);
            // Rounded to whole numbers.
            assert!((printed[0] - first).abs() <= 0.5, "{column} {printed:?}");
            assert!(last.is_nan() || (printed[8] - last).abs() <= 0.5, "{column} {printed:?}");
        }
    }
}

#[test]
fn marks_are_those_of_the_cards() {
    let (study, climate) = opened();
    let runs = runs(&study, &climate);
    let with = |marks: &[usize]| {
        html(&Report {
            study: &study,
            catalogue: bundled_catalogue(),
            weather: WeatherUsed { climate: &climate, credit: "", notes: &[] },
            runs: runs.iter().map(Some).collect(),
            saving: Vec::new(),
            air: Vec::new(),
            hard_nights: Vec::new(),
            explored: Explored::default(),
            marks,
            units: UnitSystem::Metric,
            program_version: "1.2.3",
        })
    };
    let order: Vec<usize> = (0..study.scenarios.len()).collect();
    assert_eq!(with(&[]), with(&order), "a file gives marks in its order");
    let mut moved = order.clone();
    moved.rotate_left(1);
    let badges = |page: &str| -> Vec<String> {
        let document = parsed(page);
        let digest = document.descendants().find(|node| node.attribute("class") == Some("digest")).expect("a digest");
        let badges = digest.descendants().filter(|node| node.attribute("class") == Some("badge"));
        badges.map(|badge| page[badge.range()].to_owned()).collect()
    };
    let (before, mut after) = (badges(&with(&order)), badges(&with(&moved)));
    after.rotate_right(1);
    assert_eq!(before, after);
    assert_ne!(before[0], before[1]);
}

#[test]
fn every_check_is_printed_with_its_rule() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/checks/fails.ron");
    let study = read_bytes(&read_file(&path).expect("a file")).expect("a study");
    let climate = super::seasons::climate("duluth-mn");
    let runs = runs(&study, &climate);
    for units in [UnitSystem::Metric, UnitSystem::Imperial] {
        let text = page(&study, &climate, units, &runs, vec![None]);
        let document = sound(&text, "checks");
        let section = document.descendants().find(|node| class_is(node, "checks")).expect("the section");
        let printed = words(section);
        let case =
            Case { study: &study, scenario: &study.scenarios[0], catalogue: bundled_catalogue(), run: &runs[0], units };
        for check in checks(&case) {
            for part in [check.name, check.grade.name(), &check.figure, &check.rule, check.source, &check.remedy] {
                assert!(printed.contains(part), "{part:?} is not printed");
            }
        }
    }
}
