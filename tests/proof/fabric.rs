//! A sunny house of light or heavy fabric through a year in Denver, beside what detailed programs make of it.

use serde::Deserialize;
use warmfold::physics::air::{exchange_w_per_k, flow_w_per_k};
use warmfold::physics::network::{Network, Node};
use warmfold::physics::radiation::{radiative_coefficient, sky_equivalent_c};
use warmfold::physics::skin::{outer_coefficient, resistance_in_wind, site_wind_m_per_s};
use warmfold::physics::step::{Thermostat, advance};
use warmfold::weather::{ClimateHour, PlaneIrradiance};

use super::denver;
use super::figure::{Expected, Figure, hold, published};
use super::network::{network, state};

/// Equal steps in an hour.
const STEPS: u32 = 3;
const STEP_S: f64 = 3600.0 / STEPS as f64;
/// Hours of December that run ahead of January.
const AHEAD_H: usize = 744;
/// More than the house ever needs, W.
const UNLIMITED_W: f64 = 1e6;
/// Open country.
const SHELTER_CLASS: u32 = 1;
/// The fan runs from 18 to 07 h.
const FAN_HOURS: (u32, u32) = (18, 7);

/// The nodes, in this order.
const AIR: usize = 0;
const SURFACE: usize = 1;
const MASS: usize = 2;

#[derive(Deserialize)]
struct House {
    source: String,
    widened_share: f64,
    widened_k: f64,
    energy_because: String,
    temperature_because: String,
    south_sun: SouthSun,
    floor_m2: f64,
    volume_m3: f64,
    leakage_per_h: f64,
    gain_w: f64,
    gain_to_air: f64,
    window: Window,
    incidence: (f64, f64, f64),
    wall_u_w_per_m2k: f64,
    walls: Vec<(f64, f64)>,
    roof_u_w_per_m2k: f64,
    base_u_w_per_m2k: f64,
    absorptance: f64,
    emissivity: f64,
    surface_ratio: f64,
    air_to_surface: f64,
    surface_to_mass: f64,
    cases: Vec<Case>,
}

/// A year's light on a south wall by two other models of the sky.
#[derive(Deserialize)]
struct SouthSun {
    source: String,
    isotropic_kwh_per_m2: f64,
    perez_kwh_per_m2: f64,
    because: String,
}

#[derive(Deserialize)]
struct Window {
    area_m2: f64,
    azimuth_deg: f64,
    u_w_per_m2k: f64,
    g: f64,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    mass_j_per_m2k: f64,
    mass_ratio: f64,
    #[serde(default)]
    held_c: Option<(f64, f64)>,
    #[serde(default)]
    night_fan_m3_per_h: f64,
    ranges: Vec<(Quantity, f64, f64)>,
}

#[derive(Deserialize, Clone, Copy)]
enum Quantity {
    Heating,
    Cooling,
    PeakHeating,
    Warmest,
    Coldest,
    Mean,
}

/// What one hour does to the house from outside.
struct Outside {
    outdoor_c: f64,
    /// What the window feels.
    window_c: f64,
    window_w_per_k: f64,
    /// What walls, roof and base feel, weighted by their W/K.
    fabric_c: f64,
    fabric_w_per_k: f64,
    /// Sun through the window, W.
    sun_w: f64,
    /// Hour of the day that begins, 0 to 23.
    clock_h: u32,
}

/// Hourly means of a year.
struct Year {
    air_c: Vec<f64>,
    /// Heating and cooling, both positive, W.
    power_w: Vec<(f64, f64)>,
}

fn upright(azimuth_deg: f64) -> [f64; 3] {
    let (sin, cos) = azimuth_deg.to_radians().sin_cos();
    [sin, cos, 0.0]
}

impl House {
    /// Share of the sun on the window that passes.
    fn through_window(&self, light: PlaneIrradiance) -> f64 {
        let x = light.cos_incidence.clamp(0.0, 1.0).acos();
        let (a, b, c) = self.incidence;
        let share = (1.0 + x * (a + x * (b + x * c))).max(0.0);
        self.window.g * (share * light.beam + light.diffuse)
    }

    /// Walls, roof and window lose heat as the skin of a plant house does: their outer film follows the wind, and the
    /// outside that they feel is colder under a clear sky. A film that did not follow the wind would overstate both in
    /// calm nights, 4 % of the year's heat.
    fn outside(&self, hour: &ClimateHour) -> Outside {
        let wind = site_wind_m_per_s(hour.wind_m_per_s, SHELTER_CLASS);
        let h_r = radiative_coefficient(hour.outdoor_c, hour.sky_c);
        let h_e = outer_coefficient(wind, h_r);
        let in_wind = |u_w_per_m2k: f64| 1.0 / resistance_in_wind(1.0 / u_w_per_m2k, wind, h_r);
        let under_sky_c = |normal: [f64; 3]| {
            let sky_view = 0.5 * (1.0 + normal[2]);
            sky_equivalent_c(hour.outdoor_c, hour.sky_c, sky_view * self.emissivity, h_r, h_e)
        };
        let in_sun_c = |normal: [f64; 3]| {
            let light = hour.on_plane(normal);
            under_sky_c(normal) + self.absorptance * (light.beam + light.diffuse) / h_e
        };
        // W/K and °C of roof, base and walls.
        let mut fabric = vec![
            (in_wind(self.roof_u_w_per_m2k) * self.floor_m2, in_sun_c([0.0, 0.0, 1.0])),
            (self.base_u_w_per_m2k * self.floor_m2, hour.outdoor_c),
        ];
        let wall = |&(m2, azimuth): &(f64, f64)| (in_wind(self.wall_u_w_per_m2k) * m2, in_sun_c(upright(azimuth)));
        fabric.extend(self.walls.iter().map(wall));
        let fabric_w_per_k = fabric.iter().map(|(w_per_k, _)| w_per_k).sum();
        let window = upright(self.window.azimuth_deg);
        Outside {
            outdoor_c: hour.outdoor_c,
            window_c: under_sky_c(window),
            window_w_per_k: in_wind(self.window.u_w_per_m2k) * self.window.area_m2,
            fabric_c: fabric.iter().map(|(w_per_k, c)| w_per_k * c).sum::<f64>() / fabric_w_per_k,
            fabric_w_per_k,
            sun_w: self.window.area_m2 * self.through_window(hour.on_plane(window)),
            clock_h: hour.hour - 1,
        }
    }

    /// One store and two nodes without; gains are shared out as in ISO 13790.
    fn network(&self, case: &Case, outside: &Outside) -> Network {
        let surfaces_m2 = self.surface_ratio * self.floor_m2;
        let mass_m2 = case.mass_ratio * self.floor_m2;
        let surface_to_mass = self.surface_to_mass * mass_m2;
        let nodes = [0.0, 0.0, case.mass_j_per_m2k * self.floor_m2].map(Node::Capacity);
        let links = [(AIR, SURFACE, self.air_to_surface * surfaces_m2), (SURFACE, MASS, surface_to_mass)];
        let mut house = network(&nodes, &links);
        house.add_boundary(AIR, exchange_w_per_k(self.volume_m3, self.leakage_per_h), outside.outdoor_c);
        if outside.clock_h >= FAN_HOURS.0 || outside.clock_h < FAN_HOURS.1 {
            house.add_boundary(AIR, flow_w_per_k(case.night_fan_m3_per_h / 3600.0), outside.outdoor_c);
        }
        house.add_boundary(SURFACE, outside.window_w_per_k, outside.window_c);
        house.add_boundary(MASS, 1.0 / (1.0 / outside.fabric_w_per_k - 1.0 / surface_to_mass), outside.fabric_c);
        let shared_w = (1.0 - self.gain_to_air) * self.gain_w + outside.sun_w;
        let mass_share = mass_m2 / surfaces_m2;
        house.add_input(AIR, self.gain_to_air * self.gain_w);
        house.add_input(MASS, mass_share * shared_w);
        let window_share = outside.window_w_per_k / (self.surface_to_mass * surfaces_m2);
        house.add_input(SURFACE, (1.0 - mass_share - window_share) * shared_w);
        house
    }

    fn year(&self, case: &Case, hours: &[Outside]) -> Year {
        let held = |(heat_c, cool_c): (f64, f64)| {
            let heater = Thermostat { node: AIR, setpoint_c: heat_c, min_w: 0.0, max_w: UNLIMITED_W };
            vec![heater, Thermostat { setpoint_c: cool_c, min_w: -UNLIMITED_W, max_w: 0.0, ..heater }]
        };
        let thermostats = case.held_c.map(held).unwrap_or_default();
        let ahead = hours.len() - AHEAD_H;
        let mut now = state(&self.network(case, &hours[ahead]), &[20.0; 3]);
        let mut year = Year { air_c: Vec::new(), power_w: Vec::new() };
        for (k, outside) in hours[ahead..].iter().chain(hours).enumerate() {
            let house = self.network(case, outside);
            let (mut air_c, mut heat_w, mut cool_w) = (0.0, 0.0, 0.0);
            for _ in 0..STEPS {
                let step = advance(&house, &now, STEP_S, &thermostats);
                now = step.end;
                air_c += step.mean_c[AIR] / f64::from(STEPS);
                heat_w += step.heater_w[0] / f64::from(STEPS);
                cool_w -= step.heater_w[1] / f64::from(STEPS);
            }
            if k >= AHEAD_H {
                year.air_c.push(air_c);
                year.power_w.push((heat_w, cool_w));
            }
        }
        year
    }

    fn figure(&self, case: &Case, year: &Year, (quantity, low, high): (Quantity, f64, f64)) -> Figure {
        let largest = |values: &mut dyn Iterator<Item = f64>| values.fold(f64::NEG_INFINITY, f64::max);
        let (what, unit, got) = match quantity {
            Quantity::Heating => ("heat of a year", "MWh", year.power_w.iter().map(|w| w.0).sum::<f64>() / 1e6),
            Quantity::Cooling => {
                ("extracted heat of a year", "MWh", year.power_w.iter().map(|w| w.1).sum::<f64>() / 1e6)
            }
            Quantity::PeakHeating => {
                ("largest hourly heat", "kW", largest(&mut year.power_w.iter().map(|w| w.0)) / 1e3)
            }
            Quantity::Warmest => ("warmest hour", "°C", largest(&mut year.air_c.iter().copied())),
            Quantity::Coldest => ("coldest hour", "°C", -largest(&mut year.air_c.iter().map(|c| -c))),
            Quantity::Mean => ("mean", "°C", year.air_c.iter().sum::<f64>() / year.air_c.len() as f64),
        };
        let (expected, because) = if unit == "°C" {
            (Expected::Band(low - self.widened_k, high + self.widened_k), &self.temperature_because)
        } else {
            let share = self.widened_share;
            (Expected::Band(low * (1.0 - share), high * (1.0 + share)), &self.energy_because)
        };
        Figure {
            what: format!("{}: {what}", case.name),
            source: self.source.clone(),
            unit: unit.into(),
            decimals: if unit == "°C" { 1 } else { 2 },
            expected,
            tolerance_because: because.clone(),
            got,
        }
    }
}

impl SouthSun {
    fn figure(&self, hours: &[ClimateHour]) -> Figure {
        let light = hours.iter().map(|hour| hour.on_plane(upright(180.0)));
        Figure {
            what: "sun of a year on a south wall, Denver".into(),
            source: self.source.clone(),
            unit: "kWh/m²".into(),
            decimals: 0,
            expected: Expected::Band(self.isotropic_kwh_per_m2, self.perez_kwh_per_m2),
            tolerance_because: self.because.clone(),
            got: light.map(|light| light.beam + light.diffuse).sum::<f64>() / 1000.0,
        }
    }
}

pub fn figures() -> Vec<Figure> {
    let house: House = published("fabric");
    let place = denver::place();
    let climate_hour = |record| ClimateHour::from_record(record, &place, -0.5, 0);
    let climate: Vec<ClimateHour> = denver::records().iter().map(climate_hour).collect();
    let hours: Vec<Outside> = climate.iter().map(|hour| house.outside(hour)).collect();
    let of_case = |case: &Case| -> Vec<Figure> {
        let year = house.year(case, &hours);
        case.ranges.iter().map(|range| house.figure(case, &year, *range)).collect()
    };
    let mut figures = vec![house.south_sun.figure(&climate)];
    figures.extend(house.cases.iter().flat_map(of_case));
    figures
}

#[test]
fn the_fabric_agrees() {
    hold(&figures());
}
