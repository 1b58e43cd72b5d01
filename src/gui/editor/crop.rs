//! Crop and bench.

use super::Figures;
use super::water::zones;
use crate::gui::fields::Form;
use crate::model::{Bench, Crop, Scenario};
use egui::Ui;

/// The section.
pub fn crop_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    form.place = format!("{}.crop", figures.place);
    form.part = "crop";
    form.troubles_here(ui);
    let (crop, other) = (&mut s.crop, reference.map(|r| &r.crop));
    form.text(ui, &Crop::name, &mut crop.name, None);
    form.choice(ui, &Crop::zone, &mut crop.zone, &zones(), other.map(|o| &o.zone));
    for input in Crop::NUMBERS {
        form.number(ui, input, crop, other);
    }
    form.place = format!("{}.bench", figures.place);
    form.part = "bench";
    form.troubles_here(ui);
    let (bench, other) = (&mut s.bench, reference.map(|r| &r.bench));
    form.switch(ui, &Bench::present, &mut bench.present, other.map(|o| o.present));
    if bench.present {
        form.choice(ui, &Bench::zone, &mut bench.zone, &zones(), other.map(|o| &o.zone));
        ui.push_id("bench", |ui| {
            for input in Bench::NUMBERS {
                form.number(ui, input, bench, other);
            }
        });
    }
}
