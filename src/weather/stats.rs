//! Figures of a climate that can be set beside published tables. Degree-days here use unrounded daily values;
//! weather services round the daily mean to a whole degree Fahrenheit first, which moves a year by up to 0.4 %.

use super::degree_days::DayRange;
use super::year::Record;
use crate::units::HOURS_PER_DAY;

/// Base of the heating degree-days, °C: 65 °F, rounded as weather services print it.
pub const DEGREE_DAY_BASE_C: f64 = 18.3;

/// How the mean of a day is taken for degree-days.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayMean {
    /// Mean of the day's hours.
    Hourly,
    /// Middle between the day's lowest and highest hour.
    MinMax,
}

/// Sum of the kelvins below a base over all hours, K·h.
#[must_use]
pub fn degree_hours_k_h(temperatures_c: &[f64], base_c: f64) -> f64 {
    temperatures_c.iter().map(|t| (base_c - t).max(0.0)).sum()
}

/// Heating degree-days, K·day: sum over days of 24 hours (a shorter last day counts as one) of the kelvins below a base.
#[must_use]
pub fn degree_days_k_d(temperatures_c: &[f64], base_c: f64, method: DayMean) -> f64 {
    let day_k_d = |day: &[f64]| match method {
        DayMean::Hourly => (base_c - mean(day)).max(0.0),
        DayMean::MinMax => DayRange::of(day).map_or(0.0, |range| range.by_middle(base_c).heating_k_d),
    };
    temperatures_c.chunks(HOURS_PER_DAY).map(day_k_d).sum()
}

/// Arithmetic mean; zero of nothing.
#[must_use]
pub fn mean(values: &[f64]) -> f64 {
    if values.is_empty() { 0.0 } else { values.iter().sum::<f64>() / values.len() as f64 }
}

/// Lowest value; +∞ of nothing.
#[must_use]
pub fn lowest(values: &[f64]) -> f64 {
    values.iter().copied().fold(f64::INFINITY, f64::min)
}

/// Highest value; −∞ of nothing.
#[must_use]
pub fn highest(values: &[f64]) -> f64 {
    values.iter().copied().fold(f64::NEG_INFINITY, f64::max)
}

/// The value below which `percent` of the values lie, linear between ranks (type 7 of Hyndman and Fan 1996); `None` of
/// nothing. The temperature exceeded
/// in 99 % of the hours is the 1st percentile.
#[must_use]
pub fn percentile(values: &[f64], percent: f64) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let last = sorted.len().checked_sub(1)?;
    let rank = (percent / 100.0).clamp(0.0, 1.0) * last as f64;
    let below = sorted.get(rank.floor() as usize)?;
    let above = sorted.get(rank.ceil() as usize)?;
    Some(below + (above - below) * rank.fract())
}

/// Mean dry bulb of each calendar month, °C. A month without records gets the mean of all.
#[must_use]
pub fn monthly_means_c(records: &[Record]) -> [f64; 12] {
    let all: Vec<f64> = records.iter().map(|r| r.dry_bulb_c).collect();
    let mut months = [mean(&all); 12];
    for (m, slot) in (1..).zip(&mut months) {
        let of_month: Vec<f64> = records.iter().filter(|r| r.month == m).map(|r| r.dry_bulb_c).collect();
        if !of_month.is_empty() {
            *slot = mean(&of_month);
        }
    }
    months
}

/// Longest run of consecutive hours strictly below a temperature.
#[must_use]
pub fn longest_spell_h(temperatures_c: &[f64], below_c: f64) -> usize {
    let (mut longest, mut run) = (0, 0);
    for t in temperatures_c {
        run = if *t < below_c { run + 1 } else { 0 };
        longest = longest.max(run);
    }
    longest
}
