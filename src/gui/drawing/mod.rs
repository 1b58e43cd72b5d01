//! The house to scale at the hour under the time cursor, with its readings and the cursor itself.

mod paint;
mod readings;

use super::board::{Season, Standing};
use super::marks::{self, Icon};
use super::state::State;
use super::theme::tokens;
use crate::format;
use crate::geometry::section;
use crate::units::Quantity;
use egui::{Rect, Sense, Ui, pos2, vec2};
use paint::{Frame, Hour, Pen};

/// Width of the readings beside the drawing.
const READINGS: f32 = 190.0;

/// The drawing and the time cursor.
pub fn drawing_ui(ui: &mut Ui, state: &mut State) {
    let height = (ui.available_height() * 0.36).clamp(176.0, 460.0);
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    let Some(scenario) = state.document.draft.scenario() else { return };
    let section = section::section(scenario);
    let rated = [scenario.heater.rated_w, scenario.standby.rated_w];
    let len = state.chosen_season().map_or(0, |(season, _)| season.len());
    let hour = state.hour_within(len);
    let season = state.chosen_season().filter(|(s, _)| !s.is_empty()).map(|(s, standing)| (s.clone(), standing));
    let at = season.as_ref().map_or_else(Hour::default, |(s, _)| hour_of(s, hour, rated));
    let fade = if matches!(season, Some((_, Standing::Stale))) { 0.6 } else { 1.0 };
    let picture = Rect::from_min_max(rect.min, pos2(rect.right() - READINGS, rect.bottom()));
    let painter = ui.painter_at(picture);
    let pen =
        Pen { painter: &painter, frame: Frame::fit(&section, picture), t: tokens(ui), units: state.prefs.units, fade };
    pen.section(&section, &at, picture);
    if let Some((season, standing)) = &season {
        let beside = Rect::from_min_max(pos2(picture.right() + 16.0, rect.top()), rect.max);
        readings::readings_ui(ui, beside, season, hour, *standing, state.prefs.units);
    }
    response.widget_info(|| {
        let length = |m: f64| format::quantity(m, Quantity::Length, state.prefs.units, None);
        let size = format!("{} wide, {} high", length(section.width_m), length(section.height_m));
        egui::WidgetInfo::labeled(egui::Role::Image, true, format!("Cross-section of the house, {size}"))
    });
    cursor_ui(ui, state, season.as_ref().map(|(s, _)| s), hour);
}

fn hour_of(season: &Season, hour: usize, rated: [f64; 2]) -> Hour {
    let h = &season.run.hours;
    let get = |column: &[f64]| column.get(hour).copied().filter(|v| v.is_finite());
    let weather = h.record.get(hour).and_then(|record| season.climate.hours.get(*record));
    let share = |column: &[f64], rated: f64| get(column).map_or(0.0, |w| if rated > 0.0 { w / rated } else { 0.0 });
    Hour {
        outdoor_c: get(&h.outdoor_c),
        house_c: get(&h.house_air_c),
        tent_c: get(&h.tent_air_c),
        house_water_c: get(&h.house_water_c),
        tent_water_c: get(&h.tent_water_c),
        heater_share: share(&h.heater_w, rated[0]),
        standby_share: share(&h.standby_w, rated[1]),
        vent_opening: get(&h.vent_opening).unwrap_or(0.0),
        sun: weather.filter(|w| w.global_w_per_m2 > 5.0).map(|w| w.sun),
    }
}

/// The time cursor: a slider over the season with a step to each side.
fn cursor_ui(ui: &mut Ui, state: &mut State, season: Option<&Season>, hour: usize) {
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
                at = super::state::coldest_hour(season);
            }
            if at != hour {
                state.hour = Some(at.min(last));
            }
        });
    });
}
