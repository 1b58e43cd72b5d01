//! Which bundled station has the most similar winter.
//!
//! Mean temperature, swing, sunshine and wind are met by the making; what the lender decides is what monthly means do
//! not tell: how far days differ, how nights cool, how damp it is, how often the air is still (scaled wind stays still).
//! Those go with the level of the winter and its daily swing, with the swing of the year (continental or maritime), with
//! the height of the sun and with the wind where it is known, so that these measure similarity.

use super::alignment::half_year_apart;
use super::brightness::{Shares, shares};
use super::digest::{MonthDigest, digest};
use super::morph::yearly_swing_k;
use super::sky::observed;
use super::{LEAST_SWING_K, MonthNormal, Normals};
use crate::units::Quantity;
use crate::weather::Note;
use crate::weather::bundled::{Station, stations};
use crate::weather::degree_days::DayRange;
use crate::weather::error::{Problem, WeatherError};
use crate::weather::year::Place;
use std::sync::OnceLock;

/// Differences that weigh the same ‡: each is about a third of what the bundled stations span.
const MEAN_K: f64 = 5.0;
const SWING_K: f64 = 2.5;
const LATITUDE_DEG: f64 = 8.0;
const YEARLY_SWING_K: f64 = 5.0;
const WIND_M_PER_S: f64 = 1.5;
/// Months that make the winter ‡.
const WINTER_MONTHS: usize = 6;

/// Index of the months of winter.
fn winter(normals: &Normals) -> Vec<usize> {
    let mut months: Vec<usize> = (0..12).collect();
    months.sort_by(|a, b| normals.months[*a].middle_c().total_cmp(&normals.months[*b].middle_c()));
    months.truncate(WINTER_MONTHS);
    months
}

impl MonthNormal {
    /// Middle between mean daily minimum and maximum, °C.
    #[must_use]
    pub fn middle_c(&self) -> f64 {
        f64::midpoint(self.min_c, self.max_c)
    }

    /// Mean daily swing, K.
    #[must_use]
    pub fn swing_k(&self) -> f64 {
        self.max_c - self.min_c
    }
}

/// A station that lends its hours.
pub(super) struct Lender {
    pub station: &'static Station,
    /// How bright the months are that were asked for, and the lender's own.
    pub shares: [Option<Shares>; 12],
    /// Why this one, in words.
    pub reason: Note,
}

/// The nearest station but for those left out.
pub(super) fn most_similar(normals: &Normals, left_out: &[&str]) -> Result<Lender, WeatherError> {
    let winter = winter(normals);
    let compared =
        digests()?.iter().filter(|(station, _)| !left_out.contains(&station.key)).map(|(station, months)| {
            let seen = Seen::of(normals, station, months);
            (seen.distance(&winter), seen)
        });
    match compared.min_by(|a, b| a.0.total_cmp(&b.0)) {
        Some((_, seen)) => Ok(Lender { station: seen.station, shares: seen.shares, reason: seen.reason(&winter) }),
        None => Err(Problem::Empty.in_file("bundled stations")),
    }
}

/// The monthly means of the bundled stations, worked out once.
fn digests() -> Result<&'static [(&'static Station, [MonthDigest; 12])], WeatherError> {
    static HELD: OnceLock<Vec<(&'static Station, [MonthDigest; 12])>> = OnceLock::new();
    if let Some(held) = HELD.get() {
        return Ok(held);
    }
    let made =
        stations().iter().map(|s| Ok((s, digest(&observed(s.load()?))))).collect::<Result<Vec<_>, WeatherError>>()?;
    Ok(HELD.get_or_init(|| made))
}

/// A station beside what is asked for, its months in the order of the place's seasons.
struct Seen<'a> {
    normals: &'a Normals,
    station: &'static Station,
    months: [MonthDigest; 12],
    shares: [Option<Shares>; 12],
}

impl<'a> Seen<'a> {
    fn of(normals: &'a Normals, station: &'static Station, months: &[MonthDigest; 12]) -> Self {
        let mut months = *months;
        if half_year_apart(station.latitude_deg, normals.place.latitude_deg) {
            months.rotate_left(6);
        }
        Self { normals, station, months, shares: shares(normals, &months) }
    }

    /// Mean square of the differences over the months of winter, each by its weight.
    fn distance(&self, winter: &[usize]) -> f64 {
        let square = |difference: f64, scale: f64| (difference / scale).powi(2);
        let of_month = |m: &usize| {
            let (want, have) = (&self.normals.months[*m], &self.months[*m]);
            square(want.middle_c() - have.middle_c(), MEAN_K)
                + square(want.swing_k() - have.swing_k(), SWING_K)
                + want.wind_m_per_s.map_or(0.0, |w| square(w - have.wind_m_per_s, WIND_M_PER_S))
        };
        let sun = self.station.latitude_deg.abs() - self.normals.place.latitude_deg.abs();
        let yearly = yearly_swing_k(self.months.map(|m| m.middle_c()))
            - yearly_swing_k(self.normals.months.map(|m| m.middle_c()));
        winter.iter().map(of_month).sum::<f64>() / winter.len() as f64
            + square(sun, LATITUDE_DEG)
            + square(yearly, YEARLY_SWING_K)
    }

    fn reason(&self, winter: &[usize]) -> Note {
        let mean_of = |take: &dyn Fn(usize) -> f64| winter.iter().map(|m| take(*m)).sum::<f64>() / winter.len() as f64;
        let (wanted, lent) = (&self.normals.months, &self.months);
        Note::from(format!(
            "The hours are those of {}, the built-in station with the most similar winter: mean ",
            self.station.name
        ))
        .figure(mean_of(&|m| lent[m].middle_c()), Quantity::Temperature, 1)
        .words(" and daily swing ")
        .figure(mean_of(&|m| lent[m].swing_k()), Quantity::TemperatureDifference, 1)
        .words(format!(" in its six coldest months at latitude {:.0}°, where ", self.station.latitude_deg))
        .figure(mean_of(&|m| wanted[m].middle_c()), Quantity::Temperature, 1)
        .words(", ")
        .figure(mean_of(&|m| wanted[m].swing_k()), Quantity::TemperatureDifference, 1)
        .words(format!(" and {:.0}° are asked for.", self.normals.place.latitude_deg))
    }
}

/// Twelve months out of the known ones: those that are missing are the nearest station's, shifted as the known ones lie.
pub(super) fn complete(place: &Place, known: &[Option<DayRange>; 12]) -> Result<[MonthNormal; 12], WeatherError> {
    let compared = digests()?.iter().map(|(station, months)| {
        let mut months = *months;
        if half_year_apart(station.latitude_deg, place.latitude_deg) {
            months.rotate_left(6);
        }
        let pairs = known.iter().zip(&months).filter_map(|(k, m)| k.map(|k| (k.min_c - m.min_c, k.max_c - m.max_c)));
        let pairs: Vec<(f64, f64)> = pairs.collect();
        let count = pairs.len().max(1) as f64;
        let shift = (pairs.iter().map(|p| p.0).sum::<f64>() / count, pairs.iter().map(|p| p.1).sum::<f64>() / count);
        (pairs.iter().map(|p| p.0 * p.0 + p.1 * p.1).sum::<f64>(), months, shift)
    });
    let Some((_, months, shift)) = compared.min_by(|a, b| a.0.total_cmp(&b.0)) else {
        return Err(Problem::Empty.in_file("bundled stations"));
    };
    Ok(std::array::from_fn(|m| {
        let guessed = DayRange { min_c: months[m].min_c + shift.0, max_c: months[m].max_c + shift.1 };
        let range = known[m].unwrap_or(guessed);
        let max_c = range.max_c.max(range.min_c + LEAST_SWING_K);
        MonthNormal { min_c: range.min_c, max_c, brightness: None, wind_m_per_s: None }
    }))
}
