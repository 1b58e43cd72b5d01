//! Stack flow written out in full: where the pressures inside and outside are the same, and one opening alone.
//!
//! The season uses the short form [`super::vent::stack_flow`], which lies between inflow and outflow; the two differ
//! because warm air is thinner.

use super::vent::Openings;
use crate::units::{GRAVITY, kelvin_from_c};

/// Height of the neutral level above the middle of the low openings, m: `h = H/(1 + (A₁/A₂)² T_i/T_o)`; the house is
/// the warmer one. Zero without a low opening's partner.
///
/// # References
/// API RP 500; follows from equal masses in and out.
#[must_use]
pub fn neutral_level_m(openings: Openings, inside_c: f64, outdoor_c: f64) -> f64 {
    if openings.outlet_m2 <= 0.0 {
        return 0.0;
    }
    let areas = openings.inlet_m2 / openings.outlet_m2;
    openings.height_m / (1.0 + areas * areas * kelvin_from_c(inside_c) / kelvin_from_c(outdoor_c))
}

/// Outdoor air that flows in below, m³/s: `C_d A₁ √(2 g h (T_i − T_o)/T_i)`; nothing unless the house is warmer.
///
/// # References
/// ASHRAE Handbook Fundamentals 2009, chapter 16, eq. 38.
#[must_use]
pub fn inflow(discharge_coefficient: f64, openings: Openings, inside_c: f64, outdoor_c: f64) -> f64 {
    let drive = 2.0 * GRAVITY * neutral_level_m(openings, inside_c, outdoor_c) * lightness(inside_c, outdoor_c);
    discharge_coefficient * openings.inlet_m2 * drive.sqrt()
}

/// House air that flows out above, m³/s: the same mass as [`inflow`], `T_i/T_o` times the volume.
#[must_use]
pub fn outflow(discharge_coefficient: f64, openings: Openings, inside_c: f64, outdoor_c: f64) -> f64 {
    inflow(discharge_coefficient, openings, inside_c, outdoor_c) * kelvin_from_c(inside_c) / kelvin_from_c(outdoor_c)
}

/// Flow each way through one upright opening, m³/s: `C_d W H/3 √(g H (T_i − T_o)/T_i)`, cold in below its middle and
/// warm out above. From integrating the orifice equation over its height.
#[must_use]
pub fn two_way_flow(discharge_coefficient: f64, width_m: f64, height_m: f64, inside_c: f64, outdoor_c: f64) -> f64 {
    let drive = GRAVITY * height_m * lightness(inside_c, outdoor_c);
    discharge_coefficient * width_m * height_m / 3.0 * drive.sqrt()
}

/// Discharge coefficient of one opening with flow both ways: `0.40 + 0.0045 |T_i − T_o|`.
///
/// # References
/// ASHRAE Handbook Fundamentals 2009, chapter 16, eq. 39.
#[must_use]
pub fn two_way_discharge(inside_c: f64, outdoor_c: f64) -> f64 {
    0.40 + 0.0045 * (inside_c - outdoor_c).abs()
}

/// `(T_i − T_o)/T_i` in kelvin, zero unless the house is warmer.
fn lightness(inside_c: f64, outdoor_c: f64) -> f64 {
    (inside_c - outdoor_c).max(0.0) / kelvin_from_c(inside_c)
}
