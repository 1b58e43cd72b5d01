//! A sweep: an input moved over a range, for all scenarios on show; or two of the chosen one, as a map.

mod asked;
mod drawn;

use crate::explore::{Measured, Refusal};
use crate::format;
use crate::gui::fields::{sentence, warning};
use crate::gui::plots::map::Map;
use crate::gui::state::State;
use crate::gui::streamed::Grown;
use crate::gui::sweeps::SweptSeasons;
use crate::gui::theme::{BODY, ROW, SMALL, tokens};
use crate::gui::views::choice;
use crate::units::UnitSystem;
use egui::{Align, Label, Layout, RichText, Ui, vec2};
use std::sync::{Arc, Weak};

/// What this view remembers.
#[derive(Default)]
pub struct SweepView {
    /// What is drawn.
    pub measured: Measured,
    /// Text typed in the search for inputs.
    search: String,
    map: Option<MapOf>,
}

/// The map drawn last, and of what.
struct MapOf {
    seasons: Weak<SweptSeasons>,
    measured: Measured,
    units: UnitSystem,
    map: Option<Arc<Map>>,
}

/// The view.
pub fn sweep_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let swept = state.swept(&ui.ctx().clone());
    ui.add(Label::new(finding(state, &swept)).truncate());
    asked::asked_ui(ui, state);
    let (grown, count) = match swept {
        Ok(Some(known)) => known,
        Ok(None) => {
            let text = "No scenario on show has figures yet. Show one by the eye on its card, or mend what is marked";
            ui.add(Label::new(RichText::new(text).color(t.soft)).wrap());
            return;
        }
        Err(why) => {
            warning(ui, &sentence(&why));
            return;
        }
    };
    measured_ui(ui, state, &grown, count);
    let Some(known) = grown.answer.clone() else {
        ui.label(RichText::new("The first points are being worked out").color(t.soft));
        return;
    };
    let remarks = remarks(&known, grown.working.is_some(), state.prefs.units);
    if grown.stale {
        ui.set_opacity(0.5);
    }
    let rows = if remarks.is_empty() { 0.0 } else { 20.0 * remarks.len() as f32 };
    let height = (ui.available_height() - rows - 8.0).max(160.0);
    match known.axes.len() {
        1 => drawn::courses_ui(ui, state, &known, height),
        _ => drawn::map_ui(ui, state, &known, height),
    }
    for remark in remarks {
        ui.add(Label::new(RichText::new(remark).size(SMALL).color(t.soft)).truncate());
    }
}

/// One sentence that says what is asked.
fn finding(state: &State, swept: &Result<Option<(Grown<SweptSeasons>, usize)>, String>) -> String {
    let known = match swept {
        Ok(Some((grown, _))) => grown.answer.as_ref(),
        _ => None,
    };
    let Some(known) = known else { return "What a winter comes to when an input is moved".to_owned() };
    let measured = state.sweep_view.measured.name();
    match (known.axes.as_slice(), known.study.scenarios.first()) {
        ([axis], _) => format!("{measured} of every scenario on show, by {}", axis.input.label),
        (_, Some(s)) => format!("{measured} of {}, along lines of equal value", format::short_name(&s.name)),
        _ => measured.to_owned(),
    }
}

/// What is drawn, how far it is, and the way to stop it.
fn measured_ui(ui: &mut Ui, state: &mut State, grown: &Grown<SweptSeasons>, count: usize) {
    ui.allocate_ui_with_layout(vec2(ui.available_width(), ROW), Layout::left_to_right(Align::Center), |ui| {
        for measured in Measured::ALL {
            if choice(ui, measured.name(), state.sweep_view.measured == measured, BODY) {
                state.sweep_view.measured = measured;
            }
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            match super::progress_ui(ui, grown.working, count, grown.failed.as_deref()) {
                Some(super::Press::Stop) => state.sweeps.stop(),
                Some(super::Press::GoOn) => state.sweeps.again(),
                None => {}
            }
        });
    });
}

/// What was left out, and what makes no difference.
fn remarks(known: &SweptSeasons, working: bool, units: UnitSystem) -> Vec<String> {
    let mut remarks = vec!["A ring marks where a scenario stands now".to_owned()];
    let refused: Vec<&Refusal> = known.sweep.points.iter().filter_map(|point| point.season.as_ref().err()).collect();
    if let Some(first) = refused.first() {
        let number = format::number(refused.len() as f64, 0);
        remarks.push(format!("{number} left out; the first: {}", first.text(units)));
    }
    let flat: Vec<String> = (0..known.ids.len())
        .filter(|at| !working && known.sweep.is_flat(*at))
        .filter_map(|at| Some(format::short_name(&known.study.scenarios.get(at)?.name)))
        .collect();
    if !flat.is_empty() {
        remarks.push(format!("Makes no difference to {}", flat.join(", ")));
    }
    remarks
}
