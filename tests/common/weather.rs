//! Weather made up for a test: the same hour all year, so that a hand formula can follow it.

use warmfold::weather::{Climate, ClimateHour, OutdoorFigures, Place};

/// What holds in every hour of the year.
#[derive(Clone, Copy, Default)]
pub struct Hour {
    pub outdoor_c: f64,
    /// As cold as the air where none is given.
    pub sky_c: Option<f64>,
    /// Of the mast.
    pub wind_m_per_s: f64,
    /// Even light from all of the sky, day and night.
    pub diffuse_w_per_m2: f64,
    /// Ground at one metre; as the air where none is given.
    pub deep_ground_c: Option<f64>,
}

const DAYS_OF_MONTH: [u32; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// A common year of this hour, its first day a Monday.
pub fn constant(hour: &Hour) -> Climate {
    let days = (1..).zip(DAYS_OF_MONTH).flat_map(|(month, days)| (1..=days).map(move |day| (month, day)));
    let hours: Vec<ClimateHour> = days
        .enumerate()
        .flat_map(|(k, date)| (1..=24).map(move |ends| (k, date, ends)))
        .map(|(k, (month, day), ends)| ClimateHour {
            month,
            day,
            hour: ends,
            outdoor_c: hour.outdoor_c,
            dew_point_c: hour.outdoor_c,
            wind_m_per_s: hour.wind_m_per_s,
            sky_c: hour.sky_c.unwrap_or(hour.outdoor_c),
            global_w_per_m2: hour.diffuse_w_per_m2,
            diffuse_w_per_m2: hour.diffuse_w_per_m2,
            beam_normal_w_per_m2: 0.0,
            anisotropy: 0.0,
            sun: [0.0, 0.0, 1.0],
            weekday: (k % 7) as u32,
        })
        .collect();
    let deep_ground_c = hour.deep_ground_c.unwrap_or(hour.outdoor_c);
    let outdoor_c: Vec<f64> = hours.iter().map(|h| h.outdoor_c).collect();
    Climate {
        notes: Vec::new(),
        place: Place {
            name: "nowhere".into(),
            latitude_deg: 45.0,
            longitude_deg: 0.0,
            utc_offset_h: 0.0,
            elevation_m: 0.0,
        },
        outdoor: OutdoorFigures::of(&outdoor_c),
        deep_ground_c: vec![deep_ground_c; hours.len()],
        deep_ground_min_c: deep_ground_c,
        hours,
    }
}
