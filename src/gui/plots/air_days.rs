//! Three days hour by hour: temperatures above; openings, fan and humidity below, on one time axis.

use super::axis::{self, Look};
use super::coldest::hover;
use super::legend::{Sample, entry};
use super::room;
use crate::format;
use crate::gui::board::Season;
use crate::gui::palette;
use crate::season::damp::HUMID_SHARE;
use crate::units::{HOURS_PER_DAY, Quantity};
use egui::{Color32, Id, Theme, Ui, vec2};
use egui_plot::{HLine, LineStyle, Plot, PlotPoint};
use std::ops::Range;

/// A line of one of the two plots.
struct Trace {
    name: &'static str,
    colour: Color32,
    dashed: bool,
    points: Vec<PlotPoint>,
}

/// Hours of the season from the day before the one that holds this hour to the day after it; three days at its ends too.
#[must_use]
pub fn window(season: &Season, hour: usize) -> Range<usize> {
    let begins = season.stamp(hour).map_or(hour, |at| (hour + 1).saturating_sub(at.hour as usize));
    let end = (begins + 2 * HOURS_PER_DAY).max(3 * HOURS_PER_DAY).min(season.len());
    end.saturating_sub(3 * HOURS_PER_DAY)..end
}

/// Both plots; gives the hour that was clicked.
pub fn days_ui(ui: &mut Ui, season: &Season, window: &Range<usize>, crop_in_tent: bool, look: &Look) -> Option<usize> {
    let theme = Theme::from_dark_mode(ui.visuals().dark_mode);
    let (warm, open) = (temperatures(season, window, theme, look), shares(season, window, crop_in_tent, theme, look));
    ui.spacing_mut().interact_size.y = 18.0;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 0.0);
        for trace in warm.iter().chain(&open) {
            let sample = if trace.dashed { Sample::Dashed } else { Sample::Line };
            entry(ui, sample, trace.colour, trace.name, 160.0);
        }
    });
    let height = room(ui.available_height(), 8.0);
    let lower = (height * 0.42).clamp(52.0, 240.0);
    let unit = Quantity::Temperature.unit(look.units);
    let upper = linked(axis::time_plot("air temperatures", season, &look.t, move |v| {
        format!("{} {}", format::number(v, 0), unit.symbol)
    }))
    .height((height - lower).max(52.0))
    .show_axes([false, true])
    .label_formatter(move |p| hover(season, p, |y| format!("{} {}", format::number(y, 1), unit.symbol)));
    let first = plot_ui(ui, upper, season, window, &warm, None, look);
    let below = linked(axis::time_plot("air openings", season, &look.t, percent))
        .height(lower)
        .include_y(0.0)
        .include_y(100.0)
        .label_formatter(move |p| hover(season, p, percent));
    first.or(plot_ui(ui, below, season, window, &open, Some(100.0 * HUMID_SHARE), look))
}

/// One plot; gives the hour that was clicked.
fn plot_ui(
    ui: &mut Ui,
    plot: Plot,
    season: &Season,
    window: &Range<usize>,
    traces: &[Trace],
    limit: Option<f64>,
    look: &Look,
) -> Option<usize> {
    let response = plot.show(ui, |p| {
        if let Some(limit) = limit {
            let line = HLine::new("", limit).color(look.t.warn).width(1.0).style(LineStyle::dashed_dense());
            p.hline(line.allow_hover(false));
        }
        for trace in traces {
            let mut line = axis::line(trace.name, &trace.points, trace.colour, 1.8);
            if trace.dashed {
                line = line.style(LineStyle::dashed_loose());
            }
            p.line(line);
        }
        if window.contains(&look.cursor) {
            p.vline(axis::cursor(look.cursor, look.t.accent));
        }
    });
    let clicked = axis::clicked_hour(&response, season.len());
    let names = traces.iter().map(|trace| trace.name).collect::<Vec<_>>().join(", ");
    let day = season.stamp(window.start).map(format::day).unwrap_or_default();
    let said = format!("{names}, three days hour by hour from {day}");
    axis::tell(&response.response, &said);
    clicked
}

fn percent(value: f64) -> String {
    if value < 0.0 { String::new() } else { format!("{} %", format::number(value, 0)) }
}

fn temperatures(season: &Season, window: &Range<usize>, theme: Theme, look: &Look) -> Vec<Trace> {
    let h = &season.run.hours;
    let unit = Quantity::Temperature.unit(look.units);
    let trace = |name, colour, column: &[f64]| Trace {
        name,
        colour,
        dashed: false,
        points: points(window, column, |v| unit.shown(v)),
    };
    let mut all = vec![
        trace("Outdoors", look.t.soft, &h.outdoor_c),
        trace("House", palette::scenario(theme, 0), &h.house_air_c),
        trace("Inner tent", look.t.accent, &h.tent_air_c),
    ];
    all.retain(|trace| !trace.points.is_empty());
    all
}

fn shares(season: &Season, window: &Range<usize>, crop_in_tent: bool, theme: Theme, look: &Look) -> Vec<Trace> {
    let (h, vents) = (&season.run.hours, &season.inputs.scenario.vents);
    let trace = |name, colour, dashed, column: &[f64]| Trace {
        name,
        colour,
        dashed,
        points: points(window, column, |v| 100.0 * v),
    };
    let mut all = Vec::new();
    if vents.present {
        all.push(trace("Vents open", look.t.ink, false, &h.vent_opening));
    }
    if vents.fan_present {
        all.push(trace("Fan", palette::scenario(theme, 3), false, &h.fan_share));
    }
    all.push(trace("Humidity at the crop", palette::scenario(theme, 2), true, h.damp.crop_humidity(crop_in_tent)));
    all
}

fn points(window: &Range<usize>, column: &[f64], shown: impl Fn(f64) -> f64) -> Vec<PlotPoint> {
    let values = column.get(window.clone()).unwrap_or_default().iter().enumerate();
    values.map(|(i, v)| PlotPoint::new((window.start + i) as f64 + 0.5, shown(*v))).collect()
}

fn linked(plot: Plot<'_>) -> Plot<'_> {
    let group = Id::unique("air axis");
    plot.link_axis(group, [true, false]).link_cursor(group, [true, false])
}
