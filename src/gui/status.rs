//! The line at the bottom: weather, season, what is wrong, what is being worked out.

use super::hint::hint_ui;
use super::marks;
use super::state::State;
use super::theme::{SMALL, tokens};
use crate::format;
use egui::{Align, Layout, RichText, Sense, Ui, vec2};

/// Height of the line.
pub const HEIGHT: f32 = 18.0;

/// The line.
pub fn status_ui(ui: &mut Ui, state: &mut State) {
    ui.horizontal(|ui| {
        ui.set_height(HEIGHT);
        if state.prefs.started {
            season_ui(ui, state);
        } else {
            hint_ui(ui, state);
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| troubles_ui(ui, state));
    });
}

/// Weather and season.
fn season_ui(ui: &mut Ui, state: &State) {
    let text = match state.chosen_season() {
        Some((season, _)) => {
            let s = &season.run.summary;
            format!(
                "Weather {} · season {} to {}, {} · clock hours in standard time all winter",
                season.climate.place.name,
                format::day(s.season_start),
                format::day(s.season_end),
                format::hours(s.season_hours),
            )
        }
        None => "No season yet".to_owned(),
    };
    ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(tokens(ui).soft)).truncate());
}

/// What is under way, and what is wrong; from the right.
fn troubles_ui(ui: &mut Ui, state: &State) {
    let t = tokens(ui);
    if state.board.working() {
        ui.label(RichText::new("Working out…").size(SMALL).color(t.soft));
    }
    if state.opened_twice {
        let text = RichText::new("Open in another window too").size(SMALL).color(t.warn);
        ui.label(text)
            .on_hover_text("What is saved there and here overwrites each other: save one of them under another name");
    }
    let count = state.troubles.len();
    if count > 0 {
        let text = if count == 1 { "1 problem".to_owned() } else { format!("{count} problems") };
        let label = ui.label(RichText::new(text).size(SMALL).color(t.warn));
        let (rect, _) = ui.allocate_exact_size(vec2(14.0, 14.0), Sense::hover());
        marks::paint_warning(ui.painter(), rect.center(), t.warn);
        label.on_hover_ui(|ui| {
            for trouble in &state.troubles {
                let whose = if trouble.scenario_name.is_empty() {
                    String::new()
                } else {
                    format!("{} – ", trouble.scenario_name)
                };
                ui.label(format!("{whose}{}", trouble.text(state.prefs.units)));
            }
        });
    }
}
