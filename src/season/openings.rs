//! Air flows that depend on the temperatures inside: leakage, vents, fan, the opened tent.

use super::drive::HourDrive;
use super::plan::Plan;
use crate::model::{Scenario, TentOpening, Vents};
use crate::physics::air::{exchange_w_per_k, flow_w_per_k};
use crate::physics::leakage::air_changes_per_h;
use crate::physics::vent::{self, linear_share};

/// Air changes of an opened tent with the house, per hour. A modelling choice.
const OPEN_TENT_AIR_CHANGES: f64 = 20.0;
/// Rise over which a tent opens, K.
const TENT_SPAN_K: f64 = 2.0;
/// Difference at which slopes are taken, K.
const SLOPE_STEP_K: f64 = 0.01;

/// Settings of everything that opens.
#[derive(Debug, Clone, PartialEq)]
pub struct Openings {
    vents: Vents,
    shelter_class: u32,
    design_rate: f64,
    volume_m3: f64,
    tent_opening: TentOpening,
    open_tent_w_per_k: f64,
}

/// The flows at assumed air temperatures, with their slopes, which steer the iteration and vanish where it ends.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Flows {
    /// Assumed house air, °C.
    pub house_c: f64,
    /// Leakage, W/K.
    pub leakage_w_per_k: f64,
    /// Vents and fan, W/K.
    pub vent_w_per_k: f64,
    /// Share that the vents stand open.
    pub vent_opening: f64,
    /// Share of the fan's full speed.
    pub fan_share: f64,
    /// Added exchange of the opened tent, W/K.
    pub tent_open_w_per_k: f64,
    /// How the vent's heat grows with house air beyond its conductance, W/K.
    pub vent_slope_w_per_k: f64,
    /// How the opened tent's heat grows with tent air beyond its conductance, W/K.
    pub tent_slope_w_per_k: f64,
    /// What belongs to that slope at the assumed temperatures, W from the house to the tent.
    pub tent_offset_w: f64,
    /// Whether anything reacts to the temperatures more than leakage does.
    pub reacts: bool,
}

impl Openings {
    /// Reads them from a scenario.
    #[must_use]
    pub fn of(scenario: &Scenario, plan: &Plan) -> Self {
        let tent_volume = plan.tent.as_ref().map_or(0.0, |t| t.measures.volume_m3);
        Self {
            vents: scenario.vents.clone(),
            shelter_class: scenario.house.shelter_class,
            design_rate: scenario.house.tightness.design_air_changes_per_h(),
            volume_m3: plan.shell.volume_m3,
            tent_opening: scenario.tent.opening,
            open_tent_w_per_k: exchange_w_per_k(tent_volume, OPEN_TENT_AIR_CHANGES),
        }
    }

    /// Leakage at design weather, W/K.
    #[must_use]
    pub fn design_leakage_w_per_k(&self) -> f64 {
        exchange_w_per_k(self.volume_m3, self.design_rate)
    }

    /// Leakage at this house air, W/K.
    #[must_use]
    pub fn leakage_w_per_k(&self, drive: &HourDrive, house_c: f64) -> f64 {
        let rate =
            air_changes_per_h(self.design_rate, self.shelter_class, drive.mast_wind_m_per_s, house_c - drive.outdoor_c);
        exchange_w_per_k(self.volume_m3, rate)
    }

    /// Flows of a shut house: leakage, and what is let in by hand.
    #[must_use]
    pub fn shut(&self, drive: &HourDrive, house_c: f64) -> Flows {
        let tent_open_w_per_k = self.open_tent_w_per_k * drive.tent_open_by_day;
        let leakage_w_per_k = self.leakage_w_per_k(drive, house_c);
        Flows { house_c, leakage_w_per_k, vent_w_per_k: drive.airing_w_per_k, tent_open_w_per_k, ..Flows::default() }
    }

    /// Whether vents, fan or tent move at these temperatures.
    #[must_use]
    pub fn react_at(&self, house_c: f64, tent_c: f64) -> bool {
        let vents = &self.vents;
        (vents.present && house_c > vents.opens_at_c)
            || (vents.fan_present && house_c > vents.fan_starts_at_c)
            || self.tent_share(tent_c) > 0.0
    }

    /// How far vents, fan and tent stand open at these temperatures, each 0 to 1.
    #[must_use]
    pub fn positions(&self, house_c: f64, tent_c: f64, mains: bool) -> [f64; 3] {
        [self.vent_opening(house_c), self.fan_share(house_c, mains), self.tent_share(tent_c)]
    }

    /// All flows at these air temperatures.
    #[must_use]
    pub fn flows(&self, drive: &HourDrive, house_c: f64, tent_c: f64, mains: bool) -> Flows {
        let mut flows = self.shut(drive, house_c);
        if !self.react_at(house_c, tent_c) {
            return flows;
        }
        flows.reacts = true;
        flows.vent_opening = self.vent_opening(house_c);
        flows.fan_share = self.fan_share(house_c, mains);
        let vent_w_per_k = |t_c: f64| drive.airing_w_per_k + flow_w_per_k(self.vent_flow(drive, t_c, mains));
        flows.vent_w_per_k = vent_w_per_k(house_c);
        let steeper = (vent_w_per_k(house_c + SLOPE_STEP_K) - flows.vent_w_per_k) / SLOPE_STEP_K;
        flows.vent_slope_w_per_k = (steeper * (house_c - drive.outdoor_c)).max(0.0);
        if matches!(self.tent_opening, TentOpening::Above(_)) {
            let share = self.tent_share(tent_c);
            flows.tent_open_w_per_k = self.open_tent_w_per_k * share;
            let steeper = (self.tent_share(tent_c + SLOPE_STEP_K) - share) / SLOPE_STEP_K * self.open_tent_w_per_k;
            flows.tent_slope_w_per_k = (steeper * (tent_c - house_c)).max(0.0);
            flows.tent_offset_w = -flows.tent_slope_w_per_k * (tent_c - house_c);
        }
        flows
    }

    fn tent_share(&self, tent_c: f64) -> f64 {
        match self.tent_opening {
            TentOpening::Above(t_c) if self.open_tent_w_per_k > 0.0 => linear_share(tent_c, t_c, t_c + TENT_SPAN_K),
            _ => 0.0,
        }
    }

    fn vent_opening(&self, house_c: f64) -> f64 {
        if self.vents.present { linear_share(house_c, self.vents.opens_at_c, self.vents.full_at_c) } else { 0.0 }
    }

    fn fan_share(&self, house_c: f64, mains: bool) -> f64 {
        if self.vents.fan_present && mains {
            let start = self.vents.fan_starts_at_c;
            linear_share(house_c, start, start + vent::FAN_SPAN_K)
        } else {
            0.0
        }
    }

    /// Flow through vents and fan, m³/s.
    fn vent_flow(&self, drive: &HourDrive, house_c: f64, mains: bool) -> f64 {
        let opening = self.vent_opening(house_c);
        let openings = vent::Openings {
            inlet_m2: self.vents.inlet_area_m2 * opening,
            outlet_m2: self.vents.outlet_area_m2 * opening,
            height_m: self.vents.height_difference_m,
        };
        let stack = vent::stack_flow(vent::DISCHARGE_COEFFICIENT, openings, house_c, drive.outdoor_c);
        let wind = vent::wind_flow(vent::WIND_EFFECTIVENESS, openings, drive.site_wind_m_per_s);
        let fan = self.vents.fan_flow_m3_per_h / 3600.0 * self.fan_share(house_c, mains);
        vent::combined_flow(stack, wind, fan)
    }
}
