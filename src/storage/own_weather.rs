//! What the grower typed or measured of the weather, as the engine takes it.

use super::weather_source::WeatherSourceError;
use crate::format;
use crate::model::{ClimateTable, Colder, DateOrder, LogUnit, MonthRow, Site, ThermometerLog};
use crate::units::Quantity;
use crate::weather::Note;
use crate::weather::Place;
use crate::weather::colder::ColderBy;
use crate::weather::log::{DayOrder, LogSettings, TemperatureUnit};
use crate::weather::normals::{Brightness, MonthNormal, Normals, zone_of_longitude_h};
use crate::weather::raw::Setting;

/// The place of a site, on the clock of its longitude.
pub(super) fn place_of(site: &Site) -> Result<Place, WeatherSourceError> {
    let (Some(latitude_deg), Some(longitude_deg)) = (site.latitude_deg, site.longitude_deg) else {
        return Err(WeatherSourceError::NoPlace);
    };
    let name = if site.name.trim().is_empty() { "The site" } else { site.name.trim() };
    Ok(Place {
        name: name.to_owned(),
        latitude_deg,
        longitude_deg,
        utc_offset_h: zone_of_longitude_h(longitude_deg),
        elevation_m: site.elevation_m,
    })
}

/// A table as the engine takes it.
pub(super) fn normals_of(table: &ClimateTable, place: Place) -> Result<Normals, WeatherSourceError> {
    let months: Vec<MonthNormal> = table.months.iter().map(month).collect();
    let found = months.len();
    let months = months.try_into().map_err(|_| WeatherSourceError::NotTwelveMonths(found))?;
    Ok(Normals { place, months })
}

fn month(row: &MonthRow) -> MonthNormal {
    let cloud = row.cloud_share.map(|share| Brightness::CloudTenths(10.0 * share));
    MonthNormal {
        min_c: row.min_c,
        max_c: row.max_c,
        brightness: row.sunshine_h.map(Brightness::SunshineHours).or(cloud),
        wind_m_per_s: row.wind_m_per_s,
    }
}

/// What a log does not say itself.
pub(super) fn log_settings(log: &ThermometerLog, place: Place) -> LogSettings {
    LogSettings {
        place,
        setting: if log.coast { Setting::Coast } else { Setting::Inland },
        unit: match log.unit {
            LogUnit::AsTitled => TemperatureUnit::AsTitled,
            LogUnit::Celsius => TemperatureUnit::Celsius,
            LogUnit::Fahrenheit => TemperatureUnit::Fahrenheit,
        },
        order: match log.dates {
            DateOrder::AsShown => DayOrder::AsShown,
            DateOrder::DayFirst => DayOrder::DayFirst,
            DateOrder::MonthFirst => DayOrder::MonthFirst,
        },
    }
}

/// Cold on top, as the engine takes it.
pub(super) fn colder_by(colder: &Colder) -> ColderBy {
    ColderBy {
        shift_k: colder.shift_k,
        snap_depth_k: colder.snap_depth_k,
        snap_days: colder.snap_days as usize,
        snap_from: (colder.snap_from_month, colder.snap_from_day),
    }
}

/// A sentence on the cold on top.
pub(super) fn colder_note(colder: &Colder) -> Note {
    let mut note = Note::from("Colder than the source: ");
    if colder.shift_k != 0.0 {
        note = note.words("every hour is taken ").figure(colder.shift_k, Quantity::TemperatureDifference, 1);
        note = note.words(if colder.snap_depth_k == 0.0 { " colder." } else { " colder, and " });
    }
    if colder.snap_depth_k != 0.0 {
        let from = format!("{} {}", colder.snap_from_day, format::month(colder.snap_from_month));
        note = note.words(format!("{} days from {from} are taken ", colder.snap_days));
        note = note.figure(colder.snap_depth_k, Quantity::TemperatureDifference, 1).words(" colder.");
    }
    note
}
