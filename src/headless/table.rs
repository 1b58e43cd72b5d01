//! The scenarios of a study side by side, as CSV.

use super::save;
use crate::compare::Comparison;
use crate::model::bundled_catalogue;
use crate::units::UnitSystem;
use std::path::Path;
use std::process::ExitCode;

/// Runs every scenario of a file and writes the table.
pub(super) fn write(file: &Path, out: &Path, units: UnitSystem) -> ExitCode {
    save::write(file, out, "table", |opened| {
        let results = opened.evaluate()?;
        let runs: Vec<_> = results.runs.iter().map(Some).collect();
        let catalogue = bundled_catalogue().with_own(&results.study.own);
        let table = Comparison::of(&results.study, &catalogue, &runs);
        let text = table.csv(units, &results.study.prices.currency);
        text.map(String::into_bytes).map_err(|error| format!("{}: {error}", results.file))
    })
}
