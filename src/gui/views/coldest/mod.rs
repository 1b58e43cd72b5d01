//! Coldest nights: the worst spell, the design load, cold beyond this year's, and the power cut.

mod cut;
mod fields;
mod spell;

use crate::format;
use crate::gui::board::Standing;
use crate::gui::state::State;
use crate::gui::theme::{BODY, ROW, tokens};
use crate::gui::views::choice;
use egui::{Align, Layout, RichText, Ui, vec2};

/// What this view remembers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ColdestView {
    /// The power cut instead of the worst spell.
    pub cut: bool,
    /// Trays instead of air in the power cut.
    pub trays: bool,
}

/// The view.
pub fn coldest_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let Some((season, standing)) = state.chosen_season().filter(|(s, _)| !s.is_empty()).map(|(s, at)| (s.clone(), at))
    else {
        ui.label(RichText::new("This scenario has no figures yet. Mend what is marked in the editor").color(t.soft));
        return;
    };
    let units = state.prefs.units;
    let name = state.document.draft.scenario().map(|s| format::short_name(&s.name)).unwrap_or_default();
    ui.spacing_mut().item_spacing.y = 2.0;
    if standing == Standing::Stale {
        ui.set_opacity(0.6);
    }
    if state.coldest.cut {
        let (cut, fresh, failed) = cut::ask(ui, state, &season);
        let limit_c = season.run.summary.crop_limit_c;
        let said = cut
            .as_ref()
            .map_or_else(|| coming(failed), |cut| cut::finding(&season.inputs.scenario.heater, cut, limit_c, units));
        finding_ui(ui, &said);
        row_ui(ui, state, |ui, state| cut::controls_ui(ui, state, &season, cut.as_deref()));
        if let Some(cut) = &cut {
            if !fresh {
                ui.set_opacity(0.6);
            }
            cut::cut_ui(ui, state, &season, cut);
        }
    } else {
        let (colder, fresh) = spell::ask(ui, state, &season);
        finding_ui(ui, &spell::finding(&name, &season, colder.as_deref(), units));
        row_ui(ui, state, |ui, state| spell::controls_ui(ui, state, colder.as_deref(), fresh));
        spell::spell_ui(ui, state, &season, colder.as_deref(), fresh);
    }
}

/// What to say while there is no answer.
fn coming(failed: Option<String>) -> String {
    failed.unwrap_or_else(|| "The power cut is being worked out".to_owned())
}

fn finding_ui(ui: &mut Ui, text: &str) {
    ui.add(egui::Label::new(text).truncate());
}

/// Which part is on show, and its questions.
fn row_ui(ui: &mut Ui, state: &mut State, controls: impl FnOnce(&mut Ui, &mut State)) {
    ui.allocate_ui_with_layout(vec2(ui.available_width(), ROW), Layout::left_to_right(Align::Center), |ui| {
        ui.spacing_mut().item_spacing.x = 10.0;
        for (name, cut) in [("Worst spell", false), ("Power cut", true)] {
            if choice(ui, name, state.coldest.cut == cut, BODY) {
                state.coldest.cut = cut;
            }
        }
        ui.add_space(6.0);
        ui.spacing_mut().item_spacing.x = 5.0;
        controls(ui, state);
    });
}
