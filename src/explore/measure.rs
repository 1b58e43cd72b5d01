//! What a sweep is drawn of.

use crate::format;
use crate::season::lean::SeasonFigures;
use crate::units::{Quantity, UnitSystem};

/// A figure of a season.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Measured {
    /// Money.
    #[default]
    Cost,
    /// What the first heater buys, in the unit that it is bought in.
    Fuel,
    /// Lowest hourly mean of the crop's air, °C.
    Lowest,
    /// Hours below the crop limit.
    HoursShort,
}

impl Measured {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Cost, Self::Fuel, Self::Lowest, Self::HoursShort];

    /// Name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Cost => "Winter cost",
            Self::Fuel => "Fuel",
            Self::Lowest => "Lowest at the crop",
            Self::HoursShort => "Hours short",
        }
    }

    /// Of a season in few figures; none where it is not known.
    #[must_use]
    pub fn of(self, season: &SeasonFigures) -> Option<f64> {
        match self {
            Self::Cost => season.cost,
            Self::Fuel => (!season.fuel_unit.is_empty()).then_some(season.fuel_quantity),
            Self::Lowest => Some(season.crop_zone_min_c),
            Self::HoursShort => Some(season.hours_below_crop_limit as f64),
        }
    }

    /// The number on screen.
    #[must_use]
    pub fn shown(self, value: f64, units: UnitSystem) -> f64 {
        if self == Self::Lowest { Quantity::Temperature.unit(units).shown(value) } else { value }
    }

    /// The number on screen as a person reads it, without its unit.
    #[must_use]
    pub fn number(self, shown: f64) -> String {
        match self {
            Self::Cost => format::amount(shown),
            Self::Fuel => format::fuel(shown),
            Self::Lowest => format::number(shown, 1),
            Self::HoursShort => format::number(shown, 0),
        }
    }

    /// The same with its unit; `fuel_unit` is the one that the fuel is bought in.
    #[must_use]
    pub fn text(self, shown: f64, currency: &str, fuel_unit: &str, units: UnitSystem) -> String {
        let number = self.number(shown);
        match self {
            Self::Cost => format::with_currency(&number, currency),
            Self::Fuel => format::bought(&number, fuel_unit),
            Self::Lowest => format!("{number} {}", Quantity::Temperature.unit(units).symbol),
            Self::HoursShort => format!("{number} h"),
        }
    }

    /// Name with its unit, for an axis.
    #[must_use]
    pub fn title(self, currency: &str, fuel_unit: &str, units: UnitSystem) -> String {
        let unit = match self {
            Self::Cost => currency,
            Self::Fuel => fuel_unit,
            Self::Lowest => Quantity::Temperature.unit(units).symbol,
            Self::HoursShort => "h below the crop limit",
        };
        format!("{}, {unit}", self.name())
    }
}
