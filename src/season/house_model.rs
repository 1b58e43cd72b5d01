//! The plant house as a network: sets each hour's boundaries, finds the flows that depend on the temperatures
//! themselves (leakage, vents, fan, tent opening), and steps.

use super::drive::HourDrive;
use super::error::RunError;
use super::layout::TentLinks;
use super::openings::{Flows, Openings};
use super::plan::Plan;
use crate::model::Scenario;
use crate::physics::network::NodeValues;
use crate::physics::step::{State, Step, Stepper, Thermostat};

/// Parts of an hour that one step covers, s: short at first, where the hour's new weather strikes.
pub const DAY_STEPS_S: [f64; 3] = [600.0, 1200.0, 1800.0];
/// The same for hours without sun, whose weather changes less.
pub const NIGHT_STEPS_S: [f64; 2] = [1200.0, 2400.0];

/// Steps of an hour: it takes the shorter ones while there is sun, or was in the hour before.
#[must_use]
pub fn steps_s(drive: &HourDrive) -> &'static [f64] {
    if drive.after_dark { &NIGHT_STEPS_S } else { &DAY_STEPS_S }
}

/// Rounds of the iteration before a step is taken as it is.
const MOST_ROUNDS: usize = 30;
/// What a wrong assumption of the air temperature may change the computed one by, K, while nothing is open.
const CLOSED_EFFECT_K: f64 = 0.02;
/// The same while vents, fan or tent react to it.
const OPEN_TOLERANCE_K: f64 = 0.005;

/// Move of vents, fan or tent within one step that is far, as share of their whole way.
const FAR_MOVE: f64 = 0.25;

/// A house in motion.
pub struct HouseModel<'a> {
    /// What stays the same.
    pub plan: &'a Plan,
    openings: Openings,
    stepper: Stepper,
    tent_links: Option<TentLinks>,
    /// Temperatures and ice now.
    pub state: State,
    /// Steps whose iteration did not come to rest.
    pub restless_steps: usize,
}

/// One step of the house.
#[derive(Debug, Clone, Copy)]
pub struct HouseStep {
    /// Of the network.
    pub step: Step,
    /// Flows that depend on temperature, as they were in that step.
    pub flows: Flows,
}

impl<'a> HouseModel<'a> {
    /// A house at one temperature.
    ///
    /// # Errors
    /// Never for a plan made by [`Plan::new`]; a network that cannot be laid out reads as a season without hours.
    pub fn new(plan: &'a Plan, scenario: &Scenario, start_c: f64) -> Result<Self, RunError> {
        let (mut network, tent_links) =
            plan.layout.network(&plan.house, plan.tent.as_ref().map(|t| &t.zone)).ok_or(RunError::EmptySeason)?;
        let state = State::uniform(&network, start_c);
        if let (Some(links), Some(tent)) = (tent_links, &plan.tent) {
            network.set_link(links.base, tent.base_w_per_k);
        }
        let (openings, stepper) = (Openings::of(scenario, plan), Stepper::new(network));
        Ok(Self { plan, openings, stepper, tent_links, state, restless_steps: 0 })
    }

    /// Heat of all nodes above 0 °C, J.
    #[must_use]
    pub fn enthalpy_j(&self) -> f64 {
        let network = self.stepper.network();
        (0..network.len()).map(|node| self.state.enthalpy_j(network, node)).sum()
    }

    /// Heat of a node with water above liquid water at 0 °C in a state, J; none of a node without water.
    #[must_use]
    pub fn water_j(&self, state: &State, node: usize) -> Option<f64> {
        let layout = &self.plan.layout;
        let is_water = layout.house.water == Some(node) || layout.tent.is_some_and(|tent| tent.water == Some(node));
        is_water.then(|| state.enthalpy_j(self.stepper.network(), node))
    }

    /// Steps the house through `dt_s` seconds of an hour; the fan stops without mains.
    pub fn step(&mut self, drive: &HourDrive, dt_s: f64, thermostats: &[Thermostat], mains: bool) -> HouseStep {
        let (house_air, tent_air) = self.air_nodes();
        let mut assumed = Assumed::new(self.state.temperature_c[house_air], self.state.temperature_c[tent_air]);
        let mut round = 0;
        loop {
            let flows = self.openings.flows(drive, assumed.house.value, assumed.tent.value, mains);
            self.apply(drive, &flows);
            let step = self.stepper.advance_switching(&self.state, dt_s, thermostats);
            let (house_c, tent_c) = (step.mean_c[house_air], step.mean_c[tent_air]);
            let reacts = flows.reacts || self.openings.react_at(house_c, tent_c);
            round += 1;
            let settled = if reacts {
                assumed.within(house_c, tent_c, OPEN_TOLERANCE_K)
            } else {
                (assumed.house.value - house_c).abs() <= closed_tolerance_k(drive, &flows)
            };
            if settled || round == MOST_ROUNDS {
                self.restless_steps += usize::from(!settled);
                self.state = step.end;
                return HouseStep { step, flows };
            }
            assumed.house.narrow(house_c);
            assumed.tent.narrow(tent_c);
        }
    }

    /// Whether vents, fan or tent have begun or ceased to open since an earlier state, or have moved far.
    #[must_use]
    pub fn moved_openings(&self, before: &State, mains: bool) -> bool {
        let (house, tent) = self.air_nodes();
        let at = |t_c: &NodeValues| self.openings.positions(t_c[house], t_c[tent], mains);
        let (then, now) = (at(&before.temperature_c), at(&self.state.temperature_c));
        then.iter().zip(&now).any(|(a, b)| (*a > 0.0) != (*b > 0.0) || (a - b).abs() > FAR_MOVE)
    }

    /// Air nodes of house and tent; the house's twice without a tent.
    fn air_nodes(&self) -> (usize, usize) {
        let house = self.plan.layout.house.air;
        (house, self.plan.layout.tent.map_or(house, |t| t.air))
    }

    fn apply(&mut self, drive: &HourDrive, flows: &Flows) {
        let plan = self.plan;
        let (house, outdoor_c) = (plan.layout.house, drive.outdoor_c);
        let network = self.stepper.network_mut();
        let outdoor_w_per_k = flows.leakage_w_per_k + flows.vent_w_per_k;
        let mut air_source =
            drive.skin_source_w + outdoor_w_per_k * outdoor_c + plan.party_w_per_k * drive.behind_party_wall_c;
        air_source += drive.house_sun.air_w + flows.vent_slope_w_per_k * flows.house_c + flows.tent_offset_w;
        let air_boundary = drive.skin_w_per_k + outdoor_w_per_k + plan.party_w_per_k + flows.vent_slope_w_per_k;
        network.set_node(house.air, air_boundary, air_source);
        network.set_node(
            house.floor,
            plan.edge_w_per_k + plan.core_w_per_k,
            plan.edge_w_per_k * outdoor_c + plan.core_w_per_k * drive.deep_ground_c + drive.house_sun.floor_w,
        );
        if let Some(water) = house.water {
            network.set_node(water, 0.0, drive.house_sun.water_w);
        }
        if let (Some(nodes), Some(links), Some(tent)) = (plan.layout.tent, self.tent_links, &plan.tent) {
            network.set_link(links.wall, drive.tent_wall_w_per_k + flows.tent_open_w_per_k + flows.tent_slope_w_per_k);
            network.set_node(nodes.air, 0.0, drive.tent_sun.air_w - flows.tent_offset_w);
            let core = tent.core_w_per_k;
            network.set_node(nodes.floor, core, core * drive.deep_ground_c + drive.tent_sun.floor_w);
            if let Some(water) = nodes.water {
                network.set_node(water, 0.0, drive.tent_sun.water_w);
            }
        }
    }

    /// Steady temperatures in this hour with one node held, and the heat that holding takes, W (never below zero).
    #[must_use]
    pub fn steady_load(&mut self, drive: &HourDrive, flows: &Flows, node: usize, setpoint_c: f64) -> (NodeValues, f64) {
        let (temperatures, surplus_w) = self.steady_surplus(drive, flows, node, setpoint_c);
        (temperatures, (-surplus_w).max(0.0))
    }

    /// Steady temperatures in this hour with one node held, and the heat that has to be taken from it for that, W;
    /// below zero where it has to be given.
    #[must_use]
    pub fn steady_surplus(&mut self, drive: &HourDrive, flows: &Flows, node: usize, held_c: f64) -> (NodeValues, f64) {
        self.apply(drive, flows);
        let temperatures = self.stepper.steady(&[(node, held_c)]);
        let surplus_w = self.stepper.network().net_flow_w(node, &temperatures);
        (temperatures, surplus_w)
    }

    /// The openings, for steady loads.
    #[must_use]
    pub fn openings(&self) -> &Openings {
        &self.openings
    }
}

/// How far the assumed house air may be from the computed one while nothing is open, K.
///
/// Leakage grows at most with the square root of the difference, so an error δ of the assumption moves the air by at
/// most `δ/2 × UA_leakage/UA_skin`.
#[must_use]
pub fn closed_tolerance_k(drive: &HourDrive, flows: &Flows) -> f64 {
    let effect = flows.leakage_w_per_k / 2.0 / drive.skin_w_per_k;
    CLOSED_EFFECT_K / effect.max(CLOSED_EFFECT_K / LARGEST_TOLERANCE_K)
}

/// Largest tolerance, K, however tight the house is.
const LARGEST_TOLERANCE_K: f64 = 1.0;

/// Assumed mean air temperatures of a step, each with the range that its true value must lie in.
struct Assumed {
    house: Bracket,
    tent: Bracket,
}

impl Assumed {
    fn new(house_c: f64, tent_c: f64) -> Self {
        Self { house: Bracket::new(house_c), tent: Bracket::new(tent_c) }
    }

    fn within(&self, house_c: f64, tent_c: f64, tolerance_k: f64) -> bool {
        (self.house.value - house_c).abs() <= tolerance_k && (self.tent.value - tent_c).abs() <= tolerance_k
    }
}

/// A value that is sought between two bounds: what the computation answers to it tells on which side the truth lies.
struct Bracket {
    value: f64,
    low: f64,
    high: f64,
}

impl Bracket {
    fn new(value: f64) -> Self {
        Self { value, low: f64::NEG_INFINITY, high: f64::INFINITY }
    }

    fn narrow(&mut self, answer: f64) {
        if answer > self.value {
            self.low = self.value;
        } else if answer < self.value {
            self.high = self.value;
        } else {
            // At rest while the other unknown still moves: nothing is learnt of either side.
            return;
        }
        if self.high - self.low < OPEN_TOLERANCE_K / 10.0 {
            // The other unknown has moved the root out of the range: begin anew.
            *self = Self::new(answer);
        } else if self.low < answer && answer < self.high {
            self.value = answer;
        } else {
            self.value = f64::midpoint(self.low, self.high);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unknown_at_rest_stays_where_it_is() {
        let mut bracket = Bracket::new(5.0);
        bracket.narrow(5.0);
        assert_eq!(bracket.value, 5.0);
        bracket.narrow(7.0);
        assert_eq!((bracket.value, bracket.low), (7.0, 5.0));
    }

    #[test]
    fn bisection_takes_over_where_answers_overshoot() {
        let mut bracket = Bracket::new(0.0);
        bracket.narrow(8.0);
        bracket.narrow(-4.0);
        assert_eq!(bracket.value, 4.0, "the middle of 0 and 8");
    }
}
