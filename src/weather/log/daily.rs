//! Hours out of a day's minimum and maximum.
//!
//! Half waves of a cosine run from the maximum at 14 h to the next minimum at sunrise and on to the next maximum: the
//! method of de Wit, Goudriaan and van Laar (1978), Simulation of assimilation, respiration and transpiration of crops, as
//! compared with others by Reicosky, Winkelman, Baker and Baker (1989), Agricultural and Forest Meteorology 46 (both from
//! memory). No hour passes its own day's extremes, so that these are the logged ones.

use super::days::Day;
use crate::units::HOURS_PER_DAY;
use crate::weather::degree_days::DayRange;
use crate::weather::sun::Sun;
use crate::weather::year::Place;
use std::f64::consts::PI;

/// Index of the hour that ends at 14 h, when the day is warmest.
const WARMEST: usize = 13;
/// Index of the coldest hour where the sun does not rise ‡, and the latest that is taken.
const COLDEST_WITHOUT_SUNRISE: usize = 7;
const LATEST_COLDEST: usize = 10;

/// The hours of a year of days, °C; the year wraps.
pub(super) fn hours_c(days: &[Day], ranges: &[DayRange], place: &Place) -> Vec<f64> {
    let coldest: Vec<usize> = days.iter().map(|day| coldest_hour(day, place)).collect();
    let count = ranges.len();
    let mut hours = Vec::with_capacity(count * HOURS_PER_DAY);
    for (d, (range, dawn)) in ranges.iter().zip(&coldest).enumerate() {
        let before = &ranges[(d + count - 1) % count];
        let (after, next_dawn) = (&ranges[(d + 1) % count], coldest[(d + 1) % count]);
        for h in 0..HOURS_PER_DAY {
            let t_c = if h < *dawn {
                wave(before.max_c, range.min_c, h + HOURS_PER_DAY - WARMEST, dawn + HOURS_PER_DAY - WARMEST)
            } else if h <= WARMEST {
                wave(range.min_c, range.max_c, h - dawn, WARMEST - dawn)
            } else {
                wave(range.max_c, after.min_c, h - WARMEST, next_dawn + HOURS_PER_DAY - WARMEST)
            };
            hours.push(t_c.clamp(range.min_c, range.max_c));
        }
    }
    hours
}

/// Half a cosine from one extreme to the next.
fn wave(from_c: f64, to_c: f64, step: usize, steps: usize) -> f64 {
    from_c + (to_c - from_c) * 0.5 * (1.0 - (PI * step as f64 / steps as f64).cos())
}

fn coldest_hour(day: &Day, place: &Place) -> usize {
    let up = |h: &usize| Sun::at(place, day.year, day.month, day.day, *h as f64 + 0.5).is_up();
    (0..HOURS_PER_DAY).find(up).unwrap_or(COLDEST_WITHOUT_SUNRISE).min(LATEST_COLDEST)
}
