//! Vents and fan.

use super::Figures;
use crate::gui::fields::Form;
use crate::model::{Scenario, Vents};
use egui::Ui;

/// The section.
pub fn vents_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    form.place = format!("{}.vents", figures.place);
    form.part = "vents";
    form.troubles_here(ui);
    let (vents, other) = (&mut s.vents, reference.map(|r| &r.vents));
    form.switch(ui, &Vents::present, &mut vents.present, other.map(|o| o.present));
    if vents.present {
        for input in [
            &Vents::inlet_area_m2,
            &Vents::outlet_area_m2,
            &Vents::height_difference_m,
            &Vents::opens_at_c,
            &Vents::full_at_c,
        ] {
            form.number(ui, input, vents, other);
        }
    }
    form.switch(ui, &Vents::fan_present, &mut vents.fan_present, other.map(|o| o.fan_present));
    if vents.fan_present {
        for input in [&Vents::fan_flow_m3_per_h, &Vents::fan_starts_at_c, &Vents::fan_w] {
            form.number(ui, input, vents, other);
        }
    }
}
