//! What can be wrong with a weather file, where, and what to do about it.

/// A weather file that cannot be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{file}: {problem}")]
pub struct WeatherError {
    /// Name of the file or station.
    pub file: String,
    /// What is wrong.
    pub problem: Problem,
}

/// An hour of the calendar, as an error names it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    /// 1 to 12.
    pub month: u32,
    /// 1 to 31.
    pub day: u32,
    /// 1 to 24, hour ending.
    pub hour: u32,
}

impl std::fmt::Display for Stamp {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "month {} day {} hour {}", self.month, self.day, self.hour)
    }
}

/// What is wrong with a weather file. Each text says where and ends with the remedy.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Problem {
    /// No bundled station has this key.
    #[error("there is no built-in station with this key; choose one of: {known}")]
    UnknownStation {
        /// The keys there are.
        known: String,
    },
    /// Nothing in it.
    #[error("the file is empty; copy or download it again")]
    Empty,
    /// Larger than any year of hourly weather.
    #[error(
        "the file is larger than {limit_mb} MB, far more than a year of hourly weather; choose a single-year EPW or TMY3 file"
    )]
    TooLarge {
        /// The limit, MB.
        limit_mb: usize,
    },
    /// The file cannot be unpacked.
    #[error("the file is packed (gzip) but damaged: {reason}; copy or download it again")]
    BadGzip {
        /// What the unpacker says.
        reason: String,
    },
    /// A zip archive.
    #[error("the file is a zip archive; unpack it and choose the .epw or .csv file inside")]
    Zip,
    /// Not a text file.
    #[error("line {line}: the file is not plain text; choose an EPW or TMY3 file, saved as plain text")]
    NotText {
        /// Line of the first byte that is no text.
        line: usize,
    },
    /// Text, but no weather.
    #[error(
        "line 1 reads “{start}”: this is neither an EPW file (line 1 starts with LOCATION) nor a TMY3 file (line 2 names the \
         columns); choose an EPW or TMY3 file"
    )]
    NotWeather {
        /// How it starts.
        start: String,
    },
    /// A line of the head has too few fields.
    #[error("line {line}: {what} needs {needed} fields but has {found}; download the file again or complete the line")]
    ShortHead {
        /// Line, from 1.
        line: usize,
        /// Which line of the head.
        what: &'static str,
        /// Fields needed.
        needed: usize,
        /// Fields found.
        found: usize,
    },
    /// The head of an EPW file does not end.
    #[error(
        "line {line}: the head ends without a DATA PERIODS line; download the file again or put that line in before the data"
    )]
    NoDataPeriods {
        /// Line where the data, or the end, came instead.
        line: usize,
    },
    /// More than one data period.
    #[error(
        "line {line}: the file holds {periods} data periods; only files of one whole year can be read: choose one with a single period"
    )]
    SeveralPeriods {
        /// Line, from 1.
        line: usize,
        /// How many.
        periods: f64,
    },
    /// More than one record per hour.
    #[error(
        "line {line}: the file holds {per_hour} records an hour; average them to one an hour, or choose an hourly file"
    )]
    SubHourly {
        /// Line, from 1.
        line: usize,
        /// How many.
        per_hour: f64,
    },
    /// A needed column is not there.
    #[error("line {line}: there is no column “{column}”; choose a TMY3 file with its own column names")]
    MissingColumn {
        /// Line, from 1.
        line: usize,
        /// Name of the column.
        column: &'static str,
    },
    /// A data row is cut off.
    #[error("line {line}: the row has {found} fields but needs {needed}; it is cut off: download the file again")]
    ShortRow {
        /// Line, from 1.
        line: usize,
        /// Fields found.
        found: usize,
        /// Fields needed.
        needed: usize,
    },
    /// Something that should be a number is not.
    #[error("line {line}: the {column} should be a number but is “{text}”; correct it or leave it empty")]
    BadNumber {
        /// Line, from 1.
        line: usize,
        /// Name of the column.
        column: &'static str,
        /// What stands there.
        text: String,
    },
    /// A date that cannot be read.
    #[error("line {line}: the date should read MM/DD/YYYY and the time HH:MM, but they are “{text}”; correct the row")]
    BadDate {
        /// Line, from 1.
        line: usize,
        /// What stands there.
        text: String,
    },
    /// A number that cannot be right.
    #[error(
        "line {line}: the {column} is {value} but must lie between {low} and {high}; correct it or mark it as missing"
    )]
    OutOfRange {
        /// Line, from 1.
        line: usize,
        /// Name of the column.
        column: &'static str,
        /// What stands there.
        value: f64,
        /// Lowest that can be right.
        low: f64,
        /// Highest that can be right.
        high: f64,
    },
    /// A row out of its place.
    #[error(
        "line {line}: {expected} should come here but {found} does; rows must run hour by hour from 1 January to 31 December in \
         standard time, each once: sort or complete them"
    )]
    OutOfOrder {
        /// Line, from 1.
        line: usize,
        /// What should come.
        expected: Stamp,
        /// What comes.
        found: Stamp,
    },
    /// An hour that comes twice.
    #[error(
        "line {line}: {stamp} comes a second time; a file with several records an hour must be averaged to one an hour, and a clock \
         change taken out"
    )]
    RepeatedHour {
        /// Line, from 1.
        line: usize,
        /// The hour.
        stamp: Stamp,
    },
    /// No data rows at all.
    #[error("line {line}: the file ends after its head, without any data; download it again")]
    NoRows {
        /// Last line.
        line: usize,
    },
    /// The year is cut off.
    #[error(
        "line {line}: the file ends at {last} after {rows} hours; a year needs {needed}: download it again, or choose a whole year"
    )]
    Truncated {
        /// Last line.
        line: usize,
        /// Its hour.
        last: Stamp,
        /// Rows there are.
        rows: usize,
        /// Rows needed.
        needed: usize,
    },
    /// The file goes on after the year.
    #[error("line {line}: the file goes on after the {needed} hours of a year; cut it to one year")]
    TooLong {
        /// First line too many.
        line: usize,
        /// Rows needed.
        needed: usize,
    },
    /// Too many hours of dry bulb on end are missing.
    #[error(
        "line {line}, {start}: the dry bulb is missing for {hours} hours on end; up to 6 are filled, longer gaps need another year \
         or another station"
    )]
    LongGap {
        /// First line of the gap.
        line: usize,
        /// Its first hour.
        start: Stamp,
        /// Length, hours.
        hours: usize,
    },
    /// A log whose columns say too little.
    #[error(
        "line {line}: no column for the {what} was found in “{found}”; name the columns date, min and max, or date, time and temperature"
    )]
    LogColumn {
        /// Line, from 1.
        line: usize,
        /// What is not there.
        what: &'static str,
        /// What stands there.
        found: String,
    },
    /// A date or time of a log that cannot be read.
    #[error("line {line}: “{text}” is no date and time; write them like 2024-01-31 07:30, or correct the row")]
    LogDate {
        /// Line, from 1.
        line: usize,
        /// What stands there.
        text: String,
    },
    /// Dates that may be read two ways.
    #[error(
        "line {line}: in “{text}” day and month cannot be told apart; choose whether the day or the month comes first"
    )]
    DoubtfulDate {
        /// First such line.
        line: usize,
        /// What stands there.
        text: String,
    },
    /// A minimum that is above its maximum.
    #[error("line {line}: the minimum is above the maximum; correct the row")]
    MinAboveMax {
        /// Line, from 1.
        line: usize,
    },
    /// A day that comes twice.
    #[error("line {line}: this day stood in the log before; keep one of the two rows")]
    RepeatedDay {
        /// Line of the second.
        line: usize,
    },
    /// Too few days to tell a winter.
    #[error(
        "the log tells of {days} days of one winter but {needed} are needed; add days, or type monthly means instead"
    )]
    LogTooShort {
        /// Days there are.
        days: usize,
        /// Days needed.
        needed: usize,
    },
}

impl Problem {
    /// Names the file that has the problem.
    #[must_use]
    pub fn in_file(self, file: &str) -> WeatherError {
        WeatherError { file: file.to_owned(), problem: self }
    }
}

/// A piece of a file that is short and harmless enough to be quoted.
pub(super) fn quoted(text: &str) -> String {
    const LONGEST: usize = 40;
    let mut quote: String = text.chars().take(LONGEST).map(|c| if c.is_control() { '?' } else { c }).collect();
    if text.chars().nth(LONGEST).is_some() {
        quote.push('…');
    }
    quote
}
