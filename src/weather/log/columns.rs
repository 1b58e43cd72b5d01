//! The cells of a log: what separates them, which column is which, and the numbers in them.

use crate::units::c_from_fahrenheit;
use crate::weather::cells::number;
use crate::weather::error::{Problem, quoted};

/// Temperatures that a thermometer outdoors can show, °C (limits of the EPW data dictionary).
const LOWEST_C: f64 = -70.0;
const HIGHEST_C: f64 = 70.0;
/// What stands for a reading that is missing.
const MISSING: [&str; 9] = ["", "na", "n/a", "nan", "null", "none", "-", "--", "m"];
/// Values at or below this are missing too.
const MISSING_BELOW: f64 = -900.0;

/// Unit of the temperatures of a log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TemperatureUnit {
    /// °F where a column's title says so, else °C.
    #[default]
    AsTitled,
    /// °C.
    Celsius,
    /// °F.
    Fahrenheit,
}

/// What a row says.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Said {
    /// Minimum and maximum of a day, °C.
    Day(Option<f64>, Option<f64>),
    /// One reading, °C.
    Reading(Option<f64>),
}

/// A row: its line, its date and time as written, and what it says.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub line: usize,
    pub date: String,
    pub time: String,
    pub said: Said,
}

/// The rows of a log.
pub(super) struct Sheet {
    pub rows: Vec<Row>,
}

/// Where the columns stand.
struct Layout {
    date: usize,
    time: Option<usize>,
    values: Values,
}

enum Values {
    Range { min: usize, max: usize },
    Reading(usize),
}

impl Sheet {
    pub(super) fn read(text: &str, unit: TemperatureUnit) -> Result<Self, Problem> {
        let mut lines = text.lines().enumerate().map(|(k, line)| (k + 1, line)).filter(|(_, line)| {
            let line = line.trim();
            !line.is_empty() && !line.starts_with('#')
        });
        let (first_line, first) = lines.clone().next().ok_or(Problem::Empty)?;
        let separator = separator_of(first);
        let titles = cells(first, separator);
        let titled = !titles.iter().any(|cell| starts_like_a_date(cell));
        let layout = if titled {
            lines.next();
            Layout::titled(&titles, first_line)?
        } else {
            Layout::untitled(&titles, first_line)?
        };
        let fahrenheit = match unit {
            TemperatureUnit::Celsius => false,
            TemperatureUnit::Fahrenheit => true,
            TemperatureUnit::AsTitled => titled && layout.value_columns().any(|k| names_fahrenheit(&titles[k])),
        };
        let rows = lines.map(|(line, text)| layout.row(&cells(text, separator), line, fahrenheit));
        Ok(Self { rows: rows.collect::<Result<_, _>>()? })
    }
}

/// Tab or semicolon if the line has one, else comma.
fn separator_of(line: &str) -> u8 {
    [b'\t', b';'].into_iter().find(|s| line.as_bytes().contains(s)).unwrap_or(b',')
}

/// Cells of a line, quotes undone and blanks cut.
fn cells(line: &str, separator: u8) -> Vec<String> {
    if !line.contains('"') {
        return line.split(char::from(separator)).map(|cell| cell.trim().to_owned()).collect();
    }
    let mut reader = csv::ReaderBuilder::new();
    let mut reader = reader.has_headers(false).flexible(true).delimiter(separator).from_reader(line.as_bytes());
    let first = reader.records().next().and_then(Result::ok).unwrap_or_default();
    first.iter().map(|cell| cell.trim().to_owned()).collect()
}

/// Whether a cell begins with digits and a mark between them, as dates do.
fn starts_like_a_date(cell: &str) -> bool {
    let digits = cell.chars().take_while(char::is_ascii_digit).count();
    let after = cell.chars().nth(digits);
    matches!((digits, after), (1..=4, Some('-' | '/' | '.')) | (8, None | Some(' ')))
        && cell.chars().filter(|c| matches!(c, '-' | '/' | '.')).count() != 1
}

fn names_fahrenheit(title: &str) -> bool {
    let title = title.to_lowercase();
    title.contains("fahrenheit")
        || title.contains("°f")
        || title.contains("(f)")
        || title.ends_with("_f")
        || title.ends_with(" f")
}

impl Layout {
    fn titled(titles: &[String], line: usize) -> Result<Self, Problem> {
        let lower: Vec<String> = titles.iter().map(|t| t.to_lowercase()).collect();
        let find = |words: &[&str], but: Option<usize>| {
            (0..lower.len()).find(|k| Some(*k) != but && words.iter().any(|word| lower[*k].contains(word)))
        };
        let missing = |what| Problem::LogColumn { line, what, found: quoted(&titles.join(", ")) };
        let date =
            find(&["date", "datum", "day"], None).or_else(|| find(&["time"], None)).ok_or_else(|| missing("date"))?;
        let time = find(&["time", "hour", "uhrzeit"], Some(date));
        let (min, max) = (find(&["min", "low"], None), find(&["max", "high"], None));
        let values = match (min, max) {
            (Some(min), Some(max)) => Values::Range { min, max },
            _ => Values::Reading(
                find(&["temp", "t_c", "t_f", "°c", "°f", "air"], Some(date)).ok_or_else(|| missing("temperature"))?,
            ),
        };
        Ok(Self { date, time, values })
    }

    fn untitled(first: &[String], line: usize) -> Result<Self, Problem> {
        let timed = first.get(1).is_some_and(|cell| cell.contains(':'));
        match (timed, first.len()) {
            (false, 2) => Ok(Self { date: 0, time: None, values: Values::Reading(1) }),
            (false, 3..) => Ok(Self { date: 0, time: None, values: Values::Range { min: 1, max: 2 } }),
            (true, 3..) => Ok(Self { date: 0, time: Some(1), values: Values::Reading(2) }),
            _ => Err(Problem::LogColumn { line, what: "temperature", found: quoted(&first.join(", ")) }),
        }
    }

    fn value_columns(&self) -> impl Iterator<Item = usize> {
        match self.values {
            Values::Range { min, max } => [min, max].into_iter(),
            Values::Reading(k) => [k, k].into_iter(),
        }
    }

    fn row(&self, cells: &[String], line: usize, fahrenheit: bool) -> Result<Row, Problem> {
        let cell = |k: usize| cells.get(k).map_or("", String::as_str);
        let read = |k: usize, column| temperature_c(cell(k), line, column, fahrenheit);
        let said = match self.values {
            Values::Range { min, max } => Said::Day(read(min, "minimum")?, read(max, "maximum")?),
            Values::Reading(k) => Said::Reading(read(k, "temperature")?),
        };
        let time = self.time.map_or("", cell).to_owned();
        Ok(Row { line, date: cell(self.date).to_owned(), time, said })
    }
}

/// A temperature with decimal point or comma, its unit behind it or not.
fn temperature_c(cell: &str, line: usize, column: &'static str, fahrenheit: bool) -> Result<Option<f64>, Problem> {
    if MISSING.contains(&cell.to_lowercase().as_str()) {
        return Ok(None);
    }
    let bare = cell.trim_end_matches(|c: char| c.is_alphabetic() || c == '°' || c.is_whitespace());
    let plain = bare.replace(',', ".").replace('\u{2212}', "-");
    let value = number(&plain).ok_or_else(|| Problem::BadNumber { line, column, text: quoted(cell) })?;
    if value <= MISSING_BELOW {
        return Ok(None);
    }
    let t_c = if fahrenheit { c_from_fahrenheit(value) } else { value };
    if (LOWEST_C..=HIGHEST_C).contains(&t_c) {
        return Ok(Some(t_c));
    }
    let shown = |t_c: f64| if fahrenheit { t_c * 1.8 + 32.0 } else { t_c };
    Err(Problem::OutOfRange { line, column, value, low: shown(LOWEST_C), high: shown(HIGHEST_C) })
}
