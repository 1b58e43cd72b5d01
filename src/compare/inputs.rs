//! Rows of the inputs in which the scenarios differ.

use super::{Best, Cell, Group, Row, words};
use crate::model::{
    Bench, Catalogue, CostLine, Crop, Heater, House, NumberInput, Precautions, Scenario, Study, Tent, Vents,
};
use crate::units::{Quantity, UnitSystem};

const NOT_THERE: &str = "not there";

/// The rows whose cells are not all alike.
pub(super) fn differing(study: &Study, catalogue: &Catalogue) -> Vec<Row> {
    let all = &study.scenarios;
    let mut rows = choices(all, catalogue);
    numbers(&mut rows, all, "house", "House", House::NUMBERS, |s| Some(&s.house));
    numbers(&mut rows, all, "tent", "Tent", Tent::NUMBERS, |s| s.tent.present.then_some(&s.tent));
    numbers(&mut rows, all, "heater", "Heater", Heater::NUMBERS, |s| s.heater.present.then_some(&s.heater));
    numbers(&mut rows, all, "standby", "Standby", Heater::NUMBERS, |s| s.standby.present.then_some(&s.standby));
    numbers(&mut rows, all, "crop", "Crop", Crop::NUMBERS, |s| Some(&s.crop));
    numbers(&mut rows, all, "bench", "Bench", Bench::NUMBERS, |s| s.bench.present.then_some(&s.bench));
    numbers(&mut rows, all, "vents", "Vents", Vents::NUMBERS, |s| {
        (s.vents.present || s.vents.fan_present).then_some(&s.vents)
    });
    numbers(&mut rows, all, "precautions", "Precautions", Precautions::NUMBERS, |s| Some(&s.precautions));
    // What one scenario lacks is told by its part's own row, not by each of the part's numbers.
    rows.retain(|row| {
        let mut told = row.cells.iter().filter(|cell| **cell != Cell::Empty(NOT_THERE));
        told.next().is_some_and(|first| told.any(|cell| cell != first))
    });
    rows
}

fn numbers<T>(
    rows: &mut Vec<Row>,
    scenarios: &[Scenario],
    key: &str,
    part: &str,
    inputs: &[NumberInput<T>],
    of: impl Fn(&Scenario) -> Option<&T>,
) {
    for input in inputs {
        let cells = scenarios.iter().map(|s| Cell::or(of(s).map(input.get), NOT_THERE)).collect();
        rows.push(Row {
            key: format!("{key}.{}", input.key).into(),
            label: format!("{part}: {}", input.label),
            limit_c: None,
            group: Group::Inputs,
            quantity: input.quantity,
            decimals: input.quantity.unit(UnitSystem::Metric).decimals,
            best: Best::None,
            cells,
        });
    }
}

/// Choices in words, and numbers that are no plain input.
fn choices(scenarios: &[Scenario], catalogue: &Catalogue) -> Vec<Row> {
    type Say<'a> = Box<dyn Fn(&Scenario) -> Cell + 'a>;
    let text = |words: &str| Cell::Text(words.to_owned());
    let sheets = |keys: &[String]| Cell::Text(words::sheets(keys, catalogue));
    let there = |present: bool, cell: Cell| if present { cell } else { text(words::NONE) };
    let lines: Vec<(&'static str, &'static str, Quantity, Say)> = vec![
        ("covering", "Covering", Quantity::Count, Box::new(move |s| sheets(&s.covering.sheets))),
        (
            "parts",
            "Parts that differ",
            Quantity::Count,
            Box::new(|s| {
                let count = s.covering.exceptions.len();
                Cell::Text(if count == 0 { "none".to_owned() } else { format!("{count}") })
            }),
        ),
        (
            "night-cover",
            "Night cover",
            Quantity::Count,
            Box::new(|s| Cell::Text(words::cover(&s.night_cover, catalogue))),
        ),
        (
            "tent-sheets",
            "Inner tent",
            Quantity::Count,
            Box::new(move |s| there(s.tent.present, sheets(&s.tent.sheets))),
        ),
        (
            "tent-base",
            "Tent stands on",
            Quantity::Count,
            Box::new(move |s| there(s.tent.present, text(words::base(s.tent.base)))),
        ),
        (
            "tent-opening",
            "Tent opened",
            Quantity::Count,
            Box::new(move |s| there(s.tent.present, text(words::opening(s.tent.opening)))),
        ),
        (
            "tent-cover",
            "Tent night cover",
            Quantity::Count,
            Box::new(move |s| there(s.tent.present, Cell::Text(words::cover(&s.tent.night_cover, catalogue)))),
        ),
        (
            "water",
            "Water",
            Quantity::Liquid,
            Box::new(move |s| {
                let litres = s.water.vessels.iter().map(|v| f64::from(v.count) * v.litres_each).sum();
                there(s.water.present, Cell::Number(litres))
            }),
        ),
        (
            "heater",
            "Heater",
            Quantity::Count,
            Box::new(move |s| there(s.heater.present, Cell::Text(s.heater.name.clone()))),
        ),
        (
            "fuel-name",
            "Energy",
            Quantity::Count,
            Box::new(move |s| there(s.heater.present, Cell::Text(words::fuel(&s.heater, catalogue)))),
        ),
        (
            "heats",
            "Heater warms",
            Quantity::Count,
            Box::new(move |s| there(s.heater.present, Cell::Text(words::place(&s.heater)))),
        ),
        (
            "basis",
            "Efficiency on",
            Quantity::Count,
            Box::new(move |s| there(s.heater.present, text(words::basis(s.heater.basis)))),
        ),
        ("setpoint-day", "Day setpoint", Quantity::Temperature, Box::new(|s| Cell::or(s.heater.setpoint_day_c, "off"))),
        (
            "setpoint-night",
            "Night setpoint",
            Quantity::Temperature,
            Box::new(|s| Cell::or(s.heater.setpoint_night_c, "off")),
        ),
        (
            "standby",
            "Standby heater",
            Quantity::Count,
            Box::new(move |s| there(s.standby.present, Cell::Text(s.standby.name.clone()))),
        ),
        (
            "precautions-cut-out",
            Precautions::residual_current_device.label,
            Quantity::Count,
            Box::new(move |s| text(s.precautions.residual_current_device.name())),
        ),
        (
            "precautions-co-alarm",
            Precautions::carbon_monoxide_alarm.label,
            Quantity::Count,
            Box::new(move |s| text(s.precautions.carbon_monoxide_alarm.name())),
        ),
        (
            "precautions-frost-alarm",
            Precautions::low_temperature_alarm.label,
            Quantity::Count,
            Box::new(move |s| text(s.precautions.low_temperature_alarm.name())),
        ),
        (
            "precautions-air",
            Precautions::combustion_air_m2.label,
            Quantity::SmallArea,
            Box::new(|s| Cell::or(s.precautions.combustion_air_m2, "not known")),
        ),
        ("vents-present", "Vents", Quantity::Count, Box::new(move |s| text(words::vents(&s.vents)))),
        (
            "costs",
            "Lines of buying costs",
            Quantity::Count,
            Box::new(|s| Cell::Number(s.costs.iter().filter(|c: &&CostLine| c.price > 0.0).count() as f64)),
        ),
    ];
    let row = |(key, label, quantity, say): (&'static str, &'static str, Quantity, Say)| Row {
        key: key.into(),
        label: label.to_owned(),
        limit_c: None,
        group: Group::Inputs,
        quantity,
        decimals: 0,
        best: Best::None,
        cells: scenarios.iter().map(say).collect(),
    };
    lines.into_iter().map(row).collect()
}
