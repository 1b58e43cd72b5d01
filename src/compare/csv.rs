//! The table as CSV: one line per row, a value and its difference from the reference per scenario.

use super::{Cell, Comparison, Row};
use crate::figures::{Figures, plain};
use crate::units::{Quantity, UnitSystem};

impl Comparison {
    /// The table as plain texts in the units asked for: values, then their differences from the reference.
    #[must_use]
    pub fn figures(&self, units: UnitSystem, currency: &str) -> Figures {
        let mut head = vec!["part".to_owned(), "row".to_owned(), "unit".to_owned()];
        head.extend(self.columns.iter().cloned());
        let against = self.columns.get(self.reference).map_or("", String::as_str);
        let others = || self.columns.iter().enumerate().filter(|(column, _)| *column != self.reference);
        head.extend(others().map(|(_, name)| format!("{name} against {against}")));
        let line = |row: &Row| {
            let mut line = vec![row.group.name().to_owned(), row.title(units), row.unit(units, currency)];
            line.extend(row.cells.iter().map(|cell| row.plain(cell, units)));
            line.extend(others().map(|(column, _)| {
                row.difference(column, self.reference).map_or(String::new(), |(d, _)| row.plain_difference(d, units))
            }));
            line
        };
        Figures { head, rows: self.rows.iter().map(line).collect() }
    }
}

impl Row {
    /// Symbol of the row's unit; the currency for money.
    #[must_use]
    pub fn unit(&self, units: UnitSystem, currency: &str) -> String {
        match self.quantity {
            Quantity::Money => currency.to_owned(),
            Quantity::MoneyPerArea => format!("{currency} {}", self.quantity.unit(units).symbol),
            quantity => quantity.unit(units).symbol.to_owned(),
        }
    }

    fn plain(&self, cell: &Cell, units: UnitSystem) -> String {
        match cell {
            Cell::Number(n) => plain(self.quantity.unit(units).shown(*n), self.decimals),
            Cell::Over(n) => format!("> {:.0}", self.quantity.unit(units).shown(*n)),
            Cell::Text(text) => text.clone(),
            Cell::Empty(_) => String::new(),
        }
    }

    fn plain_difference(&self, difference: f64, units: UnitSystem) -> String {
        plain(self.shown_difference(difference, units), self.decimals)
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
