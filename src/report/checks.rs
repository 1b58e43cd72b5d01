//! What could hurt someone or spoil the plan: each scenario's checks, and the rules behind them once.

use super::content::{Content, Entry};
use super::figure::{INK, PAPER, named};
use crate::checks::{Case, Check, Grade, checks as all_checks};
use maud::{Markup, html};

/// The section.
pub(super) fn checks(content: &Content) -> Markup {
    if content.entries.is_empty() {
        return html! {};
    }
    let of_all: Vec<(Entry, Vec<Check>)> = content.entries.iter().map(|entry| (*entry, of(content, *entry))).collect();
    html! {
        section class="checks" {
            h2 { "Checks" }
            p {
                @for grade in Grade::ALL { span class="grade" { (badge(grade)) (grade.meaning()) ". " } }
            }
            @for (entry, checks) in &of_all { (table(content, *entry, checks)) }
            dl class="sources" {
                @for check in first_of_each(&of_all) {
                    dt { (check.name) } dd { (check.rule) ". " span class="soft" { (check.source) "." } }
                }
            }
        }
    }
}

fn of(content: &Content, entry: Entry) -> Vec<Check> {
    all_checks(&Case {
        study: content.report.study,
        scenario: entry.scenario,
        catalogue: &content.catalogue,
        run: entry.run,
        units: content.units(),
    })
}

/// The rules, each once, in the order in which they come up.
fn first_of_each<'a>(of_all: &'a [(Entry, Vec<Check>)]) -> Vec<&'a Check> {
    let mut seen: Vec<&Check> = Vec::new();
    for check in of_all.iter().flat_map(|(_, checks)| checks) {
        if seen.iter().all(|other| other.name != check.name || other.rule != check.rule) {
            seen.push(check);
        }
    }
    seen
}

fn table(content: &Content, entry: Entry, checks: &[Check]) -> Markup {
    html! {
        table {
            @if content.several() { caption { (named(entry.slot, &entry.scenario.name)) } }
            thead { tr { th { "Grade" } th { "Check" } th { "Found" } th { "What to do" } } }
            tbody {
                @for check in checks {
                    tr {
                        td class="grade" { (badge(check.grade)) (check.grade.name()) }
                        td { (check.name) } td { (check.figure) } td { (check.remedy) }
                    }
                }
            }
        }
    }
}

/// A grade's shape: a filled octagon, a triangle, a ring. They differ without colour.
fn badge(grade: Grade) -> Markup {
    html! {
        svg class="badge" viewBox="0 0 12 12" aria-hidden="true" {
            @match grade {
                Grade::Stop => {
                    polygon points="3.8,0.8 8.2,0.8 11.2,3.8 11.2,8.2 8.2,11.2 3.8,11.2 0.8,8.2 0.8,3.8" fill=(INK) {}
                    path d="M3.5,6H8.5" stroke=(PAPER) stroke-width="1.6" {}
                }
                Grade::Look => {
                    polygon points="6,1.2 11.2,10.6 0.8,10.6" fill="none" stroke=(INK) stroke-width="1.1" {}
                    path d="M6,4.4V7.4M6,8.4V9.4" stroke=(INK) stroke-width="1.1" {}
                }
                Grade::Fine => { circle cx="6" cy="6" r="4.4" fill="none" stroke=(INK) stroke-width="1.1" {} }
            }
        }
    }
}
