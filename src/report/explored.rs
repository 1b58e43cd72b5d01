//! What was worked out of a study beyond its seasons, for the report: nothing unless asked for, since it takes hundreds of
//! seasons.

use crate::explore::{Combination, MeasuresError, combinations};
use crate::model::{Catalogue, Study};
use crate::season::RunError;
use crate::season::pool::Workers;
use crate::season::sensitivity::{Sensitivity, sensitivity};
use crate::season::winters::{WinterFigures, many_winters};
use crate::weather::Climate;

/// What is known; empty where nobody asked.
#[derive(Debug, Clone, Default)]
pub struct Explored {
    /// Many winters, one entry per scenario; none where they were not run.
    pub winters: Vec<Option<WinterFigures>>,
    /// What matters, one entry per scenario; none where it was not tried.
    pub matters: Vec<Option<Sensitivity>>,
    /// The scenario that measures were tried with, by its place, and their combinations.
    pub measures: Option<(usize, Vec<Combination>)>,
}

impl Explored {
    /// Works all of it out: many winters and what matters of every scenario, and the measures with the reference.
    ///
    /// # Errors
    /// As [`crate::season::run_scenario`].
    pub fn of(study: &Study, climate: &Climate, catalogue: &Catalogue, workers: Workers) -> Result<Self, RunError> {
        let winters = many_winters(study, climate, catalogue, workers, &mut |_| ())?;
        let matters = study.scenarios.iter().zip(&winters).map(|(scenario, winters)| {
            let found = sensitivity(study, scenario, climate, catalogue, workers, &mut |_| ())?;
            Ok(Some(found.with_weather(winters)))
        });
        let matters = matters.collect::<Result<Vec<_>, RunError>>()?;
        let measures = match combinations(study, study.reference, climate, catalogue, workers) {
            Ok(combinations) => Some((study.reference, combinations)),
            Err(MeasuresError::Run(error)) => return Err(error),
            Err(_) => None,
        };
        let figures = winters.iter().map(|winters| Some(winters.figures(&study.prices.currency))).collect();
        Ok(Self { winters: figures, matters, measures })
    }
}
