//! The monthly means of an hourly year.

use crate::units::HOURS_PER_DAY;
use crate::weather::degree_days::DayRange;
use crate::weather::stats::mean;
use crate::weather::sun::Sun;
use crate::weather::year::{Record, WeatherYear};

/// Beam from which the sun counts as shining, W/m² (World Meteorological Organization, Guide to Instruments, chapter on
/// sunshine duration).
const SHINING_W_PER_M2: f64 = 120.0;

/// What a month of an hourly year was like.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct MonthDigest {
    /// Mean of the daily minima, °C.
    pub min_c: f64,
    /// Mean of the daily maxima, °C.
    pub max_c: f64,
    /// Hours of bright sunshine.
    pub sunshine_h: f64,
    /// Hours with the sun above the horizon.
    pub daylight_h: f64,
    /// Mean cloud, tenths.
    pub cloud_tenths: f64,
    /// Mean wind at the mast, m/s.
    pub wind_m_per_s: f64,
}

impl MonthDigest {
    /// Middle between mean daily minimum and maximum, °C.
    pub(super) fn middle_c(&self) -> f64 {
        f64::midpoint(self.min_c, self.max_c)
    }

    /// Mean daily swing, K.
    pub(super) fn swing_k(&self) -> f64 {
        self.max_c - self.min_c
    }
}

/// Mean daily minimum and maximum of each month, °C; zeros for a month without records.
pub(super) fn mean_ranges(records: &[Record]) -> [DayRange; 12] {
    let mut days: [Vec<DayRange>; 12] = Default::default();
    for day in records.chunks(HOURS_PER_DAY) {
        let temperatures: Vec<f64> = day.iter().map(|r| r.dry_bulb_c).collect();
        let month = day.first().and_then(|r| days.get_mut((r.month as usize).wrapping_sub(1)));
        if let (Some(month), Some(range)) = (month, DayRange::of(&temperatures)) {
            month.push(range);
        }
    }
    days.map(|ranges| {
        let of = |take: fn(&DayRange) -> f64| mean(&ranges.iter().map(take).collect::<Vec<_>>());
        DayRange { min_c: of(|r| r.min_c), max_c: of(|r| r.max_c) }
    })
}

/// The monthly means of a year.
pub(super) fn digest(year: &WeatherYear) -> [MonthDigest; 12] {
    let mut months = mean_ranges(&year.records).map(|range| MonthDigest {
        min_c: range.min_c,
        max_c: range.max_c,
        ..MonthDigest::default()
    });
    for (m, month) in (1..).zip(&mut months) {
        let records: Vec<&Record> = year.records.iter().filter(|r| r.month == m).collect();
        let means = |take: fn(&Record) -> f64| mean(&records.iter().map(|r| take(r)).collect::<Vec<_>>());
        month.cloud_tenths = means(|r| r.cloud_tenths);
        month.wind_m_per_s = means(|r| r.wind_m_per_s);
        for r in records {
            let sun = Sun::at(&year.place, r.year, r.month, r.day, f64::from(r.hour) + year.sun_offset_h);
            month.daylight_h += f64::from(u8::from(sun.is_up()));
            month.sunshine_h += f64::from(u8::from(r.direct_normal_w_per_m2 >= SHINING_W_PER_M2));
        }
    }
    months
}
