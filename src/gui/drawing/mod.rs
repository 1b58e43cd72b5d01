//! The house to scale at the hour under the time cursor, with its readings and the cursor itself.

mod cursor;
mod flows;
mod frame;
mod hour;
mod paint;
mod parts;
mod readings;

pub use cursor::Playback;

use super::board::Standing;
use super::state::State;
use super::theme::{SMALL, tokens};
use crate::format;
use crate::geometry::section::{self, Section};
use crate::model::Scenario;
use crate::units::{Quantity, UnitSystem};
use egui::{CursorIcon, Rect, Response, RichText, Sense, Ui, pos2, vec2};
use frame::Frame;
use hour::Hour;
use paint::Pen;
use parts::Part;

/// Width of the readings beside the drawing.
const READINGS: f32 = 190.0;

/// The drawing and the time cursor.
pub fn drawing_ui(ui: &mut Ui, state: &mut State) {
    let height = (ui.available_height() * 0.36).clamp(176.0, 460.0);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    let Some(scenario) = state.document.draft.scenario().cloned() else { return };
    let section = section::section(&scenario);
    let len = state.chosen_season().map_or(0, |(season, _)| season.len());
    let at = state.hour_within(len);
    let season = state.chosen_season().filter(|(s, _)| !s.is_empty()).map(|(s, standing)| (s.clone(), standing));
    let hour = season.as_ref().map_or_else(Hour::default, |(s, _)| Hour::of(s, &scenario, at));
    let fade = if matches!(season, Some((_, Standing::Stale))) { 0.6 } else { 1.0 };
    let picture = Rect::from_min_max(rect.min, pos2(rect.right() - READINGS, rect.bottom()));
    // Not a stop of the keys: what a click leads to are the sections of the editor.
    let response = ui.interact(picture, ui.scope_id().with("cross-section"), Sense::CLICK);
    let painter = ui.painter_at(picture);
    let pen =
        Pen { painter: &painter, frame: Frame::fit(&section, picture), t: tokens(ui), units: state.prefs.units, fade };
    pen.section(&section, &hour, picture);
    if let Some((season, standing)) = &season {
        pen.flows(&section, &hour, flows::widest_w(season), picture);
        let beside = Rect::from_min_max(pos2(picture.right() + 16.0, rect.top()), rect.max);
        readings::readings_ui(ui, beside, season, at, *standing, state.prefs.units);
    }
    response.widget_info(|| {
        let text = in_words(&section, &hour, &scenario, state.prefs.units);
        egui::WidgetInfo::labeled(egui::Role::Image, true, text)
    });
    let pointed = response
        .interact_pointer_pos()
        .or(response.hover_pos())
        .map(|point| Part::at(&section, &pen.frame, &hour, point));
    if let Some(part) = pointed {
        part_ui(response, part, &part.figures(&hour, &scenario, state.prefs.units), state);
    }
    cursor::cursor_ui(ui, state, season.as_ref().map(|(s, _)| s), at);
}

/// What the part under the pointer tells; a click opens its section of the editor.
fn part_ui(response: Response, part: Part, figures: &[String], state: &mut State) {
    let section = part.section();
    if response.clicked() {
        state.sought = section;
    }
    let response = if section.is_some() { response.on_hover_cursor(CursorIcon::PointingHand) } else { response };
    response.on_hover_ui_at_pointer(|ui| {
        let t = tokens(ui);
        ui.label(RichText::new(part.title()).strong());
        for line in figures {
            ui.label(line);
        }
        if let Some(section) = section {
            ui.label(RichText::new(format!("Click to edit: {}", section.title())).size(SMALL).color(t.soft));
        }
    });
}

/// The drawing for those who cannot see it.
fn in_words(section: &Section, hour: &Hour, scenario: &Scenario, units: UnitSystem) -> String {
    let length = |m: f64| format::quantity(m, Quantity::Length, units, None);
    let size = format!("{} wide, {} high", length(section.width_m), length(section.height_m));
    let parts = [Part::Outdoors, Part::House, Part::Tent, Part::Heater, Part::Skin, Part::Ground];
    let shown = parts.iter().filter(|part| match part {
        Part::Tent => scenario.tent.present,
        Part::Heater => scenario.heater.present,
        _ => true,
    });
    let told: Vec<String> =
        shown.map(|part| format!("{}: {}", part.title(), part.figures(hour, scenario, units).join(", "))).collect();
    format!("Cross-section of the house, {size}. {}", told.join(". "))
}
