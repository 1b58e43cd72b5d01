//! Runs whole seasons for the tests of the engine.

use warmfold::model::{Scenario, Study, bundled_catalogue};
use warmfold::season::{RunOptions, ScenarioRun, run_scenario_with};
use warmfold::weather::{Climate, bundled};

/// Climate of a bundled station.
pub fn climate(station: &str) -> Climate {
    Climate::from_year(&bundled::load(station).expect("a bundled station"))
}

/// A season of a scenario.
pub fn run(study: &Study, scenario: &Scenario, climate: &Climate, options: RunOptions) -> ScenarioRun {
    run_scenario_with(study, scenario, climate, bundled_catalogue(), &|| false, options).expect("a season")
}
