//! A power cut over the hours since the mains failed: as described and without each measure.

use super::axis;
use super::legend::Sample;
use crate::format;
use crate::gui::theme::{SMALL, Tokens, regular};
use crate::season::power_cut::{AskedCut, CutCourse, CutPoint, Measure};
use crate::units::{Quantity, UnitSystem};
use egui::{Color32, Theme, Ui};
use egui_plot::{AxisHints, HLine, HoverPosition, LineStyle, PlotPoint, VLine};

/// Hours shown behind the return of the mains.
const AFTER_H: usize = 12;

/// How a course is drawn: colour and dash tell the measure that is taken away.
#[must_use]
pub fn style(without: Option<Measure>, theme: Theme, t: &Tokens) -> (Color32, Sample) {
    let colour = |slot| crate::gui::palette::scenario(theme, slot);
    match without {
        None => (t.accent, Sample::Line),
        Some(Measure::Water) => (colour(0), Sample::Dashed),
        Some(Measure::Tent) => (colour(2), Sample::Dotted),
        Some(Measure::NightCovers) => (colour(3), Sample::Fine),
    }
}

/// Name of a course.
#[must_use]
pub fn course_name(without: Option<Measure>) -> String {
    without.map_or("As described".to_owned(), |measure| format!("Without {}", measure.name()))
}

/// Draws the crop's air, or the trays.
pub fn cut_ui(ui: &mut Ui, cut: &AskedCut, limit_c: f64, trays: bool, units: UnitSystem, height: f32, t: &Tokens) {
    let unit = Quantity::Temperature.unit(units);
    let theme = Theme::from_dark_mode(ui.visuals().dark_mode);
    let most = cut.hours + AFTER_H.min(cut.hours);
    let until = |after_h: f64| after_h <= most as f64;
    let points = |c: &CutCourse| -> Vec<PlotPoint> {
        let shown = c.course.trace.iter().filter(|point| until(point.after_h));
        let value = |point: &CutPoint| if trays { point.trays_c } else { Some(point.air_c) };
        shown.filter_map(|p| Some(PlotPoint::new(p.after_h, unit.shown(value(p)?)))).collect()
    };
    let lines: Vec<_> = cut.courses.iter().map(|c| (c.without, points(c))).collect();
    let hourly = cut.outdoor_c.iter().take(most).enumerate();
    let outdoors: Vec<_> = hourly.map(|(k, t_c)| PlotPoint::new(k as f64 + 0.5, unit.shown(*t_c))).collect();
    let x_axis = AxisHints::new_x()
        .formatter(
            |mark, _| if mark.value < 0.0 { String::new() } else { format!("{} h", format::number(mark.value, 0)) },
        )
        .tick_label_color(t.soft)
        .tick_label_font(regular(SMALL))
        .label_spacing(egui::Rangef::new(22.0, 34.0));
    let plot = axis::plain_plot("power cut", t, move |v| format!("{} {}", format::number(v, 0), unit.symbol))
        .custom_x_axes(vec![x_axis])
        .x_grid_spacer(egui_plot::uniform_grid_spacer(|input| {
            let step = if input.bounds.1 - input.bounds.0 > 60.0 { 24.0 } else { 6.0 };
            [step, 4.0 * step, 8.0 * step]
        }))
        .height(height)
        .include_x(0.0)
        .include_x(most as f64)
        .include_y(unit.shown(limit_c))
        .include_y(unit.shown(0.0))
        .label_formatter(move |p| match p {
            HoverPosition::NearDataPoint { plot_name, position, .. } => {
                let (after, value) = (format::number(position.x, 1), format::number(position.y, 1));
                Some(format!("{plot_name}\n{after} h after the failure\n{value} {}", unit.symbol))
            }
            HoverPosition::Elsewhere { .. } => None,
        });
    let (limit, freezing, hours) = (unit.shown(limit_c), unit.shown(0.0), cut.hours as f64);
    let response = plot.show(ui, |p| {
        p.span(axis::band(0.0, hours, t));
        p.hline(HLine::new("", limit).color(t.warn).width(1.2).style(LineStyle::dashed_dense()).allow_hover(false));
        p.hline(HLine::new("", freezing).color(t.soft).width(1.0).allow_hover(false));
        p.vline(VLine::new("", hours).color(t.soft).width(1.0).allow_hover(false));
        p.line(axis::line("Outdoors", &outdoors, t.soft, 1.3));
        for (without, points) in &lines {
            let (colour, sample) = style(*without, theme, t);
            let line = axis::line(&course_name(*without), points, colour, if without.is_none() { 2.2 } else { 1.7 });
            p.line(axis::dashed(line, sample));
        }
    });
    let lowest = |points: &[PlotPoint]| points.iter().map(|p| p.y).reduce(f64::min);
    let ends = lines.iter().filter_map(|(without, points)| Some((course_name(*without), lowest(points)?)));
    let ends: Vec<String> =
        ends.map(|(name, low)| format!("{name} down to {} {}", format::number(low, 1), unit.symbol)).collect();
    let what = if trays { "Trays" } else { "Air round the crop" };
    axis::tell(&response.response, &format!("{what} in {} h without power. {}", cut.hours, ends.join(", ")));
}
