//! The constants of the chance days are those of the series that they are fitted to.

use crate::clemson::{common_days, day_of_year};
use crate::measured::{Day, spread};
use chrono::Datelike;
use std::collections::HashMap;
use warmfold::weather::stats::mean;
use warmfold::weather::winters::{
    CURVE_HARMONICS, FAST_FIRST, FAST_SECOND, SLOW, SLOW_SHARE, SPREAD_HARMONICS, WINTER_SHARE, WITHIN_MONTH_SHARE,
    YearCurve,
};

const DAYS: usize = 365;
/// The constants are written with three decimals.
const ROUNDING: f64 = 0.000_5;

/// A day of the series, counted from its first, and its deviation in standard deviations of its date.
struct Standardised {
    /// Days since a far day, so that neighbours can be found.
    count: i64,
    month: (i32, u32),
    deviation: f64,
}

/// Mid-range of each day less the yearly curve, over the spread of its date; 29 February is left out.
fn standardised() -> Vec<Standardised> {
    let days: Vec<Day> = common_days();
    let curve = |values: &[f64], harmonics| {
        let mut of_day = vec![Vec::new(); DAYS];
        for (day, value) in days.iter().zip(values) {
            of_day[day_of_year(day)].push(*value);
        }
        YearCurve::through(&of_day.iter().map(|values| mean(values)).collect::<Vec<_>>(), harmonics).values()
    };
    let middle_c: Vec<f64> = days.iter().map(|day| day.range.middle_c()).collect();
    let curve_c = curve(&middle_c, CURVE_HARMONICS);
    let off_k: Vec<f64> = days.iter().zip(&middle_c).map(|(day, t)| t - curve_c[day_of_year(day)]).collect();
    let variance = curve(&off_k.iter().map(|k| k * k).collect::<Vec<_>>(), SPREAD_HARMONICS);
    let one = |(day, k): (&Day, &f64)| Standardised {
        count: i64::from(day.date.num_days_from_ce()),
        month: (day.date.year(), day.date.month()),
        deviation: k / variance[day_of_year(day)].sqrt(),
    };
    days.iter().zip(&off_k).map(one).collect()
}

fn variance(days: &[Standardised]) -> f64 {
    mean(&days.iter().map(|d| d.deviation.powi(2)).collect::<Vec<_>>())
}

/// Autocorrelations at these lags, as mean over them.
fn autocorrelation(days: &[Standardised], lags: std::ops::RangeInclusive<i64>) -> f64 {
    let at: HashMap<i64, f64> = days.iter().map(|d| (d.count, d.deviation)).collect();
    let of_lag = |lag: i64| {
        let pairs = days.iter().filter_map(|d| Some(d.deviation * at.get(&(d.count + lag))?));
        mean(&pairs.collect::<Vec<_>>()) / variance(days)
    };
    mean(&lags.map(of_lag).collect::<Vec<_>>())
}

/// Method of moments: what is left after months is the winter's; what is left after ten and twenty days the spells'; the
/// first two lags, those taken away, passing weather's (Yule and Walker).
#[test]
fn constants_are_those_of_the_series() {
    let days = standardised();
    let at = |lag| autocorrelation(&days, lag..=lag);
    let winter = autocorrelation(&days, 60..=150);
    let (tenth, twentieth) = (autocorrelation(&days, 8..=12) - winter, autocorrelation(&days, 18..=22) - winter);
    let slow = (twentieth / tenth).powf(0.1);
    let slow_share = tenth / slow.powi(10);
    let fast_share = 1.0 - winter - slow_share;
    let first = (at(1) - winter - slow_share * slow) / fast_share;
    let second = (at(2) - winter - slow_share * slow.powi(2)) / fast_share;
    let fast_first = first * (1.0 - second) / (1.0 - first * first);
    let fast_second = (second - first * first) / (1.0 - first * first);
    let pairs = [
        ("winter", WINTER_SHARE, winter),
        ("slow", SLOW, slow),
        ("slow share", SLOW_SHARE, slow_share),
        ("fast, first", FAST_FIRST, fast_first),
        ("fast, second", FAST_SECOND, fast_second),
        ("within a month", WITHIN_MONTH_SHARE, within_months(&days)),
    ];
    for (what, constant, fitted) in pairs {
        assert!((constant - fitted).abs() <= ROUNDING, "{what}: {constant}, fitted {fitted}");
    }
}

/// Mean variance within the months of the series, as share of all.
fn within_months(days: &[Standardised]) -> f64 {
    let mut months: HashMap<(i32, u32), Vec<f64>> = HashMap::new();
    for day in days {
        months.entry(day.month).or_default().push(day.deviation);
    }
    let mut whole: Vec<_> = months.into_iter().filter(|(_, month)| month.len() >= 27).collect();
    whole.sort_by_key(|(month, _)| *month);
    mean(&whole.iter().map(|(_, month)| spread(month).powi(2)).collect::<Vec<_>>()) / variance(days)
}
