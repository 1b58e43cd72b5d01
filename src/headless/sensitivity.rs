//! What matters to one scenario of a study: as a page, or as JSON.

use super::evaluate::Opened;
use super::page::table;
use super::{REFUSED, open, print, refuse, save};
use crate::figures::doubts;
use crate::format;
use crate::model::bundled_catalogue;
use crate::season::pool::Workers;
use crate::season::sensitivity::{Outcome, Sensitivity, what_matters};
use crate::units::UnitSystem;
use clap::Args;
use serde::Serialize;
use std::path::PathBuf;
use std::process::ExitCode;

/// One scenario. The README documents the keys.
#[derive(Serialize)]
struct Told<'a> {
    study: &'a str,
    file: &'a str,
    program_version: &'static str,
    currency: &'a str,
    scenario: &'a str,
    #[serde(flatten)]
    sensitivity: Sensitivity,
}

/// What is asked for.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// Study file
    file: PathBuf,
    /// Name of the scenario; the reference if left out
    #[arg(long)]
    scenario: Option<String>,
    /// Print JSON
    #[arg(long)]
    json: bool,
    /// CSV file to write every doubt to
    #[arg(long)]
    csv: Option<PathBuf>,
}

/// Moves each doubtful input of one scenario of a file.
pub(super) fn run(asked: &Asked) -> ExitCode {
    let Some(opened) = open(&asked.file) else { return ExitCode::from(REFUSED) };
    match told(asked, &opened) {
        Ok(text) => print(&text),
        Err(complaint) => refuse(&complaint),
    }
}

fn told(asked: &Asked, opened: &Opened) -> Result<String, String> {
    let (study, climate, catalogue) = (&opened.study, &opened.weather.climate, bundled_catalogue());
    let scenario = &study.scenarios[opened.scenario_or_reference(asked.scenario.as_deref())?];
    let named = |error: &dyn std::fmt::Display| format!("{}: {error}", opened.file);
    let found = what_matters(study, scenario, climate, catalogue, Workers::all(), &mut |_| ())
        .map_err(|error| named(&error))?;
    let currency = &study.prices.currency;
    if let Some(out) = &asked.csv {
        let text = doubts(&found, currency, UnitSystem::Metric).csv().map_err(|error| named(&error))?;
        save::save(text.as_bytes(), &asked.file, out, "table")?;
    }
    if !asked.json {
        return Ok(page(&scenario.name, &found, currency));
    }
    let told = Told {
        study: &study.title,
        file: &opened.file,
        program_version: env!("CARGO_PKG_VERSION"),
        currency,
        scenario: &scenario.name,
        sensitivity: found,
    };
    // Texts, numbers and lists under fixed keys can always be written.
    Ok(serde_json::to_string_pretty(&told).unwrap_or_default() + "\n")
}

/// Titles of the columns, in two lines.
const TITLES: [[&str; 6]; 2] = [
    ["", "", "Cost with", "Cost with", "Lowest crop air", "Lowest crop air"],
    ["In doubt", "moved by", "less", "more", "with less, °C", "with more, °C"],
];

fn page(name: &str, found: &Sensitivity, currency: &str) -> String {
    let money = |outcome: &Outcome| outcome.cost.map_or("unknown".to_owned(), |cost| format::money(cost, currency));
    let mut rows: Vec<Vec<String>> = TITLES.iter().map(|line| line.map(str::to_owned).to_vec()).collect();
    rows.extend(found.effects.iter().map(|effect| {
        vec![
            effect.name.to_owned(),
            effect.range.clone(),
            money(&effect.less),
            money(&effect.more),
            format!("{:.1}", effect.less.crop_air_min_c),
            format!("{:.1}", effect.more.crop_air_min_c),
        ]
    }));
    let mut text =
        format!("{name}: cost {}, lowest crop air {:.1} °C\n", money(&found.as_it_is), found.as_it_is.crop_air_min_c);
    if let Some([low, high]) = found.cost_band {
        text.push_str(&format!(
            "All doubts together, as if independent: {} to {}\n",
            format::money(low, currency),
            format::money(high, currency)
        ));
    }
    text.push('\n');
    text.push_str(&table(&rows, TITLES.len()));
    text.push_str("\nWhy so far\n");
    found.effects.iter().for_each(|effect| text.push_str(&format!("  {}: {}.\n", effect.name, effect.reason)));
    text
}
