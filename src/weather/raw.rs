//! A year as its source gives it, with holes; `fill` closes them.

use super::year::Place;
use crate::weather::Note;

/// One row of a source; `None` is missing.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RawRow {
    /// Line of the file, from 1.
    pub line: usize,
    /// Year that the row was measured in.
    pub year: i32,
    /// 1 to 12.
    pub month: u32,
    /// 1 to 31.
    pub day: u32,
    /// 1 to 24, hour ending, local standard time.
    pub hour: u32,
    /// Dry bulb, °C.
    pub dry_bulb_c: Option<f64>,
    /// Dew point, °C.
    pub dew_point_c: Option<f64>,
    /// Wind at the mast, m/s.
    pub wind_m_per_s: Option<f64>,
    /// Global horizontal irradiance, W/m².
    pub global_w_per_m2: Option<f64>,
    /// Direct normal irradiance, W/m².
    pub direct_normal_w_per_m2: Option<f64>,
    /// Diffuse horizontal irradiance, W/m².
    pub diffuse_w_per_m2: Option<f64>,
    /// Infrared from the sky on the horizontal, W/m².
    pub infrared_w_per_m2: Option<f64>,
    /// Total cloud, tenths.
    pub total_cloud_tenths: Option<f64>,
    /// Opaque cloud, tenths.
    pub opaque_cloud_tenths: Option<f64>,
}

/// Whether the sea moderates the daily swing: decides the coefficient of Hargreaves and Samani.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Setting {
    /// Away from the sea: 0.16.
    #[default]
    Inland,
    /// By the sea: 0.19.
    Coast,
}

/// A year as its source gives it: complete in rows, with holes in them.
#[derive(Debug, Clone, PartialEq)]
pub struct RawYear {
    /// Where it belongs to.
    pub place: Place,
    /// Inland or by the sea; matters only where no sun was measured.
    pub setting: Setting,
    /// Credit line of its source.
    pub credit: String,
    /// Instant of the irradiance relative to the stamp, hours.
    pub sun_offset_h: f64,
    /// Whether each month comes from its own year.
    pub typical: bool,
    /// The rows, from 1 January 01:00.
    pub rows: Vec<RawRow>,
    /// What the reader noticed.
    pub notes: Vec<Note>,
}
