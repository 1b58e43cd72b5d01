//! Two inputs over their ranges: a map in colours from little to much, with lines of equal value and their figures.

use super::axis;
use super::swept::SweptLook;
use super::values::{tick_text, ticks, x_axis, y_axis};
use crate::explore::contour::{Field, Point, levels};
use crate::explore::{Axis, Measured};
use crate::gui::palette;
use crate::gui::theme::{SMALL, Tokens, regular, semibold};
use crate::units::DisplayUnit;
use egui::{Align2, Color32, ColorImage, Rect, RichText, Sense, Stroke, TextureHandle, TextureOptions, Ui, pos2, vec2};
use egui_plot::{HoverPosition, Line, MarkerShape, PlotImage, PlotPoint, PlotPoints, Points, Text};

/// Most lines of equal value.
const MOST_LINES: usize = 7;
/// Colours across the picture of a map.
const PIXELS: usize = 160;
/// Width of the scale beside the map.
const SCALE: f32 = 74.0;

/// A map ready to be drawn.
pub struct Map {
    field: Field,
    range: (f64, f64),
    lines: Vec<(f64, Vec<Vec<Point>>)>,
    picture: TextureHandle,
    corners: [f64; 4],
}

impl Map {
    /// The map of values as they are shown; none while fewer than two of them differ in place or nothing is known.
    pub fn new(ctx: &egui::Context, x: Vec<f64>, y: Vec<f64>, values: Vec<Option<f64>>) -> Option<Self> {
        let corners = [*x.first()?, *x.last()?, *y.first()?, *y.last()?];
        let field = Field::new(x, y, values)?;
        let range = field.range()?;
        let lines = levels(range, MOST_LINES).into_iter().map(|level| (level, field.lines(level))).collect();
        let at = |from: f64, to: f64, k: usize| from + (k as f64 + 0.5) / PIXELS as f64 * (to - from);
        let colour = |k: usize| {
            let (column, row) = (k % PIXELS, PIXELS - 1 - k / PIXELS);
            let value = field.read(at(corners[0], corners[1], column), at(corners[2], corners[3], row));
            value.map_or(Color32::TRANSPARENT, |value| palette::much(share(range, value)))
        };
        let image = ColorImage::new([PIXELS; 2], (0..PIXELS * PIXELS).map(colour).collect());
        let picture = ctx.load_texture("map of two inputs", image, TextureOptions::LINEAR);
        Some(Self { field, range, lines, picture, corners })
    }
}

/// Distance of two points as a share of the map.
fn apart(a: &Point, b: &Point, [left, right, bottom, top]: [f64; 4]) -> f64 {
    ((a[0] - b[0]) / (right - left)).hypot((a[1] - b[1]) / (top - bottom))
}

fn share((low, high): (f64, f64), value: f64) -> f64 {
    if high - low > 1e-12 { (value - low) / (high - low) } else { 0.5 }
}

/// The map with its scale; `now` is where the scenario stands.
pub fn map_ui(ui: &mut Ui, map: &Map, axes: &[Axis], now: Option<PlotPoint>, fuel: &str, look: &SweptLook) {
    let [x_of, y_of] = axes else { return };
    let (t, units, measured) = (&look.t, look.units, look.measured);
    let (x_unit, y_unit) = (x_of.input.quantity.unit(units), y_of.input.quantity.unit(units));
    let said = |value: f64, unit: &DisplayUnit| {
        format!("{} {}", tick_text(value, unit.decimals.max(1)), unit.symbol).trim_end().to_owned()
    };
    let hover = |p: &HoverPosition<'_>| {
        let (HoverPosition::Elsewhere { position } | HoverPosition::NearDataPoint { position, .. }) = p;
        let value = map.field.read(position.x, position.y)?;
        let value = measured.text(value, look.currency, fuel, units);
        let (x, y) = (said(position.x, &x_unit), said(position.y, &y_unit));
        let name = measured.name();
        Some(format!("{}: {x}\n{}: {y}\n{name}: {value}", x_of.input.label, y_of.input.label))
    };
    let [left, right, bottom, top] = map.corners;
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 10.0;
        let width = ui.available_width() - SCALE - 10.0;
        let plot = axis::plain_plot("map", t, |_| String::new())
            .custom_x_axes(vec![x_axis(x_unit, t)])
            .custom_y_axes(vec![y_axis(y_unit, t)])
            .x_grid_spacer(move |_| ticks(left, right))
            .y_grid_spacer(move |_| ticks(bottom, top))
            .show_grid([false, false])
            .set_margin_fraction(vec2(0.0, 0.0))
            .default_x_bounds(left, right)
            .default_y_bounds(bottom, top)
            .width(width)
            .height(look.height)
            .label_formatter(hover);
        let response = plot.show(ui, |p| {
            let centre = PlotPoint::new((left + right) / 2.0, (bottom + top) / 2.0);
            let size = vec2((right - left) as f32, (top - bottom) as f32);
            p.image(PlotImage::new("", map.picture.id(), centre, size).allow_hover(false));
            for (level, lines) in &map.lines {
                let ink = palette::ink_on(palette::much(share(map.range, *level)));
                for line in lines {
                    let points: Vec<PlotPoint> = line.iter().map(|[x, y]| PlotPoint::new(*x, *y)).collect();
                    let line = Line::new("", PlotPoints::Owned(points)).color(ink).width(1.2);
                    // A band would take it for a curve over x.
                    p.line(line.allow_band(false).allow_hover(false));
                }
            }
            for (level, place) in labels(map, now) {
                let fill = palette::much(share(map.range, level));
                let text = RichText::new(level_text(measured, level)).font(semibold(SMALL)).background_color(fill);
                p.text(Text::new("", PlotPoint::new(place[0], place[1]), text).color(palette::ink_on(fill)));
            }
            if let Some(now) = now {
                let under = map
                    .field
                    .read(now.x, now.y)
                    .map_or(t.ink, |value| palette::ink_on(palette::much(share(map.range, value))));
                let ring = Points::new("", PlotPoints::Owned(vec![now])).shape(MarkerShape::Circle).filled(false);
                p.points(ring.radius(7.0).color(under).allow_hover(false));
                // A gap keeps it out of the ring.
                let left_half = now.x < (left + right) / 2.0;
                let (word, side) =
                    if left_half { ("    now", Align2::LEFT_CENTER) } else { ("now    ", Align2::RIGHT_CENTER) };
                p.text(Text::new("", now, RichText::new(word).font(semibold(SMALL))).color(under).anchor(side));
            }
        });
        let value = |value: f64| measured.text(value, look.currency, fuel, units);
        let (x, y, (low, high)) = (&x_of.input.label, &y_of.input.label, map.range);
        let said = format!("{} over {x} and {y}, from {} to {}", measured.name(), value(low), value(high));
        axis::tell(&response.response, &said);
        scale_ui(ui, map, look.height - 24.0, measured, t);
    });
}

/// A figure of a line, without decimals that all lines lack.
fn level_text(measured: Measured, level: f64) -> String {
    tick_text(level, if measured == Measured::HoursShort { 0 } else { 2 })
}

/// A place for each line's figure: the middle of its longest piece, one below the other where two would meet.
fn labels(map: &Map, now: Option<PlotPoint>) -> Vec<(f64, Point)> {
    let mut places: Vec<(f64, Point)> = Vec::new();
    let [left, right, bottom, top] = map.corners;
    let now = now.map(|now| [now.x, now.y]);
    for (level, lines) in &map.lines {
        let Some(line) = lines.iter().max_by_key(|line| line.len()).filter(|line| line.len() > 2) else { continue };
        let inside = |p: &&Point| {
            let share = [(p[0] - left) / (right - left), (p[1] - bottom) / (top - bottom)];
            share.iter().all(|s| (0.06..=0.94).contains(s))
        };
        let middle = line.len() / 2;
        let mut candidates: Vec<&Point> = line.iter().filter(inside).collect();
        candidates.sort_by_key(|p| line.iter().position(|q| q == *p).map_or(0, |at| at.abs_diff(middle)));
        let free = |p: &&&Point| {
            let mut taken = places.iter().map(|(_, other)| other).chain(&now);
            taken.all(|other| apart(p, other, map.corners) > 0.12)
        };
        if let Some(place) = candidates.iter().find(free) {
            places.push((*level, **place));
        }
    }
    places
}

/// The colours from little to much, with the figures of the lines and of both ends.
fn scale_ui(ui: &mut Ui, map: &Map, height: f32, measured: Measured, t: &Tokens) {
    let (rect, _) = ui.allocate_exact_size(vec2(SCALE, height), Sense::hover());
    let bar = Rect::from_min_max(rect.min + vec2(0.0, 8.0), pos2(rect.left() + 14.0, rect.bottom() - 8.0));
    let y = |value: f64| bar.bottom() - share(map.range, value) as f32 * bar.height();
    for k in 0..bar.height() as usize {
        let from = bar.bottom() - k as f32;
        let colour = palette::much(k as f64 / f64::from(bar.height()));
        ui.painter().rect_filled(Rect::from_x_y_ranges(bar.x_range(), from - 1.5..=from), 0.0, colour);
    }
    let write = |value: f64, text: String| {
        ui.painter().hline(bar.right()..=bar.right() + 4.0, y(value), Stroke::new(1.0, t.soft));
        let place = pos2(bar.right() + 7.0, y(value));
        ui.painter().text(place, Align2::LEFT_CENTER, text, regular(SMALL), t.ink);
    };
    let ends = [map.range.0, map.range.1];
    for end in ends {
        write(end, measured.number(end));
    }
    for (level, _) in &map.lines {
        if ends.iter().all(|end| (y(*end) - y(*level)).abs() > 14.0) {
            write(*level, level_text(measured, *level));
        }
    }
}
