//! Heat by month: a bar for each shown scenario, the reference's baseline above, and the month's degree-hours.

use super::axis::Axes;
use super::content::Content;
use super::figure::{SOFT, WIDTH, bar, bar_sample, colour, hatch, line, text};
use super::running::{BASELINE, legend};
use crate::format;
use crate::season::sums::{Month, months};
use crate::units::Quantity;
use maud::{Markup, html};

const HEIGHT: f64 = 220.0;

/// The figure.
pub(super) fn figure(content: &Content) -> Markup {
    let climate = content.report.weather.climate;
    let shown = content.shown();
    let of: Vec<(usize, Vec<Month>)> = shown.iter().map(|e| (e.mark, months(e.run, climate))).collect();
    let Some(base) = content.reference().or(shown.first().copied()).map(|e| months(e.run, climate)) else {
        return html! {};
    };
    let heats = of.iter().flat_map(|(_, months)| months.iter().map(|m| m.heat_kwh));
    let highest = base.iter().map(|m| m.baseline_kwh).chain(heats).fold(1.0, f64::max);
    let count = base.len().max(1) as f64;
    let axes =
        Axes { across: (58.0, WIDTH - 14.0), down: (14.0, HEIGHT - 24.0), x: (0.0, count), y: (0.0, highest * 1.12) };
    let room = (axes.across.1 - axes.across.0) / count;
    let wide = room * 0.8 / of.len().max(1) as f64;
    let degree_hours = Quantity::TemperatureDifference.unit(content.units());
    html! {
        figure {
            figcaption {
                b { "Heat by month, kWh" } ". Above each month its degree-hours below the baseline's temperature, 1000 "
                (content.degree()) "·h."
            }
            svg viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label="Heat by month" {
                (axes.upright(5, |v| format::number(v, 0)))
                @for (place, (slot, months)) in of.iter().enumerate() {
                    @for (i, month) in months.iter().enumerate() {
                        @let x = axes.x(i as f64) + room * 0.1 + wide * place as f64;
                        @let y = axes.y(month.heat_kwh);
                        (bar(x + wide * 0.06, y, wide * 0.88, axes.down.1 - y, &hatch(*slot), &colour(*slot)))
                    }
                }
                @for (i, month) in base.iter().enumerate() {
                    @let (x, y) = (axes.x(i as f64), axes.y(month.baseline_kwh));
                    (line(&[[x + room * 0.05, y], [x + room * 0.95, y]], SOFT, 1.6, BASELINE))
                    @let shown = format::number(degree_hours.shown(month.degree_hours_kh) / 1000.0, 1);
                    (text(x + room / 2.0, y - 5.0, "middle", "tick", &shown))
                    (text(x + room / 2.0, axes.down.1 + 14.0, "middle", "tick", format::month(month.month)))
                }
                (line(&[[axes.across.0, axes.down.1], [axes.across.1, axes.down.1]], SOFT, 0.9, ""))
            }
            (legend(content, &shown, true, bar_sample))
        }
    }
}
