//! The table as CSV: one line per row, a value and its difference from the reference per scenario.

use super::{Cell, Comparison, Row};
use crate::units::{Quantity, UnitSystem};

impl Comparison {
    /// The table as CSV with a header line: plain numbers with a decimal point, in the units asked for.
    ///
    /// # Errors
    /// What the CSV writer says; memory does not refuse.
    pub fn csv(&self, units: UnitSystem, currency: &str) -> Result<String, csv::Error> {
        let mut writer = csv::Writer::from_writer(Vec::new());
        let mut head = vec!["part".to_owned(), "row".to_owned(), "unit".to_owned()];
        head.extend(self.columns.iter().cloned());
        let against = self.columns.get(self.reference).map_or("", String::as_str);
        let others = || self.columns.iter().enumerate().filter(|(column, _)| *column != self.reference);
        head.extend(others().map(|(_, name)| format!("{name} against {against}")));
        writer.write_record(head)?;
        for row in &self.rows {
            let mut line = vec![row.group.name().to_owned(), row.label.clone(), row.unit(units, currency)];
            line.extend(row.cells.iter().map(|cell| row.plain(cell, units)));
            line.extend(others().map(|(column, _)| {
                row.difference(column, self.reference).map_or(String::new(), |(d, _)| row.plain_difference(d, units))
            }));
            writer.write_record(line)?;
        }
        let bytes = writer.into_inner().map_err(|error| error.into_error())?;
        Ok(String::from_utf8_lossy(&bytes).into_owned())
    }
}

impl Row {
    /// Symbol of the row's unit; the currency for money.
    #[must_use]
    pub fn unit(&self, units: UnitSystem, currency: &str) -> String {
        match self.quantity {
            Quantity::Money => currency.to_owned(),
            quantity => quantity.unit(units).symbol.to_owned(),
        }
    }

    fn plain(&self, cell: &Cell, units: UnitSystem) -> String {
        match cell {
            Cell::Number(n) => format!("{:.*}", self.decimals, self.quantity.unit(units).shown(*n)),
            Cell::Over(n) => format!("> {:.0}", self.quantity.unit(units).shown(*n)),
            Cell::Text(text) => text.clone(),
            Cell::Empty(_) => String::new(),
        }
    }

    fn plain_difference(&self, difference: f64, units: UnitSystem) -> String {
        format!("{:.*}", self.decimals, self.shown_difference(difference, units))
    }

    /// A difference in the units asked for: one of temperatures has no zero point.
    #[must_use]
    pub fn shown_difference(&self, difference: f64, units: UnitSystem) -> f64 {
        let quantity = match self.quantity {
            Quantity::Temperature => Quantity::TemperatureDifference,
            quantity => quantity,
        };
        quantity.unit(units).shown(difference)
    }
}
