//! Running cost or running heat over the season: every shown scenario, and the baseline as a quiet line.

use super::axis::{self, Look};
use super::data::Curves;
use crate::figures::Named;
use crate::format;
use crate::gui::board::{Season, Standing};
use crate::gui::marks;
use egui::{Color32, Ui};
use egui_plot::{HoverPosition, LineStyle, PlotPoint, Points};
use std::sync::Arc;

/// What adds up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Sum {
    /// Money.
    #[default]
    Cost,
    /// Heat, kWh.
    Heat,
}

/// A scenario in the plots.
#[derive(Clone)]
pub struct Shown {
    /// Its name.
    pub name: String,
    /// Slot of its mark.
    pub mark: usize,
    /// Its colour.
    pub colour: Color32,
    /// Whether it is the chosen one.
    pub chosen: bool,
    /// Its season.
    pub season: Season,
    /// Whether that is of today.
    pub standing: Standing,
    /// Its curves.
    pub curves: Arc<Curves>,
}

impl Shown {
    /// For the tables of figures.
    #[must_use]
    pub fn named(&self) -> Named<'_> {
        Named { name: &self.name, run: &self.season.run, climate: &self.season.climate }
    }

    /// What adds up, hour by hour.
    fn points(&self, sum: Sum) -> &[PlotPoint] {
        if sum == Sum::Cost { &self.curves.cost } else { &self.curves.heat }
    }

    /// Colour, dimmed while the result is old.
    #[must_use]
    pub fn tint(&self) -> Color32 {
        if self.standing == Standing::Stale { self.colour.gamma_multiply(0.4) } else { self.colour }
    }
}

/// The plot; gives the hour that was clicked.
pub fn running_ui(
    ui: &mut Ui,
    shown: &[Shown],
    baseline: Option<&Shown>,
    sum: Sum,
    currency: &str,
    look: &Look,
) -> Option<usize> {
    let t = &look.t;
    let season = &shown.first().or(baseline)?.season;
    let value = move |v: f64| match sum {
        Sum::Cost => format::money(v, currency),
        Sum::Heat => format!("{} kWh", format::number(v, 0)),
    };
    let tick = move |v: f64| if v < 0.0 { String::new() } else { format::number(v, 0) };
    let hover = move |p: &HoverPosition<'_>| match p {
        HoverPosition::NearDataPoint { plot_name, position, .. } if !plot_name.is_empty() => {
            let hour = (position.x as usize).min(season.len().saturating_sub(1));
            let when = season.stamp(hour).map(format::stamp).unwrap_or_default();
            Some(format!("{plot_name}\n{when}\n{}", value(position.y)))
        }
        _ => None,
    };
    let plot = axis::time_plot(&format!("running {sum:?}"), season, t, tick)
        .height(look.height)
        .include_y(0.0)
        .label_formatter(hover)
        .link_axis(axis::season_group(), [true, false])
        .link_cursor(axis::season_group(), [true, false]);
    // Without a price there is no cost to draw, not a cost of nothing.
    let priced = |s: &&Shown| sum == Sum::Heat || s.season.run.summary.cost.is_some();
    let response = plot.show(ui, |p| {
        if let Some(base) = baseline {
            let points = if sum == Sum::Cost { &base.curves.baseline_cost } else { &base.curves.baseline_heat };
            p.line(axis::line("Degree-hour baseline", points, t.soft, 1.4).style(LineStyle::dashed_loose()));
        }
        for s in shown.iter().filter(priced) {
            let points = s.points(sum);
            p.line(axis::line(&s.name, points, s.tint(), if s.chosen { 2.6 } else { 1.6 }));
            if let Some(last) = points.last() {
                let mark = vec![PlotPoint::new(last.x, last.y)];
                let end = Points::new("", egui_plot::PlotPoints::Owned(mark));
                p.points(end.shape(marks::plot_shape(s.mark)).radius(5.0).color(s.tint()).allow_hover(false));
            }
        }
        p.vline(axis::cursor(look.cursor, t.accent));
    });
    let ends = shown.iter().filter(priced).filter_map(|s| Some((&s.name, s.points(sum).last()?.y)));
    let ends: Vec<String> = ends.map(|(name, end)| format!("{name} {}", value(end))).collect();
    let title = if sum == Sum::Cost { "Running cost" } else { "Running heat" };
    axis::tell(&response.response, &format!("{title} over the season, at its end: {}", ends.join(", ")));
    axis::clicked_hour(&response, season.len())
}
