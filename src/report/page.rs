//! The page: head, sections in reading order, foot.

use super::assumptions::assumptions;
use super::content::Content;
use super::figure::hatchings;
use super::{
    airing, best_buy, buying, checks, coldest, damp, digest, fuel, hard_nights, houses, inputs, matters, months,
    power_cut, prices, running, sources, steps, table, winters, workings,
};
use crate::format;
use crate::safety::cautions::{CAUTIONS, LAST_WORD};
use crate::units::Quantity;
use crate::weather::stats::{DEGREE_DAY_BASE_C, DayMean, degree_days_k_d};
use maud::{DOCTYPE, Markup, PreEscaped, html};

const STYLE: &str = include_str!("style.css");

/// The whole page.
pub(super) fn page(content: &Content) -> Markup {
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                // A void element closed by hand, so that the page is well-formed XML.
                (PreEscaped("<meta charset=\"utf-8\"/>"))
                title { (title(content)) }
                style { (PreEscaped(STYLE)) }
            }
            body {
                (hatchings())
                (head(content))
                main {
                    (digest::digest(content))
                    (houses::houses(content))
                    (table::results(content))
                    (plots(content))
                    (steps::section(content))
                    (buying::buying(content))
                    (best_buy::best_buy(content))
                    (fuel::fuel(content))
                    (winters::winters(content))
                    (matters::matters(content))
                    (hard_nights::hard_nights(content))
                    (power_cut::power_cut(content))
                    (airing::airing(content))
                    (damp::damp(content))
                    (checks::checks(content))
                    (table::what_differs(content))
                    (inputs::inputs(content))
                    (prices::prices(content))
                    (workings::workings(content))
                    (rests_on(content))
                    (cautions())
                    (sources::sources(content))
                }
                footer { p { "Warmfold " (content.report.program_version) ". " (LAST_WORD) } }
            }
        }
    }
}

fn title<'a>(content: &Content<'a>) -> &'a str {
    let title = content.report.study.title.trim();
    if title.is_empty() { "A winter in a plant house" } else { title }
}

fn head(content: &Content) -> Markup {
    let study = content.report.study;
    let place = &content.report.weather.climate.place;
    let reference = study.scenarios.get(study.reference).map_or("", |scenario| scenario.name.as_str());
    html! {
        header {
            p class="kicker" { "What the winter costs, and whether it holds" }
            h1 { (title(content)) }
            @if !study.notes.trim().is_empty() { p class="lead" { (study.notes) } }
            dl class="facts" {
                @if !study.site.name.trim().is_empty() { dt { "Place" } dd { (study.site.name) } }
                dt { "Weather" }
                dd {
                    (place.name) ", " (content.quantity(place.elevation_m, Quantity::Length, Some(0))) " above the sea; " (degree_days(content))
                    @for note in content.report.weather.notes { " " span class="soft" { (sentence(&note.text(content.units()))) } }
                }
                @if let Some(entry) = content.entries.first() {
                    dt { "Season" }
                    dd {
                        (format::day(entry.run.summary.season_start)) " to " (format::day(entry.run.summary.season_end)) ", "
                        (format::hours(entry.run.summary.season_hours)) "; coldest hour of the year "
                        (content.temperature(entry.run.summary.coldest_outdoor_c)) ", "
                        (format::stamp(entry.run.summary.coldest_outdoor_at))
                    }
                }
                @if content.several() { dt { "Reference" } dd { (reference) } }
            }
        }
    }
}

/// Heating degree-days of the whole year.
fn degree_days(content: &Content) -> String {
    let outdoor_c: Vec<f64> = content.report.weather.climate.hours.iter().map(|hour| hour.outdoor_c).collect();
    let kelvin_days = degree_days_k_d(&outdoor_c, DEGREE_DAY_BASE_C, DayMean::Hourly);
    let shown = Quantity::TemperatureDifference.unit(content.units()).shown(kelvin_days);
    format!(
        "{} {}·d heating degree-days of the year below {}.",
        format::number(shown, 0),
        content.degree(),
        content.temperature(DEGREE_DAY_BASE_C)
    )
}

/// A note with a large first letter and a full stop.
fn sentence(note: &str) -> String {
    let note = note.trim();
    let mut letters = note.chars();
    let first: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    let stop = if note.ends_with(['.', '!', '?']) { "" } else { "." };
    format!("{first}{}{stop}", letters.as_str())
}

fn plots(content: &Content) -> Markup {
    if content.entries.is_empty() {
        return html! {};
    }
    html! {
        section {
            h2 { "The winter" }
            (running::figure(content))
            (months::figure(content))
            (coldest::figure(content))
        }
    }
}

fn rests_on(content: &Content) -> Markup {
    html! {
        section {
            h2 { "Assumptions" }
            dl class="assumptions" {
                div { dt { "How sure" } dd { (matters::how_sure(content)) } }
                @for (about, words) in assumptions(content.units()) { div { dt { (about) } dd { (words) } } }
            }
        }
    }
}

fn cautions() -> Markup {
    html! {
        section class="cautions" {
            h2 { "Cautions" }
            ul { @for caution in CAUTIONS { li { (caution) } } }
        }
    }
}
