//! How far the days of a weather year lie from its own yearly curve, and how far those of other years would.

use super::curve::YearCurve;
use crate::units::HOURS_PER_DAY;
use crate::weather::climate::Climate;
use crate::weather::stats::mean;

/// Harmonics of the yearly curve of temperature: two follow the unlike length of spring and autumn. A modelling choice.
pub const CURVE_HARMONICS: u32 = 2;
/// Harmonics of the yearly curve of squared deviations: one year of days does not tell more. A modelling choice.
pub const SPREAD_HARMONICS: u32 = 1;
/// Share of a day's variance that is seen within one month, about the month's own mean; the rest is between the same
/// months of different years, which one weather year does not hold, and a typical one leaves out on purpose.
///
/// # References
/// Fitted to daily extremes of Clemson SC, 1930 to 2020 (NOAA, Global Historical Climatology Network, daily), as
/// `tests/winters/fit.rs` repeats it.
pub const WITHIN_MONTH_SHARE: f64 = 0.827;
/// Least spread of a time of the year, as share of the year's mean variance: a curve of one year may dip below zero.
const LEAST_VARIANCE_SHARE: f64 = 0.1;

/// Deviations of a weather year, day by day.
#[derive(Debug, Clone, PartialEq)]
pub struct DayDeviations {
    /// Daily mean less yearly curve, K.
    pub deviation_k: Vec<f64>,
    /// Standard deviation that days of this date have over many years, K.
    pub spread_k: Vec<f64>,
    /// Day on which the curve is highest, counted from 0.
    pub warmest_day: usize,
}

impl DayDeviations {
    /// Of whole days of a climate.
    #[must_use]
    pub fn of(climate: &Climate) -> Self {
        let days = climate.hours.as_chunks::<HOURS_PER_DAY>().0;
        let mean_c: Vec<f64> = days.iter().map(|day| mean(&day.map(|hour| hour.outdoor_c))).collect();
        let months: Vec<u32> = days.iter().map(|day| day[0].month).collect();
        let curve_c = YearCurve::through(&mean_c, CURVE_HARMONICS).values();
        let deviation_k: Vec<f64> = mean_c.iter().zip(&curve_c).map(|(t, curve)| t - curve).collect();
        let within = within_months(&months, &deviation_k);
        let warmest = curve_c.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1));
        Self { spread_k: spread_k(&within), warmest_day: warmest.map_or(0, |(day, _)| day), deviation_k }
    }
}

/// Squared deviation of each day from the mean deviation of its month, made whole for the day's own part in that mean.
fn within_months(months: &[u32], deviation_k: &[f64]) -> Vec<f64> {
    let of_month = |month: u32| -> Vec<f64> {
        months.iter().zip(deviation_k).filter(|(m, _)| **m == month).map(|(_, deviation)| *deviation).collect()
    };
    let (mut means, mut factors) = ([0.0; 13], [1.0; 13]);
    for month in 1..=12 {
        let days = of_month(month as u32);
        means[month] = mean(&days);
        factors[month] = days.len() as f64 / (days.len() as f64 - 1.0).max(1.0);
    }
    let of_day = |(month, deviation): (&u32, &f64)| {
        let month = (*month as usize).min(12);
        (deviation - means[month]).powi(2) * factors[month]
    };
    months.iter().zip(deviation_k).map(of_day).collect()
}

/// Spread over many years from squared deviations within months.
fn spread_k(within: &[f64]) -> Vec<f64> {
    let curve = YearCurve::through(within, SPREAD_HARMONICS);
    let least = LEAST_VARIANCE_SHARE * curve.mean();
    curve.values().into_iter().map(|variance| (variance.max(least) / WITHIN_MONTH_SHARE).sqrt()).collect()
}
