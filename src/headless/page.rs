//! Results as a page of plain text: one line for each scenario.

use super::evaluate::Evaluated;
use crate::checks::{Check, Grade, count};
use crate::format;
use crate::season::{Hold, Summary};

/// Titles of the columns, in two lines; the first column is set to the left, the others to the right.
const TITLES: [[&str; 2]; 10] = [
    ["", "Scenario"],
    ["Winter", "cost"],
    ["Baseline", "cost"],
    ["", "Fuel bought"],
    ["Heat", "kWh"],
    ["Lowest crop air", "°C"],
    ["Hours below", "crop limit"],
    ["Peak / design", "load W"],
    ["Power cut, h", "to crop limit"],
    ["Checks:", "stop / look"],
];

/// Blanks between columns.
const GAP: usize = 2;

/// The page of one study.
pub(super) fn text(results: &Evaluated) -> String {
    let mut page = heading(results);
    let mut rows: Vec<Vec<String>> =
        (0..2).map(|line| TITLES.iter().map(|title| title[line].to_owned()).collect()).collect();
    let currency = &results.study.prices.currency;
    let scenarios = results.study.scenarios.iter().zip(&results.runs);
    rows.extend(scenarios.map(|(s, run)| row(&run.summary, &results.checks_of(s, run), currency)));
    page.push_str(&table(&rows, 2));
    page.push_str(&closing(results));
    page
}

/// Rows set in columns, with a line under those that hold the titles.
pub(super) fn table(rows: &[Vec<String>], titles: usize) -> String {
    let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
    let widths: Vec<usize> = (0..columns).map(|column| width(rows, column)).collect();
    let total = widths.iter().sum::<usize>() + GAP * columns.saturating_sub(1);
    let mut text = String::new();
    for (index, row) in rows.iter().enumerate() {
        text.push_str(&aligned(row, &widths));
        if index + 1 == titles {
            text.push_str(&format!("{}\n", "-".repeat(total)));
        }
    }
    text
}

fn heading(results: &Evaluated) -> String {
    let title = if results.study.title.is_empty() { &results.file } else { &results.study.title };
    let place = &results.weather.year.place;
    let mut text = format!(
        "{title}\nWeather: {}, {:.0} m, heating degree-days (18.3 °C) {:.0} K·d",
        place.name, place.elevation_m, results.heating_degree_days_k_d
    );
    if let Some(run) = results.runs.first() {
        text.push_str(&format!("; season {} to {}", run.summary.season_start, run.summary.season_end));
    }
    text.push_str("\n\n");
    text
}

fn row(summary: &Summary, checks: &[Check], currency: &str) -> Vec<String> {
    let money = |amount: Option<f64>| amount.map_or("unknown".to_owned(), |a| format!("{currency} {a:.2}"));
    let lowest = match &summary.crop_zone_min_at {
        Some(at) => format!("{:.1} on {at}", summary.crop_zone_min_c),
        None => format!("{:.1} held", summary.crop_zone_min_c),
    };
    vec![
        summary.name.clone(),
        money(summary.cost),
        money(summary.baseline_cost),
        fuel(summary),
        format!("{:.0}", summary.heat_delivered_kwh),
        lowest,
        summary.hours_below_crop_limit.to_string(),
        format!("{:.0} / {:.0}", summary.peak_heater_w, summary.design_load_w_99_6),
        hold(summary.power_cut.with_water.air_to_crop_limit_h),
        format!("{} / {}", count(checks, Grade::Stop), count(checks, Grade::Look)),
    ]
}

fn fuel(summary: &Summary) -> String {
    let first = (summary.fuel_quantity, &summary.fuel_unit);
    let standby = (summary.standby_fuel_quantity, &summary.standby_fuel_unit);
    let parts: Vec<String> = [first, standby]
        .iter()
        .filter(|(_, unit)| !unit.is_empty())
        .map(|(quantity, unit)| amount(*quantity, unit))
        .collect();
    if parts.is_empty() { "none".to_owned() } else { parts.join(" + ") }
}

/// "903 US gal", "2.6 × 20 lb cylinder".
pub(super) fn amount(quantity: f64, unit: &str) -> String {
    let decimals = if quantity < 10.0 { 1 } else { 0 };
    format::bought(&format!("{quantity:.decimals$}"), unit)
}

fn hold(hold: Hold) -> String {
    match hold {
        Hold::Hours(hours) => format!("{hours:.1}"),
        Hold::Beyond => "more than 120".to_owned(),
        Hold::NotApplicable => "-".to_owned(),
    }
}

fn closing(results: &Evaluated) -> String {
    let mut text = String::from(
        "\nBaseline: the same house, outermost sheet only, no tent, water, cover or sun, by degree-hours. An estimate; local codes and licensed trades decide.\n",
    );
    for note in &results.weather.year.notes {
        text.push_str(&format!("Weather note: {note}\n"));
    }
    text
}

/// Characters of the widest cell of a column.
fn width(rows: &[Vec<String>], column: usize) -> usize {
    rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max().unwrap_or(0)
}

fn aligned(row: &[String], widths: &[usize]) -> String {
    let gap = " ".repeat(GAP);
    let cells = row.iter().zip(widths).enumerate().map(|(column, (cell, &width))| {
        if column == 0 { format!("{cell:<width$}") } else { format!("{cell:>width$}") }
    });
    let line = cells.collect::<Vec<_>>().join(&gap);
    format!("{}\n", line.trim_end())
}
