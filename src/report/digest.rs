//! The answer on the first page: each scenario in a line, and what is cheapest in a sentence.

use super::content::{Content, Entry, kept_together};
use super::figure::named;
use crate::format;
use crate::season::{Hold, POWER_CUT_HOURS, Summary};
use maud::{Markup, html};

/// The section.
pub(super) fn digest(content: &Content) -> Markup {
    html! {
        section {
            h2 { "In short" }
            @if let Some(words) = cheapest(content) { p class="answer" { (words) } }
            table class="digest" {
                thead {
                    tr {
                        th { "Scenario" }
                        th class="n" { "A winter costs" }
                        @if content.several() { th class="n" { "Against reference" } }
                        th class="n" { "Baseline" }
                        th class="n" { "Fuel bought" }
                        th class="n" { "Lowest at the crop" }
                        th class="n" { "Below crop limit" }
                        th class="n" { "Holds in a power cut" }
                    }
                }
                tbody {
                    @for entry in &content.entries { (row(content, entry)) }
                }
            }
            p class="soft" {
                "Baseline: the same house under its outermost sheet, without tent, water, night cover or sun, by degree-hours. "
                "Lowest at the crop: the coldest hourly mean of its air. Power cut: from the coldest twelve hours on, until "
                "that air falls to the crop limit."
                @for name in not_run(content) { " " (name) " could not be run and has no figures." }
            }
        }
    }
}

fn not_run<'a>(content: &Content<'a>) -> Vec<&'a str> {
    let ran = |slot: usize| content.entries.iter().any(|entry| entry.slot == slot);
    let scenarios = content.report.study.scenarios.iter().enumerate();
    scenarios.filter(|(slot, _)| !ran(*slot)).map(|(_, scenario)| scenario.name.as_str()).collect()
}

fn row(content: &Content, entry: &Entry) -> Markup {
    let s = &entry.run.summary;
    let is_reference = entry.slot == content.report.study.reference;
    let against = match (s.cost, content.reference().and_then(|r| r.run.summary.cost)) {
        _ if is_reference => "reference".to_owned(),
        (Some(own), Some(other)) => against(content, own, other),
        _ => "–".to_owned(),
    };
    html! {
        tr {
            td { (named(entry.mark, &entry.scenario.name)) }
            td class="n" {
                b { (s.cost.map_or_else(|| "price missing".to_owned(), |cost| content.money(cost))) }
                @if let Some(likely) = content.matters(entry).and_then(|found| found.likely()) {
                    span class="soft line" { (likely.band(content.currency())) }
                }
            }
            @if content.several() { td class="n" { (against) } }
            td class="n" { (s.baseline_cost.map_or_else(|| "–".to_owned(), |cost| content.money(cost))) }
            td class="n" { (fuel(s)) }
            td class="n" {
                (content.temperature(s.crop_zone_min_c))
                span class="soft line" { (s.crop_zone_min_at.map_or_else(|| "held at setpoint".to_owned(), format::stamp)) }
            }
            td class="n" { (kept_together(&format::hours(s.hours_below_crop_limit))) }
            td class="n" { (hold(s.power_cut.with_water.air_to_crop_limit_h)) }
        }
    }
}

/// A difference of money, absolute and as a share.
fn against(content: &Content, own: f64, other: f64) -> String {
    let share = if other > 0.005 {
        format!(" ({}\u{a0}%)", format::signed((own / other - 1.0) * 100.0, 0))
    } else {
        String::new()
    };
    format!("{}{share}", kept_together(&format::money_difference(own - other, content.currency())))
}

/// What is bought, in its units.
pub(super) fn fuel(s: &Summary) -> String {
    let bought = [(s.fuel_quantity, &s.fuel_unit), (s.standby_fuel_quantity, &s.standby_fuel_unit)];
    let parts: Vec<String> =
        bought.iter().filter(|(_, unit)| !unit.is_empty()).map(|(quantity, unit)| amount(*quantity, unit)).collect();
    if parts.is_empty() { "none".to_owned() } else { parts.join(" + ") }
}

/// "903 US gal", "2.6 × 20 lb cylinder".
pub(super) fn amount(quantity: f64, unit: &str) -> String {
    let times = if unit.starts_with(|c: char| c.is_ascii_digit()) { "×\u{a0}" } else { "" };
    format!("{}\u{a0}{times}{unit}", format::fuel(quantity))
}

/// Hours that something holds.
pub(super) fn hold(hold: Hold) -> String {
    match hold {
        Hold::Hours(hours) => kept_together(&format!("{} h", format::number(hours, 1))),
        Hold::Beyond => kept_together(&format!("over {POWER_CUT_HOURS} h")),
        Hold::NotApplicable => "–".to_owned(),
    }
}

/// What is cheapest to run, and whether the crop lives through it.
fn cheapest(content: &Content) -> Option<String> {
    let entry = content.cheapest()?;
    let s = &entry.run.summary;
    let cost = s.cost?;
    let limit = content.temperature(s.crop_limit_c);
    let keeps = match s.hours_below_crop_limit {
        0 => format!("It keeps the crop above its limit of {limit} in every hour of this season"),
        hours => format!("It leaves the crop below its limit of {limit} for {}", format::hours(hours)),
    };
    let lowest = content.temperature(s.crop_zone_min_c);
    let sentence = match (content.entries.len(), content.reference().and_then(|r| r.run.summary.cost)) {
        (1, _) => format!("A winter costs {}.", content.money(cost)),
        (_, Some(other)) if entry.slot != content.report.study.reference => format!(
            "“{}” is cheapest to run: {} a winter, {} against the reference.",
            entry.scenario.name,
            content.money(cost),
            against(content, cost, other)
        ),
        _ => format!("“{}” is cheapest to run: {} a winter.", entry.scenario.name, content.money(cost)),
    };
    Some(format!("{sentence} {keeps}; the lowest is {lowest}."))
}
