//! Scenarios side by side: the inputs in which they differ, what they need, what they cost, and how surely they hold.
//!
//! The table is plain data: the view, the report, the CSV file and the clipboard all write it out.

mod csv;
mod inputs;
mod results;
pub mod words;

use crate::format;
use crate::model::{Catalogue, Study};
use crate::season::ScenarioRun;
use crate::units::{Quantity, UnitSystem};
use std::borrow::Cow;

/// The table: a column per scenario, in the study's order.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// Names of the scenarios.
    pub columns: Vec<String>,
    /// Column that the others are compared with.
    pub reference: usize,
    /// Rows from top to bottom.
    pub rows: Vec<Row>,
}

/// Which part of the table a row belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Money.
    Money,
    /// Whether it holds.
    Safety,
    /// Heat and fuel.
    Energy,
    /// What was put in.
    Inputs,
}

impl Group {
    /// Heading.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Inputs => "What differs",
            Self::Energy => "Heat and fuel",
            Self::Money => "Money",
            Self::Safety => "Does it hold?",
        }
    }
}

/// Which value of a row is the best one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Best {
    /// The smallest.
    Lowest,
    /// The largest.
    Highest,
    /// Values are not ranked.
    None,
}

/// Where a label names a temperature.
pub const LIMIT: &str = "{limit}";

/// One line of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Stable name, by which a hidden row is remembered.
    pub key: Cow<'static, str>,
    /// Label; [`LIMIT`] stands for a temperature in the reader's units.
    pub label: String,
    /// The temperature that the label names, °C.
    pub limit_c: Option<f64>,
    /// Where it stands.
    pub group: Group,
    /// What its numbers mean.
    pub quantity: Quantity,
    /// Decimals of its numbers.
    pub decimals: usize,
    /// Which value is the best.
    pub best: Best,
    /// One cell per column.
    pub cells: Vec<Cell>,
}

/// One value.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// A number in the row's quantity, SI as in the model.
    Number(f64),
    /// More than this number, which is as far as was looked.
    Over(f64),
    /// Words.
    Text(String),
    /// There is nothing to say, and why.
    Empty(&'static str),
}

impl Cell {
    /// The number, if it is one.
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Number(n) | Self::Over(n) => Some(*n),
            _ => None,
        }
    }

    /// A number, or the reason why there is none.
    #[must_use]
    pub fn or(number: Option<f64>, reason: &'static str) -> Self {
        number.filter(|n| n.is_finite()).map_or(Self::Empty(reason), Self::Number)
    }
}

impl Row {
    /// The label in the units of a reader.
    #[must_use]
    pub fn title(&self, units: UnitSystem) -> String {
        match self.limit_c {
            Some(limit_c) => {
                let limit = format::quantity(limit_c, Quantity::Temperature, units, Some(0));
                self.label.replace(LIMIT, &limit)
            }
            None => self.label.clone(),
        }
    }

    /// Columns with the best value; none where all are alike or fewer than two are known.
    #[must_use]
    pub fn best_columns(&self) -> Vec<usize> {
        let numbers: Vec<(usize, f64)> =
            self.cells.iter().enumerate().filter_map(|(i, cell)| Some((i, cell.number()?))).collect();
        let values = numbers.iter().map(|(_, n)| *n);
        let Some((low, high)) = values.clone().reduce(f64::min).zip(values.reduce(f64::max)) else { return Vec::new() };
        let best = match self.best {
            Best::Lowest => low,
            Best::Highest => high,
            Best::None => return Vec::new(),
        };
        let seen = 0.5 * 10_f64.powi(-i32::try_from(self.decimals).unwrap_or(0));
        if numbers.len() < 2 || high - low < seen {
            return Vec::new();
        }
        numbers.iter().filter(|(_, n)| (n - best).abs() < seen).map(|(i, _)| *i).collect()
    }

    /// Difference of a column from the reference, and that as a share of the reference where it means something.
    #[must_use]
    pub fn difference(&self, column: usize, reference: usize) -> Option<(f64, Option<f64>)> {
        if column == reference {
            return None;
        }
        let (own, other) = (self.cells.get(column)?.number()?, self.cells.get(reference)?.number()?);
        let scale_has_a_zero = !matches!(self.quantity, Quantity::Temperature);
        let share = (scale_has_a_zero && other.abs() > 1e-9).then(|| own / other - 1.0);
        Some((own - other, share))
    }
}

impl Comparison {
    /// The table of a study. `runs` has one entry per scenario; none where it could not be run.
    #[must_use]
    pub fn of(study: &Study, catalogue: &Catalogue, runs: &[Option<&ScenarioRun>]) -> Self {
        let mut rows = results::rows(study, runs);
        rows.extend(inputs::differing(study, catalogue));
        Self { columns: study.scenarios.iter().map(|s| s.name.clone()).collect(), reference: study.reference, rows }
    }
}
