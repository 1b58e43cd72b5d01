//! The parts a row of a form is laid out from.

use super::{GUTTER, TAIL};
use crate::gui::marks::{self, Icon};
use crate::gui::theme::{ROW, SMALL, tokens};
use egui::{Align, Layout, RichText, Sense, Ui, vec2};

/// Lays out one row with its gutter; a dot in the gutter marks a difference from the reference.
pub fn row(ui: &mut Ui, differs: bool, content: impl FnOnce(&mut Ui)) {
    ui.horizontal(|ui| {
        ui.set_min_height(ROW);
        ui.spacing_mut().item_spacing.x = 0.0;
        let (rect, response) = ui.allocate_exact_size(vec2(GUTTER, ROW), Sense::hover());
        if differs {
            ui.painter().circle_filled(rect.left_center() + vec2(4.0, 0.0), 2.5, tokens(ui).accent);
            response.on_hover_text("Differs from the reference scenario");
        }
        content(ui);
    });
}

/// The label at the left of a row: a share of the width, or all of it but `less`.
pub fn label_cell(ui: &mut Ui, label: &str, share: f32, less: f32) -> egui::Response {
    let width = (ui.available_width() * share - less).max(40.0);
    let left = Layout::left_to_right(Align::Center);
    ui.allocate_ui_with_layout(vec2(width, ROW), left, |ui| {
        ui.set_min_width(width);
        ui.add(egui::Label::new(RichText::new(label).color(tokens(ui).soft)).truncate())
    })
    .inner
}

/// A line that says what is wrong.
pub fn warning(ui: &mut Ui, text: &str) {
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        let t = tokens(ui);
        let (rect, _) = ui.allocate_exact_size(vec2(GUTTER + 4.0, 18.0), Sense::hover());
        marks::paint_warning(ui.painter(), rect.center(), t.warn);
        ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(t.warn)).wrap());
    });
}

/// A drop-down list that fills the rest of the row but its tail.
pub fn combo(ui: &mut Ui, key: &str, selected: &str, content: impl FnOnce(&mut Ui)) -> egui::Response {
    let width = ui.available_width() - TAIL;
    combo_of_width(ui, key, selected, width, content)
}

/// The same in a given width; a long choice is cut.
pub fn combo_of_width(
    ui: &mut Ui,
    key: impl egui::AsIdSalt,
    selected: &str,
    width: f32,
    content: impl FnOnce(&mut Ui),
) -> egui::Response {
    let size = vec2(width, ROW - 2.0);
    ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_width(width);
        ui.set_max_width(width);
        let combo = egui::ComboBox::from_id_salt(key).width(width).truncate().selected_text(selected).icon(chevron);
        combo
            .show_ui(ui, |ui| {
                ui.spacing_mut().interact_size.y = 24.0;
                content(ui);
            })
            .response
    })
    .inner
}

/// The small arrow of a choice.
fn chevron(ui: &Ui, rect: egui::Rect, _visuals: &egui::style::WidgetVisuals, _open: bool) {
    marks::paint_icon(ui.painter(), Icon::Down, rect.center(), tokens(ui).soft);
}
