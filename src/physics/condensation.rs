//! When the cover runs wet on its inner side.

use super::air::RHO_CP_J_PER_M3K;
use super::moist_air::{saturation_pa, surface_saturation_pa};
use super::tent_wall::CALM_CONVECTION;

/// Resistance from the air of a zone to the inner side of its skin, m²·K/W (ISO 6946: 0.13 for level heat flow).
pub const INNER_RESISTANCE_M2K_PER_W: f64 = 0.13;

/// Temperature of the inner side of a cover, °C: `T_s = T_i − R_si U (T_i − T_o)`.
#[must_use]
pub fn inner_surface_c(inside_c: f64, outside_c: f64, u_w_per_m2k: f64, inner_resistance_m2k_per_w: f64) -> f64 {
    inside_c - inner_resistance_m2k_per_w * u_w_per_m2k * (inside_c - outside_c)
}

/// Relative humidity of the inside air above which a surface runs wet, or gathers frost below 0 °C, as a share of one;
/// 1 at most.
#[must_use]
pub fn wetting_humidity(surface_c: f64, inside_c: f64) -> f64 {
    (surface_saturation_pa(surface_c) / saturation_pa(inside_c)).min(1.0)
}

/// Air per second from which a surface of this area takes all vapour above its own saturation, m³/s: `h_c A/(ρ c_p)`,
/// the analogy of Lewis between the heat and the vapour that calm air brings to a surface.
#[must_use]
pub fn vapour_conductance_m3_per_s(area_m2: f64) -> f64 {
    CALM_CONVECTION / RHO_CP_J_PER_M3K * area_m2
}
