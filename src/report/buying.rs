//! What each scenario costs to buy, and when the saving has paid for it.

use super::content::{Content, Entry};
use super::figure::named;
use crate::compare::Cell;
use crate::format;
use crate::season::buying::BuyingLine;
use crate::units::Quantity;
use maud::{Markup, html};

/// The section.
pub(super) fn buying(content: &Content) -> Markup {
    let with_lines: Vec<Entry> =
        content.entries.iter().copied().filter(|e| e.run.buying.lines.iter().any(|line| line.cost() > 0.0)).collect();
    html! {
        section {
            h2 { "Buying costs and payback" }
            @if with_lines.is_empty() {
                p { "No buying costs were entered, so that nothing is paid back: only the winters' running costs are compared." }
            } @else {
                @for entry in &with_lines { (lines(content, entry)) }
                @if content.several() { (payback(content)) }
            }
        }
    }
}

fn lines(content: &Content, entry: &Entry) -> Markup {
    let buying = &entry.run.buying;
    html! {
        table class="buying" {
            caption { (named(entry.mark, &entry.scenario.name)) }
            thead {
                tr {
                    th { "What" } th class="n" { "How much" } th class="n" { "Price" } th class="n" { "Cost" }
                    th class="n" { "Lasts, years" } th class="n" { "By year" }
                }
            }
            tbody {
                @for line in &buying.lines {
                    tr {
                        td { (line.name) @if !line.note.is_empty() { " " span class="soft" { (line.note) } } }
                        td class="n" { (quantity(content, line)) }
                        td class="n" { (price(content, line)) }
                        td class="n" { (content.money(line.cost())) }
                        td class="n" { (format::number(line.life_years, 1)) }
                        td class="n" { (content.money(line.cost() / line.life_years)) }
                    }
                }
                tr class="sum" {
                    td { "Together" } td {} td {}
                    td class="n" { (content.money(buying.cost())) } td {}
                    td class="n" { (content.money(buying.cost_per_year())) }
                }
            }
        }
    }
}

fn quantity(content: &Content, line: &BuyingLine) -> String {
    if line.by_area {
        content.quantity(line.quantity, Quantity::Area, Some(1))
    } else {
        format::number(line.quantity, 0)
    }
}

/// Price of one, or of one square metre or foot.
fn price(content: &Content, line: &BuyingLine) -> String {
    if !line.by_area {
        return content.money(line.price);
    }
    let unit = Quantity::Area.unit(content.units());
    format!("{} per {}", content.money(line.price * unit.step()), unit.symbol)
}

/// Payback of every scenario against the reference, and the net saving over the winters planned for.
fn payback(content: &Content) -> Markup {
    let winters = content.report.study.prices.winters;
    let words = |key: &str, slot: usize| match content.cell(key, slot) {
        Some(Cell::Number(amount) | Cell::Over(amount)) => content.money(*amount),
        Some(Cell::Text(words)) => words.clone(),
        Some(Cell::Empty(reason)) => (*reason).to_owned(),
        None => "–".to_owned(),
    };
    html! {
        table class="payback" {
            thead {
                tr {
                    th { "Against the reference" } th class="n" { "Buying" } th class="n" { "Running, a winter" }
                    th class="n" { "Simple payback" } th class="n" { "Net saving, " (winters) " winters" }
                }
            }
            tbody {
                @for entry in &content.entries {
                    tr {
                        td { (named(entry.mark, &entry.scenario.name)) }
                        td class="n" { (words("buying", entry.slot)) }
                        td class="n" { (words("running", entry.slot)) }
                        td class="n" { (words("payback", entry.slot)) }
                        td class="n" { (words("net-saving", entry.slot)) }
                    }
                }
            }
        }
        p class="soft" {
            "Simple payback is the extra buying cost over the yearly saving, without interest. The net saving counts what "
            "must be bought again within those winters."
        }
    }
}
