//! Heat to the ground: along the edge to outdoor air, and under the core of the floor to deep ground.

/// Conductivity of moist soil, W/(m·K): within the table of Farouki 1982 for clay to moist sand.
pub const SOIL_CONDUCTIVITY: f64 = 1.4;
/// Depth at which the ground's own temperature is taken, m.
pub const DEEP_GROUND_DEPTH_M: f64 = 1.0;

/// Edge loss per kelvin, W/K: `F × exposed perimeter` (F- and C-factor method, US DOE engineering reference).
#[must_use]
pub fn edge_w_per_k(edge_f_w_per_mk: f64, exposed_perimeter_m: f64) -> f64 {
    edge_f_w_per_mk * exposed_perimeter_m
}

/// Core loss per kelvin, W/K: `area × k/depth`.
#[must_use]
pub fn core_w_per_k(core_floor_m2: f64) -> f64 {
    core_floor_m2 * SOIL_CONDUCTIVITY / DEEP_GROUND_DEPTH_M
}
