//! Results as JSON with stable keys.

use super::evaluate::Evaluated;
use crate::checks::Check;
use crate::model::{Scenario, bundled_catalogue};
use crate::season::airing::{AirChanges, air_changes};
use crate::season::buying::BuyingLine;
use crate::season::fuel_calendar::FuelCalendar;
use crate::season::hard_night::{HardNights, hard_nights};
use crate::season::{RunError, ScenarioRun, Summary};
use serde::Serialize;

/// One study. The README documents the keys.
#[derive(Serialize)]
struct StudyResults<'a> {
    study: &'a str,
    file: &'a str,
    program_version: &'static str,
    currency: &'a str,
    weather: &'a str,
    weather_credit: &'a str,
    weather_notes: Vec<String>,
    heating_degree_days_18_3_c: f64,
    scenarios: Vec<ScenarioResults<'a>>,
}

/// One scenario: its season, its checks, and what takes further winters to know.
#[derive(Serialize)]
struct ScenarioResults<'a> {
    #[serde(flatten)]
    summary: &'a Summary,
    checks: Vec<Check>,
    buying_cost: f64,
    buying_cost_per_year: f64,
    buying: &'a [BuyingLine],
    fuel_calendar: Option<&'a FuelCalendar>,
    air_changes: AirChanges,
    #[serde(flatten)]
    hard_nights: HardNights,
}

impl<'a> StudyResults<'a> {
    fn of(results: &'a Evaluated) -> Result<Self, String> {
        let scenarios = results.study.scenarios.iter().zip(&results.runs);
        Ok(Self {
            study: &results.study.title,
            file: &results.file,
            program_version: env!("CARGO_PKG_VERSION"),
            currency: &results.study.prices.currency,
            weather: &results.weather.year.place.name,
            weather_credit: &results.weather.year.credit,
            weather_notes: results.weather.year.notes.iter().map(ToString::to_string).collect(),
            heating_degree_days_18_3_c: results.heating_degree_days_k_d,
            scenarios: scenarios
                .map(|(scenario, run)| of_scenario(results, scenario, run))
                .collect::<Result<_, _>>()?,
        })
    }
}

fn of_scenario<'a>(
    results: &Evaluated,
    scenario: &Scenario,
    run: &'a ScenarioRun,
) -> Result<ScenarioResults<'a>, String> {
    let (study, climate) = (&results.study, &results.weather.climate);
    let complaint = |error: RunError| format!("{}: scenario \"{}\": {error}", results.file, scenario.name);
    let air_changes =
        air_changes(study, scenario, climate, bundled_catalogue(), &run.summary, &|| false).map_err(complaint)?;
    let hard_nights = hard_nights(study, scenario, climate, bundled_catalogue(), &|| false).map_err(complaint)?;
    Ok(ScenarioResults {
        summary: &run.summary,
        checks: results.checks_of(scenario, run),
        buying_cost: run.buying.cost(),
        buying_cost_per_year: run.buying.cost_per_year(),
        buying: &run.buying.lines,
        fuel_calendar: run.fuel_calendar.as_ref(),
        air_changes,
        hard_nights,
    })
}

/// One object for one study, a list for several.
///
/// # Errors
/// The complaint, ready to print.
pub(super) fn text(evaluated: &[Evaluated]) -> Result<String, String> {
    let studies = evaluated.iter().map(StudyResults::of).collect::<Result<Vec<_>, _>>()?;
    let text = match studies.as_slice() {
        [one] => serde_json::to_string_pretty(one),
        all => serde_json::to_string_pretty(all),
    };
    // Texts, numbers and lists under fixed keys can always be written.
    Ok(text.unwrap_or_default() + "\n")
}
