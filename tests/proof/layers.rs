//! Resistances of walls in layers, through the program's stack.

use serde::Deserialize;
use warmfold::model::{Sheet, SheetKind};
use warmfold::physics::skin::stack_resistance;
use warmfold::units::{Quantity, UnitSystem};

use super::figure::{Figure, hold};
use super::sheet::told_figures;

/// Sheets of these resistances from outside to inside, m²·K/W: the first between its surfaces, each gap included.
pub fn layers(m2k_per_w: impl IntoIterator<Item = f64>) -> Vec<Sheet> {
    let sheet = |(place, r): (usize, f64)| match place {
        0 => Sheet { u_as_skin_w_per_m2k: 1.0 / r, ..Sheet::default() },
        _ => Sheet { kind: SheetKind::Liner, resistance_m2k_per_w: r, ..Sheet::default() },
    };
    m2k_per_w.into_iter().enumerate().map(sheet).collect()
}

#[derive(Deserialize)]
enum Setting {
    /// Sum of these resistances.
    Resistance { system: UnitSystem, resistances: Vec<f64> },
    /// U of these resistances.
    U { system: UnitSystem, resistances: Vec<f64> },
    /// The same in W/(m²·K), whatever the units of the resistances.
    SiU { system: UnitSystem, resistances: Vec<f64> },
}

/// The program's resistance of layers given in these units, m²·K/W.
fn m2k_per_w(system: UnitSystem, resistances: &[f64]) -> f64 {
    let unit = Quantity::Resistance.unit(system);
    stack_resistance(&layers(resistances.iter().map(|r| unit.value(*r))))
}

fn compute(setting: &Setting) -> f64 {
    match setting {
        Setting::Resistance { system, resistances } => {
            Quantity::Resistance.unit(*system).shown(m2k_per_w(*system, resistances))
        }
        Setting::U { system, resistances } => {
            Quantity::UValue.unit(*system).shown(1.0 / m2k_per_w(*system, resistances))
        }
        Setting::SiU { system, resistances } => 1.0 / m2k_per_w(*system, resistances),
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("layers", compute)
}

#[test]
fn layers_agree() {
    hold(&figures());
}
