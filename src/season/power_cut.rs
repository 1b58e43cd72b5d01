//! A power cut in the coldest twelve hours: how long air and trays hold.

use super::drive::HourDrive;
use super::error::RunError;
use super::house_model::{HouseModel, steps_s};
use super::plan::{Plan, actual_zone};
use super::result::{Hold, POWER_CUT_HOURS, PowerCutTimes};
use super::thermostats::{Heating, zone_nodes};
use crate::model::{Catalogue, HeatTarget, Scenario, TentBase, Zone};
use crate::physics::step::State;
use crate::physics::stores::{MEDIUM_CAPACITY, TRAY_TO_AIR};
use crate::units::SECONDS_PER_HOUR;

/// Hours whose mean outdoor temperature decides where a power cut starts.
pub const COLDEST_SPELL_HOURS: usize = 12;
/// First hours that are stepped finely: a light house loses most of its warmth in minutes.
const FINE_HOURS: usize = 6;
/// Parts that each step is cut into in those hours.
const FINE_PARTS: u32 = 6;

/// First of the consecutive hours with the lowest mean.
#[must_use]
pub fn coldest_spell_start(outdoor_c: &[f64]) -> usize {
    let span = COLDEST_SPELL_HOURS.min(outdoor_c.len());
    let sums = outdoor_c.windows(span.max(1)).map(|w| w.iter().sum::<f64>());
    sums.enumerate().min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |(start, _)| start)
}

/// Course of a power cut.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Times to the limits.
    pub times: PowerCutTimes,
    /// Air of the crop's zone at the end of each hour, °C.
    pub air_c: Vec<f64>,
    /// Trays at the end of each hour, °C; empty without medium.
    pub trays_c: Vec<f64>,
}

/// Follows the house without mains from a state of the season; `drive_at` gives hour k after the start, with the hour
/// ending of the clock.
///
/// # Errors
/// As [`HouseModel::new`].
pub fn follow(
    plan: &Plan,
    scenario: &Scenario,
    start: &State,
    drive_at: &dyn Fn(usize) -> (HourDrive, u32),
) -> Result<Course, RunError> {
    let mut model = HouseModel::new(plan, scenario, 0.0)?;
    model.state = *start;
    let heating = Heating::of(scenario, &plan.layout)?;
    let crop_air = zone_nodes(&plan.layout, actual_zone(scenario.crop.zone, scenario)).air;
    let mut trays = Trays::of(scenario, plan, start);
    let limit_c = scenario.crop.limit_c;
    let mut air_clock = Clock::new(start.temperature_c[crop_air], limit_c);
    let mut tray_clock = trays.as_ref().map(|t| Clock::new(t.now_c, limit_c));
    let mut course = Course { times: no_times(), air_c: Vec::new(), trays_c: Vec::new() };
    for k in 0..POWER_CUT_HOURS {
        let (drive, hour) = drive_at(k);
        let thermostats = heating.at(hour, false, false);
        let parts = if k < FINE_HOURS { FINE_PARTS } else { 1 };
        for dt_s in steps_s(&drive).iter().flat_map(|s| (0..parts).map(move |_| s / f64::from(parts))) {
            let done = model.step(&drive, dt_s, thermostats.active(), false);
            air_clock.advance(dt_s, done.step.end.temperature_c[crop_air]);
            if let (Some(trays), Some(clock)) = (&mut trays, &mut tray_clock) {
                clock.advance(dt_s, trays.step(&done.step.mean_c, &done.step.end.temperature_c, dt_s));
            }
        }
        course.air_c.push(model.state.temperature_c[crop_air]);
        course.trays_c.extend(trays.as_ref().map(|t| t.now_c));
    }
    course.times = times(&air_clock, tray_clock.as_ref());
    Ok(course)
}

/// The state of a plan carried over to the same scenario with its vessels taken away.
///
/// # Errors
/// As [`Plan::new`].
pub fn without_vessels(
    scenario: &Scenario,
    catalogue: &Catalogue,
    plan: &Plan,
    state: &State,
) -> Result<(Scenario, Plan, State), RunError> {
    let mut dry = scenario.clone();
    dry.water.present = false;
    for heater in [&mut dry.heater, &mut dry.standby] {
        heater.present &= heater.target != HeatTarget::Water;
    }
    let dry_plan = Plan::new(&dry, catalogue)?;
    let mut dry_state = *state;
    for zone in [Zone::House, Zone::Tent] {
        let (from, to) = (zone_nodes(&plan.layout, zone), zone_nodes(&dry_plan.layout, zone));
        dry_state.temperature_c[to.air] = state.temperature_c[from.air];
        dry_state.temperature_c[to.floor] = state.temperature_c[from.floor];
    }
    dry_state.ice_share = [0.0; crate::physics::network::MAX_NODES];
    Ok((dry, dry_plan, dry_state))
}

/// The potting medium: a hung tent's bench store, elsewhere a body of its own depth beside the balance.
struct Trays {
    now_c: f64,
    air_node: usize,
    /// Node that is the trays themselves.
    store_node: Option<usize>,
    /// 1/s.
    rate: f64,
}

impl Trays {
    fn of(scenario: &Scenario, plan: &Plan, start: &State) -> Option<Self> {
        let bench = &scenario.bench;
        if !bench.present || bench.medium_depth_m <= 0.0 {
            return None;
        }
        let zone = actual_zone(bench.zone, scenario);
        let nodes = zone_nodes(&plan.layout, zone);
        let hung = zone == Zone::Tent && scenario.tent.base != TentBase::Floor;
        Some(Self {
            now_c: start.temperature_c[nodes.floor],
            air_node: nodes.air,
            store_node: hung.then_some(nodes.floor),
            rate: TRAY_TO_AIR / (bench.medium_depth_m * MEDIUM_CAPACITY),
        })
    }

    fn step(&mut self, mean_c: &[f64], end_c: &[f64], dt_s: f64) -> f64 {
        self.now_c = match self.store_node {
            Some(node) => end_c[node],
            None => {
                let air_c = mean_c[self.air_node];
                air_c + (self.now_c - air_c) * (-self.rate * dt_s).exp()
            }
        };
        self.now_c
    }
}

/// Watches one temperature fall through its limits.
struct Clock {
    passed_s: f64,
    now_c: f64,
    limits: [(f64, Option<f64>); 2],
}

impl Clock {
    fn new(start_c: f64, crop_limit_c: f64) -> Self {
        let limit = |limit_c: f64| (limit_c, (start_c < limit_c).then_some(0.0));
        Self { passed_s: 0.0, now_c: start_c, limits: [limit(crop_limit_c), limit(0.0)] }
    }

    fn advance(&mut self, dt_s: f64, t_c: f64) {
        for (limit_c, reached) in &mut self.limits {
            if reached.is_none() && t_c < *limit_c {
                let share = (self.now_c - *limit_c) / (self.now_c - t_c);
                *reached = Some((self.passed_s + share * dt_s) / SECONDS_PER_HOUR);
            }
        }
        self.passed_s += dt_s;
        self.now_c = t_c;
    }

    fn holds(&self) -> [Hold; 2] {
        self.limits.map(|(_, reached)| reached.map_or(Hold::Beyond, Hold::Hours))
    }
}

fn times(air: &Clock, trays: Option<&Clock>) -> PowerCutTimes {
    let [air_to_crop_limit_h, air_to_freezing_h] = air.holds();
    let [trays_to_crop_limit_h, trays_to_freezing_h] = trays.map_or([Hold::NotApplicable; 2], Clock::holds);
    PowerCutTimes { air_to_crop_limit_h, air_to_freezing_h, trays_to_crop_limit_h, trays_to_freezing_h }
}

fn no_times() -> PowerCutTimes {
    PowerCutTimes {
        air_to_crop_limit_h: Hold::NotApplicable,
        air_to_freezing_h: Hold::NotApplicable,
        trays_to_crop_limit_h: Hold::NotApplicable,
        trays_to_freezing_h: Hold::NotApplicable,
    }
}
