//! How damp each scenario is: wet covers, humid crop, condensed water.

use super::content::{Content, Entry};
use super::figure::named;
use crate::format;
use maud::{Markup, html};

/// The section.
pub(super) fn damp(content: &Content) -> Markup {
    if content.entries.is_empty() {
        return html! {};
    }
    html! {
        section {
            h2 { "Damp" }
            p {
                "Hours in which more than 1 g/m² condenses on the inner side of the skin or of the tent, hours with at least "
                "90 % relative humidity at the crop, which mould likes, and the water of the whole season, kg."
            }
            table class="damp" {
                thead {
                    tr {
                        th { "Scenario" } th class="n" { "Skin wet, h" } th class="n" { "Tent wet, h" }
                        th class="n" { "Humid crop, h" } th class="n" { "On skin, kg" } th class="n" { "On tent, kg" }
                        th class="n" { "From flames, kg" }
                    }
                }
                tbody { @for entry in &content.entries { (row(entry)) } }
            }
        }
    }
}

fn row(entry: &Entry) -> Markup {
    let damp = &entry.run.summary.damp;
    let count = |hours: usize| format::number(hours as f64, 0);
    let of_tent = |text: String| if damp.hours_tent_wall_wet.is_some() { text } else { "–".to_owned() };
    html! {
        tr {
            td { (named(entry.slot, &entry.scenario.name)) }
            td class="n" { (count(damp.hours_skin_wet)) }
            td class="n" { (of_tent(count(damp.hours_tent_wall_wet.unwrap_or(0)))) }
            td class="n" { (count(damp.hours_crop_humidity_90)) }
            td class="n" { (format::number(damp.skin_condensed_kg, 0)) }
            td class="n" { (of_tent(format::number(damp.tent_wall_condensed_kg, 0))) }
            td class="n" { (format::number(damp.burner_water_kg, 0)) }
        }
    }
}
