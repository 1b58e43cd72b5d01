//! How bright a month's sky is, and what that makes of the sun that comes through.

use super::Normals;
use super::digest::MonthDigest;
use crate::units::HOURS_PER_DAY;
use crate::weather::sun::Sun;
use crate::weather::year::Place;

/// Share of the sun above the air that comes through an overcast sky, and what a cloudless one adds: Ångström's relation
/// with the coefficients of FAO Irrigation and Drainage Paper 56.
const OVERCAST_SHARE: f64 = 0.25;
const CLEAR_ADDS: f64 = 0.5;
/// A common year that stands for all.
const COMMON_YEAR: i32 = 2001;
const MONTH_DAYS: [u32; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// How bright a month's sky is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Brightness {
    /// Hours of bright sunshine in the whole month.
    SunshineHours(f64),
    /// Mean cloud cover, tenths.
    CloudTenths(f64),
}

/// Sunny share of the daylight: as asked for, and the lender's by the same measure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shares {
    pub wanted: f64,
    pub lent: f64,
    /// Mean cloud as asked for, tenths.
    pub cloud_tenths: Option<f64>,
}

impl Shares {
    /// By how much the month's clearness is more than the lender's.
    pub(super) fn clearness_factor(self) -> f64 {
        let clearness = |share: f64| OVERCAST_SHARE + CLEAR_ADDS * share;
        clearness(self.wanted) / clearness(self.lent)
    }
}

/// Sunny shares of the months; none where brightness is not known.
pub(super) fn shares(normals: &Normals, lender: &[MonthDigest; 12]) -> [Option<Shares>; 12] {
    let mut shares = [None; 12];
    for (m, ((share, month), lent)) in shares.iter_mut().zip(&normals.months).zip(lender).enumerate() {
        *share = month.brightness.map(|brightness| match brightness {
            Brightness::SunshineHours(hours) => Shares {
                wanted: (hours / daylight_h(&normals.place, m).max(1.0)).clamp(0.0, 1.0),
                lent: lent.sunshine_h / lent.daylight_h.max(1.0),
                cloud_tenths: None,
            },
            Brightness::CloudTenths(tenths) => Shares {
                wanted: (1.0 - tenths / 10.0).clamp(0.0, 1.0),
                lent: 1.0 - lent.cloud_tenths / 10.0,
                cloud_tenths: Some(tenths.clamp(0.0, 10.0)),
            },
        });
    }
    shares
}

/// Hours of a month (0 January) with the sun above the horizon.
fn daylight_h(place: &Place, month: usize) -> f64 {
    let hours =
        (1..=MONTH_DAYS[month % 12]).flat_map(|day| (0..HOURS_PER_DAY).map(move |hour| (day, hour as f64 + 0.5)));
    let up = |(day, hour): (u32, f64)| Sun::at(place, COMMON_YEAR, month as u32 + 1, day, hour).is_up();
    hours.filter(|at| up(*at)).count() as f64
}
