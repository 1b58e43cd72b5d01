//! Many winters of a study: as a page, as JSON, and every winter as CSV.

use super::evaluate::Opened;
use super::page::{amount, table};
use super::save::save;
use super::{REFUSED, open, print, refuse};
use crate::figures;
use crate::format;
use crate::model::{ManyWinters, Study, bundled_catalogue};
use crate::season::pool::Workers;
use crate::season::winters::{FanDay, ScenarioWinters, Spread, WinterFigures, many_winters};
use serde::Serialize;
use std::path::Path;
use std::process::ExitCode;

/// One study. The README documents the keys.
#[derive(Serialize)]
struct StudyWinters<'a> {
    study: &'a str,
    file: &'a str,
    program_version: &'static str,
    currency: &'a str,
    weather: &'a str,
    weather_credit: &'a str,
    count: u32,
    seed: u32,
    scenarios: Vec<OfScenario>,
}

#[derive(Serialize)]
struct OfScenario {
    #[serde(flatten)]
    figures: WinterFigures,
    running_cost: Vec<FanDay>,
}

/// Runs a file's scenarios through its winters; `count` stands in for the study's own.
pub(super) fn run(file: &Path, count: Option<u32>, json: bool, csv: Option<&Path>) -> ExitCode {
    let Some(mut opened) = open(file) else { return ExitCode::from(REFUSED) };
    if let Some(count) = count {
        let asked = ManyWinters::count;
        if !asked.accepts(f64::from(count)) {
            return refuse(&format!("--count: {count} winters; choose {} to {}", asked.min, asked.max));
        }
        opened.study.many_winters.count = count;
    }
    match told(&opened, file, json, csv) {
        Ok(text) => print(&text),
        Err(complaint) => refuse(&complaint),
    }
}

fn told(opened: &Opened, file: &Path, json: bool, csv: Option<&Path>) -> Result<String, String> {
    let (study, climate) = (&opened.study, &opened.weather.climate);
    let named = |error: &dyn std::fmt::Display| format!("{}: {error}", opened.file);
    let winters = many_winters(study, climate, bundled_catalogue(), Workers::all(), &mut |_| ())
        .map_err(|error| named(&error))?;
    if let Some(out) = csv {
        let table = figures::winters(&winters, &study.prices.currency).csv().map_err(|error| named(&error))?;
        save(table.as_bytes(), file, out, "winters")?;
    }
    Ok(if json { as_json(opened, &winters) } else { page(study, opened, &winters) })
}

fn as_json(opened: &Opened, winters: &[ScenarioWinters]) -> String {
    let study = &opened.study;
    let currency = &study.prices.currency;
    let told = StudyWinters {
        study: &study.title,
        file: &opened.file,
        program_version: env!("CARGO_PKG_VERSION"),
        currency,
        weather: &opened.weather.year.place.name,
        weather_credit: &opened.weather.year.credit,
        count: study.many_winters.count,
        seed: study.many_winters.seed,
        scenarios: winters.iter().map(|w| OfScenario { figures: w.figures(currency), running_cost: w.fan() }).collect(),
    };
    // Texts, numbers and lists under fixed keys can always be written.
    serde_json::to_string_pretty(&told).unwrap_or_default() + "\n"
}

/// Titles of the columns, in two lines.
const TITLES: [[&str; 8]; 2] = [
    ["", "Cost in the", "One in ten", "Half cost", "One in ten", "Fuel for nine", "Lowest crop air", "Winters below"],
    ["Scenario", "weather year", "costs less", "less", "costs more", "in ten", "one in ten, °C", "crop limit"],
];

fn page(study: &Study, opened: &Opened, winters: &[ScenarioWinters]) -> String {
    let currency = &study.prices.currency;
    let figures: Vec<WinterFigures> = winters.iter().map(|w| w.figures(currency)).collect();
    let mut rows: Vec<Vec<String>> = TITLES.iter().map(|line| line.map(str::to_owned).to_vec()).collect();
    rows.extend(figures.iter().map(|f| row(f, currency)));
    let title = if study.title.is_empty() { &opened.file } else { &study.title };
    let asked = &study.many_winters;
    let mut text = format!(
        "{title}\n{} winters made up by chance round {}, seed {}\n\n",
        asked.count, opened.weather.year.place.name, asked.seed
    );
    text.push_str(&table(&rows, TITLES.len()));
    for scenario in &figures {
        text.push_str(&format!("\n{}\n", scenario.name));
        scenario.sentences.iter().for_each(|sentence| text.push_str(&format!("  {sentence}\n")));
    }
    text + "\nDays are warmer and colder by chance as in series of many years; wind and sun stay those of the weather year. No forecast.\n"
}

fn row(figures: &WinterFigures, currency: &str) -> Vec<String> {
    let money = |amount: Option<f64>| amount.map_or("unknown".to_owned(), |a| format::money(a, currency));
    let cost = |take: fn(Spread) -> f64| money(figures.cost.map(take));
    let fuel = figures.fuel_quantity.map_or("none".to_owned(), |fuel| amount(fuel.p90, &figures.fuel_unit));
    vec![
        figures.name.clone(),
        money(figures.cost_of_weather_year),
        cost(|c| c.p10),
        cost(|c| c.p50),
        cost(|c| c.p90),
        fuel,
        figures.crop_air_min_c.map_or(String::new(), |air| format!("{:.1}", air.p10)),
        format!("{} of {}", figures.winters_below_crop_limit, figures.winters),
    ]
}
