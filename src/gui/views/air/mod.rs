//! Air & damp: overheated, humid and wet hours, vents on the sunniest mild day, and what would change them.

mod figures;

use super::winter::choice;

use crate::format;
use crate::gui::board::{Season, Standing};
use crate::gui::plots::axis::Look;
use crate::gui::plots::{air_days, air_months};

use crate::gui::state::State;
use crate::gui::theme::{SMALL, semibold, tokens};
use crate::model::Zone;
use crate::season::plan::actual_zone;
use crate::units::{Quantity, UnitSystem};
use egui::{Align, Layout, RichText, Ui, vec2};

/// Width of the figures beside the plots.
const FIGURES: f32 = 236.0;
/// Width from which on months and days stand side by side.
const BOTH: f32 = 520.0;
/// Share of it that the months take.
const MONTHS: f32 = 0.4;
/// Room between two figures.
const GAP: f32 = 16.0;

/// What is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AirPlot {
    /// Hours by month; where there is room they always stand beside the days.
    #[default]
    Months,
    /// The sunniest mild day with the days round it.
    SunnyDays,
    /// The day of the time cursor with the days round it.
    CursorDays,
}

/// The view.
pub fn air_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let Some((season, standing)) = state.chosen_season().filter(|(s, _)| !s.is_empty()).map(|(s, at)| (s.clone(), at))
    else {
        ui.label(RichText::new("This scenario has no figures yet. Mend what is marked in the editor").color(t.soft));
        return;
    };
    let units = state.prefs.units;
    let name = state.document.draft.scenario().map(|s| format::short_name(&s.name)).unwrap_or_default();
    ui.add(egui::Label::new(finding(&name, &season, units)).truncate());
    let height = ui.available_height() - 4.0;
    let plots = ui.available_width() - FIGURES - GAP;
    let look = Look { t, units, cursor: state.hour_within(season.len()), height };
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = GAP;
        ui.scope(|ui| {
            if standing == Standing::Stale {
                ui.set_opacity(0.6);
            }
            if plots >= BOTH {
                let months = plots * MONTHS;
                panel(ui, months, height, |ui| {
                    ui.add_sized([months, TITLE], title());
                    air_months::months_ui(ui, &season, &look);
                });
                let days = [AirPlot::SunnyDays, AirPlot::CursorDays];
                panel(ui, plots - months - GAP, height, |ui| chosen_ui(ui, state, &season, &look, &days));
            } else {
                let all = [AirPlot::Months, AirPlot::SunnyDays, AirPlot::CursorDays];
                panel(ui, plots, height, |ui| chosen_ui(ui, state, &season, &look, &all));
            }
        });
        panel(ui, FIGURES, height, |ui| {
            egui::ScrollArea::vertical().id_salt("air figures").auto_shrink([false, false]).show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 1.0;
                figures::figures_ui(ui, state, &season, standing);
            });
        });
    });
}

/// Height of a title over a figure.
const TITLE: f32 = 20.0;

fn title() -> egui::Label {
    egui::Label::new(RichText::new("Hours by month").font(semibold(SMALL + 0.5))).halign(Align::Min)
}

fn panel(ui: &mut Ui, width: f32, height: f32, content: impl FnOnce(&mut Ui)) {
    ui.allocate_ui_with_layout(vec2(width, height), Layout::top_down(Align::Min), |ui| {
        ui.set_width(width);
        ui.spacing_mut().item_spacing.y = 2.0;
        content(ui);
    });
}

/// The figure that was chosen of these, under their names.
fn chosen_ui(ui: &mut Ui, state: &mut State, season: &Season, look: &Look, offered: &[AirPlot]) {
    let advice = season.run.summary.air_advice.as_ref();
    let there = |plot: &AirPlot| *plot != AirPlot::SunnyDays || advice.is_some();
    let offered: Vec<AirPlot> = offered.iter().copied().filter(there).collect();
    if !offered.contains(&state.air_plot)
        && let Some(first) = offered.first()
    {
        state.air_plot = *first;
    }
    ui.horizontal(|ui| {
        ui.set_height(TITLE);
        ui.spacing_mut().item_spacing.x = 8.0;
        ui.spacing_mut().button_padding.x = 0.0;
        for plot in offered {
            let name = match plot {
                AirPlot::Months => "Hours by month",
                AirPlot::SunnyDays => "Sunniest mild day",
                AirPlot::CursorDays => "At the cursor",
            };
            if choice(ui, name, state.air_plot == plot) {
                state.air_plot = plot;
            }
        }
    });
    let hour = match (state.air_plot, advice) {
        (AirPlot::Months, _) => {
            air_months::months_ui(ui, season, look);
            return;
        }
        (AirPlot::SunnyDays, Some(advice)) => advice.hour,
        _ => look.cursor,
    };
    let window = air_days::window(season, hour);
    let scenario = &season.inputs.scenario;
    let crop_in_tent = actual_zone(scenario.crop.zone, scenario) == Zone::Tent;
    // Another window is another plot, so that a zoom into one does not outlive it.
    let clicked = ui.push_id(window.start, |ui| air_days::days_ui(ui, season, &window, crop_in_tent, look)).inner;
    if let Some(hour) = clicked {
        state.hour = Some(hour);
    }
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
