//! The season's worst spell: not where it is coldest outdoors but where the scenario itself comes nearest to failing.

use super::plan::Plan;
use super::result::{HourStamp, HourlySeries};
use super::stored::stored;
use super::summary::SETPOINT_TOLERANCE_K;
use serde::Serialize;

/// Hours of a spell: two nights with the day between, within which stores of this size run down. A modelling choice.
pub const WORST_SPELL_HOURS: usize = 48;

/// A heater that gives this share of its rated output runs full.
pub const FULL_SHARE: f64 = 0.999;

/// What makes the spell the worst, the gravest first: the first of these that a season has any of decides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Strain {
    /// Most degree-hours of the crop's air below its limit.
    CropLimit,
    /// Most degree-hours of what the first heater senses below its setpoint while it gives all that it can: what else
    /// falls short waits for its hours.
    Setpoint,
    /// Most heat from the heaters.
    Heat,
    /// Coldest crop air in the mean.
    CropAir,
}

/// Heat above the crop limit through a spell, kWh.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct StoreCourse {
    /// In its first hour.
    pub first_kwh: f64,
    /// In the hour with least.
    pub least_kwh: f64,
    /// In its last hour.
    pub last_kwh: f64,
}

/// The worst consecutive hours of a season.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct WorstSpell {
    /// Its first hour.
    pub starts_at: HourStamp,
    /// The same, counted from 0 in the season.
    #[serde(skip)]
    pub start: usize,
    /// Its hours: [`WORST_SPELL_HOURS`], fewer only in a shorter season.
    pub hours: usize,
    /// Why it is the worst.
    pub by: Strain,
    /// Degree-hours below the crop limit in it, K·h.
    pub below_crop_limit_kh: f64,
    /// Degree-hours below setpoint in it with the first heater giving all that it can, K·h.
    pub below_setpoint_kh: f64,
    /// Heat of all heaters in it, kWh.
    pub heat_kwh: f64,
    /// Lowest outdoor air in it, °C.
    pub outdoor_min_c: f64,
    /// Lowest crop air in it, °C.
    pub crop_air_min_c: f64,
    /// What the water holds above the crop limit; none without water.
    pub water: Option<StoreCourse>,
    /// What floors and benches hold above the crop limit.
    pub floor: StoreCourse,
}

impl WorstSpell {
    /// Hours of a season of so many that show the spell with as much before and behind it.
    #[must_use]
    pub fn surroundings(&self, season_hours: usize) -> std::ops::Range<usize> {
        self.start.saturating_sub(self.hours)..(self.start + 2 * self.hours).min(season_hours)
    }
}

/// Columns of the season that the spell is sought in; `sensed_c` and setpoints belong to the first heater.
pub(super) struct Sought<'a> {
    pub plan: &'a Plan,
    pub series: &'a HourlySeries,
    pub crop_air_c: &'a [f64],
    pub sensed_c: Option<&'a [f64]>,
    pub rated_w: f64,
    pub limit_c: f64,
}

impl Sought<'_> {
    /// Finds the spell; `stamp` names an hour of the season.
    pub fn find(&self, stamp: impl Fn(usize) -> HourStamp) -> WorstSpell {
        let s = self.series;
        let below_limit: Vec<f64> = self.crop_air_c.iter().map(|t| (self.limit_c - t).max(0.0)).collect();
        let below_setpoint = self.below_setpoint();
        let heat_w: Vec<f64> = s.heater_w.iter().zip(&s.standby_w).map(|(a, b)| a + b).collect();
        let cold: Vec<f64> = self.crop_air_c.iter().map(|t| -t).collect();
        let any = |column: &[f64]| column.iter().any(|v| *v > 0.0);
        let (by, column) = if any(&below_limit) {
            (Strain::CropLimit, &below_limit)
        } else if any(&below_setpoint) {
            (Strain::Setpoint, &below_setpoint)
        } else if any(&heat_w) {
            (Strain::Heat, &heat_w)
        } else {
            (Strain::CropAir, &cold)
        };
        let hours = WORST_SPELL_HOURS.min(s.record.len());
        let start = largest_window(column, hours);
        let within = start..start + hours;
        let sum = |column: &[f64]| column.get(within.clone()).unwrap_or_default().iter().sum::<f64>();
        let lowest = |column: &[f64]| {
            column.get(within.clone()).unwrap_or_default().iter().copied().reduce(f64::min).unwrap_or(0.0)
        };
        let held: Vec<_> = within.clone().map(|hour| stored(self.plan, s, hour, self.limit_c)).collect();
        let water: Option<Vec<f64>> = held.iter().map(|held| held.water_kwh).collect();
        let floor: Vec<f64> = held.iter().map(|held| held.floor_kwh).collect();
        WorstSpell {
            starts_at: stamp(start),
            start,
            hours,
            by,
            below_crop_limit_kh: sum(&below_limit),
            below_setpoint_kh: sum(&below_setpoint),
            heat_kwh: sum(&heat_w) / 1000.0,
            outdoor_min_c: lowest(&s.outdoor_c),
            crop_air_min_c: lowest(self.crop_air_c),
            water: water.as_deref().and_then(course),
            floor: course(&floor).unwrap_or(StoreCourse { first_kwh: 0.0, least_kwh: 0.0, last_kwh: 0.0 }),
        }
    }

    /// Degrees below setpoint of each hour that is short although the heater runs full; empty without a heater.
    fn below_setpoint(&self) -> Vec<f64> {
        let sensed = self.sensed_c.unwrap_or_default();
        let full_w = FULL_SHARE * self.rated_w;
        let short = |((t_c, setpoint_c), heater_w): ((&f64, &Option<f64>), &f64)| match setpoint_c {
            Some(set) if *t_c < set - SETPOINT_TOLERANCE_K && *heater_w >= full_w => set - t_c,
            _ => 0.0,
        };
        sensed.iter().zip(&self.series.setpoint_c).zip(&self.series.heater_w).map(short).collect()
    }
}

fn course(kwh: &[f64]) -> Option<StoreCourse> {
    let least_kwh = kwh.iter().copied().reduce(f64::min)?;
    Some(StoreCourse { first_kwh: *kwh.first()?, least_kwh, last_kwh: *kwh.last()? })
}

/// First of the consecutive hours with the largest sum.
fn largest_window(column: &[f64], hours: usize) -> usize {
    let sums = column.windows(hours.max(1)).map(|w| w.iter().sum::<f64>()).enumerate();
    sums.fold((0, f64::NEG_INFINITY), |best, (start, sum)| if sum > best.1 { (start, sum) } else { best }).0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_of_equal_windows_is_taken() {
        assert_eq!(largest_window(&[0.0, 1.0, 2.0, 2.0, 1.0, 2.0], 2), 2);
        assert_eq!(largest_window(&[1.0, 1.0, 1.0], 2), 0);
        assert_eq!(largest_window(&[], 2), 0);
    }
}
