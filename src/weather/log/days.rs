//! The days of one winter out of a log.

use super::columns::{Said, Sheet};
use super::dates::{Date, DayOrder, date_of, order_of};
use crate::units::HOURS_PER_DAY;
use crate::weather::Note;
use crate::weather::error::Problem;
use std::collections::BTreeMap;

/// Least days with which a log tells a winter ‡.
pub(super) const LEAST_DAYS: usize = 60;
/// Days of the months of a common year; a log's 29 February is left out.
pub(super) const MONTH_DAYS: [u32; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// A calendar day and what the log says of it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Day {
    pub line: usize,
    pub year: i32,
    pub month: u32,
    pub day: u32,
    pub known: Known,
}

/// What is known of a day.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Known {
    Nothing,
    /// Minimum and maximum, °C.
    Range(f64, f64),
    /// Means of the hours that have readings, °C.
    Hours(Vec<Option<f64>>),
}

/// A year of days from 1 January, filled from one winter of the log.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Winter {
    pub days: Vec<Day>,
    pub notes: Vec<Note>,
}

impl Winter {
    /// The winter with the most days, the last of equals. In the north a winter lies from July to June.
    pub(super) fn of(sheet: &Sheet, order: DayOrder, south: bool) -> Result<Self, Problem> {
        let all = days_of(sheet, order)?;
        let season = |date: &Date| if south || date.month >= 7 { date.year } else { date.year - 1 };
        let mut counts: BTreeMap<i32, usize> = BTreeMap::new();
        for date in all.keys() {
            *counts.entry(season(date)).or_default() += 1;
        }
        let (chosen, days) = counts.iter().max_by_key(|(_, days)| **days).map_or((0, 0), |(year, days)| (*year, *days));
        if days < LEAST_DAYS {
            return Err(Problem::LogTooShort { days, needed: LEAST_DAYS });
        }
        let mut notes = Vec::new();
        if counts.len() > 1 {
            let name = if south { chosen.to_string() } else { format!("{chosen}/{}", chosen + 1) };
            notes.push(format!("The log reaches over several winters: {name}, the fullest, was taken.").into());
        }
        let slots = (1..).zip(MONTH_DAYS).flat_map(|(month, last)| (1..=last).map(move |day| (month, day)));
        let year_of = |month: u32| if south || month >= 7 { chosen } else { chosen + 1 };
        let days = slots.map(|(month, day)| {
            let date = Date { year: year_of(month), month, day };
            let (line, known) = all.get(&date).cloned().unwrap_or((0, Known::Nothing));
            Day { line, year: date.year, month, day, known }
        });
        Ok(Self { days: days.collect(), notes })
    }
}

/// What the log says of each of its days, with the line.
fn days_of(sheet: &Sheet, order: DayOrder) -> Result<BTreeMap<Date, (usize, Known)>, Problem> {
    let order = order_of(&sheet.rows, order)?;
    let mut days: BTreeMap<Date, (usize, Known)> = BTreeMap::new();
    let mut sums: BTreeMap<(Date, usize), (f64, f64)> = BTreeMap::new();
    for row in &sheet.rows {
        let (date, hour) = date_of(row, order)?;
        match row.said {
            Said::Day(Some(min_c), Some(max_c)) => {
                if max_c < min_c {
                    return Err(Problem::MinAboveMax { line: row.line });
                }
                if days.insert(date, (row.line, Known::Range(min_c, max_c))).is_some() {
                    return Err(Problem::RepeatedDay { line: row.line });
                }
            }
            Said::Day(..) | Said::Reading(None) => {}
            Said::Reading(Some(t_c)) => {
                let slot = hour.map_or(0, |h| (h.ceil() as usize).clamp(1, HOURS_PER_DAY) - 1);
                let sum = sums.entry((date, slot)).or_default();
                *sum = (sum.0 + t_c, sum.1 + 1.0);
                days.entry(date).or_insert_with(|| (row.line, Known::Hours(vec![None; HOURS_PER_DAY])));
            }
        }
    }
    for ((date, slot), (sum, count)) in sums {
        if let Some((_, Known::Hours(hours))) = days.get_mut(&date)
            && let Some(hour) = hours.get_mut(slot)
        {
            *hour = Some(sum / count);
        }
    }
    Ok(days)
}
