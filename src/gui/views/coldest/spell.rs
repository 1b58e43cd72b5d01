//! The worst spell: temperatures and heater output hour by hour, loads and margins, and the coldest spell, colder.

use super::fields::colder_ui;
use crate::figures::{self, Named};
use crate::format;
use crate::gui::board::Season;
use crate::gui::handout::{BUTTON, Make, handout_ui};
use crate::gui::nights::Answer;
use crate::gui::plots::axis::Look;
use crate::gui::plots::coldest::{Trace, coldest_ui as plots_ui, runs_standby, traces};
use crate::gui::plots::column::heading;
use crate::gui::plots::legend::{Sample, entry};
use crate::gui::plots::room;
use crate::gui::plots::rows::{row, row_in};
use crate::gui::state::State;
use crate::gui::theme::{SMALL, Tokens, tokens};
use crate::season::colder::{Bound, ColderSpell, MOST_K};
use crate::season::worst_spell::{StoreCourse, Strain};
use crate::units::{Quantity, UnitSystem};
use egui::{RichText, Ui, vec2};
use std::ops::Range;
use std::sync::Arc;

/// Width of the figures beside the plots.
const FIGURES: f32 = 216.0;

/// The answer as the state holds it, taken out of it for this frame.
pub fn ask(ui: &Ui, state: &mut State, season: &Season) -> (Option<Arc<ColderSpell>>, bool) {
    let by_k = state.document.draft.study.hard_night.colder_by_k;
    let answer = state.nights.colder(season, by_k, &state.catalogue, ui.ctx());
    (answer.shown().cloned(), matches!(answer, Answer::Fresh(_)))
}

/// One sentence that says what there is to see.
pub fn finding(name: &str, season: &Season, colder: Option<&ColderSpell>, units: UnitSystem) -> String {
    let s = &season.run.summary;
    let lowest = format::temperature(s.crop_zone_min_c, units);
    let bound = match colder.map(|c| c.bound) {
        Some(Bound::Kelvin(_)) => {
            let down_to = colder.and_then(|c| c.holds_down_to_c).unwrap_or(s.coldest_outdoor_c);
            format!("{} outdoors", format::temperature(down_to, units))
        }
        Some(Bound::Beyond) => format!("{} colder than this year", edge(units)),
        Some(Bound::Never) | None => String::new(),
    };
    match s.hours_below_crop_limit {
        0 if bound.is_empty() => format!("{name} holds at {lowest}"),
        0 => format!("{name} holds at {lowest}, and would down to {bound}"),
        n => {
            let only = if bound.is_empty() { String::new() } else { format!("; holds down to {bound}") };
            format!("{name} falls short for {}, down to {lowest}{only}", format::hours(n))
        }
    }
}

fn edge(units: UnitSystem) -> String {
    format::quantity(MOST_K, Quantity::TemperatureDifference, units, Some(0))
}

/// The question in the row above, and its answer in short.
pub fn controls_ui(ui: &mut Ui, state: &mut State, colder: Option<&ColderSpell>, fresh: bool) {
    let t = tokens(ui);
    colder_ui(ui, state);
    let Some(colder) = colder else { return };
    if !fresh {
        ui.set_opacity(0.5);
    }
    let lowest = format::temperature(colder.crop_air_min_c, state.prefs.units);
    let (text, colour) = match colder.holds {
        true => (format!("holds, lowest {lowest}"), t.ink),
        false => (format!("falls short, lowest {lowest}"), t.warn),
    };
    ui.add(egui::Label::new(RichText::new(text).size(SMALL + 0.5).color(colour)).truncate());
}

/// Plots and figures.
pub fn spell_ui(ui: &mut Ui, state: &mut State, season: &Season, colder: Option<&ColderSpell>, fresh: bool) {
    let t = tokens(ui);
    let units = state.prefs.units;
    let window = season.run.summary.worst_spell.surroundings(season.len());
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    let traces = traces(season, &window, colder, units, theme, &t);
    let height = room(ui.available_height(), 4.0);
    let width = ui.available_width() - FIGURES - 16.0;
    let cursor = state.hour_within(season.len());
    let name = state.document.draft.scenario().map(|s| s.name.clone()).unwrap_or_default();
    let down = egui::Layout::top_down(egui::Align::Min);
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 16.0;
        ui.allocate_ui_with_layout(vec2(width, height), down, |ui| {
            ui.set_width(width);
            let figures = || figures_of(&name, season, &window, units);
            handout_ui(ui, state, "coldest spell", None, figures, |ui, state| {
                // Rows of a wrapped legend are as high as controls unless told so before it begins.
                ui.scope(|ui| {
                    ui.spacing_mut().interact_size.y = 18.0;
                    legend_ui(ui, &traces, runs_standby(season), &t);
                });
                let height = (ui.available_height() - 4.0).max(110.0);
                if let Some(hour) = plots_ui(ui, season, &traces, &window, &Look { t, units, cursor, height }) {
                    state.hour = Some(hour);
                }
            });
        });
        ui.allocate_ui_with_layout(vec2(FIGURES, height), down, |ui| {
            ui.set_width(FIGURES);
            egui::ScrollArea::vertical().id_salt("design load").show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 1.0;
                loads_ui(ui, season, units, &t);
                if let Some(colder) = colder {
                    ui.scope(|ui| {
                        if !fresh {
                            ui.set_opacity(0.5);
                        }
                        colder_figures_ui(ui, colder, units, &t);
                    });
                }
                worst_ui(ui, season, units);
            });
        });
    });
}

fn figures_of(name: &str, season: &Season, window: &Range<usize>, units: UnitSystem) -> Make {
    let (name, season, window) = (name.to_owned(), season.clone(), window.clone());
    Box::new(move || figures::spell(Named { name: &name, run: &season.run, climate: &season.climate }, window, units))
}

fn legend_ui(ui: &mut Ui, traces: &[Trace], standby: bool, t: &Tokens) {
    ui.horizontal_wrapped(|ui| {
        ui.set_max_width(ui.available_width() - BUTTON.x);
        ui.spacing_mut().item_spacing = vec2(6.0, 0.0);
        for trace in traces {
            entry(ui, trace.sample, trace.colour, trace.name, 160.0);
        }
        entry(ui, Sample::Fine, t.warn, "Crop limit", 160.0);
        if standby {
            entry(ui, Sample::Dashed, t.ink, "Standby heater", 160.0);
        }
    });
}

fn loads_ui(ui: &mut Ui, season: &Season, units: UnitSystem, t: &Tokens) {
    let s = &season.run.summary;
    let at = |name: &str, t_c: f64| format!("{name}, {}", format::temperature(t_c, units));
    let steady = "Steady load without sun, night covers drawn, tent shut";
    heading(ui, "Design load", "");
    row(ui, &at("99 %", s.design_outdoor_c_99), &format::power(s.design_load_w_99), steady);
    row(ui, &at("99.6 %", s.design_outdoor_c_99_6), &format::power(s.design_load_w_99_6), steady);
    row(ui, &at("Coldest hour", s.coldest_outdoor_c), &format::power(s.design_load_w_coldest), steady);
    if season.inputs.scenario.heater.present {
        row(ui, "Rated output", &format::power(s.rated_heater_w), "");
        for (label, margin_w, hover) in [
            ("Margin at 99.6 %", s.heater_margin_w_99_6, "Rated output less the design load at 99.6 %"),
            ("Margin, largest hour", s.heater_margin_w_largest_hour, "Rated output less the heater's own largest hour"),
        ] {
            let margin_w = margin_w.unwrap_or(0.0);
            let colour = if margin_w > 0.5 { t.ink } else { t.warn };
            row_in(ui, label, &signed_power(margin_w), colour, hover);
        }
    }
    let next = s.next_heater_w.map_or("–".to_owned(), format::power);
    row(ui, "Next size", &next, "Smallest on sale with a tenth over the design load at 99.6 % (common practice)");
    ui.add_space(6.0);
}

fn signed_power(watts: f64) -> String {
    match watts {
        w if w.abs() < 0.5 => format::power(0.0),
        w if w < 0.0 => format::power(w),
        w => format!("+{}", format::power(w)),
    }
}

fn colder_figures_ui(ui: &mut Ui, colder: &ColderSpell, units: UnitSystem, t: &Tokens) {
    let by = format::quantity(colder.colder_by_k, Quantity::TemperatureDifference, units, Some(1));
    heading(ui, &format!("{by} colder"), "");
    let temperature = |t_c: f64| format::temperature(t_c, units);
    row(ui, "Outdoors down to", &temperature(colder.outdoor_min_c - colder.colder_by_k), "In the three coldest days");
    let colour = if colder.holds { t.ink } else { t.warn };
    row_in(ui, "Lowest crop air", &temperature(colder.crop_air_min_c), colour, "");
    let needed = colder.heater_needed_w.map_or("–".to_owned(), format::power);
    row(ui, "Heater needed", &needed, "Smallest rated output that keeps the crop limit, the standby heater as it is");
    row(ui, "At full output", &format::hours(colder.hours_at_full_output), "");
    let bound = match colder.bound {
        Bound::Kelvin(_) => colder.holds_down_to_c.map_or("–".to_owned(), temperature),
        Bound::Beyond => format!("over {} colder", edge(units)),
        Bound::Never => "no cold spell".to_owned(),
    };
    row(ui, "Holds down to", &bound, "Coldest outdoor hour with which the crop limit is still kept");
    ui.add_space(6.0);
}

fn worst_ui(ui: &mut Ui, season: &Season, units: UnitSystem) {
    let worst = &season.run.summary.worst_spell;
    heading(ui, &format!("Worst {} hours", worst.hours), "");
    let by = match worst.by {
        Strain::CropLimit => "below crop limit",
        Strain::Setpoint => "below setpoint",
        Strain::Heat => "most heat",
        Strain::CropAir => "coldest crop air",
    };
    row(ui, "From", &format::stamp(worst.starts_at), "");
    row(ui, "Worst by", by, "What decides: the crop limit, else the setpoint at full output, else heat, else cold");
    row(ui, "Outdoors down to", &format::temperature(worst.outdoor_min_c, units), "");
    row(ui, "Lowest crop air", &format::temperature(worst.crop_air_min_c, units), "");
    row(ui, "Heat", &format!("{} kWh", format::number(worst.heat_kwh, 0)), "");
    let held = "Heat above the crop limit: at its start, and at its least";
    let course =
        |c: StoreCourse| format!("{} → {} kWh", format::number(c.first_kwh, 1), format::number(c.least_kwh, 1));
    row(ui, "Water holds", &worst.water.map_or("–".to_owned(), course), held);
    row(ui, "Floors hold", &course(worst.floor), held);
}
