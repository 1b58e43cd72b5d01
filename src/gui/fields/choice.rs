//! Rows of switches, choices and texts.

use super::{CHOICE_LABEL, Form, POINTED, TAIL, combo, label_cell, row};
use crate::model::ChoiceInput;
use egui::Ui;

impl Form<'_> {
    /// A switch.
    pub fn switch(&mut self, ui: &mut Ui, input: &ChoiceInput, on: &mut bool, other: Option<bool>) {
        let differs = other.is_some_and(|o| o != *on);
        let mut changed = None;
        row(ui, differs, |ui| {
            let response = ui.checkbox(on, input.label);
            changed = response.changed().then_some(response.id);
            response.context_menu(|ui| self.share_ui(ui, input.label, input.key, response.id));
            response.on_hover_text(input.help);
        });
        if let Some(id) = changed {
            self.note(input.label, id);
        }
        self.troubles_at(ui, input.key);
    }

    /// A choice among named options; gives true when another was taken.
    pub fn choice<V: PartialEq + Clone>(
        &mut self,
        ui: &mut Ui,
        input: &ChoiceInput,
        value: &mut V,
        options: &[(V, String)],
        other: Option<&V>,
    ) -> bool {
        let differs = other.is_some_and(|o| o != value);
        let selected = options.iter().find(|(v, _)| v == value).map_or("–", |(_, name)| name.as_str());
        let mut taken = None;
        let id = ui.make_persistent_id((input.key, "choice"));
        row(ui, differs, |ui| {
            let label = label_cell(ui, input.label, CHOICE_LABEL, 0.0);
            let response = combo(ui, input.key, selected, |ui| {
                for (option, name) in options {
                    if ui.selectable_label(option == value, name).clicked() {
                        taken = Some(option.clone());
                    }
                }
            });
            // The list of the choice itself hangs on its response; a second menu there would be the same one.
            label.interact(POINTED).context_menu(|ui| self.share_ui(ui, input.label, input.key, response.id));
            response.labelled_by(label.id).on_hover_text(input.help);
        });
        let changed = taken.is_some_and(|taken| {
            let changed = taken != *value;
            *value = taken;
            changed
        });
        if changed {
            self.note(input.label, id);
        }
        self.troubles_at(ui, input.key);
        changed
    }

    /// A line of text.
    pub fn text(&mut self, ui: &mut Ui, input: &ChoiceInput, value: &mut String, width: Option<f32>) {
        let mut changed = None;
        row(ui, false, |ui| {
            let label = label_cell(ui, input.label, CHOICE_LABEL, 0.0);
            let width = width.unwrap_or(ui.available_width() - TAIL);
            let edit = egui::TextEdit::singleline(value).desired_width(width).margin(egui::Margin::symmetric(6, 4));
            let response = ui.add(edit).labelled_by(label.id);
            changed = response.changed().then_some(response.id);
            response.on_hover_text(input.help);
        });
        if let Some(id) = changed {
            self.note(input.label, id);
        }
        self.troubles_at(ui, input.key);
    }
}
