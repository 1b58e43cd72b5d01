//! EPW files: a head that ends with DATA PERIODS, then one row an hour with 35 fields.

use super::calendar::{ENOUGH_ROWS, check, is_typical, on_leap_day};
use super::cells::{self, fields, place_name};
use super::closure::best_offset_h;
use super::error::Problem;
use super::raw::{RawRow, RawYear, Setting};
use super::year::Place;

/// Fields up to opaque cloud, the last one that is used.
const FIELDS_NEEDED: usize = 24;
const LOCATION_FIELDS: usize = 10;
/// What stands before the offset in the comment of files with instantaneous irradiance.
const OFFSET_LABEL: &str = "irradiance time offset (h):";
/// Hourly means: the middle of the hour that ends at the stamp.
pub(super) const MID_HOUR_H: f64 = -0.5;

/// Whether the text starts like an EPW file.
pub(super) fn is_epw(text: &str) -> bool {
    keyword(text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default()) == "LOCATION"
}

/// Reads an EPW file; `name` goes into the credit line.
pub(super) fn read(text: &str, name: &str) -> Result<RawYear, Problem> {
    let head = Head::read(text)?;
    let mut rows = Vec::new();
    for (k, line) in text.lines().enumerate().skip(head.lines).filter(|(_, line)| !line.trim().is_empty()) {
        rows.push(row(line, k + 1)?);
        if rows.len() > ENOUGH_ROWS {
            break;
        }
    }
    let mut notes = Vec::new();
    if head.leap_day_denied && rows.iter().any(on_leap_day) {
        rows.retain(|row| !on_leap_day(row));
        notes.push("29 February is left out, as the head of the file says that no leap year is observed.".into());
    }
    check(&rows, text.lines().count())?;
    let sun_offset_h = sun_offset_h(&head, &rows);
    Ok(RawYear {
        credit: credit(name, &head.source),
        place: head.place,
        setting: Setting::Inland,
        sun_offset_h,
        typical: is_typical(&rows),
        rows,
        notes,
    })
}

/// First word of a line of the head, in capitals.
fn keyword(line: &str) -> String {
    line.split([',', ' ']).next().unwrap_or_default().trim().to_ascii_uppercase()
}

pub(super) fn credit(name: &str, source: &str) -> String {
    if source.is_empty() { format!("File {name}") } else { format!("File {name}, source “{source}”") }
}

/// The instant of the irradiance. The comment counts from the stamp in universal time of some files, from the start of
/// the hour in others; the sun itself tells which.
fn sun_offset_h(head: &Head, rows: &[RawRow]) -> f64 {
    let Some(comment) = head.time_offset_h else { return MID_HOUR_H };
    let candidates = [comment + 1.0, comment + head.place.utc_offset_h, comment];
    best_offset_h(&head.place, rows, &candidates).unwrap_or(MID_HOUR_H)
}

/// What the head says.
struct Head {
    place: Place,
    source: String,
    /// "No" stands for the leap year.
    leap_day_denied: bool,
    time_offset_h: Option<f64>,
    /// Number of its lines.
    lines: usize,
}

impl Head {
    fn read(text: &str) -> Result<Self, Problem> {
        let (mut place, mut leap_day_denied, mut time_offset_h) = (None, false, None);
        let mut last = 0;
        for (k, text) in text.lines().enumerate() {
            let line = k + 1;
            match keyword(text).as_str() {
                "LOCATION" => place = Some(location(text, line)?),
                word if word.starts_with("HOLIDAYS") => {
                    leap_day_denied = fields(text).get(1).is_some_and(|f| f.eq_ignore_ascii_case("no"))
                }
                "COMMENTS" => time_offset_h = offset_in_comment(text, line)?.or(time_offset_h),
                "DATA" => {
                    data_periods(text, line)?;
                    let (place, source) = place.ok_or(Problem::NoDataPeriods { line })?;
                    return Ok(Self { place, source, leap_day_denied, time_offset_h, lines: line });
                }
                word if word.starts_with(|c: char| c.is_ascii_digit()) => return Err(Problem::NoDataPeriods { line }),
                _ => {}
            }
            last = line;
        }
        Err(Problem::NoDataPeriods { line: last })
    }
}

fn location(text: &str, line: usize) -> Result<(Place, String), Problem> {
    let fields = fields(text);
    let [_, city, region, country, source, _, latitude, longitude, time_zone, elevation, ..] = fields.as_slice() else {
        return Err(Problem::ShortHead { line, what: "LOCATION", needed: LOCATION_FIELDS, found: fields.len() });
    };
    let latitude_deg = cells::LATITUDE.need(latitude, line)?;
    let longitude_deg = cells::LONGITUDE.need(longitude, line)?;
    let place = Place {
        name: place_name(&[city, region, country], latitude_deg, longitude_deg),
        latitude_deg,
        longitude_deg,
        utc_offset_h: cells::TIME_ZONE.need(time_zone, line)?,
        elevation_m: cells::ELEVATION.need(elevation, line)?,
    };
    Ok((place, source.clone()))
}

fn offset_in_comment(text: &str, line: usize) -> Result<Option<f64>, Problem> {
    let lower = text.to_ascii_lowercase();
    let Some((_, after)) = lower.split_once(OFFSET_LABEL) else { return Ok(None) };
    let cell = after.split([',', ';', '"']).next().unwrap_or_default();
    cells::TIME_OFFSET.need(cell, line).map(Some)
}

fn data_periods(text: &str, line: usize) -> Result<(), Problem> {
    let fields = fields(text);
    let [_, periods, per_hour, ..] = fields.as_slice() else {
        return Err(Problem::ShortHead { line, what: "DATA PERIODS", needed: 3, found: fields.len() });
    };
    let periods = cells::COUNT.need(periods, line)?;
    if periods != 1.0 {
        return Err(Problem::SeveralPeriods { line, periods });
    }
    let per_hour = cells::COUNT.need(per_hour, line)?;
    if per_hour != 1.0 {
        return Err(Problem::SubHourly { line, per_hour });
    }
    Ok(())
}

fn row(text: &str, line: usize) -> Result<RawRow, Problem> {
    let cells: Vec<&str> = text.split(',').collect();
    let Some(cells) = cells.first_chunk::<FIELDS_NEEDED>() else {
        return Err(Problem::ShortRow { line, found: cells.len(), needed: FIELDS_NEEDED });
    };
    let [year, month, day, hour, _minute, _flags, dry_bulb, dew_point, _humidity, _pressure, ..] = cells;
    let [.., infrared, global, direct, diffuse, _, _, _, _, _wind_from, wind, total_cloud, opaque_cloud] = cells;
    Ok(RawRow {
        line,
        year: cells::YEAR.need_whole(year, line)?,
        month: cells::MONTH.need_whole(month, line)?.unsigned_abs(),
        day: cells::DAY.need_whole(day, line)?.unsigned_abs(),
        hour: cells::HOUR.need_whole(hour, line)?.unsigned_abs(),
        dry_bulb_c: cells::DRY_BULB.read(dry_bulb, line)?,
        dew_point_c: cells::DEW_POINT.read(dew_point, line)?,
        wind_m_per_s: cells::WIND.read(wind, line)?,
        global_w_per_m2: cells::GLOBAL.read(global, line)?,
        direct_normal_w_per_m2: cells::DIRECT.read(direct, line)?,
        diffuse_w_per_m2: cells::DIFFUSE.read(diffuse, line)?,
        infrared_w_per_m2: cells::INFRARED.read(infrared, line)?.filter(|v| *v > 0.0),
        total_cloud_tenths: cells::TOTAL_CLOUD.read(total_cloud, line)?,
        opaque_cloud_tenths: cells::OPAQUE_CLOUD.read(opaque_cloud, line)?,
    })
}
