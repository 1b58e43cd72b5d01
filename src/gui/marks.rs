//! Small marks drawn by hand: the scenario's own shape and the few icons of the window.

use super::palette;
use crate::checks::Grade;
use egui::{Color32, Painter, Pos2, Rect, Response, Sense, Shape, Stroke, Ui, Vec2, pos2, vec2};

/// Names of the scenario marks, for those who cannot see them.
pub const NAMES: [&str; palette::MARKS] =
    ["square", "circle", "triangle", "diamond", "cross", "falling triangle", "star", "plus"];

/// Paints a scenario's mark: a shape and a colour of its own.
pub fn scenario(painter: &Painter, centre: Pos2, radius: f32, slot: usize, colour: Color32) {
    let polygon = |points: Vec<Pos2>| Shape::convex_polygon(points, colour, Stroke::NONE);
    let ring = |n: usize, r: f32, turn: f32| -> Vec<Pos2> {
        (0..n)
            .map(|i| {
                let angle = std::f32::consts::TAU * (i as f32 / n as f32) + turn;
                centre + r * vec2(angle.sin(), -angle.cos())
            })
            .collect()
    };
    let r = radius;
    let thick = Stroke::new(r * 0.6, colour);
    match slot % palette::MARKS {
        0 => {
            painter.rect_filled(Rect::from_center_size(centre, Vec2::splat(r * 1.7)), 0.0, colour);
        }
        1 => {
            painter.circle_filled(centre, r, colour);
        }
        2 => {
            painter.add(polygon(ring(3, r * 1.2, 0.0).iter().map(|p| *p + vec2(0.0, r * 0.2)).collect()));
        }
        3 => {
            painter.add(polygon(ring(4, r * 1.2, 0.0)));
        }
        4 => {
            let d = r * 0.75;
            painter.line_segment([centre + vec2(-d, -d), centre + vec2(d, d)], thick);
            painter.line_segment([centre + vec2(-d, d), centre + vec2(d, -d)], thick);
        }
        5 => {
            painter
                .add(polygon(ring(3, r * 1.2, std::f32::consts::PI).iter().map(|p| *p - vec2(0.0, r * 0.2)).collect()));
        }
        6 => {
            for tip in ring(3, r * 1.1, 0.0) {
                painter.line_segment([tip, centre - (tip - centre)], thick);
            }
        }
        _ => {
            painter.line_segment([centre - vec2(r, 0.0), centre + vec2(r, 0.0)], thick);
            painter.line_segment([centre - vec2(0.0, r), centre + vec2(0.0, r)], thick);
        }
    }
}

/// The same shape for points in a plot.
#[must_use]
pub fn plot_shape(slot: usize) -> egui_plot::MarkerShape {
    use egui_plot::MarkerShape;
    match slot % palette::MARKS {
        0 => MarkerShape::Square,
        1 => MarkerShape::Circle,
        2 => MarkerShape::Up,
        3 => MarkerShape::Diamond,
        4 => MarkerShape::Cross,
        5 => MarkerShape::Down,
        6 => MarkerShape::Asterisk,
        _ => MarkerShape::Plus,
    }
}

/// The icons of the window.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Icon {
    /// Shown.
    Eye,
    /// Hidden.
    EyeOff,
    /// Three dots: more.
    More,
    /// Back to the default.
    Reset,
    /// Let time run.
    Play,
    /// Let time stand.
    Pause,
    /// Up.
    Up,
    /// Down.
    Down,
    /// Remove.
    Cross,
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// How it was worked out: a sum with its line.
    How,
}

/// A button that shows an icon and is known by `name`.
pub fn icon_button(ui: &mut Ui, icon: Icon, name: &str) -> Response {
    icon_button_sized(ui, icon, name, Vec2::splat(24.0))
}

/// The same in a given size.
pub fn icon_button_sized(ui: &mut Ui, icon: Icon, name: &str, size: Vec2) -> Response {
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let enabled = ui.is_enabled();
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, enabled, name));
    if ui.is_rect_visible(rect) {
        let t = super::theme::tokens(ui);
        let colour = if response.hovered() || response.has_focus() { t.ink } else { t.soft };
        if response.hovered() || response.has_focus() {
            ui.painter().rect_filled(rect, 3.0, t.raised);
        }
        focus_ring(ui, &response, rect);
        let colour = if enabled { colour } else { colour.gamma_multiply(0.4) };
        paint_icon(ui.painter(), icon, rect.center(), colour);
    }
    response.on_hover_text(name)
}

/// Draws a ring round what the keys would act on.
pub fn focus_ring(ui: &Ui, response: &Response, rect: Rect) {
    if response.has_focus() {
        let stroke = Stroke::new(1.5, super::theme::tokens(ui).accent);
        ui.painter().rect_stroke(rect, 3.0, stroke, egui::StrokeKind::Inside);
    }
}

/// Paints an icon 12 points wide.
pub fn paint_icon(painter: &Painter, icon: Icon, c: Pos2, colour: Color32) {
    let stroke = Stroke::new(1.4, colour);
    let line = |points: &[(f32, f32)]| {
        let points = points.iter().map(|(x, y)| pos2(c.x + x, c.y + y)).collect();
        painter.add(Shape::line(points, stroke));
    };
    match icon {
        Icon::Eye | Icon::EyeOff => {
            line(&[(-6.5, 0.0), (-3.5, -3.0), (0.0, -4.2), (3.5, -3.0), (6.5, 0.0)]);
            line(&[(-6.5, 0.0), (-3.5, 3.0), (0.0, 4.2), (3.5, 3.0), (6.5, 0.0)]);
            if icon == Icon::Eye {
                painter.circle_filled(c, 2.0, colour);
            } else {
                line(&[(-5.5, 5.5), (5.5, -5.5)]);
            }
        }
        Icon::More => {
            for x in [-4.5, 0.0, 4.5] {
                painter.circle_filled(c + vec2(x, 0.0), 1.4, colour);
            }
        }
        Icon::Reset => {
            line(&[
                (-3.8, -2.0),
                (-1.6, -4.0),
                (1.4, -4.2),
                (3.8, -2.2),
                (4.4, 0.8),
                (2.8, 3.6),
                (0.0, 4.6),
                (-2.8, 3.6),
            ]);
            line(&[(-4.4, -5.2), (-3.8, -2.0), (-0.8, -1.6)]);
        }
        Icon::Up => line(&[(-4.0, 2.0), (0.0, -2.5), (4.0, 2.0)]),
        Icon::Down => line(&[(-4.0, -2.0), (0.0, 2.5), (4.0, -2.0)]),
        Icon::Left => line(&[(2.0, -4.5), (-2.5, 0.0), (2.0, 4.5)]),
        Icon::Right => line(&[(-2.0, -4.5), (2.5, 0.0), (-2.0, 4.5)]),
        Icon::How => {
            line(&[(-4.5, -2.5), (-0.5, -2.5)]);
            line(&[(-2.5, -4.5), (-2.5, -0.5)]);
            line(&[(1.5, -2.5), (4.5, -2.5)]);
            line(&[(-4.5, 1.8), (4.5, 1.8)]);
            line(&[(-4.5, 4.4), (4.5, 4.4)]);
        }
        Icon::Play => {
            let points = vec![c + vec2(-3.5, -5.0), c + vec2(5.0, 0.0), c + vec2(-3.5, 5.0)];
            painter.add(Shape::convex_polygon(points, colour, Stroke::NONE));
        }
        Icon::Pause => {
            line(&[(-2.5, -4.5), (-2.5, 4.5)]);
            line(&[(2.5, -4.5), (2.5, 4.5)]);
        }
        Icon::Cross => {
            line(&[(-4.0, -4.0), (4.0, 4.0)]);
            line(&[(-4.0, 4.0), (4.0, -4.0)]);
        }
    }
}

/// Paints the triangle that marks a problem.
pub fn paint_warning(painter: &Painter, c: Pos2, colour: Color32) {
    let points = vec![c + vec2(0.0, -5.0), c + vec2(5.5, 4.5), c + vec2(-5.5, 4.5)];
    painter.add(Shape::closed_line(points, Stroke::new(1.3, colour)));
    painter.line_segment([c + vec2(0.0, -1.8), c + vec2(0.0, 1.4)], Stroke::new(1.3, colour));
    painter.circle_filled(c + vec2(0.0, 3.0), 0.8, colour);
}

/// Paints the mark of a grade, 12 points wide: a filled octagon, a triangle, a ring.
pub fn paint_grade(painter: &Painter, c: Pos2, grade: Grade, colour: Color32) {
    match grade {
        Grade::Stop => {
            paint_octagon(painter, c, 6.0, colour);
            let paper = super::theme::tokens_of(painter.ctx().theme()).paper;
            painter.line_segment([c - vec2(3.0, 0.0), c + vec2(3.0, 0.0)], Stroke::new(1.8, paper));
        }
        Grade::Look => paint_warning(painter, c, colour),
        Grade::Fine => {
            painter.circle_stroke(c, 4.8, Stroke::new(1.3, colour));
        }
    }
}

/// Paints a filled octagon.
pub fn paint_octagon(painter: &Painter, c: Pos2, radius: f32, colour: Color32) {
    let corner = |i: u8| {
        let angle = (f32::from(i) + 0.5) * std::f32::consts::FRAC_PI_4;
        c + radius * 1.08 * vec2(angle.cos(), angle.sin())
    };
    painter.add(Shape::convex_polygon((0..8).map(corner).collect(), colour, Stroke::NONE));
}

/// Paints the mark of the best value in a row: a small solid star of four points.
pub fn paint_best(painter: &Painter, c: Pos2, colour: Color32) {
    for turn in [0.0_f32, std::f32::consts::FRAC_PI_2] {
        let along = vec2(turn.cos(), turn.sin());
        let across = vec2(-turn.sin(), turn.cos());
        let points = vec![c + along * 5.0, c + across * 1.6, c - along * 5.0, c - across * 1.6];
        painter.add(Shape::convex_polygon(points, colour, Stroke::NONE));
    }
}

/// Paints the small disclosure triangle of a section.
pub fn paint_disclosure(painter: &Painter, c: Pos2, open: f32, colour: Color32) {
    let angle = open * std::f32::consts::FRAC_PI_2;
    let turn = |v: Vec2| c + vec2(v.x * angle.cos() - v.y * angle.sin(), v.x * angle.sin() + v.y * angle.cos());
    let points = vec![turn(vec2(-2.5, -4.0)), turn(vec2(3.5, 0.0)), turn(vec2(-2.5, 4.0))];
    painter.add(Shape::convex_polygon(points, colour, Stroke::NONE));
}
