//! What an electric circuit carries. Heating runs for hours: a continuous load.

use crate::units::METRES_PER_FOOT;

/// Rating needed per continuous load: conductors and breaker at least 125 % of it.
///
/// # References
/// NEC 2017, 424.3(B), 210.19(A)(1), 210.20(A).
pub const CONTINUOUS_FACTOR: f64 = 1.25;

/// Ratings of circuit breakers, A (NEC 240.6(A), from memory).
pub const BREAKERS_A: [f64; 13] = [15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0];

/// Rating of that fuse, A.
pub const FUSED_PLUG_A: f64 = 13.0;

/// Most power from one lead or socket with a 13 A fuse, W (guidance in the United Kingdom).
pub const FUSED_PLUG_LIMIT_W: f64 = 3000.0;

/// Clear space round a heater, m: 3 ft.
///
/// # References
/// Advice of the Consumer Product Safety Commission, quoted.
pub const CLEAR_SPACE_M: f64 = 3.0 * METRES_PER_FOOT;

/// Most power through a plug and socket, W: its rating times the voltage; [`FUSED_PLUG_LIMIT_W`] by a fuse of 13 A, whose
/// plugs belong to 220 V and more. None where the voltage is needed and not known.
#[must_use]
pub fn plug_limit_w(rating_a: f64, volts: Option<f64>) -> Option<f64> {
    if rating_a == FUSED_PLUG_A && volts.is_none_or(|v| v >= 220.0) {
        return Some(FUSED_PLUG_LIMIT_W);
    }
    volts.map(|v| rating_a * v)
}

/// Current of a heater, A; its power factor is one.
#[must_use]
pub fn current_a(power_w: f64, volts: f64) -> f64 {
    power_w / volts
}

/// Rating that a continuous load needs, A.
#[must_use]
pub fn rating_needed_a(continuous_a: f64) -> f64 {
    CONTINUOUS_FACTOR * continuous_a
}

/// Most continuous current on a circuit of this rating, A.
#[must_use]
pub fn continuous_limit_a(rating_a: f64) -> f64 {
    rating_a / CONTINUOUS_FACTOR
}

/// Most continuous power on a circuit of this rating, W.
#[must_use]
pub fn continuous_limit_w(rating_a: f64, volts: f64) -> f64 {
    continuous_limit_a(rating_a) * volts
}

/// Smallest breaker for a continuous load, A; none that large.
#[must_use]
pub fn smallest_breaker_a(continuous_a: f64) -> Option<f64> {
    BREAKERS_A.into_iter().find(|rating| *rating >= rating_needed_a(continuous_a))
}

/// Voltage lost on the way there and back, V.
#[must_use]
pub fn voltage_drop_v(current_a: f64, one_way_m: f64, ohm_per_m: f64) -> f64 {
    2.0 * current_a * one_way_m * ohm_per_m
}
