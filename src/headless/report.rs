//! The printable report of a study.

use super::evaluate::Evaluated;
use super::save;
use crate::model::bundled_catalogue;
use crate::report::{Explored, WeatherUsed, of_runs};
use crate::season::RunError;
use crate::season::pool::Workers;
use crate::units::UnitSystem;
use std::path::Path;
use std::process::ExitCode;

/// Runs every scenario of a file and writes the report.
pub(super) fn write(file: &Path, out: &Path, units: UnitSystem, thorough: bool) -> ExitCode {
    save::write(file, out, "report", |opened| page(&opened.evaluate()?, units, thorough).map(String::into_bytes))
}

fn page(results: &Evaluated, units: UnitSystem, thorough: bool) -> Result<String, String> {
    let weather = WeatherUsed {
        climate: &results.weather.climate,
        credit: &results.weather.year.credit,
        notes: &results.weather.year.notes,
    };
    let (study, catalogue) = (&results.study, bundled_catalogue());
    let named = |error: RunError| format!("{}: {error}", results.file);
    let explored = if thorough {
        Explored::of(study, weather.climate, catalogue, Workers::all()).map_err(named)?
    } else {
        Explored::default()
    };
    of_runs(study, catalogue, weather, &results.runs, explored, (units, &[]), &|| false).map_err(named)
}
