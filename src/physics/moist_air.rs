//! Water vapour in air: how much of it air can hold, and at what temperature it turns to water.
//!
//! Vapour is named by its partial pressure (Pa) or its density (kg/m³); relative humidity is a share of one.

use crate::units::{STANDARD_PRESSURE_PA, kelvin_from_c};
use std::sync::LazyLock;

/// Gas constant of water vapour, J/(kg·K) (ASHRAE Handbook Fundamentals, chapter 1).
pub const VAPOUR_GAS_CONSTANT: f64 = 461.524;
/// Gas constant of dry air, J/(kg·K) (ASHRAE Handbook Fundamentals, chapter 1).
pub const DRY_AIR_GAS_CONSTANT: f64 = 287.042;

/// Heat that turns water into vapour near 20 °C, J/kg (FAO Irrigation and Drainage Paper 56: 2.45 MJ/kg; from memory).
pub const EVAPORATION_J_PER_KG: f64 = 2.45e6;
/// Resistance of leaves, wet benches and trays to vapour at night, s/m: a leaf's 1,000 and its boundary layer's 200. A
/// modelling choice within the 500 to 2,000 s/m of vegetable leaves (Seginer, Kantz et al. 1990).
pub const NIGHT_RESISTANCE_S_PER_M: f64 = 1200.0;

/// Magnus form `e = 611.2 Pa × exp(a t/(b + t))`, over water and over ice.
const PRESSURE_AT_0_C_PA: f64 = 611.2;
const WATER: (f64, f64) = (17.62, 243.12);
const ICE: (f64, f64) = (22.46, 272.62);

/// Saturation pressure of vapour over water, Pa: `611.2 exp(17.62 t/(243.12 + t))`.
///
/// Valid from −45 to 60 °C, within 0.3 % of the Hyland–Wexler equations. Below 0 °C it is that of supercooled water,
/// 5 % above ice at −5 °C and 22 % at −20 °C.
///
/// # References
/// World Meteorological Organization, Guide No. 8, Annex 4.B.
#[must_use]
pub fn saturation_pa(t_c: f64) -> f64 {
    magnus_pa(WATER, t_c)
}

/// Saturation pressure of vapour over ice, Pa: `611.2 exp(22.46 t/(272.62 + t))`. Valid from −65 to 0 °C.
///
/// # References
/// World Meteorological Organization, Guide No. 8, Annex 4.B (coefficients from memory).
#[must_use]
pub fn saturation_over_ice_pa(t_c: f64) -> f64 {
    magnus_pa(ICE, t_c)
}

/// Saturation pressure of vapour over a wet surface, Pa: over ice below 0 °C, where it is frost that grows, over water
/// from there on.
#[must_use]
pub fn surface_saturation_pa(t_c: f64) -> f64 {
    if t_c < 0.0 { saturation_over_ice_pa(t_c) } else { saturation_pa(t_c) }
}

fn magnus_pa((a, b): (f64, f64), t_c: f64) -> f64 {
    PRESSURE_AT_0_C_PA * (a * t_c / (b + t_c)).exp()
}

/// Temperature at which vapour of this pressure is saturated over water, °C: the inverse of [`saturation_pa`].
/// Minus infinity for no vapour at all.
#[must_use]
pub fn dew_point_c(vapour_pa: f64) -> f64 {
    if vapour_pa <= 0.0 {
        return f64::NEG_INFINITY;
    }
    let (a, b) = WATER;
    let y = (vapour_pa / PRESSURE_AT_0_C_PA).ln();
    b * y / (a - y)
}

/// Density of vapour, kg/m³: `e/(R_v T)`.
#[must_use]
pub fn vapour_kg_per_m3(vapour_pa: f64, t_c: f64) -> f64 {
    vapour_pa / (VAPOUR_GAS_CONSTANT * kelvin_from_c(t_c))
}

/// Density of vapour in saturated air over water, kg/m³.
#[must_use]
pub fn saturation_kg_per_m3(t_c: f64) -> f64 {
    vapour_kg_per_m3(saturation_pa(t_c), t_c)
}

/// Density of vapour in air that is saturated over a wet or frosted surface, kg/m³.
#[must_use]
pub fn surface_saturation_kg_per_m3(t_c: f64) -> f64 {
    vapour_kg_per_m3(surface_saturation_pa(t_c), t_c)
}

/// First temperature of the table, its steps per kelvin, and how many there are: −60 to 80 °C.
const TABLE_FROM_C: f64 = -60.0;
const TABLE_PER_K: f64 = 8.0;
const TABLE_STEPS: usize = 140 * 8;

/// Density of saturated vapour, kg/m³, by temperature, °C.
type Density = fn(f64) -> f64;

/// A density of saturated vapour in a table, for the many values of a season; filled by its formula when it is first
/// asked for.
#[derive(Debug)]
pub struct SaturationTable {
    formula: Density,
    values: [f64; TABLE_STEPS + 1],
}

impl SaturationTable {
    fn new(formula: Density) -> Self {
        let at = |i| formula(TABLE_FROM_C + i as f64 / TABLE_PER_K);
        Self { formula, values: std::array::from_fn(at) }
    }

    /// Of air: [`saturation_kg_per_m3`]. Relative humidity and dew point are over water below 0 °C too, as weather
    /// services report them; mist in air is supercooled water.
    #[must_use]
    pub fn of_air() -> &'static Self {
        static TABLE: LazyLock<SaturationTable> = LazyLock::new(|| SaturationTable::new(saturation_kg_per_m3));
        &TABLE
    }

    /// Of surfaces: [`surface_saturation_kg_per_m3`].
    #[must_use]
    pub fn of_surfaces() -> &'static Self {
        static TABLE: LazyLock<SaturationTable> = LazyLock::new(|| SaturationTable::new(surface_saturation_kg_per_m3));
        &TABLE
    }

    /// Density of saturated vapour, kg/m³: straight lines over an eighth of a kelvin, within 4·10⁻⁵ of the formula; the
    /// formula itself outside −60 to 80 °C.
    #[must_use]
    pub fn kg_per_m3(&self, t_c: f64) -> f64 {
        let place = (t_c - TABLE_FROM_C) * TABLE_PER_K;
        if !(0.0..TABLE_STEPS as f64).contains(&place) {
            return (self.formula)(t_c);
        }
        let index = (place as usize).min(TABLE_STEPS - 1);
        let (low, high) = (self.values[index], self.values[index + 1]);
        low + (high - low) * (place - index as f64)
    }
}

/// Vapour per dry air, kg/kg: `0.622 e/(p − e)`. Ideal gases: real saturated air holds 0.4 to 0.5 % more.
///
/// # References
/// ASHRAE Handbook Fundamentals 2017, chapter 1, eq. 20.
#[must_use]
pub fn humidity_ratio(vapour_pa: f64, air_pressure_pa: f64) -> f64 {
    DRY_AIR_GAS_CONSTANT / VAPOUR_GAS_CONSTANT * vapour_pa / (air_pressure_pa - vapour_pa)
}

/// Pressure of the standard atmosphere at a height above the sea, Pa. Valid from −5,000 to 11,000 m.
///
/// # References
/// ASHRAE Handbook Fundamentals 2017, chapter 1, eq. 3.
#[must_use]
pub fn air_pressure_pa(height_m: f64) -> f64 {
    STANDARD_PRESSURE_PA * (1.0 - 2.255_77e-5 * height_m).powf(5.2559)
}

/// Volume of dry air, m³/kg, at the standard atmosphere.
#[must_use]
pub fn dry_air_m3_per_kg(t_c: f64) -> f64 {
    DRY_AIR_GAS_CONSTANT * kelvin_from_c(t_c) / STANDARD_PRESSURE_PA
}

/// Water that a wet surface gives to air, kg/(m²·s): difference of vapour density over the resistance on its way,
/// s/m. Nothing where the air is the damper one.
///
/// Leaves at night 500 to 2,000 s/m (vegetables), 2,000 to 5,000 s/m (foliage and flower plants); the boundary layer
/// adds to that.
///
/// # References
/// Seginer, Kantz et al. 1990, night leaf resistance of greenhouse plants.
#[must_use]
pub fn evaporation_kg_per_m2s(surface_kg_per_m3: f64, air_kg_per_m3: f64, resistance_s_per_m: f64) -> f64 {
    (surface_kg_per_m3 - air_kg_per_m3).max(0.0) / resistance_s_per_m
}

/// Water that air exchange carries out of a volume, kg/h; negative where the outdoor air is the damper one.
#[must_use]
pub fn carried_kg_per_h(volume_m3: f64, air_changes_per_h: f64, inside_kg_per_m3: f64, outdoor_kg_per_m3: f64) -> f64 {
    volume_m3 * air_changes_per_h * (inside_kg_per_m3 - outdoor_kg_per_m3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dew_point_undoes_saturation() {
        for t_c in [-30.0, -5.0, 0.0, 12.3, 40.0] {
            assert!((dew_point_c(saturation_pa(t_c)) - t_c).abs() < 1e-9, "{t_c}");
        }
        assert!(dew_point_c(0.0) == f64::NEG_INFINITY);
    }

    #[test]
    fn the_table_is_the_formula() {
        // Half a step's curvature: h²/8 × (d²c/dt²)/c is below 4·10⁻⁵ above −60 °C.
        let tables: [(&SaturationTable, Density); 2] = [
            (SaturationTable::of_air(), saturation_kg_per_m3),
            (SaturationTable::of_surfaces(), surface_saturation_kg_per_m3),
        ];
        for (table, formula) in tables {
            for k in -7500..9000 {
                let t_c = f64::from(k) / 100.0;
                let (got, exact) = (table.kg_per_m3(t_c), formula(t_c));
                assert!((got / exact - 1.0).abs() < 4e-5, "{t_c}: {got} {exact}");
            }
            assert!(table.kg_per_m3(f64::NAN).is_nan());
        }
    }

    #[test]
    fn a_surface_drier_than_the_air_gives_nothing() {
        assert!(evaporation_kg_per_m2s(0.008, 0.010, 1000.0) == 0.0);
    }
}
