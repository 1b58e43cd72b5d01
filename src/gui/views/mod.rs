//! The views under the drawing, as tabs.

mod air;
mod buy;
mod checks;
mod coldest;
mod matters;
mod side;
mod sweep;
mod winter;
mod winters;

pub use air::AirPlot;
pub use buy::BuyView;
pub use coldest::ColdestView;
pub use matters::MattersView;
pub use side::SideView;
pub use sweep::SweepView;
pub use winter::WinterView;

use super::command::Command;
use super::plots::running::Shown;
use super::state::{State, View};
use super::theme::{BODY, SMALL, Tokens, regular, semibold, tokens};
use super::{marks, palette};
use egui::{Align2, Button, RichText, Sense, Stroke, Ui, vec2};

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
        ui.label(RichText::new(text).color(t.soft));
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
        View::Matters => matters::matters_ui(ui, state),
        View::Sweep => sweep::sweep_ui(ui, state),
        View::Buy => buy::buy_ui(ui, state),
    }
}

/// The views in the order of their tabs.
pub(super) const VIEWS: [(View, Command); 9] = [
    (View::Winter, Command::WinterView),
    (View::Coldest, Command::ColdestView),
    (View::Side, Command::SideView),
    (View::Air, Command::AirView),
    (View::Checks, Command::ChecksView),
    (View::Winters, Command::WintersView),
    (View::Matters, Command::MattersView),
    (View::Sweep, Command::SweepView),
    (View::Buy, Command::BuyView),
];

/// Height of a row of tabs.
const TAB: f32 = 28.0;
/// Room between two tabs.
const BETWEEN: f32 = 20.0;

/// The tabs, in as many rows as they need.
pub fn tabs_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let stops = chosen_stops(state);
    let text = |view: View, command: Command| match stops {
        stops if stops > 0 && view == View::Checks => format!("{} · {stops}", command.text()),
        _ => command.text().to_owned(),
    };
    // Wide enough for the chosen one, so that no tab moves when another is chosen.
    let width = |text: &str| ui.painter().layout_no_wrap(text.to_owned(), semibold(BODY), t.ink).size().x;
    let widths: Vec<f32> = VIEWS.iter().map(|(view, command)| width(&text(*view, *command))).collect();
    let whole = widths.iter().sum::<f32>() + BETWEEN * (widths.len() - 1) as f32;
    let first_row = if whole <= ui.available_width() { VIEWS.len() } else { VIEWS.len().div_ceil(2) };
    let height = if first_row < VIEWS.len() { TAB - 5.0 } else { TAB };
    ui.spacing_mut().item_spacing.y = 0.0;
    for row in [0..first_row, first_row..VIEWS.len()].into_iter().filter(|row| !row.is_empty()) {
        let last = row.end == VIEWS.len();
        let line = ui.cursor().top() + height;
        if last {
            ui.painter().hline(ui.max_rect().x_range(), line, Stroke::new(1.0, t.hairline));
        }
        ui.horizontal(|ui| {
            ui.set_height(height);
            ui.spacing_mut().item_spacing.x = BETWEEN;
            for index in row {
                let (view, command) = VIEWS[index];
                let on = state.view == view;
                if tab_ui(ui, &text(view, command), vec2(widths[index], height), on, &t).clicked() {
                    state.queue.push(command);
                }
            }
        });
    }
    ui.spacing_mut().item_spacing.y = 4.0;
}

/// One tab.
fn tab_ui(ui: &mut Ui, text: &str, size: egui::Vec2, on: bool, t: &Tokens) -> egui::Response {
    let font = if on { semibold(BODY) } else { regular(BODY) };
    let galley = ui.painter().layout_no_wrap(text.to_owned(), font, t.ink);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::Tab, true, on, text));
    let colour = if on || response.hovered() || response.has_focus() { t.ink } else { t.soft };
    let at = Align2::LEFT_CENTER.anchor_size(rect.left_center(), galley.size()).min;
    ui.painter().galley_with_override_text_color(at, galley, colour);
    if on {
        ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(2.0, t.accent));
    }
    marks::focus_ring(ui, &response, rect.expand2(vec2(4.0, -2.0)));
    response
}

/// What was pressed beside a progress bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Press {
    /// Stop working.
    Stop,
    /// Go on with what was stopped or failed.
    GoOn,
}

/// How far a long question is, and the way to stop it, or why it ended and the way on; from the right.
fn progress_ui(ui: &mut Ui, working: Option<usize>, count: usize, failed: Option<&str>) -> Option<Press> {
    let t = tokens(ui);
    if let Some(done) = working {
        let pressed = ui.button("Stop").clicked();
        let share = done as f32 / count.max(1) as f32;
        let text = RichText::new(format!("{done} of {count}")).size(SMALL);
        ui.add(egui::ProgressBar::new(share).desired_width(110.0).text(text));
        return pressed.then_some(Press::Stop);
    }
    let why = failed?;
    let pressed = ui.button("Go on").clicked();
    ui.add(egui::Label::new(RichText::new(why).color(t.warn)).truncate());
    pressed.then_some(Press::GoOn)
}

/// One of several figures by its name; whether it was chosen in this frame.
fn choice(ui: &mut Ui, name: &str, on: bool, size: f32) -> bool {
    let t = tokens(ui);
    let text = RichText::new(name).font(semibold(size)).color(if on { t.ink } else { t.soft });
    let text = if on { text } else { text.underline() };
    let response = ui.add(Button::new(text).frame(false).min_size(vec2(0.0, 20.0)));
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, name));
    marks::focus_ring(ui, &response, response.rect.expand2(vec2(3.0, 0.0)));
    response.clicked()
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
