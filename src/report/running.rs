//! Running cost over the season: every shown scenario, and the reference's baseline.

use super::axis::{Axes, span};
use super::content::{Content, Entry};
use super::figure::{SOFT, WIDTH, colour, dashes, line, line_sample, mark, plain_sample};
use crate::format;
use crate::season::sums::{days, running};
use maud::{Markup, html};

const HEIGHT: f64 = 250.0;
/// Hours between points, for a line of some hundred points.
const THIN_H: usize = 24;
/// Dashes of the baseline.
pub(super) const BASELINE: &str = "1 3.5";

/// The figure: money, or heat where no price is known.
pub(super) fn figure(content: &Content) -> Markup {
    let priced: Vec<Entry> = content.shown().into_iter().filter(|e| e.run.summary.cost.is_some()).collect();
    let money = !priced.is_empty();
    let entries = if money { priced } else { content.shown() };
    let column = |e: &Entry| if money { e.run.hours.cost.clone() } else { e.run.hours.heat_kwh() };
    let lines: Vec<(usize, Vec<[f64; 2]>)> = entries.iter().map(|e| (e.mark, running(&column(e), THIN_H))).collect();
    let base = content.reference().or(entries.first().copied());
    let baseline = base.filter(|e| !money || e.run.summary.baseline_cost.is_some()).map(|e| {
        let hours = if money { e.run.hours.baseline_cost.clone() } else { e.run.hours.baseline_kwh() };
        running(&hours, THIN_H)
    });
    let all = || lines.iter().map(|(_, points)| points).chain(&baseline).flatten();
    let (Some((_, last)), Some((_, high))) = (span(all().map(|p| p[0])), span(all().map(|p| p[1]))) else {
        return html! {};
    };
    let axes = Axes {
        across: (58.0, WIDTH - 14.0),
        down: (12.0, HEIGHT - 24.0),
        x: (0.0, last),
        y: (0.0, (high * 1.04).max(1.0)),
    };
    let unit = if money { content.currency() } else { "kWh" };
    let dates = base.map(|e| days(e.run, content.report.weather.climate)).unwrap_or_default();
    html! {
        figure {
            figcaption {
                b { @if money { "Running cost, " } @else { "Running heat, " } (unit) }
                @if money { ": energy of every hour added up, without standing charges." } @else { ": no price is known." }
                @if entries.len() < content.shown().len() { " Scenarios without a price are left out." }
            }
            svg viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label="Running sum over the season" {
                (axes.upright(6, |v| format::number(v, 0)))
                (axes.dates(&dates))
                @if let Some(points) = &baseline { (curve(&axes, points, SOFT, 1.6, BASELINE)) }
                @for (slot, points) in &lines {
                    (curve(&axes, points, &colour(*slot), 1.8, dashes(*slot)))
                    (marks(&axes, *slot, points))
                }
            }
            (legend(content, &entries, baseline.is_some(), line_sample))
        }
    }
}

/// Names of scenarios with a sample of each, and of the baseline.
pub(super) fn legend(content: &Content, entries: &[Entry], baseline: bool, sample: impl Fn(usize) -> Markup) -> Markup {
    html! {
        p class="legend" {
            @for entry in entries { span { (sample(entry.mark)) (entry.scenario.name) } " " }
            @if baseline {
                span {
                    (plain_sample(SOFT, 1.6, BASELINE)) "Degree-hour baseline" @if content.several() { " of the reference" }
                }
            }
        }
    }
}

fn curve(axes: &Axes, points: &[[f64; 2]], colour: &str, width: f64, dashes: &str) -> Markup {
    let through: Vec<[f64; 2]> = points.iter().map(|p| axes.at(*p)).collect();
    line(&through, colour, width, dashes)
}

/// Marks along a line, each scenario's at places of its own, and one at its end.
fn marks(axes: &Axes, slot: usize, points: &[[f64; 2]]) -> Markup {
    let every = (points.len() / 6).max(1);
    let first = every / 2 + slot * every / 8;
    html! {
        // None crowds the last one, which ends the line.
        @for point in points.iter().take(points.len() - every / 3).skip(first).step_by(every).chain(points.last()) {
            @let [x, y] = axes.at(*point);
            (mark(slot, x, y, 4.0))
        }
    }
}
