//! Air moved by open vents and the fan.

use crate::units::{GRAVITY, kelvin_from_c};

/// Discharge coefficient of separate inlet and outlet (ASHRAE Handbook Fundamentals: 0.65).
pub const DISCHARGE_COEFFICIENT: f64 = 0.65;
/// Wind effectiveness of an opening, low end of the published 0.25–0.35 for diagonal wind (ASHRAE Fundamentals 2009,
/// chapter 16, eq. 37).
pub const WIND_EFFECTIVENESS: f64 = 0.25;
/// Rise above its thermostat over which the fan reaches full speed, K. A modelling choice.
pub const FAN_SPAN_K: f64 = 2.0;

/// Openings as they stand at the moment.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Openings {
    /// Low openings, m².
    pub inlet_m2: f64,
    /// High openings, m².
    pub outlet_m2: f64,
    /// Middle of the low to middle of the high openings, m.
    pub height_m: f64,
}

/// Share that rises linearly from 0 at `start` to 1 at `full`.
#[must_use]
pub fn linear_share(value: f64, start: f64, full: f64) -> f64 {
    if value <= start {
        0.0
    } else if value >= full {
        1.0
    } else {
        (value - start) / (full - start)
    }
}

/// Area that two openings in series work like, m²: `1/A² = 1/A_in² + 1/A_out²`; zero if one is shut.
#[must_use]
pub fn effective_area_m2(inlet_m2: f64, outlet_m2: f64) -> f64 {
    if inlet_m2 <= 0.0 || outlet_m2 <= 0.0 { 0.0 } else { inlet_m2 * outlet_m2 / inlet_m2.hypot(outlet_m2) }
}

/// Flow by stack effect, m³/s: `Q = C_d A_eff √(2 g Δz |T_i − T_o|/T_o)`, T_o in kelvin.
#[must_use]
pub fn stack_flow(discharge_coefficient: f64, openings: Openings, inside_c: f64, outdoor_c: f64) -> f64 {
    let area = effective_area_m2(openings.inlet_m2, openings.outlet_m2);
    let drive = 2.0 * GRAVITY * openings.height_m * (inside_c - outdoor_c).abs() / kelvin_from_c(outdoor_c);
    discharge_coefficient * area * drive.sqrt()
}

/// Flow by wind, m³/s: `Q = C_v A v`, A the smaller opening (the only one if there is one). The effectiveness C_v is
/// 0.5–0.6 for wind square to the opening, 0.25–0.35 for diagonal wind (ASHRAE Fundamentals 2009, chapter 16, eq. 37).
#[must_use]
pub fn wind_flow(effectiveness: f64, openings: Openings, site_wind_m_per_s: f64) -> f64 {
    let smaller = openings.inlet_m2.min(openings.outlet_m2);
    let area = if smaller > 0.0 { smaller } else { openings.inlet_m2.max(openings.outlet_m2) };
    effectiveness * area * site_wind_m_per_s
}

/// Vents, wind and fan together, m³/s: `Q = √(Q_stack² + Q_wind² + Q_fan²)` (ASHRAE Fundamentals 2009, chapter 16).
#[must_use]
pub fn combined_flow(stack: f64, wind: f64, fan: f64) -> f64 {
    (stack * stack + wind * wind + fan * fan).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_difference_no_flow_and_four_times_the_difference_doubles_it() {
        let openings = Openings { inlet_m2: 0.4, outlet_m2: 0.7, height_m: 1.5 };
        assert!(stack_flow(DISCHARGE_COEFFICIENT, openings, 5.0, 5.0) == 0.0);
        let (one, four) = (stack_flow(0.65, openings, 8.0, 5.0), stack_flow(0.65, openings, 17.0, 5.0));
        assert!((four / one - 2.0).abs() < 1e-12);
    }
}
