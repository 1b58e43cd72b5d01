//! Linearised heat radiation to the sky.

use crate::units::{STEFAN_BOLTZMANN, kelvin_from_c};

/// Radiative surface coefficient h_r = 4 σ T_m³, W/(m²·K), T_m the mean of outdoor air and sky in kelvin.
///
/// # References
/// ISO 6946, annex on surface resistances: h_r = ε·4σT_m³; emissivity enters in [`sky_equivalent_c`].
#[must_use]
pub fn radiative_coefficient(outdoor_c: f64, sky_c: f64) -> f64 {
    let mean_kelvin = kelvin_from_c(f64::midpoint(outdoor_c, sky_c));
    4.0 * STEFAN_BOLTZMANN * mean_kelvin.powi(3)
}

/// Outdoor temperature that a facet feels under the sky, °C:
/// `T_e = T_o − F ε_e h_r (T_o − T_sky)/h_e`.
///
/// `sky_view_emissivity` is F·ε_e; `h_r` and `h_e` in W/(m²·K). At or below outdoor air unless the sky is warmer.
#[must_use]
pub fn sky_equivalent_c(outdoor_c: f64, sky_c: f64, sky_view_emissivity: f64, h_r: f64, h_e: f64) -> f64 {
    outdoor_c - sky_view_emissivity * h_r * (outdoor_c - sky_c) / h_e
}
