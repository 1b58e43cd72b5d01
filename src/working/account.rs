//! Sums as on paper: rows of numbers, how each was multiplied out, and a total under a line.

use crate::format;

/// A number as it is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Number {
    /// In the unit on screen, not rounded.
    pub shown: f64,
    /// Decimals on screen.
    pub decimals: usize,
    /// Unit behind it, or the currency of money; empty for bare numbers.
    pub unit: String,
    /// Whether it is money.
    pub money: bool,
    /// Whether it is exactly what is printed, such as a count.
    pub exact: bool,
}

impl Number {
    /// A number with a unit.
    #[must_use]
    pub fn new(shown: f64, decimals: usize, unit: impl Into<String>) -> Self {
        Self { shown, decimals, unit: unit.into(), money: false, exact: false }
    }

    /// A number that is exactly what is printed.
    #[must_use]
    pub fn exact(shown: f64, decimals: usize, unit: impl Into<String>) -> Self {
        Self { exact: true, ..Self::new(shown, decimals, unit) }
    }

    /// As a person reads it.
    #[must_use]
    pub fn text(&self) -> String {
        let digits = format::number(self.shown, self.decimals);
        match (self.money, self.unit.is_empty()) {
            (true, _) => format::with_currency(&digits, &self.unit),
            (false, true) => digits,
            (false, false) => format!("{digits} {}", self.unit),
        }
    }

    /// Everything that is rounded to what is shown, from least to most.
    #[must_use]
    pub fn span(&self) -> [f64; 2] {
        let unit = 10f64.powi(-i32::try_from(self.decimals).unwrap_or(0));
        let rounded = (self.shown / unit).round() * unit;
        let slack = if self.exact { 0.0 } else { unit / 2.0 };
        [rounded - slack, rounded + slack]
    }
}

/// Decimals that show about four digits of a number, as many as a pencil works with.
#[must_use]
pub fn decimals(value: f64) -> usize {
    match value.abs() {
        v if v >= 1000.0 => 0,
        v if v >= 100.0 => 1,
        v if v >= 10.0 => 2,
        v if v >= 1.0 => 3,
        v if v >= 0.1 => 4,
        _ => 5,
    }
}

/// Decimals that all numbers of a sum share, so that the largest has about four digits.
#[must_use]
pub fn shared_decimals(values: impl IntoIterator<Item = f64>) -> usize {
    let largest = values.into_iter().fold(0.0, |most: f64, v| most.max(v.abs()));
    decimals(largest).min(2)
}

/// What stands in a product.
#[derive(Debug, Clone, PartialEq)]
pub enum Factor {
    /// Multiplied by this.
    Times(Number),
    /// Divided by this.
    Over(Number),
    /// Multiplied by a difference.
    TimesDifference(Number, Number),
}

impl Factor {
    /// Everything that it may be within what is shown.
    #[must_use]
    pub fn span(&self) -> [f64; 2] {
        match self {
            Self::Times(number) => number.span(),
            Self::Over(number) => {
                let [least, most] = number.span();
                [1.0 / most, 1.0 / least]
            }
            Self::TimesDifference(from, less) => {
                let ([a, b], [c, d]) = (from.span(), less.span());
                [a - d, b - c]
            }
        }
    }
}

/// A row: what it is, how it was multiplied out, and the number.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// What it is.
    pub name: String,
    /// Whether the total takes it away.
    pub taken_away: bool,
    /// The product; empty for a number that is given.
    pub factors: Vec<Factor>,
    /// The number.
    pub number: Number,
}

impl Row {
    /// A number that is given.
    #[must_use]
    pub fn given(name: impl Into<String>, number: Number) -> Self {
        Self { name: name.into(), taken_away: false, factors: Vec::new(), number }
    }

    /// A product.
    #[must_use]
    pub fn product(name: impl Into<String>, factors: Vec<Factor>, number: Number) -> Self {
        Self { name: name.into(), taken_away: false, factors, number }
    }

    /// The same, taken away from the total.
    #[must_use]
    pub fn taken_away(self) -> Self {
        Self { taken_away: true, ..self }
    }

    /// The product in signs; empty for a number that is given.
    #[must_use]
    pub fn working(&self) -> String {
        let mut text = String::new();
        for factor in &self.factors {
            let (sign, words) = match factor {
                Factor::Times(number) => (" × ", number.text()),
                Factor::Over(number) => (" ÷ ", number.text()),
                Factor::TimesDifference(from, less) => (" × ", difference_text(from, less)),
            };
            if !text.is_empty() {
                text.push_str(sign);
            }
            text.push_str(&words);
        }
        text
    }

    /// The number with the sign that it has in the total.
    #[must_use]
    pub fn signed_text(&self) -> String {
        if self.taken_away {
            Number { shown: -self.number.shown, ..self.number.clone() }.text()
        } else {
            self.number.text()
        }
    }
}

fn difference_text(from: &Number, less: &Number) -> String {
    let digits = |number: &Number| format::number(number.shown, number.decimals);
    let less_digits = digits(less);
    let less_digits = if less_digits.starts_with('−') { format!("({less_digits})") } else { less_digits };
    format!("({} − {less_digits}) {}", digits(from), from.unit)
}

/// Rows with a heading, and perhaps what they add up to.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Account {
    /// What is worked out here.
    pub heading: String,
    /// The rows.
    pub rows: Vec<Row>,
    /// Name and value of the total.
    pub total: Option<(String, Number)>,
    /// What else is worth knowing; empty if nothing.
    pub note: String,
}

impl Account {
    /// Rows without a total.
    #[must_use]
    pub fn list(heading: impl Into<String>, rows: Vec<Row>) -> Self {
        Self { heading: heading.into(), rows, ..Self::default() }
    }

    /// Rows that add up.
    #[must_use]
    pub fn sum(heading: impl Into<String>, rows: Vec<Row>, name: impl Into<String>, total: Number) -> Self {
        Self { heading: heading.into(), rows, total: Some((name.into(), total)), ..Self::default() }
    }

    /// Whether there is nothing to show.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty() && self.total.is_none() && self.note.is_empty()
    }

    /// The same with a note below.
    #[must_use]
    pub fn noting(self, note: impl Into<String>) -> Self {
        Self { note: note.into(), ..self }
    }
}
