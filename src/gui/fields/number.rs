//! Rows and cells of numbers.

use super::entry::Reading;
use super::text::{lower, same, text};
use super::{CELL_GAP, Form, POINTED, Spec, TAIL, VALUE, label_cell, left_by_escape, row, warning};
use crate::gui::marks::{self, Icon};
use crate::gui::theme::{ROW, tokens};
use crate::model::NumberInput;
use egui::{Align, Id, Layout, RichText, Ui, UiBuilder, vec2};

impl Form<'_> {
    /// A numeric input. `reference` is the same part of the reference scenario, if it is another one.
    pub fn number<T>(&mut self, ui: &mut Ui, input: &NumberInput<T>, part: &mut T, reference: Option<&T>) {
        let value = (input.get)(part);
        let other = reference.map(input.get);
        let spec = Spec::of(input);
        if let Some(new) = self.value_row(ui, &spec, value, other, Some(input.default)) {
            (input.set)(part, new);
        }
    }

    /// A number that a [`NumberInput`] cannot describe, such as one held in a choice.
    pub fn value_row(
        &mut self,
        ui: &mut Ui,
        spec: &Spec,
        value: f64,
        other: Option<f64>,
        default: Option<f64>,
    ) -> Option<f64> {
        let differs = other.is_some_and(|o| !same(o, value));
        let id = ui.make_persistent_id((spec.key, "value"));
        let mut new = None;
        row(ui, differs, |ui| {
            let label = label_cell(ui, spec.label, 1.0, VALUE + TAIL);
            new = self.value_cell(ui, spec, value, other.filter(|_| differs), default, label.id);
            if let Some(default) = default.filter(|d| !same(*d, value)) {
                let text = format!("Double-click: back to the default, {}", self.shown(spec, default));
                if label.interact(POINTED).on_hover_text(text).double_clicked() {
                    new = Some(default);
                }
            }
        });
        if new.is_some() {
            self.note(spec.label, id);
        }
        self.trouble_ui(ui, spec, value);
        new
    }

    /// A value in a table, under the name that is spoken for it.
    pub fn cell(&mut self, ui: &mut Ui, spec: &Spec, value: f64, spoken: &str, width: f32) -> Option<f64> {
        let unit = spec.quantity.unit(self.units);
        let mut shown = unit.shown(value);
        let reading = Reading::default();
        let size = vec2(width - CELL_GAP, ROW - 2.0);
        let field = self.drag_value(spec, &mut shown, &reading);
        let mut response = right_aligned(ui, size, field).accessible_name(spoken);
        ui.add_space(CELL_GAP);
        let left = left_by_escape(&mut response);
        self.note_reading(ui, spec, reading, &response, left);
        let typed_anew = text(spec, self.units, shown) != text(spec, self.units, unit.shown(value));
        if !response.changed() || !(response.dragged() || typed_anew) {
            return None;
        }
        self.note(spoken, response.id);
        let typed = unit.value(shown);
        Some(if response.dragged() { typed.clamp(spec.min, spec.max) } else { typed })
    }

    /// The right part of a row: the value and the way back to its default.
    fn value_cell(
        &mut self,
        ui: &mut Ui,
        spec: &Spec,
        value: f64,
        other: Option<f64>,
        default: Option<f64>,
        label: Id,
    ) -> Option<f64> {
        let unit = spec.quantity.unit(self.units);
        let mut new = None;
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.spacing_mut().item_spacing.x = 2.0;
            let (_, tail) = ui.allocate_space(vec2(TAIL - 2.0, 22.0));
            let mut shown = unit.shown(value);
            let reading = Reading::default();
            let field = self.drag_value(spec, &mut shown, &reading).suffix(self.suffix(spec));
            let response = right_aligned(ui, vec2(VALUE, ROW - 2.0), field);
            let mut response = response.labelled_by(label);
            let left = left_by_escape(&mut response);
            self.note_reading(ui, spec, reading, &response, left);
            let typed_anew = text(spec, self.units, shown) != text(spec, self.units, unit.shown(value));
            if response.changed() && (response.dragged() || typed_anew) {
                let typed = unit.value(shown);
                new = Some(if response.dragged() { typed.clamp(spec.min, spec.max) } else { typed });
            }
            response.context_menu(|ui| {
                context_ui(ui, default, other, &mut new);
                self.share_ui(ui, spec.label, spec.key, response.id);
            });
            response.on_hover_ui(|ui| self.hover_ui(ui, spec, default, other));
            // Behind the value, so that the keys come to it in the order in which it is read.
            if let Some(default) = default.filter(|d| !same(*d, value)) {
                let name = format!("Back to the default for {}, {}", lower(spec.label), self.shown(spec, default));
                let mut ui = ui.new_child(UiBuilder::new().max_rect(tail));
                if marks::icon_button_sized(&mut ui, Icon::Reset, &name, tail.size()).clicked() {
                    new = Some(default);
                }
            }
        });
        new
    }

    /// A number that may be off, with the value it takes when switched on.
    pub fn optional(
        &mut self,
        ui: &mut Ui,
        spec: &Spec,
        value: &mut Option<f64>,
        when_on: f64,
        other: Option<Option<f64>>,
    ) {
        let differs = other.is_some_and(|o| o != *value);
        let id = ui.make_persistent_id((spec.key, "value"));
        let mut new = *value;
        row(ui, differs, |ui| {
            let mut on = value.is_some();
            let switch = ui.checkbox(&mut on, spec.label).on_hover_text(spec.help);
            new = on.then(|| value.unwrap_or(when_on));
            match *value {
                Some(held) if on => {
                    new = Some(self.value_cell(ui, spec, held, other.flatten(), None, switch.id).unwrap_or(held))
                }
                _ => {
                    ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                        ui.add_space(TAIL + 8.0);
                        ui.label(RichText::new("off").color(tokens(ui).soft));
                    });
                }
            }
        });
        if new != *value {
            *value = new;
            self.note(spec.label, id);
        }
        match *value {
            Some(held) => self.trouble_ui(ui, spec, held),
            None => self.troubles_at(ui, spec.key),
        }
    }

    fn trouble_ui(&self, ui: &mut Ui, spec: &Spec, value: f64) {
        if let Some(refusal) = ui.data(|data| data.get_temp::<String>(self.refusal_id(spec))) {
            warning(ui, &refusal);
        }
        let place = format!("{}.{}", self.place, spec.key);
        let known = self.troubles.iter().any(|p| p.path == place);
        let allowed = value.is_finite() && spec.min <= value && value <= spec.max;
        if !known && !allowed {
            let (low, high) = (self.shown(spec, spec.min), self.shown(spec, spec.max));
            warning(ui, &format!("{} must lie between {low} and {high}", spec.label));
        }
        self.troubles_at(ui, spec.key);
    }
}

fn context_ui(ui: &mut Ui, default: Option<f64>, other: Option<f64>, new: &mut Option<f64>) {
    for (name, value) in [("Back to the default", default), ("Take the reference's value", other)] {
        let value = value.filter(|v| v.is_finite());
        if ui.add_enabled(value.is_some(), egui::Button::new(name)).clicked() {
            *new = value;
            ui.close();
        }
    }
}

/// A field of a fixed size with its number at the right.
fn right_aligned(ui: &mut Ui, size: egui::Vec2, field: egui::DragValue<'_>) -> egui::Response {
    let field = field.min_size(size);
    ui.allocate_ui_with_layout(size, Layout::top_down_justified(Align::Max), |ui| ui.add(field)).inner
}
