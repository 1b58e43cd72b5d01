//! The printable report of a study.

use super::evaluate::Evaluated;
use super::save;
use crate::model::bundled_catalogue;
use crate::report::{WeatherUsed, of_runs};
use crate::units::UnitSystem;
use std::path::Path;
use std::process::ExitCode;

/// Runs every scenario of a file and writes the report.
pub(super) fn write(file: &Path, out: &Path, units: UnitSystem) -> ExitCode {
    save::write(file, out, "report", |opened| page(&opened.evaluate()?, units).map(String::into_bytes))
}

fn page(results: &Evaluated, units: UnitSystem) -> Result<String, String> {
    let weather = WeatherUsed {
        climate: &results.weather.climate,
        credit: &results.weather.year.credit,
        notes: &results.weather.year.notes,
    };
    of_runs(&results.study, bundled_catalogue(), weather, &results.runs, (units, &[]), &|| false)
        .map_err(|error| format!("{}: {error}", results.file))
}
