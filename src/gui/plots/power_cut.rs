//! Design load and power cut in figures.

use super::column::{heading, row};
use crate::format;
use crate::season::{Hold, Summary};
use crate::units::UnitSystem;
use egui::Ui;

/// The column of figures.
pub fn figures_ui(ui: &mut Ui, s: &Summary, units: UnitSystem, has_water: bool) {
    let temperature = |t: f64| format::temperature(t, units);
    heading(ui, "Design load", "");
    row(ui, &format!("99 %, {}", temperature(s.design_outdoor_c_99)), &format::power(s.design_load_w_99), "");
    row(ui, &format!("99.6 %, {}", temperature(s.design_outdoor_c_99_6)), &format::power(s.design_load_w_99_6), "");
    row(ui, "Rated output", &format::power(s.rated_heater_w), "");
    row(ui, "Largest hour", &format::power(s.peak_heater_w), "");
    row(ui, "Coldest hour", &temperature(s.coldest_outdoor_c), "");
    ui.add_space(8.0);
    let cut = &s.power_cut;
    heading(ui, &format!("Power cut on {}", format::stamp(cut.starts_at)), "");
    if has_water {
        row(ui, "Hours until", "with water", "without");
    }
    let limit = temperature(s.crop_limit_c);
    let (with, without) = (&cut.with_water, &cut.without_water);
    let freezing = temperature(0.0);
    for (name, a, b) in [
        (format!("air at {limit}"), with.air_to_crop_limit_h, without.air_to_crop_limit_h),
        (format!("air at {freezing}"), with.air_to_freezing_h, without.air_to_freezing_h),
        (format!("trays at {limit}"), with.trays_to_crop_limit_h, without.trays_to_crop_limit_h),
        (format!("trays at {freezing}"), with.trays_to_freezing_h, without.trays_to_freezing_h),
    ] {
        row(ui, &name, &hold(a), if has_water { hold(b) } else { String::new() }.as_str());
    }
}

fn hold(hold: Hold) -> String {
    match hold {
        Hold::Hours(h) => format!("{} h", format::number(h, 1)),
        Hold::Beyond => "over 120 h".to_owned(),
        Hold::NotApplicable => "–".to_owned(),
    }
}
