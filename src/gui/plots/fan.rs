//! Running cost of many winters: the middle one as a line, from one in ten to nine in ten as a band.

use super::axis::{self, Look};
use crate::format;
use crate::gui::board::Season;
use crate::gui::outlook::Told;
use egui::{Color32, Ui};
use egui_plot::{FilledArea, HoverPosition, Line, LineStyle, PlotPoint, PlotPoints};

/// Share of a band's colour that is laid over the paper.
const WASH: f32 = 0.16;
/// Hours in a day.
const DAY_H: f64 = 24.0;

/// One scenario's fan.
pub struct Fan<'a> {
    /// Name of the scenario.
    pub name: &'a str,
    /// Its colour.
    pub colour: Color32,
    /// Whether it is the chosen one.
    pub chosen: bool,
    /// Its winters.
    pub told: &'a Told,
}

/// The plot; gives the hour that was clicked.
pub fn fan_ui(ui: &mut Ui, season: &Season, fans: &[Fan], currency: &str, look: &Look) -> Option<usize> {
    let t = &look.t;
    let hover = |p: &HoverPosition<'_>| match p {
        HoverPosition::NearDataPoint { plot_name, position, .. } if !plot_name.is_empty() => {
            let hour = (position.x.max(1.0) as usize - 1).min(season.len().saturating_sub(1));
            let when = season.stamp(hour).map(format::day).unwrap_or_default();
            Some(format!("{plot_name}\n{when}\n{}", format::money(position.y, currency)))
        }
        _ => None,
    };
    let tick = |v: f64| if v < 0.0 { String::new() } else { format::number(v, 0) };
    let plot = axis::time_plot("fan of winters", season, t, tick)
        .height(look.height)
        .include_y(0.0)
        .label_formatter(hover)
        .link_axis(axis::season_group(), [true, false])
        .link_cursor(axis::season_group(), [true, false]);
    let response = plot.show(ui, |p| {
        for fan in fans {
            let days = &fan.told.fan;
            let x: Vec<f64> = (1..=days.len()).map(|day| day as f64 * DAY_H).collect();
            let of = |take: fn(&crate::season::winters::Spread) -> f64| -> Vec<f64> {
                days.iter().map(|day| take(&day.cost)).collect()
            };
            let (low, middle, high) = (of(|c| c.p10), of(|c| c.p50), of(|c| c.p90));
            let wash = fan.colour.gamma_multiply(WASH);
            p.add(FilledArea::new("", &x, &low, &high).fill_color(wash).allow_hover(false));
            let line = |name: String, y: &[f64], width: f32| {
                let points = x.iter().zip(y).map(|(x, y)| PlotPoint::new(*x, *y)).collect();
                Line::new(name, PlotPoints::Owned(points)).color(fan.colour).width(width)
            };
            p.line(line(format!("{}, half cost less", fan.name), &middle, if fan.chosen { 2.6 } else { 1.6 }));
            for (said, edge) in [("one in ten costs less", &low), ("one in ten costs more", &high)] {
                let edge = line(format!("{}, {said}", fan.name), edge, 1.0).style(LineStyle::dotted_loose());
                p.line(edge);
            }
        }
        p.vline(axis::cursor(look.cursor, t.accent));
    });
    let middle = |fan: &Fan| Some(format!("{} {}", fan.name, format::money(fan.told.figures.cost?.p50, currency)));
    let ends: Vec<String> = fans.iter().filter_map(middle).collect();
    axis::tell(
        &response.response,
        &format!("Running cost of many winters. Half of them cost less than: {}", ends.join(", ")),
    );
    axis::clicked_hour(&response, season.len())
}
