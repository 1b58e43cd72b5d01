//! Cases of published sources, each source under one reason for its tolerance.

use serde::Deserialize;
use serde::de::DeserializeOwned;

use super::figure::{Expected, Figure, published};

/// What sources say of the same quantity; `A` is what a case is told by.
#[derive(Deserialize)]
#[serde(transparent)]
pub struct Sheets<A>(Vec<Sheet<A>>);

#[derive(Deserialize)]
struct Sheet<A> {
    source: String,
    unit: String,
    decimals: usize,
    tolerance_because: String,
    cases: Vec<(A, Expected)>,
}

impl<A> Sheets<A> {
    /// The figures: `one` gives the words for a case and what the program computes.
    pub fn figures(&self, one: impl Fn(&A) -> (String, f64)) -> Vec<Figure> {
        self.0.iter().flat_map(|sheet| sheet.cases.iter().map(|case| sheet.figure(case, &one))).collect()
    }
}

impl<A> Sheet<A> {
    fn figure(&self, (case, expected): &(A, Expected), one: impl Fn(&A) -> (String, f64)) -> Figure {
        let (what, got) = one(case);
        Figure {
            // Numbers below zero in running text, as on screen.
            what: what.replace(" -", " −"),
            source: self.source.clone(),
            unit: self.unit.clone(),
            decimals: self.decimals,
            expected: *expected,
            tolerance_because: self.tolerance_because.clone(),
            got,
        }
    }
}

/// The figures of a file whose cases carry their own words beside their setting.
pub fn told_figures<S: DeserializeOwned>(file: &str, compute: impl Fn(&S) -> f64) -> Vec<Figure> {
    let sheets: Sheets<(String, S)> = published(file);
    sheets.figures(|(what, setting)| (what.clone(), compute(setting)))
}
