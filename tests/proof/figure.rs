//! One figure of the program beside the same figure from outside.

use std::path::Path;

use serde::Deserialize;
use serde::de::DeserializeOwned;

/// What the outside says.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum Expected {
    /// A value, and how far from it the program may be.
    Value(f64, f64),
    /// A published range, its ends included.
    Band(f64, f64),
}

/// A figure that someone outside the project has published, measured or computed, and the program's own.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// What is compared, in a grower's words.
    pub what: String,
    /// Author or body, title, table or page.
    pub source: String,
    /// Unit of all its numbers; empty for a bare number.
    pub unit: String,
    /// Decimals that are worth showing.
    pub decimals: usize,
    /// What the outside says.
    pub expected: Expected,
    /// Why the tolerance is what it is.
    pub tolerance_because: String,
    /// What the program computes.
    pub got: f64,
}

impl Figure {
    /// Whether the program agrees.
    pub fn holds(&self) -> bool {
        match self.expected {
            Expected::Value(value, tolerance) => (self.got - value).abs() <= tolerance,
            Expected::Band(low, high) => (low..=high).contains(&self.got),
        }
    }

    /// The expectation as text.
    pub fn expected_text(&self) -> String {
        let number = |x: f64| number(x, self.decimals);
        match self.expected {
            Expected::Value(value, _) => self.with_unit(&number(value)),
            Expected::Band(low, high) => self.with_unit(&format!("{} to {}", number(low), number(high))),
        }
    }

    /// The program's figure as text.
    pub fn got_text(&self) -> String {
        self.with_unit(&number(self.got, self.decimals))
    }

    /// How far the program is off: a difference to a value, or whether it lies in the range.
    pub fn difference_text(&self) -> String {
        match self.expected {
            Expected::Value(value, _) => {
                let difference = number(self.got - value, self.decimals);
                if difference.starts_with('−') || !difference.contains(|c: char| ('1'..='9').contains(&c)) {
                    difference
                } else {
                    format!("+{difference}")
                }
            }
            Expected::Band(..) => if self.holds() { "inside" } else { "outside" }.to_owned(),
        }
    }

    fn with_unit(&self, number: &str) -> String {
        if self.unit.is_empty() { number.to_owned() } else { format!("{number} {}", self.unit) }
    }
}

/// A number with these decimals and a true minus sign; never a negative zero.
fn number(x: f64, decimals: usize) -> String {
    let text = format!("{x:.decimals$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.contains(|c: char| ('1'..='9').contains(&c)) => format!("−{digits}"),
        Some(digits) => digits.to_owned(),
        None => text,
    }
}

/// Cases of a published source: the file of this name in `tests/data/published/`.
pub fn published<T: DeserializeOwned>(name: &str) -> T {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/published").join(name).with_extension("ron");
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{name}: {e}"));
    ron::from_str(&text).unwrap_or_else(|e| panic!("{name}: {e}"))
}

/// Fails with every figure that does not hold.
pub fn hold(figures: &[Figure]) {
    assert!(!figures.is_empty(), "nothing was compared");
    let failing: Vec<String> = figures
        .iter()
        .filter(|figure| !figure.holds())
        .map(|f| format!("{}: expected {} ({:?}), got {} ({})", f.what, f.expected_text(), f.expected, f.got, f.source))
        .collect();
    assert!(failing.is_empty(), "\n{}", failing.join("\n"));
}

#[test]
fn a_figure_that_is_off_does_not_hold() {
    let figure = |expected, got| Figure {
        what: "a wall".into(),
        source: "nowhere".into(),
        unit: "W".into(),
        decimals: 1,
        expected,
        tolerance_because: "half a unit of the last digit".into(),
        got,
    };
    assert!(figure(Expected::Value(2.0, 0.05), 2.04).holds() && !figure(Expected::Value(2.0, 0.05), 2.06).holds());
    assert!(figure(Expected::Band(1.0, 2.0), 2.0).holds() && !figure(Expected::Band(1.0, 2.0), 2.1).holds());
    assert!(!figure(Expected::Value(2.0, 0.05), f64::NAN).holds(), "no number is no agreement");
    assert_eq!(figure(Expected::Value(2.0, 0.5), 1.76).difference_text(), "−0.2");
    assert_eq!(figure(Expected::Value(2.0, 0.5), 1.99).difference_text(), "0.0");
    assert_eq!(figure(Expected::Value(2.0, 0.5), 2.26).difference_text(), "+0.3");
}
