//! Worked examples of heat loss: walls and roofs, air, slab edge, through the program's network in steady state.

use serde::Deserialize;
use warmfold::physics::air::exchange_w_per_k;
use warmfold::physics::ground::edge_w_per_k;
use warmfold::physics::network::{Network, Node};
use warmfold::physics::skin::stack_resistance;
use warmfold::units::{JOULES_PER_BTU, Quantity, UnitSystem};

use super::figure::{Figure, hold};
use super::layers::layers;
use super::sheet::told_figures;

/// What lies between the room and outdoors, in the units of its source.
#[derive(Deserialize)]
enum Part {
    /// An area of this U.
    Area { area: f64, u: f64 },
    /// An area of these resistances from outside to inside, surfaces included.
    Layers { area: f64, resistances: Vec<f64> },
    /// Air of this volume, changed so many times an hour.
    Air { volume: f64, changes_per_h: f64 },
    /// A slab edge of this factor and length.
    Edge { factor: f64, length: f64 },
}

impl Part {
    fn w_per_k(&self, system: UnitSystem) -> f64 {
        let si = |quantity: Quantity, value: f64| quantity.unit(system).value(value);
        match self {
            Self::Area { area, u } => si(Quantity::Area, *area) * si(Quantity::UValue, *u),
            Self::Layers { area, resistances } => {
                let si_layers = resistances.iter().map(|r| si(Quantity::Resistance, *r));
                si(Quantity::Area, *area) / stack_resistance(&layers(si_layers))
            }
            Self::Air { volume, changes_per_h } => exchange_w_per_k(si(Quantity::Volume, *volume), *changes_per_h),
            Self::Edge { factor, length } => {
                edge_w_per_k(si(Quantity::EdgeFactor, *factor), si(Quantity::Length, *length))
            }
        }
    }
}

#[derive(Deserialize)]
enum Setting {
    /// Heat that holds a room at a difference to outdoors, in this unit.
    Heat { system: UnitSystem, parts: Vec<Part>, difference: f64, show: Power },
    /// The same per degree.
    PerDegree { system: UnitSystem, parts: Vec<Part> },
    /// Whole per area, the U of an assembly.
    Assembly { system: UnitSystem, parts: Vec<Part>, area: f64 },
    /// The inverse of it.
    AssemblyResistance { system: UnitSystem, parts: Vec<Part>, area: f64 },
    /// Share of the heat that other parts save, %.
    Saving { system: UnitSystem, before: Vec<Part>, after: Vec<Part> },
    /// Share of the heat that goes through some of the parts, %.
    ShareOf { system: UnitSystem, some: Vec<Part>, all: Vec<Part> },
    /// A held tent in an unheated house, metric.
    TwoZones { outer: Vec<Part>, tent: Vec<Part>, tent_c: f64, outdoor_c: f64, of: Zones },
}

#[derive(Deserialize)]
enum Zones {
    HouseAirC,
    HeatW,
    OuterW,
}

#[derive(Deserialize)]
enum Power {
    W,
    Kw,
    BtuPerH,
}

impl Power {
    fn shown(&self, w: f64) -> f64 {
        match self {
            Self::W => w,
            Self::Kw => w / 1000.0,
            Self::BtuPerH => w * 3600.0 / JOULES_PER_BTU,
        }
    }
}

/// Heat that holds one node at a temperature above the outdoor air beyond these parts, W.
fn steady_w(parts: &[Part], system: UnitSystem, difference_k: f64) -> f64 {
    let mut room = Network::new(&[Node::Capacity(0.0)], &[]).expect("one node");
    for part in parts {
        room.add_boundary(0, part.w_per_k(system), 0.0);
    }
    -room.net_flow_w(0, &room.steady(&[(0, difference_k)]))
}

fn w_per_k(parts: &[Part], system: UnitSystem) -> f64 {
    parts.iter().map(|part| part.w_per_k(system)).sum()
}

/// House air, °C, and the tent's heat, W, of a held tent in an unheated house.
fn two_zones(outer_w_per_k: f64, tent_w_per_k: f64, tent_c: f64, outdoor_c: f64) -> (f64, f64) {
    let mut house = Network::new(&[Node::Capacity(0.0); 2], &[(0, 1)]).expect("two nodes");
    let wall = house.link(0).expect("a link");
    house.set_link(wall, tent_w_per_k);
    house.add_boundary(0, outer_w_per_k, outdoor_c);
    let temperatures_c = house.steady(&[(1, tent_c)]);
    (temperatures_c[0], -house.net_flow_w(1, &temperatures_c))
}

fn compute(setting: &Setting) -> f64 {
    match setting {
        Setting::Heat { system, parts, difference, show } => {
            let difference_k = Quantity::TemperatureDifference.unit(*system).value(*difference);
            show.shown(steady_w(parts, *system, difference_k))
        }
        Setting::PerDegree { system, parts } => {
            Quantity::HeatLossCoefficient.unit(*system).shown(steady_w(parts, *system, 1.0))
        }
        Setting::Assembly { system, parts, area } => {
            let u = steady_w(parts, *system, 1.0) / Quantity::Area.unit(*system).value(*area);
            Quantity::UValue.unit(*system).shown(u)
        }
        Setting::AssemblyResistance { system, parts, area } => {
            let m2k_per_w = Quantity::Area.unit(*system).value(*area) / steady_w(parts, *system, 1.0);
            Quantity::Resistance.unit(*system).shown(m2k_per_w)
        }
        Setting::Saving { system, before, after } => {
            100.0 * (1.0 - steady_w(after, *system, 1.0) / steady_w(before, *system, 1.0))
        }
        Setting::ShareOf { system, some, all } => 100.0 * steady_w(some, *system, 1.0) / steady_w(all, *system, 1.0),
        Setting::TwoZones { outer, tent, tent_c, outdoor_c, of } => {
            let [outer, tent] = [outer, tent].map(|parts| w_per_k(parts, UnitSystem::Metric));
            let (house_c, heat_w) = two_zones(outer, tent, *tent_c, *outdoor_c);
            match of {
                Zones::HouseAirC => house_c,
                Zones::HeatW => heat_w,
                Zones::OuterW => outer * (house_c - outdoor_c),
            }
        }
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("heat_loss", compute)
}

#[test]
fn heat_loss_agrees() {
    hold(&figures());
}
