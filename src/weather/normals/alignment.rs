//! Which hour of the lender stands for which hour of the place: the same height of the sun's day and of the year.

use crate::units::HOURS_PER_DAY;
use crate::weather::year::{Place, Record, WeatherYear};

/// From 1 January to 1 July, days: the winter of one half of the earth is the summer of the other.
const HALF_YEAR_D: usize = 181;

/// How many hours later in the lender's year an hour's counterpart lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Alignment {
    /// Hours, less than the year.
    pub shift_h: usize,
}

impl Alignment {
    /// Lines up noon with noon, to the hour, and winter with winter.
    pub(super) fn between(lender: &WeatherYear, place: &Place) -> Self {
        let hours = lender.records.len().max(1);
        let later_h = (noon_h(&lender.place) - noon_h(place)).round();
        let half_year_h = if half_year_apart(lender.place.latitude_deg, place.latitude_deg) {
            HALF_YEAR_D * HOURS_PER_DAY
        } else {
            0
        };
        let shift_h = (half_year_h as i64 + later_h as i64).rem_euclid(hours as i64) as usize;
        Self { shift_h }
    }

    /// Index of the counterpart of an hour in a year of so many hours.
    pub(super) fn counterpart(self, hour: usize, hours: usize) -> usize {
        (hour + self.shift_h) % hours.max(1)
    }

    /// The lender's hours under the dates of the place.
    pub(super) fn records(self, lender: &WeatherYear) -> Vec<Record> {
        let hours = lender.records.len();
        let dated = |(k, own): (usize, &Record)| {
            let lent = lender.records.get(self.counterpart(k, hours)).unwrap_or(own);
            Record { year: own.year, month: own.month, day: own.day, hour: own.hour, ..*lent }
        };
        lender.records.iter().enumerate().map(dated).collect()
    }
}

/// Whether two latitudes have their winters half a year apart.
pub(super) fn half_year_apart(latitude_deg: f64, other_deg: f64) -> bool {
    latitude_deg * other_deg < 0.0
}

/// Clock hour of mean noon.
fn noon_h(place: &Place) -> f64 {
    12.0 + place.utc_offset_h - place.longitude_deg / 15.0
}
