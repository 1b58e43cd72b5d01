//! Shift and stretch of temperatures, and the scale of wind.
//!
//! Belcher, Hacker and Powell combine a shift of the month with a stretch about its mean, `T = T₀ + ΔT + α (T₀ − ⟨T₀⟩)`,
//! α from the change of the daily range. Made for a changed climate of one place, that stretches the difference between
//! days as much as the swing within them, which between places goes astray: by the sea days swing by 4 K and differ as much
//! as inland, where they swing by 10 K. Here each has its own stretch ‡: the swing about the running day
//! as wanted, the running day about the month as the climate is more or less continental.

use super::MonthNormal;
use super::digest::mean_ranges;
use crate::units::HOURS_PER_DAY;
use crate::weather::stats::mean;
use crate::weather::year::Record;

/// Hours before and after the turn of a month in which its line passes into the next ‡, so that no cliff stands there.
const TURN_H: usize = 12;
/// The means are met to this, K.
const MET_K: f64 = 0.01;
/// Each round leaves a fraction of the miss.
const MOST_ROUNDS: usize = 60;
/// The swing keeps at least this share of the lender's, or half of what it would be if all days were alike ‡ where that
/// is less; where days differ so much that this is too much, they are brought nearer to one another.
const LEAST_SWING: f64 = 0.2;
const OF_DAYS_ALIKE: f64 = 0.5;
const NEARER: f64 = 0.9;
/// Least and most ‡ that the difference between days is taken of the lender's.
const DAYS_RANGE: (f64, f64) = (0.4, 2.5);

/// A month's way from lent to wanted temperatures: `T = mean + days (L − ⟨L⟩) + swing (T₀ − L)`, L the running day.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Line {
    mean_c: f64,
    lent_mean_c: f64,
    days: f64,
    swing: f64,
    least_swing: f64,
}

impl Line {
    fn at(self, t_c: f64, running_c: f64) -> f64 {
        self.mean_c + self.days * (running_c - self.lent_mean_c) + self.swing * (t_c - running_c)
    }
}

/// Moves dry bulb and dew point of each month, so that its mean daily minimum and maximum are the wanted ones. The gap
/// between dry bulb and dew point is stretched as the swing is: saturated air stays saturated.
pub(super) fn temperatures(records: &mut [Record], months: &[MonthNormal; 12]) {
    let lent: Vec<Record> = records.to_vec();
    let running_c = running_day(&lent);
    let mut lines = first_lines(&lent, months);
    for _ in 0..MOST_ROUNDS {
        for (k, ((record, from), running_c)) in records.iter_mut().zip(&lent).zip(&running_c).enumerate() {
            let (own, other, share) = lines_at(k, &lent, &lines);
            let blend = |a: f64, b: f64| a + share * (b - a);
            record.dry_bulb_c = blend(own.at(from.dry_bulb_c, *running_c), other.at(from.dry_bulb_c, *running_c));
            let gap_k = blend(own.swing, other.swing) * (from.dry_bulb_c - from.dew_point_c).max(0.0);
            record.dew_point_c = record.dry_bulb_c - gap_k;
        }
        let mut worst_k: f64 = 0.0;
        for ((line, wanted), found) in lines.iter_mut().zip(months).zip(mean_ranges(records)) {
            worst_k = worst_k.max((wanted.min_c - found.min_c).abs()).max((wanted.max_c - found.max_c).abs());
            line.mean_c += wanted.middle_c() - found.middle_c();
            line.swing *= wanted.swing_k() / (found.max_c - found.min_c).max(0.1);
            if line.swing < line.least_swing {
                (line.swing, line.days) = (line.least_swing, line.days * NEARER);
            }
        }
        if worst_k < MET_K {
            break;
        }
    }
}

/// Mean of the 24 hours round each hour, °C; the year wraps.
fn running_day(records: &[Record]) -> Vec<f64> {
    let hours = records.len();
    let at = |k: usize| records.get(k % hours).map_or(0.0, |r| r.dry_bulb_c);
    let half = HOURS_PER_DAY / 2;
    let around = |k: usize| (0..HOURS_PER_DAY).map(|step| at(k + hours - half + step)).sum::<f64>();
    (0..hours).map(|k| (around(k) + 0.5 * (at(k + half) - at(k + hours - half))) / HOURS_PER_DAY as f64).collect()
}

fn first_lines(lent: &[Record], months: &[MonthNormal; 12]) -> [Line; 12] {
    let ranges = mean_ranges(lent);
    let days = yearly_swing_k(months.map(|m| m.middle_c())) / yearly_swing_k(ranges.map(|r| r.middle_c())).max(1.0);
    std::array::from_fn(|m| {
        let (from, wanted) = (&ranges[m], &months[m]);
        let swing = wanted.swing_k() / (from.max_c - from.min_c).max(0.1);
        Line {
            mean_c: wanted.middle_c(),
            lent_mean_c: from.middle_c(),
            days: days.clamp(DAYS_RANGE.0, DAYS_RANGE.1),
            swing,
            least_swing: LEAST_SWING.min(OF_DAYS_ALIKE * swing),
        }
    })
}

/// Warmest less coldest month, K: the measure of a continental climate. Days of winter differ by about a fifth of it
/// (standard deviation within a month 0.13 to 0.28 of it at the bundled stations, 0.15 to 0.21 in the measured years of
/// Seattle, Clemson, Mount Shasta, Northway and Chicago).
pub(super) fn yearly_swing_k(months_c: [f64; 12]) -> f64 {
    months_c.into_iter().fold(f64::NEG_INFINITY, f64::max) - months_c.into_iter().fold(f64::INFINITY, f64::min)
}

/// The line of an hour, that of the neighbouring month, and the neighbour's share: a half at the turn, none away from it.
fn lines_at(k: usize, records: &[Record], lines: &[Line; 12]) -> (Line, Line, f64) {
    let month_of = |k: usize| records.get(k % records.len()).map_or(0, |r| (r.month as usize + 11) % 12);
    let month = month_of(k);
    let ahead = (0..TURN_H).find(|step| month_of(k + step + 1) != month);
    let behind = (0..TURN_H).find(|step| month_of(k + records.len() - step - 1) != month);
    let share = |step: usize| 0.5 - (step as f64 + 0.5) / (2 * TURN_H) as f64;
    match (ahead, behind) {
        (Some(step), _) => (lines[month], lines[(month + 1) % 12], share(step)),
        (None, Some(step)) => (lines[month], lines[(month + 11) % 12], share(step)),
        (None, None) => (lines[month], lines[month], 0.0),
    }
}

/// Scales the wind of each month whose mean is known; still air stays still.
pub(super) fn wind(records: &mut [Record], months: &[MonthNormal; 12]) {
    for (m, month) in (1..).zip(months) {
        let Some(wanted) = month.wind_m_per_s else { continue };
        let lent: Vec<f64> = records.iter().filter(|r| r.month == m).map(|r| r.wind_m_per_s).collect();
        let lent_mean = mean(&lent);
        for record in records.iter_mut().filter(|r| r.month == m) {
            record.wind_m_per_s = if lent_mean > 0.0 { record.wind_m_per_s * wanted / lent_mean } else { wanted };
        }
    }
}
