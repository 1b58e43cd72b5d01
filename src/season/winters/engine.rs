//! Winters side by side. Each depends on the study's seed and its own number alone, so that the number of threads changes
//! no figure; results come in as they are ready.

use super::{OneWinter, ScenarioWinters, one_winter};
use crate::model::{Catalogue, Study};
use crate::season::error::RunError;
use crate::season::pool::Workers;
use crate::weather::Climate;
use crate::weather::winters::WinterMaker;

/// Runs every scenario of a study through its winters. `so_far` is told of the weather year first, and then after every
/// winter.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn many_winters(
    study: &Study,
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
    so_far: &mut dyn FnMut(&[ScenarioWinters]),
) -> Result<Vec<ScenarioWinters>, RunError> {
    let mut gathered = weather_year(study, climate, catalogue, workers)?;
    so_far(&gathered);
    let maker = WinterMaker::of(climate);
    let winter = |index: usize| {
        let number = index as u32;
        let climate = maker.winter(study.many_winters.seed, number);
        let of_scenario =
            |scenario| Ok(one_winter(study, scenario, &climate, catalogue, number, &|| (workers.cancelled)())?.0);
        study.scenarios.iter().map(of_scenario).collect::<Result<Vec<_>, RunError>>()
    };
    workers.each_when_ready(study.many_winters.count as usize, &winter, &mut |_, winters| {
        gather(&mut gathered, winters);
        so_far(&gathered);
    })?;
    Ok(gathered)
}

/// The scenarios on the weather year itself.
fn weather_year(
    study: &Study,
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
) -> Result<Vec<ScenarioWinters>, RunError> {
    let of_scenario = |scenario| {
        let (weather_year, fuels, days) =
            one_winter(study, scenario, climate, catalogue, 0, &|| (workers.cancelled)())?;
        Ok(ScenarioWinters { name: scenario.name.clone(), weather_year, fuels, days, winters: Vec::new() })
    };
    study.scenarios.iter().map(of_scenario).collect()
}

/// Puts the winters of the scenarios in their places.
fn gather(gathered: &mut [ScenarioWinters], winters: Vec<OneWinter>) {
    for (scenario, winter) in gathered.iter_mut().zip(winters) {
        let place = scenario.winters.partition_point(|before| before.number < winter.number);
        scenario.winters.insert(place, winter);
    }
}
