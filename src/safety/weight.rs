//! What water weighs where it stands, and what it does when it freezes.

use crate::units::GRAVITY;
use std::f64::consts::PI;

/// Water, kg/L (8.34 lb per US gallon to three figures).
pub const WATER_KG_PER_LITRE: f64 = 1.0;
/// Empty 55 gallon steel drum, kg (drum seller's table: 38 to 40 lb, heavy ones 60 lb).
pub const STEEL_DRUM_KG: f64 = 18.1;
/// Growth of volume when water freezes, share: 999.84 to 916.7 kg/m³ (densities from memory).
pub const ICE_GROWTH: f64 = 999.84 / 916.7 - 1.0;
/// What the floor of a dwelling is made to carry, Pa: 40 lb/ft² (from memory).
pub const DWELLING_FLOOR_PA: f64 = 1915.0;

/// Share of a vessel to leave empty, unsealed, where its water may freeze (common practice).
pub const LEAST_HEADSPACE: f64 = 0.10;

/// Mass of snow on an area, kg, by the depth of water that it melts to, m.
///
/// # References
/// Grubinger, University of Vermont; Bartok, University of Connecticut 2013: 5.2 lb/ft² for each inch of water.
#[must_use]
pub fn snow_kg(area_m2: f64, water_m: f64) -> f64 {
    area_m2 * water_m * 1000.0 * WATER_KG_PER_LITRE
}

/// What an upright cylinder holds, L.
#[must_use]
pub fn cylinder_litres(diameter_m: f64, height_m: f64) -> f64 {
    PI / 4.0 * diameter_m * diameter_m * height_m * 1000.0
}

/// Mass of a filled vessel, kg.
#[must_use]
pub fn filled_kg(litres: f64, empty_kg: f64) -> f64 {
    WATER_KG_PER_LITRE * litres + empty_kg
}

/// Pressure of a mass on the area that carries it, Pa.
#[must_use]
pub fn pressure_pa(mass_kg: f64, area_m2: f64) -> f64 {
    mass_kg * GRAVITY / area_m2
}
