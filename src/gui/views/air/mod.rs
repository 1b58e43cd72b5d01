//! Air & damp: overheated, humid and wet hours, vents on the sunniest mild day, and what would change them.

mod figures;
mod panels;

pub use panels::AirPlot;

use crate::format;
use crate::gui::board::{Season, Standing};
use crate::gui::plots::axis::Look;
use crate::gui::plots::room;
use crate::gui::state::State;
use crate::gui::theme::tokens;
use crate::units::{Quantity, UnitSystem};
use egui::{Align, Layout, RichText, Ui, vec2};
use panels::{Scene, months_title_ui};

/// Width of the figures beside the plots.
const FIGURES: f32 = 236.0;
/// Width from which on months and days stand side by side.
const BOTH: f32 = 520.0;
/// Share of it that the months take.
const MONTHS: f32 = 0.4;
/// Room between two figures.
const GAP: f32 = 16.0;

/// The view.
pub fn air_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let Some((season, standing)) = state.chosen_season().filter(|(s, _)| !s.is_empty()).map(|(s, at)| (s.clone(), at))
    else {
        ui.label(RichText::new("This scenario has no figures yet. Mend what is marked in the editor").color(t.soft));
        return;
    };
    let units = state.prefs.units;
    let name = state.document.draft.scenario().map(|s| s.name.clone()).unwrap_or_default();
    ui.add(egui::Label::new(finding(&format::short_name(&name), &season, units)).truncate());
    let height = room(ui.available_height(), 4.0);
    let plots = ui.available_width() - FIGURES - GAP;
    let look = Look { t, units, cursor: state.hour_within(season.len()), height };
    let scene = Scene { name: &name, season: &season, look };
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = GAP;
        ui.scope(|ui| {
            if standing == Standing::Stale {
                ui.set_opacity(0.6);
            }
            if plots >= BOTH {
                let months = plots * MONTHS;
                panel(ui, months, height, |ui| scene.months_ui(ui, state, |ui, _| months_title_ui(ui)));
                let days = [AirPlot::SunnyDays, AirPlot::CursorDays];
                panel(ui, plots - months - GAP, height, |ui| scene.chosen_ui(ui, state, &days));
            } else {
                let all = [AirPlot::Months, AirPlot::SunnyDays, AirPlot::CursorDays];
                panel(ui, plots, height, |ui| scene.chosen_ui(ui, state, &all));
            }
        });
        panel(ui, FIGURES, height, |ui| {
            egui::ScrollArea::vertical().id_salt("air figures").auto_shrink([false, false]).show(ui, |ui| {
                // The scroll bar floats over the rightmost points.
                ui.set_max_width(ui.available_width() - 8.0);
                ui.spacing_mut().item_spacing.y = 1.0;
                figures::figures_ui(ui, state, &season, standing);
            });
        });
    });
}

fn panel(ui: &mut Ui, width: f32, height: f32, content: impl FnOnce(&mut Ui)) {
    ui.allocate_ui_with_layout(vec2(width, height), Layout::top_down(Align::Min), |ui| {
        ui.set_width(width);
        ui.spacing_mut().item_spacing.y = 2.0;
        content(ui);
    });
}

/// One sentence that says what there is to see.
fn finding(name: &str, season: &Season, units: UnitSystem) -> String {
    let s = &season.run.summary;
    let mut text = match s.air_advice {
        Some(advice) => {
            let rise = |k| format::quantity(k, Quantity::TemperatureDifference, units, Some(1));
            let sheds = advice.rise_as_it_is_k <= advice.allowed_rise_k;
            let verdict = if sheds { "sheds a sunny noon" } else { "is too warm at a sunny noon" };
            format!(
                "{name} {verdict}: {} over outdoors, {} allowed",
                rise(advice.rise_as_it_is_k),
                rise(advice.allowed_rise_k)
            )
        }
        None => format!("{name} has no sun to shed"),
    };
    if s.hours_above_35_c > 0 {
        text += &format!("; too hot for {}", format::hours(s.hours_above_35_c));
    }
    text + &format!("; crop humid for {}", format::hours(s.damp.hours_crop_humidity_90))
}
