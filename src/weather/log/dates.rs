//! The dates and times of a log, in whatever order they are written.

use super::columns::Row;
use crate::weather::error::{Problem, quoted};
use crate::weather::sun::days_since_1970;

/// Order of day and month in dates such as 03/04/2024.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DayOrder {
    /// As the log itself shows: some date with a number above 12.
    #[default]
    AsShown,
    /// The day first.
    DayFirst,
    /// The month first.
    MonthFirst,
}

/// A date.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Date {
    pub year: i32,
    pub month: u32,
    pub day: u32,
}

/// The three numbers of a date as written.
enum Written {
    YearFirst([u32; 3]),
    /// Day and month in the order of the log, or fixed where points separate them: then the day comes first.
    YearLast([u32; 3], bool),
}

/// The order of the log's dates.
pub(super) fn order_of(rows: &[Row], asked: DayOrder) -> Result<DayOrder, Problem> {
    if asked != DayOrder::AsShown {
        return Ok(asked);
    }
    let mut doubtful = None;
    for row in rows {
        if let Written::YearLast([first, second, _], false) = written(row)? {
            if first > 12 {
                return Ok(DayOrder::DayFirst);
            }
            if second > 12 {
                return Ok(DayOrder::MonthFirst);
            }
            doubtful.get_or_insert((row.line, quoted(&row.date)));
        }
    }
    match doubtful {
        Some((line, text)) => Err(Problem::DoubtfulDate { line, text }),
        None => Ok(DayOrder::DayFirst),
    }
}

/// The date of a row, and the hour of its reading if it has one (0 to 24).
pub(super) fn date_of(row: &Row, order: DayOrder) -> Result<(Date, Option<f64>), Problem> {
    let (year, month, day) = match written(row)? {
        Written::YearFirst([year, month, day]) => (year, month, day),
        Written::YearLast([first, second, year], fixed) => {
            if fixed || order == DayOrder::DayFirst {
                (full_year(year), second, first)
            } else {
                (full_year(year), first, second)
            }
        }
    };
    let date = Date { year: year as i32, month, day };
    if !exists(date) {
        return Err(bad(row));
    }
    Ok((date, hour_of(row)?))
}

fn written(row: &Row) -> Result<Written, Problem> {
    let date = date_part(&row.date);
    let parts: Vec<&str> = date.split(['-', '/', '.']).map(str::trim).filter(|p| !p.is_empty()).collect();
    let numbers: Option<Vec<u32>> = parts.iter().map(|p| p.parse().ok()).collect();
    match (numbers.as_deref(), parts.first().map(|p| p.len())) {
        (Some([year, month, day]), Some(4)) => Ok(Written::YearFirst([*year, *month, *day])),
        (Some([first, second, year]), _) => Ok(Written::YearLast([*first, *second, *year], date.contains('.'))),
        (Some([whole]), Some(8)) => Ok(Written::YearFirst([whole / 10_000, whole / 100 % 100, whole % 100])),
        _ => Err(bad(row)),
    }
}

fn date_part(cell: &str) -> &str {
    cell.split([' ', 'T']).next().unwrap_or_default()
}

/// Years of two digits are of 1970 to 2069 (common practice of spreadsheets).
fn full_year(year: u32) -> u32 {
    match year {
        0..70 => 2000 + year,
        70..100 => 1900 + year,
        _ => year,
    }
}

fn exists(date: Date) -> bool {
    if !(1800..=2200).contains(&date.year) || !(1..=12).contains(&date.month) || date.day < 1 {
        return false;
    }
    let next = if date.month == 12 { (date.year + 1, 1) } else { (date.year, date.month + 1) };
    let length = days_since_1970(next.0, next.1, 1) - days_since_1970(date.year, date.month, 1);
    i64::from(date.day) <= length
}

fn hour_of(row: &Row) -> Result<Option<f64>, Problem> {
    let behind = row.date.split_once([' ', 'T']).map_or("", |(_, time)| time);
    let text = if row.time.is_empty() { behind } else { &row.time };
    let text = text.trim().trim_end_matches('Z').to_lowercase();
    if text.is_empty() {
        return Ok(None);
    }
    let (clock, half) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(clock), _) => (clock, Some(0.0)),
        (_, Some(clock)) => (clock, Some(12.0)),
        _ => (text.as_str(), None),
    };
    let mut parts = clock.trim().split(':').map(str::parse::<f64>);
    let (Some(Ok(hour)), minute) = (parts.next(), parts.next().unwrap_or(Ok(0.0))) else { return Err(bad(row)) };
    let minute = minute.map_err(|_| bad(row))?;
    let hour = half.map_or(hour, |half| hour % 12.0 + half);
    if !(0.0..=24.0).contains(&hour) || !(0.0..60.0).contains(&minute) {
        return Err(bad(row));
    }
    Ok(Some((hour + minute / 60.0).min(24.0)))
}

fn bad(row: &Row) -> Problem {
    Problem::LogDate { line: row.line, text: quoted(format!("{} {}", row.date, row.time).trim()) }
}
