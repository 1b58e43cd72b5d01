//! Many winters: what the season costs in a mild winter, a usual one and a hard one, and how often the crop is lost.

use super::shown;
use crate::figures;
use crate::format;
use crate::gui::fields::Form;
use crate::gui::handout::{Make, handout_ui};
use crate::gui::outlook::{Told, View, Winters};
use crate::gui::plots::axis::Look;
use crate::gui::plots::column::{heading, row};
use crate::gui::plots::fan::{Fan, fan_ui};
use crate::gui::plots::room;
use crate::gui::plots::running::Shown;
use crate::gui::state::State;
use crate::gui::theme::tokens;
use crate::model::ManyWinters;
use egui::{Align, Layout, RichText, Ui, vec2};
use std::sync::Arc;

/// Width of the figures beside the plot.
const FIGURES: f32 = 236.0;
/// Width of an entry above the plot.
const ENTRY: f32 = 204.0;

/// The view.
pub fn winters_ui(ui: &mut Ui, state: &mut State) {
    let view = state.other_winters(&ui.ctx().clone());
    finding_ui(ui, state, &view);
    asked_ui(ui, state);
    progress_ui(ui, state, &view);
    let shown = shown(ui, state);
    let Some(first) = shown.first() else {
        let text = "All scenarios are hidden. Show one by the eye on its card";
        ui.label(RichText::new(text).color(tokens(ui).soft));
        return;
    };
    let Some(winters) = &view.answer else {
        ui.label(RichText::new("The first winters are being worked out").color(tokens(ui).soft));
        return;
    };
    let height = room(ui.available_height(), 8.0);
    let plot = ui.available_width() - FIGURES - 20.0;
    let look = Look { t: tokens(ui), units: state.prefs.units, cursor: state.hour_within(first.season.len()), height };
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 20.0;
        panel(ui, plot, height, |ui| plot_ui(ui, state, &shown, winters, &look));
        panel(ui, FIGURES, height, |ui| {
            egui::ScrollArea::vertical().id_salt("winters").auto_shrink([false, false]).show(ui, |ui| {
                ui.set_max_width(ui.available_width() - 8.0);
                ui.spacing_mut().item_spacing.y = 1.0;
                let currency = state.document.draft.study.prices.currency.clone();
                for scenario in chosen_first(&shown) {
                    if let Some(told) = told_of(state, winters, scenario) {
                        figures_ui(ui, scenario, told, &currency, state);
                    }
                }
            });
        });
    });
}

fn panel(ui: &mut Ui, width: f32, height: f32, content: impl FnOnce(&mut Ui)) {
    ui.allocate_ui_with_layout(vec2(width, height), Layout::top_down(Align::Min), |ui| {
        ui.set_width(width);
        content(ui);
    });
}

fn chosen_first(shown: &[Shown]) -> impl Iterator<Item = &Shown> {
    shown.iter().filter(|s| s.chosen).chain(shown.iter().filter(|s| !s.chosen))
}

fn told_of<'a>(state: &State, winters: &'a Winters, scenario: &Shown) -> Option<&'a Told> {
    let draft = &state.document.draft;
    let id = draft.study.scenarios.iter().zip(&draft.tags).find(|(s, _)| s.name == scenario.name)?.1.id;
    winters.told.iter().find(|told| told.id == id)
}

/// One sentence on the chosen scenario.
fn finding_ui(ui: &mut Ui, state: &State, view: &View) {
    let draft = &state.document.draft;
    let id = draft.tags.get(draft.selected()).map(|tag| tag.id);
    let told = view.answer.as_ref().and_then(|w| w.told.iter().find(|told| Some(told.id) == id));
    let name = draft.scenario().map(|s| format::short_name(&s.name)).unwrap_or_default();
    let text = match told {
        Some(told) if !told.figures.sentences.is_empty() => {
            format!("{name}. {}", told.figures.sentences.join(" "))
        }
        _ => format!("{name}: its weather year is one winter of many"),
    };
    ui.add(egui::Label::new(text).truncate());
}

/// How many winters, and from which seed.
fn asked_ui(ui: &mut Ui, state: &mut State) {
    let mut asked = state.document.draft.study.many_winters.clone();
    ui.horizontal_top(|ui| {
        ui.set_min_height(28.0);
        let currency = state.document.draft.study.prices.currency.clone();
        let mut form = Form::new(state.prefs.units, &currency, (&mut state.edits, &state.troubles), "many_winters", "");
        for input in [&ManyWinters::count, &ManyWinters::seed] {
            // From above, so that a refusal stands below its entry and not beside it.
            ui.allocate_ui_with_layout(vec2(ENTRY, 26.0), Layout::top_down(Align::Min), |ui| {
                ui.set_max_width(ENTRY);
                form.number(ui, input, &mut asked, None);
            });
        }
    });
    state.document.draft.study.many_winters = asked;
}

/// What the plot shows, how far it is, and the way to stop it; its place stays when there is nothing to say.
fn progress_ui(ui: &mut Ui, state: &mut State, view: &View) {
    let currency = &state.document.draft.study.prices.currency;
    let title = format!("Running cost, {currency}: one winter in ten to nine in ten");
    let count = state.document.draft.study.many_winters.count;
    ui.horizontal(|ui| {
        ui.set_height(26.0);
        ui.label(RichText::new(title).strong());
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            match super::progress_ui(ui, view.working, count as usize, view.failed.as_deref()) {
                Some(super::Press::Stop) => state.outlook.stop(),
                Some(super::Press::GoOn) => state.outlook.again(),
                None => {}
            }
        });
    });
}

fn plot_ui(ui: &mut Ui, state: &mut State, shown: &[Shown], winters: &Arc<Winters>, look: &Look) {
    let currency = state.document.draft.study.prices.currency.clone();
    let height = room(ui.available_height(), 4.0);
    let (theirs, money) = (Arc::clone(winters), currency.clone());
    let figures = move || -> Make { Box::new(move || figures::winter_fans(&theirs.every, &money)) };
    handout_ui(ui, state, "fan of winters", None, figures, |ui, state| {
        let fans: Vec<Fan> = shown
            .iter()
            .filter_map(|s| {
                let told = told_of(state, winters, s)?;
                Some(Fan { name: &s.name, colour: s.tint(), chosen: s.chosen, told })
            })
            .collect();
        let Some(first) = shown.first() else { return };
        if let Some(hour) = fan_ui(ui, &first.season, &fans, &currency, &Look { height, ..*look }) {
            state.hour = Some(hour);
        }
    });
}

/// The figures of one scenario.
fn figures_ui(ui: &mut Ui, scenario: &Shown, told: &Told, currency: &str, state: &State) {
    let f = &told.figures;
    let units = state.prefs.units;
    heading(ui, &format::short_name(&scenario.name), &format!("{} winters", f.winters));
    let money = |amount: f64| format::money(amount, currency);
    match f.cost {
        Some(cost) => {
            row(ui, "One in ten below", &money(cost.p10), "");
            row(ui, "Half below", &money(cost.p50), "");
            row(ui, "One in ten above", &money(cost.p90), "");
        }
        None => {
            row(ui, "Cost", "a price is missing", "");
        }
    }
    if let Some(cost) = f.cost_of_weather_year {
        row(ui, "This weather year", &money(cost), "");
    }
    row(ui, "Crop limit broken", &format!("{} of {}", f.winters_below_crop_limit, f.winters), "");
    if let Some(lowest) = f.crop_air_min_c {
        row(ui, "Crop's lowest, one in ten", &format::temperature(lowest.p10, units), "");
    }
    for (stock, name, unit) in [
        (f.fuel_to_stock, &f.fuel_name, &f.fuel_unit),
        (f.standby_fuel_to_stock, &f.standby_fuel_name, &f.standby_fuel_unit),
    ] {
        if let Some(stock) = stock.filter(|stock| *stock > 0.0) {
            let text = format::bought(&format::number(stock, 0), unit);
            row(ui, &format!("{name}, nine in ten"), &text, "");
        }
    }
    ui.add_space(10.0);
}
