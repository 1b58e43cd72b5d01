//! What the lines of a plot stand for, in one row above it.

use crate::gui::cut::cut;
use crate::gui::marks;
use crate::gui::theme::{SMALL, regular, tokens};
use egui::{Color32, Painter, Pos2, Sense, Stroke, Ui, pos2, vec2};

/// How an entry is drawn.
#[derive(Debug, Clone, Copy)]
pub enum Sample {
    /// A plain line.
    Line,
    /// A dashed line.
    Dashed,
    /// A line of short dashes.
    Fine,
    /// A dotted line.
    Dotted,
}

/// One entry.
pub fn entry(ui: &mut Ui, drawn: Sample, colour: Color32, name: &str, most: f32) -> egui::Response {
    let t = tokens(ui);
    let galley = cut(ui.painter(), name, regular(SMALL), t.ink, most);
    let gap = 26.0;
    let (rect, response) = ui.allocate_exact_size(vec2(gap + galley.size().x + 6.0, 18.0), Sense::hover());
    let (left, middle) = (rect.left(), rect.center().y);
    sample(ui.painter(), pos2(left, middle), drawn, colour);
    ui.painter().galley(pos2(left + gap, middle - galley.size().y / 2.0), galley, t.ink);
    response
}

/// A piece of a line as it is drawn, 20 points long.
pub fn sample(painter: &Painter, left: Pos2, drawn: Sample, colour: Color32) {
    let (left, middle) = (left.x, left.y);
    match drawn {
        Sample::Line => {
            painter.hline(left..=left + 20.0, middle, Stroke::new(2.0, colour));
        }
        Sample::Dashed => {
            for x in [0.0, 8.0, 16.0] {
                painter.hline(left + x..=left + x + 5.0, middle, Stroke::new(1.6, colour));
            }
        }
        Sample::Fine => {
            for x in [0.0, 5.5, 11.0, 16.5] {
                painter.hline(left + x..=left + x + 3.0, middle, Stroke::new(1.6, colour));
            }
        }
        Sample::Dotted => {
            for x in [2.0, 7.0, 12.0, 17.0] {
                painter.circle_filled(pos2(left + x, middle), 1.2, colour);
            }
        }
    }
}

/// A scenario's entry with its mark: a click hides it in the plots or shows it again.
pub fn scenario(ui: &mut Ui, mark: usize, colour: Color32, name: &str, shown: bool, most: f32) -> egui::Response {
    let t = tokens(ui);
    let (ink, colour) = if shown { (t.ink, colour) } else { (t.soft, colour.gamma_multiply(0.35)) };
    let galley = cut(ui.painter(), name, regular(SMALL), ink, most);
    let gap = 16.0;
    let (rect, response) = ui.allocate_exact_size(vec2(gap + galley.size().x + 6.0, 18.0), Sense::click());
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::CheckBox, true, shown, format!("{name} in plots")));
    let middle = rect.center().y;
    if response.hovered() || response.has_focus() {
        ui.painter().rect_filled(rect, 3.0, t.raised);
    }
    marks::focus_ring(ui, &response, rect);
    marks::scenario(ui.painter(), pos2(rect.left() + 8.0, middle), 5.0, mark, colour);
    let text = pos2(rect.left() + gap + 2.0, middle - galley.size().y / 2.0);
    let struck = (!shown).then(|| text.x..=text.x + galley.size().x);
    ui.painter().galley(text, galley, ink);
    if let Some(across) = struck {
        ui.painter().hline(across, middle, Stroke::new(1.0, t.soft));
    }
    response.on_hover_text(format!("{name}\nClick to {} in the plots", if shown { "hide" } else { "show" }))
}
