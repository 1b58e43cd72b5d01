//! TMY3 CSV files: a line on the station, a line of column names, then one row an hour.

use super::calendar::{ENOUGH_ROWS, check, is_typical};
use super::cells::{self, Column, fields, place_name};
use super::epw::{MID_HOUR_H, credit};
use super::error::{Problem, quoted};
use super::raw::{RawRow, RawYear, Setting};
use super::year::Place;

const DATE: &str = "Date (MM/DD/YYYY)";
const TIME: &str = "Time (HH:MM)";
const DRY_BULB: &str = "Dry-bulb (C)";
const STATION_FIELDS: usize = 7;

/// Whether the second line names the columns of a TMY3 file.
pub(super) fn is_tmy3(text: &str) -> bool {
    let mut lines = text.lines();
    let names = lines.nth(1).map(fields).unwrap_or_default();
    names.iter().any(|name| name.eq_ignore_ascii_case(DATE))
}

/// Reads a TMY3 file; `name` goes into the credit line.
pub(super) fn read(text: &str, name: &str) -> Result<RawYear, Problem> {
    let mut lines = text.lines();
    let place = station(lines.next().unwrap_or_default())?;
    let layout = Layout::read(lines.next().unwrap_or_default())?;
    let mut rows = Vec::new();
    for (k, line) in lines.enumerate().filter(|(_, line)| !line.trim().is_empty()) {
        rows.push(layout.row(line, k + 3)?);
        if rows.len() > ENOUGH_ROWS {
            break;
        }
    }
    check(&rows, text.lines().count())?;
    Ok(RawYear {
        credit: credit(name, "TMY3"),
        place,
        setting: Setting::Inland,
        sun_offset_h: MID_HOUR_H,
        typical: is_typical(&rows),
        rows,
        notes: Vec::new(),
    })
}

fn station(text: &str) -> Result<Place, Problem> {
    let line = 1;
    let fields = fields(text);
    let [_, name, state, time_zone, latitude, longitude, elevation, ..] = fields.as_slice() else {
        return Err(Problem::ShortHead { line, what: "the station", needed: STATION_FIELDS, found: fields.len() });
    };
    let latitude_deg = cells::LATITUDE.need(latitude, line)?;
    let longitude_deg = cells::LONGITUDE.need(longitude, line)?;
    Ok(Place {
        name: place_name(&[name, state], latitude_deg, longitude_deg),
        latitude_deg,
        longitude_deg,
        utc_offset_h: cells::TIME_ZONE.need(time_zone, line)?,
        elevation_m: cells::ELEVATION.need(elevation, line)?,
    })
}

/// Where each column stands; optional ones may be absent.
struct Layout {
    date: usize,
    time: usize,
    dry_bulb: usize,
    dew_point: Option<usize>,
    wind: Option<usize>,
    global: Option<usize>,
    direct: Option<usize>,
    diffuse: Option<usize>,
    total_cloud: Option<usize>,
    opaque_cloud: Option<usize>,
}

impl Layout {
    fn read(text: &str) -> Result<Self, Problem> {
        let names = fields(text);
        let find = |wanted: &str| names.iter().position(|name| name.eq_ignore_ascii_case(wanted));
        let need = |column: &'static str| find(column).ok_or(Problem::MissingColumn { line: 2, column });
        Ok(Self {
            date: need(DATE)?,
            time: need(TIME)?,
            dry_bulb: need(DRY_BULB)?,
            dew_point: find("Dew-point (C)"),
            wind: find("Wspd (m/s)"),
            global: find("GHI (W/m^2)"),
            direct: find("DNI (W/m^2)"),
            diffuse: find("DHI (W/m^2)"),
            total_cloud: find("TotCld (tenths)"),
            opaque_cloud: find("OpqCld (tenths)"),
        })
    }

    /// Fields up to the last one that is used.
    fn fields_needed(&self) -> usize {
        let optional =
            [self.dew_point, self.wind, self.global, self.direct, self.diffuse, self.total_cloud, self.opaque_cloud];
        let last = optional.into_iter().flatten().chain([self.date, self.time, self.dry_bulb]).max();
        last.map_or(0, |k| k + 1)
    }

    fn row(&self, text: &str, line: usize) -> Result<RawRow, Problem> {
        let cells: Vec<&str> = text.split(',').collect();
        let needed = self.fields_needed();
        if cells.len() < needed {
            return Err(Problem::ShortRow { line, found: cells.len(), needed });
        }
        let cell = |k: usize| cells.get(k).copied().unwrap_or_default();
        let value = |k: Option<usize>, column: Column| column.read(k.map(cell).unwrap_or_default(), line);
        let [month, day, year] = three_parts(cell(self.date), line)?;
        let (hour, _minute) = cell(self.time).split_once(':').ok_or_else(|| bad_date(cell(self.time), line))?;
        Ok(RawRow {
            line,
            year: cells::YEAR.need_whole(year, line)?,
            month: cells::MONTH.need_whole(month, line)?.unsigned_abs(),
            day: cells::DAY.need_whole(day, line)?.unsigned_abs(),
            hour: cells::HOUR.need_whole(hour, line)?.unsigned_abs(),
            dry_bulb_c: value(Some(self.dry_bulb), cells::DRY_BULB)?,
            dew_point_c: value(self.dew_point, cells::DEW_POINT)?,
            wind_m_per_s: value(self.wind, cells::WIND)?,
            global_w_per_m2: value(self.global, cells::GLOBAL)?,
            direct_normal_w_per_m2: value(self.direct, cells::DIRECT)?,
            diffuse_w_per_m2: value(self.diffuse, cells::DIFFUSE)?,
            infrared_w_per_m2: None,
            total_cloud_tenths: value(self.total_cloud, cells::TOTAL_CLOUD)?,
            opaque_cloud_tenths: value(self.opaque_cloud, cells::OPAQUE_CLOUD)?,
        })
    }
}

/// Month, day and year of a date; blanks inside are allowed.
fn three_parts(date: &str, line: usize) -> Result<[&str; 3], Problem> {
    let parts: Vec<&str> = date.split('/').map(str::trim).collect();
    <[&str; 3]>::try_from(parts).map_err(|_| bad_date(date, line))
}

fn bad_date(text: &str, line: usize) -> Problem {
    Problem::BadDate { line, text: quoted(text) }
}
