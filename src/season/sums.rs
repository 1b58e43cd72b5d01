//! Hours of a season added up: by day, by month, and as a running sum. Plots and report draw from these.

use super::result::{HourStamp, HourlySeries, ScenarioRun};
use crate::weather::Climate;

/// Watts in a kilowatt.
const W_PER_KW: f64 = 1000.0;

/// Sums of a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Day {
    /// Its date.
    pub at: HourStamp,
    /// First hour in the season.
    pub hour: usize,
    /// Degree-hours below the baseline's temperature, K·h.
    pub degree_hours_kh: f64,
    /// Heat given, kWh.
    pub heat_kwh: f64,
}

/// Sums of a month.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Month {
    /// 1 to 12.
    pub month: u32,
    /// Degree-hours below the baseline's temperature, K·h.
    pub degree_hours_kh: f64,
    /// Heat given, kWh.
    pub heat_kwh: f64,
    /// Heat of the baseline, kWh.
    pub baseline_kwh: f64,
}

impl HourlySeries {
    /// The end of an hour of the season; none past its end.
    #[must_use]
    pub fn stamp(&self, hour: usize, climate: &Climate) -> Option<HourStamp> {
        climate.hours.get(*self.record.get(hour)?).map(HourStamp::of)
    }

    /// Heat of all heaters by hour, kWh.
    #[must_use]
    pub fn heat_kwh(&self) -> Vec<f64> {
        self.heater_w.iter().zip(&self.standby_w).map(|(a, b)| (a + b) / W_PER_KW).collect()
    }

    /// Heat of the baseline by hour, kWh.
    #[must_use]
    pub fn baseline_kwh(&self) -> Vec<f64> {
        self.baseline_w.iter().map(|w| w / W_PER_KW).collect()
    }
}

/// Day by day.
#[must_use]
pub fn days(run: &ScenarioRun, climate: &Climate) -> Vec<Day> {
    let mut days: Vec<Day> = Vec::new();
    for (hour, (at, degree_hours_kh, heat_kwh, _)) in hours(run, climate).into_iter().enumerate() {
        match days.last_mut().filter(|d| (d.at.month, d.at.day) == (at.month, at.day)) {
            Some(day) => {
                day.degree_hours_kh += degree_hours_kh;
                day.heat_kwh += heat_kwh;
            }
            None => days.push(Day { at, hour, degree_hours_kh, heat_kwh }),
        }
    }
    days
}

/// Month by month, in the order of the season.
#[must_use]
pub fn months(run: &ScenarioRun, climate: &Climate) -> Vec<Month> {
    let mut months: Vec<Month> = Vec::new();
    for (at, degree_hours_kh, heat_kwh, baseline_kwh) in hours(run, climate) {
        match months.last_mut().filter(|m| m.month == at.month) {
            Some(month) => {
                month.degree_hours_kh += degree_hours_kh;
                month.heat_kwh += heat_kwh;
                month.baseline_kwh += baseline_kwh;
            }
            None => months.push(Month { month: at.month, degree_hours_kh, heat_kwh, baseline_kwh }),
        }
    }
    months
}

/// Stamp, degree-hours, heat and heat of the baseline of each hour.
fn hours(run: &ScenarioRun, climate: &Climate) -> Vec<(HourStamp, f64, f64, f64)> {
    let h = &run.hours;
    let base_c = run.summary.baseline_setpoint_c;
    let sums = h.outdoor_c.iter().zip(h.heat_kwh()).zip(h.baseline_kwh()).enumerate();
    let hour = |(hour, ((outdoor_c, heat_kwh), baseline_kwh)): (usize, ((&f64, f64), f64))| {
        Some((h.stamp(hour, climate)?, (base_c - outdoor_c).max(0.0), heat_kwh, baseline_kwh))
    };
    sums.filter_map(hour).collect()
}

/// Running sum every so many hours, from zero at the start to the total at the end: hours passed, and the sum.
#[must_use]
pub fn running(column: &[f64], every_h: usize) -> Vec<[f64; 2]> {
    let mut sum = 0.0;
    let mut points = vec![[0.0, 0.0]];
    for (hour, value) in column.iter().enumerate() {
        sum += value;
        let end = hour + 1;
        if end % every_h.max(1) == 0 || end == column.len() {
            points.push([end as f64, sum]);
        }
    }
    points
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_running_sum_ends_at_the_total() {
        let points = running(&[1.0; 50], 6);
        assert_eq!(points.first(), Some(&[0.0, 0.0]));
        assert_eq!(points.last(), Some(&[50.0, 50.0]));
        assert!(points.windows(2).all(|p| p[0][0] < p[1][0]));
    }
}
