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

    /// Worked example S-DOE1: air 293 K, dew point 283 K, clear: emissivity 0.815 (exact 0.8145), 340.6 W/m².
    /// ±0.3 W/m² covers the rounding of the emissivity in the source.
    #[test]
    fn clear_sky_of_the_worked_example() {
        let emissivity = sky_emissivity(283.0 - KELVIN_AT_0_C, 0.0);
        assert!((emissivity - 0.8145).abs() < 1e-4, "{emissivity}");
        let infrared = emissivity * STEFAN_BOLTZMANN * 293.0_f64.powi(4);
        assert!((infrared - 340.6).abs() < 0.3, "{infrared}");
        let sky = sky_c_from_dew_point(293.0 - KELVIN_AT_0_C, 283.0 - KELVIN_AT_0_C, 0.0);
        assert!((sky - sky_c_from_infrared(infrared)).abs() < 1e-9);
    }

    /// The same example under cloud, by hand from the formula: 5 tenths 0.863 and 9.2 °C, 10 tenths 0.940 and 15.3 °C.
    /// Tolerances are half the last printed digit.
    #[test]
    fn cloudy_sky_of_the_worked_example() {
        let (air, dew) = (293.0 - KELVIN_AT_0_C, 283.0 - KELVIN_AT_0_C);
        for (tenths, emissivity, sky) in [(5.0, 0.863, 9.2), (10.0, 0.940, 15.3)] {
            assert!((sky_emissivity(dew, tenths) - emissivity).abs() <= 0.0005);
            assert!((sky_c_from_dew_point(air, dew, tenths) - sky).abs() <= 0.05);
        }
    }

    /// No sky is warmer than black at air temperature: a warm damp overcast hour is capped.
    #[test]
    fn emissivity_is_capped_at_one() {
        assert!((sky_emissivity(35.0, 10.0) - 1.0).abs() < 1e-12);
    }
}
