//! What the catalogues lack and the user typed: kept in the study, with a note on where the numbers come from.

use super::catalogue::{Fuel, Screen, Sheet};
use serde::{Deserialize, Serialize};

/// The study's own catalogue rows.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct OwnRows {
    /// Own sheets.
    pub sheets: Vec<Sheet>,
    /// Own night screens.
    pub screens: Vec<Screen>,
    /// Own fuels.
    pub fuels: Vec<Fuel>,
}
