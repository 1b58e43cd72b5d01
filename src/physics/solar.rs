//! Sun through the facets, and how much of it stays inside.

/// Frame, dirt and structure: share of light that is left. A modelling choice.
pub const FRAME_FACTOR: f64 = 0.90;
/// Diffuse light against normal incidence. A modelling choice.
pub const DIFFUSE_FACTOR: f64 = 0.90;
/// Share of the caught light that is not reflected out again. A modelling choice.
pub const ABSORBED_SHARE: f64 = 0.85;
/// Share of a zone's sun that goes to floor and benches, the rest goes to the air. A modelling choice.
pub const TO_FLOOR_SHARE: f64 = 0.60;
/// Most of a zone's sun that its water can take. A modelling choice.
pub const WATER_SHARE_MAX: f64 = 0.5;
/// Above this global irradiance it is day for covers and tent, W/m². A modelling choice.
pub const DAY_THRESHOLD_W_PER_M2: f64 = 5.0;

/// Incidence-angle modifier of a sheet: `K = max(0, 1 − 0.1 (1/cos θ − 1))`.
///
/// # References
/// Souka and Safwat 1966, the one-parameter form for flat covers of collectors (as in ASHRAE 93), b₀ = 0.1.
#[must_use]
pub fn incidence_modifier(cos_incidence: f64) -> f64 {
    if cos_incidence <= 0.0 { 0.0 } else { (1.0 - 0.1 * (1.0 / cos_incidence - 1.0)).max(0.0) }
}

/// Light that passes all facets of the house in one hour.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PassedLight {
    /// Beam power that passes, W.
    pub beam_w: f64,
    /// Diffuse power that passes, W.
    pub diffuse_w: f64,
    /// Beam that strikes the light-passing facets, W.
    pub beam_struck_w: f64,
    /// Diffuse that strikes them, W.
    pub diffuse_struck_w: f64,
}

impl PassedLight {
    /// Adds a facet of this area and normal transmittance.
    pub fn add(&mut self, area_m2: f64, transmittance: f64, beam: f64, diffuse: f64, cos_incidence: f64) {
        let through = area_m2 * FRAME_FACTOR * transmittance;
        self.beam_w += through * incidence_modifier(cos_incidence) * beam;
        self.diffuse_w += through * DIFFUSE_FACTOR * diffuse;
        self.beam_struck_w += area_m2 * beam;
        self.diffuse_struck_w += area_m2 * diffuse;
    }

    /// Power that stays in the house, W:
    /// `S = 0.85 [c (E_b + E_d) + (1 − c)(min(E_b, F_b) + min(E_d, F_d))]`, F the power that the bare floor catches.
    ///
    /// `catch` is c: the share of passing light that meets something before it leaves.
    #[must_use]
    pub fn kept_w(&self, catch: f64, floor_m2: f64, beam_horizontal: f64, diffuse_horizontal: f64) -> f64 {
        let ratio = |passed: f64, struck: f64| if struck > 0.0 { passed / struck } else { 0.0 };
        let floor_beam = floor_m2 * ratio(self.beam_w, self.beam_struck_w) * beam_horizontal;
        let floor_diffuse = floor_m2 * ratio(self.diffuse_w, self.diffuse_struck_w) * diffuse_horizontal;
        ABSORBED_SHARE
            * (catch * (self.beam_w + self.diffuse_w)
                + (1.0 - catch) * (self.beam_w.min(floor_beam) + self.diffuse_w.min(floor_diffuse)))
    }
}

/// Share of passing light that meets something: `c = c₀ + (1 − c₀) × opaque wall / all wall`.
#[must_use]
pub fn catch_share(fullness: f64, opaque_wall_m2: f64, all_wall_m2: f64) -> f64 {
    let opaque = if all_wall_m2 > 0.0 { opaque_wall_m2 / all_wall_m2 } else { 0.0 };
    fullness + (1.0 - fullness) * opaque
}

/// How one zone divides its sun. All shares are constant over a season.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ZoneShares {
    /// Share that leaves as vapour.
    pub vapour: f64,
    /// Share to the water.
    pub water: f64,
    /// Share to floor and benches.
    pub floor: f64,
    /// Share to the air.
    pub air: f64,
}

impl ZoneShares {
    /// `vapour = planted × t`; water takes `min(0.5, Σ n A α / floor)` of what is left; of the rest 60 % go to the
    /// floor, 40 % to the air.
    #[must_use]
    pub fn new(planted_share: f64, transpiration_share: f64, absorbing_water_m2: f64, zone_floor_m2: f64) -> Self {
        let vapour = planted_share * transpiration_share;
        let water_of_rest =
            if zone_floor_m2 > 0.0 { (absorbing_water_m2 / zone_floor_m2).min(WATER_SHARE_MAX) } else { 0.0 };
        let water = (1.0 - vapour) * water_of_rest;
        let rest = 1.0 - vapour - water;
        Self { vapour, water, floor: rest * TO_FLOOR_SHARE, air: rest * (1.0 - TO_FLOOR_SHARE) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_add_to_one() {
        let shares = ZoneShares::new(0.8, 0.5, 3.0, 4.0);
        assert!((shares.vapour + shares.water + shares.floor + shares.air - 1.0).abs() < 1e-12);
        assert!((shares.water - 0.6 * 0.5).abs() < 1e-12, "capped at half of what is left");
    }

    #[test]
    fn grazing_light_is_reflected() {
        assert!((incidence_modifier(1.0) - 1.0).abs() < 1e-12);
        assert!((incidence_modifier(0.5) - 0.9).abs() < 1e-12, "60°: 1 − 0.1");
        assert!(incidence_modifier(0.05) == 0.0 && incidence_modifier(-0.2) == 0.0);
    }

    #[test]
    fn an_empty_clear_house_keeps_what_its_floor_catches() {
        let mut light = PassedLight::default();
        light.add(10.0, 1.0, 100.0, 0.0, 1.0);
        let kept = light.kept_w(0.0, 4.0, 50.0, 0.0);
        assert!((kept - 0.85 * 4.0 * 0.9 * 50.0).abs() < 1e-9, "{kept}");
        let full = light.kept_w(1.0, 4.0, 50.0, 0.0);
        assert!((full - 0.85 * 900.0).abs() < 1e-9, "{full}");
    }
}
