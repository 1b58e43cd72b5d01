//! The fuel calendar: what each month burns, how much must have come by its end, and when each unit runs out.

use super::content::{Content, Entry};
use super::figure::named;
use crate::format;
use crate::season::fuel_calendar::FuelCalendar;
use maud::{Markup, html};

/// Most dates that are listed; more units than that are no cylinders.
const LISTED: usize = 40;

/// The section.
pub(super) fn fuel(content: &Content) -> Markup {
    let stored: Vec<(Entry, &FuelCalendar)> = content
        .entries
        .iter()
        .filter_map(|entry| Some((*entry, entry.run.fuel_calendar.as_ref().filter(|c| burns(c))?)))
        .collect();
    html! {
        section {
            h2 { "Fuel calendar" }
            @if stored.is_empty() {
                p { "The first heaters' energy comes by wire or pipe, or none is used: there is nothing to store." }
            } @else {
                p { "Fuel of the first heater, in the unit it is bought in. A colder winter than this one takes more." }
            }
            @for (entry, calendar) in stored { (of(&entry, calendar)) }
        }
    }
}

fn burns(calendar: &FuelCalendar) -> bool {
    calendar.months.iter().any(|month| month.used > 0.0)
}

fn of(entry: &Entry, calendar: &FuelCalendar) -> Markup {
    html! {
        div class="calendar" {
            table {
                caption { (named(entry.mark, &entry.scenario.name)) ": " (entry.run.summary.fuel_name) ", " (calendar.unit) }
                thead {
                    tr { th {} @for month in &calendar.months { th class="n" { (format::month(month.month)) } } }
                }
                tbody {
                    tr {
                        th { "Burnt" }
                        @for month in &calendar.months { td class="n" { (format::fuel(month.used)) } }
                    }
                    tr {
                        th { "To have come by its end" }
                        @for month in &calendar.months { td class="n" { (format::number(month.needed_by_end, 0)) } }
                    }
                }
            }
            p class="soft" {
                "The hardest fortnight takes " (format::fuel(calendar.hardest_fortnight)) "."
                @if let Some(hours) = calendar.hours_at_full_output {
                    " At rated output one lasts " (format::number(hours, 1)) " h."
                }
                @if !calendar.runs_out.is_empty() && calendar.runs_out.len() <= LISTED { " " (dates(calendar)) }
            }
        }
    }
}

/// The days on which units run out, with how many where it is more than one.
fn dates(calendar: &FuelCalendar) -> String {
    let days: Vec<String> = calendar.runs_out.iter().map(|at| format::day(*at)).collect();
    let said = |same: &[String]| match same {
        [day] => day.clone(),
        several => format!("{} ({})", several[0], several.len()),
    };
    let listed: Vec<String> = days.chunk_by(|a, b| a == b).map(said).collect();
    format!("Empty, one after the other: {}.", listed.join(", "))
}
