//! Side by side: the table of scenarios, and where the chosen one's saving comes from.

mod fuel;
mod steps;
mod table;
mod texts;

use crate::gui::handout::Make;
use crate::gui::state::State;
use crate::gui::theme::{SMALL, tokens};
use egui::{RichText, Ui};
use std::sync::Arc;
use texts::Texts;

/// What this view remembers.
#[derive(Default)]
pub struct SideView {
    /// Money instead of heat in the chart of steps.
    pub money: bool,
    /// The table as it was drawn last.
    texts: Option<Arc<Texts>>,
}

/// The view.
pub fn side_ui(ui: &mut Ui, state: &mut State) {
    let texts = texts::texts(state);
    tools_ui(ui, state, &texts);
    let widths = table::Widths::fit(ui.available_width() - 10.0, texts.table.columns.len());
    egui::ScrollArea::horizontal().id_salt("columns").auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        table::head_ui(ui, state, &texts.table, widths);
        egui::ScrollArea::vertical().id_salt("rows").auto_shrink([false, false]).show(ui, |ui| {
            table::rows_ui(ui, state, &texts, widths);
            ui.add_space(18.0);
            steps::steps_ui(ui, state, widths.whole);
            fuel::fuel_ui(ui, state);
            ui.add_space(12.0);
        });
    });
}

fn tools_ui(ui: &mut Ui, state: &mut State, texts: &Arc<Texts>) {
    let t = tokens(ui);
    ui.horizontal(|ui| {
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            let (units, currency) = (state.prefs.units, state.document.draft.study.prices.currency.clone());
            let figures = || -> Make {
                let texts = Arc::clone(texts);
                Box::new(move || texts.table.figures(units, &currency))
            };
            let ctx = ui.ctx().clone();
            if ui.button("Copy as CSV").clicked() {
                state.copy_figures(figures(), &ctx);
            } else if ui.button("Save as CSV…").clicked() {
                state.save_figures("side by side", figures(), &ctx);
            }
            let hidden = state.prefs.table.hidden.len();
            if hidden > 0 && ui.button(format!("Show {hidden} hidden")).clicked() {
                state.prefs.table.hidden.clear();
            }
            let hint = "The best of a row has a mark. Right-click a row to move or hide it.";
            ui.with_layout(egui::Layout::left_to_right(egui::Align::Center), |ui| {
                ui.add(egui::Label::new(RichText::new(hint).size(SMALL).color(t.soft)).truncate());
            });
        });
    });
}
