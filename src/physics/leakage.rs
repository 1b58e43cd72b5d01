//! Air that leaks through the skin.

use super::skin::{HANDBOOK_WIND_M_PER_S, shelter_index};

/// Stack coefficient of a one-storey building, (L/s)²/(cm⁴·K) (ASHRAE Handbook Fundamentals, infiltration, basic model).
pub const STACK_COEFFICIENT: f64 = 0.000_145;
/// Wind coefficients of a one-storey building for shelter classes 1 to 5, (L/s)²/(cm⁴·(m/s)²) (same source).
pub const WIND_COEFFICIENT: [f64; 5] = [0.000_319, 0.000_246, 0.000_174, 0.000_104, 0.000_032];
/// Temperature difference of design weather, K.
pub const DESIGN_DIFFERENCE_K: f64 = 20.0;

/// Air changes per hour: `N = N_d √[(C_s ΔT + C_w v²)/(C_s·20 + C_w1·6.7²)]`.
///
/// `design_rate` is the rate at 6.7 m/s of wind, 20 K and no shelter; wind is the mast's, m/s; the difference is taken
/// without its sign.
#[must_use]
pub fn air_changes_per_h(design_rate: f64, shelter_class: u32, mast_wind_m_per_s: f64, difference_k: f64) -> f64 {
    let drive = STACK_COEFFICIENT * difference_k.abs()
        + WIND_COEFFICIENT[shelter_index(shelter_class)] * mast_wind_m_per_s * mast_wind_m_per_s;
    let design =
        STACK_COEFFICIENT * DESIGN_DIFFERENCE_K + WIND_COEFFICIENT[0] * HANDBOOK_WIND_M_PER_S * HANDBOOK_WIND_M_PER_S;
    design_rate * (drive / design).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn design_weather_gives_the_design_rate() {
        assert!((air_changes_per_h(1.5, 1, 6.7, 20.0) - 1.5).abs() < 1e-12);
        assert!((air_changes_per_h(1.5, 1, 6.7, -20.0) - 1.5).abs() < 1e-12);
    }

    #[test]
    fn closed_houses_in_calm_air_stay_below_one_change() {
        // Tracer-gas survey of ten commercial ranges (AIVC abstract): none above 1 per hour in calm air, lowest 0.34.
        let calm = air_changes_per_h(1.5, 3, 0.0, 15.0);
        assert!(0.3 < calm && calm < 1.0, "{calm}");
        assert!(air_changes_per_h(1.0, 3, 0.0, 0.0) == 0.0);
    }
}
