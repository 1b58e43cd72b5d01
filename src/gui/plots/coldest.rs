//! The coldest spell hour by hour: temperatures above, heater output below, on one time axis.

use super::axis::{self, Look};
use super::legend::Sample;
use crate::format;
use crate::gui::board::Season;
use crate::gui::theme::Tokens;
use crate::season::colder::ColderSpell;
use crate::units::{Quantity, UnitSystem};
use egui::{Color32, Id, Theme, Ui};
use egui_plot::{HLine, HoverPosition, Line, LineStyle, Plot, PlotPoint, PlotPoints};
use std::ops::Range;

/// A line of the temperature plot.
pub struct Trace {
    /// Name.
    pub name: &'static str,
    /// Colour.
    pub colour: Color32,
    /// How it is drawn.
    pub sample: Sample,
    width: f32,
    points: Vec<PlotPoint>,
}

/// The lines, warmest names first.
#[must_use]
pub fn traces(
    season: &Season,
    window: &Range<usize>,
    colder: Option<&ColderSpell>,
    units: UnitSystem,
    theme: Theme,
    t: &Tokens,
) -> Vec<Trace> {
    let h = &season.run.hours;
    let unit = Quantity::Temperature.unit(units);
    let points = |column: &[f64]| -> Vec<PlotPoint> {
        let values = column.get(window.clone()).unwrap_or_default();
        values
            .iter()
            .enumerate()
            .map(|(i, v)| PlotPoint::new((window.start + i) as f64 + 0.5, unit.shown(*v)))
            .collect()
    };
    let setpoint: Vec<f64> = h.setpoint_c.iter().map(|s| s.unwrap_or(f64::NAN)).collect();
    let colour = |slot| crate::gui::palette::scenario(theme, slot);
    let trace =
        |name, colour, sample, width, column: &[f64]| Trace { name, colour, sample, width, points: points(column) };
    let mut out = vec![
        trace("Outdoors", t.soft, Sample::Line, 1.4, &h.outdoor_c),
        trace("House", colour(0), Sample::Line, 1.8, &h.house_air_c),
    ];
    out.push(trace("Inner tent", t.accent, Sample::Line, 2.2, &h.tent_air_c));
    out.push(trace("Water, house", colour(2), Sample::Dashed, 1.6, &h.house_water_c));
    out.push(trace("Water, tent", colour(3), Sample::Dashed, 1.6, &h.tent_water_c));
    out.push(trace("Setpoint", t.ink, Sample::Dashed, 1.2, &setpoint));
    if let Some(colder) = colder {
        let mut crop_air = vec![f64::NAN; window.end];
        for (k, t_c) in colder.crop_air_c.iter().enumerate() {
            if let Some(place) = crop_air.get_mut(colder.start + k) {
                *place = *t_c;
            }
        }
        out.push(trace("Crop, colder", t.accent, Sample::Dotted, 1.8, &crop_air));
    }
    out.retain(|trace| trace.points.iter().any(|p| p.y.is_finite()));
    for trace in &mut out {
        trace.points.retain(|p| p.y.is_finite());
    }
    out
}

/// Both plots; gives the hour that was clicked.
pub fn coldest_ui(ui: &mut Ui, season: &Season, traces: &[Trace], window: &Range<usize>, look: &Look) -> Option<usize> {
    let Look { t, units, cursor, height } = *look;
    let unit = Quantity::Temperature.unit(units);
    let limit = unit.shown(season.run.summary.crop_limit_c);
    let scenario = &season.inputs.scenario;
    let heated = scenario.heater.present || scenario.standby.present;
    let lower = if heated { (height * 0.32).clamp(64.0, 200.0) } else { 0.0 };
    let upper = linked(axis::time_plot("coldest temperatures", season, &t, move |v| {
        format!("{} {}", format::number(v, 0), unit.symbol)
    }))
    .height(height - lower - 4.0)
    .label_formatter(move |p| hover(season, p, |y| format!("{} {}", format::number(y, 1), unit.symbol)))
    .show_axes([!heated, true])
    .include_y(limit);
    let (from, to) = spell(season);
    let response = upper.show(ui, |p| {
        p.span(axis::band(from, to, &t));
        p.hline(HLine::new("", limit).color(t.warn).width(1.2).style(LineStyle::dashed_dense()).allow_hover(false));
        for trace in traces {
            let line = axis::line(trace.name, &trace.points, trace.colour, trace.width);
            p.line(axis::dashed(line, trace.sample));
        }
        if window.contains(&cursor) {
            p.vline(axis::cursor(cursor, t.accent));
        }
    });
    let names = traces.iter().map(|trace| trace.name).collect::<Vec<_>>().join(", ");
    let day = season.stamp(window.start).map(format::day).unwrap_or_default();
    axis::tell(&response.response, &format!("{names} round the coldest spell, hour by hour from {day}"));
    let clicked = axis::clicked_hour(&response, season.len());
    if !heated {
        return clicked;
    }
    clicked.or(heater_ui(ui, season, window, &Look { height: lower, ..*look }))
}

fn heater_ui(ui: &mut Ui, season: &Season, window: &Range<usize>, look: &Look) -> Option<usize> {
    let t = &look.t;
    let h = &season.run.hours;
    let column = |values: &[f64]| -> Vec<PlotPoint> {
        window.clone().map(|i| PlotPoint::new(i as f64 + 0.5, values.get(i).copied().unwrap_or(0.0) / 1000.0)).collect()
    };
    let rated = season.run.summary.rated_heater_w / 1000.0;
    let decimals = usize::from(rated < 4.0);
    let plot = linked(axis::time_plot("coldest heater", season, t, move |v| {
        if v < 0.0 { String::new() } else { format!("{} kW", format::number(v, decimals)) }
    }))
    .height(look.height)
    .include_y(0.0)
    .include_y(rated * 1.05)
    .label_formatter(move |p| hover(season, p, |y| format::power(y * 1000.0)));
    let (from, to) = spell(season);
    let response = plot.show(ui, |p| {
        p.span(axis::band(from, to, t));
        p.hline(HLine::new("", rated).color(t.soft).width(1.0).style(LineStyle::dashed_dense()).allow_hover(false));
        let first = Line::new("Heater", PlotPoints::Owned(column(&h.heater_w))).color(t.accent).width(1.8);
        p.line(first.fill(0.0).fill_alpha(0.18).allow_band(false));
        if runs_standby(season) {
            let standby = Line::new("Standby heater", PlotPoints::Owned(column(&h.standby_w))).color(t.ink).width(1.4);
            p.line(standby.style(LineStyle::dashed_loose()).allow_band(false));
        }
        if window.contains(&look.cursor) {
            p.vline(axis::cursor(look.cursor, t.accent));
        }
    });
    let most_w = h.heater_w.get(window.clone()).unwrap_or_default().iter().copied().fold(0.0, f64::max);
    let said = format!("Heater output, at most {} of {}", format::power(most_w), format::power(rated * 1000.0));
    axis::tell(&response.response, &said);
    axis::clicked_hour(&response, season.len())
}

/// Whether the standby heater has anything to draw.
#[must_use]
pub fn runs_standby(season: &Season) -> bool {
    season.run.hours.standby_w.iter().any(|w| *w > 0.0)
}

/// Where the spell begins and ends.
fn spell(season: &Season) -> (f64, f64) {
    let worst = &season.run.summary.worst_spell;
    (worst.start as f64, (worst.start + worst.hours) as f64)
}

fn linked(plot: Plot<'_>) -> Plot<'_> {
    let group = Id::unique("coldest axis");
    plot.link_axis(group, [true, false]).link_cursor(group, [true, false])
}

/// What stands beside the pointer: name, time, value.
pub fn hover(season: &Season, p: &HoverPosition<'_>, value: impl Fn(f64) -> String) -> Option<String> {
    let HoverPosition::NearDataPoint { plot_name, position, .. } = p else { return None };
    let hour = (position.x.max(0.0) as usize).min(season.len().saturating_sub(1));
    let when = season.stamp(hour).map(format::stamp).unwrap_or_default();
    Some(format!("{plot_name}\n{when}\n{}", value(position.y)))
}
