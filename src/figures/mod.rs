//! The figures behind plots and lists as plain tables, for a spreadsheet.
//!
//! Every column names its unit; numbers have a decimal point and no grouping.

mod air;
mod cut;
mod doubts;
mod lists;
mod plots;
mod winters;

pub use air::{air_days, air_months};
pub use cut::power_cut;
pub use doubts::doubts;
pub use lists::{calendar, steps};
pub use plots::{RunningSum, days, months, running, spell};
pub use winters::{winter_fans, winters};

use crate::season::{HourStamp, ScenarioRun};
use crate::weather::Climate;

/// A table of texts under one line of titles.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Figures {
    /// Titles of the columns, with their units.
    pub head: Vec<String>,
    /// Rows, each as long as the head.
    pub rows: Vec<Vec<String>>,
}

impl Figures {
    /// The table as comma-separated values with line ends as RFC 4180 wants them.
    ///
    /// # Errors
    /// What the CSV writer says: rows that are not as long as the head. Memory does not refuse.
    pub fn csv(&self) -> Result<String, csv::Error> {
        let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
        writer.write_record(&self.head)?;
        for row in &self.rows {
            writer.write_record(row)?;
        }
        let bytes = writer.into_inner().map_err(|error| error.into_error())?;
        Ok(String::from_utf8_lossy(&bytes).into_owned())
    }
}

/// A season under its scenario's name.
#[derive(Debug, Clone, Copy)]
pub struct Named<'a> {
    /// Name of the scenario.
    pub name: &'a str,
    /// Its season.
    pub run: &'a ScenarioRun,
    /// Its weather.
    pub climate: &'a Climate,
}

/// A number with fixed decimals, empty where it is none and without a sign on zero.
pub(crate) fn plain(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return String::new();
    }
    let text = format!("{value:.decimals$}");
    if text.chars().any(|c| ('1'..='9').contains(&c)) { text } else { text.trim_start_matches('-').to_owned() }
}

/// Titles of a column of dates by day, and by hour.
fn dated(by_hour: bool) -> Vec<String> {
    let titles = if by_hour { &["month", "day", "hour"][..] } else { &["month", "day"] };
    titles.iter().map(|title| (*title).to_owned()).collect()
}

fn date(at: HourStamp, by_hour: bool) -> Vec<String> {
    let mut cells = vec![at.month.to_string(), at.day.to_string()];
    if by_hour {
        cells.push(at.hour.to_string());
    }
    cells
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_with_commas_and_quotes_are_quoted_as_rfc_4180_says() {
        let row = vec!["a \"warm\" tent, 2 m".to_owned(), plain(-0.001, 2)];
        let figures = Figures { head: vec!["name".to_owned(), "kWh".to_owned()], rows: vec![row] };
        assert_eq!(figures.csv().unwrap_or_default(), "name,kWh\r\n\"a \"\"warm\"\" tent, 2 m\",0.00\r\n");
    }

    #[test]
    fn what_is_no_number_is_an_empty_cell() {
        assert_eq!([plain(f64::NAN, 1), plain(-2.25, 1), plain(1234.5, 0)], ["", "-2.2", "1234"]);
    }
}
