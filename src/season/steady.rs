//! Steady two-zone loads: the degree-hour bracket and the design load.

use super::drive::{HourDrive, tent_wall_w_per_k};
use super::house_model::{HouseModel, closed_tolerance_k};
use super::openings::Flows;
use super::plan::Plan;
use super::thermostats::Heating;
use crate::model::{BehindPartyWall, Scenario};
use crate::units::HOURS_PER_DAY;

/// Most rounds in which leakage and house air find each other; each gains about two digits.
const LEAKAGE_ROUNDS: usize = 4;

/// Heat of the scenario without stores: hour by hour, and day by day as if stores carried a whole day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bracket {
    /// Day by day, kWh.
    pub low_kwh: f64,
    /// Hour by hour, kWh.
    pub high_kwh: f64,
}

/// The bracket of a season's hours; `None` without a heater or with hours in which the first heater is off.
/// `clock` is the hour ending of each drive.
#[must_use]
pub fn bracket(model: &mut HouseModel, heating: &Heating, drives: &[HourDrive], clock: &[u32]) -> Option<Bracket> {
    let (heater, node) = heating.first()?;
    let setpoints: Option<Vec<f64>> = clock.iter().map(|&hour| heater.setpoint_c(f64::from(hour) - 0.5)).collect();
    let setpoints = setpoints?;
    let mut sums = Bracket { low_kwh: 0.0, high_kwh: 0.0 };
    let mut house_c = setpoints.first().copied().unwrap_or(0.0);
    let mut outdoor_c = drives.first().map_or(0.0, |drive| drive.outdoor_c);
    for (day, day_setpoints) in drives.chunks(HOURS_PER_DAY).zip(setpoints.chunks(HOURS_PER_DAY)) {
        for (drive, setpoint_c) in day.iter().zip(day_setpoints) {
            // A house round a heated tent follows the outdoor air.
            house_c += drive.outdoor_c - outdoor_c;
            outdoor_c = drive.outdoor_c;
            sums.high_kwh += shut_load_w(model, drive, node, *setpoint_c, &mut house_c) / 1000.0;
        }
        let mean_setpoint_c = day_setpoints.iter().sum::<f64>() / day_setpoints.len() as f64;
        let day_load_w = shut_load_w(model, &HourDrive::mean(day), node, mean_setpoint_c, &mut house_c);
        sums.low_kwh += day_load_w * day.len() as f64 / 1000.0;
    }
    Some(sums)
}

/// Steady load with vents shut, W. `house_c` is the house air to begin with and becomes that of this load.
fn shut_load_w(model: &mut HouseModel, drive: &HourDrive, node: usize, setpoint_c: f64, house_c: &mut f64) -> f64 {
    let house_air = model.plan.layout.house.air;
    let mut load_w = 0.0;
    for _ in 0..LEAKAGE_ROUNDS {
        let assumed_c = if node == house_air { setpoint_c } else { *house_c };
        let flows = model.openings().shut(drive, assumed_c);
        let (temperatures, w) = model.steady_load(drive, &flows, node, setpoint_c);
        (*house_c, load_w) = (temperatures[house_air], w);
        if (*house_c - assumed_c).abs() <= closed_tolerance_k(drive, &flows) {
            break;
        }
    }
    load_w
}

/// A house held in design weather: what it gives to whom, so that the load can be added up again.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DesignBalance {
    /// Heat that holding takes, W; zero where nothing has to be held.
    pub load_w: f64,
    /// What is held, °C.
    pub held_c: f64,
    /// Outdoor air, °C.
    pub outdoor_c: f64,
    /// Deep ground, °C.
    pub deep_ground_c: f64,
    /// Behind a lean-to's party wall, °C.
    pub behind_party_wall_c: f64,
    /// House air, °C.
    pub house_air_c: f64,
    /// Floor of the house, °C.
    pub house_floor_c: f64,
    /// Tent air, °C; that of the house without a tent.
    pub tent_air_c: f64,
    /// Floor of the tent, °C; that of the house without a tent.
    pub tent_floor_c: f64,
    /// Skin, night covers drawn, W/K.
    pub skin_w_per_k: f64,
    /// Leakage, W/K.
    pub leakage_w_per_k: f64,
    /// Tent wall and top, night cover drawn, with the tent's steady air exchange, W/K.
    pub tent_wall_w_per_k: f64,
}

/// The balance at a design outdoor temperature: handbook U and air changes, no wind or sky correction, no sun, night
/// covers drawn, tent shut, the first heater's higher setpoint (without a heater the crop's wanted air), deep ground at
/// its yearly minimum.
#[must_use]
pub fn design_balance(
    model: &mut HouseModel,
    heating: &Heating,
    scenario: &Scenario,
    outdoor_c: f64,
    deep_ground_min_c: f64,
) -> DesignBalance {
    let layout = model.plan.layout;
    let crop_air = super::thermostats::zone_nodes(&layout, scenario.crop.zone).air;
    let (node, held_c) = match heating.first() {
        Some((heater, node)) => match heater.higher_setpoint_c() {
            Some(setpoint_c) => (node, setpoint_c),
            None => return DesignBalance { outdoor_c, ..DesignBalance::default() },
        },
        None => (crop_air, scenario.crop.wanted_air_c),
    };
    let drive = design_drive(model.plan, scenario, outdoor_c, deep_ground_min_c);
    let leakage_w_per_k = model.openings().design_leakage_w_per_k();
    let flows = Flows { leakage_w_per_k, ..Flows::default() };
    let (temperatures, load_w) = model.steady_load(&drive, &flows, node, held_c);
    DesignBalance {
        load_w,
        held_c,
        outdoor_c,
        deep_ground_c: drive.deep_ground_c,
        behind_party_wall_c: drive.behind_party_wall_c,
        house_air_c: temperatures[layout.house.air],
        house_floor_c: temperatures[layout.house.floor],
        tent_air_c: temperatures[layout.tent.unwrap_or(layout.house).air],
        tent_floor_c: temperatures[layout.tent.unwrap_or(layout.house).floor],
        skin_w_per_k: drive.skin_w_per_k,
        leakage_w_per_k,
        tent_wall_w_per_k: drive.tent_wall_w_per_k,
    }
}

fn design_drive(plan: &Plan, scenario: &Scenario, outdoor_c: f64, deep_ground_c: f64) -> HourDrive {
    let skin_w_per_k: f64 = plan.skin.iter().map(|g| g.area_m2 / (g.resistance + g.night_resistance)).sum();
    HourDrive {
        outdoor_c,
        skin_w_per_k,
        skin_source_w: skin_w_per_k * outdoor_c,
        deep_ground_c,
        behind_party_wall_c: match scenario.house.behind_party_wall {
            BehindPartyWall::Outdoors => outdoor_c,
            BehindPartyWall::HeldAt(t_c) => t_c,
        },
        tent_wall_w_per_k: tent_wall_w_per_k(plan, true),
        ..HourDrive::default()
    }
}
