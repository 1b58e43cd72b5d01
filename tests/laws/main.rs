//! Laws that any plant house keeps, tried on random houses in a short season.

#[path = "../common/random_houses.rs"]
mod random_houses;
#[path = "../common/seasons.rs"]
mod seasons;

mod books;
mod colder;
mod cost;
mod cut;
mod same;
mod weathers;

use proptest::test_runner::{Config, RngSeed};
use warmfold::model::{Scenario, Season, Study};
use warmfold::season::{RunOptions, ScenarioRun};
use warmfold::weather::Climate;

/// So many random houses per law, the same ones every time.
fn houses(cases: u32) -> Config {
    Config { cases, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..Config::default() }
}

/// The last three weeks of January.
fn study() -> Study {
    season(1, 10, 30)
}

/// Days of one month.
fn season(month: u32, from_day: u32, to_day: u32) -> Study {
    Study { season: Season { from_month: month, from_day, to_month: month, to_day }, ..Study::default() }
}

/// A season with heaters that have no limit.
fn held(study: &Study, scenario: &Scenario, climate: &Climate) -> ScenarioRun {
    seasons::run(study, scenario, climate, RunOptions { unlimited_heat: true, ..RunOptions::default() })
}

/// Heat of three weeks in January, heaters without limit.
fn heat_kwh(scenario: &Scenario, climate: &Climate) -> f64 {
    held(&study(), scenario, climate).summary.heat_delivered_kwh
}
