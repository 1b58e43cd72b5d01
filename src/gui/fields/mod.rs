//! The rows of a form: label, value with its unit, way back to the default, marks and hover text.

mod choice;
mod entry;
mod escape;
mod number;
mod row;
mod text;

pub use escape::left_by_escape;
pub use row::{combo, combo_of_width, label_cell, row, warning};

use super::history::Edits;
use crate::model::NumberInput;
use crate::model::validate::Problem;
use crate::units::{Quantity, UnitSystem};
use egui::{Id, Ui};
use text::step_name;
pub use text::{lower, sentence};

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
/// Gap between the values of a table.
const CELL_GAP: f32 = 4.0;
/// How a label takes clicks. Its field is the stop of the keys: a label that could be one would give the focus up at once,
/// and the walk through the fields would begin anew.
const POINTED: egui::Sense = egui::Sense::CLICK;
/// Width of a value.
const VALUE: f32 = 116.0;

impl<'a> Form<'a> {
    /// A form of a part at a place of the file; `part` is put before a field's name in the undo step.
    #[must_use]
    pub fn new(
        units: UnitSystem,
        currency: &'a str,
        (edits, troubles): (&'a mut Edits, &'a [Problem]),
        place: impl Into<String>,
        part: &'static str,
    ) -> Self {
        Self { units, currency, edits, troubles, place: place.into(), others: false, part }
    }

    /// Offers to give a value to all scenarios, where there are others.
    #[must_use]
    pub fn sharing(self, others: bool) -> Self {
        Self { others, ..self }
    }

    /// Notes a change of the field `label`.
    pub fn note(&mut self, label: &str, id: Id) {
        self.edits.note(step_name(self.part, label), id);
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

    /// Offers to give the value at `key` to all scenarios.
    fn share_ui(&mut self, ui: &mut Ui, label: &str, key: &str, id: Id) {
        if self.others && ui.button("Use in all scenarios").clicked() {
            self.edits.share(format!("{}.{key}", self.place));
            self.note(label, id.with("all scenarios"));
            ui.close();
        }
    }
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
