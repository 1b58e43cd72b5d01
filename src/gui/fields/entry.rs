//! What a number is typed into: its unit, how it is read and what is said where it cannot be.

use super::text::{speed, text};
use super::{Form, Spec};
use crate::gui::theme::tokens;
use crate::units::{Quantity, TypedError, typed};
use egui::{Id, RichText, Ui};
use std::cell::Cell;

/// What became of an entry that was typed in this frame.
#[derive(Default)]
pub(super) struct Reading {
    outcome: Cell<Option<Result<f64, TypedError>>>,
}

impl Form<'_> {
    /// Keeps what could not be read until something can, or the field is left as it was; `left` is true where Escape did that.
    pub(super) fn note_reading(&self, ui: &Ui, spec: &Spec, reading: Reading, response: &egui::Response, left: bool) {
        let key = self.refusal_id(spec);
        match reading.outcome.take() {
            Some(Err(refusal)) if !left => {
                ui.data_mut(|data| data.insert_temp(key, refusal.to_string()));
            }
            Some(_) => ui.data_mut(|data| data.remove::<String>(key)),
            None if response.dragged() || response.lost_focus() => ui.data_mut(|data| data.remove::<String>(key)),
            None => {}
        }
    }

    pub(super) fn refusal_id(&self, spec: &Spec) -> Id {
        Id::unique(("refused entry", &self.place, spec.key))
    }

    /// The unit behind a value.
    pub(super) fn suffix(&self, spec: &Spec) -> String {
        let symbol =
            if spec.quantity == Quantity::Money { self.currency } else { spec.quantity.unit(self.units).symbol };
        if symbol.is_empty() || symbol == "°" { symbol.to_owned() } else { format!(" {symbol}") }
    }

    pub(super) fn drag_value<'v>(&self, spec: &Spec, shown: &'v mut f64, reading: &'v Reading) -> egui::DragValue<'v> {
        let unit = spec.quantity.unit(self.units);
        let (spec, units) = (*spec, self.units);
        egui::DragValue::new(shown)
            .speed(speed(spec.quantity, unit.step()))
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

    pub(super) fn shown(&self, spec: &Spec, value: f64) -> String {
        let unit = spec.quantity.unit(self.units);
        format!("{} {}", text(spec, self.units, unit.shown(value)), unit.symbol).trim_end().to_owned()
    }

    pub(super) fn hover_ui(&self, ui: &mut Ui, spec: &Spec, default: Option<f64>, other: Option<f64>) {
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
}
