//! How fast a gas cylinder gives gas.

use serde::{Deserialize, Serialize};

/// Most continuous draw by what is left and how cold the liquid is, W gross.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrawTable {
    /// Temperatures of the columns, °C, from cold to warm.
    pub liquid_c: Vec<f64>,
    /// Rows, from little to much left.
    pub rows: Vec<DrawRow>,
}

/// A row of the table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrawRow {
    /// Propane left, kg.
    pub left_kg: f64,
    /// Most draw in each column, W gross.
    pub draw_w: Vec<f64>,
}

/// What is known of a cylinder's draw.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Draw {
    /// By what is left and by temperature.
    Table(DrawTable),
    /// One figure for cold winters, W gross.
    ColdWinter(f64),
}

/// A gas cylinder.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cylinder {
    /// Its name among the units of the fuel catalogue.
    pub unit: String,
    /// Propane in a full one, kg.
    pub content_kg: f64,
    /// How fast it gives gas.
    pub draw: Draw,
    /// Where the numbers come from.
    pub source: String,
}
