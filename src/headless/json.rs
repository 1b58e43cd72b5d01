//! Results as JSON with stable keys.

use super::evaluate::Evaluated;
use crate::season::Summary;
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
    weather_notes: &'a [String],
    heating_degree_days_18_3_c: f64,
    scenarios: Vec<&'a Summary>,
}

impl<'a> StudyResults<'a> {
    fn of(results: &'a Evaluated) -> Self {
        Self {
            study: &results.study.title,
            file: &results.file,
            program_version: env!("CARGO_PKG_VERSION"),
            currency: &results.study.prices.currency,
            weather: &results.weather.year.place.name,
            weather_credit: &results.weather.year.credit,
            weather_notes: &results.weather.year.notes,
            heating_degree_days_18_3_c: results.heating_degree_days_k_d,
            scenarios: results.runs.iter().map(|run| &run.summary).collect(),
        }
    }
}

/// One object for one study, a list for several.
pub(super) fn text(evaluated: &[Evaluated]) -> String {
    let studies: Vec<_> = evaluated.iter().map(StudyResults::of).collect();
    let text = match studies.as_slice() {
        [one] => serde_json::to_string_pretty(one),
        all => serde_json::to_string_pretty(all),
    };
    // Texts, numbers and lists under fixed keys can always be written.
    text.unwrap_or_default() + "\n"
}
