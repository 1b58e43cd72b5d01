//! Where the saving comes from: the baseline, what each change adds or takes, and what is left, as bars that add up.

use super::axis::{Axes, span};
use super::content::{Content, Entry};
use super::figure::{ACCENT, INK, PAPER, SOFT, WIDTH, bar, line, named, text};
use crate::format;
use crate::season::saving::SavingStep;
use maud::{Markup, html};

/// Height of a bar's row.
const ROW: f64 = 16.0;
/// Places of the columns: labels, bars, heat, money.
const LABEL: f64 = 0.0;
const BARS: (f64, f64) = (178.0, 500.0);
const HEAT: f64 = 582.0;
const MONEY: f64 = WIDTH - 2.0;

/// The section; nothing where the steps were not worked out.
pub(super) fn section(content: &Content) -> Markup {
    let with_steps: Vec<(Entry, &[SavingStep])> =
        content.entries.iter().filter_map(|e| Some((*e, e.steps.filter(|steps| steps.len() > 1)?))).collect();
    if with_steps.is_empty() {
        return html! {};
    }
    html! {
        section {
            h2 { "Where the saving comes from" }
            p {
                "From the baseline, which a pencil can check, to the scenario as it is. Each bar is the difference of two "
                "whole winters with one more change, so that the bars add up; what a change saves depends on those before it. "
                "Hatched bars add cost or heat. Money is that of heat, without fans and standing charges."
            }
            @for (entry, steps) in with_steps {
                figure class="steps" {
                    figcaption { b { (named(entry.mark, &entry.scenario.name)) } }
                    (chart(content, steps))
                }
            }
        }
    }
}

/// One row: a total from zero, or a difference from one level to the next.
struct Row {
    name: &'static str,
    from: f64,
    to: f64,
    total: bool,
    heat: String,
    money: Option<String>,
}

fn chart(content: &Content, steps: &[SavingStep]) -> Markup {
    let rows = rows(steps);
    let Some((low, high)) = span(rows.iter().flat_map(|row| [row.from, row.to])) else { return html! {} };
    let height = 16.0 + ROW * rows.len() as f64 + 3.0;
    let axes = Axes { across: BARS, down: (16.0, height - 3.0), x: (low.min(0.0), high.max(1.0)), y: (0.0, 1.0) };
    let priced = rows.iter().any(|row| row.money.is_some());
    html! {
        svg viewBox={ "0 0 " (WIDTH) " " (height) } role="img" aria-label="Where the saving comes from" {
            (text(HEAT, 9.0, "end", "tick", "heat, kWh"))
            @if priced { (text(MONEY, 9.0, "end", "tick", &format!("money, {}", content.currency()))) }
            (line(&[[axes.x(0.0), 14.0], [axes.x(0.0), height - 3.0]], SOFT, 0.9, ""))
            @for (index, row) in rows.iter().enumerate() {
                @let y = 16.0 + ROW * index as f64;
                @let class = if row.total { "label total" } else { "label" };
                (text(LABEL, y + 11.5, "start", class, row.name))
                (bar_of(&axes, row, y))
                @if index + 1 < rows.len() {
                    (line(&[[axes.x(row.to), y + 2.5], [axes.x(row.to), y + ROW + 3.0]], SOFT, 0.6, ""))
                }
                (text(HEAT, y + 11.5, "end", &format!("{class} heat"), &row.heat))
                @if let Some(money) = &row.money { (text(MONEY, y + 11.5, "end", &format!("{class} money"), money)) }
            }
        }
    }
}

fn bar_of(axes: &Axes, row: &Row, y: f64) -> Markup {
    let (a, b) = (axes.x(row.from), axes.x(row.to));
    let (fill, stroke) = match (row.total, row.to > row.from) {
        (true, _) => (INK, INK),
        (false, true) => ("url(#hatch-rise)", ACCENT),
        (false, false) => (PAPER, INK),
    };
    bar(a.min(b), y + 3.0, (b - a).abs(), ROW - 6.0, fill, stroke)
}

/// The baseline, the differences, and what is left. Printed differences are those of the printed levels, so that a
/// reader who adds them up gets the printed total.
fn rows(steps: &[SavingStep]) -> Vec<Row> {
    let dear = steps.iter().filter_map(|step| step.cost).fold(0.0, |most: f64, cost| most.max(cost.abs()));
    let decimals = if dear >= 100.0 { 0_u8 } else { 2 };
    let heat = |step: &SavingStep| rounded(step.heat_kwh, 0);
    let cost = |step: &SavingStep| step.cost.map(|cost| rounded(cost, decimals));
    let total = |step: &SavingStep, name| Row {
        name,
        from: 0.0,
        to: step.heat_kwh,
        total: true,
        heat: format::number(heat(step), 0),
        money: cost(step).map(|cost| format::number(cost, decimals.into())),
    };
    let difference = |pair: &[SavingStep]| Row {
        name: pair[1].change.name(),
        from: pair[0].heat_kwh,
        to: pair[1].heat_kwh,
        total: false,
        heat: format::signed(heat(&pair[1]) - heat(&pair[0]), 0),
        money: cost(&pair[1])
            .zip(cost(&pair[0]))
            .map(|(after, before)| format::signed(after - before, decimals.into())),
    };
    let first = steps.first().map(|step| total(step, step.change.name()));
    let last = steps.last().map(|step| total(step, "This scenario"));
    first.into_iter().chain(steps.windows(2).map(difference)).chain(last).collect()
}

fn rounded(value: f64, decimals: u8) -> f64 {
    let scale = 10_f64.powi(decimals.into());
    (value * scale).round() / scale
}
