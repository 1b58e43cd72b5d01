//! Heat into deep soil by layers of the thermal network: a step and a daily wave of the surface.

use std::f64::consts::TAU;

use serde::Deserialize;
use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{State, advance};

use super::figure::{Expected, Figure, hold, published};
use super::network::{network, state};

const STEP_S: f64 = 1200.0;
const STEPS_PER_DAY: u32 = 72;
/// Days until the wave is settled: the last layers' time constant is two days.
const SETTLING_DAYS: u32 = 30;

#[derive(Deserialize)]
struct Cases {
    source: String,
    conductivity_w_per_mk: f64,
    density_kg_per_m3: f64,
    specific_heat_j_per_kgk: f64,
    tolerance_share: f64,
    tolerance_because: String,
    flux_because: String,
    step: SurfaceStep,
    wave: SurfaceWave,
}

#[derive(Deserialize)]
struct SurfaceStep {
    node_depths_m: Vec<f64>,
    step_k: f64,
    depths_m: Vec<f64>,
    after: Vec<AfterStep>,
}

#[derive(Deserialize)]
struct AfterStep {
    days: f64,
    shares: Vec<f64>,
    flux_w_per_m2: f64,
}

#[derive(Deserialize)]
struct SurfaceWave {
    node_depths_m: Vec<f64>,
    depths_m: Vec<f64>,
    amplitudes: Vec<f64>,
    flux_w_per_m2k: f64,
}

impl Cases {
    /// One square metre of layers. Each node holds the soil half-way to its neighbours, the first up to the surface, the
    /// last as much below as above.
    fn layers(&self, depths_m: &[f64], surface_c: f64) -> Network {
        let per_m3 = self.density_kg_per_m3 * self.specific_heat_j_per_kgk;
        let (mut nodes, mut links, mut top_m) = (Vec::new(), Vec::new(), 0.0);
        for (i, depth_m) in depths_m.iter().enumerate() {
            let next_m = depths_m.get(i + 1);
            let bottom_m = next_m.map_or(2.0 * depth_m - top_m, |next_m| f64::midpoint(*depth_m, *next_m));
            nodes.push(Node::Capacity(per_m3 * (bottom_m - top_m)));
            if let Some(next_m) = next_m {
                links.push((i, i + 1, self.conductivity_w_per_mk / (next_m - depth_m)));
            }
            top_m = bottom_m;
        }
        let mut network = network(&nodes, &links);
        network.add_boundary(0, self.surface_w_per_k(depths_m), surface_c);
        network
    }

    fn surface_w_per_k(&self, depths_m: &[f64]) -> f64 {
        self.conductivity_w_per_mk / depths_m[0]
    }

    fn figure(&self, what: String, decimals: usize, value: f64, tolerance: f64, got: f64) -> Figure {
        Figure {
            what,
            source: self.source.clone(),
            unit: String::new(),
            decimals,
            expected: Expected::Value(value, tolerance),
            tolerance_because: self.tolerance_because.clone(),
            got,
        }
    }

    fn flux(&self, what: String, unit: &str, value: f64, got: f64) -> Figure {
        let figure = self.figure(what, 2, value, value * self.tolerance_share, got);
        Figure { unit: unit.into(), tolerance_because: self.flux_because.clone(), ..figure }
    }

    fn of_step(&self) -> Vec<Figure> {
        let case = &self.step;
        let soil = self.layers(&case.node_depths_m, case.step_k);
        let mut figures = Vec::new();
        for after in &case.after {
            let steps = (after.days * f64::from(STEPS_PER_DAY)) as u32;
            let end = (0..steps).fold(state(&soil, &[]), |now, _| advance(&soil, &now, STEP_S, &[]).end);
            for (depth_m, share) in case.depths_m.iter().zip(&after.shares) {
                let what = format!("warm surface for {} d: share of it felt {depth_m} m down", after.days);
                let got = end.temperature_c[node_at(&case.node_depths_m, *depth_m)] / case.step_k;
                figures.push(self.figure(what, 5, *share, self.tolerance_share, got));
            }
            let got = self.surface_w_per_k(&case.node_depths_m) * (case.step_k - end.temperature_c[0]);
            let what = format!("surface {} K warmer for {} d: heat into the soil", case.step_k, after.days);
            figures.push(self.flux(what, "W/m²", after.flux_w_per_m2, got));
        }
        figures
    }

    /// Amplitudes of the nodes and of the heat into the surface, for a wave of 1 K.
    fn wave_amplitudes(&self) -> (Vec<f64>, f64) {
        let depths_m = &self.wave.node_depths_m;
        let mut now: State = state(&self.layers(depths_m, 0.0), &[]);
        let mut nodes = vec![(0.0, 0.0); depths_m.len()];
        let mut flux = (0.0, 0.0);
        let weight = 2.0 / f64::from(STEPS_PER_DAY);
        for k in 0..SETTLING_DAYS * STEPS_PER_DAY {
            // Waves are fitted to the means of steps, with the surface held at the middle of each.
            let (sin, cos) = (TAU * (f64::from(k % STEPS_PER_DAY) + 0.5) / f64::from(STEPS_PER_DAY)).sin_cos();
            let step = advance(&self.layers(depths_m, cos), &now, STEP_S, &[]);
            now = step.end;
            if k < (SETTLING_DAYS - 1) * STEPS_PER_DAY {
                continue;
            }
            let add = |sum: &mut (f64, f64), value: f64| {
                *sum = (sum.0 + weight * value * cos, sum.1 + weight * value * sin);
            };
            for (sum, mean_c) in nodes.iter_mut().zip(step.mean_c) {
                add(sum, mean_c);
            }
            add(&mut flux, self.surface_w_per_k(depths_m) * (cos - step.mean_c[0]));
        }
        (nodes.into_iter().map(|(a, b)| a.hypot(b)).collect(), flux.0.hypot(flux.1))
    }

    fn of_wave(&self) -> Vec<Figure> {
        let case = &self.wave;
        let (nodes, flux) = self.wave_amplitudes();
        let amplitude = |(depth_m, expected): (&f64, &f64)| {
            let what = format!("surface swings with the day: share of it felt {depth_m} m down");
            self.figure(what, 5, *expected, self.tolerance_share, nodes[node_at(&case.node_depths_m, *depth_m)])
        };
        let mut figures: Vec<Figure> = case.depths_m.iter().zip(&case.amplitudes).map(amplitude).collect();
        let what = "surface swings with the day: heat into the soil per kelvin";
        figures.push(self.flux(what.into(), "W/m²K", case.flux_w_per_m2k, flux));
        figures
    }
}

/// The node that lies at this depth.
fn node_at(depths_m: &[f64], wanted_m: f64) -> usize {
    depths_m.iter().position(|depth_m| (depth_m - wanted_m).abs() < 1e-9).expect("a node at this depth")
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("soil");
    file.of_step().into_iter().chain(file.of_wave()).collect()
}

#[test]
fn soil_agrees() {
    hold(&figures());
}
