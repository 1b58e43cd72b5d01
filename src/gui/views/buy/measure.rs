//! The kinds of measures, what each is at first, and the particulars of one.

use crate::gui::editor::{heater_kind_ui, layers_ui, setpoints_ui, vessels_ui, zones};
use crate::gui::fields::{Form, Spec};
use crate::model::candidate::CandidateChange;
use crate::model::house::RATE_RANGE_PER_H;
use crate::model::{Catalogue, ChoiceInput, Heater, House, NightCover, Scenario, Tent, Tightness, Vessels};
use crate::units::Quantity;
use egui::Ui;

type MakeChange = fn(&Scenario, &Catalogue) -> CandidateChange;

/// What each kind is at first.
pub const KINDS: [MakeChange; 9] = [
    |s, _| CandidateChange::Sheet(s.covering.sheets.last().cloned().unwrap_or("film".to_owned())),
    |s, _| CandidateChange::Tent(tent(s)),
    |_, _| CandidateChange::NightCover(NightCover { present: true, ..NightCover::default() }),
    |_, _| CandidateChange::TentNightCover(NightCover { present: true, ..NightCover::default() }),
    |_, _| CandidateChange::Vessels(Vessels::default()),
    |s, rows| CandidateChange::Heater(heater(s, rows)),
    |s, _| CandidateChange::Standby(Heater { present: true, ..s.standby.clone() }),
    |_, _| CandidateChange::Edge(INSULATED_EDGE_W_PER_MK),
    |s, _| CandidateChange::Tightness(s.house.tightness.tighter()),
];

/// Floor edge with 60 cm of R-10 board, W/(m·K); see [`House::edge_f_w_per_mk`].
const INSULATED_EDGE_W_PER_MK: f64 = 0.94;
/// Length of the house that a tent leaves free at first, m.
const FREE_M: f64 = 1.0;

/// What a scenario lacks of the measures that most people weigh.
pub fn usual(s: &Scenario, rows: &Catalogue) -> Vec<CandidateChange> {
    let wanted = [
        true,
        !s.tent.present,
        !s.night_cover.present,
        s.tent.present && !s.tent.night_cover.present,
        true,
        false,
        false,
        s.house.edge_f_w_per_mk > INSULATED_EDGE_W_PER_MK,
        s.house.tightness != Tightness::Sealed,
    ];
    KINDS.iter().zip(wanted).filter(|(_, wanted)| *wanted).map(|(make, _)| make(s, rows)).collect()
}

/// A tent that leaves a way in.
fn tent(s: &Scenario) -> Tent {
    let usual = Tent { present: true, ..Tent::default() };
    Tent { length_m: usual.length_m.min((s.house.length_m - FREE_M).max(Tent::length_m.min)), ..usual }
}

/// The next other kind of heater that the catalogue has, of the same output.
fn heater(s: &Scenario, rows: &Catalogue) -> Heater {
    let other = rows.heaters.iter().find(|kind| kind.fuel != s.heater.fuel);
    let heater = Heater { present: true, ..s.heater.clone() };
    other.map_or(heater.clone(), |kind| Heater { fuel: kind.fuel.clone(), ..filled(&heater, kind) })
}

fn filled(heater: &Heater, kind: &crate::model::HeaterKind) -> Heater {
    Heater {
        name: kind.name.clone(),
        efficiency: kind.efficiency,
        basis: crate::model::HeatBasis::Gross,
        vented: kind.vented,
        needs_mains: kind.needs_mains,
        heat_pump: kind.heat_pump,
        fan_w: kind.fan_w,
        ..heater.clone()
    }
}

/// The fields of a measure.
pub fn particulars_ui(ui: &mut Ui, form: &mut Form, change: &mut CandidateChange, rows: &Catalogue) {
    ui.spacing_mut().item_spacing.y = 2.0;
    form.troubles_here(ui);
    match change {
        CandidateChange::Sheet(key) => {
            let sheets: Vec<_> = rows.sheets.iter().map(|sheet| (sheet.key.clone(), sheet.name.clone())).collect();
            form.choice(ui, &named("Sheet", "Which sheet is added on the inner side"), key, &sheets, None);
        }
        CandidateChange::Tent(tent) => {
            for input in
                [&Tent::length_m, &Tent::width_m, &Tent::height_m, &Tent::base_height_m, &Tent::air_changes_per_h]
            {
                form.number(ui, input, tent, None);
            }
            layers_ui(ui, form, &Tent::sheets, &mut tent.sheets, rows, None);
        }
        CandidateChange::NightCover(cover) | CandidateChange::TentNightCover(cover) => {
            let screens: Vec<_> = rows.screens.iter().map(|screen| (screen.key.clone(), screen.name.clone())).collect();
            form.choice(ui, &NightCover::screen, &mut cover.screen, &screens, None);
        }
        CandidateChange::Vessels(vessels) => vessels_ui(ui, form, vessels, None),
        CandidateChange::Heater(heater) => heater_ui(ui, form, heater, rows),
        CandidateChange::Standby(heater) => {
            setpoints_ui(ui, form, heater, None);
            heater_ui(ui, form, heater, rows);
        }
        CandidateChange::Edge(factor) => {
            let spec = Spec { key: "", label: "Floor edge", ..Spec::of(&House::edge_f_w_per_mk) };
            if let Some(new) = form.value_row(ui, &spec, *factor, None, None) {
                *factor = new;
            }
        }
        CandidateChange::Tightness(tightness) => tightness_ui(ui, form, tightness),
    }
}

fn heater_ui(ui: &mut Ui, form: &mut Form, heater: &mut Heater, rows: &Catalogue) {
    heater_kind_ui(ui, form, heater, rows);
    form.number(ui, &Heater::rated_w, heater, None);
    if !heater.heat_pump {
        form.number(ui, &Heater::efficiency, heater, None);
    }
    form.choice(ui, &Heater::zone, &mut heater.zone, &zones(), None);
}

fn tightness_ui(ui: &mut Ui, form: &mut Form, tightness: &mut Tightness) {
    let rate = tightness.design_air_changes_per_h();
    let classes = [
        (Tightness::Sealed, "Sealed, 0.5 per hour".to_owned()),
        (Tightness::Sound, "Sound, 1 per hour".to_owned()),
        (Tightness::Worn, "Worn, 1.5 per hour".to_owned()),
        (Tightness::Rate(rate), "Your own rate".to_owned()),
    ];
    form.choice(ui, &House::tightness, tightness, &classes, None);
    if let Tightness::Rate(rate) = tightness {
        let (min, max) = (*RATE_RANGE_PER_H.start(), *RATE_RANGE_PER_H.end());
        let help = "Air changes per hour in design weather";
        let spec = Spec { key: "", label: "Rate", quantity: Quantity::AirChanges, min, max, help, source: "" };
        if let Some(new) = form.value_row(ui, &spec, *rate, None, None) {
            *rate = new;
        }
    }
}

fn named(label: &'static str, help: &'static str) -> ChoiceInput {
    ChoiceInput { key: "", label, help, doubt: None }
}
