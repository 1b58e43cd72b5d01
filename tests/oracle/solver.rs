//! The season in forward Euler steps of two seconds: each lump takes up what flows into it, and nothing else.
//!
//! The lightest air node has a time constant above twenty seconds with its vents wide open and of several minutes shut,
//! so that the error of such a step is far below the bar of 0.1 K.

use crate::house::{AIR, Hour, Lumps, ZoneLumps};
use crate::skin::within;
use crate::sky::Ground;
use warmfold::model::{Catalogue, HeatTarget, Heater, Scenario, Study, TentOpening, Zone};
use warmfold::weather::WeatherYear;

const STEPS_PER_HOUR: usize = 1800;
const DT_S: f64 = 3600.0 / STEPS_PER_HOUR as f64;
/// Days before the season, and how many of them are heated.
const AHEAD_DAYS: usize = 30;
const HEATED_DAYS: usize = 3;
const WATER_J_PER_KGK: f64 = 4186.0;
const ICE_J_PER_KGK: f64 = 2100.0;
const FUSION_J_PER_KG: f64 = 334_000.0;

/// Hourly means of one zone.
#[derive(Clone, Copy, Default)]
pub struct ZoneMeans {
    pub air_c: f64,
    pub floor_c: f64,
    pub water_c: f64,
    /// At the end of the hour.
    pub ice_share: f64,
}

/// One hour's outcome.
#[derive(Clone, Copy, Default)]
pub struct HourOutcome {
    pub house: ZoneMeans,
    pub tent: ZoneMeans,
    pub heater_w: [f64; 2],
    pub vent_loss_w: f64,
}

/// A zone in motion; the water's enthalpy is counted from liquid at 0 °C.
#[derive(Clone, Copy, Default)]
struct Zoned {
    air_c: f64,
    floor_c: f64,
    water_j: f64,
}

/// Watts into a zone's lumps.
#[derive(Clone, Copy, Default)]
struct Inflow {
    air: f64,
    floor: f64,
    water: f64,
}

pub fn run(study: &Study, scenario: &Scenario, year: &WeatherYear, rows: &Catalogue) -> Vec<HourOutcome> {
    let lumps = Lumps::of(scenario, rows);
    let ground = Ground::of(year);
    let count = year.records.len();
    let find =
        |month, day| year.records.iter().position(|r| (r.month, r.day) == (month, day)).expect("a day of the year");
    let first = find(study.season.from_month, study.season.from_day);
    let last = find(study.season.to_month, study.season.to_day) + 24;
    let hours = if last > first { last - first } else { last + count - first };
    let ahead = AHEAD_DAYS * 24;
    let record = |k: usize| (first + count + k - ahead) % count;

    let start_c = (0..24).map(|k| year.records[record(k)].dry_bulb_c).sum::<f64>() / 24.0;
    let begin = |zone: &ZoneLumps| Zoned {
        air_c: start_c,
        floor_c: start_c,
        water_j: zone.water_kg * WATER_J_PER_KGK * start_c.max(0.0),
    };
    let mut zones = [begin(&lumps.house), lumps.tent.as_ref().map_or(Zoned::default(), begin)];
    let mut outcomes = Vec::with_capacity(hours);
    for k in 0..ahead + hours {
        let hour = lumps.hour(scenario, rows, year, &ground, record(k));
        let mid_hour = f64::from(year.records[record(k)].hour) - 0.5;
        let heated = k >= ahead - HEATED_DAYS * 24;
        let setpoints =
            [&scenario.heater, &scenario.standby].map(|h| if heated { setpoint(h, mid_hour) } else { None });
        let mut sum = HourOutcome::default();
        for _ in 0..STEPS_PER_HOUR {
            step(scenario, &lumps, &hour, setpoints, &mut zones, &mut sum);
        }
        sum.house.ice_share = ice_share(&lumps.house, &zones[0]);
        sum.tent.ice_share = lumps.tent.as_ref().map_or(0.0, |t| ice_share(t, &zones[1]));
        if k >= ahead {
            outcomes.push(sum);
        }
    }
    outcomes
}

fn setpoint(heater: &Heater, mid_hour: f64) -> Option<f64> {
    let day = within(mid_hour, heater.day_from_hour, heater.day_to_hour);
    let wanted = if day { heater.setpoint_day_c } else { heater.setpoint_night_c };
    wanted.filter(|_| heater.present)
}

fn step(
    scenario: &Scenario,
    lumps: &Lumps,
    hour: &Hour,
    setpoints: [Option<f64>; 2],
    zones: &mut [Zoned; 2],
    sum: &mut HourOutcome,
) {
    if let Some(tent) = lumps.tent.as_ref().filter(|t| t.floor == 0.0) {
        // A bench without medium stores nothing: it takes the temperature at which what comes in goes out.
        let (to_tent, to_house) = (tent.floor_to_air, lumps.tent_base);
        zones[1].floor_c =
            (to_tent * zones[1].air_c + to_house * zones[0].air_c + hour.sun[1][1]) / (to_tent + to_house);
    }
    let house_c = zones[0].air_c;
    let vent = AIR * vent_flow(scenario, hour, house_c) * (house_c - hour.outdoor_c);
    let mut flows = [0, 1].map(|z| {
        let zone = if z == 0 { Some(&lumps.house) } else { lumps.tent.as_ref() };
        zone.map_or(Inflow::default(), |lumps| within_zone(lumps, &zones[z], hour, hour.sun[z]))
    });
    let leakage = AIR * lumps.gross_m3 * air_changes(scenario, hour, house_c - hour.outdoor_c) / 3600.0;
    flows[0].air += hour.skin_source - hour.skin * house_c - vent - leakage * (house_c - hour.outdoor_c)
        + lumps.party * (hour.behind_c - house_c);
    if lumps.tent.is_some() {
        let open = AIR * lumps.tent_m3 * 20.0 / 3600.0 * tent_opening(scenario, hour, zones[1].air_c);
        let wall = (hour.tent_wall + open) * (zones[1].air_c - house_c);
        let base = lumps.tent_base * (zones[1].floor_c - house_c);
        flows[0].air += wall + base;
        flows[1].air -= wall;
        flows[1].floor -= base;
    }
    for (i, heater) in [&scenario.heater, &scenario.standby].into_iter().enumerate() {
        if let Some(setpoint_c) = setpoints[i] {
            let watts = heat(scenario, lumps, heater, setpoint_c, zones, &mut flows);
            sum.heater_w[i] += watts / STEPS_PER_HOUR as f64;
        }
    }
    sum.vent_loss_w += vent / STEPS_PER_HOUR as f64;
    let means = [&mut sum.house, &mut sum.tent];
    for ((zone, means), (state, flow)) in
        [Some(&lumps.house), lumps.tent.as_ref()].into_iter().zip(means).zip(zones.iter_mut().zip(flows))
    {
        if let Some(zone) = zone {
            let before = *state;
            state.air_c += flow.air * DT_S / zone.air;
            state.floor_c += if zone.floor > 0.0 { flow.floor * DT_S / zone.floor } else { 0.0 };
            state.water_j += flow.water * DT_S;
            let share = 0.5 / STEPS_PER_HOUR as f64;
            means.air_c += share * (before.air_c + state.air_c);
            means.floor_c += share * (before.floor_c + state.floor_c);
            means.water_c += share * (water_c(zone, &before) + water_c(zone, state));
        }
    }
}

/// What flows between the lumps of a zone, with its sun and its ground.
fn within_zone(zone: &ZoneLumps, state: &Zoned, hour: &Hour, sun: [f64; 3]) -> Inflow {
    let floor = zone.floor_to_air * (state.floor_c - state.air_c);
    let water = zone.water_to_air * (water_c(zone, state) - state.air_c);
    let edge = zone.edge * (state.floor_c - hour.outdoor_c);
    let core = zone.core * (state.floor_c - hour.ground_c);
    Inflow { air: floor + water + sun[0], floor: sun[1] - floor - edge - core, water: sun[2] - water }
}

/// The power that ends the step at the setpoint, as far as the heater is able to.
fn heat(
    scenario: &Scenario,
    lumps: &Lumps,
    heater: &Heater,
    setpoint_c: f64,
    zones: &[Zoned; 2],
    flows: &mut [Inflow; 2],
) -> f64 {
    let place = usize::from(scenario.tent.present && heater.zone == Zone::Tent);
    let zone = if place == 0 { &lumps.house } else { lumps.tent.as_ref().expect("a tent") };
    let (state, flow) = (&zones[place], &mut flows[place]);
    let (missing_j, into) = match heater.target {
        HeatTarget::Air => (zone.air * (setpoint_c - state.air_c), &mut flow.air),
        HeatTarget::Bench => (zone.floor * (setpoint_c - state.floor_c), &mut flow.floor),
        HeatTarget::Water => (zone.water_kg * WATER_J_PER_KGK * setpoint_c - state.water_j, &mut flow.water),
    };
    let watts = (missing_j / DT_S - *into).clamp(0.0, heater.rated_w);
    *into += watts;
    watts
}

fn water_c(zone: &ZoneLumps, state: &Zoned) -> f64 {
    if zone.water_kg == 0.0 {
        return 0.0;
    }
    let per_kg = state.water_j / zone.water_kg;
    if per_kg > 0.0 { per_kg / WATER_J_PER_KGK } else { ((per_kg + FUSION_J_PER_KG) / ICE_J_PER_KGK).min(0.0) }
}

fn ice_share(zone: &ZoneLumps, state: &Zoned) -> f64 {
    if zone.water_kg > 0.0 { (-state.water_j / zone.water_kg / FUSION_J_PER_KG).clamp(0.0, 1.0) } else { 0.0 }
}

/// Leakage, 1/h.
fn air_changes(scenario: &Scenario, hour: &Hour, difference_k: f64) -> f64 {
    let by_wind = [0.000_319, 0.000_246, 0.000_174, 0.000_104, 0.000_032];
    let pull =
        |difference_k: f64, class: usize, wind: f64| 0.000_145 * difference_k.abs() + by_wind[class] * wind * wind;
    let now = pull(difference_k, scenario.house.shelter_class as usize - 1, hour.mast_wind);
    scenario.house.tightness.design_air_changes_per_h() * (now / pull(20.0, 0, 6.7)).sqrt()
}

/// Air through vents and fan, m³/s.
fn vent_flow(scenario: &Scenario, hour: &Hour, house_c: f64) -> f64 {
    let vents = &scenario.vents;
    let ramp = |from: f64, to: f64| ((house_c - from) / (to - from)).clamp(0.0, 1.0);
    let opening = if vents.present { ramp(vents.opens_at_c, vents.full_at_c) } else { 0.0 };
    let fan = if vents.fan_present { ramp(vents.fan_starts_at_c, vents.fan_starts_at_c + 2.0) } else { 0.0 };
    let fan_flow = fan * vents.fan_flow_m3_per_h / 3600.0;
    let (low, high) = (opening * vents.inlet_area_m2, opening * vents.outlet_area_m2);
    let mut stack = 0.0;
    if low > 0.0 && high > 0.0 {
        let area = (1.0 / (1.0 / (low * low) + 1.0 / (high * high))).sqrt();
        let warmth = (house_c - hour.outdoor_c).abs() / (hour.outdoor_c + 273.15);
        stack = 0.65 * area * (2.0 * 9.81 * vents.height_difference_m * warmth).sqrt();
    }
    // A single opening takes wind by itself.
    let smaller = if low > 0.0 && high > 0.0 { low.min(high) } else { low.max(high) };
    let wind = 0.25 * smaller * hour.site_wind;
    (stack * stack + wind * wind + fan_flow * fan_flow).sqrt()
}

fn tent_opening(scenario: &Scenario, hour: &Hour, tent_c: f64) -> f64 {
    match scenario.tent.opening {
        TentOpening::Never => 0.0,
        TentOpening::ByDay => f64::from(u8::from(hour.daylight)),
        TentOpening::Above(from_c) => ((tent_c - from_c) / 2.0).clamp(0.0, 1.0),
    }
}
