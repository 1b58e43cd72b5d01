//! A measured test house with known heat: its temperature from the heat, and its heat from the temperature.

use serde::Deserialize;
use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{State, Step, Thermostat, advance};

use super::figure::{Expected, Figure, hold, published};
use super::network::{network, state};

const HOUR_S: f64 = 3600.0;
const AIR: usize = 0;
const MASS: usize = 1;

#[derive(Deserialize)]
struct House {
    source: String,
    source_measured: String,
    air_j_per_k: f64,
    mass_j_per_k: f64,
    air_to_mass_w_per_k: f64,
    air_to_outdoors_w_per_k: f64,
    mass_to_outdoors_w_per_k: f64,
    mass_to_neighbour_w_per_k: f64,
    supply_m3_per_h: f64,
    supply_wh_per_m3k: f64,
    air_sun_m2: f64,
    mass_sun_m2: f64,
    mass_start_c: f64,
    rmse_tolerance_k: f64,
    bias_tolerance_k: f64,
    rmse_because: String,
    phases: Vec<Phase>,
    instant_tolerance_k: f64,
    instant_because: String,
    instants: Vec<Instant>,
    heat_tolerance_share: f64,
    heat_because: String,
    heats: Vec<Heat>,
}

#[derive(Deserialize)]
struct Phase {
    name: String,
    first_h: usize,
    hours: usize,
    rmse_k: f64,
    bias_k: f64,
}

#[derive(Deserialize)]
struct Instant {
    name: String,
    hour: usize,
    air_c: f64,
}

#[derive(Deserialize)]
struct Heat {
    name: String,
    first_h: usize,
    hours: usize,
    measured_w: f64,
}

/// Means of one measured hour.
#[derive(Deserialize)]
struct Hour {
    t_in_c: f64,
    p_heat_w: f64,
    t_attic_c: f64,
    t_cellar_c: f64,
    t_supply_c: f64,
    t_out_c: f64,
    beam_horiz_wm2: f64,
    diff_horiz_wm2: f64,
}

fn measured() -> Vec<Hour> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/validation/twinhouse_n2_hourly.csv");
    let mut reader = csv::Reader::from_path(path).expect("the measured hours");
    let hours: Vec<Hour> = reader.deserialize().map(|row| row.expect("a row")).collect();
    assert_eq!(hours.len(), 984, "41 days");
    hours
}

impl House {
    fn network(&self, hour: &Hour, heat_w: f64) -> Network {
        let nodes = [Node::Capacity(self.air_j_per_k), Node::Capacity(self.mass_j_per_k)];
        let mut house = network(&nodes, &[(AIR, MASS, self.air_to_mass_w_per_k)]);
        house.add_boundary(AIR, self.air_to_outdoors_w_per_k, hour.t_out_c);
        house.add_boundary(AIR, self.supply_m3_per_h * self.supply_wh_per_m3k, hour.t_supply_c);
        house.add_boundary(MASS, self.mass_to_outdoors_w_per_k, hour.t_out_c);
        house.add_boundary(MASS, self.mass_to_neighbour_w_per_k, hour.t_attic_c);
        house.add_boundary(MASS, self.mass_to_neighbour_w_per_k, hour.t_cellar_c);
        let sun = hour.beam_horiz_wm2 + hour.diff_horiz_wm2;
        house.add_input(AIR, heat_w + self.air_sun_m2 * sun);
        house.add_input(MASS, self.mass_sun_m2 * sun);
        house
    }

    fn start(&self, first: &Hour) -> State {
        state(&self.network(first, 0.0), &[first.t_in_c, self.mass_start_c])
    }

    /// Air of each hour from the measured heat, the mean of the hour's start and end, °C.
    fn free_c(&self, hours: &[Hour]) -> Vec<f64> {
        let mut now = self.start(&hours[0]);
        let step = |hour: &Hour| {
            let end = advance(&self.network(hour, hour.p_heat_w), &now, HOUR_S, &[]).end;
            let mean_c = f64::midpoint(now.temperature_c[AIR], end.temperature_c[AIR]);
            now = end;
            mean_c
        };
        hours.iter().map(step).collect()
    }

    /// Heat of each hour that brings the air to the measured temperature, W. Between the means of two hours the air
    /// passes their mean.
    fn heat_w(&self, hours: &[Hour]) -> Vec<f64> {
        let mut now = self.start(&hours[0]);
        let step = |(i, hour): (usize, &Hour)| {
            let next = hours.get(i + 1).unwrap_or(hour);
            let setpoint_c = f64::midpoint(hour.t_in_c, next.t_in_c);
            let impose = Thermostat { node: AIR, setpoint_c, min_w: -1e6, max_w: 1e6 };
            let Step { end, heater_w, .. } = advance(&self.network(hour, 0.0), &now, HOUR_S, &[impose]);
            now = end;
            heater_w[0]
        };
        hours.iter().enumerate().map(step).collect()
    }
}

pub fn figures() -> Vec<Figure> {
    let file: House = published("test_house");
    let hours = measured();
    let air_c = file.free_c(&hours);
    let kelvin = |what: String, value, tolerance, because: &str, got| Figure {
        what: format!("test house, air from the measured heat: {what}"),
        source: file.source.clone(),
        unit: "K".into(),
        decimals: 3,
        expected: Expected::Value(value, tolerance),
        tolerance_because: because.into(),
        got,
    };
    let mut figures = Vec::new();
    for phase in &file.phases {
        let span = phase.first_h..phase.first_h + phase.hours;
        let off_k: Vec<f64> = air_c[span.clone()].iter().zip(&hours[span]).map(|(c, hour)| c - hour.t_in_c).collect();
        let mean = |of: fn(f64) -> f64| off_k.iter().map(|k| of(*k)).sum::<f64>() / off_k.len() as f64;
        let rmse_k = mean(|k| k * k).sqrt();
        let what = format!("root mean square error, {}", phase.name);
        figures.push(kelvin(what, phase.rmse_k, file.rmse_tolerance_k, &file.rmse_because, rmse_k));
        let what = format!("mean error, {}", phase.name);
        figures.push(kelvin(what, phase.bias_k, file.bias_tolerance_k, &file.rmse_because, mean(|k| k)));
    }
    for instant in &file.instants {
        let what = format!("first hour of {}", instant.name);
        let got = air_c[instant.hour];
        let figure = kelvin(what, instant.air_c, file.instant_tolerance_k, &file.instant_because, got);
        figures.push(Figure { unit: "°C".into(), ..figure });
    }
    let heat_w = file.heat_w(&hours);
    for heat in &file.heats {
        let span = heat.first_h..heat.first_h + heat.hours;
        figures.push(Figure {
            what: format!("test house, heat from the measured air: mean of {}", heat.name),
            source: file.source_measured.clone(),
            unit: "W".into(),
            decimals: 0,
            expected: Expected::Value(heat.measured_w, heat.measured_w * file.heat_tolerance_share),
            tolerance_because: file.heat_because.clone(),
            got: heat_w[span].iter().sum::<f64>() / heat.hours as f64,
        });
    }
    figures
}

#[test]
fn the_test_house_agrees() {
    hold(&figures());
}

/// The stored hours are the ones that the measured means belong to; half a watt is the rounding of the means.
#[test]
fn the_measured_means_are_those_of_the_file() {
    let hours = measured();
    for heat in &published::<House>("test_house").heats {
        let span = &hours[heat.first_h..heat.first_h + heat.hours];
        let mean_w = span.iter().map(|hour| hour.p_heat_w).sum::<f64>() / span.len() as f64;
        assert!((mean_w - heat.measured_w).abs() < 0.5, "{}: {mean_w} W", heat.name);
    }
}
