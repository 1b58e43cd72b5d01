//! Inner tent.

use super::Figures;
use super::covering::night_cover_ui;
use super::layers::layers_ui;
use crate::format;
use crate::gui::fields::{Form, Spec, row};
use crate::gui::theme::{SMALL, tokens};
use crate::model::{Scenario, Tent, TentBase, TentOpening};
use crate::units::Quantity;
use egui::{RichText, Ui};

/// The section.
pub fn tent_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    form.place = format!("{}.tent", figures.place);
    form.part = "tent";
    let (tent, other) = (&mut s.tent, reference.map(|r| &r.tent));
    form.troubles_here(ui);
    form.switch(ui, &Tent::present, &mut tent.present, other.map(|o| o.present));
    if !tent.present {
        return;
    }
    let bases = [
        (TentBase::Floor, "The floor".to_owned()),
        (TentBase::Bench, "A bench board".to_owned()),
        (TentBase::InsulatedBench, "An insulated bench".to_owned()),
    ];
    form.choice(ui, &Tent::base, &mut tent.base, &bases, other.map(|o| &o.base));
    for input in [&Tent::length_m, &Tent::width_m, &Tent::height_m] {
        form.number(ui, input, tent, other);
    }
    if tent.base != TentBase::Floor {
        form.number(ui, &Tent::base_height_m, tent, other);
    }
    form.number(ui, &Tent::offset_m, tent, other);
    layers_ui(ui, form, &Tent::sheets, &mut tent.sheets, figures.rows, other.map(|o| &o.sheets));
    if let Some(shell) = figures.shell.filter(|shell| shell.u_tent_w_per_m2k > 0.0) {
        let u = format::quantity(shell.u_tent_w_per_m2k, Quantity::UValue, form.units, None);
        row(ui, false, |ui| {
            ui.label(RichText::new(format!("U of the tent's wall {u}")).size(SMALL).color(tokens(ui).soft));
        });
    }
    form.number(ui, &Tent::air_changes_per_h, tent, other);
    opening_ui(ui, form, tent, other);
    form.number(ui, &Tent::planted_share, tent, other);
    ui.push_id("tent night cover", |ui| {
        form.place = format!("{}.tent.night_cover", figures.place);
        night_cover_ui(ui, form, &mut tent.night_cover, other.map(|o| &o.night_cover), figures.rows, false);
    });
}

fn opening_ui(ui: &mut Ui, form: &mut Form, tent: &mut Tent, other: Option<&Tent>) {
    let held = match tent.opening {
        TentOpening::Above(t) => t,
        _ => 28.0,
    };
    let options = [
        (TentOpening::Never, "Never".to_owned()),
        (TentOpening::ByDay, "While there is sun".to_owned()),
        (TentOpening::Above(held), "Above a temperature".to_owned()),
    ];
    form.choice(ui, &Tent::opening, &mut tent.opening, &options, other.map(|o| &o.opening));
    if let TentOpening::Above(held) = tent.opening {
        let spec = Spec {
            key: "opening",
            label: "Opens at",
            quantity: Quantity::Temperature,
            min: 5.0,
            max: 45.0,
            help: "Tent temperature at which it begins to open; wide open 2 K above",
            source: "",
        };
        if let Some(new) = form.value_row(ui, &spec, held, None, None) {
            tent.opening = TentOpening::Above(new);
        }
    }
}
