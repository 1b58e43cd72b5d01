//! The bundled years against sums of their original files and against the normals of their places.

use serde::Deserialize;
use warmfold::units::{c_from_fahrenheit, fahrenheit_from_c};
use warmfold::weather::bundled::load;
use warmfold::weather::stats::{DayMean, degree_days_k_d, mean, percentile};

use super::figure::{Figure, hold};
use super::sheet::told_figures;

#[derive(Deserialize)]
enum Setting {
    /// K·d by the mean of the hours.
    DegreeDays { station: String, base_c: f64 },
    /// The temperature that this share of hours, %, is below, °C.
    Percentile { station: String, percent: f64 },
    /// °F·d to 65 °F by the middle of the range, within months and days from one to the other, both included; a span that
    /// ends before it begins runs over New Year.
    DegreeDaysFahrenheit { station: String, from: (u32, u32), to: (u32, u32) },
    /// Mean of the year, °F.
    MeanFahrenheit { station: String },
}

/// Hourly temperatures of the days within a span of months and days.
fn temperatures_c(station: &str, from: (u32, u32), to: (u32, u32)) -> Vec<f64> {
    let within = |date: (u32, u32)| {
        if from <= to { (from..=to).contains(&date) } else { date >= from || date <= to }
    };
    let year = load(station).expect("a bundled station");
    year.records.iter().filter(|r| within((r.month, r.day))).map(|r| r.dry_bulb_c).collect()
}

const NEW_YEAR: (u32, u32) = (1, 1);
const YEAR_END: (u32, u32) = (12, 31);

fn compute(setting: &Setting) -> f64 {
    let year_c = |station: &str| temperatures_c(station, NEW_YEAR, YEAR_END);
    match setting {
        Setting::DegreeDays { station, base_c } => degree_days_k_d(&year_c(station), *base_c, DayMean::Hourly),
        Setting::Percentile { station, percent } => percentile(&year_c(station), *percent).expect("a year of hours"),
        Setting::DegreeDaysFahrenheit { station, from, to } => {
            1.8 * degree_days_k_d(&temperatures_c(station, *from, *to), c_from_fahrenheit(65.0), DayMean::MinMax)
        }
        Setting::MeanFahrenheit { station } => fahrenheit_from_c(mean(&year_c(station))),
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("stations", compute)
}

#[test]
fn stations_agree() {
    hold(&figures());
}
