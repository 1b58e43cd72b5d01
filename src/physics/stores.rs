//! What stores heat: air with frame and foliage, floor and benches, water and ice.

use super::air::RHO_CP_J_PER_M3K;

/// Frame, staging, pots and foliage per floor, J/(m²·K). A modelling choice.
pub const FRAME_AND_FOLIAGE: f64 = 20_000.0;
/// Share of a sheet's heat capacity that goes with the air inside: its inner half.
pub const SHEET_SHARE: f64 = 0.5;
/// Depth of floor that swings with the day, m. A modelling choice (damping depth of a daily wave 0.143 m).
pub const FLOOR_DEPTH_M: f64 = 0.12;
/// Heat capacity of soil or paving, J/(m³·K) (ISO 13370: 2.0 MJ/m³K for sand and gravel).
pub const FLOOR_CAPACITY: f64 = 2.0e6;
/// Heat capacity of moist potting medium, J/(m³·K). A modelling choice.
pub const MEDIUM_CAPACITY: f64 = 3.0e6;
/// Floor and benches to zone air, W/(m²·K). A modelling choice (ISO 6946: 6 downward, 10 upward).
pub const FLOOR_TO_AIR: f64 = 8.0;
/// Trays, both sides, to zone air, W/(m²·K). A modelling choice.
pub const TRAY_TO_AIR: f64 = 14.0;
/// Water vessel to zone air, W/(m²·K). A modelling choice within the measured 6–8 (Verlodt and Mougou, Acta Hort. 263).
pub const WATER_TO_AIR: f64 = 7.0;
/// Specific heat of water, J/(kg·K) (Boston University Physics: 4.186 kJ/kgK).
pub const WATER_SPECIFIC_HEAT: f64 = 4186.0;
/// Heat of fusion of ice, J/kg (334 kJ/kg).
pub const HEAT_OF_FUSION: f64 = 334_000.0;
/// Specific heat of ice, J/(kg·K) (from memory: 2.1 kJ/kgK at 0 °C).
pub const ICE_SPECIFIC_HEAT: f64 = 2100.0;

/// Capacity of a zone's air, J/K: air, frame and foliage, inner half of its sheets.
#[must_use]
pub fn air_capacity_j_per_k(volume_m3: f64, zone_floor_m2: f64, sheets_j_per_k: f64) -> f64 {
    RHO_CP_J_PER_M3K * volume_m3.max(0.0) + FRAME_AND_FOLIAGE * zone_floor_m2 + SHEET_SHARE * sheets_j_per_k
}

/// Capacity of floor and potting medium, J/K.
#[must_use]
pub fn floor_capacity_j_per_k(soil_floor_m2: f64, medium_m2: f64, medium_depth_m: f64) -> f64 {
    soil_floor_m2 * FLOOR_DEPTH_M * FLOOR_CAPACITY + medium_m2 * medium_depth_m * MEDIUM_CAPACITY
}
