//! A thermometer's log as a year: daily minima and maxima, or readings at any interval, of one winter.
//!
//! Sun, wind, dew point and cloud follow from the temperatures as for any year without them (`fill`). Days that the log
//! lacks are filled, and named in the notes.

mod columns;
mod daily;
mod dates;
mod days;
mod gaps;

use super::error::{Problem, WeatherError};
use super::fill::fill;
use super::raw::{RawRow, RawYear, Setting};
use super::text::text_of;
use super::year::{Place, WeatherYear};
use crate::units::HOURS_PER_DAY;
use columns::Sheet;
use days::{Day, Winter};

pub use columns::TemperatureUnit;
pub use dates::DayOrder;

/// What a log does not say itself.
#[derive(Debug, Clone, PartialEq)]
pub struct LogSettings {
    /// Where the thermometer hangs.
    pub place: Place,
    /// Inland or by the sea.
    pub setting: Setting,
    /// Unit of its temperatures.
    pub unit: TemperatureUnit,
    /// Whether day or month comes first.
    pub order: DayOrder,
}

/// Hours of the sun belong to the middle of the hour.
const MID_HOUR_H: f64 = -0.5;

/// Reads a thermometer's log (CSV with comma, semicolon or tab, plain or gzipped). Of several winters the last one with
/// the most days is taken.
///
/// # Errors
/// Says what is wrong, on which line, and what to do about it.
pub fn read_log(bytes: &[u8], name: &str, settings: &LogSettings) -> Result<WeatherYear, WeatherError> {
    let winter = winter_of(bytes, settings).map_err(|problem| problem.in_file(name))?;
    let filled = gaps::fill_days(winter, &settings.place)?;
    let raw = RawYear {
        place: settings.place.clone(),
        setting: settings.setting,
        credit: format!("Thermometer log {name}"),
        sun_offset_h: MID_HOUR_H,
        typical: true,
        rows: rows(&filled.days, &filled.dry_bulb_c),
        notes: filled.notes,
    };
    let mut year = fill(raw).map_err(|problem| problem.in_file(name))?;
    year.filled.dry_bulb += filled.filled_h;
    Ok(year)
}

fn winter_of(bytes: &[u8], settings: &LogSettings) -> Result<Winter, Problem> {
    let text = text_of(bytes)?;
    let sheet = Sheet::read(&text, settings.unit)?;
    Winter::of(&sheet, settings.order, settings.place.latitude_deg < 0.0)
}

fn rows(days: &[Day], dry_bulb_c: &[f64]) -> Vec<RawRow> {
    let hours = days.iter().flat_map(|day| (1..=HOURS_PER_DAY as u32).map(move |hour| (day, hour)));
    hours
        .zip(dry_bulb_c)
        .map(|((day, hour), t)| RawRow {
            line: day.line,
            year: day.year,
            month: day.month,
            day: day.day,
            hour,
            dry_bulb_c: Some(*t),
            ..RawRow::default()
        })
        .collect()
}
