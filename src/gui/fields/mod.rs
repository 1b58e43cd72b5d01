//! The one row of a form: label, value with its unit, way back to the default, marks and hover text.

mod row;
mod text;

pub use row::{combo, combo_of_width, label_cell, row, warning};

use super::history::Edits;
use super::marks::{self, Icon};
use super::theme::{ROW, tokens};
use crate::model::validate::Problem;
use crate::model::{ChoiceInput, NumberInput};
use crate::units::{Quantity, TypedError, UnitSystem, typed};
use egui::{Align, Id, Layout, RichText, Ui, vec2};
use std::cell::Cell;
pub use text::sentence;
use text::{lower, same, speed, step_name, text};

/// What every row of a form needs to know.
pub struct Form<'a> {
    /// Units on screen.
    pub units: UnitSystem,
    /// Symbol of money.
    pub currency: &'a str,
    /// Where changes are noted.
    pub edits: &'a mut Edits,
    /// What is wrong, with the place in the file.
    pub troubles: &'a [Problem],
    /// Place in the file of the part being shown: "scenarios[1].house".
    pub place: String,
    /// Whether there are other scenarios that a value can be given to.
    pub others: bool,
    /// Name of the part, put before the field's name in the undo step: "house".
    pub part: &'static str,
}

/// Width of the gutter that holds the mark of a difference.
const GUTTER: f32 = 12.0;
/// Width of the place that holds the way back to the default.
const TAIL: f32 = 20.0;
/// Share of a row's width that the label of a choice or a text takes.
pub const CHOICE_LABEL: f32 = 0.36;
/// Width of a value.
const VALUE: f32 = 116.0;

impl Form<'_> {
    /// Notes a change of the field `label`.
    pub fn note(&mut self, label: &str, id: Id) {
        self.edits.note(step_name(self.part, label), id);
    }

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
                if label.interact(egui::Sense::click()).on_hover_text(text).double_clicked() {
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
        let field = self.drag_value(spec, &mut shown, &reading).suffix("");
        let response = ui.add_sized([width, ROW - 2.0], field).accessible_name(spoken);
        self.note_reading(ui, spec, reading, &response);
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
            if let Some(default) = default.filter(|d| !same(*d, value)) {
                let name = format!("Back to the default for {}, {}", lower(spec.label), self.shown(spec, default));
                if marks::icon_button_sized(ui, Icon::Reset, &name, vec2(TAIL - 2.0, 22.0)).clicked() {
                    new = Some(default);
                }
            } else {
                ui.allocate_space(vec2(TAIL - 2.0, 22.0));
            }
            let mut shown = unit.shown(value);
            let reading = Reading::default();
            let field = self.drag_value(spec, &mut shown, &reading).min_size(vec2(VALUE, ROW - 2.0));
            let size = vec2(VALUE, ROW - 2.0);
            let response =
                ui.allocate_ui_with_layout(size, Layout::top_down_justified(Align::Max), |ui| ui.add(field)).inner;
            let response = response.labelled_by(label);
            self.note_reading(ui, spec, reading, &response);
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
        });
        new
    }

    /// Keeps what could not be read until something can, or the field is left as it was.
    fn note_reading(&self, ui: &Ui, spec: &Spec, reading: Reading, response: &egui::Response) {
        let key = self.refusal_id(spec);
        match reading.outcome.take() {
            Some(Err(refusal)) => {
                ui.data_mut(|data| data.insert_temp(key, refusal.to_string()));
            }
            Some(Ok(_)) => ui.data_mut(|data| data.remove::<String>(key)),
            None if response.dragged() || response.lost_focus() => ui.data_mut(|data| data.remove::<String>(key)),
            None => {}
        }
    }

    fn refusal_id(&self, spec: &Spec) -> Id {
        Id::unique(("refused entry", &self.place, spec.key))
    }

    fn drag_value<'v>(&self, spec: &Spec, shown: &'v mut f64, reading: &'v Reading) -> egui::DragValue<'v> {
        let unit = spec.quantity.unit(self.units);
        let symbol = if spec.quantity == Quantity::Money { self.currency } else { unit.symbol };
        let suffix = if symbol.is_empty() || symbol == "°" { symbol.to_owned() } else { format!(" {symbol}") };
        let (spec, units) = (*spec, self.units);
        egui::DragValue::new(shown)
            .speed(speed(spec.quantity, unit.step()))
            .suffix(suffix)
            .update_while_editing(false)
            .clamp_existing_to_range(false)
            .custom_formatter(move |v, _| text(&spec, units, v))
            .custom_parser(move |text| {
                let read = typed(text, spec.quantity, units).map(|value| unit.shown(value));
                let shown = read.as_ref().ok().copied();
                reading.outcome.set(Some(read));
                shown
            })
    }

    fn shown(&self, spec: &Spec, value: f64) -> String {
        let unit = spec.quantity.unit(self.units);
        format!("{} {}", text(spec, self.units, unit.shown(value)), unit.symbol).trim_end().to_owned()
    }

    fn hover_ui(&self, ui: &mut Ui, spec: &Spec, default: Option<f64>, other: Option<f64>) {
        let t = tokens(ui);
        ui.label(spec.help);
        ui.label(
            RichText::new(format!("{} to {}", self.shown(spec, spec.min), self.shown(spec, spec.max)))
                .small()
                .color(t.soft),
        );
        if let Some(default) = default {
            ui.label(RichText::new(format!("Default {}", self.shown(spec, default))).small().color(t.soft));
        }
        if let Some(other) = other {
            ui.label(RichText::new(format!("Reference {}", self.shown(spec, other))).small().color(t.accent));
        }
        if !spec.source.is_empty() {
            ui.label(RichText::new(format!("Source: {}", spec.source)).small().color(t.soft));
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

    /// Shows what is wrong with the field of that name.
    pub fn troubles_at(&self, ui: &mut Ui, key: &str) {
        let place = format!("{}.{key}", self.place);
        for problem in self.troubles.iter().filter(|p| p.path == place) {
            warning(ui, &sentence(&problem.kind.text(self.units)));
        }
    }

    /// Shows what is wrong with the part itself.
    pub fn troubles_here(&self, ui: &mut Ui) {
        for problem in self.troubles.iter().filter(|p| p.path == self.place) {
            warning(ui, &sentence(&problem.kind.text(self.units)));
        }
    }

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

    /// Offers to give the value at `key` to all scenarios.
    fn share_ui(&mut self, ui: &mut Ui, label: &str, key: &str, id: Id) {
        if self.others && ui.button("Use in all scenarios").clicked() {
            self.edits.share(format!("{}.{key}", self.place));
            self.note(label, id.with("all scenarios"));
            ui.close();
        }
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
            label
                .interact(egui::Sense::click())
                .context_menu(|ui| self.share_ui(ui, input.label, input.key, response.id));
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
}

/// What became of an entry that was typed in this frame.
#[derive(Default)]
struct Reading {
    outcome: Cell<Option<Result<f64, TypedError>>>,
}

/// What a numeric row shows.
#[derive(Debug, Clone, Copy)]
pub struct Spec {
    /// Name in the file.
    pub key: &'static str,
    /// Name on screen.
    pub label: &'static str,
    /// What it means.
    pub quantity: Quantity,
    /// Smallest allowed value.
    pub min: f64,
    /// Largest allowed value.
    pub max: f64,
    /// What it does.
    pub help: &'static str,
    /// Where it comes from.
    pub source: &'static str,
}

impl Spec {
    /// The row of a numeric input.
    #[must_use]
    pub fn of<T>(i: &NumberInput<T>) -> Self {
        Self {
            key: i.key,
            label: i.label,
            quantity: i.quantity,
            min: i.min,
            max: i.max,
            help: i.help,
            source: i.source,
        }
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
