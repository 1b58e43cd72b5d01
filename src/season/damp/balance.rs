//! The vapour of a season: each hour's sources, flows and cold surfaces put together and solved.

use super::water::{BurnerWater, burner_water};
use crate::model::{Catalogue, Scenario};
use crate::physics::condensation::{INNER_RESISTANCE_M2K_PER_W, inner_surface_c, vapour_conductance_m3_per_s};
use crate::physics::moist_air::{EVAPORATION_J_PER_KG, NIGHT_RESISTANCE_S_PER_M, SaturationTable};
use crate::physics::solar::DAY_THRESHOLD_W_PER_M2;
use crate::physics::step::MAX_THERMOSTATS;
use crate::physics::vapour::{DampAir, DampCourse, Face};
use crate::season::drive::{HourDrive, SkinFace};
use crate::season::plan::{Plan, TentPlan};
use crate::season::result::HourlySeries;
use crate::units::{SECONDS_PER_HOUR, kelvin_from_c};
use crate::weather::{Climate, ClimateHour};

/// Steps of an hour, s: one. Two would halve an error that is below 0.02 of humidity in 99 of 100 hours of most houses
/// (0.05 in a tight one), and cost a fiftieth of a season.
const STEPS_S: [f64; 1] = [3600.0];

/// A season whose heat has been run, or whose temperatures are known from elsewhere.
#[derive(Debug, Clone, Copy)]
pub struct DampInputs<'a> {
    /// The scenario, measured.
    pub plan: &'a Plan,
    /// The scenario.
    pub scenario: &'a Scenario,
    /// For the heaters' fuels.
    pub catalogue: &'a Catalogue,
    /// For outdoor vapour and darkness.
    pub climate: &'a Climate,
    /// Records, temperatures of air and floor, heaters and exchange of air are read.
    pub series: &'a HourlySeries,
    /// Hour by hour, as the series.
    pub drives: &'a [HourDrive],
    /// The groups of the skin hour by hour, as the series.
    pub faces: &'a [SkinFace],
}

/// One hour of both zones; all in kg and kg/m³.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct DampHour {
    pub house: DampCourse,
    pub tent: DampCourse,
    /// What saturated air of the house and of the tent holds.
    pub house_saturated: f64,
    pub tent_saturated: f64,
    /// Vapour of the sun's share and of wet beds at night.
    pub evaporated_kg: f64,
    /// Water of flames.
    pub burnt_kg: f64,
    /// What air brought from outdoors and took there.
    pub carried_in_kg: f64,
    pub carried_out_kg: f64,
}

/// What stays the same over the season, and the densities now.
pub(super) struct Balance<'a> {
    inputs: DampInputs<'a>,
    saturation: &'static SaturationTable,
    /// Over ice below 0 °C.
    on_surfaces: &'static SaturationTable,
    /// Wet ground over its resistance: house, tent, m³/s.
    beds_m3_per_s: [f64; 2],
    /// The inner side of each group of the skin, as it was in the last hour.
    skin: Vec<Face>,
    tent_wall_m3_per_s: f64,
    burners: [BurnerWater; MAX_THERMOSTATS],
    /// Densities now: house, tent.
    now: [f64; 2],
}

impl<'a> Balance<'a> {
    pub(super) fn new(inputs: DampInputs<'a>) -> Self {
        let (plan, scenario) = (inputs.plan, inputs.scenario);
        let skin = plan.skin.iter().map(|group| Face {
            conductance_m3_per_s: vapour_conductance_m3_per_s(group.area_m2),
            saturated_kg_per_m3: 0.0,
        });
        let (tent_floor_m2, tent_wall_m2) =
            plan.tent.as_ref().map_or((0.0, 0.0), |t| (t.zone.floor_m2, t.measures.wall_and_top_m2));
        let wet_m2 = [scenario.house.planted_share * plan.house.floor_m2, scenario.tent.planted_share * tent_floor_m2];
        // The memory of a house is shorter than an hour, so that it may begin as outdoors.
        let saturation = SaturationTable::of_air();
        let outdoor = |&record: &usize| outdoor_kg_per_m3(saturation, &inputs.climate.hours[record]);
        let first = inputs.series.record.first().map_or(0.0, outdoor);
        Self {
            inputs,
            saturation,
            on_surfaces: SaturationTable::of_surfaces(),
            beds_m3_per_s: wet_m2.map(|m2| m2 / NIGHT_RESISTANCE_S_PER_M),
            skin: skin.collect(),
            tent_wall_m3_per_s: vapour_conductance_m3_per_s(tent_wall_m2),
            burners: burner_water(scenario, inputs.catalogue),
            now: [first; 2],
        }
    }

    /// Vapour in house and tent now, kg.
    pub(super) fn stored_kg(&self) -> f64 {
        let plan = self.inputs.plan;
        let tent_m3 = plan.tent.as_ref().map_or(0.0, |t| t.zone.volume_m3);
        plan.house.volume_m3 * self.now[0] + tent_m3 * self.now[1]
    }

    /// Steps through hour `k` of the season.
    pub(super) fn advance(&mut self, k: usize) -> DampHour {
        let DampInputs { plan, climate, series: s, drives, faces, .. } = self.inputs;
        let (saturation, weather, drive) = (self.saturation, &climate.hours[s.record[k]], &drives[k]);
        let on_surfaces = self.on_surfaces;
        let outdoor = outdoor_kg_per_m3(saturation, weather);
        let outdoor_m3_per_s = s.air_exchange_m3_per_h[k] / SECONDS_PER_HOUR;
        let night = weather.global_w_per_m2 <= DAY_THRESHOLD_W_PER_M2;
        let burnt_kg_per_s = self.burnt_kg_per_s(s.heater_w[k], s.standby_w[k]);
        let sun_kg_per_s = [drive.house_sun.vapour_w, drive.tent_sun.vapour_w].map(|w| w / EVAPORATION_J_PER_KG);

        let house_c = s.house_air_c[k];
        let groups = plan.skin.len();
        wet_skin(on_surfaces, &mut self.skin, house_c, &faces[k * groups..(k + 1) * groups]);
        let house = DampAir {
            volume_m3: plan.house.volume_m3,
            gain_kg_per_s: sun_kg_per_s[0] + burnt_kg_per_s[0] + outdoor_m3_per_s * outdoor,
            outflow_m3_per_s: outdoor_m3_per_s,
            bed: bed(on_surfaces, self.beds_m3_per_s[0], s.house_floor_c[k], night),
            surfaces: &self.skin,
            most_kg_per_m3: saturation.kg_per_m3(house_c),
        };
        let mut hour = DampHour { house_saturated: house.most_kg_per_m3, ..DampHour::default() };
        if let Some(tent_plan) = &plan.tent {
            let tent_c = s.tent_air_c[k];
            let wall = [self.tent_wall(tent_plan, drive, tent_c, house_c)];
            let tent = DampAir {
                volume_m3: tent_plan.zone.volume_m3,
                gain_kg_per_s: sun_kg_per_s[1] + burnt_kg_per_s[1],
                outflow_m3_per_s: 0.0,
                bed: bed(on_surfaces, self.beds_m3_per_s[1], s.tent_floor_c[k], night),
                surfaces: &wall,
                most_kg_per_m3: saturation.kg_per_m3(tent_c),
            };
            let exchange_m3_per_s = s.tent_exchange_m3_per_h[k] / SECONDS_PER_HOUR;
            [hour.house, hour.tent] = house.advance_beside(&tent, exchange_m3_per_s, self.now, &STEPS_S);
            hour.tent_saturated = tent.most_kg_per_m3;
        } else {
            hour.house = house.advance(self.now[0], &STEPS_S);
        }
        self.now = [hour.house.end_kg_per_m3, hour.tent.end_kg_per_m3];
        hour.evaporated_kg =
            (sun_kg_per_s[0] + sun_kg_per_s[1]) * SECONDS_PER_HOUR + hour.house.evaporated_kg + hour.tent.evaporated_kg;
        hour.burnt_kg = (burnt_kg_per_s[0] + burnt_kg_per_s[1]) * SECONDS_PER_HOUR;
        hour.carried_in_kg = outdoor_m3_per_s * outdoor * SECONDS_PER_HOUR;
        hour.carried_out_kg = outdoor_m3_per_s * hour.house.mean_kg_per_m3 * SECONDS_PER_HOUR;
        hour
    }

    /// Water of flames in house and tent, kg/s.
    fn burnt_kg_per_s(&self, first_w: f64, standby_w: f64) -> [f64; 2] {
        let mut zones = [0.0; 2];
        for (burner, w) in self.burners.iter().zip([first_w, standby_w]) {
            zones[usize::from(burner.in_tent)] += burner.kg_per_j * w;
        }
        zones
    }

    /// The inner side of the tent's wall and top.
    fn tent_wall(&self, tent: &TentPlan, drive: &HourDrive, tent_c: f64, house_c: f64) -> Face {
        let u = (drive.tent_wall_w_per_k - tent.exchange_w_per_k) / tent.measures.wall_and_top_m2;
        let t_c = inner_surface_c(tent_c, house_c, u, INNER_RESISTANCE_M2K_PER_W);
        Face { conductance_m3_per_s: self.tent_wall_m3_per_s, saturated_kg_per_m3: self.on_surfaces.kg_per_m3(t_c) }
    }
}

/// Gives the inner side of each group of the skin its temperature in this hour.
fn wet_skin(on_surfaces: &SaturationTable, skin: &mut [Face], house_c: f64, faces: &[SkinFace]) {
    for (inner, face) in skin.iter_mut().zip(faces) {
        let t_c = inner_surface_c(house_c, face.felt_c, face.u_w_per_m2k, INNER_RESISTANCE_M2K_PER_W);
        inner.saturated_kg_per_m3 = on_surfaces.kg_per_m3(t_c);
    }
}

/// Wet ground and plants; they give by night what the sun's share of vapour is by day.
fn bed(on_surfaces: &SaturationTable, conductance_m3_per_s: f64, floor_c: f64, night: bool) -> Face {
    if !night || conductance_m3_per_s <= 0.0 {
        return Face::default();
    }
    Face { conductance_m3_per_s, saturated_kg_per_m3: on_surfaces.kg_per_m3(floor_c) }
}

/// Vapour in outdoor air, kg/m³: that of saturated air at its dew point, at the same pressure as warm as outdoors.
fn outdoor_kg_per_m3(saturation: &SaturationTable, hour: &ClimateHour) -> f64 {
    saturation.kg_per_m3(hour.dew_point_c) * kelvin_from_c(hour.dew_point_c) / kelvin_from_c(hour.outdoor_c)
}
