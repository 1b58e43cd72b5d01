//! Water as a store: its heat, its freezing, and a barrel that cools.

use serde::Deserialize;
use warmfold::physics::network::{FreezingStore, Network, Node};
use warmfold::physics::step::{State, advance};
use warmfold::physics::stores::{HEAT_OF_FUSION, ICE_SPECIFIC_HEAT, WATER_SPECIFIC_HEAT, WATER_TO_AIR};
use warmfold::units::{JOULES_PER_BTU, JOULES_PER_KWH, SECONDS_PER_HOUR};

use super::figure::{Figure, hold};
use super::sheet::told_figures;

#[derive(Deserialize)]
enum Setting {
    /// Heat that water gives up, in this unit: cooling to a temperature, and a share of it freezing at 0 °C.
    Heat { kg: f64, from_c: f64, to_c: f64, ice_share: f64, show: Energy },
    /// A vessel of this mass and surface in air of a constant temperature.
    Barrel { kg: f64, surface_m2: f64, from_c: f64, air_c: f64, hours: u32, of: Cooling },
    /// Surface of a vessel to air, W/(m²·K).
    SurfaceCoefficient,
}

#[derive(Deserialize)]
enum Energy {
    Kj,
    Mj,
    Kwh,
    Btu,
}

impl Energy {
    fn shown(&self, energy_j: f64) -> f64 {
        energy_j
            / match self {
                Self::Kj => 1e3,
                Self::Mj => 1e6,
                Self::Kwh => JOULES_PER_KWH,
                Self::Btu => JOULES_PER_BTU,
            }
    }
}

#[derive(Deserialize)]
enum Cooling {
    TimeConstantH,
    EndC,
    GivenKwh,
}

fn water(mass_kg: f64) -> FreezingStore {
    FreezingStore {
        mass_kg,
        liquid_j_per_kgk: WATER_SPECIFIC_HEAT,
        ice_j_per_kgk: ICE_SPECIFIC_HEAT,
        fusion_j_per_kg: HEAT_OF_FUSION,
    }
}

/// Heat given up from a temperature to another at which a share of the water is ice, J.
fn given_up_j(mass_kg: f64, from_c: f64, to_c: f64, ice_share: f64) -> f64 {
    let vessel = Network::new(&[Node::Water(water(mass_kg))], &[]).expect("one node");
    let start = State::uniform(&vessel, from_c);
    let mut end = State::uniform(&vessel, to_c);
    end.ice_share[0] = ice_share;
    start.enthalpy_j(&vessel, 0) - end.enthalpy_j(&vessel, 0)
}

fn compute(setting: &Setting) -> f64 {
    match setting {
        Setting::Heat { kg, from_c, to_c, ice_share, show } => show.shown(given_up_j(*kg, *from_c, *to_c, *ice_share)),
        Setting::Barrel { kg, surface_m2, from_c, air_c, hours, of } => {
            let w_per_k = surface_m2 * WATER_TO_AIR;
            let mut vessel = Network::new(&[Node::Water(water(*kg))], &[]).expect("one node");
            vessel.add_boundary(0, w_per_k, *air_c);
            let start = State::uniform(&vessel, *from_c);
            let end = (0..*hours).fold(start, |state, _| advance(&vessel, &state, SECONDS_PER_HOUR, &[]).end);
            match of {
                Cooling::TimeConstantH => kg * WATER_SPECIFIC_HEAT / w_per_k / SECONDS_PER_HOUR,
                Cooling::EndC => end.temperature_c[0],
                Cooling::GivenKwh => (start.enthalpy_j(&vessel, 0) - end.enthalpy_j(&vessel, 0)) / JOULES_PER_KWH,
            }
        }
        Setting::SurfaceCoefficient => WATER_TO_AIR,
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("water", compute)
}

#[test]
fn water_agrees() {
    hold(&figures());
}
