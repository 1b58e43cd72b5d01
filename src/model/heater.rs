//! Heaters: power, fuel, efficiency, where the heat goes and what the thermostat holds.

use super::input::{Doubt, Off, inputs};
use super::water::Zone;
use crate::units::within_clock_span;
use serde::{Deserialize, Serialize};

/// What a heater warms, which is also what its thermostat senses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum HeatTarget {
    /// The air of the zone.
    Air,
    /// The benches: a mat under the trays. Belongs to a tent.
    Bench,
    /// The water store: an immersion heater.
    Water,
}

/// Which heat content of the fuel an efficiency is measured on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum HeatBasis {
    /// Gross, or higher heating value: with the heat of the vapour in the burnt gas.
    Gross,
    /// Net, or lower heating value: without it.
    Net,
}

inputs! {
    /// A heater with its thermostat.
    pub struct Heater {
        choices {
            present: bool = true, "Heater", "Whether it is installed";
            name: String = "Fan heater".to_owned(), "Name", "What it is";
            fuel: String = "electricity".to_owned(), "Fuel", "Energy it runs on, from the catalogue";
            zone: Zone = Zone::Tent, "Stands in", "The zone that it heats";
            target: HeatTarget = HeatTarget::Air, "Heats", "Air, benches or water; the thermostat senses the same";
            basis: HeatBasis = HeatBasis::Gross, "Efficiency on", "Whether the efficiency is of the gross heat content, vapour included, or of the net one, as some makers print it";
            vented: bool = false, "Flue", "Whether the burnt gas leaves through a flue";
            needs_mains: bool = true, "Needs mains", "Whether it stops in a power cut";
            heat_pump: bool = false, "Heat pump", "Efficiency follows the outdoor temperature";
            setpoint_day_c: Option<f64> = Some(8.0), "Day setpoint", "Temperature held by day; none is off",
                doubt Doubt { off: Off::By(1.0), reason: "Dials and sensors of small heaters are a kelvin off (common practice)" };
            setpoint_night_c: Option<f64> = Some(8.0), "Night setpoint", "Temperature held by night; none is off";
        }
        numbers {
            rated_w: f64, Power, 0.0..=200000.0, 2000.0, "Rated output", "Most heat that it gives to the house", "";
            efficiency: f64, Share, 0.2..=1.0, 1.0, "Efficiency", "Heat to the house per heat in the fuel, on the basis chosen", "see the heater catalogue",
                doubt Doubt { off: Off::Share(0.05), reason: "Heaters with a flue have 80 to 83 %, condensing ones 90 to 98 % (US Department of Energy, Energy Saver); soot and age take some of it (common practice)" };
            fan_w: f64, Power, 0.0..=5000.0, 0.0, "Fan and pump", "Electric power while it runs full", "";
            sink_c: f64, Temperature, 15.0..=55.0, 30.0, "Warm side", "Temperature at which a heat pump gives its heat", "Staffell et al. 2012, A review of domestic heat pumps";
            day_from_hour: f64, HourOfDay, 0.0..=24.0, 7.0, "Day from", "Clock hour, standard time, at which the day setpoint begins", "";
            day_to_hour: f64, HourOfDay, 0.0..=24.0, 19.0, "Day to", "Clock hour, standard time, at which the night setpoint begins", "";
        }
    }
}

/// Range of a heater's setpoint, °C.
pub const SETPOINT_RANGE_C: std::ops::RangeInclusive<f64> = -5.0..=35.0;

impl Heater {
    /// The setpoint at a clock hour, °C; `None` when off. Day runs over midnight if it ends before it starts.
    #[must_use]
    pub fn setpoint_c(&self, hour_of_day: f64) -> Option<f64> {
        let by_day = within_clock_span(hour_of_day, self.day_from_hour, self.day_to_hour);
        if by_day { self.setpoint_day_c } else { self.setpoint_night_c }
    }

    /// The higher of day and night setpoint, °C; `None` when both are off.
    #[must_use]
    pub fn higher_setpoint_c(&self) -> Option<f64> {
        match (self.setpoint_day_c, self.setpoint_night_c) {
            (Some(day), Some(night)) => Some(day.max(night)),
            (day, night) => day.or(night),
        }
    }

    /// Heat to the house per gross heat in the fuel: what is bought is billed by its gross heat.
    #[must_use]
    pub fn gross_efficiency(&self, net_per_gross: f64) -> f64 {
        match self.basis {
            HeatBasis::Gross => self.efficiency,
            HeatBasis::Net => self.efficiency * net_per_gross,
        }
    }
}
