//! The time cursor: a slider over the season, steps to each side, and the coldest spell played back.

use crate::gui::board::Season;
use crate::gui::command::Command;
use crate::gui::marks::{self, Icon};
use crate::gui::state::{State, coldest_hour};
use crate::gui::theme::tokens;
use egui::{Ui, pos2};
use std::time::Duration;

/// Hours played before and after the coldest.
const AROUND: usize = 36;
/// Hours that pass in a second of play.
const HOURS_PER_SECOND: f64 = 6.0;

/// A spell being played.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Playback {
    first: usize,
    last: usize,
    began_s: f64,
}

impl Playback {
    /// The coldest spell of a season, from now on.
    #[must_use]
    pub fn coldest(season: &Season, now_s: f64) -> Self {
        let middle = coldest_hour(season);
        let last = (middle + AROUND).min(season.len().saturating_sub(1));
        Self { first: middle.saturating_sub(AROUND), last, began_s: now_s }
    }

    /// The hour to show; none when the spell is over.
    fn hour(&self, now_s: f64) -> Option<usize> {
        let passed = ((now_s - self.began_s).max(0.0) * HOURS_PER_SECOND) as usize;
        Some(self.first + passed).filter(|hour| *hour <= self.last)
    }
}

/// Moves the time cursor while a spell is played.
fn play(ui: &Ui, state: &mut State) {
    let Some(playback) = state.playback else { return };
    match playback.hour(ui.input(|i| i.time)) {
        Some(hour) => {
            state.hour = Some(hour);
            ui.ctx().request_repaint_after(Duration::from_secs_f64(0.5 / HOURS_PER_SECOND));
        }
        None => state.playback = None,
    }
}

/// The time cursor.
pub fn cursor_ui(ui: &mut Ui, state: &mut State, season: Option<&Season>, hour: usize) {
    play(ui, state);
    let len = season.map_or(0, Season::len);
    ui.add_space(2.0);
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.set_height(26.0);
        ui.add_enabled_ui(len > 1, |ui| {
            let last = len.saturating_sub(1);
            let mut at = hour;
            if marks::icon_button(ui, Icon::Left, "An hour earlier").clicked() {
                at = at.saturating_sub(1);
            }
            if marks::icon_button(ui, Icon::Right, "An hour later").clicked() {
                at += 1;
            }
            let (icon, name) = match state.playback {
                Some(_) => (Icon::Pause, "Stop playing"),
                None => (Icon::Play, Command::Play.text()),
            };
            if marks::icon_button(ui, icon, name).clicked() {
                state.queue.push(Command::Play);
            }
            let button = 100.0;
            ui.spacing_mut().slider_width = (ui.available_width() - button - 12.0).max(80.0);
            ui.visuals_mut().widgets.inactive.bg_fill = tokens(ui).hairline;
            let slider = egui::Slider::new(&mut at, 0..=last.max(1)).show_value(false);
            let rail = ui.add(slider).accessible_name("Hour of the season").rect;
            // The handle in the accent, over egui's own of the same size.
            let radius = rail.height() / 2.5;
            let share = at as f32 / last.max(1) as f32;
            let x = egui::lerp(rail.left() + radius..=rail.right() - radius, share);
            ui.painter().circle_filled(pos2(x, rail.center().y), radius, tokens(ui).accent);
            if ui.button("Coldest hour").on_hover_text("To the lowest temperature round the crop").clicked()
                && let Some(season) = season
            {
                at = coldest_hour(season);
            }
            if at != hour {
                state.playback = None;
                state.hour = Some(at.min(last));
            }
        });
    });
}
