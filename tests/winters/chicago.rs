//! Winters of Chicago O'Hare against its measured years 2015 to 2017 (NOAA, ISD-Lite).

use crate::measured::{hourly_c, whole_days};
use warmfold::units::HOURS_PER_DAY;
use warmfold::weather::stats::{degree_hours_k_h, highest, lowest, mean, percentile};
use warmfold::weather::winters::{CURVE_HARMONICS, DayDeviations, WinterMaker, YearCurve};
use warmfold::weather::{Climate, bundled};

const FILE: &str = "chicago_ohare_2015_2017.csv.gz";
const YEARS: [u32; 3] = [2015, 2016, 2017];

fn climate() -> Climate {
    Climate::from_year(&bundled::load("chicago-il").expect("bundled"))
}

/// Hourly temperatures of calendar years, each from the ends of two winters that follow each other.
fn calendar_years_c(climate: &Climate, count: u32) -> Vec<Vec<f64>> {
    let (maker, cut) = (WinterMaker::of(climate), DayDeviations::of(climate).warmest_day * HOURS_PER_DAY);
    let winter = |number| maker.winter(1, number).hours.iter().map(|h| h.outdoor_c).collect::<Vec<f64>>();
    let mut winters = (0..=count).map(winter);
    let mut before = winters.next().expect("a winter");
    winters
        .map(|after| {
            let year = [&before[..cut], &after[cut..]].concat();
            before = after;
            year
        })
        .collect()
}

/// What one measured value must lie within: nine of ten made ones. A measured value outside would be one in ten by
/// chance alone, so that the few below speak for or against the size of the spread and no more.
fn assert_within(what: &str, measured: f64, made: &[f64]) {
    let at = |percent| percentile(made, percent).expect("values");
    let (low, high) = (at(5.0), at(95.0));
    assert!(low <= measured && measured <= high, "{what}: {measured:.1}, nine of ten within {low:.1} to {high:.1}");
}

#[test]
fn three_years_differ_as_three_measured_ones() {
    let made = calendar_years_c(&climate(), 300);
    let range = |values: &[f64]| highest(values) - lowest(values);
    for base_c in [5.0, 10.0, 18.0] {
        let measured = YEARS.map(|year| degree_hours_k_h(&hourly_c(FILE, year), base_c));
        let made: Vec<f64> = made.iter().map(|year| degree_hours_k_h(year, base_c)).collect();
        let ranges: Vec<f64> = made.chunks(YEARS.len()).map(range).collect();
        assert_within(&format!("range of degree-hours below {base_c} °C"), range(&measured), &ranges);
    }
}

#[test]
fn coldest_hours_are_those_of_measured_years() {
    let made: Vec<f64> = calendar_years_c(&climate(), 300).iter().map(|year| lowest(year)).collect();
    for year in YEARS {
        assert_within(&format!("coldest hour of {year}"), lowest(&hourly_c(FILE, year)), &made);
    }
}

/// Lag-one autocorrelation of daily means about the yearly curve of the years together.
fn lag_one(years: &[Vec<f64>]) -> f64 {
    const DAYS: usize = 365;
    let days: Vec<Vec<f64>> =
        years.iter().map(|year| whole_days(year).chunks(HOURS_PER_DAY).map(mean).take(DAYS).collect()).collect();
    let shortest = days.iter().map(Vec::len).min().expect("a year");
    let of_date = |day: usize| mean(&days.iter().map(|year| year[day]).collect::<Vec<_>>());
    let curve = YearCurve::through(&(0..shortest).map(of_date).collect::<Vec<_>>(), CURVE_HARMONICS).values();
    let off = |year: &Vec<f64>| year.iter().zip(&curve).map(|(t, curve)| t - curve).collect::<Vec<_>>();
    let off: Vec<f64> = days.iter().flat_map(off).collect();
    let product = |lag: usize| mean(&off.windows(lag + 1).map(|days| days[0] * days[lag]).collect::<Vec<_>>());
    product(1) / product(0)
}

/// Of 1095 days with an autocorrelation ρ of 0.7 it has a standard error of √((1 − ρ²)/1095) = 0.022 (Bartlett's formula
/// for a chain of first order). Daily means of hours persist a little longer than the mid-ranges of the fit.
#[test]
fn days_persist_as_measured_ones() {
    let measured = lag_one(&YEARS.map(|year| hourly_c(FILE, year)));
    let made = lag_one(&calendar_years_c(&climate(), 300));
    assert!((made - measured).abs() <= 2.0 * 0.022, "{made:.3}, measured {measured:.3}");
}
