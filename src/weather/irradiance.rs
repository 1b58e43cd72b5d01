//! From the three horizontal figures of a record to the light on a plane, and the parts that a record lacks.

use super::climate::{ALBEDO, ClimateHour, PlaneIrradiance};
use super::sun::Sun;

/// Floor of the cosine of the zenith in the beam ratio: 89° (pvlib 0.16.1, `haydavies`).
pub const MIN_COS_ZENITH: f64 = 0.017_45;
/// Below this cosine (87° zenith) Erbs gives no beam: the division blows up (pvlib 0.16.1, `erbs`).
const MIN_COS_ZENITH_ERBS: f64 = 0.052_34;
/// Floor of the cosine of the zenith in the clearness index (pvlib 0.16.1, `clearness_index`).
const MIN_COS_ZENITH_CLEARNESS: f64 = 0.065;
/// Ceiling ‡ of a beam worked out from global and diffuse, as share of the extraterrestrial beam: near sunrise the
/// division by the sun's height makes much of a small error. Very clear mountain air passes about this much.
const MAX_BEAM_SHARE: f64 = 0.8;

impl ClimateHour {
    /// Light on a plane with the outward unit normal east, north, up. Hay and Davies (1980): the circumsolar part of the
    /// diffuse light comes with the sun, the rest evenly from the sky; the ground reflects [`ALBEDO`] of the global.
    #[must_use]
    pub fn on_plane(&self, normal: [f64; 3]) -> PlaneIrradiance {
        let cos_incidence = normal[0] * self.sun[0] + normal[1] * self.sun[1] + normal[2] * self.sun[2];
        let facing = cos_incidence.max(0.0);
        let beam_ratio = facing / self.sun[2].max(MIN_COS_ZENITH);
        let sky_view = 0.5 * (1.0 + normal[2]);
        let sky = self.diffuse_w_per_m2 * (self.anisotropy * beam_ratio + (1.0 - self.anisotropy) * sky_view);
        let ground = self.global_w_per_m2 * ALBEDO * 0.5 * (1.0 - normal[2]);
        PlaneIrradiance { beam: self.beam_normal_w_per_m2 * facing, diffuse: sky + ground, cos_incidence }
    }
}

/// The three figures of one hour, W/m².
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SunParts {
    /// Global horizontal.
    pub global: f64,
    /// Direct normal.
    pub direct_normal: f64,
    /// Diffuse horizontal.
    pub diffuse: f64,
}

/// Splits a global irradiance into beam and diffuse by the correlation of Erbs, Klein and Duffie (1982).
#[must_use]
pub fn erbs(global: f64, sun: &Sun) -> SunParts {
    let cos_zenith = sun.direction[2];
    let above_air = sun.extraterrestrial_w_per_m2 * cos_zenith.max(MIN_COS_ZENITH_CLEARNESS);
    let clearness = (global / above_air).clamp(0.0, 1.0);
    let diffuse = global * erbs_diffuse_fraction(clearness);
    if cos_zenith < MIN_COS_ZENITH_ERBS {
        return SunParts { global, direct_normal: 0.0, diffuse: global };
    }
    SunParts { global, direct_normal: (global - diffuse) / cos_zenith, diffuse }
}

/// Diffuse share of the global irradiance at a clearness index (Erbs, Klein and Duffie 1982).
#[must_use]
pub fn erbs_diffuse_fraction(clearness: f64) -> f64 {
    let k = clearness;
    if k <= 0.22 {
        1.0 - 0.09 * k
    } else if k <= 0.8 {
        0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)))
    } else {
        0.165
    }
}

/// Direct normal irradiance from global and diffuse: what closes the sum at this height of the sun.
#[must_use]
pub fn direct_normal_from(global: f64, diffuse: f64, sun: &Sun) -> f64 {
    if !sun.is_up() {
        return 0.0;
    }
    let closing = (global - diffuse).max(0.0) / sun.direction[2].max(MIN_COS_ZENITH);
    closing.min(MAX_BEAM_SHARE * sun.extraterrestrial_w_per_m2)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Erbs, Klein and Duffie (1982) give a continuous curve: both sides of each joint agree to the third digit.
    #[test]
    fn erbs_pieces_join() {
        for joint in [0.22, 0.8] {
            let step = erbs_diffuse_fraction(joint) - erbs_diffuse_fraction(joint + 1e-9);
            assert!(step.abs() < 1.5e-3, "jump of {step} at {joint}");
        }
    }

    /// The parts of a split close to the global figure: the definition of diffuse and beam.
    #[test]
    fn erbs_parts_close() {
        let sun = Sun { direction: [0.0, -0.6, 0.8], extraterrestrial_w_per_m2: 1400.0 };
        for global in [0.0, 100.0, 500.0, 1000.0] {
            let parts = erbs(global, &sun);
            assert!((parts.diffuse + 0.8 * parts.direct_normal - global).abs() < 1e-9);
        }
    }

    /// pvlib's own test of its Erbs model (from memory; global and zenith, then beam and diffuse), with Spencer's
    /// extraterrestrial sun of 1 January and 20 June. The figures are printed to 0.01 W/m² or better; 0.1 W/m² leaves room
    /// for the rounding of the extraterrestrial values here.
    #[test]
    fn erbs_splits_as_pvlib_does() {
        let rows = [
            (0.0, 120.0, 1413.98, 0.0, 0.0),
            (50.0, 85.0, 1413.98, 96.7193, 41.5704),
            (1000.0, 10.0, 1413.98, 794.2057, 217.8601),
            (1000.0, 10.0, 1321.80, 842.0016, 170.7903),
        ];
        for (global, zenith_deg, extraterrestrial_w_per_m2, beam, diffuse) in rows {
            let zenith = f64::to_radians(zenith_deg);
            let sun = Sun { direction: [zenith.sin(), 0.0, zenith.cos()], extraterrestrial_w_per_m2 };
            let parts = erbs(global, &sun);
            assert!((parts.direct_normal - beam).abs() < 0.1, "{parts:?}");
            assert!((parts.diffuse - diffuse).abs() < 0.1, "{parts:?}");
        }
    }
}
