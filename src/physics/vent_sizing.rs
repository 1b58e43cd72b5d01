//! How much air a house needs: rules of the trade, and the balance of a sunny noon.

use super::air::flow_w_per_k;
use super::vent::{DISCHARGE_COEFFICIENT, Openings, WIND_EFFECTIVENESS, combined_flow, stack_flow, wind_flow};
use crate::units::SECONDS_PER_HOUR;

/// Air that small fans keep moving within the house, per floor, m³/(s·m²): 2 cfm/ft² (Horizontal Air Flow Fans for
/// Greenhouses).
pub const CIRCULATION_M3_PER_S_M2: f64 = 0.010_16;
/// Vent area at the roof, and again at the sides, per floor (ASABE, quoted in Greenhouse Management, August 2015).
pub const VENT_PER_FLOOR: std::ops::RangeInclusive<f64> = 0.15..=0.20;

/// Fan per floor for a sunny summer, m³/(s·m²): 8 cfm/ft² (NGMA and ASABE, from memory).
pub const FAN_M3_PER_S_M2: f64 = 0.040_64;
/// The same rule by volume: one air change a minute, per hour (NGMA and ASABE, from memory).
pub const FAN_AIR_CHANGES_PER_H: f64 = 60.0;

/// Flow that carries a surplus of heat away at this rise over outdoors, m³/s; none where there is no surplus.
#[must_use]
pub fn flow_for_surplus(surplus_w: f64, rise_k: f64) -> f64 {
    (surplus_w / flow_w_per_k(rise_k)).max(0.0)
}

/// Size of low openings, and of as large high ones, that let a flow in m³/s through by warmth and wind, m²; none where
/// nothing drives it. Warmth is that of `inside_c` over `outdoor_c` between openings `height_m` apart.
#[must_use]
pub fn equal_openings_m2(
    flow_m3_per_s: f64,
    height_m: f64,
    inside_c: f64,
    outdoor_c: f64,
    site_wind_m_per_s: f64,
) -> Option<f64> {
    // Both flows grow with the area, so that the one through a square metre tells the rest.
    let one = Openings { inlet_m2: 1.0, outlet_m2: 1.0, height_m };
    let stack = stack_flow(DISCHARGE_COEFFICIENT, one, inside_c, outdoor_c);
    let through_one = combined_flow(stack, wind_flow(WIND_EFFECTIVENESS, one, site_wind_m_per_s), 0.0);
    (through_one > 0.0).then(|| flow_m3_per_s / through_one)
}

/// Flow that changes the air of a volume this often, m³/s.
#[must_use]
pub fn flow_for_changes(volume_m3: f64, air_changes_per_h: f64) -> f64 {
    volume_m3 * air_changes_per_h / SECONDS_PER_HOUR
}

/// Number of equal fans that together move at least this flow.
#[must_use]
pub fn fans_needed(flow_m3_per_s: f64, fan_m3_per_s: f64) -> f64 {
    (flow_m3_per_s / fan_m3_per_s).ceil()
}

/// A sunny hour, for the steady balance `τ I (1 − E) A_floor = (U A_cover + ρ c_p V) ΔT`.
///
/// # References
/// The form of ANSI/ASAE EP406.4, Heating, Ventilating and Cooling Greenhouses (from memory).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Noon {
    /// Sun on the ground outdoors, W/m².
    pub global_w_per_m2: f64,
    /// Share that the cover passes.
    pub transmittance: f64,
    /// Share that leaves as vapour: 0.5 under a full, watered canopy, 0 to 0.3 with few plants (from memory).
    pub evaporated_share: f64,
    /// Floor, m².
    pub floor_m2: f64,
    /// Heat lost through the cover per kelvin, W/K.
    pub cover_w_per_k: f64,
}

impl Noon {
    /// Sun that warms the air, W.
    #[must_use]
    pub fn sensible_w(&self) -> f64 {
        self.global_w_per_m2 * self.transmittance * (1.0 - self.evaporated_share) * self.floor_m2
    }

    /// Rise of the house over outdoors at a flow in m³/s, K.
    #[must_use]
    pub fn rise_k(&self, flow_m3_per_s: f64) -> f64 {
        self.sensible_w() / (self.cover_w_per_k + flow_w_per_k(flow_m3_per_s))
    }

    /// Flow that keeps the rise at this many kelvin, m³/s; zero where the cover alone does it.
    #[must_use]
    pub fn flow_for_rise(&self, rise_k: f64) -> f64 {
        flow_for_surplus(self.sensible_w() - self.cover_w_per_k * rise_k, rise_k)
    }
}
