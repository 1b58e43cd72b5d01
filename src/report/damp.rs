//! How damp each scenario is: wet covers, humid crop, condensed water.

use super::content::{Content, Entry};
use super::figure::named;
use crate::format;
use crate::season::damp::WET_HOUR_G_PER_M2;
use crate::units::Quantity;
use maud::{Markup, html};

/// The section.
pub(super) fn damp(content: &Content) -> Markup {
    if content.entries.is_empty() {
        return html! {};
    }
    let wet = content.quantity(WET_HOUR_G_PER_M2, Quantity::AreaMass, None);
    let mass = Quantity::Mass.unit(content.units()).symbol;
    html! {
        section {
            h2 { "Damp" }
            p {
                "Hours in which more than " (wet) " condenses on the inner side of the skin or of the tent, hours with at least "
                "90 % relative humidity at the crop, which mould likes, and the water of the whole season, " (mass) "."
            }
            table class="damp" {
                thead {
                    tr {
                        th { "Scenario" } th class="n" { "Skin wet, h" } th class="n" { "Tent wet, h" }
                        th class="n" { "Humid crop, h" } th class="n" { "On skin, " (mass) } th class="n" { "On tent, " (mass) }
                        th class="n" { "From flames, " (mass) }
                    }
                }
                tbody { @for entry in &content.entries { (row(content, entry)) } }
            }
        }
    }
}

fn row(content: &Content, entry: &Entry) -> Markup {
    let damp = &entry.run.summary.damp;
    let count = |hours: usize| format::number(hours as f64, 0);
    let kilograms = |kg: f64| content.number_of(kg, Quantity::Mass);
    let of_tent = |text: String| if damp.hours_tent_wall_wet.is_some() { text } else { "–".to_owned() };
    html! {
        tr {
            td { (named(entry.mark, &entry.scenario.name)) }
            td class="n" { (count(damp.hours_skin_wet)) }
            td class="n" { (of_tent(count(damp.hours_tent_wall_wet.unwrap_or(0)))) }
            td class="n" { (count(damp.hours_crop_humidity_90)) }
            td class="n" { (kilograms(damp.skin_condensed_kg)) }
            td class="n" { (of_tent(kilograms(damp.tent_wall_condensed_kg))) }
            td class="n" { (kilograms(damp.burner_water_kg)) }
        }
    }
}
