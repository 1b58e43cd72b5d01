//! The entries of what is asked about hard nights.

use crate::format;
use crate::gui::board::Season;
use crate::gui::fields::{Spec, left_by_escape};
use crate::gui::marks::{Icon, icon_button_sized};
use crate::gui::state::State;
use crate::gui::theme::{SMALL, tokens};
use crate::model::{CutStarts, HardNight};
use crate::units::typed;
use egui::{DragValue, RichText, Ui, vec2};

/// Size of the small way back to the default.
const BACK: egui::Vec2 = vec2(18.0, 22.0);

fn label(ui: &mut Ui, text: &str) -> egui::Response {
    ui.label(RichText::new(text).size(SMALL + 0.5).color(tokens(ui).soft))
}

/// When the mains fail: typed as a date, or dragged by the hour. `start` is the hour of the season on show.
pub fn start_ui(ui: &mut Ui, state: &mut State, season: &Season, start: usize) {
    let name = label(ui, "from");
    let (shown, typed) = (season.clone(), season.clone());
    let mut hour = start as f64;
    let field = DragValue::new(&mut hour)
        .speed(0.25)
        .range(0.0..=season.len().saturating_sub(1) as f64)
        .update_while_editing(false)
        .custom_formatter(move |v, _| begins(&shown, v as usize))
        .custom_parser(move |text| hour_named(&typed, text).map(|hour| hour as f64));
    let mut response = ui.add_sized(vec2(104.0, 24.0), field).labelled_by(name.id);
    left_by_escape(&mut response);
    let response = response
        .accessible_name("Power cut from")
        .on_hover_text(format!("{}\nDrag, or type a date such as “9 Jan 18:00”", HardNight::cut_starts.help));
    let hour = hour.round() as usize;
    let asked = &mut state.document.draft.study.hard_night;
    if response.changed()
        && hour != start
        && let Some(at) = season.stamp(hour)
    {
        asked.cut_starts = CutStarts::At { month: at.month, day: at.day, hour: at.hour - 1 };
        state.edits.note("power cut start", response.id);
    }
    let asked = &mut state.document.draft.study.hard_night;
    let chosen = asked.cut_starts != CutStarts::Coldest;
    let text = "Back to the coldest twelve hours";
    let back = ui.add_enabled_ui(chosen, |ui| icon_button_sized(ui, Icon::Reset, text, BACK)).inner;
    if back.clicked() {
        asked.cut_starts = CutStarts::Coldest;
        state.edits.note("power cut start", response.id);
    }
}

/// How long they stay away.
pub fn hours_ui(ui: &mut Ui, state: &mut State) {
    let input = &HardNight::cut_hours;
    let mut hours = state.document.draft.study.hard_night.cut_hours;
    let name = label(ui, "for");
    let field =
        DragValue::new(&mut hours).speed(0.1).range(input.min..=input.max).update_while_editing(false).suffix(" h");
    let mut response = ui.add_sized(vec2(56.0, 24.0), field).labelled_by(name.id);
    left_by_escape(&mut response);
    let response = response.accessible_name(input.label).on_hover_text(input.help);
    if response.changed() && hours != state.document.draft.study.hard_night.cut_hours {
        state.document.draft.study.hard_night.cut_hours = hours;
        state.edits.note("hours without mains", response.id);
    }
}

/// How much colder than this year's the coldest spell is taken.
pub fn colder_ui(ui: &mut Ui, state: &mut State) {
    let spec = Spec::of(&HardNight::colder_by_k);
    let units = state.prefs.units;
    let unit = spec.quantity.unit(units);
    let held = state.document.draft.study.hard_night.colder_by_k;
    let mut shown = unit.shown(held);
    let name = label(ui, "colder by");
    let field = DragValue::new(&mut shown)
        .speed(0.1)
        .range(unit.shown(spec.min)..=unit.shown(spec.max))
        .update_while_editing(false)
        .custom_formatter(|v, _| format::number(v, 1))
        .custom_parser(move |text| typed(text, spec.quantity, units).ok().map(|k| unit.shown(k)))
        .suffix(format!(" {}", unit.symbol));
    let mut response = ui.add_sized(vec2(72.0, 24.0), field).labelled_by(name.id);
    left_by_escape(&mut response);
    let response = response.accessible_name(spec.label).on_hover_text(format!("{}\n{}", spec.help, spec.source));
    if response.changed() {
        // To a tenth of what is shown, so that the answer belongs to the number on screen.
        let value = unit.value((shown * 10.0).round() / 10.0).clamp(spec.min, spec.max);
        if (value - held).abs() > 1e-9 {
            state.document.draft.study.hard_night.colder_by_k = value;
            state.edits.note("colder by", response.id);
        }
    }
}

/// "9 Jan 18:00", where an hour of the season begins.
fn begins(season: &Season, hour: usize) -> String {
    let at = season.stamp(hour);
    at.map_or_else(String::new, |at| format!("{} {:02}:00", format::day(at), at.hour.saturating_sub(1)))
}

/// The hour of the season that begins as "9 Jan 18:00" says; hour and minutes may be left out.
fn hour_named(season: &Season, text: &str) -> Option<usize> {
    let mut words = text.split_whitespace();
    let day: u32 = words.next()?.trim_end_matches('.').parse().ok()?;
    let month = words.next()?.to_lowercase();
    let month = (1..=12).find(|m| month.starts_with(&format::month(*m).to_lowercase()))?;
    let hour = words.next().map_or(Some(0), |clock| clock.split(':').next()?.parse::<u32>().ok())?;
    (0..season.len()).find(|k| season.stamp(*k).is_some_and(|at| (at.month, at.day, at.hour) == (month, day, hour + 1)))
}
