//! The days that a log lacks: between neighbours where few are missing, else from a made year of the same climate.

use super::daily::hours_c;
use super::days::{Day, Known, Winter};
use crate::units::HOURS_PER_DAY;
use crate::weather::Note;
use crate::weather::degree_days::DayRange;
use crate::weather::error::WeatherError;
use crate::weather::fill::{gaps, interpolate_short};
use crate::weather::normals::year_from_known_months;
use crate::weather::stats::mean;
use crate::weather::year::Place;

/// Days ‡ on end that are drawn from their neighbours.
const BETWEEN_DAYS: usize = 3;
/// Days with which a month counts as known.
const MONTH_KNOWN_DAYS: usize = 15;
/// Gaps that the note names one by one.
const NAMED_GAPS: usize = 8;
const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// A year of hours, and what was done to have it whole.
pub(super) struct FilledDays {
    pub days: Vec<Day>,
    pub dry_bulb_c: Vec<f64>,
    pub filled_h: usize,
    pub notes: Vec<Note>,
}

/// Fills the days that are missing.
pub(super) fn fill_days(winter: Winter, place: &Place) -> Result<FilledDays, WeatherError> {
    let Winter { days, mut notes } = winter;
    let mut hours: Vec<Option<f64>> = vec![None; days.len() * HOURS_PER_DAY];
    let mut ranges: Vec<Option<DayRange>> = days.iter().map(|day| range_of(&day.known)).collect();
    let between = between_neighbours(&mut ranges);
    lay_readings(&days, &mut hours);
    let made = year_from_known_months(place, &known_months(&days, &ranges))?;
    let made_c: Vec<f64> = made.records.iter().map(|r| r.dry_bulb_c).collect();
    let by_day = made_c.chunks(HOURS_PER_DAY);
    let whole: Vec<DayRange> =
        ranges.iter().zip(by_day).map(|(r, day)| r.or_else(|| DayRange::of(day)).unwrap_or_default()).collect();
    let waves = hours_c(&days, &whole, place);
    let read_at_all = hours.iter().any(Option::is_some);
    let mut filled_h = interpolate_short(&mut hours);
    let mut lent = 0;
    let dry_bulb_c = hours.iter().enumerate().map(|(k, hour)| {
        let day = k / HOURS_PER_DAY;
        let logged = ranges.get(day).is_some_and(Option::is_some) && !read_at_all;
        match hour {
            Some(t_c) => *t_c,
            None if logged => waves.get(k).copied().unwrap_or_default(),
            None => {
                lent += 1;
                made_c.get(k).copied().unwrap_or_default()
            }
        }
    });
    let dry_bulb_c: Vec<f64> = dry_bulb_c.collect();
    filled_h += lent + between.len() * HOURS_PER_DAY;
    notes.extend(gap_notes(&days, &between, lent, &made.credit));
    Ok(FilledDays { days, dry_bulb_c, filled_h, notes })
}

fn range_of(known: &Known) -> Option<DayRange> {
    match known {
        Known::Range(min_c, max_c) => Some(DayRange { min_c: *min_c, max_c: *max_c }),
        _ => None,
    }
}

/// Draws the minima and maxima of short gaps from their neighbours; gives the days that were filled.
fn between_neighbours(ranges: &mut [Option<DayRange>]) -> Vec<usize> {
    let mut filled = Vec::new();
    for (start, length) in gaps(ranges).into_iter().filter(|(_, length)| *length <= BETWEEN_DAYS) {
        let before = start.checked_sub(1).and_then(|k| ranges.get(k).copied().flatten());
        let (Some(from), Some(to)) = (before, ranges.get(start + length).copied().flatten()) else { continue };
        for step in 0..length {
            let share = (step + 1) as f64 / (length + 1) as f64;
            let blend = |a: f64, b: f64| a + share * (b - a);
            if let Some(range) = ranges.get_mut(start + step) {
                *range = Some(DayRange { min_c: blend(from.min_c, to.min_c), max_c: blend(from.max_c, to.max_c) });
                filled.push(start + step);
            }
        }
    }
    filled
}

fn lay_readings(days: &[Day], hours: &mut [Option<f64>]) {
    for (day, slots) in days.iter().zip(hours.chunks_mut(HOURS_PER_DAY)) {
        if let Known::Hours(read) = &day.known {
            slots.copy_from_slice(read);
        }
    }
}

/// Mean daily range of each month that the log knows.
fn known_months(days: &[Day], ranges: &[Option<DayRange>]) -> [Option<DayRange>; 12] {
    let of_day = |(day, range): (&Day, &Option<DayRange>)| {
        let read = match &day.known {
            Known::Hours(hours) => DayRange::of(&hours.iter().flatten().copied().collect::<Vec<_>>()),
            _ => None,
        };
        range.or(read).map(|range| (day.month, range))
    };
    let known: Vec<(u32, DayRange)> = days.iter().zip(ranges).filter_map(of_day).collect();
    std::array::from_fn(|m| {
        let of_month: Vec<DayRange> = known.iter().filter(|(month, _)| *month as usize == m + 1).map(|k| k.1).collect();
        (of_month.len() >= MONTH_KNOWN_DAYS).then(|| DayRange {
            min_c: mean(&of_month.iter().map(|r| r.min_c).collect::<Vec<_>>()),
            max_c: mean(&of_month.iter().map(|r| r.max_c).collect::<Vec<_>>()),
        })
    })
}

fn gap_notes(days: &[Day], between: &[usize], lent_h: usize, credit: &str) -> Vec<Note> {
    let mut notes = Vec::new();
    let name = |k: usize| {
        days.get(k).map_or_else(String::new, |d| format!("{} {}", d.day, MONTHS[(d.month as usize + 11) % 12]))
    };
    if !between.is_empty() {
        let named: Vec<String> = between.iter().take(NAMED_GAPS).map(|k| name(*k)).collect();
        let more = if between.len() > NAMED_GAPS { " and others" } else { "" };
        notes.push(
            format!(
                "{} days that the log lacks are drawn from their neighbours: {}{more}.",
                between.len(),
                named.join(", ")
            )
            .into(),
        );
    }
    if lent_h > 0 {
        let silent: Vec<Option<()>> = days
            .iter()
            .enumerate()
            .map(|(k, d)| (d.known != Known::Nothing || between.contains(&k)).then_some(()))
            .collect();
        let spans = gaps(&silent);
        let named: Vec<String> = spans
            .iter()
            .take(NAMED_GAPS)
            .map(|(start, length)| format!("{} to {}", name(*start), name(start + length - 1)))
            .collect();
        notes.push(
            format!(
                "{lent_h} hours that the log lacks come from a year made to its monthly means{}{}. {credit}",
                if named.is_empty() { "" } else { ": " },
                named.join(", ")
            )
            .into(),
        );
    }
    notes
}
