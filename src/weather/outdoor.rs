//! Design temperatures of a weather year, worked out once.

use super::stats::percentile;

/// Outdoor temperatures that heaters are sized by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutdoorFigures {
    /// Exceeded in 99 % of the year's hours, °C.
    pub at_99_c: f64,
    /// Exceeded in 99.6 % of the year's hours, °C.
    pub at_99_6_c: f64,
    /// Coldest hour, °C.
    pub coldest_c: f64,
    /// Its index in the year.
    pub coldest_record: usize,
}

impl OutdoorFigures {
    /// Of the hourly temperatures of a year; zeros for none.
    #[must_use]
    pub fn of(outdoor_c: &[f64]) -> Self {
        let coldest = outdoor_c.iter().copied().enumerate().min_by(|a, b| a.1.total_cmp(&b.1));
        let (coldest_record, coldest_c) = coldest.unwrap_or((0, 0.0));
        let at = |percent| percentile(outdoor_c, percent).unwrap_or(0.0);
        Self { at_99_c: at(1.0), at_99_6_c: at(0.4), coldest_c, coldest_record }
    }
}
