//! Single cells of a weather file: numbers with their missing codes and limits.

use super::error::{Problem, quoted};

/// Values at or below this are missing in TMY3 files and in files made from them.
const MISSING_BELOW: f64 = -9900.0;

/// A column that is read: its name for errors, its missing code and its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Column {
    /// Name for errors.
    pub name: &'static str,
    /// This value and all above are missing.
    pub missing_from: f64,
    /// Lowest value that can be right.
    pub low: f64,
    /// Highest value that can be right.
    pub high: f64,
}

impl Column {
    /// A column of the head: no missing code.
    pub(super) const fn head(name: &'static str, low: f64, high: f64) -> Self {
        Self { name, missing_from: f64::INFINITY, low, high }
    }

    /// Reads a cell; empty or missing gives `None`.
    pub(super) fn read(&self, cell: &str, line: usize) -> Result<Option<f64>, Problem> {
        let cell = cell.trim();
        if cell.is_empty() {
            return Ok(None);
        }
        let value = number(cell).ok_or_else(|| self.bad(cell, line))?;
        if value >= self.missing_from || value <= MISSING_BELOW {
            return Ok(None);
        }
        if value < self.low || value > self.high {
            return Err(Problem::OutOfRange { line, column: self.name, value, low: self.low, high: self.high });
        }
        Ok(Some(value))
    }

    /// Reads a cell that must be there.
    pub(super) fn need(&self, cell: &str, line: usize) -> Result<f64, Problem> {
        self.read(cell, line)?.ok_or_else(|| self.bad(cell, line))
    }

    /// Reads a whole number that must be there.
    pub(super) fn need_whole(&self, cell: &str, line: usize) -> Result<i32, Problem> {
        let value = self.need(cell, line)?;
        if value.fract() == 0.0 { Ok(value as i32) } else { Err(self.bad(cell, line)) }
    }

    fn bad(&self, cell: &str, line: usize) -> Problem {
        Problem::BadNumber { line, column: self.name, text: quoted(cell) }
    }
}

/// A finite number; −0 becomes 0.
pub(super) fn number(cell: &str) -> Option<f64> {
    cell.trim().parse::<f64>().ok().filter(|v| v.is_finite()).map(|v| v + 0.0)
}

/// The weather columns; limits of temperature and wind from the EPW data dictionary, the others from physics with room
/// to spare (‡): sensors read a little below zero at night, cloud edges lift an hour above the clear sky.
/// Missing codes are those of the EPW data dictionary; TMY3 values never come near them.
pub(super) const DRY_BULB: Column = Column { name: "dry bulb", missing_from: 99.9, low: -70.0, high: 70.0 };
pub(super) const DEW_POINT: Column = Column { name: "dew point", missing_from: 99.9, low: -70.0, high: 70.0 };
pub(super) const WIND: Column = Column { name: "wind speed", missing_from: 999.0, low: 0.0, high: 40.0 };
pub(super) const GLOBAL: Column = Column { name: "global sun", missing_from: 9999.0, low: -20.0, high: 1700.0 };
pub(super) const DIRECT: Column = Column { name: "direct normal sun", missing_from: 9999.0, low: -20.0, high: 1700.0 };
pub(super) const DIFFUSE: Column = Column { name: "diffuse sun", missing_from: 9999.0, low: -20.0, high: 1700.0 };
pub(super) const INFRARED: Column = Column { name: "infrared", missing_from: 9999.0, low: -100.0, high: 1000.0 };
pub(super) const TOTAL_CLOUD: Column = Column { name: "total cloud", missing_from: 99.0, low: 0.0, high: 10.0 };
pub(super) const OPAQUE_CLOUD: Column = Column { name: "opaque cloud", missing_from: 99.0, low: 0.0, high: 10.0 };

/// Year: the sun's series is good from 1800 to 2200 (Meeus).
pub(super) const YEAR: Column = Column::head("year", 1800.0, 2200.0);
pub(super) const MONTH: Column = Column::head("month", 1.0, 12.0);
pub(super) const DAY: Column = Column::head("day", 1.0, 31.0);
pub(super) const HOUR: Column = Column::head("hour", 1.0, 24.0);
pub(super) const LATITUDE: Column = Column::head("latitude", -90.0, 90.0);
pub(super) const LONGITUDE: Column = Column::head("longitude", -180.0, 180.0);
pub(super) const TIME_ZONE: Column = Column::head("time zone", -12.0, 14.0);
pub(super) const ELEVATION: Column = Column::head("elevation", -450.0, 9000.0);
pub(super) const TIME_OFFSET: Column = Column::head("irradiance time offset", -24.0, 24.0);
pub(super) const COUNT: Column = Column::head("count", 0.0, 1.0e6);

/// Fields of one comma-separated line, quotes undone and blanks cut.
pub(super) fn fields(line: &str) -> Vec<String> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(line.as_bytes());
    let first = reader.records().next().and_then(Result::ok).unwrap_or_default();
    first.iter().map(|field| field.trim().to_owned()).collect()
}

/// Name of a place from the parts that say something.
pub(super) fn place_name(parts: &[&str], latitude_deg: f64, longitude_deg: f64) -> String {
    let telling: Vec<&str> = parts
        .iter()
        .map(|p| p.trim())
        .filter(|p| !p.is_empty() && *p != "-" && !p.eq_ignore_ascii_case("unknown"))
        .collect();
    if telling.is_empty() {
        let (ns, ew) = (if latitude_deg < 0.0 { 'S' } else { 'N' }, if longitude_deg < 0.0 { 'W' } else { 'E' });
        return format!("{:.2}° {ns} {:.2}° {ew}", latitude_deg.abs(), longitude_deg.abs());
    }
    telling.join(", ")
}
