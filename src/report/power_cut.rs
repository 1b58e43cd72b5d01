//! The power cut that the study asks for: how long each scenario holds without mains, and without each measure.

use super::content::{Content, Entry, kept_together};
use super::digest::hold;
use super::figure::named;
use crate::format;
use crate::season::power_cut::CutCourse;
use maud::{Markup, html};

/// The section.
pub(super) fn power_cut(content: &Content) -> Markup {
    let Some(cut) = content.entries.iter().find_map(|entry| entry.hard_nights).map(|h| &h.asked_power_cut) else {
        return html! {};
    };
    html! {
        section {
            h2 { "Power cut" }
            p {
                "The mains fail in the hour that ends on " (format::stamp(cut.starts_at)) " and stay away for "
                (format::hours(cut.hours)) ": what needs them stops, vents work, and the house cools. Times to the crop limit, "
                "to " (content.temperature(0.0)) " and to the first ice are those of a cut without end, so that they say how long "
                "there is; the lowest air and the time until the heater has caught up belong to the cut of that length. Below "
                "each scenario the same with one measure taken away: the water, the inner tent, the night covers."
            }
            table class="power-cut" {
                thead {
                    tr {
                        th { "Scenario" } th class="n" { "Air to limit" } th class="n" { "Air to freezing" }
                        th class="n" { "Trays to limit" } th class="n" { "Trays to freezing" } th class="n" { "Water to ice" }
                        th class="n" { "Lowest air" } th class="n" { "Caught up" }
                    }
                }
                @for entry in &content.entries {
                    @if let Some(hard_nights) = entry.hard_nights {
                        tbody {
                            @for course in &hard_nights.asked_power_cut.courses { (row(content, entry, course)) }
                        }
                    }
                }
            }
        }
    }
}

fn row(content: &Content, entry: &Entry, course: &CutCourse) -> Markup {
    let unbroken = &course.unbroken;
    let t = &unbroken.times;
    let holds = [
        t.air_to_crop_limit_h,
        t.air_to_freezing_h,
        t.trays_to_crop_limit_h,
        t.trays_to_freezing_h,
        unbroken.water_to_freezing_h,
    ];
    let lowest = course.course.air_min_c().map_or("–".to_owned(), |t_c| content.temperature(t_c));
    html! {
        tr class=[course.without.map(|_| "soft")] {
            @match course.without {
                None => {
                    td {
                        (named(entry.mark, &entry.scenario.name))
                        span class="soft line" { "crop limit " (kept_together(&content.temperature(entry.run.summary.crop_limit_c))) }
                    }
                }
                Some(measure) => td { "without " (measure.name()) },
            }
            @for time in holds { td class="n" { (hold(time)) } }
            td class="n" { (lowest) } td class="n" { (hold(course.course.recovery_h)) }
        }
    }
}
