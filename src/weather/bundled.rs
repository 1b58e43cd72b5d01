//! The station-years that come with the program. Credits and licences: `assets/weather/NOTICES.md`.

use std::io::Read;

use flate2::read::GzDecoder;

use super::error::{Problem, WeatherError};
use super::fill::fill;
use super::raw::{RawRow, RawYear, Setting};
use super::stations::STATIONS;
use super::year::{Place, WeatherYear};

/// Notices that must go with the bundled data.
pub const NOTICES: &str = include_str!("../../assets/weather/NOTICES.md");
/// Radius of the earth for distances, km (mean radius, IUGG).
const EARTH_RADIUS_KM: f64 = 6371.0;

/// A station-year that comes with the program.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Short name in files and commands.
    pub key: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// One line on its climate.
    pub climate: &'static str,
    /// Degrees, north positive.
    pub latitude_deg: f64,
    /// Degrees, east positive.
    pub longitude_deg: f64,
    /// Hours from UTC of local standard time.
    pub utc_offset_h: f64,
    /// Metres above sea level.
    pub elevation_m: f64,
    /// Credit line.
    pub credit: &'static str,
    /// Whether it is a typical year, stitched from months of several years; else one measured year.
    pub typical: bool,
    /// Instant of the irradiance relative to the stamp, hours.
    pub sun_offset_h: f64,
    /// Gzipped CSV.
    pub(super) packed: &'static [u8],
}

impl Station {
    /// Where it lies.
    #[must_use]
    pub fn place(&self) -> Place {
        Place {
            name: self.name.to_owned(),
            latitude_deg: self.latitude_deg,
            longitude_deg: self.longitude_deg,
            utc_offset_h: self.utc_offset_h,
            elevation_m: self.elevation_m,
        }
    }

    /// Unpacks its year.
    ///
    /// # Errors
    /// When the built-in data are damaged.
    pub fn load(&self) -> Result<WeatherYear, WeatherError> {
        self.unpack().and_then(fill).map_err(|problem| problem.in_file(self.key))
    }

    fn unpack(&self) -> Result<RawYear, Problem> {
        let mut text = String::new();
        GzDecoder::new(self.packed)
            .read_to_string(&mut text)
            .map_err(|e| Problem::BadGzip { reason: e.to_string() })?;
        let rows = text.lines().enumerate().skip(1).map(|(k, line)| row_of_line(k + 1, line));
        Ok(RawYear {
            place: self.place(),
            setting: Setting::Inland,
            credit: self.credit.to_owned(),
            sun_offset_h: self.sun_offset_h,
            typical: self.typical,
            rows: rows.collect::<Result<_, _>>()?,
            notes: Vec::new(),
        })
    }
}

/// The stations, coldest first; the measured years last.
#[must_use]
pub fn stations() -> &'static [Station] {
    &STATIONS
}

/// The station with this key.
#[must_use]
pub fn station(key: &str) -> Option<&'static Station> {
    STATIONS.iter().find(|station| station.key == key)
}

/// Unpacks the year of the station with this key.
///
/// # Errors
/// When there is no such station.
pub fn load(key: &str) -> Result<WeatherYear, WeatherError> {
    let known = || STATIONS.map(|s| s.key).join(", ");
    station(key).ok_or_else(|| Problem::UnknownStation { known: known() }.in_file(key))?.load()
}

/// All stations with their distance in km, nearest first.
#[must_use]
pub fn nearest(latitude_deg: f64, longitude_deg: f64) -> Vec<(&'static Station, f64)> {
    let mut found: Vec<_> = STATIONS
        .iter()
        .map(|s| (s, distance_km([latitude_deg, longitude_deg], [s.latitude_deg, s.longitude_deg])))
        .collect();
    found.sort_by(|a, b| a.1.total_cmp(&b.1));
    found
}

/// Great-circle distance by the haversine formula.
fn distance_km(from_deg: [f64; 2], to_deg: [f64; 2]) -> f64 {
    let [lat_a, lon_a] = from_deg.map(f64::to_radians);
    let [lat_b, lon_b] = to_deg.map(f64::to_radians);
    let half_chord =
        ((lat_b - lat_a) / 2.0).sin().powi(2) + lat_a.cos() * lat_b.cos() * ((lon_b - lon_a) / 2.0).sin().powi(2);
    2.0 * EARTH_RADIUS_KM * half_chord.clamp(0.0, 1.0).sqrt().asin()
}

/// Columns of the bundled files, in order.
const COLUMNS: [&str; 12] = [
    "year",
    "month",
    "day",
    "hour",
    "dry bulb",
    "dew point",
    "wind",
    "global sun",
    "direct normal sun",
    "diffuse sun",
    "infrared",
    "opaque cloud",
];

fn row_of_line(line: usize, text: &str) -> Result<RawRow, Problem> {
    let mut values = [None; COLUMNS.len()];
    for ((cell, column), value) in text.split(',').zip(COLUMNS).zip(&mut values) {
        if !cell.is_empty() {
            let number: f64 = cell.parse().map_err(|_| Problem::BadNumber { line, column, text: cell.to_owned() })?;
            *value = Some(number);
        }
    }
    let [year, month, day, hour, dry_bulb, dew_point, wind, global, direct, diffuse, infrared, cloud] = values;
    let whole = |value: Option<f64>| value.unwrap_or_default() as u32;
    Ok(RawRow {
        line,
        year: whole(year) as i32,
        month: whole(month),
        day: whole(day),
        hour: whole(hour),
        dry_bulb_c: dry_bulb,
        dew_point_c: dew_point,
        wind_m_per_s: wind,
        global_w_per_m2: global,
        direct_normal_w_per_m2: direct,
        diffuse_w_per_m2: diffuse,
        infrared_w_per_m2: infrared,
        total_cloud_tenths: None,
        opaque_cloud_tenths: cloud,
    })
}
