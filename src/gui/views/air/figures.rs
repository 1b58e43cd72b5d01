//! The column of figures: advice beside the trade's rules, damp, and what other air would change.

use crate::format;
use crate::gui::asked::Standing as Asking;
use crate::gui::board::{Season, Standing};
use crate::gui::fields::Form;
use crate::gui::plots::column::{heading, row};
use crate::gui::state::State;
use crate::gui::theme::{SMALL, tokens};
use crate::model::Vents;
use crate::model::vents::OPENERS_BEGIN_C;
use crate::season::Summary;
use crate::season::airing::{AirAdvice, AirChanges, Difference};
use crate::season::drive::{MORNING_AIRING_HOUR, MORNING_AIRING_PER_H};
use crate::units::{Quantity, UnitSystem};
use egui::{RichText, Ui};

/// All of it.
pub fn figures_ui(ui: &mut Ui, state: &mut State, season: &Season, standing: Standing) {
    let units = state.prefs.units;
    allowed_rise_ui(ui, state);
    let dim = if standing == Standing::Stale { 0.6 } else { 1.0 };
    ui.scope(|ui| {
        ui.multiply_opacity(dim);
        match &season.run.summary.air_advice {
            Some(advice) => advice_ui(ui, season, advice, units),
            None => note(ui, "The season has no hour with sun, so that nothing is advised"),
        }
        openers_ui(ui, &season.inputs.scenario.vents, units);
        ui.add_space(6.0);
        damp_ui(ui, &season.run.summary, units);
    });
    ui.add_space(6.0);
    changes_ui(ui, state, season);
}

/// The rise that the grower allows; the other figures follow it.
fn allowed_rise_ui(ui: &mut Ui, state: &mut State) {
    let draft = &mut state.document.draft;
    let (index, reference_index) = (draft.selected(), draft.study.reference);
    let reference = draft.study.scenarios.get(reference_index).filter(|_| reference_index != index);
    let reference = reference.map(|s| s.vents.clone());
    let currency = draft.study.prices.currency.clone();
    let mut form = Form::new(
        state.prefs.units,
        &currency,
        (&mut state.edits, &state.troubles),
        format!("scenarios[{index}].vents"),
        "vents",
    )
    .sharing(draft.study.scenarios.len() > 1);
    if let Some(scenario) = draft.study.scenarios.get_mut(index) {
        form.number(ui, &Vents::allowed_rise_k, &mut scenario.vents, reference.as_ref());
    }
}

fn advice_ui(ui: &mut Ui, season: &Season, advice: &AirAdvice, units: UnitSystem) {
    let show = |value, quantity, decimals| format::quantity(value, quantity, units, Some(decimals));
    let rise = |k| show(k, Quantity::TemperatureDifference, 1);
    let flow = |m3_per_h| show(m3_per_h, Quantity::AirFlow, 0);
    let area = |m2| show(m2, Quantity::Area, 1);
    let range = |from: f64, to: f64, quantity: Quantity, decimals| {
        let from = format::number(quantity.unit(units).shown(from), decimals);
        format!("{from}–{}", show(to, quantity, decimals))
    };
    heading(ui, "Sunniest mild hour", &format::stamp(advice.sunny_hour_at));
    let outdoors = format::temperature(advice.outdoor_c, units);
    row(ui, "Outdoors, wind", &format!("{outdoors}, {}", show(advice.site_wind_m_per_s, Quantity::Speed, 1)), "");
    row(ui, "House over it, shut", &rise(advice.rise_shut_k), "")
        .on_hover_text("Were the hour to last, with vents and fan shut");
    row(ui, "\u{2003}as it is", &rise(advice.rise_as_it_is_k), "").on_hover_text(format!(
        "Were the hour to last, with vents and fan as they are. In the season, with what floor and water take up, the house is at {}",
        format::temperature(advice.house_air_c, units)
    ));
    row(ui, "Air moved as it is", &flow(advice.flow_as_it_is_m3_per_h), "");
    ui.add_space(6.0);
    heading(ui, "To keep to that rise", "");
    row(ui, "Fan or vents move", &flow(advice.flow_needed_m3_per_h), "");
    row(ui, "\u{2003}fan by rule", &range_of_fan(advice, &range), "")
        .on_hover_text("One air change a minute, or 8 cfm/ft² of floor (NGMA and ASABE, from memory)");
    let floor_m2 = season.run.shell.floor_m2;
    let each = |m2: Option<f64>| match m2 {
        Some(m2) => format!("{}, {} % of floor", area(m2), format::number(100.0 * m2 / floor_m2, 0)),
        None => "–".to_owned(),
    };
    row(ui, "Low and high each", &each(advice.openings_still_m2), "")
        .on_hover_text("Free area of the low openings and again of the high ones, in still air");
    row(ui, "\u{2003}in that hour's wind", &each(advice.openings_windy_m2), "");
    let rule = range(advice.rule_openings_from_m2, advice.rule_openings_to_m2, Quantity::Area, 1);
    row(ui, "\u{2003}by rule, 15–20 %", &rule, "")
        .on_hover_text("Roof vents and again side vents, of the floor (ASABE, quoted in Greenhouse Management, 2015)");
    let vents = &season.inputs.scenario.vents;
    let own = if vents.present {
        let low = format::number(Quantity::Area.unit(units).shown(vents.inlet_area_m2), 1);
        format!("{low} and {}", area(vents.outlet_area_m2))
    } else {
        "no vents".to_owned()
    };
    row(ui, "\u{2003}as they are", &own, "");
}

fn range_of_fan(advice: &AirAdvice, range: &impl Fn(f64, f64, Quantity, usize) -> String) -> String {
    let [low, high] = advice.rule_fan_m3_per_h();
    range(low, high, Quantity::AirFlow, 0)
}

/// A hint where the openers begin outside the trade's range.
fn openers_ui(ui: &mut Ui, vents: &Vents, units: UnitSystem) {
    if vents.begin_outside_practice() {
        let whole = |t_c: f64| format::quantity(t_c, Quantity::Temperature, units, Some(0));
        let (from, to) = (whole(*OPENERS_BEGIN_C.start()), whole(*OPENERS_BEGIN_C.end()));
        let begin = format::temperature(vents.opens_at_c, units);
        note(ui, &format!("Openers begin at {begin}; wax openers are made for {from} to {to} (common practice)"));
    }
}

fn damp_ui(ui: &mut Ui, s: &Summary, units: UnitSystem) {
    let hours = |n: usize| format!("{} h", format::number(n as f64, 0));
    let mass = |kg: f64| format::quantity(kg, Quantity::Mass, units, Some(0));
    heading(ui, "Damp", &format!("of {} h", format::number(s.season_hours as f64, 0)));
    row(ui, "Humid at the crop", &hours(s.damp.hours_crop_humidity_90), "")
        .on_hover_text("At least 90 % relative humidity, from which mould spreads (common practice)");
    row(ui, "Skin wet", &hours(s.damp.hours_skin_wet), "")
        .on_hover_text("More than 1 g/m² condenses in the hour, mean over the skin; frost below freezing counts too");
    if let Some(wet) = s.damp.hours_tent_wall_wet {
        row(ui, "Tent wall wet", &hours(wet), "");
    }
    row(ui, "Condensed water", &mass(s.damp.skin_condensed_kg + s.damp.tent_wall_condensed_kg), "");
    row(ui, "Mist", &mass(s.damp.mist_kg), "")
        .on_hover_text("Vapour that the air cannot hold; it falls on plants and floor");
    row(ui, "Water from flames", &mass(s.damp.burner_water_kg), "");
}

/// What other air would change; the last answer stays, dimmed, until the next is there.
fn changes_ui(ui: &mut Ui, state: &State, season: &Season) {
    let (units, currency) = (state.prefs.units, &state.document.draft.study.prices.currency);
    match state.air.standing(&season.inputs) {
        Asking::Known(changes) => all_changes(ui, changes, currency, units, ""),
        Asking::Failed(why) => note(ui, why),
        Asking::Working(_) => match state.air.last() {
            Some((_, changes)) => {
                ui.multiply_opacity(0.6);
                all_changes(ui, changes, currency, units, "working");
            }
            None => heading(ui, "What other air would change", "working"),
        },
    }
}

fn all_changes(ui: &mut Ui, changes: &AirChanges, currency: &str, units: UnitSystem, remark: &str) {
    let airing = format!("Aired {} to {} each morning", MORNING_AIRING_HOUR - 1, MORNING_AIRING_HOUR);
    let per_h = format::number(MORNING_AIRING_PER_H, 0);
    let airing_means = format!("{per_h} changes of the house's air in that hour. The difference of two whole winters");
    change_ui(ui, &airing, remark, &airing_means, &changes.morning_airing, currency);
    if let Some(flue) = &changes.flue {
        let means = "The water of its flames goes outdoors, at 80 % efficiency. The difference of two whole winters";
        change_ui(ui, "With a flue", remark, means, flue, currency);
    }
    if let Some(higher) = &changes.higher_openers {
        let start = format::quantity(*OPENERS_BEGIN_C.end(), Quantity::Temperature, units, Some(0));
        let means = format!(
            "Vents and fan that start no lower than {start}: what is saved is lost through vents set lower. The difference of two whole winters"
        );
        change_ui(ui, &format!("Vents from {start} on"), remark, &means, higher, currency);
    }
}

fn change_ui(ui: &mut Ui, title: &str, remark: &str, means: &str, d: &Difference, currency: &str) {
    let hours = |n: i64| format!("{} h", format::signed(n as f64, 0));
    heading(ui, title, remark);
    let money = match d.cost {
        Some(cost) => format::money_difference(cost, currency),
        None => format!("{} kWh", format::signed(d.heat_kwh, 0)),
    };
    row(ui, "Winter", &money, "").on_hover_text(means);
    row(ui, "Skin wet", &hours(d.hours_skin_wet), "");
    if let Some(wet) = d.hours_tent_wall_wet {
        row(ui, "Tent wall wet", &hours(wet), "");
    }
    row(ui, "Humid at the crop", &hours(d.hours_crop_humidity_90), "");
    if d.hours_above_35_c != 0 {
        row(ui, "Too hot", &hours(d.hours_above_35_c), "");
    }
    if d.hours_below_crop_limit != 0 {
        row(ui, "Below crop limit", &hours(d.hours_below_crop_limit), "");
    }
    ui.add_space(6.0);
}

fn note(ui: &mut Ui, text: &str) {
    let t = tokens(ui);
    ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(t.soft)).wrap());
}
