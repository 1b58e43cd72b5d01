//! Heat delivered month by month, each shown scenario beside the next, with the baseline and the month's degree-hours.

use super::axis::{self, Look};
use super::running::Shown;
use crate::format;
use crate::gui::theme::{SMALL, regular};
use crate::units::Quantity;
use egui::{RichText, Ui};
use egui_plot::{Bar, BarChart, LineStyle, PlotPoint, PlotPoints, Text};

/// The bars.
pub fn months_ui(ui: &mut Ui, shown: &[Shown], baseline: Option<&Shown>, look: &Look) {
    let (t, units) = (&look.t, look.units);
    let Some(first) = baseline.or(shown.first()) else { return };
    let months: Vec<u32> = first.curves.months.iter().map(|m| m.month).collect();
    let bars = shown.iter().flat_map(|s| s.curves.months.iter().map(|m| m.heat_kwh));
    let highest = first.curves.months.iter().map(|m| m.baseline_kwh).chain(bars).fold(0.0, f64::max);
    let plot = axis::months_plot("months", months, t).height(look.height).include_y(highest * 1.14);
    let wide = 0.8 / shown.len().max(1) as f64;
    let degree_hours = Quantity::TemperatureDifference.unit(units);
    let base = first.curves.clone();
    let response = plot.show(ui, |p| {
        for (place, s) in shown.iter().enumerate() {
            let offset = -0.4 + wide * (place as f64 + 0.5);
            let bar = |(i, m): (usize, &crate::season::sums::Month)| {
                Bar::new(i as f64 + offset, m.heat_kwh).width(wide * 0.9).fill(s.tint())
            };
            let bars: Vec<Bar> = s.curves.months.iter().enumerate().map(bar).collect();
            let (name, month_names) = (s.name.clone(), s.curves.clone());
            let text = move |bar: &Bar, _: &BarChart| {
                let month = month_names.months.get(bar.argument.round().max(0.0) as usize).map_or(0, |m| m.month);
                format!("{name}\n{} {} kWh", format::month(month), format::number(bar.value, 0))
            };
            p.bar_chart(BarChart::new(&s.name, bars).color(s.tint()).element_formatter(Box::new(text)));
        }
        for (i, m) in base.months.iter().enumerate() {
            let x = i as f64;
            let level = vec![PlotPoint::new(x - 0.44, m.baseline_kwh), PlotPoint::new(x + 0.44, m.baseline_kwh)];
            let line = egui_plot::Line::new("", PlotPoints::Owned(level)).color(t.soft).width(1.6);
            p.line(line.style(LineStyle::dashed_dense()).allow_hover(false));
            let shown_dh = degree_hours.shown(m.degree_hours_kh);
            let text = RichText::new(format::number(shown_dh / 1000.0, 1)).font(regular(SMALL - 0.5));
            let at = PlotPoint::new(x, m.baseline_kwh);
            p.text(Text::new("", at, text).color(t.soft).anchor(egui::Align2::CENTER_BOTTOM).allow_hover(false));
        }
    });
    let sum = |s: &Shown| format::number(s.curves.months.iter().map(|m| m.heat_kwh).sum(), 0);
    let sums: Vec<String> = shown.iter().map(|s| format!("{} {} kWh", s.name, sum(s))).collect();
    axis::tell(&response.response, &format!("Heat by month. Season: {}", sums.join(", ")));
}
