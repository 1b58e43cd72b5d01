//! The worst spell hour by hour: temperatures above, heater output below, on one time axis.

use super::axis::{Axes, span};
use super::content::{Content, Entry};
use super::figure::{ACCENT, INK, SOFT, WIDTH, colour, line, named, plain_sample, points, text};
use crate::format;
use crate::units::Quantity;
use maud::{Markup, html};
use std::ops::Range;

const UPPER: f64 = 210.0;
const LOWER: f64 = 84.0;
/// Room under the lower plot for the days.
const DAYS: f64 = 22.0;

struct Trace<'a> {
    name: &'static str,
    colour: String,
    width: f64,
    dashes: &'static str,
    column: &'a [f64],
}

/// The figure of the scenario in the spotlight.
pub(super) fn figure(content: &Content) -> Markup {
    let Some(entry) = content.spotlight() else { return html! {} };
    let worst = &entry.run.summary.worst_spell;
    let window = worst.surroundings(entry.run.hours.record.len());
    let setpoint: Vec<f64> = entry.run.hours.setpoint_c.iter().map(|s| s.unwrap_or(f64::NAN)).collect();
    let traces = traces(&entry, &setpoint, &window);
    let unit = Quantity::Temperature.unit(content.units());
    let limit = unit.shown(entry.run.summary.crop_limit_c);
    let shown = |trace: &Trace| -> Vec<f64> {
        trace.column.get(window.clone()).unwrap_or_default().iter().map(|t| unit.shown(*t)).collect()
    };
    let values = traces.iter().flat_map(shown).chain([limit]);
    let Some((low, high)) = span(values) else { return html! {} };
    let margin = (high - low).max(1.0) * 0.06;
    let upper = Axes {
        across: (58.0, WIDTH - 14.0),
        down: (8.0, UPPER - 10.0),
        x: (window.start as f64, window.end as f64),
        y: (low - margin, high + margin),
    };
    html! {
        figure {
            figcaption {
                b { "The worst spell" } ", hour by hour: " (named(entry.mark, &entry.scenario.name))
                ". Above, temperatures in " (unit.symbol) "; below, heat given in kW; the band is the worst " (worst.hours) " hours."
            }
            svg viewBox={ "0 0 " (WIDTH) " " (UPPER + LOWER + DAYS) } role="img" aria-label="The worst spell" {
                (band(upper.x(worst.start as f64), upper.x((worst.start + worst.hours) as f64)))
                (upper.upright(7, |v| format::number(v, 0)))
                (line(&[[upper.across.0, upper.y(limit)], [upper.across.1, upper.y(limit)]], ACCENT, 1.1, "2 2"))
                @for trace in &traces {
                    @for stretch in stretches(&shown(trace), window.start) {
                        @let through: Vec<[f64; 2]> = stretch.iter().map(|p| upper.at(*p)).collect();
                        (line(&through, &trace.colour, trace.width, trace.dashes))
                    }
                }
                (text(upper.across.1, upper.y(limit) - 3.0, "end", "tick accent halo", "crop limit"))
                (heat(&entry, &window))
                (days(content, &entry, &window))
            }
            p class="legend" {
                @for trace in &traces {
                    span { (plain_sample(&trace.colour, trace.width, trace.dashes)) (trace.name) } " "
                }
            }
        }
    }
}

/// The spell itself, behind both plots.
fn band(from: f64, to: f64) -> Markup {
    let (x, width) = (format!("{from:.1}"), format!("{:.1}", to - from));
    html! { rect x=(x) y="8" width=(width) height=(UPPER + LOWER - 8.0) fill=(SOFT) fill-opacity="0.1" {} }
}

fn traces<'a>(entry: &'a Entry, setpoint: &'a [f64], window: &Range<usize>) -> Vec<Trace<'a>> {
    let h = &entry.run.hours;
    let trace =
        |name, colour: &str, width, dashes, column| Trace { name, colour: colour.to_owned(), width, dashes, column };
    let mut out = vec![
        trace("Outdoors", SOFT, 1.3, "", h.outdoor_c.as_slice()),
        trace("House", &colour(0), 1.8, "7 2.5", &h.house_air_c),
        trace("Inner tent", INK, 2.2, "", &h.tent_air_c),
        trace("Water in the house", &colour(2), 1.5, "2 2", &h.house_water_c),
        trace("Water in the tent", &colour(3), 1.5, "9 2.5 2 2.5", &h.tent_water_c),
        trace("Setpoint", INK, 0.9, "4 3", setpoint),
    ];
    out.retain(|t| t.column.get(window.clone()).is_some_and(|values| values.iter().any(|v| v.is_finite())));
    out
}

/// Runs of neighbouring numbers, each as hours and values; a setpoint that is off leaves a gap.
fn stretches(values: &[f64], first: usize) -> Vec<Vec<[f64; 2]>> {
    let hour = |i: usize| (first + i) as f64 + 0.5;
    let placed: Vec<[f64; 2]> = values.iter().enumerate().map(|(i, v)| [hour(i), *v]).collect();
    placed.split(|[_, v]| !v.is_finite()).filter(|run| !run.is_empty()).map(<[[f64; 2]]>::to_vec).collect()
}

/// Heat of all heaters as an area, and the rated output as a line.
fn heat(entry: &Entry, window: &Range<usize>) -> Markup {
    let kwh = entry.run.hours.heat_kwh();
    let kw: Vec<f64> = window.clone().map(|hour| kwh.get(hour).copied().unwrap_or(0.0)).collect();
    let rated = entry.run.summary.rated_heater_w / 1000.0;
    let highest = kw.iter().copied().fold(rated, f64::max).max(0.1);
    let axes = Axes {
        across: (58.0, WIDTH - 14.0),
        down: (UPPER + 8.0, UPPER + LOWER),
        x: (window.start as f64, window.end as f64),
        y: (0.0, highest * 1.12),
    };
    let decimals = usize::from(highest < 4.0);
    let top = stretches(&kw, window.start).concat();
    let mut area: Vec<[f64; 2]> = top.iter().map(|p| axes.at(*p)).collect();
    let outline = line(&area, ACCENT, 1.6, "");
    if let (Some(first), Some(last)) = (area.first().copied(), area.last().copied()) {
        area.extend([[last[0], axes.down.1], [first[0], axes.down.1]]);
    }
    html! {
        (axes.upright(3, |v| format::number(v, decimals)))
        polygon points=(points(&area)) fill=(ACCENT) fill-opacity="0.16" {}
        (outline)
        @if rated > 0.0 {
            (line(&[[axes.across.0, axes.y(rated)], [axes.across.1, axes.y(rated)]], SOFT, 0.9, "4 3"))
            (text(axes.across.1, axes.y(rated) - 3.0, "end", "tick halo", "rated output"))
        }
    }
}

/// Dates where days begin.
fn days(content: &Content, entry: &Entry, window: &Range<usize>) -> Markup {
    let stamp = |hour| entry.run.hours.stamp(hour, content.report.weather.climate);
    let bottom = UPPER + LOWER;
    let axes = Axes {
        across: (58.0, WIDTH - 14.0),
        down: (8.0, bottom),
        x: (window.start as f64, window.end as f64),
        y: (0.0, 1.0),
    };
    html! {
        @for hour in window.clone() {
            @if let Some(at) = stamp(hour).filter(|at| at.hour == 1) {
                @let x = axes.x(hour as f64);
                (line(&[[x, axes.down.0], [x, bottom + 4.0]], SOFT, 0.4, "1 3"))
                @if axes.across.1 - x > 40.0 { (text(x + 3.0, bottom + 14.0, "start", "tick", &format::day(at))) }
            }
        }
        (line(&[[axes.across.0, bottom], [axes.across.1, bottom]], SOFT, 0.9, ""))
    }
}
