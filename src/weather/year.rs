//! A year of hourly records as read from a bundled station or a file, gaps already filled.

use crate::weather::Note;
/// Where the weather belongs to.
#[derive(Debug, Clone, PartialEq)]
pub struct Place {
    /// Name of station or grid point.
    pub name: String,
    /// Degrees, north positive.
    pub latitude_deg: f64,
    /// Degrees, east positive.
    pub longitude_deg: f64,
    /// Hours from UTC of local standard time, east positive.
    pub utc_offset_h: f64,
    /// Metres above sea level.
    pub elevation_m: f64,
}

/// One hour. It ends at its stamp; every value holds over that hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Record {
    /// Year that the record was measured in; typical years are stitched, so it jumps.
    pub year: i32,
    /// 1 to 12.
    pub month: u32,
    /// 1 to 31.
    pub day: u32,
    /// 1 to 24: the hour that ends at h:00, local standard time all year.
    pub hour: u32,
    /// Dry bulb, °C.
    pub dry_bulb_c: f64,
    /// Dew point, °C.
    pub dew_point_c: f64,
    /// Wind at the mast, m/s.
    pub wind_m_per_s: f64,
    /// Global horizontal irradiance, W/m².
    pub global_w_per_m2: f64,
    /// Direct normal irradiance, W/m².
    pub direct_normal_w_per_m2: f64,
    /// Diffuse horizontal irradiance, W/m².
    pub diffuse_w_per_m2: f64,
    /// Infrared from the sky on the horizontal, W/m², if measured.
    pub infrared_w_per_m2: Option<f64>,
    /// Opaque cloud cover in tenths; total where opaque is missing, 5 where both are.
    pub cloud_tenths: f64,
}

/// How many values were missing and were filled, for the user to know.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Filled {
    /// Interpolated dry bulbs.
    pub dry_bulb: usize,
    /// Interpolated dew points, or the day's minimum taken.
    pub dew_point: usize,
    /// Interpolated winds, or 2 m/s taken.
    pub wind: usize,
    /// Interpolated or estimated sun.
    pub sun: usize,
    /// Cloud covers taken as 5 tenths, or from the estimated sun.
    pub cloud: usize,
    /// Sky radiation estimated from dew point and cloud.
    pub infrared: usize,
}

/// A year of weather (8760 records; 8784 with a leap day).
#[derive(Debug, Clone, PartialEq)]
pub struct WeatherYear {
    /// Where it belongs to.
    pub place: Place,
    /// Credit line of its source.
    pub credit: String,
    /// Instant of the irradiance relative to the stamp, hours: −0.5 for hourly means (the middle of the hour).
    pub sun_offset_h: f64,
    /// Whether each month comes from its own year.
    pub typical: bool,
    /// The hours, from 1 January 01:00.
    pub records: Vec<Record>,
    /// What was missing.
    pub filled: Filled,
    /// Plain sentences worth showing, such as "wraps from December to January with a jump of 8 K".
    pub notes: Vec<Note>,
}
