//! SI inside, °C for temperatures; conversions and physical constants live here and nowhere else.
//!
//! Conversion factors are exact by definition (international yard and pound, 1959) unless a source is named.

mod typed;

pub use typed::{TypedError, typed};

/// Seconds in an hour.
pub const SECONDS_PER_HOUR: f64 = 3600.0;
/// Joules in a kilowatt-hour.
pub const JOULES_PER_KWH: f64 = 3.6e6;
/// Hours in a day.
pub const HOURS_PER_DAY: usize = 24;
/// Kelvin at 0 °C.
pub const KELVIN_AT_0_C: f64 = 273.15;
/// Stefan–Boltzmann constant σ, W/(m²·K⁴) (CODATA 2018).
pub const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Standard gravity g, m/s².
pub const GRAVITY: f64 = 9.806_65;
/// Standard atmosphere at sea level, Pa.
pub const STANDARD_PRESSURE_PA: f64 = 101_325.0;
/// Molar gas constant R, J/(mol·K) (exact by the SI since 2019).
pub const MOLAR_GAS_CONSTANT: f64 = 8.314_462_618;
/// Metres in a foot.
pub const METRES_PER_FOOT: f64 = 0.3048;
/// Litres in a US gallon.
pub const LITRES_PER_US_GALLON: f64 = 3.785_411_784;
/// Kilograms in a pound.
pub const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;
/// Ounces in a pound.
pub const OUNCES_PER_POUND: f64 = 16.0;
/// Joules in a British thermal unit (International Table).
pub const JOULES_PER_BTU: f64 = 1_055.055_852_62;

/// °C to kelvin.
#[must_use]
pub fn kelvin_from_c(t_c: f64) -> f64 {
    t_c + KELVIN_AT_0_C
}

/// °C to °F.
#[must_use]
pub fn fahrenheit_from_c(t_c: f64) -> f64 {
    t_c * 1.8 + 32.0
}

/// °F to °C.
#[must_use]
pub fn c_from_fahrenheit(t_f: f64) -> f64 {
    (t_f - 32.0) / 1.8
}

/// Whether a clock hour lies in a span that begins at `from` and ends before `to`; over midnight if it ends before it
/// begins.
#[must_use]
pub fn within_clock_span(hour: f64, from: f64, to: f64) -> bool {
    if from <= to { from <= hour && hour < to } else { hour >= from || hour < to }
}

/// Joules to kilowatt-hours.
#[must_use]
pub fn kwh_from_joules(energy_j: f64) -> f64 {
    energy_j / JOULES_PER_KWH
}

/// The two families of units a person can see and type. Files and the engine are always metric.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, serde::Serialize, serde::Deserialize)]
pub enum UnitSystem {
    /// °C and metres.
    #[default]
    Metric,
    /// °F and feet.
    Imperial,
}

/// What a number means; decides its unit on screen and how many decimals it deserves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// A length of a building, m.
    Length,
    /// A small length such as the depth of potting medium, m in the file, cm or inches on screen.
    Depth,
    /// m².
    Area,
    /// m³.
    Volume,
    /// Litres.
    Liquid,
    /// °C.
    Temperature,
    /// K.
    TemperatureDifference,
    /// W.
    Power,
    /// kWh.
    Energy,
    /// W/(m²·K).
    UValue,
    /// W/K.
    HeatLossCoefficient,
    /// W/(m·K): an edge factor.
    EdgeFactor,
    /// m²·K/W.
    Resistance,
    /// Air changes per hour, 1/h.
    AirChanges,
    /// m³/h.
    AirFlow,
    /// m/s.
    Speed,
    /// Share of one, shown in percent.
    Share,
    /// Hour of the day, 0 to 24.
    HourOfDay,
    /// Compass direction, degrees clockwise from north.
    Direction,
    /// Degrees of latitude or longitude.
    Angle,
    /// A count of things.
    Count,
    /// A bare number without a unit.
    Ratio,
    /// Money in the user's currency.
    Money,
    /// kJ/(m²·K).
    AreaHeatCapacity,
    /// kg.
    Mass,
    /// Water on a surface, g/m².
    AreaMass,
    /// Money in the user's currency per m².
    MoneyPerArea,
    /// The area of a small opening, m² in the file, cm² or square inches on screen.
    SmallArea,
    /// Mass on an area, kg/m².
    AreaLoad,
    /// V.
    Voltage,
    /// A.
    Current,
}

/// How a quantity is shown in one family of units: `shown = value × factor + offset`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DisplayUnit {
    /// Unit text after the number, empty for bare numbers.
    pub symbol: &'static str,
    factor: f64,
    offset: f64,
    /// Decimals that carry meaning for a typed entry.
    pub decimals: usize,
}

impl DisplayUnit {
    /// The number to show for an internal value.
    #[must_use]
    pub fn shown(&self, value: f64) -> f64 {
        value * self.factor + self.offset
    }

    /// The internal value of a shown number.
    #[must_use]
    pub fn value(&self, shown: f64) -> f64 {
        (shown - self.offset) / self.factor
    }

    /// The internal size of a difference of one shown unit.
    #[must_use]
    pub fn step(&self) -> f64 {
        1.0 / self.factor
    }
}

impl Quantity {
    /// The unit of this quantity in a family of units.
    #[must_use]
    pub fn unit(self, system: UnitSystem) -> DisplayUnit {
        let u = |symbol, factor, decimals| DisplayUnit { symbol, factor, offset: 0.0, decimals };
        match (self, system) {
            (Self::Length, UnitSystem::Metric) => u("m", 1.0, 2),
            (Self::Length, UnitSystem::Imperial) => u("ft", 1.0 / METRES_PER_FOOT, 2),
            (Self::Depth, UnitSystem::Metric) => u("cm", 100.0, 1),
            (Self::Depth, UnitSystem::Imperial) => u("in", 12.0 / METRES_PER_FOOT, 1),
            (Self::Area, UnitSystem::Metric) => u("m²", 1.0, 2),
            (Self::Area, UnitSystem::Imperial) => u("ft²", METRES_PER_FOOT.powi(-2), 1),
            (Self::Volume, UnitSystem::Metric) => u("m³", 1.0, 1),
            (Self::Volume, UnitSystem::Imperial) => u("ft³", METRES_PER_FOOT.powi(-3), 0),
            (Self::Liquid, UnitSystem::Metric) => u("L", 1.0, 0),
            (Self::Liquid, UnitSystem::Imperial) => u("US gal", 1.0 / LITRES_PER_US_GALLON, 1),
            (Self::Temperature, UnitSystem::Metric) => u("°C", 1.0, 1),
            (Self::Temperature, UnitSystem::Imperial) => {
                DisplayUnit { symbol: "°F", factor: 1.8, offset: 32.0, decimals: 1 }
            }
            (Self::TemperatureDifference, UnitSystem::Metric) => u("K", 1.0, 1),
            (Self::TemperatureDifference, UnitSystem::Imperial) => u("°F", 1.8, 1),
            (Self::Power, _) => u("W", 1.0, 0),
            (Self::Energy, _) => u("kWh", 1.0, 0),
            (Self::UValue, UnitSystem::Metric) => u("W/m²K", 1.0, 2),
            (Self::UValue, UnitSystem::Imperial) => u("Btu/h·ft²·°F", 1.0 / U_PER_BTU, 3),
            (Self::HeatLossCoefficient, UnitSystem::Metric) => u("W/K", 1.0, 0),
            (Self::HeatLossCoefficient, UnitSystem::Imperial) => u("Btu/h·°F", 3600.0 / JOULES_PER_BTU / 1.8, 0),
            (Self::EdgeFactor, UnitSystem::Metric) => u("W/mK", 1.0, 2),
            (Self::EdgeFactor, UnitSystem::Imperial) => {
                u("Btu/h·ft·°F", METRES_PER_FOOT / U_PER_BTU / METRES_PER_FOOT.powi(2), 2)
            }
            (Self::Resistance, UnitSystem::Metric) => u("m²K/W", 1.0, 2),
            (Self::Resistance, UnitSystem::Imperial) => u("h·ft²·°F/Btu", U_PER_BTU, 2),
            (Self::AirChanges, _) => u("per hour", 1.0, 2),
            (Self::AirFlow, UnitSystem::Metric) => u("m³/h", 1.0, 0),
            (Self::AirFlow, UnitSystem::Imperial) => u("cfm", METRES_PER_FOOT.powi(-3) / 60.0, 0),
            (Self::Speed, UnitSystem::Metric) => u("m/s", 1.0, 1),
            (Self::Speed, UnitSystem::Imperial) => u("mph", 3600.0 / 1609.344, 1),
            (Self::Share, _) => u("%", 100.0, 0),
            (Self::HourOfDay, _) => u("h", 1.0, 0),
            (Self::Direction, _) => u("°", 1.0, 0),
            (Self::Angle, _) => u("°", 1.0, 3),
            (Self::Count, _) => u("", 1.0, 0),
            (Self::Ratio, _) => u("", 1.0, 2),
            (Self::Money, _) => u("", 1.0, 2),
            (Self::AreaHeatCapacity, UnitSystem::Metric) => u("kJ/m²K", 1.0, 1),
            (Self::AreaHeatCapacity, UnitSystem::Imperial) => {
                u("Btu/ft²·°F", 1000.0 / JOULES_PER_BTU / 1.8 * METRES_PER_FOOT.powi(2), 2)
            }
            (Self::Mass, UnitSystem::Metric) => u("kg", 1.0, 0),
            (Self::Mass, UnitSystem::Imperial) => u("lb", 1.0 / KILOGRAMS_PER_POUND, 0),
            (Self::AreaMass, UnitSystem::Metric) => u("g/m²", 1.0, 0),
            (Self::AreaMass, UnitSystem::Imperial) => {
                u("oz/ft²", OUNCES_PER_POUND / (1000.0 * KILOGRAMS_PER_POUND) * METRES_PER_FOOT.powi(2), 3)
            }
            (Self::MoneyPerArea, UnitSystem::Metric) => u("per m²", 1.0, 2),
            (Self::MoneyPerArea, UnitSystem::Imperial) => u("per ft²", METRES_PER_FOOT.powi(2), 2),
            (Self::SmallArea, UnitSystem::Metric) => u("cm²", 1e4, 0),
            (Self::SmallArea, UnitSystem::Imperial) => u("in²", 144.0 * METRES_PER_FOOT.powi(-2), 0),
            (Self::AreaLoad, UnitSystem::Metric) => u("kg/m²", 1.0, 0),
            (Self::AreaLoad, UnitSystem::Imperial) => {
                u("lb/ft²", METRES_PER_FOOT * METRES_PER_FOOT / KILOGRAMS_PER_POUND, 0)
            }
            (Self::Voltage, _) => u("V", 1.0, 0),
            (Self::Current, _) => u("A", 1.0, 1),
        }
    }
}

/// W/(m²·K) in one Btu/(h·ft²·°F).
const U_PER_BTU: f64 = JOULES_PER_BTU * 1.8 / 3600.0 / (METRES_PER_FOOT * METRES_PER_FOOT);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn imperial_factors_match_the_published_conversions() {
        // Rounded conversions printed in building handbooks: 5.678, 1.731, 0.29307, 0.1761, 40.75.
        let system = UnitSystem::Imperial;
        assert!((1.0 / Quantity::UValue.unit(system).shown(1.0) - 5.678).abs() < 5e-4);
        assert!((1.0 / Quantity::EdgeFactor.unit(system).shown(1.0) - 1.731).abs() < 5e-4);
        assert!((1.0 / Quantity::Resistance.unit(system).shown(1.0) - 0.1761).abs() < 5e-5);
        assert!((Quantity::Temperature.unit(system).shown(-40.0) + 40.0).abs() < 1e-9);
        // An ounce has 28.35 g, a square foot 0.0929 m².
        assert!((Quantity::AreaMass.unit(system).shown(28.35 / 0.0929) - 1.0).abs() < 5e-4);
        assert!((Quantity::AirFlow.unit(system).shown(1699.0) - 1000.0).abs() < 0.1);
    }

    #[test]
    fn clock_spans_run_over_midnight() {
        assert!(within_clock_span(7.0, 7.0, 19.0) && !within_clock_span(19.0, 7.0, 19.0));
        assert!(within_clock_span(23.5, 22.0, 6.0) && within_clock_span(5.5, 22.0, 6.0));
        assert!(!within_clock_span(12.0, 22.0, 6.0) && !within_clock_span(3.0, 3.0, 3.0));
    }

    #[test]
    fn every_shown_number_reads_back() {
        for q in [Quantity::Length, Quantity::Temperature, Quantity::Depth, Quantity::UValue, Quantity::Share] {
            for system in [UnitSystem::Metric, UnitSystem::Imperial] {
                let unit = q.unit(system);
                assert!((unit.value(unit.shown(3.217)) - 3.217).abs() < 1e-12);
            }
        }
    }
}
