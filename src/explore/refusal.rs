//! Why a variant of a scenario is left out.

use crate::model::Catalogue;
use crate::model::{Problem, Severity, Study, problems};
use crate::season::RunError;
use crate::units::{Quantity, UnitSystem};

/// What is wrong with one value or one combination; the others are not concerned.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// The study's own rules refuse it.
    Problem(Box<Problem>),
    /// A number of things that is not whole.
    NotWhole(f64),
    /// Outside the range of an input that is no field of the file.
    OutOfRange { label: String, value: f64, min: f64, max: f64, quantity: Quantity },
    /// The scenario has no such row, such as a second group of vessels.
    NoSuchRow { path: String },
    /// The first day of the season would lie behind its last one, or more than a year before it.
    SeasonTooMoved { days: f64 },
    /// A fuel without a price: what is to be ranked by cost has none.
    NoPrice,
    /// The run gives no result.
    Run(RunError),
}

impl Refusal {
    /// The first problem that keeps this scenario of the study from being computed.
    #[must_use]
    pub fn of(study: &Study, scenario: usize, catalogue: &Catalogue) -> Option<Self> {
        let concerns = |p: &Problem| p.scenario.is_none_or(|of| of == scenario) && p.severity() == Severity::Error;
        problems(study, catalogue).into_iter().find(concerns).map(|problem| Self::Problem(Box::new(problem)))
    }

    /// What is wrong and what to do, in a family of units.
    #[must_use]
    pub fn text(&self, system: UnitSystem) -> String {
        match self {
            Self::Problem(problem) => problem.text(system),
            Self::NotWhole(value) => format!("{value} is not a whole number; choose steps that are"),
            Self::OutOfRange { label, value, min, max, quantity } => {
                let shown = |value: f64| crate::format::quantity(value, *quantity, system, None);
                format!("{label}: {} is not allowed; choose from {} to {}", shown(*value), shown(*min), shown(*max))
            }
            Self::NoSuchRow { path } => format!("the scenario has no {path}; add the row, or leave the scenario out"),
            Self::SeasonTooMoved { days } => format!(
                "moved by {days} days, the season would begin after its last day or last more than a year; choose fewer"
            ),
            Self::NoPrice => {
                "a fuel that it burns has no price, so its cost is not known; add it to the prices".to_owned()
            }
            Self::Run(error) => error.to_string(),
        }
    }
}
