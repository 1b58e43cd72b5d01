//! How long each scenario holds without mains.

use super::content::{Content, Entry};
use super::digest::hold;
use super::figure::named;
use crate::format;
use crate::season::PowerCutTimes;
use maud::{Markup, html};

/// The section.
pub(super) fn power_cut(content: &Content) -> Markup {
    let Some(first) = content.entries.first() else { return html! {} };
    html! {
        section {
            h2 { "Power cut" }
            p {
                "From the beginning of the coldest twelve hours, " (format::stamp(first.run.summary.power_cut.starts_at))
                ": what needs mains stops, vents work, and the house cools. Hours until air and trays reach the crop limit "
                "and " (content.temperature(0.0)) "."
            }
            table class="power-cut" {
                thead {
                    tr {
                        th { "Scenario" } th class="n" { "Crop limit" }
                        th class="n" { "Air to limit" } th class="n" { "Air to freezing" }
                        th class="n" { "Trays to limit" } th class="n" { "Trays to freezing" }
                    }
                }
                tbody { @for entry in &content.entries { (rows(content, entry)) } }
            }
        }
    }
}

fn rows(content: &Content, entry: &Entry) -> Markup {
    let s = &entry.run.summary;
    let cut = &s.power_cut;
    html! {
        tr {
            td { (named(entry.slot, &entry.scenario.name)) }
            td class="n" { (content.temperature(s.crop_limit_c)) }
            (times(&cut.with_water))
        }
        @if entry.scenario.water.present {
            tr class="soft" { td { "the same without its water" } td {} (times(&cut.without_water)) }
        }
    }
}

fn times(times: &PowerCutTimes) -> Markup {
    let all =
        [times.air_to_crop_limit_h, times.air_to_freezing_h, times.trays_to_crop_limit_h, times.trays_to_freezing_h];
    html! { @for time in all { td class="n" { (hold(time)) } } }
}
