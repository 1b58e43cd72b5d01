//! The answer: what to buy, all that holds the crop by what it costs, and what the next money brings.

use crate::explore::{BestBuy, Offer, Step};
use crate::format;
use crate::gui::cut::cut;
use crate::gui::handout::BUTTON;
use crate::gui::marks;
use crate::gui::plots::column::heading;
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, Tokens, regular, semibold, tokens};
use crate::model::Study;
use crate::season::buying::Payback;
use egui::{Align2, Color32, Label, RichText, Sense, Stroke, Ui, pos2, vec2};

/// Rows that are listed at first.
const ROWS: usize = 6;
/// Height of a row.
const HEIGHT: f32 = 22.0;
/// Width of a column of figures.
const COLUMN: f32 = 78.0;
/// Room for the mark of the best.
const MARK: f32 = 16.0;

/// All of it.
pub fn found_ui(ui: &mut Ui, state: &mut State, best: &BestBuy, working: bool) {
    // The button of the handout stands beside it, at the right of all of it.
    ui.allocate_exact_size(vec2(ui.available_width(), 0.0), Sense::hover());
    ui.set_max_width(ui.available_width() - BUTTON.x - 2.0);
    let t = tokens(ui);
    let study = state.document.draft.study.clone();
    verdict_ui(ui, best, &study, state, working);
    let money = |amount: f64| format::money(amount, &study.prices.currency);
    let units = state.prefs.units;
    let over = format!("in {}", winters(best.winters));
    let all = state.buy_view.all;
    let cells = |offer: &Offer| {
        let lowest = format::temperature(offer.season.crop_zone_min_c, units);
        [money(offer.buying), money(offer.running), money(offer.total), lowest].map(|text| (text, t.ink))
    };
    let list = |ui: &mut Ui, title: &str, offers: &[Offer], starred: bool| {
        if offers.is_empty() {
            return;
        }
        ui.add_space(8.0);
        head_ui(ui, &format!("{title} ({})", offers.len()), &["to buy", "a winter", &over, "lowest"], &t);
        for (place, offer) in offers.iter().enumerate().take(if all { usize::MAX } else { ROWS }) {
            let said = if starred { format!("{}. ", place + 1) } else { String::new() };
            row_ui(ui, &offer.combination.names(&study), &said, &cells(offer), starred && place == 0, &t);
        }
    };
    list(ui, "Holds the crop", &best.ranked, true);
    list(ui, "Holds it too, beyond the budget", &best.beyond_budget, false);
    list(ui, "Does not hold the crop", &best.short, false);
    let longest = best.ranked.len().max(best.beyond_budget.len()).max(best.short.len());
    if longest > ROWS {
        let text = if all { "Show the first only" } else { "Show all" };
        if ui.button(text).clicked() {
            state.buy_view.all = !all;
        }
    }
    left_out_ui(ui, best, &study, state, &t);
    steps_ui(ui, &best.steps, &study, &t);
}

fn winters(count: u32) -> String {
    if count == 1 { "one winter".to_owned() } else { format!("{count} winters") }
}

fn verdict_ui(ui: &mut Ui, best: &BestBuy, study: &Study, state: &State, working: bool) {
    let t = tokens(ui);
    let holds = best.best().is_some();
    for (place, sentence) in best.verdict(study, state.prefs.units).into_iter().enumerate() {
        let sentence = if working && place == 0 { format!("So far. {sentence}") } else { sentence };
        let colour = if holds || working { t.ink } else { t.warn };
        let font = if place == 0 { semibold(BODY) } else { regular(BODY) };
        let colour = if place == 0 { colour } else { t.ink };
        ui.add(Label::new(RichText::new(sentence).font(font).color(colour)).wrap());
    }
}

fn head_ui(ui: &mut Ui, title: &str, columns: &[&str], t: &Tokens) {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT), Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, title));
    ui.painter().text(rect.left_center(), Align2::LEFT_CENTER, title, semibold(BODY), t.ink);
    for (place, text) in columns.iter().rev().enumerate() {
        let right = pos2(rect.right() - place as f32 * COLUMN, rect.center().y);
        ui.painter().text(right, Align2::RIGHT_CENTER, *text, regular(SMALL), t.soft);
    }
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.hairline));
}

fn row_ui(ui: &mut Ui, names: &str, rank: &str, cells: &[(String, Color32)], best: bool, t: &Tokens) {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT), Sense::hover());
    let painter = ui.painter();
    if best {
        marks::paint_best(painter, pos2(rect.left() + 6.0, rect.center().y), t.accent);
    }
    let font = if best { semibold(SMALL + 0.5) } else { regular(SMALL + 0.5) };
    let room = rect.width() - MARK - cells.len() as f32 * COLUMN + 8.0;
    let galley = cut(painter, names, font, t.ink, room);
    let elided = galley.elided;
    painter.galley(pos2(rect.left() + MARK, rect.center().y - galley.size().y / 2.0), galley, t.ink);
    for (place, (text, colour)) in cells.iter().rev().enumerate() {
        let right = pos2(rect.right() - place as f32 * COLUMN, rect.center().y);
        painter.text(right, Align2::RIGHT_CENTER, text, regular(SMALL + 0.5), *colour);
    }
    let said = cells.iter().map(|(text, _)| text.as_str()).collect::<Vec<_>>().join(", ");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, format!("{rank}{names}: {said}")));
    if elided {
        response.on_hover_text(names);
    }
}

/// Combinations without a result, by their reasons.
fn left_out_ui(ui: &mut Ui, best: &BestBuy, study: &Study, state: &State, t: &Tokens) {
    let Some(first) = best.left_out.first() else { return };
    let why = first.season.as_ref().err().map_or(String::new(), |refusal| refusal.text(state.prefs.units));
    let count = format::number(best.left_out.len() as f64, 0);
    let text = format!("{count} left out; the first, {}: {why}", first.names(study));
    ui.add_space(4.0);
    ui.add(Label::new(RichText::new(text).size(SMALL).color(t.warn)).wrap());
}

/// What each further unit of money brings.
fn steps_ui(ui: &mut Ui, steps: &[Step], study: &Study, t: &Tokens) {
    if steps.len() < 2 {
        return;
    }
    let currency = &study.prices.currency;
    ui.add_space(10.0);
    heading(ui, "What the next money brings", "");
    let each = format!("per {}", format::with_currency("1", currency));
    head_ui(ui, "From the cheapest to buy on", &["more to buy", "less to run", &each, "paid back"], t);
    for (place, step) in steps.iter().enumerate() {
        let colour = if step.within_budget { t.ink } else { t.soft };
        let dash = || "–".to_owned();
        let saved = if place == 0 { dash() } else { format::money(step.saving_per_winter, currency) };
        let share = step.saving_per_unit().filter(|_| place > 0);
        let back = match step.payback() {
            _ if place == 0 => dash(),
            Payback::Winters(winters) => format!("{} winters", format::number(winters, 1)),
            Payback::AtOnce => "at once".to_owned(),
            _ => "never".to_owned(),
        };
        let share = share.map_or_else(dash, |share| format::with_currency(&format::number(share, 2), currency));
        let cells = [format::money(step.extra_buying, currency), saved, share, back].map(|text| (text, colour));
        let beyond = if step.within_budget { "" } else { " (beyond the budget)" };
        row_ui(ui, &format!("{}{beyond}", step.offer.combination.names(study)), "", &cells, false, t);
    }
}
