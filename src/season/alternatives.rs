//! Two small changes that cost nothing to make, as money: to start two weeks later, and to hold one degree less.

use super::error::RunError;
use super::result::Summary;
use super::run::run_scenario;
use crate::model::{Catalogue, Scenario, Season, Study};
use crate::weather::Climate;
use chrono::{Datelike, Days, NaiveDate, TimeDelta};

/// What the changes alter in the season's cost; negative is saved. None where a price is missing or the change cannot
/// be made.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Alternatives {
    /// Starting two weeks later.
    pub later: Option<f64>,
    /// Holding one kelvin less, day and night.
    pub cooler: Option<f64>,
}

/// Days of two weeks.
const LATER_D: i32 = 14;

/// Runs both changes. `whole` is the season as it is.
///
/// # Errors
/// As [`run_scenario`].
pub fn alternatives(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    whole: &Summary,
    cancelled: &dyn Fn() -> bool,
) -> Result<Alternatives, RunError> {
    let cost = |study: &Study, scenario: &Scenario| -> Result<Option<f64>, RunError> {
        let run = run_scenario(study, scenario, climate, catalogue, cancelled)?;
        Ok(run.summary.cost.zip(whole.cost).map(|(changed, as_it_is)| changed - as_it_is))
    };
    let later = match later(&study.season) {
        Some(season) => cost(&Study { season, ..study.clone() }, scenario)?,
        None => None,
    };
    let cooler = if scenario.heater.present { cost(study, &cooler(scenario))? } else { None };
    Ok(Alternatives { later, cooler })
}

/// The season that starts two weeks later; none if it would then start after its end.
#[must_use]
pub fn later(season: &Season) -> Option<Season> {
    moved(season, LATER_D)
}

/// The season whose first day is moved by so many days, later if positive; none if it would then start after its end or
/// last longer than a year.
#[must_use]
pub fn moved(season: &Season, days: i32) -> Option<Season> {
    let start = day_of(season.from_month, season.from_day)?;
    let mut end = day_of(season.to_month, season.to_day)?;
    if end < start {
        end = end.with_year(end.year() + 1)?;
    }
    let moved = start.checked_add_signed(TimeDelta::days(i64::from(days)))?;
    let sound = moved <= end && end - moved < TimeDelta::days(365);
    sound.then(|| Season { from_month: moved.month(), from_day: moved.day(), ..season.clone() })
}

/// A day of a year without 29 February.
fn day_of(month: u32, day: u32) -> Option<NaiveDate> {
    NaiveDate::from_ymd_opt(2001, month, day)
}

/// The scenario with every setpoint one kelvin lower.
#[must_use]
pub fn cooler(scenario: &Scenario) -> Scenario {
    let mut cooler = scenario.clone();
    for heater in [&mut cooler.heater, &mut cooler.standby] {
        for setpoint_c in [&mut heater.setpoint_day_c, &mut heater.setpoint_night_c].into_iter().flatten() {
            *setpoint_c -= 1.0;
        }
    }
    cooler
}

/// First and last day of sowing, counted back from planting out by the weeks that a crop takes.
#[must_use]
pub fn sowing(planting_out: (u32, u32), weeks: crate::model::Span) -> Option<[(u32, u32); 2]> {
    let out = day_of(planting_out.0, planting_out.1)?;
    let back = |weeks: f64| {
        let day = out.checked_sub_days(Days::new((weeks.max(0.0) * 7.0).round() as u64))?;
        Some((day.month(), day.day()))
    };
    Some([back(weeks.high)?, back(weeks.low)?])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Span;

    #[test]
    fn two_weeks_later_stays_within_the_season() {
        let season = |from: (u32, u32), to: (u32, u32)| Season {
            from_month: from.0,
            from_day: from.1,
            to_month: to.0,
            to_day: to.1,
        };
        let start = |s: &Season| (s.from_month, s.from_day);
        assert_eq!(later(&season((10, 15), (4, 30))).as_ref().map(start), Some((10, 29)));
        assert_eq!(later(&season((12, 25), (1, 31))).as_ref().map(start), Some((1, 8)));
        assert_eq!(later(&season((4, 20), (4, 30))), None);
        assert_eq!(later(&season((4, 16), (4, 30))).as_ref().map(start), Some((4, 30)));
        assert_eq!(moved(&season((1, 5), (4, 30)), -14).as_ref().map(start), Some((12, 22)));
        assert_eq!(moved(&season((5, 2), (4, 30)), -1).as_ref().map(start), Some((5, 1)));
        assert_eq!(moved(&season((5, 2), (4, 30)), -2), None);
    }

    #[test]
    fn sowing_is_counted_back_over_new_year() {
        assert_eq!(sowing((5, 15), Span { low: 6.0, high: 8.0 }), Some([(3, 20), (4, 3)]));
        assert_eq!(sowing((1, 5), Span { low: 1.0, high: 1.0 }), Some([(12, 29), (12, 29)]));
    }
}
