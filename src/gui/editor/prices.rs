//! Prices: currency, electricity tariff, the price of each fuel, with date and origin.

use crate::gui::fields::{Form, row};
use crate::gui::marks::{Icon, icon_button};
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, semibold, tokens};
use crate::model::{BandDays, Catalogue, ElectricityTariff, FuelPrice, Prices, TariffBand};
use egui::{RichText, Ui};

/// The section.
pub fn prices_ui(ui: &mut Ui, state: &mut State) {
    let mut prices = state.document.draft.study.prices.clone();
    let currency = prices.currency.clone();
    let rows = state.rows.clone();
    let mut form = Form::new(state.prefs.units, &currency, (&mut state.edits, &state.troubles), "prices", "");
    form.text(ui, &Prices::currency, &mut prices.currency, Some(64.0));
    form.number(ui, &Prices::winters, &mut prices, None);
    heading(ui, "Electricity");
    form.place = "prices.electricity".to_owned();
    form.part = "electricity";
    electricity_ui(ui, &mut form, &mut prices.electricity);
    let mut gone = None;
    for (index, fuel) in prices.fuels.iter_mut().enumerate() {
        form.place = format!("prices.fuels[{index}]");
        form.part = "fuel";
        let name = rows.fuel(&fuel.fuel).map_or_else(|| fuel.fuel.clone(), |f| f.name.clone());
        heading(ui, &name);
        ui.push_id(("fuel", index), |ui| {
            fuel_ui(ui, &mut form, fuel, &rows);
            away_ui(ui, "Take this price away", || gone = Some(index));
        });
    }
    let mut changed = gone.is_some();
    if let Some(index) = gone {
        prices.fuels.remove(index);
    }
    row(ui, false, |ui| {
        let priced = |key: &str| key == "electricity" || prices.fuels.iter().any(|p| p.fuel == key);
        let next = rows.fuels.iter().find(|fuel| !priced(&fuel.key)).cloned();
        let button = ui.add_enabled(next.is_some(), egui::Button::new("Add a fuel price"));
        if let (true, Some(fuel)) = (button.clicked(), next) {
            let unit = fuel.units.first().map(|u| u.unit.clone()).unwrap_or_default();
            prices.fuels.push(FuelPrice { fuel: fuel.key, unit, ..FuelPrice::default() });
            changed = true;
        }
    });
    if changed {
        form.edits.note("fuel prices", ui.make_persistent_id(("fuel prices", ui.ctx().cumulative_frame_nr())));
    }
    state.document.draft.study.prices = prices;
}

fn heading(ui: &mut Ui, text: &str) {
    ui.add_space(4.0);
    row(ui, false, |ui| {
        ui.label(RichText::new(text).font(semibold(BODY)));
    });
}

fn away_ui(ui: &mut Ui, text: &str, mut away: impl FnMut()) {
    row(ui, false, |ui| {
        if icon_button(ui, Icon::Cross, text).clicked() {
            away();
        }
        let mut small = text.to_lowercase();
        small.retain(|c| c != '…');
        ui.label(RichText::new(small).size(SMALL).color(tokens(ui).soft));
    });
}

fn electricity_ui(ui: &mut Ui, form: &mut Form, tariff: &mut ElectricityTariff) {
    form.troubles_here(ui);
    for input in ElectricityTariff::NUMBERS {
        form.number(ui, input, tariff, None);
    }
    let mut gone = None;
    for (index, band) in tariff.bands.iter_mut().enumerate() {
        form.place = format!("prices.electricity.bands[{index}]");
        ui.push_id(("band", index), |ui| {
            let days = [
                (BandDays::All, "Every day".to_owned()),
                (BandDays::Weekdays, "Monday to Friday".to_owned()),
                (BandDays::Weekend, "Saturday and Sunday".to_owned()),
            ];
            form.choice(ui, &TariffBand::days, &mut band.days, &days, None);
            for input in TariffBand::NUMBERS {
                form.number(ui, input, band, None);
            }
            away_ui(ui, "Take these hours away", || gone = Some(index));
        });
    }
    let mut changed = gone.is_some();
    if let Some(index) = gone {
        tariff.bands.remove(index);
    }
    form.place = "prices.electricity".to_owned();
    row(ui, false, |ui| {
        if ui.button("Add hours with their own price").clicked() {
            tariff.bands.push(TariffBand::default());
            changed = true;
        }
    });
    if changed {
        form.note("hours of the tariff", ui.make_persistent_id(("bands", ui.ctx().cumulative_frame_nr())));
    }
    origin_ui(ui, form, &mut tariff.dated, &mut tariff.origin);
}

fn fuel_ui(ui: &mut Ui, form: &mut Form, price: &mut FuelPrice, rows: &Catalogue) {
    form.troubles_here(ui);
    let fuels: Vec<_> =
        rows.fuels.iter().filter(|f| f.key != "electricity").map(|f| (f.key.clone(), f.name.clone())).collect();
    let units = |key: &str| -> Vec<(String, String)> {
        rows.fuel(key).map(|f| f.units.iter().map(|u| (u.unit.clone(), u.unit.clone())).collect()).unwrap_or_default()
    };
    if form.choice(ui, &FuelPrice::fuel, &mut price.fuel, &fuels, None)
        && let Some((first, _)) = units(&price.fuel).into_iter().next()
    {
        price.unit = first;
    }
    form.choice(ui, &FuelPrice::unit, &mut price.unit, &units(&price.fuel), None);
    form.number(ui, &FuelPrice::price_per_unit, price, None);
    origin_ui(ui, form, &mut price.dated, &mut price.origin);
}

fn origin_ui(ui: &mut Ui, form: &mut Form, dated: &mut String, origin: &mut String) {
    form.text(ui, &FuelPrice::dated, dated, None);
    form.text(ui, &FuelPrice::origin, origin, None);
}
