//! Degree-days of days and months, through the functions for thermometer logs.

use std::f64::consts::TAU;

use serde::Deserialize;
use warmfold::units::c_from_fahrenheit;
use warmfold::weather::degree_days::{DayRange, hitchin_k_d};
use warmfold::weather::stats::degree_hours_k_h;

use super::figure::{Figure, hold};
use super::sheet::told_figures;

#[derive(Deserialize)]
enum Setting {
    /// Heating by the middle of the day's range.
    Middle { max_c: f64, min_c: f64, base_c: f64 },
    /// The same in °F and °F·days.
    MiddleFahrenheit { max_f: f64, min_f: f64, base_f: f64 },
    /// Cooling by the middle of the day's range, °F and °F·days.
    CoolingFahrenheit { max_f: f64, min_f: f64, base_f: f64 },
    /// Heating by the four cases.
    Heating { max_c: f64, min_c: f64, base_c: f64 },
    /// Cooling by the four cases.
    Cooling { max_c: f64, min_c: f64, base_c: f64 },
    /// Kelvins below a base of a day that runs as a sine, summed over equal steps and divided by their number.
    Sine { max_c: f64, min_c: f64, base_c: f64, steps: u32 },
    /// A month by Hitchin's formula.
    Hitchin { days: f64, mean_c: f64, base_c: f64 },
}

/// A day in °F as a range in °C, and the base.
fn from_fahrenheit(max_f: f64, min_f: f64, base_f: f64) -> (DayRange, f64) {
    (DayRange { min_c: c_from_fahrenheit(min_f), max_c: c_from_fahrenheit(max_f) }, c_from_fahrenheit(base_f))
}

fn compute(setting: &Setting) -> f64 {
    match *setting {
        Setting::Middle { max_c, min_c, base_c } => DayRange { min_c, max_c }.by_middle(base_c).heating_k_d,
        Setting::MiddleFahrenheit { max_f, min_f, base_f } => {
            let (range, base_c) = from_fahrenheit(max_f, min_f, base_f);
            1.8 * range.by_middle(base_c).heating_k_d
        }
        Setting::CoolingFahrenheit { max_f, min_f, base_f } => {
            let (range, base_c) = from_fahrenheit(max_f, min_f, base_f);
            1.8 * range.by_middle(base_c).cooling_k_d
        }
        Setting::Heating { max_c, min_c, base_c } => DayRange { min_c, max_c }.by_four_cases(base_c).heating_k_d,
        Setting::Cooling { max_c, min_c, base_c } => DayRange { min_c, max_c }.by_four_cases(base_c).cooling_k_d,
        Setting::Sine { max_c, min_c, base_c, steps } => {
            let (middle_c, half_k) = (f64::midpoint(min_c, max_c), (max_c - min_c) / 2.0);
            let at = |k: u32| middle_c + half_k * (TAU * f64::from(k) / f64::from(steps)).sin();
            degree_hours_k_h(&(0..steps).map(at).collect::<Vec<_>>(), base_c) / f64::from(steps)
        }
        Setting::Hitchin { days, mean_c, base_c } => hitchin_k_d(days, mean_c, base_c),
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("degree_days", compute)
}

#[test]
fn degree_days_agree() {
    hold(&figures());
}
