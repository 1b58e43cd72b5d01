//! The printable report: well-formed, self-contained, and in its figures the same as the other outputs.

mod commands;
mod explored;
mod figures;
#[path = "../common/opening.rs"]
mod opening;
mod pages;
#[path = "../common/seasons.rs"]
mod seasons;
mod units;

use roxmltree::{Document, Node, ParsingOptions};
use std::process::{Command, Output};
use warmfold::model::{Scenario, Study, bundled_catalogue};
use warmfold::report::{Explored, Report, WeatherUsed, html};
use warmfold::season::ScenarioRun;
use warmfold::season::airing::{AirChanges, air_changes};
use warmfold::season::hard_night::{HardNights, hard_nights};
use warmfold::season::saving::{SavingStep, saving_steps};
use warmfold::units::UnitSystem;
use warmfold::weather::Climate;

const DEMOS: [&str; 3] =
    ["scenarios/allotment-tunnel.ron", "scenarios/box-house-cold-sun.ron", "scenarios/glass-night-tariff.ron"];

/// The page of a study that was run, with the steps of the saving as far as they are given.
fn page(study: &Study, climate: &Climate, units: UnitSystem, runs: &[ScenarioRun], saving: Saving) -> String {
    html(&Report {
        study,
        catalogue: bundled_catalogue(),
        weather: WeatherUsed { climate, credit: "a credit", notes: &["a note".into()] },
        runs: runs.iter().map(Some).collect(),
        saving,
        air: air(study, climate, runs),
        hard_nights: nights(study, climate),
        explored: Explored::default(),
        marks: &[],
        units,
        program_version: "1.2.3",
    })
}

fn air(study: &Study, climate: &Climate, runs: &[ScenarioRun]) -> Vec<Option<AirChanges>> {
    let changes = |(scenario, run): (&Scenario, &ScenarioRun)| {
        air_changes(study, scenario, climate, bundled_catalogue(), &run.summary, &|| false).ok()
    };
    study.scenarios.iter().zip(runs).map(changes).collect()
}

fn nights(study: &Study, climate: &Climate) -> Vec<Option<HardNights>> {
    let of_one = |scenario| hard_nights(study, scenario, climate, bundled_catalogue(), &|| false).ok();
    study.scenarios.iter().map(of_one).collect()
}

type Saving = Vec<Option<Vec<SavingStep>>>;

fn saving(study: &Study, climate: &Climate, runs: &[ScenarioRun]) -> Saving {
    let steps = |(scenario, run): (&Scenario, &ScenarioRun)| {
        saving_steps(study, scenario, climate, bundled_catalogue(), &run.summary, &|_| (), &|| false).ok()
    };
    study.scenarios.iter().zip(runs).map(steps).collect()
}

/// Reads the page as XML, which is stricter than any browser.
fn parsed(page: &str) -> Document<'_> {
    Document::parse_with_options(page, ParsingOptions { allow_dtd: true, ..ParsingOptions::default() })
        .unwrap_or_else(|error| panic!("not well-formed: {error}"))
}

/// A page that loads nothing, runs nothing, and prints no broken number.
fn sound<'a>(page: &'a str, what: &str) -> Document<'a> {
    let document = parsed(page);
    for word in ["<script", "http", "@import", "javascript", "<link", "<img", "<iframe", "<object"] {
        assert!(!page.contains(word), "{what}: {word}");
    }
    assert_eq!(page.matches("url(").count(), page.matches("url(#").count(), "{what}: something is loaded");
    let mut ids = Vec::new();
    for node in document.descendants() {
        let values = node.attributes().map(|a| a.value()).chain(node.text());
        for value in values.filter(|_| !node.has_tag_name("style")) {
            let words = value.split(|c: char| !c.is_alphanumeric());
            assert!(words.clone().all(|word| !matches!(word, "NaN" | "inf" | "Infinity")), "{what}: {value:?}");
        }
        for attribute in node.attributes() {
            assert!(!attribute.name().starts_with("on"), "{what}: {attribute:?}");
            assert!(!matches!(attribute.name(), "src" | "href" | "srcset"), "{what}: {attribute:?}");
        }
        ids.extend(node.attribute("id"));
    }
    for reference in page.split("url(#").skip(1).filter_map(|rest| rest.split(')').next()) {
        assert!(ids.contains(&reference), "{what}: {reference} is not on the page");
    }
    document
}

fn words(node: Node) -> String {
    node.descendants().filter(Node::is_text).filter_map(|text| text.text()).collect()
}

fn class_is(node: &Node, class: &str) -> bool {
    node.attribute("class").is_some_and(|classes| classes.split(' ').any(|c| c == class))
}

/// Printed values of a row of the tables side by side, without the differences below them.
fn row_of(document: &Document, key: &str) -> Vec<String> {
    let rows = document.descendants().filter(|node| node.attribute("data-row") == Some(key));
    let cells = rows.flat_map(|row| row.children().filter(|cell| cell.has_tag_name("td")));
    let value = |cell: Node| cell.first_element_child().map(words).unwrap_or_default();
    cells.map(value).collect()
}

fn number(text: &str) -> f64 {
    let plain: String =
        text.replace('−', "-").chars().filter(|c| c.is_ascii_digit() || matches!(c, '-' | '.')).collect();
    plain.parse().unwrap_or_else(|_| panic!("{text:?} is no number"))
}

fn warmfold(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_warmfold"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the program starts")
}
