//! Many winters: what one in ten costs, and how often the crop is lost.

use super::content::{Content, Entry, kept_together};
use super::digest::amount;
use super::figure::named;
use crate::season::winters::{Spread, WinterFigures};
use maud::{Markup, html};

/// The section; nothing where no winters were run.
pub(super) fn winters(content: &Content) -> Markup {
    let known: Vec<_> = content.entries.iter().filter_map(|entry| Some((entry, content.winters(entry)?))).collect();
    let Some((_, first)) = known.first() else { return html! {} };
    html! {
        section {
            h2 { "Many winters" }
            p {
                (first.winters) " winters made up by chance round the weather year, as mild and as hard as series of many years "
                "are: what one in ten costs less and more than, and the fuel that lasts nine in ten. No forecast."
            }
            table class="explored" {
                thead {
                    tr {
                        th { "Scenario" } th class="n" { "One in ten below" } th class="n" { "Half below" }
                        th class="n" { "One in ten above" } th class="n" { "Fuel for nine in ten" }
                        th class="n" { "Crop's lowest, one in ten" } th class="n" { "Crop limit broken" }
                    }
                }
                tbody { @for (entry, figures) in known { (row(content, entry, figures)) } }
            }
        }
    }
}

fn row(content: &Content, entry: &Entry, figures: &WinterFigures) -> Markup {
    let cost = |take: fn(Spread) -> f64| figures.cost.map_or("–".to_owned(), |cost| content.money(take(cost)));
    let fuel = figures.fuel_quantity.map_or("–".to_owned(), |fuel| amount(fuel.p90, &figures.fuel_unit));
    html! {
        tr {
            td { (named(entry.mark, &entry.scenario.name)) }
            td class="n" { (cost(|c| c.p10)) } td class="n" { (cost(|c| c.p50)) } td class="n" { (cost(|c| c.p90)) }
            td class="n" { (kept_together(&fuel)) }
            td class="n" { (figures.crop_air_min_c.map_or("–".to_owned(), |air| content.temperature(air.p10))) }
            td class="n" { (figures.winters_below_crop_limit) " of " (figures.winters) }
        }
    }
}
