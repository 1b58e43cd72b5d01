//! The checks through real seasons: each appears and vanishes, in figures that a pencil can follow.

#[path = "../common/seasons.rs"]
mod seasons;

mod figures;
mod pairs;
mod studies;
mod words;

use seasons::{climate, run};
use std::sync::LazyLock;
use warmfold::checks::{Case, Check, checks};
use warmfold::model::{Scenario, Season, Study, bundled_catalogue};
use warmfold::season::RunOptions;
use warmfold::units::UnitSystem;
use warmfold::weather::Climate;

static DULUTH: LazyLock<Climate> = LazyLock::new(|| climate("duluth-mn"));

/// A study with the coldest month in it.
fn study() -> Study {
    let season = Season { from_month: 1, from_day: 1, to_month: 1, to_day: 31 };
    Study { season, ..Study::default() }
}

fn of(study: &Study, scenario: &Scenario, units: UnitSystem) -> Vec<Check> {
    let run = run(study, scenario, &DULUTH, RunOptions::default());
    let catalogue = &bundled_catalogue().with_own(&study.own);
    checks(&Case { study, scenario, catalogue, run: &run, units })
}

fn named<'a>(checks: &'a [Check], name: &str) -> Option<&'a Check> {
    checks.iter().find(|check| check.name == name)
}
