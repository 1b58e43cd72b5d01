//! What one hour of weather does to a planned house: conductances of the skin, sun in each node, boundaries.

use super::plan::Plan;
use crate::model::{BehindPartyWall, Drawn, NightCover, Scenario, TentOpening};
use crate::physics::air::exchange_w_per_k;
use crate::physics::radiation::{radiative_coefficient, sky_equivalent_c};
use crate::physics::skin::{outer_coefficient, resistance_in_wind, site_wind_m_per_s};
use crate::physics::solar::{DAY_THRESHOLD_W_PER_M2, PassedLight, ZoneShares};
use crate::units::within_clock_span;
use crate::weather::{Climate, ClimateHour};

/// Sun that one zone's nodes take, W.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ZoneSun {
    /// To the air.
    pub air_w: f64,
    /// To floor and benches.
    pub floor_w: f64,
    /// To the water.
    pub water_w: f64,
    /// Into vapour.
    pub vapour_w: f64,
}

impl ZoneSun {
    fn new(kept_w: f64, shares: &ZoneShares) -> Self {
        Self {
            air_w: kept_w * shares.air,
            floor_w: kept_w * shares.floor,
            water_w: kept_w * shares.water,
            vapour_w: kept_w * shares.vapour,
        }
    }

    /// Everything that stays in the zone, vapour included, W.
    #[must_use]
    pub fn kept_w(&self) -> f64 {
        self.air_w + self.floor_w + self.water_w + self.vapour_w
    }
}

/// One hour, ready for the network.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HourDrive {
    /// Outdoor air, °C.
    pub outdoor_c: f64,
    /// Wind at the mast, m/s.
    pub mast_wind_m_per_s: f64,
    /// Wind at the house, m/s.
    pub site_wind_m_per_s: f64,
    /// Skin, W/K.
    pub skin_w_per_k: f64,
    /// Skin conductance times the temperature that it feels, W.
    pub skin_source_w: f64,
    /// Deep ground, °C.
    pub deep_ground_c: f64,
    /// Behind the party wall, °C.
    pub behind_party_wall_c: f64,
    /// Tent wall and top with the tent's steady air exchange, W/K.
    pub tent_wall_w_per_k: f64,
    /// Share that a tent that is opened by day stands open: 0 or 1, between them in the mean of several hours.
    pub tent_open_by_day: f64,
    /// Sun in the house.
    pub house_sun: ZoneSun,
    /// Sun in the tent.
    pub tent_sun: ZoneSun,
    /// Outdoor air let in on purpose in the morning, W/K.
    pub airing_w_per_k: f64,
    /// No sun in this hour nor in the one before.
    pub after_dark: bool,
}

/// One group of the skin in one hour.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SkinFace {
    /// With the night cover as it stands, W/(m²·K).
    pub u_w_per_m2k: f64,
    /// Outdoor temperature that it feels, °C.
    pub felt_c: f64,
}

/// Air changes in the hour in which a house is aired by hand, per hour: a door and a vent ajar. A modelling choice.
pub const MORNING_AIRING_PER_H: f64 = 10.0;
/// Clock hour ending of that hour: from eight to nine, when plants are wettest and the sun begins to help.
pub const MORNING_AIRING_HOUR: u32 = 9;

/// What a scenario adds to its plan for reading the weather.
#[derive(Debug, Clone, Copy)]
pub struct DriveSettings {
    shelter_class: u32,
    behind_party_wall: BehindPartyWall,
    opened_by_day: bool,
    airing_w_per_k: f64,
}

impl DriveSettings {
    /// Reads them from a scenario.
    #[must_use]
    pub fn of(scenario: &Scenario) -> Self {
        Self {
            shelter_class: scenario.house.shelter_class,
            behind_party_wall: scenario.house.behind_party_wall,
            opened_by_day: scenario.tent.opening == TentOpening::ByDay,
            airing_w_per_k: 0.0,
        }
    }

    /// With the house aired for an hour every morning, by hand: [`MORNING_AIRING_PER_H`] changes of its air.
    #[must_use]
    pub fn with_morning_airing(self, plan: &Plan) -> Self {
        Self { airing_w_per_k: exchange_w_per_k(plan.shell.volume_m3, MORNING_AIRING_PER_H), ..self }
    }
}

impl HourDrive {
    /// The hour at this index of the weather year; the year wraps.
    #[must_use]
    pub fn new(plan: &Plan, settings: DriveSettings, climate: &Climate, record: usize) -> Self {
        Self::with_faces(plan, settings, climate, record, |_| ())
    }

    /// As [`HourDrive::new`]; `take` is given the groups of the skin in the order of the plan.
    #[must_use]
    pub fn with_faces(
        plan: &Plan,
        settings: DriveSettings,
        climate: &Climate,
        record: usize,
        take: impl FnMut(SkinFace),
    ) -> Self {
        let hour = &climate.hours[record];
        let by_day = hour.global_w_per_m2 > DAY_THRESHOLD_W_PER_M2;
        let cover_drawn = plan.night_cover.is_some_and(|drawn| is_drawn(drawn, hour, by_day));
        let tent_cover_drawn = plan.tent_night_cover.is_some_and(|drawn| is_drawn(drawn, hour, by_day));
        let site_wind = site_wind_m_per_s(hour.wind_m_per_s, settings.shelter_class);
        let (skin_w_per_k, skin_source_w) = skin(plan, hour, site_wind, cover_drawn, take);
        let (house_sun, tent_sun) = sun(plan, hour, cover_drawn, tent_cover_drawn);
        Self {
            outdoor_c: hour.outdoor_c,
            mast_wind_m_per_s: hour.wind_m_per_s,
            site_wind_m_per_s: site_wind,
            skin_w_per_k,
            skin_source_w,
            deep_ground_c: climate.deep_ground_c.get(record).copied().unwrap_or(hour.outdoor_c),
            behind_party_wall_c: match settings.behind_party_wall {
                BehindPartyWall::Outdoors => hour.outdoor_c,
                BehindPartyWall::HeldAt(t_c) => t_c,
            },
            tent_wall_w_per_k: tent_wall_w_per_k(plan, tent_cover_drawn),
            tent_open_by_day: if settings.opened_by_day && by_day { 1.0 } else { 0.0 },
            house_sun,
            tent_sun,
            airing_w_per_k: if hour.hour == MORNING_AIRING_HOUR { settings.airing_w_per_k } else { 0.0 },
            after_dark: hour.global_w_per_m2 <= 0.0 && climate.before(record).global_w_per_m2 <= 0.0,
        }
    }
}

impl HourDrive {
    /// Sun that warms house and tent: what stays, less what leaves as vapour, W.
    #[must_use]
    pub fn warming_sun_w(&self) -> f64 {
        [&self.house_sun, &self.tent_sun].iter().map(|sun| sun.kept_w() - sun.vapour_w).sum()
    }

    /// Mean of several hours; of none, all zeros.
    #[must_use]
    pub fn mean(hours: &[Self]) -> Self {
        let share = if hours.is_empty() { 0.0 } else { 1.0 / hours.len() as f64 };
        let mut sum = Self::default();
        for hour in hours {
            sum.outdoor_c += share * hour.outdoor_c;
            sum.mast_wind_m_per_s += share * hour.mast_wind_m_per_s;
            sum.site_wind_m_per_s += share * hour.site_wind_m_per_s;
            sum.skin_w_per_k += share * hour.skin_w_per_k;
            sum.skin_source_w += share * hour.skin_source_w;
            sum.deep_ground_c += share * hour.deep_ground_c;
            sum.behind_party_wall_c += share * hour.behind_party_wall_c;
            sum.tent_wall_w_per_k += share * hour.tent_wall_w_per_k;
            sum.tent_open_by_day += share * hour.tent_open_by_day;
            sum.airing_w_per_k += share * hour.airing_w_per_k;
            for (to, from) in [(&mut sum.house_sun, &hour.house_sun), (&mut sum.tent_sun, &hour.tent_sun)] {
                to.air_w += share * from.air_w;
                to.floor_w += share * from.floor_w;
                to.water_w += share * from.water_w;
                to.vapour_w += share * from.vapour_w;
            }
        }
        sum
    }
}

/// These hours of the weather year, and the groups of the skin in each of them, hour after hour.
#[must_use]
pub fn drives_of(
    plan: &Plan,
    settings: DriveSettings,
    climate: &Climate,
    records: impl ExactSizeIterator<Item = usize>,
) -> (Vec<HourDrive>, Vec<SkinFace>) {
    let mut faces = Vec::with_capacity(records.len() * plan.skin.len());
    let drives = records.map(|record| HourDrive::with_faces(plan, settings, climate, record, |face| faces.push(face)));
    (drives.collect(), faces)
}

/// Conductance of tent wall and top with the steady air exchange, W/K; zero without a tent.
#[must_use]
pub fn tent_wall_w_per_k(plan: &Plan, cover_drawn: bool) -> f64 {
    plan.tent.as_ref().map_or(0.0, |tent| {
        let night = if cover_drawn { tent.night_resistance } else { 0.0 };
        tent.measures.wall_and_top_m2 / (tent.resistance + night) + tent.exchange_w_per_k
    })
}

/// Whether a night cover is drawn in an hour.
#[must_use]
pub fn cover_is_drawn(cover: &NightCover, hour: &ClimateHour) -> bool {
    cover.present && is_drawn(cover.drawn, hour, hour.global_w_per_m2 > DAY_THRESHOLD_W_PER_M2)
}

fn is_drawn(drawn: Drawn, hour: &ClimateHour, by_day: bool) -> bool {
    match drawn {
        Drawn::BySun => !by_day,
        Drawn::Between { from_hour, to_hour } => within_clock_span(f64::from(hour.hour) - 0.5, from_hour, to_hour),
    }
}

/// Conductance of the skin and that times the temperature that it feels.
fn skin(
    plan: &Plan,
    hour: &ClimateHour,
    site_wind: f64,
    cover_drawn: bool,
    mut take: impl FnMut(SkinFace),
) -> (f64, f64) {
    let h_r = radiative_coefficient(hour.outdoor_c, hour.sky_c);
    let h_e = outer_coefficient(site_wind, h_r);
    let mut sum = (0.0, 0.0);
    for group in &plan.skin {
        let night = if cover_drawn { group.night_resistance } else { 0.0 };
        let u = 1.0 / (resistance_in_wind(group.resistance, site_wind, h_r) + night);
        let sky_share = group.sky_area_m2 / group.area_m2;
        let felt_c = sky_equivalent_c(hour.outdoor_c, hour.sky_c, sky_share, h_r, h_e);
        sum.0 += u * group.area_m2;
        sum.1 += u * group.area_m2 * felt_c;
        take(SkinFace { u_w_per_m2k: u, felt_c });
    }
    sum
}

/// Sun that stays in house and tent.
fn sun(plan: &Plan, hour: &ClimateHour, cover_drawn: bool, tent_cover_drawn: bool) -> (ZoneSun, ZoneSun) {
    if hour.global_w_per_m2 <= 0.0 && hour.diffuse_w_per_m2 <= 0.0 {
        return (ZoneSun::default(), ZoneSun::default());
    }
    let mut passed = PassedLight::default();
    for facet in &plan.light {
        let plane = hour.on_plane(facet.normal);
        let transmittance = if cover_drawn { facet.night_transmittance } else { facet.transmittance };
        passed.add(facet.area_m2, transmittance, plane.beam, plane.diffuse, plane.cos_incidence);
    }
    let level = hour.on_plane([0.0, 0.0, 1.0]);
    let kept = passed.kept_w(plan.catch, plan.shell.floor_m2, level.beam, level.diffuse);
    let tent_kept = plan
        .tent
        .as_ref()
        .map_or(0.0, |tent| kept * if tent_cover_drawn { tent.night_sun_share } else { tent.sun_share });
    let tent_sun = plan.tent.as_ref().map_or(ZoneSun::default(), |tent| ZoneSun::new(tent_kept, &tent.zone.sun));
    (ZoneSun::new(kept - tent_kept, &plan.house.sun), tent_sun)
}
