//! Closes the holes of a raw year, and counts them.

use super::calendar::stamp;
use super::error::Problem;
use super::fill_sun::{complete_sun, day_cloud_tenths};
use super::raw::{RawRow, RawYear};
use super::stats::lowest;
use super::year::{Filled, Record, WeatherYear};
use crate::units::HOURS_PER_DAY;
use crate::units::Quantity;
use crate::weather::Note;

/// Longest gap ‡ that is interpolated, hours: the weather of half a night can be guessed from its ends, not more.
pub const MAX_INTERPOLATED_H: usize = 6;
/// Wind ‡ where none was measured, m/s.
pub const WIND_IF_UNKNOWN_M_PER_S: f64 = 2.0;
/// Cloud ‡ where none was seen, tenths.
pub const CLOUD_IF_UNKNOWN_TENTHS: f64 = 5.0;
/// Step from the last hour of a year to its first that is worth a note, K.
const NOTABLE_JUMP_K: f64 = 3.0;

/// Makes a raw year whole.
///
/// # Errors
/// When more than [`MAX_INTERPOLATED_H`] hours of dry bulb are missing on end.
pub fn fill(raw: RawYear) -> Result<WeatherYear, Problem> {
    let mut filled = Filled::default();
    let dry_bulb = fill_dry_bulb(&raw.rows, &mut filled)?;
    let dew_point = fill_dew_point(&raw.rows, &dry_bulb, &mut filled);
    let wind = fill_wind(&raw.rows, &mut filled);
    let sun = complete_sun(&raw, &dry_bulb, &mut filled);
    let cloud = fill_cloud(&raw.rows, &day_cloud_tenths(&sun), &mut filled);
    filled.infrared = raw.rows.iter().filter(|row| row.infrared_w_per_m2.is_none()).count();
    let air = dry_bulb.iter().zip(dew_point).zip(wind);
    let light = sun.parts.iter().zip(cloud);
    let records =
        raw.rows.iter().zip(air).zip(light).map(|((row, ((t, dew_point_c), wind_m_per_s)), (parts, cloud))| Record {
            year: row.year,
            month: row.month,
            day: row.day,
            hour: row.hour,
            dry_bulb_c: *t,
            dew_point_c,
            wind_m_per_s,
            global_w_per_m2: parts.global,
            direct_normal_w_per_m2: parts.direct_normal,
            diffuse_w_per_m2: parts.diffuse,
            infrared_w_per_m2: row.infrared_w_per_m2,
            cloud_tenths: cloud,
        });
    let records = records.collect();
    let mut notes = raw.notes;
    notes.extend(sun.notes);
    notes.extend(jump_note(&dry_bulb));
    Ok(WeatherYear {
        place: raw.place,
        credit: raw.credit,
        sun_offset_h: raw.sun_offset_h,
        typical: raw.typical,
        records,
        filled,
        notes,
    })
}

/// Runs of missing values: start and length.
pub(super) fn gaps<T>(values: &[Option<T>]) -> Vec<(usize, usize)> {
    let mut found: Vec<(usize, usize)> = Vec::new();
    for (k, _) in values.iter().enumerate().filter(|(_, v)| v.is_none()) {
        match found.last_mut() {
            Some((start, length)) if *start + *length == k => *length += 1,
            _ => found.push((k, 1)),
        }
    }
    found
}

/// Interpolates gaps of at most [`MAX_INTERPOLATED_H`]; at either end of the year the nearest value holds.
/// Gives back how many values it filled.
pub(super) fn interpolate_short(values: &mut [Option<f64>]) -> usize {
    let mut count = 0;
    for (start, length) in gaps(values).into_iter().filter(|(_, length)| *length <= MAX_INTERPOLATED_H) {
        let before = start.checked_sub(1).and_then(|k| values.get(k).copied().flatten());
        let after = values.get(start + length).copied().flatten();
        let (Some(from), Some(to)) = (before.or(after), after.or(before)) else { continue };
        for (step, value) in values.iter_mut().skip(start).take(length).enumerate() {
            *value = Some(from + (to - from) * (step + 1) as f64 / (length + 1) as f64);
        }
        count += length;
    }
    count
}

fn fill_dry_bulb(rows: &[RawRow], filled: &mut Filled) -> Result<Vec<f64>, Problem> {
    let mut values: Vec<Option<f64>> = rows.iter().map(|r| r.dry_bulb_c).collect();
    filled.dry_bulb = interpolate_short(&mut values);
    match gaps(&values).first() {
        Some(&(start, hours)) => {
            let row = rows.get(start).copied().unwrap_or_default();
            Err(Problem::LongGap { line: row.line, start: stamp(&row), hours })
        }
        None => Ok(values.into_iter().flatten().collect()),
    }
}

/// Long gaps take the lowest dry bulb of the day: air near saturation at dawn (common practice).
fn fill_dew_point(rows: &[RawRow], dry_bulb: &[f64], filled: &mut Filled) -> Vec<f64> {
    let mut values: Vec<Option<f64>> = rows.iter().map(|r| r.dew_point_c).collect();
    filled.dew_point = values.iter().filter(|v| v.is_none()).count();
    interpolate_short(&mut values);
    let mut whole = Vec::with_capacity(values.len());
    for (day, day_dry_bulb) in values.chunks(HOURS_PER_DAY).zip(dry_bulb.chunks(HOURS_PER_DAY)) {
        let minimum = lowest(day_dry_bulb);
        whole.extend(day.iter().map(|v| v.unwrap_or(minimum)));
    }
    whole
}

fn fill_wind(rows: &[RawRow], filled: &mut Filled) -> Vec<f64> {
    let mut values: Vec<Option<f64>> = rows.iter().map(|r| r.wind_m_per_s.map(|w| w.max(0.0))).collect();
    filled.wind = values.iter().filter(|v| v.is_none()).count();
    interpolate_short(&mut values);
    values.into_iter().map(|v| v.unwrap_or(WIND_IF_UNKNOWN_M_PER_S)).collect()
}

/// Opaque cover, else total, else what the day's estimated sun tells, else [`CLOUD_IF_UNKNOWN_TENTHS`].
/// A file whose total is missing throughout while opaque is 0 throughout holds a placeholder, not a clear year.
fn fill_cloud(rows: &[RawRow], from_sun: &[Option<f64>], filled: &mut Filled) -> Vec<f64> {
    let placeholder =
        rows.iter().all(|r| r.total_cloud_tenths.is_none() && r.opaque_cloud_tenths.is_none_or(|c| c <= 0.0));
    let seen = |row: &RawRow| {
        let opaque = if placeholder { None } else { row.opaque_cloud_tenths };
        opaque.or(row.total_cloud_tenths)
    };
    filled.cloud = rows.iter().filter(|row| seen(row).is_none()).count();
    rows.iter()
        .zip(from_sun)
        .map(|(row, estimate)| seen(row).or(*estimate).unwrap_or(CLOUD_IF_UNKNOWN_TENTHS).clamp(0.0, 10.0))
        .collect()
}

/// A season that runs over New Year meets the seam between the year's end and its start.
fn jump_note(dry_bulb: &[f64]) -> Option<Note> {
    let (first, last) = (dry_bulb.first()?, dry_bulb.last()?);
    let jump_k = first - last;
    (jump_k.abs() >= NOTABLE_JUMP_K).then(|| {
        let way = if jump_k > 0.0 { "up" } else { "down" };
        Note::from(format!("At New Year the record jumps {way} by "))
            .figure(jump_k.abs(), Quantity::TemperatureDifference, 1)
            .words(": its December and January do not meet.")
    })
}
