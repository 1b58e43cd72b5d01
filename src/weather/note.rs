//! A sentence on how a year came about; its figures are written in the unit of who reads it.

use crate::units::{Quantity, UnitSystem};
use std::fmt;

/// A sentence with figures in it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Note(Vec<Part>);

#[derive(Debug, Clone, PartialEq)]
enum Part {
    Words(String),
    /// Value in the internal unit of its quantity, and decimals.
    Figure(f64, Quantity, usize),
}

impl Note {
    /// Goes on with words.
    #[must_use]
    pub fn words(mut self, words: impl Into<String>) -> Self {
        self.0.push(Part::Words(words.into()));
        self
    }

    /// Goes on with a value in the internal unit of its quantity.
    #[must_use]
    pub fn figure(mut self, value: f64, quantity: Quantity, decimals: usize) -> Self {
        self.0.push(Part::Figure(value, quantity, decimals));
        self
    }

    /// The sentence in a system of units.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        let part = |part: &Part| match part {
            Part::Words(words) => words.clone(),
            Part::Figure(value, quantity, decimals) => {
                let unit = quantity.unit(units);
                format!("{:.decimals$} {}", unit.shown(*value), unit.symbol).replace('-', "−")
            }
        };
        self.0.iter().map(part).collect()
    }
}

impl From<String> for Note {
    fn from(words: String) -> Self {
        Self::default().words(words)
    }
}

impl From<&str> for Note {
    fn from(words: &str) -> Self {
        Self::default().words(words)
    }
}

/// In metric units.
impl fmt::Display for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text(UnitSystem::Metric))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_in_the_readers_unit() {
        let note = Note::from("Mean ").figure(-5.0, Quantity::Temperature, 1).words(", swing ");
        let note = note.figure(10.0, Quantity::TemperatureDifference, 0).words(".");
        assert_eq!(note.to_string(), "Mean −5.0 °C, swing 10 K.");
        assert_eq!(note.text(UnitSystem::Imperial), "Mean 23.0 °F, swing 18 °F.");
    }
}
