//! One hour of the house: its steps put together into hourly means and flows.

use super::drive::HourDrive;
use super::house_model::{HouseModel, HouseStep, steps_s};
use super::layout::ZoneNodes;
use super::thermostats::HourThermostats;
use crate::physics::network::NodeValues;
use crate::physics::step::MAX_THERMOSTATS;
use crate::units::SECONDS_PER_HOUR;

/// Means over one hour. Losses are positive outwards, W.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HourMeans {
    /// Mean temperature of each node, °C.
    pub mean_c: NodeValues,
    /// First and standby heater, W.
    pub heater_w: [f64; MAX_THERMOSTATS],
    /// Through the skin.
    pub skin_loss_w: f64,
    /// By leakage.
    pub leakage_loss_w: f64,
    /// Through vents and fan.
    pub vent_loss_w: f64,
    /// Edge and core.
    pub ground_loss_w: f64,
    /// Through a party wall.
    pub party_wall_loss_w: f64,
    /// From the tent to the house.
    pub tent_loss_w: f64,
    /// From the water in the house to its air.
    pub house_water_heat_w: f64,
    /// From the water in the tent to its air.
    pub tent_water_heat_w: f64,
    /// Sum of all flows that come in across the boundaries, sun and heaters not among them; never negative.
    pub boundary_inflow_w: f64,
    /// Share that the vents stand open.
    pub vent_opening: f64,
    /// Share of the fan's full speed.
    pub fan_share: f64,
    /// Air that leakage, vents and fan change with outdoors, by the heat that it carries, W/K.
    pub air_exchange_w_per_k: f64,
    /// Air that the tent changes with the house through flaps and opening, W/K.
    pub tent_exchange_w_per_k: f64,
    /// Heat taken up by all stores.
    pub store_change_w: f64,
}

/// Longest step in which vents, fan or tent begin or cease to open, s. A step takes their flow at its mean temperature,
/// which a flow that begins within the step is far from: steps of 40 minutes miss hourly means by 0.15 K.
const OPENING_STEP_S: f64 = 900.0;

/// Runs one hour. Each of its steps is cut into `refine` equal parts (1 as a rule), and into short ones where vents, fan
/// or tent begin or cease to open.
pub fn run_hour(
    model: &mut HouseModel,
    drive: &HourDrive,
    thermostats: &HourThermostats,
    mains: bool,
    refine: u32,
) -> HourMeans {
    let before_j = model.enthalpy_j();
    let mut hour = HourMeans::default();
    let mut powers = [0.0; MAX_THERMOSTATS];
    let mut add = |model: &HouseModel, done: &HouseStep, dt_s: f64| {
        add_step(&mut hour, model, drive, done, dt_s / SECONDS_PER_HOUR);
        for (sum, w) in powers.iter_mut().zip(&done.step.heater_w) {
            *sum += w * dt_s / SECONDS_PER_HOUR;
        }
    };
    for step_s in steps_s(drive) {
        let dt_s = step_s / f64::from(refine);
        for _ in 0..refine {
            let start = model.state;
            let whole = model.step(drive, dt_s, thermostats.active(), mains);
            if dt_s > OPENING_STEP_S && model.moved_openings(&start, mains) {
                model.state = start;
                let parts = (dt_s / OPENING_STEP_S).ceil();
                for _ in 0..parts as usize {
                    let part = model.step(drive, dt_s / parts, thermostats.active(), mains);
                    add(model, &part, dt_s / parts);
                }
            } else {
                add(model, &whole, dt_s);
            }
        }
    }
    hour.heater_w = thermostats.by_heater(&powers);
    hour.store_change_w = (model.enthalpy_j() - before_j) / SECONDS_PER_HOUR;
    add_constant_flows(&mut hour, model, drive);
    hour
}

/// Adds what depends on the step's own flows.
fn add_step(hour: &mut HourMeans, model: &HouseModel, drive: &HourDrive, done: &HouseStep, share: f64) {
    let (mean, flows) = (&done.step.mean_c, &done.flows);
    for (sum, t) in hour.mean_c.iter_mut().zip(mean) {
        *sum += share * t;
    }
    let house_c = mean[model.plan.layout.house.air];
    let difference_k = house_c - drive.outdoor_c;
    hour.leakage_loss_w += share * flows.leakage_w_per_k * difference_k;
    // What the slope adds is the linearised part of the same flow, so that the books close to rounding.
    let slope_w = flows.vent_slope_w_per_k * (house_c - flows.house_c);
    hour.vent_loss_w += share * (flows.vent_w_per_k * difference_k + slope_w);
    hour.air_exchange_w_per_k += share * (flows.leakage_w_per_k + flows.vent_w_per_k);
    hour.vent_opening += share * flows.vent_opening;
    hour.fan_share += share * flows.fan_share;
    if let Some(tent) = model.plan.layout.tent {
        hour.tent_exchange_w_per_k += share * flows.tent_open_w_per_k;
        let open = flows.tent_open_w_per_k + flows.tent_slope_w_per_k;
        hour.tent_loss_w += share * (open * (mean[tent.air] - house_c) + flows.tent_offset_w);
    }
}

/// Heat from a zone's water to its air; none without water.
fn water_heat_w(mean_c: &NodeValues, nodes: &ZoneNodes, to_air_w_per_k: f64) -> f64 {
    nodes.water.map_or(0.0, |water| to_air_w_per_k * (mean_c[water] - mean_c[nodes.air]))
}

/// Adds the flows whose conductance is the same all hour.
fn add_constant_flows(hour: &mut HourMeans, model: &HouseModel, drive: &HourDrive) {
    let plan = model.plan;
    let (house_c, floor_c) = (hour.mean_c[plan.layout.house.air], hour.mean_c[plan.layout.house.floor]);
    hour.skin_loss_w = drive.skin_w_per_k * house_c - drive.skin_source_w;
    hour.house_water_heat_w = water_heat_w(&hour.mean_c, &plan.layout.house, plan.house.water_to_air_w_per_k);
    hour.party_wall_loss_w = plan.party_w_per_k * (house_c - drive.behind_party_wall_c);
    let edge_w = plan.edge_w_per_k * (floor_c - drive.outdoor_c);
    let mut core_w = plan.core_w_per_k * (floor_c - drive.deep_ground_c);
    if let (Some(nodes), Some(tent)) = (plan.layout.tent, &plan.tent) {
        let (tent_c, base_c) = (hour.mean_c[nodes.air], hour.mean_c[nodes.floor]);
        hour.tent_exchange_w_per_k += tent.exchange_w_per_k;
        hour.tent_water_heat_w = water_heat_w(&hour.mean_c, &nodes, tent.zone.water_to_air_w_per_k);
        core_w += tent.core_w_per_k * (base_c - drive.deep_ground_c);
        hour.tent_loss_w += drive.tent_wall_w_per_k * (tent_c - house_c) + tent.base_w_per_k * (base_c - house_c);
    }
    hour.ground_loss_w = edge_w + core_w;
    let boundary = [hour.skin_loss_w, hour.leakage_loss_w, hour.vent_loss_w, edge_w, core_w, hour.party_wall_loss_w];
    hour.boundary_inflow_w = boundary.iter().map(|w| (-w).max(0.0)).sum();
}
