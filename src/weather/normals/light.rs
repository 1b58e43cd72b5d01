//! The lender's clearness under the sun of the place.
//!
//! An hour's clearness index is its global sun over that above the air. The hour of the place takes the index of its
//! counterpart; an hour in which the lender's sun is too low to tell takes that of the lender's day.

use super::alignment::Alignment;
use super::brightness::Shares;
use crate::units::HOURS_PER_DAY;
use crate::weather::irradiance::{direct_normal_from, erbs_diffuse_fraction};
use crate::weather::sun::Sun;
use crate::weather::year::{Place, Record, WeatherYear};

/// Below this sine of the sun's height an hour's own index says little (pvlib 0.16.1, `clearness_index`).
const TELLING_SINE: f64 = 0.065;
/// Highest index that a brighter month makes: what clear hours reach in dry mountain air ‡.
const HIGHEST_INDEX: f64 = 0.82;
/// Rounds in which the light above that ceiling is given to the month's other hours.
const ROUNDS: usize = 6;

/// What an hour's sky does to the sun.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Clearness {
    index: f64,
    /// Diffuse share of what comes through, over what Erbs gives for this index.
    over_erbs: f64,
}

/// Gives each record the sun of the place under the lender's clearness, months brightened or dimmed by their shares.
pub(super) fn carry(
    records: &mut [Record],
    lent: &WeatherYear,
    alignment: Alignment,
    place: &Place,
    shares: &[Option<Shares>; 12],
) {
    let clearness = clearness(lent);
    let hours: Vec<(usize, Sun, Clearness)> = records
        .iter()
        .enumerate()
        .filter_map(|(k, r)| {
            let sun = Sun::at(place, r.year, r.month, r.day, f64::from(r.hour) + lent.sun_offset_h);
            clearness.get(alignment.counterpart(k, clearness.len())).map(|c| (r.month as usize, sun, *c))
        })
        .collect();
    let factors = factors(&hours, shares);
    for (record, (month, sun, clearness)) in records.iter_mut().zip(&hours) {
        let index = brightened(clearness.index, factors[(month + 11) % 12]);
        let global = index * sun.extraterrestrial_horizontal_w_per_m2();
        let diffuse = global * (clearness.over_erbs * erbs_diffuse_fraction(index)).clamp(0.0, 1.0);
        record.global_w_per_m2 = global;
        record.direct_normal_w_per_m2 = direct_normal_from(global, diffuse, sun);
        record.diffuse_w_per_m2 = diffuse;
    }
}

/// The clearness of each hour of the lender.
fn clearness(lent: &WeatherYear) -> Vec<Clearness> {
    let sun = |r: &Record| Sun::at(&lent.place, r.year, r.month, r.day, f64::from(r.hour) + lent.sun_offset_h);
    let mut all = Vec::with_capacity(lent.records.len());
    for day in lent.records.chunks(HOURS_PER_DAY) {
        let suns: Vec<Sun> = day.iter().map(sun).collect();
        let above_air: f64 = suns.iter().map(Sun::extraterrestrial_horizontal_w_per_m2).sum();
        let global: f64 = day.iter().map(|r| r.global_w_per_m2).sum();
        let of_day = Clearness { index: (global / above_air.max(1.0)).clamp(0.0, 1.0), over_erbs: 1.0 };
        all.extend(day.iter().zip(&suns).map(|(r, sun)| of_hour(r, sun).unwrap_or(of_day)));
    }
    all
}

fn of_hour(record: &Record, sun: &Sun) -> Option<Clearness> {
    if sun.direction[2] < TELLING_SINE || record.global_w_per_m2 <= 0.0 {
        return None;
    }
    let index = (record.global_w_per_m2 / sun.extraterrestrial_horizontal_w_per_m2()).clamp(0.0, 1.0);
    let share = record.diffuse_w_per_m2 / record.global_w_per_m2;
    Some(Clearness { index, over_erbs: share / erbs_diffuse_fraction(index) })
}

fn brightened(index: f64, factor: f64) -> f64 {
    (index * factor).min(HIGHEST_INDEX.max(index))
}

/// By how much the indices of each month are raised, so that the month's sun is the wanted multiple although no hour goes
/// above the ceiling.
fn factors(hours: &[(usize, Sun, Clearness)], shares: &[Option<Shares>; 12]) -> [f64; 12] {
    let mut factors = [1.0; 12];
    for (m, (factor, shares)) in (1..).zip(factors.iter_mut().zip(shares)) {
        let Some(wanted) = shares.map(Shares::clearness_factor) else { continue };
        let sum = |factor: f64| -> f64 {
            let of_month = hours.iter().filter(|(month, _, _)| *month == m);
            of_month.map(|(_, sun, c)| brightened(c.index, factor) * sun.extraterrestrial_horizontal_w_per_m2()).sum()
        };
        let (aim, mut raised) = (wanted * sum(1.0), wanted);
        for _ in 0..ROUNDS {
            let reached = sum(raised);
            if reached > 0.0 {
                raised *= aim / reached;
            }
        }
        *factor = raised;
    }
    factors
}
