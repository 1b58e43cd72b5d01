//! Moist air as a carrier of heat.

use crate::units::SECONDS_PER_HOUR;

/// Volumetric heat capacity of air ρ·c_p, J/(m³·K), held constant: 0.335 Wh/(m³·K), the 0.018 Btu/(ft³·°F) of the
/// greenhouse engineering handbooks (0.018 from memory; conversion exact).
pub const RHO_CP_J_PER_M3K: f64 = 1206.0;

/// Heat carried per kelvin by `rate` air changes per hour of a volume, W/K: `ρ c_p V N / 3600`.
#[must_use]
pub fn exchange_w_per_k(volume_m3: f64, air_changes_per_h: f64) -> f64 {
    RHO_CP_J_PER_M3K * volume_m3 * air_changes_per_h / SECONDS_PER_HOUR
}

/// Heat carried per kelvin by a flow in m³/s, W/K.
#[must_use]
pub fn flow_w_per_k(flow_m3_per_s: f64) -> f64 {
    RHO_CP_J_PER_M3K * flow_m3_per_s
}

/// Flow that carries this heat per kelvin, m³/h.
#[must_use]
pub fn flow_m3_per_h(w_per_k: f64) -> f64 {
    w_per_k * (SECONDS_PER_HOUR / RHO_CP_J_PER_M3K)
}
