//! Daily heat against the day's degree-hours, with the baseline as a line through zero.

use super::axis::{self, Look};
use super::running::Shown;
use crate::format;
use crate::gui::marks;
use crate::gui::theme::{SMALL, regular};
use crate::units::Quantity;
use egui::Ui;
use egui_plot::{AxisHints, GridMark, HoverPosition, LineStyle, PlotPoint, PlotPoints, Points};
use std::collections::BTreeMap;
use std::ops::RangeInclusive;

/// The points.
pub fn daily_ui(ui: &mut Ui, shown: &[Shown], look: &Look) {
    let (t, units) = (&look.t, look.units);
    let Some(chosen) = shown.iter().find(|s| s.chosen).or(shown.first()) else { return };
    let unit = Quantity::TemperatureDifference.unit(units);
    let x_axis = AxisHints::new_x()
        .formatter(
            |mark: GridMark, _: &RangeInclusive<f64>| {
                if mark.value < 0.0 { String::new() } else { format::number(mark.value, 0) }
            },
        )
        .tick_label_color(t.soft)
        .tick_label_font(regular(SMALL))
        .label_spacing(egui::Rangef::new(28.0, 44.0));
    let dates: BTreeMap<String, &Shown> = shown.iter().map(|s| (s.name.clone(), s)).collect();
    let hover = move |p: &HoverPosition<'_>| match p {
        HoverPosition::NearDataPoint { plot_name, position, index } => {
            let day = dates.get(*plot_name)?.curves.days.get(*index)?;
            Some(format!(
                "{plot_name}\n{}\n{} {}·h\n{} kWh",
                format::day(day.at),
                format::number(position.x, 0),
                unit.symbol,
                format::number(position.y, 1)
            ))
        }
        HoverPosition::Elsewhere { .. } => None,
    };
    let plot = axis::plain_plot("daily heat", t, |v| if v < 0.0 { String::new() } else { format::number(v, 0) })
        .height(look.height)
        .custom_x_axes(vec![x_axis])
        .include_x(0.0)
        .include_y(0.0)
        .label_formatter(hover);
    let most = chosen.curves.days.iter().map(|d| d.degree_hours_kh).fold(0.0, f64::max);
    let s = &chosen.season.run.summary;
    let slope = if s.degree_hours_kh > 0.0 { s.baseline_heat_kwh / s.degree_hours_kh } else { 0.0 };
    let response = plot.show(ui, |p| {
        let ends = vec![PlotPoint::new(0.0, 0.0), PlotPoint::new(unit.shown(most), slope * most)];
        let line = egui_plot::Line::new("", PlotPoints::Owned(ends)).color(t.soft).width(1.4);
        p.line(line.style(LineStyle::dashed_loose()).allow_hover(false));
        for s in shown {
            let points =
                s.curves.days.iter().map(|d| PlotPoint::new(unit.shown(d.degree_hours_kh), d.heat_kwh)).collect();
            let points = Points::new(&s.name, PlotPoints::Owned(points)).shape(marks::plot_shape(s.mark));
            let colour = if s.chosen { s.tint() } else { s.tint().gamma_multiply(0.55) };
            p.points(points.radius(if s.chosen { 2.8 } else { 2.0 }).color(colour));
        }
    });
    let highest_kwh = chosen.curves.days.iter().map(|d| d.heat_kwh).fold(0.0, f64::max);
    let said = format!(
        "Heat of each day over its degree-hours. {}: {} days, at most {} kWh in one",
        chosen.name,
        chosen.curves.days.len(),
        format::number(highest_kwh, 0)
    );
    axis::tell(&response.response, &said);
}
