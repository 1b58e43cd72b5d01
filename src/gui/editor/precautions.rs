//! Alarms, cut-outs, air for flames, and the mains: what the checks ask for.

use super::Figures;
use crate::gui::fields::{Form, Spec};
use crate::model::mains::PLUG_RANGE_A;
use crate::model::precautions::OPENING_RANGE_M2;
use crate::model::{Answer, ChoiceInput, Circuit, Mains, Plug, Precautions, Scenario};
use crate::units::Quantity;
use egui::Ui;

/// Free area that is put in when the opening is said to be known, m².
const FIRST_OPENING_M2: f64 = 0.01;

/// What guards heaters; the last rows of their section.
pub fn heaters_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    let burning = [&s.heater, &s.standby].into_iter().any(|h| h.present && h.fuel != "electricity");
    place(form, figures);
    form.troubles_here(ui);
    let (p, other) = (&mut s.precautions, reference.map(|r| &r.precautions));
    let cut_out = &Precautions::residual_current_device;
    answer(ui, form, cut_out, &mut p.residual_current_device, other.map(|o| o.residual_current_device));
    if !burning {
        return;
    }
    let alarm = &Precautions::carbon_monoxide_alarm;
    answer(ui, form, alarm, &mut p.carbon_monoxide_alarm, other.map(|o| o.carbon_monoxide_alarm));
    let input = &Precautions::combustion_air_m2;
    let spec = spec(input, Quantity::SmallArea, (*OPENING_RANGE_M2.start(), *OPENING_RANGE_M2.end()));
    form.optional(ui, &spec, &mut p.combustion_air_m2, FIRST_OPENING_M2, other.map(|o| o.combustion_air_m2));
    form.number(ui, &Precautions::cylinders, p, other);
}

/// The alarm at the crop; the last row of its section.
pub fn crop_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    place(form, figures);
    let other = reference.map(|r| r.precautions.low_temperature_alarm);
    let alarm = &Precautions::low_temperature_alarm;
    answer(ui, form, alarm, &mut s.precautions.low_temperature_alarm, other);
}

fn place(form: &mut Form, figures: &Figures) {
    form.place = format!("{}.precautions", figures.place);
    form.part = "";
}

fn answer(ui: &mut Ui, form: &mut Form, input: &ChoiceInput, value: &mut Answer, other: Option<Answer>) {
    let options = Answer::ALL.map(|answer| (answer, answer.name().to_owned()));
    form.choice(ui, input, value, &options, other.as_ref());
}

/// The row of a number that may be unknown.
pub fn spec(input: &ChoiceInput, quantity: Quantity, (min, max): (f64, f64)) -> Spec {
    Spec { key: input.key, label: input.label, quantity, min, max, help: input.help, source: "" }
}

/// Circuits that are met most, V and A.
const CIRCUITS: [(f64, f64); 6] =
    [(120.0, 15.0), (120.0, 20.0), (240.0, 30.0), (230.0, 10.0), (230.0, 16.0), (230.0, 32.0)];

/// Circuit and plug.
pub fn mains_ui(ui: &mut Ui, form: &mut Form, mains: &mut Mains) {
    let place = form.place.clone();
    form.place = format!("{place}.mains");
    let mut known = CIRCUITS.map(|(volts, rating_a)| Some(Circuit { volts, rating_a })).to_vec();
    known.insert(0, None);
    if !known.contains(&mains.circuit) {
        known.push(mains.circuit.clone());
    }
    let named: Vec<_> = known.into_iter().map(|circuit| (circuit.clone(), circuit_name(circuit.as_ref()))).collect();
    form.choice(ui, &Mains::circuit, &mut mains.circuit, &named, None);
    if let Some(circuit) = &mut mains.circuit {
        form.place = format!("{place}.mains.circuit");
        for input in Circuit::NUMBERS {
            form.number(ui, input, circuit, None);
        }
        form.place = format!("{place}.mains");
    }
    let mut plugs = vec![Plug::NotKnown, Plug::Wired, Plug::Rated(13.0), Plug::Rated(15.0), Plug::Rated(16.0)];
    if !plugs.contains(&mains.plug) {
        plugs.push(mains.plug);
    }
    let named: Vec<_> = plugs.into_iter().map(|plug| (plug, plug_name(plug))).collect();
    form.choice(ui, &Mains::plug, &mut mains.plug, &named, None);
    if let Plug::Rated(rating_a) = mains.plug {
        let mut spec = spec(&Mains::plug, Quantity::Current, (*PLUG_RANGE_A.start(), *PLUG_RANGE_A.end()));
        spec.label = "Plug or fuse rated";
        if let Some(new) = form.value_row(ui, &spec, rating_a, None, None) {
            mains.plug = Plug::Rated(new);
        }
    }
    form.place = place;
}

fn circuit_name(circuit: Option<&Circuit>) -> String {
    circuit.map_or("not known".to_owned(), |c| format!("{:.0} V, {:.0} A", c.volts, c.rating_a))
}

fn plug_name(plug: Plug) -> String {
    match plug {
        Plug::NotKnown => "not known".to_owned(),
        Plug::Wired => "wired in".to_owned(),
        Plug::Rated(rating_a) => format!("plug of {rating_a:.0} A"),
    }
}
