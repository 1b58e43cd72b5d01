//! The time axis that all plots share: hours of the season, shown as dates.

use super::legend::Sample;
use crate::format;
use crate::gui::board::Season;
use crate::gui::theme::{SMALL, Tokens, regular};
use crate::season::HourStamp;
use crate::units::UnitSystem;
use egui::{Color32, Id};
use egui_plot::{
    AxisHints, GridInput, GridMark, HPlacement, Line, LineStyle, Plot, PlotPoint, PlotPoints, Span, VLine,
};
use std::ops::RangeInclusive;

/// How a plot is drawn.
#[derive(Debug, Clone, Copy)]
pub struct Look {
    /// Colours.
    pub t: Tokens,
    /// Units on screen.
    pub units: UnitSystem,
    /// Hour under the time cursor.
    pub cursor: usize,
    /// Height, points.
    pub height: f32,
}

/// Group of the plots over the whole season.
#[must_use]
pub fn season_group() -> Id {
    Id::unique("season axis")
}

/// Hours in a day and in a month of 30 days.
const DAY_H: f64 = 24.0;
const MONTH_H: f64 = 720.0;

/// Marks where months, days or hours begin, as the part of the season on show asks for.
fn grid(season: &Season, bounds: (f64, f64)) -> Vec<GridMark> {
    let span = bounds.1 - bounds.0;
    let first = bounds.0.max(0.0) as usize;
    let last = (bounds.1.max(0.0) as usize).min(season.len());
    let step = |at: HourStamp| -> Option<f64> {
        let begins = at.hour.saturating_sub(1);
        match span {
            s if s > 45.0 * DAY_H => (begins == 0 && at.day == 1).then_some(MONTH_H),
            s if s > 9.0 * DAY_H => (begins == 0 && at.day % 7 == 1).then_some(7.0 * DAY_H),
            s if s > 2.5 * DAY_H => (begins == 0).then_some(DAY_H),
            _ if begins == 0 => Some(DAY_H),
            _ => begins.is_multiple_of(6).then_some(6.0),
        }
    };
    let mark = |hour: usize| Some(GridMark { value: hour as f64, step_size: step(season.stamp(hour)?)? });
    (first..last).filter_map(mark).collect()
}

/// Text of a mark: a month, a date, or a clock hour.
fn tick(season: &Season, mark: GridMark) -> String {
    if mark.value < 0.0 {
        return String::new();
    }
    let Some(at) = season.stamp(mark.value.round() as usize) else { return String::new() };
    if mark.step_size >= MONTH_H {
        return format::month(at.month).to_owned();
    }
    // A mark stands at the beginning of the hour that the record ends.
    if mark.step_size >= DAY_H { format::day(at) } else { format!("{:02}:00", at.hour.saturating_sub(1)) }
}

/// A plot over time with dates, own colours, and drag to zoom.
pub fn time_plot<'a>(name: &str, season: &'a Season, t: &Tokens, y: impl Fn(f64) -> String + 'a) -> Plot<'a> {
    let font = regular(SMALL);
    let x_axis = AxisHints::new_x()
        .formatter(move |mark, _range| tick(season, mark))
        .tick_label_color(t.soft)
        .tick_label_font(font.clone())
        .label_spacing(egui::Rangef::new(22.0, 34.0));
    plain_plot(name, t, y).custom_x_axes(vec![x_axis]).x_grid_spacer(move |input| grid(season, input.bounds))
}

/// A plot with own colours and drag to zoom; `y` writes the values of the upright axis.
pub fn plain_plot<'a>(name: &str, t: &Tokens, y: impl Fn(f64) -> String + 'a) -> Plot<'a> {
    let y_axis = AxisHints::new_y()
        .formatter(move |mark: GridMark, _range: &RangeInclusive<f64>| y(mark.value))
        .placement(HPlacement::Left)
        .min_thickness(52.0)
        .label_spacing(egui::Rangef::new(18.0, 30.0))
        .tick_label_color(t.soft)
        .tick_label_font(regular(SMALL));
    Plot::new(name)
        .custom_y_axes(vec![y_axis])
        .y_grid_spacer(round_marks)
        .show_background(false)
        .grid_color(t.hairline)
        .cursor_color(t.soft.gamma_multiply(0.5))
        .allow_scroll(false)
        .allow_drag(false)
        .allow_axis_zoom_drag(false)
        // Not a stop of the keys: its figures are, at its corner.
        .sense(egui::Sense::CLICK | egui::Sense::DRAG)
        .allow_boxed_zoom(true)
        .boxed_zoom_pointer_button(egui::PointerButton::Primary)
        .set_margin_fraction(egui::vec2(0.01, 0.06))
}

/// A plot with a bar or a group of bars at 0, 1, 2 … for these months; values from zero up.
pub fn months_plot<'a>(name: &str, months: Vec<u32>, t: &Tokens) -> Plot<'a> {
    let named = move |x: f64| months.get(x.round() as usize).map(|m| format::month(*m)).unwrap_or_default();
    let x_axis = AxisHints::new_x()
        .formatter(move |mark: GridMark, _: &RangeInclusive<f64>| {
            let whole = (mark.value - mark.value.round()).abs() < 0.01 && mark.value > -0.5;
            if whole { named(mark.value).to_owned() } else { String::new() }
        })
        .tick_label_color(t.soft)
        .tick_label_font(regular(SMALL))
        .label_spacing(egui::Rangef::new(14.0, 22.0));
    plain_plot(name, t, |v| if v < 0.0 { String::new() } else { format::number(v, 0) })
        .custom_x_axes(vec![x_axis])
        .x_grid_spacer(|input| whole_marks(input.bounds))
        .show_grid([false, true])
        .include_y(0.0)
        .label_formatter(|_| None)
}

/// A mark at every whole number.
fn whole_marks(bounds: (f64, f64)) -> Vec<GridMark> {
    let (low, high) = (bounds.0.ceil() as i64, bounds.1.floor() as i64);
    (low..=high.min(low + 24)).map(|i| GridMark { value: i as f64, step_size: 1.0 }).collect()
}

/// A line through points that outlive the frame.
#[must_use]
pub fn line<'a>(name: &str, points: &'a [PlotPoint], colour: Color32, width: f32) -> Line<'a> {
    Line::new(name, PlotPoints::Borrowed(points)).color(colour).width(width).allow_band(false)
}

/// The line in the dashes of its legend.
#[must_use]
pub fn dashed<'a>(line: Line<'a>, sample: Sample) -> Line<'a> {
    match sample {
        Sample::Line => line,
        Sample::Dashed => line.style(LineStyle::dashed_loose()),
        Sample::Fine => line.style(LineStyle::dashed_dense()),
        Sample::Dotted => line.style(LineStyle::dotted_dense()),
    }
}

/// A stretch of the axis, behind the lines.
#[must_use]
pub fn band(from: f64, to: f64, t: &Tokens) -> Span {
    Span::new("", from..=to).fill(t.soft.gamma_multiply(0.1))
}

/// Marks of an upright axis at 1, 2 or 5 times a power of ten, far enough apart for their labels.
fn round_marks(input: GridInput) -> Vec<GridMark> {
    // The base step is 8 points high.
    let least = input.base_step_size * 3.75;
    let power = 10_f64.powf(least.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|m| m * power).find(|s| *s >= least).unwrap_or(least);
    if !(step.is_finite() && step > 0.0) {
        return Vec::new();
    }
    let (low, high) = ((input.bounds.0 / step).ceil() as i64, (input.bounds.1 / step).floor() as i64);
    (low..=high.min(low.saturating_add(60))).map(|i| GridMark { value: i as f64 * step, step_size: step }).collect()
}

/// The time cursor.
#[must_use]
pub fn cursor(hour: usize, colour: Color32) -> VLine {
    VLine::new("", hour as f64 + 0.5).color(colour.gamma_multiply(0.8)).width(1.2).allow_hover(false)
}

/// Names a plot for those who cannot see it, with a sentence of what it shows; its table is in the menu at its corner.
pub fn tell(response: &egui::Response, said: &str) {
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, said));
}

/// The hour that was clicked.
pub fn clicked_hour<R>(response: &egui_plot::PlotResponse<R>, len: usize) -> Option<usize> {
    if !response.response.clicked() || len == 0 {
        return None;
    }
    let pos = response.response.interact_pointer_pos()?;
    let x = response.transform.value_from_position(pos).x;
    Some((x.floor().max(0.0) as usize).min(len - 1))
}
