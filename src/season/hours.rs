//! Which hours of the weather year the season covers.

use super::error::RunError;
use crate::model::Season;
use crate::units::HOURS_PER_DAY;
use crate::weather::Climate;

/// Days run ahead of the season, so that stores begin in step with the weather.
pub const RUN_AHEAD_DAYS: usize = 30;
/// Last days of the run ahead in which heaters run as in the season. A modelling choice.
pub const RUN_AHEAD_HEATED_DAYS: usize = 3;

/// The hours of a season in a weather year that wraps at its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SeasonHours {
    first: usize,
    count: usize,
    year: usize,
}

impl SeasonHours {
    /// Finds first and last hour. A last day before the first lies in the next year. A day that the year lacks
    /// (29 February) is taken as the one before.
    ///
    /// # Errors
    /// [`RunError::EmptySeason`] if the weather has none of these days.
    pub fn find(season: &Season, climate: &Climate) -> Result<Self, RunError> {
        let year = climate.hours.len();
        let first = day_start(climate, season.from_month, season.from_day).ok_or(RunError::EmptySeason)?;
        let last = day_start(climate, season.to_month, season.to_day).ok_or(RunError::EmptySeason)?;
        let end = last + HOURS_PER_DAY;
        let count = if end > first { end - first } else { end + year - first };
        Ok(Self { first, count, year })
    }

    /// Number of hours.
    #[must_use]
    pub fn len(&self) -> usize {
        self.count
    }

    /// Whether it has no hours; never true for one that was found.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.count == 0
    }

    /// Index in the weather year of the season's hour `k`.
    #[must_use]
    pub fn record(&self, k: usize) -> usize {
        (self.first + k) % self.year
    }

    /// Index in the weather year of hour `k` of the run ahead, which ends where the season begins.
    #[must_use]
    pub fn ahead_record(&self, k: usize) -> usize {
        (self.first + self.year * RUN_AHEAD_DAYS + k - RUN_AHEAD_DAYS * HOURS_PER_DAY) % self.year
    }
}

/// Index of the first hour of a day, or of the last day before it in that month.
fn day_start(climate: &Climate, month: u32, day: u32) -> Option<usize> {
    climate
        .hours
        .iter()
        .rposition(|h| h.month == month && h.day <= day)
        .map(|last| last / HOURS_PER_DAY * HOURS_PER_DAY)
}
