//! Checks of catalogue keys and of the study's own rows.

use super::check::Check;
use super::kind::ProblemKind;
use super::nearest::nearest_name;
use crate::model::catalogue::{Fuel, Screen, Sheet};
use crate::model::own::OwnRows;
use crate::units::Quantity;

/// Range of the heat in one unit of an own fuel, kWh: a cubic foot of lean gas to a ship's tank.
const HEAT_PER_UNIT_KWH: (f64, f64) = (0.001, 1.0e7);
/// Range of an own fuel's net per gross heat content: pure hydrogen has 0.85 (from memory).
const NET_PER_GROSS: (f64, f64) = (0.5, 1.0);
/// Range of an own fuel's CO₂, kg/kWh; lignite has about 0.4 (from memory).
const CO2_KG_PER_KWH: (f64, f64) = (0.0, 2.0);

/// Writes down a key that nobody knows, with the nearest known one.
pub(super) fn unknown<'a>(
    what: &'static str,
    key: &str,
    known: impl Iterator<Item = &'a str> + Clone,
    field: &str,
    label: &str,
    check: &mut Check,
) {
    let nearest = nearest_name(key, known.clone()).map(str::to_owned);
    let known = known.map(str::to_owned).collect();
    check.add(field, label, ProblemKind::Unknown { what, key: key.to_owned(), nearest, known });
}

pub(super) fn own_rows(own: &OwnRows, check: &mut Check) {
    let check = check.within("own");
    keys("sheets", own.sheets.iter().map(|row| (row.key.as_str(), row.source.as_str())), &check);
    keys("screens", own.screens.iter().map(|row| (row.key.as_str(), row.source.as_str())), &check);
    keys("fuels", own.fuels.iter().map(|row| (row.key.as_str(), row.source.as_str())), &check);
    for (index, sheet) in own.sheets.iter().enumerate() {
        own_sheet(sheet, &mut check.within(&format!("sheets[{index}]")));
    }
    for (index, screen) in own.screens.iter().enumerate() {
        check.within(&format!("screens[{index}]")).numbers(screen, Screen::NUMBERS);
    }
    for (index, fuel) in own.fuels.iter().enumerate() {
        own_fuel(fuel, &mut check.within(&format!("fuels[{index}]")));
    }
}

fn keys<'a>(list: &str, rows: impl Iterator<Item = (&'a str, &'a str)>, check: &Check) {
    let mut seen: Vec<&str> = Vec::new();
    for (index, (key, source)) in rows.enumerate() {
        let mut check = check.within(&format!("{list}[{index}]"));
        if key.trim().is_empty() {
            check.add("key", "Key", ProblemKind::Empty);
        } else if seen.contains(&key) {
            check.add("key", "Key", ProblemKind::Twice { name: key.to_owned() });
        }
        if source.trim().is_empty() {
            check.add("source", "Source", ProblemKind::NoSource);
        }
        seen.push(key);
    }
}

fn own_sheet(sheet: &Sheet, check: &mut Check) {
    check.numbers(sheet, Sheet::NUMBERS);
    let sum = sheet.emissivity + sheet.longwave_transmittance;
    // A hair above one is rounding of typed hundredths.
    if sum > 1.0 + 1e-9 && sheet.emissivity <= 1.0 && sheet.longwave_transmittance <= 1.0 {
        check.add("emissivity", Sheet::emissivity.label, ProblemKind::SharesAboveOne { sum });
    }
}

fn own_fuel(fuel: &Fuel, check: &mut Check) {
    if fuel.units.is_empty() {
        check.add("units", "Units", ProblemKind::NoUnit);
    }
    for (index, unit) in fuel.units.iter().enumerate() {
        let mut check = check.within(&format!("units[{index}]"));
        if unit.unit.trim().is_empty() {
            check.add("unit", "Unit", ProblemKind::Empty);
        }
        check.number(
            "kwh_gross_per_unit",
            "Heat in one unit",
            unit.kwh_gross_per_unit,
            HEAT_PER_UNIT_KWH,
            Quantity::Energy,
        );
    }
    check.number("net_per_gross", "Net per gross", fuel.net_per_gross, NET_PER_GROSS, Quantity::Ratio);
    if let Some(co2) = fuel.co2_kg_per_kwh {
        check.number("co2_kg_per_kwh", "CO₂ per kWh", co2, CO2_KG_PER_KWH, Quantity::Ratio);
    }
}
