//! Houses of one to three stores whose temperatures have an exact answer.

use serde::Deserialize;
use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{Thermostat, advance};

use super::figure::{Expected, Figure, hold, published};
use super::network::{network, run, run_each, state};

const HOUR_S: f64 = 3600.0;
const J_PER_KWH: f64 = 3.6e6;

#[derive(Deserialize)]
struct Cases {
    source: String,
    tolerance_k: f64,
    tolerance_because: String,
    share_tolerance: f64,
    share_because: String,
    houses: Vec<House>,
}

/// A house and what is known of it. Node numbers count from 0.
#[derive(Deserialize)]
struct House {
    name: String,
    /// Name and capacity in J/K.
    nodes: Vec<(String, f64)>,
    /// Two nodes and W/K.
    #[serde(default)]
    links: Vec<(usize, usize, f64)>,
    /// Node, W/K, °C.
    boundaries: Vec<(usize, f64, f64)>,
    /// Node and W.
    #[serde(default)]
    inputs: Vec<(usize, f64)>,
    #[serde(default)]
    heater: Option<Heater>,
    #[serde(default)]
    start_c: Vec<f64>,
    #[serde(default)]
    step_s: f64,
    /// Hours and the nodes' temperatures then.
    #[serde(default)]
    after: Vec<(f64, Vec<f64>)>,
    #[serde(default)]
    settled_c: Vec<f64>,
    #[serde(default)]
    frozen: Vec<Frozen>,
    #[serde(default)]
    gives: Vec<Gives>,
    #[serde(default)]
    holds: Vec<Holds>,
}

#[derive(Deserialize)]
struct Heater {
    node: usize,
    setpoint_c: f64,
    max_w: f64,
}

/// A node that passes 0 °C.
#[derive(Deserialize)]
struct Frozen {
    node: usize,
    hours: f64,
    tolerance_h: f64,
    because: String,
}

/// A store that gives heat over the first hours.
#[derive(Deserialize)]
struct Gives {
    node: usize,
    hours: f64,
    kwh: f64,
}

/// Power that holds a node.
#[derive(Deserialize)]
struct Holds {
    node: usize,
    at_c: f64,
    w: f64,
}

impl House {
    fn network(&self) -> Network {
        let nodes: Vec<Node> = self.nodes.iter().map(|&(_, capacity)| Node::Capacity(capacity)).collect();
        let mut network = network(&nodes, &self.links);
        for &(node, w_per_k, outside_c) in &self.boundaries {
            network.add_boundary(node, w_per_k, outside_c);
        }
        for &(node, w) in &self.inputs {
            network.add_input(node, w);
        }
        network
    }

    fn thermostats(&self) -> Vec<Thermostat> {
        let of = |h: &Heater| Thermostat { node: h.node, setpoint_c: h.setpoint_c, min_w: 0.0, max_w: h.max_w };
        self.heater.iter().map(of).collect()
    }

    fn after_c(&self, hours: f64) -> Vec<f64> {
        let network = self.network();
        let end = run(&network, &state(&network, &self.start_c), hours, self.step_s, &self.thermostats());
        end.temperature_c[..self.nodes.len()].to_vec()
    }

    /// Hour at which a node falls through 0 °C, straight between the ends of steps.
    fn freezes_h(&self, node: usize, within_h: f64) -> f64 {
        let network = self.network();
        let (mut hours, mut before_c, mut crossing_h) = (0.0, self.start_c[node], f64::NAN);
        run_each(&network, &state(&network, &self.start_c), within_h, self.step_s, &self.thermostats(), |step| {
            let now_c = step.end.temperature_c[node];
            if before_c > 0.0 && now_c <= 0.0 {
                crossing_h = hours + before_c / (before_c - now_c) * self.step_s / HOUR_S;
            }
            hours += self.step_s / HOUR_S;
            before_c = now_c;
        });
        crossing_h
    }

    fn given_kwh(&self, gives: &Gives) -> f64 {
        let network = self.network();
        let start = state(&network, &self.start_c);
        let end = run(&network, &start, gives.hours, self.step_s, &self.thermostats());
        (start.enthalpy_j(&network, gives.node) - end.enthalpy_j(&network, gives.node)) / J_PER_KWH
    }

    /// By the thermostat of one step; the houses that ask this have no stores.
    fn holding_w(&self, holds: &Holds) -> f64 {
        let network = self.network();
        let thermostat = Thermostat { node: holds.node, setpoint_c: holds.at_c, min_w: 0.0, max_w: 1e5 };
        advance(&network, &state(&network, &[]), HOUR_S, &[thermostat]).heater_w[0]
    }
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("lumped");
    file.houses.iter().flat_map(|house| of_house(&file, house)).collect()
}

fn of_house(file: &Cases, house: &House) -> Vec<Figure> {
    let figure = |what: String, unit: &str, decimals, value: f64, (tolerance, because): (f64, &str), got| Figure {
        what: format!("{}: {what}", house.name),
        source: file.source.clone(),
        unit: unit.into(),
        decimals,
        expected: Expected::Value(value, tolerance),
        tolerance_because: because.into(),
        got,
    };
    let kelvin = (file.tolerance_k, file.tolerance_because.as_str());
    let share = |value: f64| (value * file.share_tolerance, file.share_because.as_str());
    let mut figures = Vec::new();
    for (hours, expected_c) in &house.after {
        let found_c = house.after_c(*hours);
        assert_eq!(expected_c.len(), found_c.len(), "{}: one temperature per node", house.name);
        for (((name, _), expected_c), found_c) in house.nodes.iter().zip(expected_c).zip(found_c) {
            figures.push(figure(format!("{name} after {hours} h"), "°C", 4, *expected_c, kelvin, found_c));
        }
    }
    let settled_c = house.network().steady(&[]);
    for (((name, _), expected_c), found_c) in house.nodes.iter().zip(&house.settled_c).zip(settled_c) {
        figures.push(figure(format!("{name}, settled"), "°C", 4, *expected_c, STEADY, found_c));
    }
    for frozen in &house.frozen {
        let tolerance = (frozen.tolerance_h, frozen.because.as_str());
        // Whole hours hold whole steps; a tenth more than wanted shows a program that is late.
        let got = house.freezes_h(frozen.node, (frozen.hours * 1.1).ceil());
        figures.push(figure("0 °C is reached after".into(), "h", 3, frozen.hours, tolerance, got));
    }
    for gives in &house.gives {
        let what = format!("{} gives in {} h", house.nodes[gives.node].0, gives.hours);
        figures.push(figure(what, "kWh", 4, gives.kwh, share(gives.kwh), house.given_kwh(gives)));
    }
    for holds in &house.holds {
        let what = format!("{} held at {} °C needs", house.nodes[holds.node].0, holds.at_c);
        figures.push(figure(what, "W", 2, holds.w, STEADY_W, house.holding_w(holds)));
    }
    figures
}

/// Both sides solve linear equations: half a unit of the last printed digit.
const STEADY: (f64, &str) = (6e-5, "both solve linear equations: half a unit of the last printed digit");
const STEADY_W: (f64, &str) = (6e-3, "both solve linear equations: half a unit of the last printed digit");

#[test]
fn lumped_houses_agree() {
    hold(&figures());
}
