//! Trays for seed and transplants.

use serde::{Deserialize, Serialize};

/// A number of cells that a tray comes with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TrayCells {
    /// Cells in a tray.
    pub count: u32,
    /// Mix in one cell, mL; none where it was not read.
    #[serde(default)]
    pub millilitres: Option<f64>,
}

/// A kind of tray.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TrayKind {
    /// Name in files.
    pub key: String,
    /// Name on screen.
    pub name: String,
    /// Long side, outside, m.
    pub length_m: f64,
    /// Short side, outside, m.
    pub width_m: f64,
    /// Depth, m.
    pub depth_m: f64,
    /// Numbers of cells that it comes with.
    pub cells: Vec<TrayCells>,
    /// Where the numbers come from.
    pub source: String,
}
