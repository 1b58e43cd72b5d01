//! Twelve rows of a climate table as they are copied from a web page or a spreadsheet.

use super::climate_table::{MONTHS, MonthRow};
use crate::units::{Quantity, UnitSystem};
use thiserror::Error;

/// Why pasted text is no climate table. Each text ends with the remedy.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum PasteError {
    /// Neither twelve rows of months nor rows of twelve months.
    #[error("{rows} rows with numbers were found; paste twelve rows, January to December, with minimum and maximum")]
    NotTwelve {
        /// Rows with numbers.
        rows: usize,
    },
    /// A row that has not as many numbers as it needs.
    #[error(
        "line {line} has {found} numbers; each row needs minimum and maximum, then sunshine hours and wind if known"
    )]
    Short {
        /// Line, from 1.
        line: usize,
        /// Numbers found.
        found: usize,
    },
}

/// Reads a climate table: twelve rows of minimum and maximum, then hours of sunshine and wind if they are there; or rows
/// of twelve months each, as web pages print them, a thirteenth number being the year's. Cells are parted by tabs,
/// semicolons, commas or blanks; names of months and units are passed over. Where every first number is above the second,
/// the maximum came first. Temperatures and wind are in the units of `system`.
///
/// # Errors
/// When the numbers do not make twelve months.
pub fn pasted(text: &str, system: UnitSystem) -> Result<Vec<MonthRow>, PasteError> {
    let rows: Vec<(usize, Vec<f64>)> =
        (1..).zip(text.lines()).map(|(line, text)| (line, numbers(text))).filter(|(_, n)| !n.is_empty()).collect();
    let across = (2..=4).contains(&rows.len()) && rows.iter().all(|(_, n)| (MONTHS..=MONTHS + 1).contains(&n.len()));
    let months: Vec<(usize, Vec<f64>)> = if across {
        (0..MONTHS).map(|m| (1, rows.iter().filter_map(|(_, n)| n.get(m).copied()).collect())).collect()
    } else {
        rows
    };
    if months.len() != MONTHS {
        return Err(PasteError::NotTwelve { rows: months.len() });
    }
    if let Some((line, n)) = months.iter().find(|(_, n)| n.len() < 2) {
        return Err(PasteError::Short { line: *line, found: n.len() });
    }
    let maximum_first = months.iter().all(|(_, n)| n[0] > n[1]);
    let (temperature, speed) = (Quantity::Temperature.unit(system), Quantity::Speed.unit(system));
    let row = |(_, n): &(usize, Vec<f64>)| {
        let (min, max) = if maximum_first { (n[1], n[0]) } else { (n[0], n[1]) };
        MonthRow {
            min_c: temperature.value(min),
            max_c: temperature.value(max),
            sunshine_h: n.get(2).copied(),
            wind_m_per_s: n.get(3).map(|w| speed.value(*w)),
            cloud_share: None,
        }
    };
    Ok(months.iter().map(row).collect())
}

/// The numbers of a line. A comma parts cells unless tabs, semicolons or blanks do: then it is a decimal comma.
fn numbers(line: &str) -> Vec<f64> {
    let line = line.replace('\u{2212}', "-");
    let comma_parts = !line.trim().contains(['\t', ';', ' ']) || line.contains(", ");
    let parts = line.split(|c: char| c == '\t' || c == ';' || c.is_whitespace() || (c == ',' && comma_parts));
    let number = |cell: &str| {
        let cell = cell.trim_end_matches(|c: char| c.is_alphabetic() || matches!(c, '°' | '%'));
        cell.replace(',', ".").parse::<f64>().ok().filter(|v| v.is_finite())
    };
    parts.filter_map(number).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Twelve months of 1 to 12 °C, 10 K apart, written by `row`.
    fn table(row: impl Fn(i32) -> String) -> String {
        (1..=12).map(|m| row(m) + "\n").collect()
    }

    fn assert_read(text: &str, system: UnitSystem) {
        let rows = pasted(text, system).unwrap_or_else(|e| panic!("{e}: {text}"));
        for (m, row) in (1..).zip(rows) {
            let (min_c, max_c) = (f64::from(m) - 6.5, f64::from(m) + 3.5);
            assert!((row.min_c - min_c).abs() < 1e-9 && (row.max_c - max_c).abs() < 1e-9, "{text}: {row:?}");
        }
    }

    fn range(m: i32) -> (f64, f64) {
        (f64::from(m) - 6.5, f64::from(m) + 3.5)
    }

    #[test]
    fn rows_of_pages_and_spreadsheets() {
        assert_read(&table(|m| format!("{}\t{}", range(m).0, range(m).1)), UnitSystem::Metric);
        assert_read(&table(|m| format!("{},{}", range(m).0, range(m).1)), UnitSystem::Metric);
        assert_read(&table(|m| format!("Jan {} °C  {} °C", range(m).1, range(m).0)), UnitSystem::Metric);
        assert_read(
            &("Month\tMin\tMax\n".to_owned() + &table(|m| format!("{}; {}", range(m).0, range(m).1).replace('.', ","))),
            UnitSystem::Metric,
        );
        assert_read(
            &table(|m| format!("{} {}", range(m).0 * 1.8 + 32.0, range(m).1 * 1.8 + 32.0)),
            UnitSystem::Imperial,
        );
        assert_read(&table(|m| format!("{} {}", range(m).0, range(m).1).replace('-', "\u{2212}")), UnitSystem::Metric);
    }

    #[test]
    fn months_across_with_the_year_behind() {
        let line =
            |take: fn((f64, f64)) -> f64| (1..=12).map(|m| take(range(m)).to_string()).collect::<Vec<_>>().join("\t");
        let text = format!("Mean max °C\t{}\t10\nMean min °C\t{}\t0\n", line(|r| r.1), line(|r| r.0));
        assert_read(&text, UnitSystem::Metric);
    }

    #[test]
    fn what_is_no_table_is_told_so() {
        assert_eq!(pasted("1 2\n3 4\n", UnitSystem::Metric), Err(PasteError::NotTwelve { rows: 2 }));
        let text = table(|m| if m == 5 { "7".to_owned() } else { "1 9".to_owned() });
        assert_eq!(pasted(&text, UnitSystem::Metric), Err(PasteError::Short { line: 5, found: 1 }));
    }
}
