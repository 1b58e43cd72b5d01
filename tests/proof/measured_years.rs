//! Measured temperatures of several years: hourly of three airports, daily extremes of two towns.

use std::collections::BTreeMap;
use std::io::Read;
use std::path::Path;

use flate2::read::GzDecoder;
use serde::Deserialize;
use warmfold::units::{HOURS_PER_DAY, c_from_fahrenheit};
use warmfold::weather::degree_days::DayRange;
use warmfold::weather::stats::{DayMean, degree_days_k_d, degree_hours_k_h, highest, lowest, mean};

use super::figure::{Figure, hold};
use super::sheet::told_figures;

/// A file of `tests/data/measured/`, its head line left out.
fn lines(name: &str) -> Vec<Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/measured").join(name);
    let bytes = std::fs::read(&path).unwrap_or_else(|e| panic!("{name}: {e}"));
    let mut text = String::new();
    if path.extension().is_some_and(|e| e == "gz") {
        GzDecoder::new(&bytes[..]).read_to_string(&mut text).unwrap_or_else(|e| panic!("{name}: {e}"));
    } else {
        text = String::from_utf8(bytes).expect("text");
    }
    text.lines().skip(1).map(|line| line.split(',').map(str::to_owned).collect()).collect()
}

/// Hourly temperatures of a year in local standard time.
fn hourly_c(file: &str, year: u32) -> Vec<f64> {
    let of_year = lines(file).into_iter().filter(|line| line[0] == year.to_string());
    of_year.map(|line| line[1].parse().expect("a temperature")).collect()
}

/// The whole days of hourly temperatures.
fn whole_days(hourly_c: &[f64]) -> &[f64] {
    hourly_c.as_chunks::<HOURS_PER_DAY>().0.as_flattened()
}

/// Days of a log with year and month; a day without both extremes is left out.
fn daily(file: &str) -> Vec<(u32, u32, DayRange)> {
    let day = |line: Vec<String>| {
        let (year, month) = (line[0].get(0..4)?.parse().ok()?, line[0].get(5..7)?.parse().ok()?);
        Some((year, month, DayRange { min_c: line[1].parse().ok()?, max_c: line[2].parse().ok()? }))
    };
    lines(file).into_iter().filter_map(day).collect()
}

/// Days that a season must have to count, and days that it is scaled to.
const SEASON_DAYS: (usize, f64) = (360, 365.25);

/// Degree-days, °F·d, of the seasons from July to June of a log.
fn seasons_f_d(file: &str, base_f: f64) -> Vec<f64> {
    let mut seasons: BTreeMap<u32, Vec<f64>> = BTreeMap::new();
    for (year, month, range) in daily(file) {
        let heating = range.by_middle(c_from_fahrenheit(base_f)).heating_k_d;
        seasons.entry(if month < 7 { year - 1 } else { year }).or_default().push(1.8 * heating);
    }
    seasons.values().filter(|days| days.len() >= SEASON_DAYS.0).map(|days| mean(days) * SEASON_DAYS.1).collect()
}

/// Standard deviation of a sample.
fn spread(values: &[f64]) -> f64 {
    let middle = mean(values);
    (values.iter().map(|x| (x - middle).powi(2)).sum::<f64>() / (values.len() as f64 - 1.0)).sqrt()
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
    DegreeDaysOfLog { file: String, year: u32, base_f: f64 },
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
            let of_year = daily(file).into_iter().filter(|day| day.0 == *year);
            of_year.map(|(.., range)| 1.8 * range.by_middle(c_from_fahrenheit(*base_f)).heating_k_d).sum()
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
