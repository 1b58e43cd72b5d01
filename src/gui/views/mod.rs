//! The views under the drawing, as tabs.

mod air;
mod checks;
mod coldest;
mod side;
mod winter;
mod winters;

pub use air::AirPlot;
pub use coldest::ColdestView;
pub use side::SideView;
pub use winter::WinterView;

use super::command::Command;
use super::palette;
use super::plots::running::Shown;
use super::state::{State, View};
use super::theme::{BODY, regular, semibold, tokens};
use egui::{Align2, Sense, Stroke, Ui, vec2};

/// The chosen view.
pub fn views_ui(ui: &mut Ui, state: &mut State) {
    if state.chosen_season().is_none() && shown(ui, state).is_empty() {
        let t = tokens(ui);
        ui.add_space(24.0);
        let text = if state.board.working() {
            "The winter is being worked out"
        } else {
            "Nothing to draw yet. Mend what is marked in the editor, or choose another scenario"
        };
        ui.label(egui::RichText::new(text).color(t.soft));
        // Without a problem in the inputs it is the weather that cannot be had.
        if !state.board.working() && state.troubles.is_empty() && ui.button("Choose the weather").clicked() {
            state.site_sought = true;
        }
        return;
    }
    match state.view {
        View::Winter => winter::winter_ui(ui, state),
        View::Coldest => coldest::coldest_ui(ui, state),
        View::Side => side::side_ui(ui, state),
        View::Air => air::air_ui(ui, state),
        View::Checks => checks::checks_ui(ui, state),
        View::Winters => winters::winters_ui(ui, state),
    }
}

/// The views in the order of their tabs.
const VIEWS: [(View, Command); 6] = [
    (View::Winter, Command::WinterView),
    (View::Coldest, Command::ColdestView),
    (View::Side, Command::SideView),
    (View::Air, Command::AirView),
    (View::Checks, Command::ChecksView),
    (View::Winters, Command::WintersView),
];

/// The tabs.
pub fn tabs_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let line = ui.cursor().top() + 28.0;
    ui.painter().hline(ui.max_rect().x_range(), line, Stroke::new(1.0, t.hairline));
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 20.0;
        for (view, command) in VIEWS {
            let on = state.view == view;
            let font = if on { semibold(BODY) } else { regular(BODY) };
            let text = match chosen_stops(state) {
                stops if stops > 0 && view == View::Checks => format!("{} · {stops}", command.text()),
                _ => command.text().to_owned(),
            };
            let galley = ui.painter().layout_no_wrap(text.clone(), font, t.ink);
            let (rect, response) = ui.allocate_exact_size(vec2(galley.size().x, 28.0), Sense::click());
            response.widget_info(|| egui::WidgetInfo::selected(egui::Role::Tab, true, on, &text));
            let colour = if on || response.hovered() || response.has_focus() { t.ink } else { t.soft };
            let at = Align2::LEFT_CENTER.anchor_size(rect.left_center(), galley.size()).min;
            ui.painter().galley_with_override_text_color(at, galley, colour);
            if on {
                ui.painter().hline(rect.x_range(), line, Stroke::new(2.0, t.accent));
            } else if response.has_focus() {
                ui.painter().hline(rect.x_range(), line, Stroke::new(2.0, t.soft));
            }
            if response.clicked() {
                state.queue.push(command);
            }
        }
    });
}

/// How many checks of the chosen scenario say stop.
fn chosen_stops(state: &State) -> usize {
    let draft = &state.document.draft;
    draft.tags.get(draft.selected()).map_or(0, |tag| state.verdicts.stops(tag.id))
}

/// The scenarios on show that have a season, in the order of the cards.
fn shown(ui: &Ui, state: &mut State) -> Vec<Shown> {
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    let draft = &state.document.draft;
    let mut out = Vec::new();
    for (index, (scenario, tag)) in draft.study.scenarios.iter().zip(&draft.tags).enumerate() {
        let chosen = index == draft.selected();
        let Some((season, standing)) = state.board.season(tag.id).filter(|(s, _)| !s.is_empty()) else { continue };
        if !scenario.shown {
            continue;
        }
        out.push(Shown {
            name: scenario.name.clone(),
            mark: tag.mark,
            colour: palette::scenario(theme, tag.mark),
            chosen,
            curves: state.plots.curves(tag.id, season),
            season: season.clone(),
            standing,
        });
    }
    out
}
