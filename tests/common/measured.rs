//! Temperatures measured over several years, from `tests/data/measured/`.

use chrono::NaiveDate;
use flate2::read::GzDecoder;
use std::io::Read;
use std::path::Path;
use warmfold::units::HOURS_PER_DAY;
use warmfold::weather::degree_days::DayRange;

/// A day of a log.
#[derive(Clone, Copy)]
pub struct Day {
    pub date: NaiveDate,
    pub range: DayRange,
}

/// A file of measurements, its head line left out.
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
pub fn hourly_c(file: &str, year: u32) -> Vec<f64> {
    let of_year = lines(file).into_iter().filter(|line| line[0] == year.to_string());
    of_year.map(|line| line[1].parse().expect("a temperature")).collect()
}

/// The whole days of hourly temperatures.
pub fn whole_days(hourly_c: &[f64]) -> &[f64] {
    hourly_c.as_chunks::<HOURS_PER_DAY>().0.as_flattened()
}

/// Days of a log; a day without both extremes is left out.
pub fn daily(file: &str) -> Vec<Day> {
    let day = |line: Vec<String>| {
        let range = DayRange { min_c: line[1].parse().ok()?, max_c: line[2].parse().ok()? };
        Some(Day { date: line[0].parse().ok()?, range })
    };
    lines(file).into_iter().filter_map(day).collect()
}

/// Standard deviation of a sample.
pub fn spread(values: &[f64]) -> f64 {
    let middle = warmfold::weather::stats::mean(values);
    (values.iter().map(|x| (x - middle).powi(2)).sum::<f64>() / (values.len() as f64 - 1.0)).sqrt()
}
