//! One input over a range: a line for each scenario with its mark at every point, and a ring where it stands now.

use super::axis;
use super::values::{tick_text, ticks, x_axis};
use crate::explore::{Axis, Measured};
use crate::gui::marks;
use crate::gui::theme::Tokens;
use crate::units::UnitSystem;
use egui::{Color32, Ui};
use egui_plot::{HoverPosition, Line, LineStyle, MarkerShape, PlotPoint, PlotPoints, Points};

/// One scenario's line.
pub struct Course {
    /// Its name.
    pub name: String,
    /// Slot of its mark.
    pub mark: usize,
    /// Its colour.
    pub colour: Color32,
    /// Whether it is the chosen one.
    pub chosen: bool,
    /// Points as they are shown; broken where a value was left out.
    pub pieces: Vec<Vec<PlotPoint>>,
    /// Where the scenario stands, if within the range.
    pub now: Option<PlotPoint>,
    /// Unit of its fuel.
    pub fuel_unit: String,
}

/// What is drawn, and in which units.
pub struct SweptLook<'a> {
    /// Colours.
    pub t: Tokens,
    /// Units on screen.
    pub units: UnitSystem,
    /// Symbol of money.
    pub currency: &'a str,
    /// What is measured.
    pub measured: Measured,
    /// A level worth keeping above, as shown.
    pub limit: Option<f64>,
    /// Height, points.
    pub height: f32,
}

/// The plot.
pub fn swept_ui(ui: &mut Ui, axis_of: &Axis, courses: &[Course], look: &SweptLook) {
    let (t, units, measured) = (&look.t, look.units, look.measured);
    let unit = axis_of.input.quantity.unit(units);
    let ends = [axis_of.values.first(), axis_of.values.last()].map(|v| v.map_or(0.0, |v| unit.shown(*v)));
    let hover = |p: &HoverPosition<'_>| match p {
        HoverPosition::NearDataPoint { plot_name, position, .. } if !plot_name.is_empty() => {
            let course = courses.iter().find(|course| course.name == *plot_name);
            let fuel = course.map_or("", |course| course.fuel_unit.as_str());
            let x = format!("{} {}", tick_text(position.x, unit.decimals.max(1)), unit.symbol);
            let y = measured.text(position.y, look.currency, fuel, units);
            Some(format!("{plot_name}\n{}: {}\n{}: {y}", axis_of.input.label, x.trim_end(), measured.name()))
        }
        _ => None,
    };
    let mut plot = axis::plain_plot("sweep", t, move |v| {
        let below_nothing = v < 0.0 && measured != Measured::Lowest;
        if below_nothing { String::new() } else { tick_text(v, 2) }
    })
    .custom_x_axes(vec![x_axis(unit, t)])
    .x_grid_spacer(move |_| ticks(ends[0], ends[1]))
    .height(look.height)
    .include_x(ends[0])
    .include_x(ends[1])
    .label_formatter(hover);
    if measured != Measured::Lowest {
        plot = plot.include_y(0.0);
    }
    let response = plot.show(ui, |p| {
        if let Some(limit) = look.limit {
            let across = vec![PlotPoint::new(ends[0], limit), PlotPoint::new(ends[1], limit)];
            let line = Line::new("", PlotPoints::Owned(across)).color(t.warn).width(1.2).allow_hover(false);
            p.line(line.style(LineStyle::dashed_loose()));
        }
        for course in courses {
            for piece in &course.pieces {
                p.line(axis::line("", piece, course.colour, if course.chosen { 2.6 } else { 1.6 }).allow_hover(false));
                let marks = Points::new(course.name.clone(), PlotPoints::Borrowed(piece));
                p.points(marks.shape(marks::plot_shape(course.mark)).radius(4.0).color(course.colour));
            }
            if let Some(now) = course.now {
                let ring = Points::new("", PlotPoints::Owned(vec![now])).shape(MarkerShape::Circle).filled(false);
                p.points(ring.radius(8.0).color(t.accent).allow_hover(false));
            }
        }
    });
    let ends = |course: &Course| {
        let text = |point: &PlotPoint| measured.text(point.y, look.currency, &course.fuel_unit, units);
        let (first, last) = (course.pieces.first()?.first()?, course.pieces.last()?.last()?);
        Some(format!("{} from {} to {}", course.name, text(first), text(last)))
    };
    let all: Vec<String> = courses.iter().filter_map(ends).collect();
    axis::tell(&response.response, &format!("{} over {}: {}", measured.name(), axis_of.input.label, all.join(", ")));
}
