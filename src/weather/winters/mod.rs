//! Other winters at the same place: the days of a weather year made warmer and colder by chance, as series of many years
//! show it.
//!
//! Each day's mean is a yearly curve and a deviation from it. The deviations of the weather year are taken away and
//! chance ones put in their place, so that a typical year does not count its own cold spells twice. Their size is the
//! station's own by the time of the year (`deviation.rs`); how long they last and how much whole winters differ comes
//! from a series of 86 seasons (`persistence.rs`).
//!
//! Outdoor air, dew point and sky move together, so that the air does not become damper than it can be. Wind, sun and
//! deep ground stay those of the weather year, and so do its design temperatures: a modelling choice, which leaves out
//! that the coldest nights are clear more often than others.

mod curve;
mod deviation;
mod hourly;
mod persistence;

pub use curve::YearCurve;
pub use deviation::{CURVE_HARMONICS, DayDeviations, SPREAD_HARMONICS, WITHIN_MONTH_SHARE};
pub use persistence::{FAST_FIRST, FAST_SECOND, SLOW, SLOW_SHARE, WINTER_SHARE, standard_deviations};

use super::climate::Climate;
use hourly::shifts_k;

/// Makes winters for one weather year.
#[derive(Debug, Clone, PartialEq)]
pub struct WinterMaker<'a> {
    climate: &'a Climate,
    own: DayDeviations,
}

impl<'a> WinterMaker<'a> {
    /// Measures the deviations of a weather year.
    #[must_use]
    pub fn of(climate: &'a Climate) -> Self {
        Self { climate, own: DayDeviations::of(climate) }
    }

    /// A year of weather from one summer to the next, at the dates of the weather year; it depends on seed and number
    /// alone. The chain of days begins on the warmest day of the curve, so that no winter is cut in two.
    #[must_use]
    pub fn winter(&self, seed: u32, number: u32) -> Climate {
        let days = self.own.deviation_k.len();
        let first = self.own.warmest_day;
        let mut change_k = vec![0.0; days];
        for (k, deviation) in standard_deviations(seed, number, days).into_iter().enumerate() {
            let day = (first + k) % days;
            change_k[day] = deviation * self.own.spread_k[day] - self.own.deviation_k[day];
        }
        let mut made = self.climate.clone();
        for (hour, by_k) in made.hours.iter_mut().zip(shifts_k(&change_k)) {
            hour.warm_by(by_k);
        }
        made
    }
}
