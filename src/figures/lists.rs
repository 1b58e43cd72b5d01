//! Fuel calendar and steps of the saving, a block of rows per scenario.

use super::{Figures, plain};
use crate::format;
use crate::season::fuel_calendar::FuelCalendar;
use crate::season::saving::SavingStep;

/// Months of the fuel calendars; on which days a unit runs out stands in one cell.
#[must_use]
pub fn calendar(calendars: &[(&str, &FuelCalendar)]) -> Figures {
    let head = ["scenario", "month", "unit", "used", "to have come by its end", "runs out on"];
    let row = |name: &str, calendar: &FuelCalendar, place: usize| {
        let month = calendar.months[place];
        let days = calendar.runs_out.iter().filter(|at| at.month == month.month).map(|at| format::day(*at));
        vec![
            name.to_owned(),
            month.month.to_string(),
            calendar.unit.clone(),
            plain(month.used, 2),
            plain(month.needed_by_end, 0),
            days.collect::<Vec<_>>().join("; "),
        ]
    };
    let rows = calendars.iter().flat_map(|(name, calendar)| {
        (0..calendar.months.len()).map(|place| row(name, calendar, place)).collect::<Vec<_>>()
    });
    Figures { head: head.map(str::to_owned).to_vec(), rows: rows.collect() }
}

/// Heat and money after each step from the baseline to the scenario, and the difference that the step makes.
#[must_use]
pub fn steps(scenarios: &[(&str, &[SavingStep])], currency: &str) -> Figures {
    let head = [
        "scenario".to_owned(),
        "step".to_owned(),
        "heat after it, kWh".to_owned(),
        "its difference, kWh".to_owned(),
        format!("money after it, {currency}"),
        format!("its difference, {currency}"),
    ];
    let money = |amount: Option<f64>| plain(amount.unwrap_or(f64::NAN), 2);
    let row = |name: &str, steps: &[SavingStep], place: usize| {
        let (step, before) = (&steps[place], place.checked_sub(1).map(|place| &steps[place]));
        let heat_kwh = before.map_or(f64::NAN, |before| step.heat_kwh - before.heat_kwh);
        vec![
            name.to_owned(),
            step.change.name().to_owned(),
            plain(step.heat_kwh, 1),
            plain(heat_kwh, 1),
            money(step.cost),
            money(step.cost.zip(before.and_then(|before| before.cost)).map(|(after, before)| after - before)),
        ]
    };
    let rows = scenarios
        .iter()
        .flat_map(|(name, steps)| (0..steps.len()).map(|place| row(name, steps, place)).collect::<Vec<_>>());
    Figures { head: head.to_vec(), rows: rows.collect() }
}
