//! What the engine needs of each hour, worked out once per weather year: sun, sky, ground.

use super::year::Place;

/// Ground reflectance for all surfaces (pvlib's and the handbooks' default).
pub const ALBEDO: f64 = 0.2;

/// One hour as the engine sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClimateHour {
    /// 1 to 12.
    pub month: u32,
    /// 1 to 31.
    pub day: u32,
    /// 1 to 24, hour ending.
    pub hour: u32,
    /// Outdoor air, °C.
    pub outdoor_c: f64,
    /// Dew point, °C.
    pub dew_point_c: f64,
    /// Wind at the mast, m/s.
    pub wind_m_per_s: f64,
    /// Sky temperature, °C.
    pub sky_c: f64,
    /// Global horizontal irradiance, W/m².
    pub global_w_per_m2: f64,
    /// Diffuse horizontal irradiance, W/m².
    pub diffuse_w_per_m2: f64,
    /// Direct normal irradiance, W/m²; zero while the sun is down.
    pub beam_normal_w_per_m2: f64,
    /// Share of the diffuse light that comes from round the sun (Hay and Davies); zero while the sun is down.
    pub anisotropy: f64,
    /// Unit vector towards the sun: east, north, up.
    pub sun: [f64; 3],
    /// Day of the week, 0 Monday to 6 Sunday. 1 January of a typical year is a Monday.
    pub weekday: u32,
}

/// Irradiance of a plane, W/m².
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PlaneIrradiance {
    /// Beam, without the circumsolar part.
    pub beam: f64,
    /// All else: sky with its circumsolar part, and ground.
    pub diffuse: f64,
    /// Cosine of the angle of incidence of the beam.
    pub cos_incidence: f64,
}

/// A weather year prepared for the engine.
#[derive(Debug, Clone, PartialEq)]
pub struct Climate {
    /// Where it belongs to.
    pub place: Place,
    /// The hours, from 1 January 01:00.
    pub hours: Vec<ClimateHour>,
    /// Deep ground (1 m) of each hour, °C.
    pub deep_ground_c: Vec<f64>,
    /// Lowest deep ground of the year, °C.
    pub deep_ground_min_c: f64,
}
