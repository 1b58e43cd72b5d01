//! Whether the rows of a file are one whole year, hour by hour.

use super::error::{Problem, Stamp};
use super::raw::RawRow;

const HOURS_COMMON_YEAR: usize = 8760;
const HOURS_LEAP_YEAR: usize = 8784;
/// A reader may stop collecting here: what is wrong shows by then.
pub(super) const ENOUGH_ROWS: usize = HOURS_LEAP_YEAR + 48;

/// The hour that a row carries.
pub(super) fn stamp(row: &RawRow) -> Stamp {
    Stamp { month: row.month, day: row.day, hour: row.hour }
}

/// Whether a row lies on 29 February.
pub(super) fn on_leap_day(row: &RawRow) -> bool {
    (row.month, row.day) == (2, 29)
}

/// Checks that the rows are one whole year from 1 January 01:00, with 29 February if they hold one. The year column is
/// not looked at: typical years are stitched from several.
pub(super) fn check(rows: &[RawRow], last_line: usize) -> Result<(), Problem> {
    let leap = rows.iter().any(on_leap_day);
    let needed = if leap { HOURS_LEAP_YEAR } else { HOURS_COMMON_YEAR };
    let mut previous = None;
    let mut expected = Stamp { month: 1, day: 1, hour: 1 };
    for (k, row) in rows.iter().enumerate() {
        let (line, found) = (row.line, stamp(row));
        if previous == Some(found) {
            return Err(Problem::RepeatedHour { line, stamp: found });
        }
        if k >= needed {
            return Err(Problem::TooLong { line, needed });
        }
        if found != expected {
            return Err(Problem::OutOfOrder { line, expected, found });
        }
        previous = Some(found);
        expected = next(expected, leap);
    }
    match rows.last() {
        None => Err(Problem::NoRows { line: last_line }),
        Some(last) if rows.len() < needed => {
            Err(Problem::Truncated { line: last.line, last: stamp(last), rows: rows.len(), needed })
        }
        Some(_) => Ok(()),
    }
}

/// The hour after this one; the year begins again after its end.
fn next(now: Stamp, leap: bool) -> Stamp {
    if now.hour < 24 {
        Stamp { hour: now.hour + 1, ..now }
    } else if now.day < days_in_month(now.month, leap) {
        Stamp { day: now.day + 1, hour: 1, ..now }
    } else {
        Stamp { month: now.month % 12 + 1, day: 1, hour: 1 }
    }
}

fn days_in_month(month: u32, leap: bool) -> u32 {
    match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// Whether the months come from different years. The last row may already carry the next year.
pub(super) fn is_typical(rows: &[RawRow]) -> bool {
    let whole = rows.split_last().map_or(rows, |(_, before)| before);
    whole.windows(2).any(|pair| matches!(pair, [a, b] if a.year != b.year))
}
