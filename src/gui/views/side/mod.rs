//! Side by side: the table of scenarios, and where the chosen one's saving comes from.

mod fuel;
mod steps;
mod table;

use crate::compare::Comparison;
use crate::gui::state::State;
use crate::gui::theme::{SMALL, tokens};
use egui::{RichText, Ui};

/// What this view remembers.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SideView {
    /// Money instead of heat in the chart of steps.
    pub money: bool,
}

/// The view.
pub fn side_ui(ui: &mut Ui, state: &mut State) {
    let comparison = comparison(state);
    let ordered = table::arranged(&comparison, &state.prefs.table);
    tools_ui(ui, state, &comparison);
    let widths = table::Widths::fit(ui.available_width() - 10.0, comparison.columns.len());
    egui::ScrollArea::horizontal().id_salt("columns").auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        table::head_ui(ui, state, &comparison, widths);
        egui::ScrollArea::vertical().id_salt("rows").auto_shrink([false, false]).show(ui, |ui| {
            table::rows_ui(ui, state, &comparison, &ordered, widths);
            ui.add_space(18.0);
            steps::steps_ui(ui, state, widths.whole);
            fuel::fuel_ui(ui, state);
            ui.add_space(12.0);
        });
    });
}

/// The table of the results on show.
fn comparison(state: &State) -> Comparison {
    let draft = &state.document.draft;
    let runs: Vec<_> =
        draft.tags.iter().map(|tag| state.board.season(tag.id).map(|(season, _)| &*season.run)).collect();
    Comparison::of(&draft.study, &state.rows, &runs)
}

fn tools_ui(ui: &mut Ui, state: &mut State, comparison: &Comparison) {
    let t = tokens(ui);
    ui.horizontal(|ui| {
        ui.label(
            RichText::new("A mark and bold type show the best of a row. Right-click a row to move or hide it.")
                .size(SMALL)
                .color(t.soft),
        );
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            if ui.button("Copy as CSV").clicked() {
                let currency = &state.document.draft.study.prices.currency;
                match comparison.csv(state.prefs.units, currency) {
                    Ok(text) => {
                        ui.ctx().copy_text(text);
                        let ctx = ui.ctx().clone();
                        state.say(&ctx, "Copied the table as CSV", false);
                    }
                    Err(error) => state.filing.error = Some(format!("The table could not be written: {error}")),
                }
            }
            let hidden = state.prefs.table.hidden.len();
            if hidden > 0 && ui.button(format!("Show {hidden} hidden")).clicked() {
                state.prefs.table.hidden.clear();
            }
        });
    });
}
