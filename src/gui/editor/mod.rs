//! The editor of the chosen scenario, in sections that fold.

mod costs;
mod covering;
mod crop;
mod heater;
mod house;
mod layers;
mod months;
mod own;
mod precautions;
mod prices;
mod section;
mod site;
mod tent;
mod vents;
mod water;
mod weather;

pub use heater::{kind_ui as heater_kind_ui, setpoints_ui};
pub use layers::layers_ui;
pub use section::Section;
pub use water::{vessels_ui, zones};

use super::command::Command;
use super::fields::Form;
use super::state::State;
use super::theme::{HEADING, SMALL, semibold, tokens};
use crate::model::{Catalogue, Scenario};
use crate::season::ShellFigures;
use egui::{Margin, RichText, Ui};

/// Title of the section of the place.
pub const SITE: &str = "Site & weather";
/// Title of the section of the prices.
pub const PRICES: &str = "Prices";

/// What a section shows beside its inputs.
pub struct Figures<'a> {
    /// Heat-loss figures, once a season is there.
    pub shell: Option<ShellFigures>,
    /// Rows to choose from.
    pub rows: &'a Catalogue,
    /// Place of the scenario in the file.
    pub place: String,
}

/// The editor.
pub fn editor_ui(ui: &mut Ui, state: &mut State) {
    let index = state.document.draft.selected();
    let Some(mut scenario) = state.document.draft.scenario().cloned() else { return };
    let reference_index = state.document.draft.study.reference;
    let reference =
        state.document.draft.study.scenarios.get(reference_index).filter(|_| reference_index != index).cloned();
    egui::ScrollArea::vertical().id_salt("editor").auto_shrink([false, false]).show(ui, |ui| {
        egui::Frame::new().inner_margin(Margin { left: 16, right: 14, top: 8, bottom: 16 }).show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 2.0;
            title_ui(ui, state, &scenario, reference.is_some());
            ui.push_id(state.document.draft.tags.get(index).map(|tag| tag.id), |ui| {
                scenario_ui(ui, state, index, &mut scenario, reference.as_ref());
            });
            if let Some(slot) = state.document.draft.study.scenarios.get_mut(index) {
                *slot = scenario;
            }
            ui.add_space(16.0);
            ui.label(RichText::new("For all scenarios").font(semibold(HEADING)));
            study_ui(ui, state);
        });
    });
}

fn title_ui(ui: &mut Ui, state: &mut State, scenario: &Scenario, compared: bool) {
    let t = tokens(ui);
    ui.add(egui::Label::new(RichText::new(&scenario.name).font(semibold(HEADING))).truncate().selectable(false));
    let count = state.document.draft.study.scenarios.len();
    let (text, color) = if state.to_all && count > 1 {
        (format!("Changes go to all {count} scenarios"), t.accent)
    } else if compared {
        ("A dot marks what differs from the reference".to_owned(), t.soft)
    } else {
        ("The others are compared with this scenario".to_owned(), t.soft)
    };
    ui.label(RichText::new(text).size(SMALL).color(color));
    if count > 1 {
        let help =
            "What you change here is changed in every scenario; what differs else stays. One undo takes it back.";
        ui.checkbox(&mut state.to_all, Command::ChangeAll.text()).on_hover_text(help);
    }
    ui.add_space(4.0);
}

fn scenario_ui(ui: &mut Ui, state: &mut State, index: usize, s: &mut Scenario, reference: Option<&Scenario>) {
    let season = state.chosen_season().map(|(season, _)| season.run.clone());
    let rows = state.rows.clone();
    let figures =
        Figures { shell: season.as_ref().map(|run| run.shell), rows: &rows, place: format!("scenarios[{index}]") };
    let currency = state.document.draft.study.prices.currency.clone();
    let mut form = Form::new(state.prefs.units, &currency, (&mut state.edits, &state.troubles), &figures.place, "")
        .sharing(state.document.draft.study.scenarios.len() > 1);
    form.troubles_here(ui);
    let cost = season.as_ref().and_then(|run| run.summary.cost);
    let cooler = state.insights.alternatives().cooler;
    let bought = season.as_ref().map_or(&[][..], |run| &run.buying.lines);
    let sought = state.sought.take();
    for section in Section::OF_SCENARIO {
        if sought == Some(section) {
            section::reveal(ui, section.title());
        }
        let differs = reference.is_some_and(|r| section.differs(s, r));
        let result = section.result(s, &figures, form.units);
        let troubled = section.troubled(&form, &figures.place);
        section::section_ui(
            ui,
            section.title(),
            &result,
            differs,
            troubled,
            section.open_at_first(),
            |ui| match section {
                Section::House => house::house_ui(ui, &mut form, s, reference, &figures),
                Section::Covering => covering::covering_ui(ui, &mut form, s, reference, &figures),
                Section::Tent => tent::tent_ui(ui, &mut form, s, reference, &figures),
                Section::Water => water::water_ui(ui, &mut form, s, reference, &figures),
                Section::Heater => {
                    let fuels = &mut state.document.draft.study.prices.fuels;
                    heater::heaters_ui(ui, &mut form, s, reference, &figures, (cooler, fuels));
                }
                Section::Crop => crop::crop_ui(ui, &mut form, s, reference, &figures, cost),
                Section::Vents => vents::vents_ui(ui, &mut form, s, reference, &figures),
                Section::Costs => costs::costs_ui(ui, &mut form, s, &figures, bought),
            },
        );
    }
}

fn study_ui(ui: &mut Ui, state: &mut State) {
    let weather = state.chosen_season().map(|(season, _)| season.climate.place.name.clone()).unwrap_or_default();
    if std::mem::take(&mut state.site_sought) {
        section::reveal(ui, SITE);
    }
    section::section_ui(ui, SITE, &weather, false, false, false, |ui| site::site_ui(ui, state));
    let season = &state.document.draft.study.season;
    let dates = format!(
        "{} {} to {} {}",
        season.from_day,
        crate::format::month(season.from_month),
        season.to_day,
        crate::format::month(season.to_month)
    );
    section::section_ui(ui, "Season", &dates, false, false, false, |ui| site::season_ui(ui, state));
    let price = crate::format::money(state.document.draft.study.prices.electricity.price_per_kwh, "");
    let price = format!("{}{price} per kWh", state.document.draft.study.prices.currency);
    let own = &state.document.draft.study.own;
    let count = own.sheets.len() + own.screens.len() + own.fuels.len();
    let own = if count == 0 { "none".to_owned() } else { count.to_string() };
    section::section_ui(ui, "Own materials", &own, false, false, false, |ui| own::own_ui(ui, state));
    if std::mem::take(&mut state.prices_sought) {
        section::reveal(ui, PRICES);
    }
    section::section_ui(ui, PRICES, &price, false, false, false, |ui| prices::prices_ui(ui, state));
}
