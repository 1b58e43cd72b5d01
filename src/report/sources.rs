//! Where the numbers come from: weather, every catalogue row that the scenarios use, and methods.

use super::assumptions::METHODS;
use super::content::Content;
use crate::model::{PartCovering, Scenario};
use maud::{Markup, html};

/// The section.
pub(super) fn sources(content: &Content) -> Markup {
    let weather = &content.report.weather;
    html! {
        section {
            h2 { "Sources" }
            dl class="sources" {
                dt { "Weather: " (weather.climate.place.name) } dd { (weather.credit) }
                @for (name, source) in rows(content) { dt { (name) } dd { (source) } }
                dt { "Methods" } dd { (METHODS) }
            }
        }
    }
}

/// Name and source of each catalogue row in use, each once, in the order of the catalogue.
fn rows(content: &Content) -> Vec<(String, String)> {
    let (scenarios, catalogue) = (&content.report.study.scenarios, &content.catalogue);
    let mut used: Vec<&str> = scenarios.iter().flat_map(sheets_and_screens).collect();
    used.extend(scenarios.iter().flat_map(|s| {
        [&s.heater, &s.standby].into_iter().filter(|heater| heater.present).map(|heater| heater.fuel.as_str())
    }));
    used.extend(scenarios.iter().map(|s| s.crop.kind.as_str()));
    used.extend(scenarios.iter().filter(|s| s.bench.present).map(|s| s.bench.tray.as_str()));
    let sheets = catalogue.sheets.iter().map(|row| (&row.key, &row.name, &row.source));
    let screens = catalogue.screens.iter().map(|row| (&row.key, &row.name, &row.source));
    let fuels = catalogue.fuels.iter().map(|row| (&row.key, &row.name, &row.source));
    let crops = catalogue.crops.iter().map(|row| (&row.key, &row.name, &row.source));
    let trays = catalogue.trays.iter().map(|row| (&row.key, &row.name, &row.source));
    let in_use =
        sheets.chain(screens).chain(fuels).chain(crops).chain(trays).filter(|(key, _, _)| used.contains(&key.as_str()));
    in_use.map(|(_, name, source)| (name.clone(), not_empty(source))).collect()
}

fn sheets_and_screens(s: &Scenario) -> Vec<&str> {
    let mut keys: Vec<&str> = s.covering.sheets.iter().map(String::as_str).collect();
    for exception in &s.covering.exceptions {
        if let PartCovering::Sheets(sheets) = &exception.covering {
            keys.extend(sheets.iter().map(String::as_str));
        }
    }
    if s.night_cover.present {
        keys.push(&s.night_cover.screen);
    }
    if s.tent.present {
        keys.extend(s.tent.sheets.iter().map(String::as_str));
        if s.tent.night_cover.present {
            keys.push(&s.tent.night_cover.screen);
        }
    }
    keys
}

fn not_empty(source: &str) -> String {
    if source.trim().is_empty() {
        "The study's own row, without a note on its origin".to_owned()
    } else {
        source.to_owned()
    }
}
