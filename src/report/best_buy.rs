//! Measures that may be bought, and which of them to buy.

use super::content::{Content, kept_together};
use crate::explore::{BestBuy, Offer, Step};
use crate::format;
use crate::model::{Candidate, Measure};
use crate::season::buying::Payback;
use crate::units::Quantity;
use maud::{Markup, html};

/// Combinations that are listed.
const ROWS: usize = 6;

/// The section; nothing without measures.
pub(super) fn best_buy(content: &Content) -> Markup {
    let study = content.report.study;
    if study.candidates.is_empty() {
        return html! {};
    }
    html! {
        section {
            h2 { "What may be bought" }
            table class="explored" {
                thead {
                    tr { th { "Measure" } th { "Kind" } th class="n" { "Price" } th { "for" } th class="n" { "Lasts" } th { "Note" } }
                }
                tbody { @for candidate in &study.candidates { (candidate_row(content, candidate)) } }
            }
            @match &content.report.explored.measures {
                Some((place, combinations)) => {
                    @let best = BestBuy::of(combinations, study.prices.budget, study.prices.winters);
                    @let name = study.scenarios.get(*place).map_or("", |s| s.name.as_str());
                    (answer(content, name, &best))
                }
                None => p class="soft" { "Their combinations were not run for this report." },
            }
        }
    }
}

fn candidate_row(content: &Content, candidate: &Candidate) -> Markup {
    let (price, per) = price(content, candidate);
    let years = format!("{} years", format::number(candidate.life_years, 1).trim_end_matches(".0"));
    html! {
        tr class=[(!candidate.ticked).then_some("soft")] {
            td { (candidate.name) @if !candidate.ticked { span class="soft line" { "not looked at" } } }
            td { (candidate.change.kind()) }
            td class="n" { (price) }
            td { (per) }
            td class="n" { (kept_together(&years)) }
            td class="soft" { (candidate.note) }
        }
    }
}

/// A price and what it is for, in the reader's units.
fn price(content: &Content, candidate: &Candidate) -> (String, String) {
    let measure = candidate.change.measure();
    if measure.by_area() {
        let per_area = Quantity::MoneyPerArea.unit(content.units()).shown(candidate.price);
        return (content.money(per_area), kept_together(&format!("1 {}", Quantity::Area.unit(content.units()).symbol)));
    }
    let per = if measure == Measure::Other { "all of it" } else { "one" };
    (content.money(candidate.price), per.to_owned())
}

fn answer(content: &Content, name: &str, best: &BestBuy) -> Markup {
    let study = content.report.study;
    let budget =
        best.budget.map_or("without a limit".to_owned(), |budget| format!("for at most {}", content.money(budget)));
    let winters = if best.winters == 1 { "one winter".to_owned() } else { format!("{} winters", best.winters) };
    html! {
        p { (name) " with every combination of them, over " (winters) ", bought " (budget) "." }
        p class="answer" { (best.verdict(study, content.units()).join(" ")) }
        @let listed = if best.ranked.is_empty() { &best.short } else { &best.ranked };
        @if !listed.is_empty() {
            table class="explored" {
                thead {
                    tr {
                        th { @if best.ranked.is_empty() { "Does not hold the crop" } @else { "Holds the crop" } }
                        th class="n" { "To buy" } th class="n" { "A winter" } th class="n" { "In " (winters) }
                        th class="n" { "Lowest at the crop" }
                    }
                }
                tbody { @for offer in listed.iter().take(ROWS) { (offer_row(content, offer)) } }
            }
            @if listed.len() > ROWS { p class="soft" { "The first " (ROWS) " of " (listed.len()) "." } }
        }
        @if best.steps.len() > 1 { (steps(content, &best.steps)) }
    }
}

fn offer_row(content: &Content, offer: &Offer) -> Markup {
    html! {
        tr {
            td { (offer.combination.names(content.report.study)) }
            td class="n" { (content.money(offer.buying)) } td class="n" { (content.money(offer.running)) }
            td class="n" { (content.money(offer.total)) }
            td class="n" { (content.temperature(offer.season.crop_zone_min_c)) }
        }
    }
}

/// What each further unit of money brings.
fn steps(content: &Content, steps: &[Step]) -> Markup {
    let each = format::with_currency("1", content.currency());
    html! {
        table class="explored" {
            thead {
                tr {
                    th { "What the next money brings" } th class="n" { "More to buy" } th class="n" { "Less to run" }
                    th class="n" { "per " (each) } th class="n" { "Paid back" }
                }
            }
            tbody {
                @for (place, step) in steps.iter().enumerate() {
                    tr class=[(!step.within_budget).then_some("soft")] {
                        td {
                            (step.offer.combination.names(content.report.study))
                            @if !step.within_budget { " (beyond the budget)" }
                        }
                        td class="n" { (content.money(step.extra_buying)) }
                        @if place == 0 {
                            td class="n" { "–" } td class="n" { "–" } td class="n" { "–" }
                        } @else {
                            td class="n" { (content.money(step.saving_per_winter)) }
                            td class="n" { (step.saving_per_unit().map_or("–".to_owned(), |share| format::number(share, 2))) }
                            td class="n" { (payback(step)) }
                        }
                    }
                }
            }
        }
    }
}

fn payback(step: &Step) -> String {
    match step.payback() {
        Payback::Winters(winters) => kept_together(&format!("{} winters", format::number(winters, 1))),
        Payback::AtOnce => "at once".to_owned(),
        _ => "never".to_owned(),
    }
}
