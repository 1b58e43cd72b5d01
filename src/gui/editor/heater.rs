//! Heater and fuel, and the standby heater.

use super::Figures;
use super::precautions;
use super::water::zones;
use crate::format;
use crate::gui::fields::{CHOICE_LABEL, Form, Spec, combo, label_cell, row};
use crate::gui::theme::{BODY, SMALL, semibold, tokens};
use crate::model::heater::SETPOINT_RANGE_C;
use crate::model::{Catalogue, FuelPrice, HeatBasis, HeatTarget, Heater, Scenario};
use crate::units::Quantity;
use egui::{RichText, Ui};

/// The section; `cooler` is what one kelvin less would alter in the season's cost, `fuels` are the study's prices.
pub fn heaters_ui(
    ui: &mut Ui,
    form: &mut Form,
    s: &mut Scenario,
    reference: Option<&Scenario>,
    figures: &Figures,
    (cooler, fuels): (Option<f64>, &mut Vec<FuelPrice>),
) {
    form.place = format!("{}.heater", figures.place);
    form.part = "heater";
    form.troubles_here(ui);
    heater_ui(ui, form, &mut s.heater, reference.map(|r| &r.heater), figures, (&Heater::present, fuels));
    if let (Some(change), true) = (cooler, s.heater.present) {
        let step = Quantity::TemperatureDifference.unit(form.units);
        let kelvin = format!("{} {}", format::number(step.shown(1.0), 1), step.symbol);
        row(ui, false, |ui| {
            let text = format!("{kelvin} less: {} a winter", format::money_difference(change, form.currency));
            ui.label(RichText::new(text).size(SMALL).color(tokens(ui).accent));
        });
    }
    ui.add_space(8.0);
    form.place = format!("{}.standby", figures.place);
    form.part = "standby heater";
    ui.push_id("standby", |ui| {
        let switch = &Scenario::standby;
        form.troubles_here(ui);
        if s.standby.present {
            row(ui, false, |ui| {
                ui.label(RichText::new(switch.label).font(semibold(BODY))).on_hover_text(switch.help);
            });
        }
        heater_ui(ui, form, &mut s.standby, reference.map(|r| &r.standby), figures, (switch, fuels));
    });
    ui.add_space(8.0);
    precautions::heaters_ui(ui, form, s, reference, figures);
}

fn heater_ui(
    ui: &mut Ui,
    form: &mut Form,
    heater: &mut Heater,
    other: Option<&Heater>,
    figures: &Figures,
    (switch, prices): (&crate::model::ChoiceInput, &mut Vec<FuelPrice>),
) {
    form.switch(ui, switch, &mut heater.present, other.map(|o| o.present));
    if !heater.present {
        return;
    }
    setpoints_ui(ui, form, heater, other);
    kind_ui(ui, form, heater, figures.rows);
    let fuels: Vec<_> = figures.rows.fuels.iter().map(|fuel| (fuel.key.clone(), fuel.name.clone())).collect();
    form.choice(ui, &Heater::fuel, &mut heater.fuel, &fuels, other.map(|o| &o.fuel));
    price_ui(ui, form, &heater.fuel, prices, figures.rows);
    form.number(ui, &Heater::rated_w, heater, other);
    if let Some(text) = full_output(heater, figures.rows) {
        row(ui, false, |ui| {
            ui.label(RichText::new(format!("Full output for {text}")).size(SMALL).color(tokens(ui).soft));
        });
    }
    if !heater.heat_pump {
        form.number(ui, &Heater::efficiency, heater, other);
        if heater.fuel != "electricity" {
            let bases =
                [(HeatBasis::Gross, "Gross heat, vapour included".to_owned()), (HeatBasis::Net, "Net heat".to_owned())];
            form.choice(ui, &Heater::basis, &mut heater.basis, &bases, other.map(|o| &o.basis));
        }
    }
    form.choice(ui, &Heater::zone, &mut heater.zone, &zones(), other.map(|o| &o.zone));
    let targets = [
        (HeatTarget::Air, "The air".to_owned()),
        (HeatTarget::Bench, "The benches".to_owned()),
        (HeatTarget::Water, "The water".to_owned()),
    ];
    form.choice(ui, &Heater::target, &mut heater.target, &targets, other.map(|o| &o.target));
    if heater.fuel == "electricity" {
        form.switch(ui, &Heater::heat_pump, &mut heater.heat_pump, other.map(|o| o.heat_pump));
    } else {
        form.switch(ui, &Heater::vented, &mut heater.vented, other.map(|o| o.vented));
        form.switch(ui, &Heater::needs_mains, &mut heater.needs_mains, other.map(|o| o.needs_mains));
    }
    if heater.heat_pump {
        form.number(ui, &Heater::sink_c, heater, other);
    }
    form.number(ui, &Heater::fan_w, heater, other);
}

/// The price of a fuel beside the choice of it, where a missing one is noticed.
fn price_ui(ui: &mut Ui, form: &mut Form, fuel: &str, prices: &mut Vec<FuelPrice>, rows: &Catalogue) {
    let first_unit = rows.fuel(fuel).and_then(|row| row.units.first()).map(|unit| unit.unit.clone());
    let held = prices.iter().position(|price| price.fuel == fuel);
    let Some(unit) = held.map(|at| prices[at].unit.clone()).or(first_unit).filter(|_| fuel != "electricity") else {
        return;
    };
    let spec = Spec { label: "Fuel price", ..Spec::of(&FuelPrice::price_per_unit) };
    let value = held.map_or(0.0, |at| prices[at].price_per_unit);
    if let Some(price_per_unit) = form.value_row(ui, &spec, value, None, None) {
        match held {
            Some(at) => prices[at].price_per_unit = price_per_unit,
            None => prices.push(FuelPrice {
                fuel: fuel.to_owned(),
                unit: unit.clone(),
                price_per_unit,
                ..FuelPrice::default()
            }),
        }
    }
    row(ui, false, |ui| {
        let text = format!("per {unit}; other units, date and origin under Prices");
        ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(tokens(ui).soft)).wrap());
    });
}

/// The fields of what a heater's thermostat holds.
pub fn setpoints_ui(ui: &mut Ui, form: &mut Form, heater: &mut Heater, other: Option<&Heater>) {
    let spec = |input: &crate::model::ChoiceInput, key| Spec {
        key,
        label: input.label,
        quantity: Quantity::Temperature,
        min: *SETPOINT_RANGE_C.start(),
        max: *SETPOINT_RANGE_C.end(),
        help: input.help,
        source: "",
    };
    let day = spec(&Heater::setpoint_day_c, "setpoint_day_c");
    let night = spec(&Heater::setpoint_night_c, "setpoint_night_c");
    let (day_on, night_on) = (heater.setpoint_night_c.unwrap_or(8.0), heater.setpoint_day_c.unwrap_or(8.0));
    form.optional(ui, &day, &mut heater.setpoint_day_c, day_on, other.map(|o| o.setpoint_day_c));
    form.optional(ui, &night, &mut heater.setpoint_night_c, night_on, other.map(|o| o.setpoint_night_c));
    if heater.setpoint_day_c != heater.setpoint_night_c {
        form.number(ui, &Heater::day_from_hour, heater, other);
        form.number(ui, &Heater::day_to_hour, heater, other);
    }
}

/// Fills the heater in from a kind of the catalogue.
pub fn kind_ui(ui: &mut Ui, form: &mut Form, heater: &mut Heater, rows: &Catalogue) {
    let mut taken = None;
    row(ui, false, |ui| {
        let label = label_cell(ui, "Kind", CHOICE_LABEL, 0.0);
        let response = combo(ui, "heater kind", &heater.name, |ui| {
            for kind in &rows.heaters {
                if ui.selectable_label(heater.name == kind.name, &kind.name).on_hover_text(&kind.source).clicked() {
                    taken = Some(kind.clone());
                }
            }
        });
        response.labelled_by(label.id).on_hover_text("Fills in fuel, efficiency and fan from the catalogue");
    });
    let Some(kind) = taken else { return };
    heater.name = kind.name;
    heater.fuel = kind.fuel;
    heater.efficiency = kind.efficiency;
    heater.basis = HeatBasis::Gross;
    heater.vented = kind.vented;
    heater.needs_mains = kind.needs_mains;
    heater.heat_pump = kind.heat_pump;
    heater.fan_w = kind.fan_w;
    form.note("kind", ui.make_persistent_id("heater kind"));
}

/// How long one unit of a stored fuel lasts at full output: "31 h per 20 lb cylinder".
pub fn full_output(heater: &Heater, rows: &Catalogue) -> Option<String> {
    let fuel = rows.fuel(&heater.fuel).filter(|_| heater.fuel != "electricity")?;
    let unit = fuel.units.iter().find(|u| u.unit.contains("cylinder")).or(fuel.units.first())?;
    let efficiency = heater.gross_efficiency(fuel.net_per_gross);
    let hours = unit.kwh_gross_per_unit * efficiency * 1000.0 / heater.rated_w;
    let decimals = if hours < 10.0 { 1 } else { 0 };
    (hours.is_finite() && hours > 0.0).then(|| format!("{} h per {}", format::number(hours, decimals), unit.unit))
}
