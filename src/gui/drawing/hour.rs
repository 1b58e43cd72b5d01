//! What the hour under the time cursor brings to the drawing.

use crate::gui::board::Season;
use crate::model::Scenario;
use crate::season::drive::cover_is_drawn;

/// Temperatures, flows and openings of one hour; nothing before the first result. Losses are positive outwards, W.
#[derive(Debug, Clone, Copy, Default)]
pub struct Hour {
    /// Outdoor air, °C.
    pub outdoor_c: Option<f64>,
    /// Wind at the station, m/s.
    pub wind_m_per_s: Option<f64>,
    /// House air, °C.
    pub house_c: Option<f64>,
    /// Floor and benches of the house, °C.
    pub house_floor_c: Option<f64>,
    /// Tent air, °C.
    pub tent_c: Option<f64>,
    /// Floor and benches of the tent, °C.
    pub tent_floor_c: Option<f64>,
    /// Water in the house, °C.
    pub house_water_c: Option<f64>,
    /// Water in the tent, °C.
    pub tent_water_c: Option<f64>,
    /// Share of the house's water that is ice.
    pub house_ice_share: f64,
    /// Share of the tent's water that is ice.
    pub tent_ice_share: f64,
    /// First heater.
    pub heater_w: f64,
    /// Standby heater.
    pub standby_w: f64,
    /// First heater, share of its rated output.
    pub heater_share: f64,
    /// Standby heater, share of its rated output.
    pub standby_share: f64,
    /// Sun that stays.
    pub sun_w: f64,
    /// Through the skin.
    pub skin_w: f64,
    /// By leakage.
    pub leakage_w: f64,
    /// Through vents and fan.
    pub vent_w: f64,
    /// Into the ground.
    pub ground_w: f64,
    /// Through the party wall.
    pub party_wall_w: f64,
    /// From the tent to the house.
    pub tent_w: f64,
    /// From the house's water to its air.
    pub house_water_w: f64,
    /// From the tent's water to its air.
    pub tent_water_w: f64,
    /// Share that the vents stand open.
    pub vent_opening: f64,
    /// Air changed with outdoors, m³/h.
    pub air_exchange_m3_per_h: f64,
    /// Towards the sun: east, north, up; none while it is down.
    pub sun: Option<[f64; 3]>,
    /// Whether the night cover of the house is drawn.
    pub cover_drawn: bool,
    /// Whether the night cover of the tent is drawn.
    pub tent_cover_drawn: bool,
}

impl Hour {
    /// Hour `hour` of a season of this scenario.
    #[must_use]
    pub fn of(season: &Season, scenario: &Scenario, hour: usize) -> Self {
        let h = &season.run.hours;
        let known = |column: &[f64]| column.get(hour).copied().filter(|v| v.is_finite());
        let get = |column: &[f64]| known(column).unwrap_or(0.0);
        let weather = h.record.get(hour).and_then(|record| season.climate.hours.get(*record));
        let share = |watts: f64, rated_w: f64| if rated_w > 0.0 { watts / rated_w } else { 0.0 };
        Self {
            outdoor_c: known(&h.outdoor_c),
            wind_m_per_s: weather.map(|w| w.wind_m_per_s),
            house_c: known(&h.house_air_c),
            house_floor_c: known(&h.house_floor_c),
            tent_c: known(&h.tent_air_c),
            tent_floor_c: known(&h.tent_floor_c),
            house_water_c: known(&h.house_water_c),
            tent_water_c: known(&h.tent_water_c),
            house_ice_share: get(&h.house_ice_share),
            tent_ice_share: get(&h.tent_ice_share),
            heater_w: get(&h.heater_w),
            standby_w: get(&h.standby_w),
            heater_share: share(get(&h.heater_w), scenario.heater.rated_w),
            standby_share: share(get(&h.standby_w), scenario.standby.rated_w),
            sun_w: get(&h.sun_w),
            skin_w: get(&h.skin_loss_w),
            leakage_w: get(&h.leakage_loss_w),
            vent_w: get(&h.vent_loss_w),
            ground_w: get(&h.ground_loss_w),
            party_wall_w: get(&h.party_wall_loss_w),
            tent_w: get(&h.tent_loss_w),
            house_water_w: get(&h.house_water_heat_w),
            tent_water_w: get(&h.tent_water_heat_w),
            vent_opening: get(&h.vent_opening),
            air_exchange_m3_per_h: get(&h.air_exchange_m3_per_h),
            sun: weather.filter(|w| w.global_w_per_m2 > 5.0).map(|w| w.sun),
            cover_drawn: weather.is_some_and(|w| cover_is_drawn(&scenario.night_cover, w)),
            tent_cover_drawn: scenario.tent.present
                && weather.is_some_and(|w| cover_is_drawn(&scenario.tent.night_cover, w)),
        }
    }
}
