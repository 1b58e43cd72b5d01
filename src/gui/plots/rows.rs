//! Rows of a column of figures with colours of their own, or with several values.

use crate::gui::theme::{SMALL, regular, tokens};
use egui::{Align2, Color32, Sense, Ui, pos2, vec2};

/// A name and its value; `hover` says what it is, empty for nothing.
pub fn row(ui: &mut Ui, label: &str, value: &str, hover: &str) {
    let ink = tokens(ui).ink;
    row_in(ui, label, value, ink, hover);
}

/// The same with the value in a colour.
pub fn row_in(ui: &mut Ui, label: &str, value: &str, colour: Color32, hover: &str) {
    let columns = [(value.to_owned(), colour)];
    let width = ui.available_width();
    row_of(ui, label, &columns, width, hover);
}

/// A name and columns of so wide values, the last one at the right edge.
pub fn row_of(ui: &mut Ui, label: &str, values: &[(String, Color32)], column: f32, hover: &str) {
    let t = tokens(ui);
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 18.0), Sense::hover());
    let painter = ui.painter();
    painter.text(rect.left_center(), Align2::LEFT_CENTER, label, regular(SMALL + 0.5), t.soft);
    for (place, (value, colour)) in values.iter().rev().enumerate() {
        let right = rect.right() - place as f32 * column;
        painter.text(pos2(right, rect.center().y), Align2::RIGHT_CENTER, value, regular(SMALL + 0.5), *colour);
    }
    let said = values.iter().map(|(value, _)| value.as_str()).collect::<Vec<_>>().join(", ");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, format!("{label} {said}")));
    if !hover.is_empty() {
        response.on_hover_text(hover);
    }
}
