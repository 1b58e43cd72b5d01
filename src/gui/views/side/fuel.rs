//! The fuel calendar of the chosen scenario: what each month takes, how much must have come by when, what runs out when.

use crate::figures;
use crate::format;
use crate::gui::handout::{Make, handout_ui};
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, Tokens, regular, semibold, tokens};
use crate::model::Scenario;
use crate::safety::cylinder::{PLANNING_SHARE_LEFT, draw_limit_w};
use crate::season::ScenarioRun;
use crate::season::fuel_calendar::FuelCalendar;
use crate::units::UnitSystem;
use egui::{Align2, RichText, Sense, Stroke, Ui, pos2, vec2};
use std::sync::Arc;

/// Height of a month's row; right ends of its three columns.
const ROW: f32 = 22.0;
const COLUMNS: [f32; 3] = [40.0, 160.0, 320.0];
/// Most units that are named with their day.
const NAMED: usize = 24;

/// The calendar; nothing for what comes by wire or pipe.
pub fn fuel_ui(ui: &mut Ui, state: &mut State) {
    let Some((run, scenario)) =
        state.chosen_season().map(|(season, _)| (Arc::clone(&season.run), season.inputs.scenario.clone()))
    else {
        return;
    };
    let Some(calendar) = &run.fuel_calendar else { return };
    let name = state.document.draft.scenario().map(|s| s.name.clone()).unwrap_or_default();
    ui.add_space(18.0);
    let figures = || -> Make {
        let calendar = calendar.clone();
        Box::new(move || figures::calendar(&[(&name, &calendar)]))
    };
    handout_ui(ui, state, "fuel calendar", None, figures, |ui, state| {
        calendar_ui(ui, state, &scenario, &run, calendar)
    });
}

fn calendar_ui(ui: &mut Ui, state: &State, scenario: &Scenario, run: &ScenarioRun, calendar: &FuelCalendar) {
    let t = tokens(ui);
    ui.label(RichText::new(format!("Fuel calendar, by the {}", calendar.unit)).font(semibold(BODY)));
    ui.add_space(4.0);
    months_ui(ui, calendar, &t);
    ui.add_space(6.0);
    let mut sentences: Vec<String> = runs_out(calendar).into_iter().collect();
    sentences.push(format!(
        "Have {} in store for the hardest fortnight",
        format::number(calendar.hardest_fortnight.ceil().max(1.0), 0)
    ));
    if let Some(hours) = calendar.hours_at_full_output {
        sentences
            .push(format!("One lasts {} h at full output", format::number(hours, if hours < 10.0 { 1 } else { 0 })));
    }
    if let Some(text) = evaporation(state, scenario, run, state.prefs.units) {
        sentences.push(text);
    }
    ui.add(egui::Label::new(RichText::new(sentences.join(". ")).size(SMALL + 0.5).color(t.soft)).wrap());
}

fn months_ui(ui: &mut Ui, calendar: &FuelCalendar, t: &Tokens) {
    let head = ["Month", "used", "to have come by its end"].map(str::to_owned);
    line_ui(ui, &head, true, t);
    for month in &calendar.months {
        let cells =
            [format::month(month.month).to_owned(), format::fuel(month.used), format::number(month.needed_by_end, 0)];
        line_ui(ui, &cells, false, t);
    }
}

fn line_ui(ui: &mut Ui, cells: &[String; 3], head: bool, t: &Tokens) {
    let (rect, response) = ui.allocate_exact_size(vec2(COLUMNS[2] + 8.0, ROW), Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Row, true, cells.join(", ")));
    let (font, ink) = if head { (regular(SMALL), t.soft) } else { (regular(BODY - 0.5), t.ink) };
    for (index, (cell, right)) in cells.iter().zip(COLUMNS).enumerate() {
        let (align, x) =
            if index == 0 { (Align2::LEFT_CENTER, rect.left()) } else { (Align2::RIGHT_CENTER, rect.left() + right) };
        ui.painter().text(pos2(x, rect.center().y), align, cell, font.clone(), ink);
    }
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.hairline));
}

/// "They run out on 3 Nov, 12 Nov"; nothing for what is bought by so small a unit that nobody counts them.
fn runs_out(calendar: &FuelCalendar) -> Option<String> {
    let days: Vec<String> = calendar.runs_out.iter().map(|at| format::day(*at)).collect();
    match days.len() {
        0 => Some("The first outlasts the season".to_owned()),
        1..=NAMED => Some(format!("They run out on {}", days.join(", "))),
        _ => None,
    }
}

/// Whether the cylinder can give the gas that the largest hour takes, with a third left in the coldest hour.
fn evaporation(state: &State, scenario: &Scenario, run: &ScenarioRun, units: UnitSystem) -> Option<String> {
    let net_per_gross = state.rows.fuel(&scenario.heater.fuel)?.net_per_gross;
    let efficiency = scenario.heater.gross_efficiency(net_per_gross);
    let cylinder = state.rows.cylinder(&run.summary.fuel_unit)?;
    let coldest_c = run.hours.outdoor_c.iter().copied().reduce(f64::min)?;
    let limit_w = draw_limit_w(cylinder, PLANNING_SHARE_LEFT * cylinder.content_kg, coldest_c);
    let needed_w = run.hours.heater_w.iter().copied().reduce(f64::max)? / efficiency;
    let enough = if limit_w >= needed_w { "" } else { ", too little: join cylinders or keep them fuller" };
    Some(format!(
        "With a third left at {} a cylinder gives at most {} of gas (published table), the largest hour takes {}{enough}",
        format::temperature(coldest_c, units),
        format::power(limit_w),
        format::power(needed_w)
    ))
}
