//! Headings and rows of a narrow column of figures beside the plots.

use crate::gui::cut::cut;
use crate::gui::theme::{BODY, SMALL, regular, semibold, tokens};
use egui::{Align2, Sense, Stroke, Ui, pos2, vec2};
use std::sync::Arc;

/// A heading over a hairline, with a remark at its right.
pub fn heading(ui: &mut Ui, text: &str, right: &str) {
    let t = tokens(ui);
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 22.0), Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, text));
    let painter = ui.painter();
    let beside = painter.text(rect.right_center(), Align2::RIGHT_CENTER, right, regular(SMALL), t.soft);
    let name = cut(painter, text, semibold(BODY), t.ink, beside.left() - rect.left() - 8.0);
    painter.galley(rect.left_center() - vec2(0.0, name.size().y / 2.0), Arc::clone(&name), t.ink);
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.hairline));
    if name.elided {
        response.on_hover_text(text);
    }
}

/// A row with one value, or with two columns.
pub fn row(ui: &mut Ui, label: &str, value: &str, second: &str) -> egui::Response {
    let t = tokens(ui);
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 18.0), Sense::hover());
    let painter = ui.painter();
    painter.text(rect.left_center(), Align2::LEFT_CENTER, label, regular(SMALL + 0.5), t.soft);
    let right = if second.is_empty() { rect.right() } else { rect.right() - 66.0 };
    painter.text(pos2(right, rect.center().y), Align2::RIGHT_CENTER, value, regular(SMALL + 0.5), t.ink);
    if !second.is_empty() {
        painter.text(rect.right_center(), Align2::RIGHT_CENTER, second, regular(SMALL + 0.5), t.soft);
    }
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, format!("{label} {value} {second}")));
    response
}
