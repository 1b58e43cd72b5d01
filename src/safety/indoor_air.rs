//! What burning does to the air that people and plants breathe: limits, and the carbon dioxide of a season.

use crate::physics::combustion::rise_from;

/// Most carbon dioxide at a working place, mean of eight hours, ppm (OSHA 29 CFR 1910.1000 table Z-1; from memory).
pub const CARBON_DIOXIDE_LIMIT_PPM: f64 = 5000.0;
/// Carbon dioxide outdoors, ppm (NOAA global mean of 2023, rounded; from memory).
pub const OUTDOOR_CARBON_DIOXIDE_PPM: f64 = 420.0;
/// Ethylene that injures plants, ppm, from (Michigan State University Extension: 0.01 to 1 ppm or more).
pub const ETHYLENE_HARM_PPM: f64 = 0.01;

/// One hour of a burner in a house with or without a tent in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BurnerHour {
    /// Carbon dioxide made in house and tent together, m³/h.
    pub made_m3_per_h: f64,
    /// Of that, made in the tent, m³/h.
    pub made_in_tent_m3_per_h: f64,
    /// Air that the house changes with outdoors, m³/h.
    pub exchange_m3_per_h: f64,
    /// Air that the tent changes with the house, m³/h.
    pub tent_exchange_m3_per_h: f64,
}

/// The highest carbon dioxide at the end of any hour, ppm: house, tent.
///
/// Both well mixed, and what leaves the tent is in the house at once, so that the house reaches its steady rise a little
/// early. Volumes in m³, above zero; without a tent its volume is not used.
#[must_use]
pub fn highest_carbon_dioxide_ppm(
    hours: impl Iterator<Item = BurnerHour>,
    house_m3: f64,
    tent_m3: Option<f64>,
) -> [f64; 2] {
    let (mut house, mut above, mut highest) = (0.0, 0.0, [0.0_f64; 2]);
    for hour in hours {
        house = rise_from(house, hour.made_m3_per_h, house_m3, hour.exchange_m3_per_h / house_m3, 1.0);
        if let Some(tent_m3) = tent_m3 {
            let changes = hour.tent_exchange_m3_per_h / tent_m3;
            above = rise_from(above, hour.made_in_tent_m3_per_h, tent_m3, changes, 1.0);
        }
        highest = [highest[0].max(house), highest[1].max(house + above)];
    }
    highest.map(|rise| OUTDOOR_CARBON_DIOXIDE_PPM + 1e6 * rise)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_season_of_equal_hours_ends_at_the_steady_rise() {
        // 1 kW of propane makes 0.117 m³/h; 50 m³ at 0.5 changes an hour rise by 4,680 ppm (worked out by hand from the
        // stoichiometry; the steady rise itself is held in tests/proof/flames.rs).
        let hour = BurnerHour {
            made_m3_per_h: 0.117,
            made_in_tent_m3_per_h: 0.0,
            exchange_m3_per_h: 25.0,
            tent_exchange_m3_per_h: 0.0,
        };
        let [house, _] = highest_carbon_dioxide_ppm(std::iter::repeat_n(hour, 48), 50.0, None);
        assert!((house - (4680.0 + OUTDOOR_CARBON_DIOXIDE_PPM)).abs() < 1.0, "{house}");
        let in_tent = BurnerHour { made_in_tent_m3_per_h: 0.117, tent_exchange_m3_per_h: 5.0, ..hour };
        let [house, tent] = highest_carbon_dioxide_ppm(std::iter::repeat_n(in_tent, 48), 50.0, Some(5.0));
        // The tent stands above the house by what it makes over what it changes: 0.117/5 = 23,400 ppm.
        assert!((tent - house - 23_400.0).abs() < 1.0, "{tent} {house}");
    }
}
