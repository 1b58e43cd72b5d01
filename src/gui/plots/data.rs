//! What the plots draw, made once per season and kept with it.

use crate::gui::board::Season;
use crate::gui::document::ScenarioId;
use crate::season::{HourStamp, ScenarioRun};
use egui_plot::PlotPoint;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Hours between the points of a running sum.
const THIN_H: usize = 6;
/// The same for the baseline, whose dashes need room between the points.
const THIN_BASELINE_H: usize = 48;
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

/// Data of one season.
#[derive(Debug, Clone, Default)]
pub struct Curves {
    /// Running cost.
    pub cost: Vec<PlotPoint>,
    /// Running heat, kWh.
    pub heat: Vec<PlotPoint>,
    /// Running cost of the baseline.
    pub baseline_cost: Vec<PlotPoint>,
    /// Running heat of the baseline, kWh.
    pub baseline_heat: Vec<PlotPoint>,
    /// Day by day.
    pub days: Vec<Day>,
    /// Month by month.
    pub months: Vec<Month>,
}

impl Curves {
    fn of(season: &Season) -> Self {
        let h = &season.run.hours;
        let heat: Vec<f64> = h.heater_w.iter().zip(&h.standby_w).map(|(a, b)| (a + b) / W_PER_KW).collect();
        let baseline: Vec<f64> = h.baseline_w.iter().map(|w| w / W_PER_KW).collect();
        let mut curves = Self {
            cost: running(&h.cost, THIN_H),
            heat: running(&heat, THIN_H),
            baseline_cost: running(&h.baseline_cost, THIN_BASELINE_H),
            baseline_heat: running(&baseline, THIN_BASELINE_H),
            ..Self::default()
        };
        let base_c = season.run.summary.baseline_setpoint_c;
        for hour in 0..season.len() {
            let (Some(at), Some(outdoor_c)) = (season.stamp(hour), h.outdoor_c.get(hour)) else { continue };
            let degree_hours_kh = (base_c - outdoor_c).max(0.0);
            let (heat_kwh, baseline_kwh) = (value(&heat, hour), value(&baseline, hour));
            match curves.days.last_mut().filter(|d| (d.at.month, d.at.day) == (at.month, at.day)) {
                Some(day) => {
                    day.degree_hours_kh += degree_hours_kh;
                    day.heat_kwh += heat_kwh;
                }
                None => curves.days.push(Day { at, hour, degree_hours_kh, heat_kwh }),
            }
            match curves.months.last_mut().filter(|m| m.month == at.month) {
                Some(month) => {
                    month.degree_hours_kh += degree_hours_kh;
                    month.heat_kwh += heat_kwh;
                    month.baseline_kwh += baseline_kwh;
                }
                None => curves.months.push(Month { month: at.month, degree_hours_kh, heat_kwh, baseline_kwh }),
            }
        }
        curves
    }
}

fn value(column: &[f64], hour: usize) -> f64 {
    column.get(hour).copied().unwrap_or(0.0)
}

/// Running sum every so many hours, from zero at the start to the total at the end.
fn running(column: &[f64], every_h: usize) -> Vec<PlotPoint> {
    let mut sum = 0.0;
    let mut points = vec![PlotPoint::new(0.0, 0.0)];
    for (hour, value) in column.iter().enumerate() {
        sum += value;
        let end = hour + 1;
        if end % every_h == 0 || end == column.len() {
            points.push(PlotPoint::new(end as f64, sum));
        }
    }
    points
}

/// Curves by scenario, made anew when its season changes.
#[derive(Default)]
pub struct PlotShelf {
    held: BTreeMap<ScenarioId, (Arc<ScenarioRun>, Arc<Curves>)>,
}

impl PlotShelf {
    /// The curves of a season.
    pub fn curves(&mut self, id: ScenarioId, season: &Season) -> Arc<Curves> {
        if let Some((run, curves)) = self.held.get(&id)
            && Arc::ptr_eq(run, &season.run)
        {
            return Arc::clone(curves);
        }
        let curves = Arc::new(Curves::of(season));
        self.held.insert(id, (Arc::clone(&season.run), Arc::clone(&curves)));
        curves
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_running_sum_ends_at_the_total() {
        let points = running(&[1.0; 50], THIN_H);
        assert_eq!(points.first().map(|p| p.y), Some(0.0));
        assert_eq!(points.last().map(|p| (p.x, p.y)), Some((50.0, 50.0)));
        assert!(points.windows(2).all(|p| p[0].x < p[1].x));
    }
}
