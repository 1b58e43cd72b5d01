//! The hourly weather that a study names: a bundled station, or a file on disk.

use super::own_weather::{colder_by, colder_note, log_settings, normals_of, place_of};
use super::sidecar::fingerprint;
use crate::model::validate::nearest_name;
use crate::model::{Site, WeatherChoice};
use crate::weather::log::read_log;
use crate::weather::normals::year_from_normals;
use crate::weather::{Climate, MAX_BYTES, WeatherError, WeatherYear, bundled, read_weather};
use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// The weather of a site, as read and as the engine needs it.
#[derive(Debug, Clone, PartialEq)]
pub struct SiteWeather {
    /// The year as read: place, credit, notes, records.
    pub year: WeatherYear,
    /// The same, prepared for the engine.
    pub climate: Climate,
}

/// Weather that could not be had.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum WeatherSourceError {
    /// No such station.
    #[error("there is no bundled station \"{key}\"; {}", proposal(*nearest, known))]
    NoSuchStation {
        /// The key.
        key: String,
        /// The nearest known key.
        nearest: Option<&'static str>,
        /// All keys.
        known: String,
    },
    /// No such file.
    #[error("there is no weather file {}; check its name, which starts at the study's folder", .0.display())]
    NoSuchFile(PathBuf),
    /// Too large to be a year of hours.
    #[error("the weather file {} has {bytes} bytes, more than the {MAX_BYTES} that are read; choose a file of one year", path.display())]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// Its size.
        bytes: u64,
    },
    /// May not be read.
    #[error("the weather file {} may not be read ({error}); check its permissions", path.display())]
    NotReadable {
        /// The file.
        path: PathBuf,
        /// What the system says.
        error: std::io::Error,
    },
    /// Another file than the one the study was made with.
    #[error("the weather file {} is not the one that this study was made with; bring that one back, or open this one anew as the study's weather", .0.display())]
    Changed(PathBuf),
    /// A table or log without a place.
    #[error("the weather needs the place's latitude and longitude, which decide its sun; enter both")]
    NoPlace,
    /// A table that has not twelve rows.
    #[error("the climate table has {0} months; enter January to December, twelve rows")]
    NotTwelveMonths(usize),
    /// Not a year of hourly weather.
    #[error(transparent)]
    Weather(#[from] WeatherError),
}

/// Loads the weather of a site. A relative file path starts at `base_dir`, the study's folder.
///
/// # Errors
/// When the station is unknown, or the file is missing, too large or no hourly weather.
pub fn load_weather(site: &Site, base_dir: &Path) -> Result<SiteWeather, WeatherSourceError> {
    let mut year = match &site.weather {
        WeatherChoice::Station(key) => station(key)?,
        WeatherChoice::File(file) => {
            let (content, name) = content_of(&base_dir.join(file), &site.weather_fingerprint)?;
            read_weather(&content, &name)?
        }
        WeatherChoice::Normals(table) => year_from_normals(&normals_of(table, place_of(site)?)?)?,
        WeatherChoice::Log(log) => {
            let (content, name) = content_of(&base_dir.join(&log.file), &site.weather_fingerprint)?;
            read_log(&content, &name, &log_settings(log, place_of(site)?))?
        }
    };
    if site.colder.is_any() {
        year.notes.push(colder_note(&site.colder));
    }
    let climate = Climate::from_year(&year).colder(&colder_by(&site.colder));
    Ok(SiteWeather { year, climate })
}

fn station(key: &str) -> Result<WeatherYear, WeatherSourceError> {
    let Some(station) = bundled::station(key) else {
        let keys: Vec<&'static str> = bundled::stations().iter().map(|s| s.key).collect();
        let nearest = nearest_name(key, keys.iter().copied());
        return Err(WeatherSourceError::NoSuchStation { key: key.to_owned(), nearest, known: keys.join(", ") });
    };
    Ok(station.load()?)
}

/// The content of the file at this path, if it has that fingerprint, and its name; an empty one fits all.
fn content_of(path: &Path, mark: &str) -> Result<(Vec<u8>, String), WeatherSourceError> {
    let reading = |error: std::io::Error| match error.kind() {
        ErrorKind::NotFound => WeatherSourceError::NoSuchFile(path.to_owned()),
        _ => WeatherSourceError::NotReadable { path: path.to_owned(), error },
    };
    let bytes = fs::metadata(path).map_err(reading)?.len();
    if (MAX_BYTES as u64) < bytes {
        return Err(WeatherSourceError::TooLarge { path: path.to_owned(), bytes });
    }
    let content = fs::read(path).map_err(reading)?;
    if !mark.is_empty() && fingerprint(&content) != mark {
        return Err(WeatherSourceError::Changed(path.to_owned()));
    }
    let name = path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
    Ok((content, name))
}

/// "did you mean …?", or what there is to choose from.
fn proposal(nearest: Option<&str>, known: &str) -> String {
    match nearest {
        Some(name) => format!("did you mean \"{name}\"? (known: {known})"),
        None => format!("choose one of: {known}"),
    }
}
