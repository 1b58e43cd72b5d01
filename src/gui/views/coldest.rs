//! Coldest nights: the coldest spell, the design load, the power cut.

use crate::figures::{self, Named};
use crate::format;
use crate::gui::board::{Season, Standing};
use crate::gui::handout::{BUTTON, Make, handout_ui};
use crate::gui::plots::axis::Look;
use crate::gui::plots::coldest::{Trace, coldest_ui as plots_ui, traces, window};
use crate::gui::plots::legend::{Sample, entry};
use crate::gui::plots::power_cut;
use crate::gui::state::State;
use crate::gui::theme::{Tokens, tokens};
use crate::units::UnitSystem;
use egui::{RichText, Ui, vec2};
use std::ops::Range;

/// Width of the figures beside the plots.
const FIGURES: f32 = 216.0;

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
    ui.add(egui::Label::new(finding(&name, &season, units)).truncate());
    let window = window(&season);
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    let traces = traces(&season, &window, units, theme, &t);
    let height = ui.available_height() - 4.0;
    let width = ui.available_width() - FIGURES - 20.0;
    let cursor = state.hour_within(season.len());
    if standing == Standing::Stale {
        ui.set_opacity(0.6);
    }
    let down = egui::Layout::top_down(egui::Align::Min);
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 20.0;
        ui.allocate_ui_with_layout(vec2(width, height), down, |ui| {
            ui.set_width(width);
            let figures = || figures_of(&name, &season, &window, units);
            handout_ui(ui, state, "coldest spell", None, figures, |ui, state| {
                legend_ui(ui, &traces, &t);
                let height = (ui.available_height() - 4.0).max(120.0);
                if let Some(hour) = plots_ui(ui, &season, &traces, &window, &Look { t, units, cursor, height }) {
                    state.hour = Some(hour);
                }
            });
        });
        ui.allocate_ui_with_layout(vec2(FIGURES, height), down, |ui| {
            ui.set_width(FIGURES);
            egui::ScrollArea::vertical().id_salt("design load").show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 1.0;
                let water = season.inputs.scenario.water.present;
                power_cut::figures_ui(ui, &season.run.summary, units, water);
            });
        });
    });
}

fn figures_of(name: &str, season: &Season, window: &Range<usize>, units: UnitSystem) -> Make {
    let (name, season, window) = (name.to_owned(), season.clone(), window.clone());
    Box::new(move || figures::spell(Named { name: &name, run: &season.run, climate: &season.climate }, window, units))
}

fn legend_ui(ui: &mut Ui, traces: &[Trace], t: &Tokens) {
    ui.horizontal_wrapped(|ui| {
        ui.set_max_width(ui.available_width() - BUTTON.x);
        ui.spacing_mut().item_spacing = vec2(6.0, 0.0);
        for trace in traces {
            let sample = if trace.dashed { Sample::Dashed } else { Sample::Line };
            entry(ui, sample, trace.colour, trace.name, 160.0);
        }
        entry(ui, Sample::Dashed, t.warn, "Crop limit", 160.0);
    });
}

/// One sentence that says what there is to see.
fn finding(name: &str, season: &Season, units: UnitSystem) -> String {
    let s = &season.run.summary;
    let outdoors = format!("{} outdoors", format::temperature(s.coldest_outdoor_c, units));
    match s.hours_below_crop_limit {
        0 => format!(
            "{name} holds: never below {} round the crop, with {outdoors}",
            format::temperature(s.crop_zone_min_c, units)
        ),
        n => format!(
            "{name} falls short for {}: down to {} round the crop, crop limit {}",
            format::hours(n),
            format::temperature(s.crop_zone_min_c, units),
            format::temperature(s.crop_limit_c, units)
        ),
    }
}
