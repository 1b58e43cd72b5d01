//! The list of measures: tick, name, price, life, and the way to the particulars of each.

use super::measure::{KINDS, particulars_ui, usual};
use crate::gui::fields::{Form, Spec};
use crate::gui::marks::{Icon, icon_button};
use crate::gui::state::State;
use crate::gui::theme::{ROW, SMALL, Tokens, tokens};
use crate::model::{Candidate, CandidateChange, Measure, Scenario};
use crate::units::{Quantity, UnitSystem};
use egui::{Align, Label, Layout, RichText, TextEdit, Ui, vec2};

/// Width of a tick.
const TICK: f32 = 22.0;
/// Width of what a price is for.
const PER: f32 = 60.0;
/// Width of a price.
const PRICE: f32 = 74.0;
/// Width of a life.
const LIFE: f32 = 44.0;

/// The list, with the way to add to it.
pub fn measures_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let mut candidates = state.document.draft.study.candidates.clone();
    let width = ui.available_width();
    if candidates.is_empty() {
        let text = "Nothing to choose from yet. Add what you could buy, with its price: then every combination is run through \
                    the winter, and those that hold the crop are ranked by what they cost in all.";
        ui.add(Label::new(RichText::new(text).color(t.soft)).wrap());
    } else {
        head_ui(ui, width, &state.document.draft.study.prices.currency, &t);
    }
    let mut gone = None;
    for (index, candidate) in candidates.iter_mut().enumerate() {
        ui.push_id(("measure", index), |ui| {
            if row_ui(ui, state, candidate, (index, width), &t) {
                gone = Some(index);
            }
        });
    }
    if let Some(index) = gone {
        candidates.remove(index);
        state.buy_view.open = None;
        state.edits.note("take measure away", ui.make_persistent_id(("gone", ui.ctx().cumulative_frame_nr())));
    }
    add_ui(ui, state, &mut candidates);
    if candidates != state.document.draft.study.candidates {
        state.document.draft.study.candidates = candidates;
    }
}

fn head_ui(ui: &mut Ui, width: f32, currency: &str, t: &Tokens) {
    line(ui, width, |ui, name| {
        let small = |ui: &mut Ui, width: f32, text: &str| {
            let label = Label::new(RichText::new(text).size(SMALL).color(t.soft));
            ui.allocate_ui_with_layout(vec2(width, ROW), Layout::left_to_right(Align::Center), |ui| {
                ui.set_min_width(width);
                ui.add(label);
            });
        };
        small(ui, TICK, "");
        small(ui, name, "May be bought");
        small(ui, PRICE, &format!("Price, {currency}"));
        small(ui, PER, "for");
        small(ui, LIFE, "Years");
    });
}

/// A row; gives its content the width that is left for the name.
fn line(ui: &mut Ui, width: f32, content: impl FnOnce(&mut Ui, f32)) {
    let size = vec2(width, ROW);
    ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        let name = width - TICK - PRICE - PER - LIFE - 2.0 * 24.0 - 7.0 * 6.0;
        content(ui, name.max(90.0));
    });
}

/// One measure; gives true when it is to go.
fn row_ui(ui: &mut Ui, state: &mut State, candidate: &mut Candidate, (index, whole): (usize, f32), t: &Tokens) -> bool {
    let mut gone = false;
    let currency = state.document.draft.study.prices.currency.clone();
    let mut form = Form::new(
        state.prefs.units,
        &currency,
        (&mut state.edits, &state.troubles),
        format!("candidates[{index}]"),
        "measure",
    );
    let said = |what: &str, name: &str| format!("{what} of {name}");
    line(ui, whole, |ui, width| {
        ui.spacing_mut().icon_spacing = 0.0;
        let tick = ui.add_sized(vec2(TICK, ROW), egui::Checkbox::without_text(&mut candidate.ticked));
        let (on, name) = (candidate.ticked, candidate.name.clone());
        tick.widget_info(|| egui::WidgetInfo::selected(egui::Role::CheckBox, true, on, format!("Look at {name}")));
        if tick.changed() {
            form.note("tick", tick.id);
        }
        let edit = TextEdit::singleline(&mut candidate.name).margin(egui::Margin::symmetric(6, 4));
        let edit = ui.add_sized(vec2(width, ROW - 2.0), edit);
        let edit = edit.accessible_name(format!("Name of measure {}", index + 1));
        if edit.changed() {
            form.note("name", edit.id);
        }
        edit.on_hover_text(candidate.change.kind());
        let name = candidate.name.clone();
        if let Some(price) =
            form.cell(ui, &price_spec(&candidate.change), candidate.price, &said("Price", &name), PRICE)
        {
            candidate.price = price;
        }
        let per = if candidate.price == 0.0 {
            RichText::new("price?").color(t.warn)
        } else {
            RichText::new(per(&candidate.change, form.units)).color(t.soft)
        };
        ui.allocate_ui_with_layout(vec2(PER, ROW), Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(PER);
            ui.add(Label::new(per.size(SMALL)).truncate()).on_hover_text(per_whole(&candidate.change));
        });
        let life = form.cell(ui, &Spec::of(&Candidate::life_years), candidate.life_years, &said("Life", &name), LIFE);
        if let Some(years) = life {
            candidate.life_years = years;
        }
        let open = state.buy_view.open == Some(index);
        let (icon, text) = if open { (Icon::Up, "Close") } else { (Icon::Down, "Open") };
        if icon_button(ui, icon, &format!("{text} the particulars of {name}")).clicked() {
            state.buy_view.open = (!open).then_some(index);
        }
        gone = icon_button(ui, Icon::Cross, &format!("Take {name} off the list")).clicked();
    });
    for key in ["name", "price", "life_years"] {
        form.troubles_at(ui, key);
    }
    let here = format!("candidates[{index}].change");
    let troubled = form.troubles.iter().any(|problem| problem.path.starts_with(&here));
    if state.buy_view.open == Some(index) || troubled {
        form.place = here;
        ui.allocate_ui_with_layout(vec2(ui.available_width().min(420.0), 0.0), Layout::top_down(Align::Min), |ui| {
            ui.set_max_width(ui.available_width().min(420.0));
            particulars_ui(ui, &mut form, &mut candidate.change, &state.rows);
        });
        ui.add_space(6.0);
    }
    gone
}

/// What a price is for, in short.
fn per(change: &CandidateChange, units: UnitSystem) -> String {
    match change.measure() {
        measure if measure.by_area() => format!("1 {}", Quantity::Area.unit(units).symbol),
        Measure::Other => "all of it".to_owned(),
        _ => "one".to_owned(),
    }
}

fn per_whole(change: &CandidateChange) -> &'static str {
    match change.measure() {
        measure if measure.by_area() => "Price by the area, which follows the drawing",
        Measure::Other => "Price of all of it",
        _ => "Price of one",
    }
}

/// The field of a price: by the area in the reader's units.
fn price_spec(change: &CandidateChange) -> Spec {
    let by_area = change.measure().by_area();
    let quantity = if by_area { Quantity::MoneyPerArea } else { Quantity::Money };
    Spec { quantity, ..Spec::of(&Candidate::price) }
}

/// The way to add a measure, or the usual ones.
fn add_ui(ui: &mut Ui, state: &mut State, candidates: &mut Vec<Candidate>) {
    ui.add_space(4.0);
    let scenario = state.document.draft.scenario().cloned().unwrap_or_default();
    let mut added: Vec<CandidateChange> = Vec::new();
    let row = ui.horizontal(|ui| {
        ui.menu_button("Add a measure", |ui| {
            for make in KINDS {
                let change = make(&scenario, &state.rows);
                if ui.button(change.kind()).clicked() {
                    added.push(change);
                }
            }
        });
        if candidates.is_empty() && ui.button("Add the usual ones").clicked() {
            added = usual(&scenario, &state.rows);
        }
    });
    if !added.is_empty() {
        let id = row.response.id.with(("added", ui.ctx().cumulative_frame_nr()));
        state.edits.note("add measure", id);
    }
    for change in added {
        let name = free_name(candidates, change.kind());
        candidates.push(Candidate { name, ticked: true, change, ..Candidate::default() });
    }
    tents_ui(ui, state, candidates);
}

/// Tents of other scenarios, which are ready to be tried as a measure.
fn tents_ui(ui: &mut Ui, state: &mut State, candidates: &mut Vec<Candidate>) {
    let draft = &state.document.draft;
    let has = |scenario: &Scenario| {
        candidates.iter().any(|c| matches!(&c.change, CandidateChange::Tent(tent) if *tent == scenario.tent))
    };
    let chosen = draft.selected();
    let other = draft.study.scenarios.iter().enumerate();
    let other = other.filter(|(at, s)| *at != chosen && s.tent.present && !has(s)).map(|(_, s)| s).next().cloned();
    let Some(other) = other.filter(|_| !candidates.is_empty()) else { return };
    let text = format!("Add the tent of {}", crate::format::short_name(&other.name));
    let button = ui.add(egui::Button::new(text).truncate());
    if button.clicked() {
        let name = free_name(candidates, "Inner tent");
        let change = CandidateChange::Tent(other.tent);
        candidates.push(Candidate { name, ticked: true, change, ..Candidate::default() });
        state.edits.note("add measure", button.id.with(ui.ctx().cumulative_frame_nr()));
    }
}

/// A name that no measure has.
fn free_name(candidates: &[Candidate], wanted: &str) -> String {
    let taken = |name: &str| candidates.iter().any(|c| c.name.trim() == name);
    let numbered = (1..).map(|n| if n == 1 { wanted.to_owned() } else { format!("{wanted} {n}") });
    numbered.into_iter().find(|name| !taken(name)).unwrap_or_default()
}
