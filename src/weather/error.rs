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

/// What is wrong with a weather file. Each text says where and ends with the remedy.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Problem {
    /// No bundled station has this key.
    #[error("there is no built-in station with this key; choose one of: {known}")]
    UnknownStation {
        /// The keys there are.
        known: String,
    },
    /// The file cannot be unpacked.
    #[error("the file is packed (gzip) but damaged: {reason}; copy or download it again")]
    BadGzip {
        /// What the unpacker says.
        reason: String,
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
    /// Too many hours of dry bulb on end are missing.
    #[error(
        "line {line} ({month}/{day}, hour {hour}): the dry bulb is missing for {hours} hours on end; up to 6 are filled, \
         longer gaps need another year or another station"
    )]
    LongGap {
        /// First line of the gap.
        line: usize,
        /// Month of its first hour.
        month: u32,
        /// Day of its first hour.
        day: u32,
        /// Its first hour.
        hour: u32,
        /// Length, hours.
        hours: usize,
    },
}

impl Problem {
    /// Names the file that has the problem.
    #[must_use]
    pub fn in_file(self, file: &str) -> WeatherError {
        WeatherError { file: file.to_owned(), problem: self }
    }
}
