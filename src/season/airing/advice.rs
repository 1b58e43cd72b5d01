//! Openings and fan for the season's sunniest mild hour, beside what the house has and what the trade's rules say.
//!
//! The balance is steady, as if that hour lasted: stores take nothing, which is on the safe side.

use super::sunny_hour::sunniest_mild_hour;
use crate::model::Scenario;
use crate::physics::air::flow_m3_per_h;
use crate::physics::vent_sizing::{
    FAN_AIR_CHANGES_PER_H, FAN_M3_PER_S_M2, VENT_PER_FLOOR, equal_openings_m2, flow_for_changes, flow_for_surplus,
};
use crate::season::drive::HourDrive;
use crate::season::house_model::HouseModel;
use crate::season::result::{HourStamp, HourlySeries};
use crate::units::SECONDS_PER_HOUR;
use crate::weather::Climate;
use serde::Serialize;

/// The sunniest mild hour in figures. Field names are JSON keys; a rise is that of house air over outdoor air.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct AirAdvice {
    /// The hour.
    pub sunny_hour_at: HourStamp,
    /// Its place in the season.
    #[serde(skip)]
    pub hour: usize,
    /// Outdoor air, °C.
    pub outdoor_c: f64,
    /// Wind at the house, m/s.
    pub site_wind_m_per_s: f64,
    /// Sun that warms house and tent: what stays, less what leaves as vapour, W.
    pub warming_sun_w: f64,
    /// House air of the season in that hour, °C, stores and vents as they are.
    pub house_air_c: f64,
    /// Rise with everything shut, were the hour to last, K.
    pub rise_shut_k: f64,
    /// The same with vents and fan as they are, K.
    pub rise_as_it_is_k: f64,
    /// Air that vents and fan move then, m³/h.
    pub flow_as_it_is_m3_per_h: f64,
    /// Rise that the grower allows, K.
    pub allowed_rise_k: f64,
    /// Air that vents or a fan must move to keep to it, leakage not among it, m³/h.
    pub flow_needed_m3_per_h: f64,
    /// Low openings, and as large high ones, for that in still air, m²; none where they lie at one height.
    pub openings_still_m2: Option<f64>,
    /// The same in the hour's own wind, m².
    pub openings_windy_m2: Option<f64>,
    /// Openings at the roof, and again at the sides, by the trade's rule, m²: from.
    pub rule_openings_from_m2: f64,
    /// To.
    pub rule_openings_to_m2: f64,
    /// Fan by the rule of one air change a minute, m³/h.
    pub rule_fan_by_volume_m3_per_h: f64,
    /// Fan by the rule of 8 cfm/ft² of floor, m³/h.
    pub rule_fan_by_floor_m3_per_h: f64,
}

impl AirAdvice {
    /// Fan by the trade's two rules, the lower one first, m³/h.
    #[must_use]
    pub fn rule_fan_m3_per_h(&self) -> [f64; 2] {
        let (a, b) = (self.rule_fan_by_volume_m3_per_h, self.rule_fan_by_floor_m3_per_h);
        [a.min(b), a.max(b)]
    }

    /// Works the hour out; none in a season without sun.
    pub(in crate::season) fn of(
        model: &mut HouseModel,
        scenario: &Scenario,
        series: &HourlySeries,
        drives: &[HourDrive],
        climate: &Climate,
    ) -> Option<Self> {
        let hour = sunniest_mild_hour(series, drives, climate)?;
        let drive = drives.get(hour)?;
        let (floor_m2, volume_m3) = (model.plan.shell.floor_m2, model.plan.shell.volume_m3);
        let allowed_k = scenario.vents.allowed_rise_k;
        let warm_c = drive.outdoor_c + allowed_k;
        let flow = flow_for_surplus(surplus_shut_w(model, drive, warm_c), allowed_k);
        let openings =
            |wind| equal_openings_m2(flow, scenario.vents.height_difference_m, warm_c, drive.outdoor_c, wind);
        let rise_as_it_is_k = steady_rise_k(model, drive, true);
        let own_w_per_k = vents_w_per_k(model, drive, drive.outdoor_c + rise_as_it_is_k);
        Some(Self {
            sunny_hour_at: series.stamp(hour, climate)?,
            hour,
            outdoor_c: drive.outdoor_c,
            site_wind_m_per_s: drive.site_wind_m_per_s,
            warming_sun_w: drive.warming_sun_w(),
            house_air_c: *series.house_air_c.get(hour)?,
            rise_shut_k: steady_rise_k(model, drive, false),
            rise_as_it_is_k,
            flow_as_it_is_m3_per_h: flow_m3_per_h(own_w_per_k),
            allowed_rise_k: allowed_k,
            flow_needed_m3_per_h: flow * SECONDS_PER_HOUR,
            openings_still_m2: openings(0.0),
            openings_windy_m2: openings(drive.site_wind_m_per_s),
            rule_openings_from_m2: VENT_PER_FLOOR.start() * floor_m2,
            rule_openings_to_m2: VENT_PER_FLOOR.end() * floor_m2,
            rule_fan_by_volume_m3_per_h: flow_for_changes(volume_m3, FAN_AIR_CHANGES_PER_H) * SECONDS_PER_HOUR,
            rule_fan_by_floor_m3_per_h: FAN_M3_PER_S_M2 * floor_m2 * SECONDS_PER_HOUR,
        })
    }
}

/// Range in which a steady rise is sought, K: a clear sky can keep an empty house below outdoors.
const RISES_K: (f64, f64) = (-30.0, 200.0);
/// Halvings of that range: to a ten-thousandth of a kelvin.
const HALVINGS: usize = 21;

/// Heat that has to leave the house air by vents to keep it at this temperature, W; below zero where it is too cold.
fn surplus_shut_w(model: &mut HouseModel, drive: &HourDrive, house_c: f64) -> f64 {
    let flows = model.openings().shut(drive, house_c);
    let air = model.plan.layout.house.air;
    model.steady_surplus(drive, &flows, air, house_c).1
}

/// What vents and fan carry at this house air, W/K. The tent's opening has no part in it.
fn vents_w_per_k(model: &HouseModel, drive: &HourDrive, house_c: f64) -> f64 {
    model.openings().flows(drive, house_c, house_c, true).vent_w_per_k
}

/// Rise at which the house loses what the sun brings, K; the hotter it is the more it loses, so that halving finds it.
fn steady_rise_k(model: &mut HouseModel, drive: &HourDrive, open: bool) -> f64 {
    let (mut low_k, mut high_k) = RISES_K;
    for _ in 0..HALVINGS {
        let rise_k = f64::midpoint(low_k, high_k);
        let house_c = drive.outdoor_c + rise_k;
        let vents_w = if open { vents_w_per_k(model, drive, house_c) * rise_k } else { 0.0 };
        if surplus_shut_w(model, drive, house_c) > vents_w {
            low_k = rise_k;
        } else {
            high_k = rise_k;
        }
    }
    f64::midpoint(low_k, high_k)
}
