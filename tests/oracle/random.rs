//! The two solvers on random houses, for a fortnight each.
//!
//! In short steps only, which shows whether both hold the same physics. Steps as shown pass their bar in 97 of 100 of
//! these fortnights and miss an hourly mean by up to 0.13 K, or the heat by 0.8 %, in the others: a thermostat that begins
//! and ceases to heat within one step, or two that do so in two zones.

#[path = "../common/random_houses.rs"]
mod random_houses;

use crate::{SHORT_STEPS, compare, solver};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed};
use std::sync::LazyLock;
use warmfold::model::{Season, Severity, Study, bundled_catalogue, problems};
use warmfold::season::{RunOptions, run_scenario_with};
use warmfold::weather::{Climate, WeatherYear, bundled};

static YEARS: LazyLock<[(WeatherYear, Climate); 3]> = LazyLock::new(|| {
    ["duluth-mn", "denver-co", "aachen-2021"].map(|station| {
        let year = bundled::load(station).expect("a bundled station");
        let climate = Climate::from_year(&year);
        (year, climate)
    })
});

proptest! {
    #![proptest_config(Config { cases: 60, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..Config::default() })]

    #[test]
    fn two_solvers_agree_on_any_house(scenario in random_houses::any(), year in 0usize..3, month in 1u32..=4) {
        let season = Season { from_month: month, from_day: 5, to_month: month, to_day: 18 };
        let study = Study { season, scenarios: vec![scenario], ..Study::default() };
        let (rows, scenario) = (bundled_catalogue(), &study.scenarios[0]);
        let refused = problems(&study, rows).into_iter().filter(|p| p.severity() == Severity::Error).count();
        prop_assert_eq!(refused, 0);
        let (year, climate) = &YEARS[year];
        let plain = solver::run(&study, scenario, year, rows);
        let options = RunOptions { refine: SHORT_STEPS.refine, ..RunOptions::default() };
        let engine = run_scenario_with(&study, scenario, climate, rows, &|| false, options).expect("a season");
        let missed = compare(&engine.hours, &plain, &SHORT_STEPS);
        prop_assert!(missed.is_empty(), "{missed:?}");
    }
}
