//! A power cut: how long air, trays and water hold, and how long the heater takes afterwards.

mod clock;
mod courses;
mod trays;

pub use courses::{AskedCut, CutAt, CutCourse, Measure, asked_cut, courses};

use clock::{Clock, FirstIce, Recovery};
use trays::Trays;

use super::drive::HourDrive;
use super::error::RunError;
use super::house_model::{HouseModel, steps_s};
use super::plan::{Plan, actual_zone};
use super::result::{Hold, POWER_CUT_HOURS, PowerCutTimes};
use super::thermostats::{Heating, zone_nodes};
use crate::model::{Catalogue, HeatTarget, Scenario, Zone};
use crate::physics::step::State;
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
    /// Times to the limits, from its start.
    pub times: PowerCutTimes,
    /// Until the first water begins to freeze; not applicable without water.
    pub water_to_freezing_h: Hold,
    /// From the return of the mains until what the first heater senses is at its setpoint again, with the tolerance of
    /// the hours below setpoint; not applicable without a heater, or where the return is not followed.
    pub recovery_h: Hold,
    /// Step by step, from the start on.
    pub trace: Vec<CutPoint>,
    /// Air of the crop's zone at the end of each hour, °C.
    pub air_c: Vec<f64>,
    /// Trays at the end of each hour, °C; empty without medium.
    pub trays_c: Vec<f64>,
}

/// A moment of a power cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CutPoint {
    /// Hours since its start.
    pub after_h: f64,
    /// Air of the crop's zone, °C.
    pub air_c: f64,
    /// Trays, °C; none without medium.
    pub trays_c: Option<f64>,
}

impl Course {
    /// Lowest air of the crop's zone, °C.
    #[must_use]
    pub fn air_min_c(&self) -> Option<f64> {
        self.trace.iter().map(|point| point.air_c).reduce(f64::min)
    }

    /// Lowest trays, °C; none without medium.
    #[must_use]
    pub fn trays_min_c(&self) -> Option<f64> {
        self.trace.iter().filter_map(|point| point.trays_c).reduce(f64::min)
    }
}

/// Follows the house from a state of the season through `cut_hours` without mains, [`POWER_CUT_HOURS`] at most. Behind
/// a shorter cut it is followed until the heater has caught up, as long again at most. `drive_at` gives hour k after
/// the start, with the hour ending of the clock.
///
/// # Errors
/// As [`HouseModel::new`].
pub fn follow(
    plan: &Plan,
    scenario: &Scenario,
    start: &State,
    cut_hours: usize,
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
    let mut ice = FirstIce::new(start, |state, node| model.water_j(state, node));
    let mut recovery: Option<Recovery> = None;
    let (mut air_c, mut trays_c) = (Vec::new(), Vec::new());
    let point = |after_s: f64, state: &State, trays: Option<&Trays>| CutPoint {
        after_h: after_s / SECONDS_PER_HOUR,
        air_c: state.temperature_c[crop_air],
        trays_c: trays.map(|t| t.now_c),
    };
    let mut passed_s = 0.0;
    let mut trace = vec![point(passed_s, start, trays.as_ref())];
    let longest = if cut_hours < POWER_CUT_HOURS { cut_hours + POWER_CUT_HOURS } else { POWER_CUT_HOURS };
    for k in 0..longest {
        let (drive, hour) = drive_at(k);
        let mains = k >= cut_hours;
        if mains && recovery.is_none() {
            recovery = heating.first().map(|(_, node)| Recovery::new(model.state.temperature_c[node]));
        }
        if mains && recovery.as_ref().is_none_or(Recovery::is_done) {
            break;
        }
        let thermostats = heating.at(hour, mains, false);
        let since_switch = if mains { k - cut_hours } else { k };
        let parts = if since_switch < FINE_HOURS { FINE_PARTS } else { 1 };
        for dt_s in steps_s(&drive).iter().flat_map(|s| (0..parts).map(move |_| s / f64::from(parts))) {
            let done = model.step(&drive, dt_s, thermostats.active(), mains);
            air_clock.advance(dt_s, done.step.end.temperature_c[crop_air]);
            ice.advance(dt_s, &model.state, |state, node| model.water_j(state, node));
            if let (Some(trays), Some(clock)) = (&mut trays, &mut tray_clock) {
                clock.advance(dt_s, trays.step(&done.step.mean_c, &done.step.end.temperature_c, dt_s));
            }
            if let (Some(recovery), Some((heater, node))) = (&mut recovery, heating.first()) {
                let setpoint_c = heater.setpoint_c(f64::from(hour) - 0.5);
                recovery.advance(dt_s, done.step.end.temperature_c[node], setpoint_c);
            }
            passed_s += dt_s;
            trace.push(point(passed_s, &model.state, trays.as_ref()));
        }
        air_c.push(model.state.temperature_c[crop_air]);
        trays_c.extend(trays.as_ref().map(|t| t.now_c));
    }
    Ok(Course {
        times: times(&air_clock, tray_clock.as_ref()),
        water_to_freezing_h: ice.holds(),
        recovery_h: recovery.map_or(Hold::NotApplicable, |recovery| recovery.holds()),
        trace,
        air_c,
        trays_c,
    })
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

fn times(air: &Clock, trays: Option<&Clock>) -> PowerCutTimes {
    let [air_to_crop_limit_h, air_to_freezing_h] = air.holds();
    let [trays_to_crop_limit_h, trays_to_freezing_h] = trays.map_or([Hold::NotApplicable; 2], Clock::holds);
    PowerCutTimes { air_to_crop_limit_h, air_to_freezing_h, trays_to_crop_limit_h, trays_to_freezing_h }
}
