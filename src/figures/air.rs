//! What the plots of air and damp draw: hours by month, and some days hour by hour.

use super::plots::{hourly, titled};
use super::{Figures, Named};
use crate::units::{Quantity, UnitSystem};
use std::ops::Range;

/// Overheated, wet and humid hours of every month, a block of rows per scenario.
#[must_use]
pub fn air_months(runs: &[Named]) -> Figures {
    let head = ["scenario", "month", "house above 35 °C, h", "skin wet, h", "tent wall wet, h", "humid at the crop, h"];
    let rows = runs.iter().flat_map(|named| {
        named.run.summary.air_by_month.iter().map(|m| {
            let tent = m.hours_tent_wall_wet.map_or(String::new(), |hours| hours.to_string());
            let [hot, skin, humid] =
                [m.hours_above_35_c, m.hours_skin_wet, m.hours_crop_humidity_90].map(|n| n.to_string());
            vec![named.name.to_owned(), m.month.to_string(), hot, skin, tent, humid]
        })
    });
    Figures { head: head.map(str::to_owned).to_vec(), rows: rows.collect() }
}

/// Temperatures, openings and humidity through some hours of a season; `crop_in_tent` tells whose humidity is the crop's.
#[must_use]
pub fn air_days(named: Named, hours: Range<usize>, crop_in_tent: bool, units: UnitSystem) -> Figures {
    let h = &named.run.hours;
    let unit = Quantity::Temperature.unit(units);
    let warm: [(&str, &[f64]); 3] =
        [("outdoors", &h.outdoor_c), ("house", &h.house_air_c), ("inner tent", &h.tent_air_c)];
    let there = warm.into_iter().filter(|(_, column)| !column.is_empty());
    let shown = |(name, column): (&str, &[f64])| {
        (titled(name, unit.symbol), column.iter().map(|t_c| unit.shown(*t_c)).collect())
    };
    let mut columns: Vec<(String, Vec<f64>)> = there.map(shown).collect();
    let shares: [(&str, &[f64]); 3] = [
        ("vents open", &h.vent_opening),
        ("fan", &h.fan_share),
        ("humidity at the crop", h.damp.crop_humidity(crop_in_tent)),
    ];
    columns
        .extend(shares.map(|(name, column)| (titled(name, "%"), column.iter().map(|share| 100.0 * share).collect())));
    hourly(Some(named), hours, &columns, 2)
}
