//! The opening study on its climate, with the runs of its scenarios.

use crate::seasons::{climate, run};
use warmfold::model::{Study, WeatherChoice};
use warmfold::season::{RunOptions, ScenarioRun};
use warmfold::storage::demo;
use warmfold::weather::Climate;

pub fn opened() -> (Study, Climate) {
    let study = demo().expect("the opening study is embedded");
    let WeatherChoice::Station(station) = &study.site.weather else {
        unreachable!("the opening study names a station")
    };
    let climate = climate(station);
    (study, climate)
}

pub fn runs(study: &Study, climate: &Climate) -> Vec<ScenarioRun> {
    study.scenarios.iter().map(|s| run(study, s, climate, RunOptions::default())).collect()
}
