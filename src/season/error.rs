//! Why a run gives no result.

use thiserror::Error;

/// A run that could not be made.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum RunError {
    /// A newer request took its place.
    #[error("the run was cancelled")]
    Cancelled,
    /// A sheet that neither the catalogue nor the study knows.
    #[error("there is no sheet \"{0}\"; choose one from the catalogue or type it into the study")]
    UnknownSheet(String),
    /// A night screen that neither the catalogue nor the study knows.
    #[error("there is no night screen \"{0}\"; choose one from the catalogue or type it into the study")]
    UnknownScreen(String),
    /// A fuel that neither the catalogue nor the study knows.
    #[error("there is no fuel \"{0}\"; choose one from the catalogue or type it into the study")]
    UnknownFuel(String),
    /// A skin or tent without any sheet.
    #[error("the {0} has no sheet; add at least one")]
    NoSheet(&'static str),
    /// An immersion heater where no water stands.
    #[error("the heater warms water, but there are no vessels in its zone; add vessels or heat the air")]
    NoWater,
    /// The season names no hour of the weather year.
    #[error("the season has no hours in this weather; choose first and last day anew")]
    EmptySeason,
}
