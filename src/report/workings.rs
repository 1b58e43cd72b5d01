//! How it was worked out: the panels of the scenario whose nights are drawn, as an appendix.

use super::content::{Content, Entry, kept_together};
use super::figure::named;
use crate::working::{Account, Case, Panel, panels};
use maud::{Markup, html};

/// The section.
pub(super) fn workings(content: &Content) -> Markup {
    let Some(entry) = content.spotlight() else { return html! {} };
    html! {
        section class="workings" {
            h2 { "How it was worked out" }
            p {
                "The headline figures of " (named(entry.mark, &entry.scenario.name)) ", with its numbers put in. Each number is "
                "rounded as printed, and a pencil comes to the same within that rounding."
            }
            @for panel in panels(&case(content, entry)) { (one(&panel)) }
        }
    }
}

fn case<'a>(content: &'a Content<'a>, entry: Entry<'a>) -> Case<'a> {
    let reference = content.reference().filter(|reference| reference.slot != entry.slot);
    Case {
        study: content.report.study,
        scenario: entry.scenario,
        climate: content.report.weather.climate,
        catalogue: &content.catalogue,
        run: entry.run,
        reference: reference.map(|reference| (reference.scenario.name.as_str(), reference.run)),
        units: content.units(),
    }
}

fn one(panel: &Panel) -> Markup {
    html! {
        h3 { (panel.topic.name()) }
        p { (panel.formula) }
        @for account in panel.accounts.iter().filter(|account| !account.is_empty()) { (sum(account)) }
        p class="soft" { (panel.source) }
    }
}

fn sum(account: &Account) -> Markup {
    html! {
        table {
            thead { tr { th { (account.heading) } th {} th {} } }
            tbody {
                @for row in &account.rows {
                    tr {
                        td { (row.name) } td { (row.working()) }
                        td class="n" { (kept_together(&row.signed_text())) }
                    }
                }
                @if let Some((name, total)) = &account.total {
                    tr { td { b { (name) } } td {} td class="n" { b { (kept_together(&total.text())) } } }
                }
            }
        }
        @if !account.note.is_empty() { p { (account.note) } }
    }
}
