//! Vents with wax openers, and the fan.

use super::input::inputs;
use std::ops::RangeInclusive;

/// Temperature at which wax openers begin to open, °C (common practice; makers' range).
pub const OPENERS_BEGIN_C: RangeInclusive<f64> = 15.0..=24.0;

inputs! {
    /// Vents and fan of the house.
    pub struct Vents {
        choices {
            present: bool = true, "Vents", "Openings moved by wax cylinders";
            fan_present: bool = false, "Fan", "An exhaust fan with its own thermostat";
        }
        numbers {
            inlet_area_m2: f64, Area, 0.0..=100.0, 0.6, "Low openings", "Free area of the low openings when full open", "";
            outlet_area_m2: f64, Area, 0.0..=100.0, 0.6, "High openings", "Free area of the high openings when full open", "";
            height_difference_m: f64, Length, 0.0..=9.0, 1.2, "Height between", "Height from the middle of the low to the middle of the high openings", "";
            opens_at_c: f64, Temperature, 5.0..=45.0, 20.0, "Starts to open", "House air temperature at which the openers start", "trade: adjustable 15 to 24 °C (common practice)";
            full_at_c: f64, Temperature, 6.0..=60.0, 30.0, "Full open at", "House air temperature at which they stand full open", "trade: 8 to 11 K above the start (common practice)";
            fan_flow_m3_per_h: f64, AirFlow, 0.0..=100000.0, 600.0, "Fan flow", "Air moved at full speed", "";
            fan_starts_at_c: f64, Temperature, 0.0..=50.0, 26.0, "Fan starts at", "Thermostat of the fan; full speed 2 K above", "";
            fan_w: f64, Power, 0.0..=5000.0, 60.0, "Fan power", "Electric power at full speed", "";
            allowed_rise_k: f64, TemperatureDifference, 1.0..=30.0, 8.0, "Allowed rise", "How far the house may be warmer than outdoors on the season's sunniest mild hour; decides the advice on openings and fan, not the season", "";
        }
    }
}

impl Vents {
    /// Whether the openers begin outside the trade's range.
    #[must_use]
    pub fn begin_outside_practice(&self) -> bool {
        self.present && !OPENERS_BEGIN_C.contains(&self.opens_at_c)
    }
}
