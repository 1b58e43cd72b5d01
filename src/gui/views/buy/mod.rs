//! The best buy: measures with their prices, and which of them hold the crop for the least money over some winters.

mod found;
mod measure;
mod measures;

use crate::explore::{BestBuy, MOST_CANDIDATES};
use crate::format;
use crate::gui::fields::{Form, Spec, sentence, warning};
use crate::gui::handout::{Make, handout_ui};
use crate::gui::state::State;
use crate::gui::theme::{ROW, tokens};
use crate::model::{Candidate, Prices};
use crate::units::Quantity;
use egui::{Align, Label, Layout, RichText, Ui, vec2};
use std::sync::Arc;

/// What this view remembers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct BuyView {
    /// Measure whose particulars are open.
    open: Option<usize>,
    /// Whether every combination is listed.
    all: bool,
}

/// Widest that lists get: figures stay near their names.
const WIDEST: f32 = 900.0;
/// Money that is put in when a budget is first set.
const FIRST_BUDGET: f64 = 500.0;

/// The view.
pub fn buy_ui(ui: &mut Ui, state: &mut State) {
    let known = state.purchases(&ui.ctx().clone());
    let (grown, count) = match &known {
        Ok(Some((grown, count))) => (Some(grown), *count),
        _ => (None, 0),
    };
    asked_ui(ui, state, grown.map(|g| (g.working, count, g.failed.as_deref())));
    egui::ScrollArea::vertical().id_salt("best buy").auto_shrink([false, false]).show(ui, |ui| {
        ui.set_max_width((ui.available_width() - 8.0).min(WIDEST));
        ui.spacing_mut().item_spacing.y = 2.0;
        measures::measures_ui(ui, state);
        ui.add_space(8.0);
        match &known {
            _ if state.document.draft.study.candidates.is_empty() => {}
            Err(_) if ticked(state) == 0 => soft(ui, "Tick what may be bought"),
            Err(why) => warning(ui, &sentence(why)),
            Ok(None) => soft(ui, "This scenario has no figures yet. Mend what is marked in the editor"),
            Ok(Some((grown, _))) => match &grown.answer {
                None => soft(ui, "The first combinations are being worked out"),
                Some(combinations) => {
                    if grown.stale {
                        ui.set_opacity(0.5);
                    }
                    let study = &state.document.draft.study;
                    let (budget, winters) = (study.prices.budget, study.prices.winters);
                    let best = BestBuy::of(combinations, budget, winters);
                    let (table, study, units) = (Arc::clone(combinations), study.clone(), state.prefs.units);
                    let figures = move || -> Make {
                        Box::new(move || BestBuy::of(&table, budget, winters).figures(&study, units))
                    };
                    handout_ui(ui, state, "best buy", None, figures, |ui, state| {
                        found::found_ui(ui, state, &best, grown.working.is_some());
                    });
                }
            },
        }
    });
}

fn soft(ui: &mut Ui, text: &str) {
    ui.add(Label::new(RichText::new(text).color(tokens(ui).soft)).wrap());
}

/// How many measures are ticked.
fn ticked(state: &State) -> usize {
    state.document.draft.study.candidates.iter().filter(|c| c.ticked).count()
}

/// Budget and winters, how far it is, and the way to stop it.
fn asked_ui(ui: &mut Ui, state: &mut State, working: Option<(Option<usize>, usize, Option<&str>)>) {
    let t = tokens(ui);
    let name = state.document.draft.scenario().map(|s| format::short_name(&s.name)).unwrap_or_default();
    let count = ticked(state);
    let text = match count {
        0 => format!("{name}: which measures pay, and which of them hold the crop"),
        n if n > MOST_CANDIDATES => format!("{name}: {n} measures are ticked, {MOST_CANDIDATES} are the most"),
        _ => format!("{name}, with every combination of what is ticked below"),
    };
    ui.add(Label::new(text).truncate());
    let mut prices = state.document.draft.study.prices.clone();
    let size = vec2(ui.available_width(), ROW + 2.0);
    ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        let currency = prices.currency.clone();
        let mut form = Form::new(state.prefs.units, &currency, (&mut state.edits, &state.troubles), "prices", "");
        let mut limited = prices.budget.is_some();
        let switch = ui.checkbox(&mut limited, Prices::budget.label).on_hover_text(Prices::budget.help);
        if switch.changed() {
            prices.budget = limited.then_some(FIRST_BUDGET);
            form.note(Prices::budget.label, switch.id);
        }
        if let Some(budget) = prices.budget {
            let spec =
                Spec { key: "budget", label: "Budget", quantity: Quantity::Money, ..Spec::of(&Candidate::price) };
            if let Some(new) = form.cell(ui, &spec, budget, "Most to spend at once", 84.0) {
                prices.budget = Some(new);
            }
        }
        let over = if prices.budget.is_some() { format!("{currency} over") } else { "over".to_owned() };
        ui.label(RichText::new(over).color(t.soft));
        let spec = Spec::of(&Prices::winters);
        if let Some(new) = form.cell(ui, &spec, f64::from(prices.winters), Prices::winters.label, 40.0) {
            prices.winters = new.round() as u32;
        }
        ui.label(RichText::new(if prices.winters == 1 { "winter" } else { "winters" }).color(t.soft));
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let Some((working, count, failed)) = working else { return };
            match super::progress_ui(ui, working, count, failed) {
                Some(super::Press::Stop) => state.purchases.stop(),
                Some(super::Press::GoOn) => state.purchases.again(),
                None => {}
            }
        });
    });
    if prices != state.document.draft.study.prices {
        state.document.draft.study.prices = prices;
    }
}
