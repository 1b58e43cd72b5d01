//! The printable report of a study.

use super::evaluate::Evaluated;
use super::save;
use crate::model::bundled_catalogue;
use crate::report::{Report, WeatherUsed, html};
use crate::season::saving::{SavingStep, saving_steps};
use crate::season::{RunError, ScenarioRun};
use crate::units::UnitSystem;
use std::path::Path;
use std::process::ExitCode;

/// Runs every scenario of a file and writes the report.
pub(super) fn write(file: &Path, out: &Path, units: UnitSystem) -> ExitCode {
    save::write(file, out, "report", |opened| page(&opened.evaluate()?, units).map(String::into_bytes))
}

fn page(results: &Evaluated, units: UnitSystem) -> Result<String, String> {
    let saving = steps(results).map_err(|error| format!("{}: {error}", results.file))?;
    Ok(html(&Report {
        study: &results.study,
        catalogue: bundled_catalogue(),
        weather: WeatherUsed {
            climate: &results.weather.climate,
            credit: &results.weather.year.credit,
            notes: &results.weather.year.notes,
        },
        runs: results.runs.iter().map(Some).collect(),
        saving: saving.into_iter().map(Some).collect(),
        units,
        program_version: env!("CARGO_PKG_VERSION"),
    }))
}

/// Where the saving of each scenario comes from.
fn steps(results: &Evaluated) -> Result<Vec<Vec<SavingStep>>, RunError> {
    let (study, climate) = (&results.study, &results.weather.climate);
    let of_one = |(scenario, run): (_, &ScenarioRun)| {
        saving_steps(study, scenario, climate, bundled_catalogue(), &run.summary, &|_| (), &|| false)
    };
    study.scenarios.iter().zip(&results.runs).map(of_one).collect()
}
