//! Numbers of the workings in the reader's units, and the factors that join units which do not fit by themselves.

use super::account::{Factor, Number, decimals};
use crate::units::{JOULES_PER_BTU, Quantity, SECONDS_PER_HOUR, UnitSystem};

/// Watt-hours in a kilowatt-hour.
const WH_PER_KWH: f64 = 1000.0;
/// Watts in one Btu per hour.
const W_PER_BTU_PER_H: f64 = JOULES_PER_BTU / SECONDS_PER_HOUR;

/// How numbers are written.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ink<'a> {
    pub units: UnitSystem,
    pub currency: &'a str,
}

impl Ink<'_> {
    pub fn kwh(self, value: f64, decimals: usize) -> Number {
        Number::new(value, decimals, "kWh")
    }

    pub fn watts(self, value: f64, decimals: usize) -> Number {
        Number::new(value, decimals, "W")
    }

    /// Money, with cents as long as they are seen.
    pub fn money(self, value: f64) -> Number {
        let decimals = if value.abs() < 100_000.0 { 2 } else { 0 };
        Number { money: true, ..Number::new(value, decimals, self.currency) }
    }

    /// A price of one unit of something.
    pub fn price(self, value: f64) -> Number {
        Number { money: true, ..Number::new(value, decimals(value).max(2), self.currency) }
    }

    /// About four digits of a quantity.
    pub fn quantity(self, value: f64, quantity: Quantity) -> Number {
        let unit = quantity.unit(self.units);
        let shown = unit.shown(value);
        Number::new(shown, decimals(shown), unit.symbol)
    }

    /// A quantity with fixed decimals.
    pub fn exactly(self, value: f64, quantity: Quantity, decimals: usize) -> Number {
        let unit = quantity.unit(self.units);
        Number::new(unit.shown(value), decimals, unit.symbol)
    }

    pub fn temperature(self, t_c: f64) -> Number {
        self.exactly(t_c, Quantity::Temperature, 2)
    }

    /// Kelvin times hours.
    pub fn degree_hours(self, value_kh: f64) -> Number {
        let unit = Quantity::TemperatureDifference.unit(self.units);
        let shown = unit.shown(value_kh);
        Number::new(shown, decimals(shown).min(1), format!("{}·h", unit.symbol))
    }

    /// A difference of two temperatures as a factor, in the unit of differences.
    pub fn warmer(self, from_c: f64, than_c: f64) -> Factor {
        let symbol = Quantity::TemperatureDifference.unit(self.units).symbol;
        let named = |t_c: f64| Number { unit: symbol.to_owned(), ..self.temperature(t_c) };
        Factor::TimesDifference(named(from_c), named(than_c))
    }

    /// What turns a heat-loss coefficient times a difference into watts: nothing in metric units.
    pub fn to_watts(self) -> Option<Factor> {
        let factor = || Factor::Times(Number::new(W_PER_BTU_PER_H, 5, "W per Btu/h"));
        (self.units == UnitSystem::Imperial).then(factor)
    }

    /// What turns a heat-loss coefficient times degree-hours into kWh.
    pub fn to_kwh(self) -> Factor {
        match self.units {
            UnitSystem::Metric => Factor::Over(Number::exact(WH_PER_KWH, 0, "Wh per kWh")),
            UnitSystem::Imperial => Factor::Over(Number::new(WH_PER_KWH / W_PER_BTU_PER_H, 1, "Btu per kWh")),
        }
    }
}
