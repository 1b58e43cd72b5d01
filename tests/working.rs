//! How each headline figure was worked out: the printed numbers alone must give the printed results.

#[path = "common/seasons.rs"]
mod seasons;

use seasons::{climate, run};
use std::path::Path;
use warmfold::model::{Study, WeatherChoice, bundled_catalogue};
use warmfold::season::{RunOptions, ScenarioRun};
use warmfold::storage::load;
use warmfold::units::UnitSystem;
use warmfold::weather::Climate;
use warmfold::working::{Case, Factor, Number, Panel, Row, Topic, panels};

const STUDIES: [&str; 4] = [
    "scenarios/allotment-tunnel.ron",
    "scenarios/box-house-cold-sun.ron",
    "scenarios/glass-night-tariff.ron",
    "tests/data/checks/fails.ron",
];

fn opened(path: &str) -> (Study, Climate) {
    let study = load(Path::new(path)).expect("a study that opens");
    let WeatherChoice::Station(station) = &study.site.weather else { panic!("{path} names no station") };
    let climate = climate(station);
    (study, climate)
}

fn runs(study: &Study, climate: &Climate) -> Vec<ScenarioRun> {
    study.scenarios.iter().map(|s| run(study, s, climate, RunOptions::default())).collect()
}

/// A product of ranges.
fn product([a, b]: [f64; 2], [c, d]: [f64; 2]) -> [f64; 2] {
    let corners = [a * c, a * d, b * c, b * d];
    [corners.iter().copied().fold(f64::INFINITY, f64::min), corners.iter().copied().fold(f64::NEG_INFINITY, f64::max)]
}

/// What a pencil may get from the printed factors: every number stands for all that is rounded to it.
fn pencil(row: &Row) -> [f64; 2] {
    row.factors.iter().map(Factor::span).fold([1.0, 1.0], product)
}

/// What the rows may add up to.
fn added(rows: &[Row]) -> [f64; 2] {
    rows.iter().fold([0.0, 0.0], |[least, most], row| {
        let [a, b] = row.number.span();
        if row.taken_away { [least - b, most - a] } else { [least + a, most + b] }
    })
}

/// Whether a pencil's range meets that of the printed number; a hair for the last bit.
fn meets([least, most]: [f64; 2], printed: &Number) -> bool {
    let [low, high] = printed.span();
    let hair = 1e-9 * printed.shown.abs();
    least <= high + hair && low <= most + hair
}

/// Every line of a panel that does not follow from the numbers printed in it.
fn broken(panel: &Panel) -> Vec<String> {
    let mut broken = Vec::new();
    for account in &panel.accounts {
        for row in account.rows.iter().filter(|row| !row.factors.is_empty()) {
            if !meets(pencil(row), &row.number) {
                broken.push(format!("{}: {} = {}", row.name, row.working(), row.number.text()));
            }
        }
        if let Some((name, total)) = &account.total
            && !meets(added(&account.rows), total)
        {
            broken.push(format!("{}: {name} = {}", account.heading, total.text()));
        }
    }
    broken
}

fn panels_of(study: &Study, climate: &Climate, runs: &[ScenarioRun], at: usize, units: UnitSystem) -> Vec<Panel> {
    let catalogue = bundled_catalogue().with_own(&study.own);
    let reference =
        (at != study.reference).then(|| (study.scenarios[study.reference].name.as_str(), &runs[study.reference]));
    panels(&Case {
        study,
        scenario: &study.scenarios[at],
        climate,
        catalogue: &catalogue,
        run: &runs[at],
        reference,
        units,
    })
}

/// The studies with every scenario's panels in both families of units.
fn every_panel(mut look: impl FnMut(&str, &ScenarioRun, &[ScenarioRun], &Study, &[Panel])) {
    for path in STUDIES {
        let (study, climate) = opened(path);
        let runs = runs(&study, &climate);
        for (at, run) in runs.iter().enumerate() {
            for units in [UnitSystem::Metric, UnitSystem::Imperial] {
                let where_ = format!("{path}, {}, {units:?}", study.scenarios[at].name);
                look(&where_, run, &runs, &study, &panels_of(&study, &climate, &runs, at, units));
            }
        }
    }
}

#[test]
fn a_pencil_gets_what_is_printed() {
    let mut lines = 0;
    every_panel(|at, _, _, _, panels| {
        for panel in panels {
            assert_eq!(broken(panel), Vec::<String>::new(), "{at}, {}", panel.topic.name());
            lines += panel.accounts.iter().map(|account| account.rows.len()).sum::<usize>();
        }
    });
    assert!(lines > 500, "{lines}");
}

#[test]
fn what_is_printed_is_fine_enough_to_catch_a_slip() {
    // A slip of 3 % in any printed product must be noticed where the result is more than a few of its last digits:
    // four digits in each factor and at most four factors leave less than 1 %.
    every_panel(|at, _, _, _, panels| {
        for row in panels.iter().flat_map(|p| &p.accounts).flat_map(|a| &a.rows).filter(|r| !r.factors.is_empty()) {
            let [low, high] = row.number.span();
            if row.number.shown.abs() < 100.0 * (high - low) {
                continue;
            }
            let differs = row.factors.iter().any(|f| matches!(f, Factor::TimesDifference(..)));
            let slipped = Number { shown: row.number.shown * 1.03, ..row.number.clone() };
            assert!(differs || !meets(pencil(row), &slipped), "{at}: {} {}", row.name, row.working());
        }
    });
}

/// The numbers that a panel ends in are those of the season.
#[test]
fn the_panels_end_in_the_headline_figures() {
    let same = |number: &Number, figure: f64| (number.shown - figure).abs() <= 1e-6 * figure.abs().max(1.0);
    every_panel(|at, run, runs, study, panels| {
        let s = &run.summary;
        let of = |topic: Topic| panels.iter().find(|p| p.topic == topic);
        let total = |topic: Topic, index: usize| of(topic).and_then(|p| p.accounts[index].total.clone()).map(|t| t.1);
        assert!(total(Topic::Cost, 0).is_some_and(|t| same(&t, s.heat_delivered_kwh)), "{at}");
        let last = of(Topic::Cost).map_or(0, |p| p.accounts.len() - 1);
        assert_eq!(total(Topic::Cost, last).is_some(), s.cost.is_some(), "{at}");
        if let (Some(printed), Some(cost)) = (total(Topic::Cost, last), s.cost) {
            assert!(same(&printed, cost), "{at}");
        }
        let hours = total(Topic::BelowLimit, 0).expect("months");
        assert!(same(&hours, s.hours_below_crop_limit as f64), "{at}");
        if let Some(load) = total(Topic::Margin, 0) {
            assert!(same(&load, s.design_load_w_99_6), "{at}");
        }
        if let Some(heat) = total(Topic::Difference, 0) {
            let before = &runs[study.reference].summary;
            assert!(same(&heat, s.heat_delivered_kwh - before.heat_delivered_kwh), "{at}");
        }
        let fuel = of(Topic::Fuel).and_then(|p| p.accounts.last()).map(|a| a.rows[0].number.clone());
        if let Some(fuel) = fuel.filter(|f| f.unit == s.fuel_unit) {
            assert!(same(&fuel, s.fuel_quantity), "{at}");
        }
    });
}

#[test]
fn a_slip_in_a_panel_is_found() {
    let (study, climate) = opened(STUDIES[0]);
    let runs = runs(&study, &climate);
    let mut panels = panels_of(&study, &climate, &runs, 0, UnitSystem::Metric);
    let bill = panels[0].accounts.last_mut().expect("a bill");
    bill.rows[0].number.shown *= 1.02;
    assert!(!broken(&panels[0]).is_empty());
}
