//! Sizes that heaters are sold in.

/// Rated outputs on sale, W: common practice for electric and gas heaters of plant houses.
pub const HEATER_SIZES_W: [f64; 18] = [
    500.0, 1000.0, 1500.0, 2000.0, 3000.0, 4000.0, 5000.0, 7500.0, 10_000.0, 15_000.0, 20_000.0, 25_000.0, 30_000.0,
    50_000.0, 75_000.0, 100_000.0, 150_000.0, 200_000.0,
];

/// Share by which a heater should exceed its design load. Common practice: a tenth, since sheets age and gaps open.
pub const SIZING_MARGIN: f64 = 0.1;

/// The smallest size that gives a design load (W) with [`SIZING_MARGIN`]; none without a load or above all sizes.
#[must_use]
pub fn heater_size_w(design_load_w: f64) -> Option<f64> {
    let wanted_w = design_load_w * (1.0 + SIZING_MARGIN);
    HEATER_SIZES_W.into_iter().find(|size_w| wanted_w > 0.0 && *size_w >= wanted_w)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_size_leaves_a_tenth_over() {
        assert_eq!(heater_size_w(1800.0), Some(2000.0));
        assert_eq!(heater_size_w(1900.0), Some(3000.0), "2090 W with the margin");
        assert_eq!(heater_size_w(0.0), None);
        assert_eq!(heater_size_w(190_000.0), None);
        assert_eq!(heater_size_w(f64::NAN), None);
    }
}
