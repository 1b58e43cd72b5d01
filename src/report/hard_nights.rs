//! Beyond this winter: heater margin, the worst spell, stores, and how cold it may become.

use super::content::{Content, Entry};
use super::figure::named;
use crate::format;
use crate::season::colder::{Bound, ColderSpell, MOST_K, SPELL_HOURS};
use crate::season::sizing::SIZING_MARGIN;
use crate::season::worst_spell::{Strain, WORST_SPELL_HOURS};
use crate::units::Quantity;
use maud::{Markup, html};

/// The section.
pub(super) fn hard_nights(content: &Content) -> Markup {
    if content.entries.is_empty() {
        return html! {};
    }
    let heated = content.entries.iter().any(|entry| entry.scenario.heater.present);
    html! {
        section {
            h2 { "Hard nights" }
            p {
                "The worst " (WORST_SPELL_HOURS) " hours are those in which a scenario itself comes nearest to failing: most "
                "degree-hours below the crop limit; else below setpoint at full output; else most heat; without any, the coldest "
                "air. What water and floors hold is their heat above the crop limit at the start of them and at its least."
            }
            table class="hard-nights" {
                thead {
                    tr {
                        th { "Scenario" } th { "Worst from" } th class="n" { "Lowest air" } th class="n" { "Heat, kWh" }
                        th class="n" { "Water holds, kWh" } th class="n" { "Floors hold, kWh" }
                    }
                }
                tbody { @for entry in &content.entries { (worst_row(content, entry)) } }
            }
            @if heated { (sizes(content)) }
            (colder(content))
        }
    }
}

fn worst_row(content: &Content, entry: &Entry) -> Markup {
    let worst = &entry.run.summary.worst_spell;
    let by = match worst.by {
        Strain::CropLimit => "below the crop limit",
        Strain::Setpoint => "below setpoint",
        Strain::Heat => "most heat",
        Strain::CropAir => "coldest air",
    };
    let course = |first: f64, least: f64| format!("{} → {}", format::number(first, 1), format::number(least, 1));
    html! {
        tr {
            td { (named(entry.mark, &entry.scenario.name)) }
            td { (format::stamp(worst.starts_at)) span class="soft line" { (by) } }
            td class="n" { (content.temperature(worst.crop_air_min_c)) }
            td class="n" { (format::number(worst.heat_kwh, 0)) }
            td class="n" { (worst.water.map_or("–".to_owned(), |w| course(w.first_kwh, w.least_kwh))) }
            td class="n" { (course(worst.floor.first_kwh, worst.floor.least_kwh)) }
        }
    }
}

/// Heaters beside their loads.
fn sizes(content: &Content) -> Markup {
    let watts = |w: Option<f64>| w.map_or("–".to_owned(), format::power);
    html! {
        p {
            "Margins are the rated output less the load. The next size is the smallest on sale (common practice) that gives the "
            "design load at 99.6 % and " (format::number(100.0 * SIZING_MARGIN, 0)) " % more."
        }
        table class="hard-nights" {
            thead {
                tr {
                    th { "Scenario" } th class="n" { "Rated" } th class="n" { "Load at 99 %" } th class="n" { "at 99.6 %" }
                    th class="n" { "Coldest hour" } th class="n" { "Margin" } th class="n" { "to largest hour" }
                    th class="n" { "Next size" }
                }
            }
            tbody {
                @for entry in content.entries.iter().filter(|entry| entry.scenario.heater.present) {
                    @let s = &entry.run.summary;
                    tr {
                        td { (named(entry.mark, &entry.scenario.name)) }
                        td class="n" { (format::power(s.rated_heater_w)) }
                        td class="n" { (format::power(s.design_load_w_99)) }
                        td class="n" { (format::power(s.design_load_w_99_6)) }
                        td class="n" { (format::power(s.design_load_w_coldest)) }
                        td class="n" { (watts(s.heater_margin_w_99_6)) }
                        td class="n" { (watts(s.heater_margin_w_largest_hour)) }
                        td class="n" { (watts(s.next_heater_w)) }
                    }
                }
            }
        }
    }
}

/// The coldest spell, colder.
fn colder(content: &Content) -> Markup {
    let known: Vec<_> = content.entries.iter().filter_map(|e| Some((e, &e.hard_nights?.colder_spell))).collect();
    let Some((_, first)) = known.first() else { return html! {} };
    let by = content.quantity(first.colder_by_k, Quantity::TemperatureDifference, Some(1));
    html! {
        p {
            "The coldest " (SPELL_HOURS) " hours, from " (format::stamp(first.starts_at)) " with " (content.temperature(first.outdoor_min_c))
            " at the lowest, taken " (by) " colder (outdoor air, dew point and sky; wind, sun and deep ground as they were): the "
            "crop’s lowest air then, and the smallest heater that keeps its limit. The last column is the coldest outdoor hour "
            "with which the limit is still kept."
        }
        table class="hard-nights" {
            thead {
                tr {
                    th { "Scenario" } th class="n" { "Crop limit" } th class="n" { "Lowest air, " (by) " colder" }
                    th class="n" { "Heater needed" } th class="n" { "Holds down to" }
                }
            }
            tbody { @for (entry, spell) in known { (colder_row(content, entry, spell)) } }
        }
    }
}

fn colder_row(content: &Content, entry: &Entry, spell: &ColderSpell) -> Markup {
    let edge = |k: f64| content.quantity(k, Quantity::TemperatureDifference, Some(0));
    let bound = match spell.bound {
        Bound::Kelvin(k) => content.temperature(spell.outdoor_min_c - k),
        Bound::Beyond => format!("more than {} colder", edge(MOST_K)),
        Bound::Never => "no cold spell".to_owned(),
    };
    let lowest = content.temperature(spell.crop_air_min_c);
    html! {
        tr {
            td { (named(entry.mark, &entry.scenario.name)) }
            td class="n" { (content.temperature(entry.run.summary.crop_limit_c)) }
            td class="n" { @if spell.holds { (lowest) } @else { b { (lowest) } } }
            td class="n" { (spell.heater_needed_w.map_or("–".to_owned(), format::power)) }
            td class="n" { (bound) }
        }
    }
}
