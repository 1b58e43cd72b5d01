//! A problem with its place.

use super::kind::ProblemKind;
use crate::units::UnitSystem;
use thiserror::Error;

/// How bad a problem is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Severity {
    /// The scenario can be computed, but something will be missing or surprising.
    Warning,
    /// The scenario cannot be computed.
    Error,
}

/// One thing that is wrong with a study.
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{path}: {}", self.text(UnitSystem::Metric))]
pub struct Problem {
    /// Which scenario; none for what belongs to the whole study.
    pub scenario: Option<usize>,
    /// Name of that scenario; empty for the whole study.
    pub scenario_name: String,
    /// Place in the file, such as `scenarios[1].tent.height_m`.
    pub path: String,
    /// Name of the input on screen.
    pub label: String,
    /// What is wrong.
    pub kind: ProblemKind,
}

impl Problem {
    /// How bad it is.
    #[must_use]
    pub fn severity(&self) -> Severity {
        self.kind.severity()
    }

    /// What is wrong and what to do, without the path, in a family of units.
    #[must_use]
    pub fn text(&self, system: UnitSystem) -> String {
        format!("{}: {}", self.label, self.kind.text(system))
    }
}
