//! What the engine needs of each hour, worked out once per weather year: sun, sky, ground.

use super::ground::GroundSwing;
use super::outdoor::OutdoorFigures;
use super::sky::{sky_c_from_dew_point, sky_c_from_infrared};
use super::stats::monthly_means_c;
use super::sun::{Sun, days_since_1970};
use super::year::{Place, Record, WeatherYear};
use crate::units::HOURS_PER_DAY;
use crate::weather::Note;

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
    /// Design temperatures.
    pub outdoor: OutdoorFigures,
    /// Plain sentences on how the year came about.
    pub notes: Vec<Note>,
}

impl ClimateHour {
    /// Works out sun and sky of one record. The sun is that of the record's own date and year, at its stamp plus
    /// `sun_offset_h`. Beam and circumsolar light are zero while it is down: then all light is even.
    #[must_use]
    pub fn from_record(record: &Record, place: &Place, sun_offset_h: f64, weekday: u32) -> Self {
        let instant_h = f64::from(record.hour) + sun_offset_h;
        let sun = Sun::at(place, record.year, record.month, record.day, instant_h);
        let beam = if sun.is_up() { record.direct_normal_w_per_m2.max(0.0) } else { 0.0 };
        let sky_c = match record.infrared_w_per_m2 {
            Some(infrared) => sky_c_from_infrared(infrared),
            None => sky_c_from_dew_point(record.dry_bulb_c, record.dew_point_c, record.cloud_tenths),
        };
        Self {
            month: record.month,
            day: record.day,
            hour: record.hour,
            outdoor_c: record.dry_bulb_c,
            dew_point_c: record.dew_point_c,
            wind_m_per_s: record.wind_m_per_s,
            sky_c,
            global_w_per_m2: record.global_w_per_m2.max(0.0),
            diffuse_w_per_m2: record.diffuse_w_per_m2.max(0.0),
            beam_normal_w_per_m2: beam,
            anisotropy: (beam / sun.extraterrestrial_w_per_m2).clamp(0.0, 1.0),
            sun: sun.direction,
            weekday,
        }
    }

    /// Makes the hour warmer (colder below zero): outdoor air, dew point and sky move together, so that cloud and the
    /// dryness of the air stay as they were; wind and sun stay too.
    pub fn warm_by(&mut self, by_k: f64) {
        self.outdoor_c += by_k;
        self.dew_point_c += by_k;
        self.sky_c += by_k;
    }
}

impl Climate {
    /// The hour before this one; the year wraps.
    #[must_use]
    pub fn before(&self, record: usize) -> &ClimateHour {
        &self.hours[if record == 0 { self.hours.len() - 1 } else { record - 1 }]
    }

    /// Prepares a weather year.
    #[must_use]
    pub fn from_year(year: &WeatherYear) -> Self {
        let first_weekday = first_weekday(year);
        let hours = year.records.iter().enumerate().map(|(k, record)| {
            let weekday = (first_weekday + (k / HOURS_PER_DAY) as u32) % 7;
            ClimateHour::from_record(record, &year.place, year.sun_offset_h, weekday)
        });
        let swing = GroundSwing::from_monthly_means(&monthly_means_c(&year.records));
        let deep_ground_c: Vec<f64> =
            (0..year.records.len()).map(|k| swing.deep_c((k as f64 + 0.5) / HOURS_PER_DAY as f64)).collect();
        let outdoor_c: Vec<f64> = year.records.iter().map(|r| r.dry_bulb_c).collect();
        Self {
            place: year.place.clone(),
            outdoor: OutdoorFigures::of(&outdoor_c),
            hours: hours.collect(),
            deep_ground_min_c: deep_ground_c.iter().copied().fold(swing.mean_c, f64::min),
            deep_ground_c,
            notes: year.notes.clone(),
        }
    }
}

/// Day of the week of the first record, 0 Monday: Monday ‡ in a typical year, the real one in a measured year.
fn first_weekday(year: &WeatherYear) -> u32 {
    match year.records.first() {
        // 1 January 1970 was a Thursday.
        Some(first) if !year.typical => (days_since_1970(first.year, first.month, first.day) + 3).rem_euclid(7) as u32,
        _ => 0,
    }
}
