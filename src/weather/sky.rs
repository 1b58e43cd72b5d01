//! How cold the sky is.

use crate::units::{KELVIN_AT_0_C, STEFAN_BOLTZMANN, kelvin_from_c};

/// Temperature of a black sky that sends this infrared on the horizontal, °C.
#[must_use]
pub fn sky_c_from_infrared(infrared_w_per_m2: f64) -> f64 {
    (infrared_w_per_m2.max(0.0) / STEFAN_BOLTZMANN).powf(0.25) - KELVIN_AT_0_C
}

/// Emissivity of the sky: Clark and Allen (1978) from the dew point, times Walton's (1983) factor for cloud in tenths;
/// at most 1. Formula as in the engineering reference of the US Department of Energy's building simulation program.
#[must_use]
pub fn sky_emissivity(dew_point_c: f64, cloud_tenths: f64) -> f64 {
    let clear = 0.787 + 0.764 * (kelvin_from_c(dew_point_c) / 273.0).ln();
    let n = cloud_tenths.clamp(0.0, 10.0);
    let cloud = 1.0 + n * (0.0224 + n * (-0.0035 + n * 0.000_28));
    (clear * cloud).clamp(0.0, 1.0)
}

/// Temperature of the sky from dry bulb, dew point and cloud, °C.
#[must_use]
pub fn sky_c_from_dew_point(dry_bulb_c: f64, dew_point_c: f64, cloud_tenths: f64) -> f64 {
    sky_emissivity(dew_point_c, cloud_tenths).powf(0.25) * kelvin_from_c(dry_bulb_c) - KELVIN_AT_0_C
}

#[cfg(test)]
mod tests {
    use super::*;

    /// No sky is warmer than black at air temperature: a warm damp overcast hour is capped.
    #[test]
    fn emissivity_is_capped_at_one() {
        assert!((sky_emissivity(35.0, 10.0) - 1.0).abs() < 1e-12);
    }
}
