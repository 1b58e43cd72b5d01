//! What matters: how sure the figures are, and which of the guesses they rest on moves them most.

use super::content::{Content, Entry};
use super::figure::named;
use crate::season::sensitivity::{Effect, Outcome, Sensitivity};
use maud::{Markup, html};

/// What is said of a study whose doubts were not tried.
const NOT_TRIED: &str = "A typical year is no forecast: winters differ by an eighth to a quarter in the heat they ask for, \
    and a colder night than the coldest here will come. Of the house, air leakage is the largest unknown. Differences between \
    scenarios are surer than either sum. What else may be off was not tried for this report.";

/// The section; nothing where no doubt was tried.
pub(super) fn matters(content: &Content) -> Markup {
    let known: Vec<_> = content.entries.iter().filter_map(|entry| Some((entry, content.matters(entry)?))).collect();
    let spotlight = content.spotlight().map(|entry| entry.slot);
    let Some((entry, found)) = known.iter().find(|(entry, _)| Some(entry.slot) == spotlight).or(known.first()).copied()
    else {
        return html! {};
    };
    html! {
        section {
            h2 { "What matters" }
            p {
                "Each thing that nobody knows exactly, moved as far as it may be off, one at a time; the weather from one winter "
                "in ten to nine in ten. The band takes all of them as independent."
            }
            table class="explored" {
                thead { tr { th { "Scenario" } th { "A winter costs" } th { "Moved most by" } } }
                tbody { @for (entry, found) in &known { (band(content, entry, found)) } }
            }
            h3 { (named(entry.mark, &entry.scenario.name)) }
            table class="explored" {
                thead {
                    tr {
                        th { "In doubt" } th { "Moved by" } th class="n" { "Cost, less" } th class="n" { "more" }
                        th class="n" { "Crop's lowest, less" } th class="n" { "more" } th { "Why so far" }
                    }
                }
                tbody { @for effect in &found.effects { (row(content, effect)) } }
            }
        }
    }
}

fn band(content: &Content, entry: &Entry, found: &Sensitivity) -> Markup {
    let said = found.likely().map_or("price missing".to_owned(), |likely| likely.text(content.currency()));
    let most: Vec<&str> = found.effects.iter().take(2).map(|effect| effect.name).collect();
    html! {
        tr { td { (named(entry.mark, &entry.scenario.name)) } td { (said) } td { (most.join(", ")) } }
    }
}

fn row(content: &Content, effect: &Effect) -> Markup {
    let cost = |outcome: &Outcome| outcome.cost.map_or("–".to_owned(), |cost| content.money(cost));
    let air = |outcome: &Outcome| content.temperature(outcome.crop_air_min_c);
    html! {
        tr {
            td { (effect.name) } td { (effect.range_in(content.units())) }
            td class="n" { (cost(&effect.less)) } td class="n" { (cost(&effect.more)) }
            td class="n" { (air(&effect.less)) } td class="n" { (air(&effect.more)) }
            td class="soft" { (effect.reason) }
        }
    }
}

/// How sure the figures are, in words.
pub(super) fn how_sure(content: &Content) -> String {
    let spotlight = content.spotlight().and_then(|entry| Some((entry, content.matters(&entry)?)));
    let Some((entry, found)) = spotlight else { return NOT_TRIED.to_owned() };
    let Some(likely) = found.likely() else { return NOT_TRIED.to_owned() };
    let most = found.effects.first().map_or(String::new(), |effect| format!(" {} moves it most.", effect.name));
    format!(
        "{}: {}, if what nobody knows exactly is off by as much as it may be, each for itself, and the winter is milder or \
         harder than nine in ten.{most} A colder night than the coldest here will come. Differences between scenarios are surer \
         than either sum.",
        entry.scenario.name,
        likely.text(content.currency())
    )
}
