//! A table of a study as CSV: the scenarios side by side, fuel calendars, steps of the saving, or months of heat or of
//! air and damp.

use super::evaluate::Evaluated;
use super::save;
use crate::compare::Comparison;
use crate::figures::{self, Figures, Named};
use crate::model::bundled_catalogue;
use crate::season::saving::{SavingStep, saving_steps};
use crate::units::UnitSystem;
use clap::ValueEnum;
use std::path::Path;
use std::process::ExitCode;

/// Which table.
#[derive(Debug, Clone, Copy, Default, ValueEnum)]
pub(super) enum Which {
    /// The scenarios side by side
    #[default]
    Side,
    /// Use and arrival of each scenario's fuel by month
    Calendar,
    /// From the baseline to each scenario, change by change
    Steps,
    /// Heat and degree-hours by month
    Months,
    /// Overheated, wet and humid hours by month
    Air,
}

/// Runs every scenario of a file and writes a table of it.
pub(super) fn write(file: &Path, out: &Path, which: Which, units: UnitSystem) -> ExitCode {
    save::write(file, out, "table", |opened| {
        let results = opened.evaluate()?;
        let named = |error: &dyn std::fmt::Display| format!("{}: {error}", results.file);
        let table = table(&results, which, units).map_err(|error| named(&error))?;
        table.csv().map(String::into_bytes).map_err(|error| named(&error))
    })
}

fn table(results: &Evaluated, which: Which, units: UnitSystem) -> Result<Figures, crate::season::RunError> {
    let (study, climate) = (&results.study, &results.weather.climate);
    let pairs = || study.scenarios.iter().zip(&results.runs);
    let named = || pairs().map(|(s, run)| Named { name: &s.name, run, climate }).collect::<Vec<_>>();
    let currency = &study.prices.currency;
    Ok(match which {
        Which::Side => {
            let runs: Vec<_> = results.runs.iter().map(Some).collect();
            let catalogue = bundled_catalogue().with_own(&study.own);
            Comparison::of(study, &catalogue, &runs).figures(units, currency)
        }
        Which::Calendar => {
            let calendars = pairs().filter_map(|(s, run)| Some((s.name.as_str(), run.fuel_calendar.as_ref()?)));
            figures::calendar(&calendars.collect::<Vec<_>>())
        }
        Which::Steps => {
            let steps: Vec<Vec<SavingStep>> = pairs()
                .map(|(scenario, run)| {
                    saving_steps(study, scenario, climate, bundled_catalogue(), &run.summary, &|_| (), &|| false)
                })
                .collect::<Result<_, _>>()?;
            let named = study.scenarios.iter().zip(&steps).map(|(s, steps)| (s.name.as_str(), steps.as_slice()));
            figures::steps(&named.collect::<Vec<_>>(), currency)
        }
        Which::Air => figures::air_months(&named()),
        Which::Months => {
            let runs = named();
            figures::months(&runs, runs.get(study.reference).copied(), units)
        }
    })
}
