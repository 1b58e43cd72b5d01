//! The table side by side: a column per scenario, each value with its difference from the reference.

use super::content::Content;
use super::digest;
use super::figure::badge;
use crate::compare::{Cell, Comparison, Group, Row};
use crate::format;
use crate::units::{Quantity, UnitSystem};
use maud::{Markup, html};

/// Columns that fit a page; more go into a further table.
const COLUMNS: usize = 6;

/// Row of the fuel, by its stable name.
const FUEL: &str = "fuel";
/// Rows about buying, by their stable names.
const ABOUT_BUYING: [&str; 4] = ["buying", "buying-per-year", "yearly", "payback"];

/// Rows that compare with the reference.
const ABOUT_A_REFERENCE: [&str; 2] = ["payback", "net-saving"];

/// The results side by side.
pub(super) fn results(content: &Content) -> Markup {
    html! {
        section {
            @if content.several() {
                h2 { "Side by side" }
                p {
                    "Below each value its difference from the reference, “" (reference(&content.table))
                    "”, and that as a share. " span class="best" { "Framed" } " is the best value of a row."
                }
            } @else {
                h2 { "The figures" }
            }
            (tables(content, &[Group::Money, Group::Energy, Group::Safety]))
        }
    }
}

/// The inputs in which scenarios differ; nothing for a single one.
pub(super) fn what_differs(content: &Content) -> Markup {
    if !content.several() {
        return html! {};
    }
    html! {
        section {
            h2 { "What differs" }
            @if content.table.rows.iter().any(|row| row.group == Group::Inputs) {
                (tables(content, &[Group::Inputs]))
            } @else {
                p { "The scenarios have the same inputs." }
            }
        }
    }
}

fn reference(table: &Comparison) -> &str {
    table.columns.get(table.reference).map_or("", String::as_str)
}

fn tables(content: &Content, groups: &[Group]) -> Markup {
    let count = content.table.columns.len();
    let all: Vec<usize> = (0..count).collect();
    // Even tables look better than a full one and a remnant.
    let width = count.div_ceil(count.div_ceil(COLUMNS).max(1)).max(1);
    html! { @for columns in all.chunks(width) { (table(content, groups, columns)) } }
}

fn table(content: &Content, groups: &[Group], columns: &[usize]) -> Markup {
    let several = groups.len() > 1;
    html! {
        table class={ "side columns-" (columns.len()) @if several { " grouped" } } {
            thead {
                tr {
                    th {}
                    @for column in columns.iter().copied() {
                        th class="n" {
                            (badge(content.mark(column))) (content.table.columns[column])
                            @if content.several() && column == content.table.reference { " " span class="soft" { "(reference)" } }
                        }
                    }
                }
            }
            @for group in groups.iter().copied() {
                tbody {
                    @if several { tr class="group" { th colspan=(columns.len() + 1) { (group.name()) } } }
                    @for row in content.table.rows.iter().filter(|row| row.group == group && means_something(content, row)) {
                        (line(content, row, columns))
                    }
                }
            }
        }
    }
}

fn line(content: &Content, row: &Row, columns: &[usize]) -> Markup {
    let units = content.units();
    let unit = row.unit(units, content.currency());
    let named = unit.is_empty() || row.cells.iter().all(|cell| cell.number().is_none());
    let best = row.best_columns();
    html! {
        tr data-row=(row.key) {
            th { (row.title(units)) @if !named { ",\u{a0}" (unit) } }
            @for column in columns.iter().copied() {
                td class="n" {
                    @match row.cells.get(column) {
                        Some(Cell::Number(value)) => {
                            span class=[best.contains(&column).then_some("best")] { (number(row, *value, units)) }
                            @if let Some(words) = difference(content, row, column) { " " span class="soft" { (words) } }
                        }
                        Some(Cell::Text(_)) if row.key == FUEL => { (fuel_bought(content, column)) }
                        Some(Cell::Over(most)) => { "more than " (format::number(row.quantity.unit(units).shown(*most), 0)) }
                        Some(Cell::Text(words)) => { (words) }
                        Some(Cell::Empty(reason)) => { span class="soft" { (reason) } }
                        None => {}
                    }
                }
            }
        }
    }
}

/// Whether a row says anything: those about buying do not where nothing is bought, nor those that compare where there is
/// nothing to compare.
fn means_something(content: &Content, row: &Row) -> bool {
    let bought = content.entries.iter().any(|entry| entry.run.buying.cost() > 0.0);
    let key = row.key.as_ref();
    (bought || !ABOUT_BUYING.contains(&key)) && (content.several() || !ABOUT_A_REFERENCE.contains(&key))
}

/// What is bought, with grouped thousands and the standby heater's fuel.
fn fuel_bought(content: &Content, column: usize) -> String {
    let entry = content.entries.iter().find(|entry| entry.slot == column);
    entry.map(|entry| digest::fuel(&entry.run.summary)).unwrap_or_default()
}

fn number(row: &Row, value: f64, units: UnitSystem) -> String {
    let unit = row.quantity.unit(units);
    let decimals = if row.group == Group::Inputs { unit.decimals } else { row.decimals };
    format::number(unit.shown(value), decimals)
}

/// A difference with its share; nothing for inputs, and "same" where nothing would be seen of it.
fn difference(content: &Content, row: &Row, column: usize) -> Option<String> {
    if row.group == Group::Inputs || matches!(row.cells.get(column), Some(Cell::Over(_))) {
        return None;
    }
    let (difference, share) = row.difference(column, content.table.reference)?;
    let text = format::signed(row.shown_difference(difference, content.units()), row.decimals);
    if !text.starts_with(['+', '−']) {
        return Some("same".to_owned());
    }
    let text = if row.quantity == Quantity::Temperature { format!("{text}\u{a0}{}", content.degree()) } else { text };
    Some(match share {
        Some(share) => format!("{text} ({}\u{a0}%)", format::signed(share * 100.0, 0)),
        None => text,
    })
}
