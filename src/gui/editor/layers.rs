//! A stack of sheets, outermost first: choose, add, remove, reorder.

use crate::gui::fields::{Form, combo_of_width, row};
use crate::gui::marks::{Icon, icon_button};
use crate::gui::theme::tokens;
use crate::model::{Catalogue, ChoiceInput};
use egui::{RichText, Ui};

/// Most sheets in a stack.
const MOST: usize = 6;

/// The stack; `name` tells it from other stacks in the same section.
pub fn layers_ui(
    ui: &mut Ui,
    form: &mut Form,
    input: &ChoiceInput,
    sheets: &mut Vec<String>,
    rows: &Catalogue,
    other: Option<&Vec<String>>,
) {
    let differs = other.is_some_and(|o| o != sheets);
    row(ui, differs, |ui| {
        ui.label(RichText::new(format!("{}, outermost first", input.label)).color(tokens(ui).soft))
            .on_hover_text(input.help);
    });
    let mut step: Option<Step> = None;
    let count = sheets.len();
    for (index, key) in sheets.iter_mut().enumerate() {
        row(ui, false, |ui| {
            let layer = format!("{} layer {}", input.label, index + 1);
            let width = ui.available_width() - 78.0;
            let chosen = rows.sheet(key).map_or(key.as_str(), |sheet| sheet.name.as_str()).to_owned();
            let response = combo_of_width(ui, (input.key, index), &chosen, width, |ui| {
                for sheet in &rows.sheets {
                    if ui.selectable_label(*key == sheet.key, &sheet.name).on_hover_text(&sheet.source).clicked()
                        && *key != sheet.key
                    {
                        step = Some(Step::Take(index, sheet.key.clone()));
                    }
                }
            });
            response.accessible_name(layer);
            ui.add_space(4.0);
            if ui.add_enabled_ui(index > 0, |ui| icon_button(ui, Icon::Up, "Move this sheet outwards")).inner.clicked()
            {
                step = Some(Step::Swap(index - 1));
            }
            if ui
                .add_enabled_ui(index + 1 < count, |ui| icon_button(ui, Icon::Down, "Move this sheet inwards"))
                .inner
                .clicked()
            {
                step = Some(Step::Swap(index));
            }
            if ui.add_enabled_ui(count > 1, |ui| icon_button(ui, Icon::Cross, "Take this sheet away")).inner.clicked() {
                step = Some(Step::Remove(index));
            }
        });
    }
    row(ui, false, |ui| {
        if ui
            .add_enabled(count < MOST, egui::Button::new("Add a sheet"))
            .on_disabled_hover_text("Six sheets are the most")
            .clicked()
        {
            step = Some(Step::Add);
        }
    });
    let Some(step) = step else { return };
    let id = ui.make_persistent_id((input.key, format!("{step:?}"), ui.ctx().cumulative_frame_nr()));
    match step {
        Step::Take(index, key) => {
            if let Some(slot) = sheets.get_mut(index) {
                *slot = key;
            }
        }
        Step::Swap(index) => sheets.swap(index, index + 1),
        Step::Remove(index) => {
            sheets.remove(index);
        }
        Step::Add => {
            let copy = sheets.last().cloned().or_else(|| rows.sheets.first().map(|s| s.key.clone()));
            sheets.extend(copy);
        }
    }
    form.note(input.label, id);
    form.troubles_at(ui, input.key);
}

#[derive(Debug)]
enum Step {
    Take(usize, String),
    Swap(usize),
    Remove(usize),
    Add,
}
