//! Water store.

use super::Figures;
use super::precautions::spec;
use crate::format;
use crate::gui::fields::{Form, row};
use crate::gui::marks::{Icon, icon_button};
use crate::gui::theme::{SMALL, tokens};
use crate::model::water::{BEARS_RANGE_KG_PER_M2, HEADSPACE_RANGE};
use crate::model::{Scenario, Stand, Vessels, WaterStore, Zone};
use crate::safety::weight::LEAST_HEADSPACE;
use crate::units::Quantity;
use egui::{RichText, Ui};

/// Load that is put in when it is said to be known, kg/m²: a dwelling's floor.
const FIRST_LOAD_KG_PER_M2: f64 = 195.0;

/// Names of the zones.
pub fn zones() -> [(Zone, String); 2] {
    [(Zone::House, "The house".to_owned()), (Zone::Tent, "The inner tent".to_owned())]
}

/// The section.
pub fn water_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    form.place = format!("{}.water", figures.place);
    form.part = "water store";
    let (water, other) = (&mut s.water, reference.map(|r| &r.water));
    form.troubles_here(ui);
    form.switch(ui, &WaterStore::present, &mut water.present, other.map(|o| o.present));
    if !water.present {
        return;
    }
    if let Some(shell) = figures.shell {
        row(ui, false, |ui| {
            let text = format!("Freezing it all gives {} kWh", format::number(shell.water_freezing_kwh, 0));
            ui.label(RichText::new(text).size(SMALL).color(tokens(ui).soft));
        });
    }
    let mut gone = None;
    let many = water.vessels.len() > 1;
    for (index, vessels) in water.vessels.iter_mut().enumerate() {
        form.place = format!("{}.water.vessels[{index}]", figures.place);
        let reference = other.and_then(|o| o.vessels.get(index));
        ui.push_id(("vessels", index), |ui| {
            vessels_ui(ui, form, vessels, reference);
            if many {
                row(ui, false, |ui| {
                    if icon_button(ui, Icon::Cross, "Take these vessels away").clicked() {
                        gone = Some(index);
                    }
                    ui.label(RichText::new("take these away").size(SMALL).color(tokens(ui).soft));
                });
            }
        });
        ui.add_space(6.0);
    }
    let mut changed = gone.is_some();
    if let Some(index) = gone {
        water.vessels.remove(index);
    }
    row(ui, false, |ui| {
        if ui.button("Add other vessels").clicked() {
            water.vessels.push(Vessels::default());
            changed = true;
        }
    });
    if changed {
        let id = ui.make_persistent_id(("vessels", ui.ctx().cumulative_frame_nr()));
        form.note("vessels", id);
    }
}

/// The fields of a group of vessels.
pub fn vessels_ui(ui: &mut Ui, form: &mut Form, vessels: &mut Vessels, other: Option<&Vessels>) {
    form.text(ui, &Vessels::name, &mut vessels.name, None);
    form.choice(ui, &Vessels::zone, &mut vessels.zone, &zones(), other.map(|o| &o.zone));
    for input in Vessels::NUMBERS {
        form.number(ui, input, vessels, other);
    }
    let stands = [(Stand::Floor, "The floor".to_owned()), (Stand::Bench, "A bench".to_owned())];
    form.choice(ui, &Vessels::stand, &mut vessels.stand, &stands, other.map(|o| &o.stand));
    let ends = |range: &std::ops::RangeInclusive<f64>| (*range.start(), *range.end());
    let bears = spec(&Vessels::bears_kg_per_m2, Quantity::AreaLoad, ends(&BEARS_RANGE_KG_PER_M2));
    form.optional(ui, &bears, &mut vessels.bears_kg_per_m2, FIRST_LOAD_KG_PER_M2, other.map(|o| o.bears_kg_per_m2));
    let empty = spec(&Vessels::headspace, Quantity::Share, ends(&HEADSPACE_RANGE));
    form.optional(ui, &empty, &mut vessels.headspace, LEAST_HEADSPACE, other.map(|o| o.headspace));
}
