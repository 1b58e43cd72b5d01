//! The houses: a cross-section of each scenario, all to one scale, at the coldest hour outdoors.

use super::content::{Content, Entry, kept_together};
use super::figure::named;
use super::section::{Drawing, Hour};
use crate::compare::words;
use crate::format;
use crate::geometry::section::{Section, section};
use crate::model::Scenario;
use crate::units::Quantity;
use maud::{Markup, html};

/// Width of a drawing, px; two stand side by side.
const WIDTH: f64 = 330.0;
/// Most height of a drawing, px.
const HEIGHT: f64 = 210.0;

/// The section.
pub(super) fn houses(content: &Content) -> Markup {
    let scenarios = &content.report.study.scenarios;
    let sections: Vec<Section> = scenarios.iter().map(section).collect();
    let scales = sections.iter().map(|s| Drawing::scale_for(s, [WIDTH, HEIGHT]));
    let Some(scale) = scales.reduce(f64::min) else { return html! {} };
    let tallest_m = sections.iter().map(|s| s.height_m).fold(0.0, f64::max);
    let height = (tallest_m * 1.07 * scale + 46.0).min(HEIGHT);
    html! {
        section {
            h2 { "The houses" }
            p {
                "Cross-sections to one scale, back wall to the left. "
                @if let Some(entry) = content.entries.first() {
                    "Temperatures are those of the coldest hour outdoors, " (coldest(content, entry))
                    "; the glow in each heater is its share of the rated output."
                }
            }
            div class="pairs" {
                @for (slot, (scenario, section)) in scenarios.iter().zip(&sections).enumerate() {
                    figure class="house" {
                        @let entry = content.entries.iter().find(|entry| entry.slot == slot);
                        @let hour = entry.map(hour_of).unwrap_or_default();
                        (Drawing { section, hour, units: content.units(), size: [WIDTH, height], scale }.svg())
                        figcaption { b { (named(content.mark(slot), &scenario.name)) } " " (described(content, scenario)) }
                        @if !scenario.notes.is_empty() { p class="soft" { (scenario.notes) } }
                    }
                }
            }
        }
    }
}

/// The coldest hour outdoors within the season.
fn coldest_hour(entry: &Entry) -> usize {
    let outdoor = entry.run.hours.outdoor_c.iter().enumerate();
    outdoor.min_by(|a, b| a.1.total_cmp(b.1)).map_or(0, |(hour, _)| hour)
}

fn coldest(content: &Content, entry: &Entry) -> String {
    let (hours, hour) = (&entry.run.hours, coldest_hour(entry));
    let at = hours
        .stamp(hour, content.report.weather.climate)
        .map(|at| kept_together(&format::stamp(at)))
        .unwrap_or_default();
    let outdoor = hours.outdoor_c.get(hour).map(|t| content.temperature(*t)).unwrap_or_default();
    format!("{at}, {outdoor}")
}

fn hour_of(entry: &Entry) -> Hour {
    let (h, hour) = (&entry.run.hours, coldest_hour(entry));
    let get = |column: &[f64]| column.get(hour).copied().filter(|v| v.is_finite());
    let share = |column: &[f64], rated_w: f64| get(column).filter(|_| rated_w > 0.0).map_or(0.0, |w| w / rated_w);
    Hour {
        house_c: get(&h.house_air_c),
        tent_c: get(&h.tent_air_c),
        house_water_c: get(&h.house_water_c),
        tent_water_c: get(&h.tent_water_c),
        heater_share: [
            share(&h.heater_w, entry.scenario.heater.rated_w),
            share(&h.standby_w, entry.scenario.standby.rated_w),
        ],
        vent_opening: get(&h.vent_opening).unwrap_or(0.0),
    }
}

/// House, covering and heater in one line.
fn described(content: &Content, scenario: &Scenario) -> String {
    let length = |m: f64| content.quantity(m, Quantity::Length, None);
    let house = &scenario.house;
    let mut parts = vec![
        format!("{}, {} long, {} wide", house.shape.name(), length(house.length_m), length(house.width_m)),
        words::sheets(&scenario.covering.sheets, &content.catalogue),
    ];
    if scenario.tent.present {
        parts.push(format!("inner tent of {}", words::sheets(&scenario.tent.sheets, &content.catalogue)));
    }
    if scenario.heater.present {
        parts.push(format!("{}, {}", scenario.heater.name, kept_together(&format::power(scenario.heater.rated_w))));
    }
    parts.join("; ") + "."
}
