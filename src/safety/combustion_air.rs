//! What air a flame needs: the size of its room, and openings to the outdoors.

use crate::units::{JOULES_PER_BTU, METRES_PER_FOOT, SECONDS_PER_HOUR};
use std::f64::consts::PI;

/// Watts in a Btu per hour.
const BTU_PER_H: f64 = JOULES_PER_BTU / SECONDS_PER_HOUR;
/// Square metres in a square inch.
const SQUARE_INCH: f64 = METRES_PER_FOOT * METRES_PER_FOOT / 144.0;

/// Room per input, m³/W: 50 ft³ per 1,000 Btu/h, 4.8 m³/kW.
///
/// Not to be used where the room is known to have less than [`LEAST_AIR_CHANGES_PER_H`].
///
/// # References
/// NFPA 54 and the International Fuel Gas Code; NREL Standard Work Specification 5.0502.1a.
pub const ROOM_M3_PER_W: f64 = 0.05 * METRES_PER_FOOT * METRES_PER_FOOT * METRES_PER_FOOT / BTU_PER_H;
/// Air changes per hour that the room rule takes for granted.
pub const LEAST_AIR_CHANGES_PER_H: f64 = 0.40;

/// Smallest room in which a flame of this input needs no air from outdoors, m³.
#[must_use]
pub fn room_needed_m3(input_w: f64) -> f64 {
    ROOM_M3_PER_W * input_w
}

/// Most input that a room carries without air from outdoors, W.
#[must_use]
pub fn input_supported_w(room_m3: f64) -> f64 {
    room_m3 / ROOM_M3_PER_W
}

/// How air comes in from outdoors.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AirPath {
    /// Two openings, high and low, straight through the wall or by upright ducts: each 1 in² per 4,000 Btu/h of input.
    TwoDirect,
    /// Two openings by level ducts: each 1 in² per 2,000 Btu/h of input.
    TwoLevelDucts,
    /// One opening high up: 1 in² per 3,000 Btu/h of input.
    One,
    /// An inlet for a greenhouse heater: 1 in² per 2,500 Btu/h of output.
    GreenhouseInlet,
}

/// Free area of each opening, m², for a heater of this input (output for a greenhouse inlet), W.
///
/// # References
/// NFPA 54 and the International Fuel Gas Code (quoted); greenhouse inlet: Michigan State University Extension,
/// Malfunctioning greenhouse unit heaters.
#[must_use]
pub fn opening_m2(path: AirPath, heater_w: f64) -> f64 {
    let btu_per_h_and_square_inch = match path {
        AirPath::TwoDirect => 4000.0,
        AirPath::TwoLevelDucts => 2000.0,
        AirPath::One => 3000.0,
        AirPath::GreenhouseInlet => 2500.0,
    };
    heater_w / BTU_PER_H / btu_per_h_and_square_inch * SQUARE_INCH
}

/// Diameter of a round pipe of this area, m.
#[must_use]
pub fn pipe_diameter_m(area_m2: f64) -> f64 {
    (4.0 * area_m2 / PI).sqrt()
}
