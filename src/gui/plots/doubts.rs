//! Bars of a doubt: from the value as it is to the one with less and the one with more of it.

use crate::gui::theme::{SMALL, Tokens, regular, semibold};
use egui::{Align2, Color32, Painter, Rect, Stroke, StrokeKind, Ui, pos2, vec2};

/// Room for the figure at each end of a bar.
const LABEL: f32 = 46.0;
/// Height of a bar.
const BAR: f32 = 14.0;

/// A scale that all bars of a column share.
pub struct Scale {
    /// The value as it is; none where it is not known.
    middle: Option<f64>,
    low: f64,
    high: f64,
}

impl Scale {
    /// From the least to the largest value of all bars.
    pub fn of(middle: Option<f64>, bars: impl Iterator<Item = [Option<f64>; 2]>) -> Self {
        let values: Vec<f64> = bars.flatten().chain([middle]).flatten().collect();
        let low = values.iter().copied().fold(f64::INFINITY, f64::min);
        let high = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        // Bars that all have no length stand in the middle.
        let (low, high) = if high - low > 1e-9 { (low, high) } else { (low - 1.0, high + 1.0) };
        Self { middle, low, high }
    }

    fn x(&self, rect: Rect, value: f64) -> f32 {
        let (left, right) = (rect.left() + LABEL, rect.right() - LABEL);
        let share = ((value - self.low) / (self.high - self.low)).clamp(0.0, 1.0);
        left + share as f32 * (right - left)
    }
}

/// One bar.
pub struct Bar {
    /// Value with less of it.
    pub less: Option<f64>,
    /// Value with more of it.
    pub more: Option<f64>,
    /// Colour of the scenario.
    pub colour: Color32,
}

/// Heading of a column, with the value as it is over its line.
pub fn scale_ui(ui: &Ui, rect: Rect, title: &str, scale: &Scale, text: &dyn Fn(f64) -> String, t: &Tokens) {
    let painter = ui.painter().with_clip_rect(rect.expand(2.0));
    painter.text(rect.left_top() + vec2(0.0, 9.0), Align2::LEFT_CENTER, title, regular(SMALL), t.soft);
    let Some(middle) = scale.middle else { return };
    let place = pos2(scale.x(rect, middle), rect.bottom() - 9.0);
    painter.text(place, Align2::CENTER_CENTER, text(middle), semibold(SMALL), t.ink);
}

/// A bar with its figures at both ends.
pub fn bar_ui(ui: &Ui, rect: Rect, bar: &Bar, scale: &Scale, text: &dyn Fn(f64) -> String, t: &Tokens) {
    let painter = ui.painter().with_clip_rect(rect.expand(2.0).intersect(ui.clip_rect()));
    let (Some(middle), Some(less), Some(more)) = (scale.middle, bar.less, bar.more) else {
        painter.text(rect.center(), Align2::CENTER_CENTER, "–", regular(SMALL), t.soft);
        return;
    };
    let line = scale.x(rect, middle);
    painter.vline(line, rect.y_range(), Stroke::new(1.0, t.hairline));
    let y = rect.center().y;
    for (value, filled) in [(less, false), (more, true)] {
        let to = scale.x(rect, value);
        let half_rect = Rect::from_x_y_ranges(line.min(to)..=line.max(to), y - BAR / 2.0..=y + BAR / 2.0);
        half(&painter, half_rect, bar.colour, filled);
    }
    painter.vline(line, y - BAR / 2.0 - 2.0..=y + BAR / 2.0 + 2.0, Stroke::new(1.0, t.ink));
    let (low, high) = (less.min(more).min(middle), less.max(more).max(middle));
    let label = |value: f64, align: Align2, shift: f32| {
        let place = pos2(scale.x(rect, value) + shift, y);
        painter.text(place, align, text(value), regular(SMALL), t.ink);
    };
    if text(low) != text(middle) {
        label(low, Align2::RIGHT_CENTER, -5.0);
    }
    if text(high) != text(middle) {
        label(high, Align2::LEFT_CENTER, 5.0);
    }
    if text(low) == text(high) {
        painter.text(pos2(line + 6.0, y), Align2::LEFT_CENTER, "no change", regular(SMALL), t.soft);
    }
}

/// One half of a bar: filled for more, hollow for less.
pub fn half(painter: &Painter, rect: Rect, colour: Color32, filled: bool) {
    if rect.width() < 0.5 {
        return;
    }
    if filled {
        painter.rect_filled(rect, 0.0, colour);
    } else {
        painter.rect_filled(rect, 0.0, colour.gamma_multiply(0.18));
        painter.rect_stroke(rect, 0.0, Stroke::new(1.2, colour), StrokeKind::Inside);
    }
}
