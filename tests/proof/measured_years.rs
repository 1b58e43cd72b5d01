//! Measured temperatures of several years: hourly of three airports, daily extremes of two towns.

use std::collections::BTreeMap;

use chrono::Datelike;
use serde::Deserialize;
use warmfold::units::{HOURS_PER_DAY, c_from_fahrenheit};
use warmfold::weather::degree_days::DayRange;
use warmfold::weather::stats::{DayMean, degree_days_k_d, degree_hours_k_h, highest, lowest, mean};

use super::figure::{Figure, hold};
use super::measured::{daily, hourly_c, spread, whole_days};
use super::sheet::told_figures;

/// Days that a season must have to count, and days that it is scaled to.
const SEASON_DAYS: (usize, f64) = (360, 365.25);

/// Degree-days, °F·d, of the seasons from July to June of a log.
fn seasons_f_d(file: &str, base_f: f64) -> Vec<f64> {
    let mut seasons: BTreeMap<i32, Vec<f64>> = BTreeMap::new();
    for day in daily(file) {
        let heating = day.range.by_middle(c_from_fahrenheit(base_f)).heating_k_d;
        let year = day.date.year() - i32::from(day.date.month() < 7);
        seasons.entry(year).or_default().push(1.8 * heating);
    }
    seasons.values().filter(|days| days.len() >= SEASON_DAYS.0).map(|days| mean(days) * SEASON_DAYS.1).collect()
}

#[derive(Deserialize)]
enum Setting {
    /// °F·d by the middle of the range of each whole day.
    DegreeDays { file: String, years: Vec<u32>, base_f: f64 },
    /// K·h.
    DegreeHours { file: String, year: u32, base_c: f64 },
    /// K·h from the daily extremes by the four cases.
    DegreeHoursOfExtremes { file: String, year: u32, base_c: f64 },
    /// °F·d of a daily log.
    DegreeDaysOfLog { file: String, year: i32, base_f: f64 },
    /// Seasons of a daily log.
    Seasons { file: String, base_f: f64, of: Statistic },
}

#[derive(Deserialize)]
enum Statistic {
    Count,
    Mean,
    Spread,
    Lowest,
    Highest,
}

fn compute(setting: &Setting) -> f64 {
    match setting {
        Setting::DegreeDays { file, years, base_f } => {
            let of_year = |year: &u32| {
                degree_days_k_d(whole_days(&hourly_c(file, *year)), c_from_fahrenheit(*base_f), DayMean::MinMax)
            };
            1.8 * mean(&years.iter().map(of_year).collect::<Vec<_>>())
        }
        Setting::DegreeHours { file, year, base_c } => degree_hours_k_h(&hourly_c(file, *year), *base_c),
        Setting::DegreeHoursOfExtremes { file, year, base_c } => {
            let year_c = hourly_c(file, *year);
            let days = year_c.chunks(HOURS_PER_DAY).filter_map(|day| Some((DayRange::of(day)?, day.len() as f64)));
            days.map(|(range, hours)| range.by_four_cases(*base_c).heating_k_d * hours).sum()
        }
        Setting::DegreeDaysOfLog { file, year, base_f } => {
            let of_year = daily(file).into_iter().filter(|day| day.date.year() == *year);
            of_year.map(|day| 1.8 * day.range.by_middle(c_from_fahrenheit(*base_f)).heating_k_d).sum()
        }
        Setting::Seasons { file, base_f, of } => {
            let seasons = seasons_f_d(file, *base_f);
            match of {
                Statistic::Count => seasons.len() as f64,
                Statistic::Mean => mean(&seasons),
                Statistic::Spread => spread(&seasons),
                Statistic::Lowest => lowest(&seasons),
                Statistic::Highest => highest(&seasons),
            }
        }
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("measured_years", compute)
}

#[test]
fn measured_years_agree() {
    hold(&figures());
}
