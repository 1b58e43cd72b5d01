//! What water and floor still hold for the crop: heat above its limit.

use super::plan::{Plan, ZonePlan};
use super::result::HourlySeries;
use crate::physics::stores::{HEAT_OF_FUSION, ICE_SPECIFIC_HEAT, WATER_SPECIFIC_HEAT};
use crate::units::kwh_from_joules;

/// Heat above the crop limit, kWh. A store that is colder than the limit holds none: it cannot give the crop any.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Stored {
    /// Water of house and tent; none without water.
    pub water_kwh: Option<f64>,
    /// Floors, benches and potting medium of house and tent.
    pub floor_kwh: f64,
}

/// What the stores hold above a limit (°C) in the mean of an hour of the season; nothing in an hour that it lacks.
#[must_use]
pub fn stored(plan: &Plan, s: &HourlySeries, hour: usize, limit_c: f64) -> Stored {
    let zones = [
        (Some(&plan.house), &s.house_floor_c, &s.house_water_c, &s.house_ice_share),
        (plan.tent.as_ref().map(|tent| &tent.zone), &s.tent_floor_c, &s.tent_water_c, &s.tent_ice_share),
    ];
    let mut sum = Stored::default();
    for (zone, floor_c, water_c, ice_share) in zones {
        let Some(zone) = zone else { continue };
        if let Some(floor_c) = floor_c.get(hour) {
            sum.floor_kwh += kwh_from_joules(zone.floor_j_per_k * (floor_c - limit_c)).max(0.0);
        }
        if let (Some(water_c), Some(ice_share)) = (water_c.get(hour), ice_share.get(hour)) {
            let kwh = water_kwh(zone, *water_c, *ice_share, limit_c).max(0.0);
            sum.water_kwh = Some(sum.water_kwh.unwrap_or(0.0) + kwh);
        }
    }
    sum
}

/// Heat of a zone's water above what it has at the limit, kWh: below 0 °C that is ice, so that freezing counts.
fn water_kwh(zone: &ZonePlan, t_c: f64, ice_share: f64, limit_c: f64) -> f64 {
    let j_per_kg = |t_c: f64, ice: f64| {
        let specific = if ice >= 1.0 { ICE_SPECIFIC_HEAT } else { WATER_SPECIFIC_HEAT };
        specific * t_c - ice * HEAT_OF_FUSION
    };
    let at_limit = j_per_kg(limit_c, if limit_c < 0.0 { 1.0 } else { 0.0 });
    kwh_from_joules(zone.water_kg * (j_per_kg(t_c, ice_share) - at_limit))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn water_counts_what_it_gives_down_to_the_limit() {
        let zone = ZonePlan { water_kg: 1000.0, ..ZonePlan::default() };
        let near = |kwh: f64, by_hand: f64| assert!((kwh - by_hand).abs() < 1e-9, "{kwh}, by hand {by_hand}");
        // A tonne of water 6 K above the limit.
        near(water_kwh(&zone, 8.0, 0.0, 2.0), 6.0 * 4186.0 * 1000.0 / 3.6e6);
        // Half of it frozen, with a limit of −1 °C: the other half has its heat of fusion to give, and all a kelvin as ice.
        near(water_kwh(&zone, 0.0, 0.5, -1.0), (0.5 * 334_000.0 + 2100.0) * 1000.0 / 3.6e6);
        assert!(water_kwh(&zone, 0.0, 0.1, 2.0) < 0.0);
    }
}
