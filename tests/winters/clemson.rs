//! Spread of whole seasons against 86 seasons of Clemson SC (NOAA, Global Historical Climatology Network, daily):
//! degree-days from July to June have a mean of 3035 °F·d and a standard deviation of 368 (12 %) below 65 °F, and 818 and
//! 218 (27 %) below 50 °F. The constants of the chance days are fitted to days of this series, not to its seasons.

use crate::measured::{Day, daily, spread};
use crate::weather::{Hour, constant};
use chrono::Datelike;
use std::collections::BTreeMap;
use warmfold::units::{HOURS_PER_DAY, c_from_fahrenheit};
use warmfold::weather::stats::{DayMean, degree_days_k_d, mean};
use warmfold::weather::winters::WinterMaker;
use warmfold::weather::{Climate, bundled};

const CLEMSON: &str = "clemson_daily_1930_2020.csv.gz";
const DAYS_BEFORE: [usize; 12] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
/// A base, °F, and what the seasons have below it: mean and standard deviation, °F·d.
const SEASONS: [(f64, f64, f64); 2] = [(65.0, 3035.0, 368.0), (50.0, 818.0, 218.0)];
/// Standard error of the standard deviation of 86 seasons, as share of it: 1/√(2·85).
const SERIES_ERROR: f64 = 0.077;

/// Day of a common year, counted from 0; 29 February is not asked for.
pub fn day_of_year(day: &Day) -> usize {
    DAYS_BEFORE[day.date.month0() as usize] + day.date.day0() as usize
}

/// The series without 29 February.
pub fn common_days() -> Vec<Day> {
    daily(CLEMSON).into_iter().filter(|day| (day.date.month(), day.date.day()) != (2, 29)).collect()
}

/// Hourly temperatures of chance winters.
fn winters_c(climate: &Climate, count: u32) -> Vec<Vec<f64>> {
    let maker = WinterMaker::of(climate);
    (0..count).map(|number| maker.winter(1, number).hours.iter().map(|h| h.outdoor_c).collect()).collect()
}

/// Degree-days of each winter, °F·d.
fn degree_days_f_d(winters_c: &[Vec<f64>], base_c: f64) -> Vec<f64> {
    winters_c.iter().map(|hours| 1.8 * degree_days_k_d(hours, base_c, DayMean::Hourly)).collect()
}

/// Every whole year of the series is taken for the weather year that a study has, and 40 winters are made of it. Over
/// them all the mean share is that of the series within two standard errors of the series; what the 68 years add is a
/// tenth of that.
#[test]
fn winters_made_of_single_years_differ_as_those_of_the_series() {
    let mut years: BTreeMap<i32, Vec<Day>> = BTreeMap::new();
    for day in common_days() {
        years.entry(day.date.year()).or_default().push(day);
    }
    let whole: Vec<Climate> = years.values().filter(|days| days.len() == 365).map(|days| of_days(days)).collect();
    assert!(whole.len() > 60, "{} whole years", whole.len());
    let winters: Vec<_> = whole.iter().map(|climate| winters_c(climate, 40)).collect();
    for (base_f, of_series, deviation) in SEASONS {
        let share = |made: &Vec<Vec<f64>>| {
            let seasons = degree_days_f_d(made, c_from_fahrenheit(base_f));
            spread(&seasons) / mean(&seasons)
        };
        let made = mean(&winters.iter().map(share).collect::<Vec<_>>());
        let off = made / (deviation / of_series) - 1.0;
        assert!(off.abs() <= 2.0 * SERIES_ERROR, "below {base_f} °F: {made:.3} of the mean, {off:+.2} off the series");
    }
}

/// Days without a course within them.
fn of_days(days: &[Day]) -> Climate {
    let mut climate = constant(&Hour::default());
    for (hours, day) in climate.hours.chunks_mut(HOURS_PER_DAY).zip(days) {
        hours.iter_mut().for_each(|hour| hour.outdoor_c = day.range.middle_c());
    }
    climate
}

/// Greensboro NC is the bundled station nearest in climate, 300 km away and colder: its base is lowered until it has as
/// many degree-days. Two standard errors of three things together: the series, 400 winters (1/√800 = 3.5 %), and a spread
/// that is measured on one weather year (12 to 15 % between the single years of the test above).
#[test]
fn winters_of_the_nearest_station_differ_as_those_of_the_series() {
    let winters = winters_c(&Climate::from_year(&bundled::load("greensboro-nc").expect("bundled")), 400);
    for ((base_f, of_series, deviation), of_one_year) in SEASONS.into_iter().zip([0.12, 0.15]) {
        let (mut low_c, mut high_c) = (-20.0, c_from_fahrenheit(base_f));
        for _ in 0..30 {
            let middle_c = f64::midpoint(low_c, high_c);
            if mean(&degree_days_f_d(&winters, middle_c)) > of_series { high_c = middle_c } else { low_c = middle_c }
        }
        let off = spread(&degree_days_f_d(&winters, low_c)) / deviation - 1.0;
        let tolerance = 2.0 * [SERIES_ERROR, 0.035, of_one_year].map(|e: f64| e * e).iter().sum::<f64>().sqrt();
        assert!(off.abs() <= tolerance, "as many as below {base_f} °F: {off:+.2} off the series, at {low_c:.1} °C");
    }
}
