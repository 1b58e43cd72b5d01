//! What a flame makes of its fuel: water, carbon dioxide, the air it needs; and what that does to a closed room.

use super::moist_air::dry_air_m3_per_kg;
use crate::units::{JOULES_PER_KWH, MOLAR_GAS_CONSTANT, STANDARD_PRESSURE_PA, kelvin_from_c};

/// Molar masses, kg/mol (standard atomic weights, abridged).
const CARBON: f64 = 0.012_011;
const HYDROGEN: f64 = 0.001_008;
const OXYGEN_GAS: f64 = 2.0 * 0.015_999;
const WATER: f64 = 2.0 * HYDROGEN + 0.015_999;
/// Molar mass of carbon dioxide, kg/mol.
pub const CARBON_DIOXIDE: f64 = CARBON + OXYGEN_GAS;

/// Oxygen in dry air by mass.
pub const OXYGEN_BY_MASS: f64 = 0.2314;
/// Oxygen in dry air by volume.
pub const OXYGEN_BY_VOLUME: f64 = 0.209_46;
/// Heat of vaporisation of water at 25 °C, J/kg: the difference of gross and net heat content.
pub const VAPORISATION_J_PER_KG: f64 = 2.442e6;

/// A fuel of carbon and hydrogen, burnt completely: `CₙHₘ + (n + m/4) O₂ → n CO₂ + m/2 H₂O`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hydrocarbon {
    /// Atoms of carbon in a molecule; a mean for a mixture.
    pub carbon: f64,
    /// Atoms of hydrogen in a molecule.
    pub hydrogen: f64,
    /// Gross heat content, J/kg.
    pub gross_j_per_kg: f64,
    /// Net heat content, J/kg.
    pub net_j_per_kg: f64,
}

/// Propane C₃H₈; heat contents from an engineering property table.
pub const PROPANE: Hydrocarbon =
    Hydrocarbon { carbon: 3.0, hydrogen: 8.0, gross_j_per_kg: 50.35e6, net_j_per_kg: 46.35e6 };
/// Methane CH₄, standing for natural gas; heat contents from an engineering property table.
pub const METHANE: Hydrocarbon =
    Hydrocarbon { carbon: 1.0, hydrogen: 4.0, gross_j_per_kg: 55.53e6, net_j_per_kg: 50.00e6 };
/// Kerosene as C₁₂H₂₃.₄ (hydrogen per carbon 1.95, common practice); gross UK DUKES Table A.1, net a property table.
pub const KEROSENE: Hydrocarbon =
    Hydrocarbon { carbon: 12.0, hydrogen: 23.4, gross_j_per_kg: 46.2e6, net_j_per_kg: 43.0e6 };

impl Hydrocarbon {
    /// The hydrocarbon that a fuel of the catalogue is taken as; none for electricity, oil and wood.
    #[must_use]
    pub fn of_fuel(key: &str) -> Option<Self> {
        match key {
            "propane" => Some(PROPANE),
            "natural-gas" => Some(METHANE),
            "kerosene" => Some(KEROSENE),
            _ => None,
        }
    }

    fn molar_kg(&self) -> f64 {
        self.carbon * CARBON + self.hydrogen * HYDROGEN
    }

    fn oxygen_per_molecule(&self) -> f64 {
        self.carbon + self.hydrogen / 4.0
    }

    /// Water made, kg per kg of fuel.
    #[must_use]
    pub fn water_kg_per_kg(&self) -> f64 {
        self.hydrogen / 2.0 * WATER / self.molar_kg()
    }

    /// Carbon dioxide made, kg per kg of fuel.
    #[must_use]
    pub fn carbon_dioxide_kg_per_kg(&self) -> f64 {
        self.carbon * CARBON_DIOXIDE / self.molar_kg()
    }

    /// Oxygen used, kg per kg of fuel.
    #[must_use]
    pub fn oxygen_kg_per_kg(&self) -> f64 {
        self.oxygen_per_molecule() * OXYGEN_GAS / self.molar_kg()
    }

    /// Air that just suffices, kg per kg of fuel.
    #[must_use]
    pub fn air_kg_per_kg(&self) -> f64 {
        self.oxygen_kg_per_kg() / OXYGEN_BY_MASS
    }

    /// Air that just suffices, volume per volume of the fuel as a gas.
    #[must_use]
    pub fn air_m3_per_m3(&self) -> f64 {
        self.oxygen_per_molecule() / OXYGEN_BY_VOLUME
    }

    /// Fuel burnt per kWh of gross heat, kg.
    #[must_use]
    pub fn kg_per_kwh_gross(&self) -> f64 {
        JOULES_PER_KWH / self.gross_j_per_kg
    }

    /// Fuel burnt per kWh of net heat, kg: the heat that an unvented flame gives as warmth.
    #[must_use]
    pub fn kg_per_kwh_net(&self) -> f64 {
        JOULES_PER_KWH / self.net_j_per_kg
    }

    /// Share of the gross heat that an unvented flame gives as warmth; the rest is in the vapour and comes back only
    /// where it condenses inside.
    #[must_use]
    pub fn sensible_share(&self) -> f64 {
        self.net_j_per_kg / self.gross_j_per_kg
    }

    /// Net heat content as it follows from the gross one and the water made, J/kg.
    #[must_use]
    pub fn net_by_water_j_per_kg(&self) -> f64 {
        self.gross_j_per_kg - VAPORISATION_J_PER_KG * self.water_kg_per_kg()
    }

    /// Carbon dioxide per kWh of gross heat, m³ at this temperature.
    #[must_use]
    pub fn carbon_dioxide_m3_per_kwh_gross(&self, t_c: f64) -> f64 {
        self.carbon_dioxide_kg_per_kg() * self.kg_per_kwh_gross() * gas_m3_per_kg(CARBON_DIOXIDE, t_c)
    }

    /// Air that just suffices per kWh of gross heat, m³ at this temperature.
    #[must_use]
    pub fn air_m3_per_kwh_gross(&self, t_c: f64) -> f64 {
        self.air_kg_per_kg() * self.kg_per_kwh_gross() * dry_air_m3_per_kg(t_c)
    }
}

/// Water that a flame makes, kg per kWh of gross heat: by the fuel's hydrogen where it is known, otherwise by what its
/// gross heat content has above its net one. None for electricity, whose net is its gross.
#[must_use]
pub fn water_kg_per_kwh_gross(fuel: &str, net_per_gross: f64) -> f64 {
    match Hydrocarbon::of_fuel(fuel) {
        Some(burnt) => burnt.water_kg_per_kg() * burnt.kg_per_kwh_gross(),
        None => JOULES_PER_KWH * (1.0 - net_per_gross).max(0.0) / VAPORISATION_J_PER_KG,
    }
}

/// Volume of an ideal gas of this molar mass (kg/mol) at the standard atmosphere, m³/kg.
#[must_use]
pub fn gas_m3_per_kg(molar_kg: f64, t_c: f64) -> f64 {
    MOLAR_GAS_CONSTANT * kelvin_from_c(t_c) / (STANDARD_PRESSURE_PA * molar_kg)
}

/// Rise of a gas above outdoors, as a share of the volume, while a room is fed at a steady rate from clean air on:
/// `S/(n V) (1 − exp(−n t))`; `S t/V` without air change. Well mixed.
#[must_use]
pub fn rise_after(source_m3_per_h: f64, volume_m3: f64, air_changes_per_h: f64, hours: f64) -> f64 {
    // exp_m1 keeps the digits where the room is nearly tight.
    let effective_h =
        if air_changes_per_h > 0.0 { -(-air_changes_per_h * hours).exp_m1() / air_changes_per_h } else { hours };
    source_m3_per_h / volume_m3 * effective_h
}

/// Rise at the end of a span that began with the rise `start`; otherwise as [`rise_after`].
#[must_use]
pub fn rise_from(start: f64, source_m3_per_h: f64, volume_m3: f64, air_changes_per_h: f64, hours: f64) -> f64 {
    start * (-air_changes_per_h * hours).exp() + rise_after(source_m3_per_h, volume_m3, air_changes_per_h, hours)
}

/// Rise above outdoors after a long time, as a share of the volume: `S/(n V)`; infinite without air change.
#[must_use]
pub fn steady_rise(source_m3_per_h: f64, volume_m3: f64, air_changes_per_h: f64) -> f64 {
    source_m3_per_h / (volume_m3 * air_changes_per_h)
}
