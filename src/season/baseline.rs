//! The degree-hour baseline, which a pencil can check.

use super::openings::Openings;
use super::plan::Plan;
use crate::model::{HeatTarget, Scenario};

/// The same shell with its outermost sheet alone, no tent, water, night cover or sun, the whole house held:
/// `E₀ = (UA_skin + UA_inf + F P) × DH(T_set)/η`, handbook U and air changes, without wind, sky or party wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Baseline {
    /// T_set: the higher air setpoint of the first heater; of a mat, an immersion heater or none the crop's wanted air.
    pub setpoint_c: f64,
    /// UA_skin + UA_inf + F P, W/K.
    pub ua_w_per_k: f64,
}

impl Baseline {
    /// Of a scenario.
    #[must_use]
    pub fn of(scenario: &Scenario, plan: &Plan, openings: &Openings) -> Self {
        let skin: f64 = plan.skin.iter().map(|g| g.area_m2 / g.outermost_resistance).sum();
        Self {
            setpoint_c: Self::setpoint_of(scenario),
            ua_w_per_k: skin + openings.design_leakage_w_per_k() + plan.edge_w_per_k,
        }
    }

    /// Heat in an hour of this outdoor temperature, W.
    #[must_use]
    pub fn heat_w(&self, outdoor_c: f64) -> f64 {
        self.ua_w_per_k * (self.setpoint_c - outdoor_c).max(0.0)
    }

    /// T_set of a scenario, °C: see [`Baseline::setpoint_c`].
    #[must_use]
    pub fn setpoint_of(scenario: &Scenario) -> f64 {
        let heater = &scenario.heater;
        match heater.higher_setpoint_c() {
            Some(setpoint_c) if heater.present && heater.target == HeatTarget::Air => setpoint_c,
            _ => scenario.crop.wanted_air_c,
        }
    }
}
