//! The mains that the heaters hang on.

use super::input::inputs;
use serde::{Deserialize, Serialize};

/// How heaters are joined to the mains.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub enum Plug {
    /// Not looked up yet.
    #[default]
    NotKnown,
    /// Wired in, without plug or socket.
    Wired,
    /// By plug and socket, or by the fuse in the plug, of this rating, A.
    Rated(f64),
}

/// Range of a plug's rating, A.
pub const PLUG_RANGE_A: std::ops::RangeInclusive<f64> = 1.0..=63.0;

inputs! {
    /// The circuit that all electric heaters of a scenario share.
    pub struct Circuit {
        choices {}
        numbers {
            volts: f64, Voltage, 100.0..=480.0, 230.0, "Volts", "Voltage between the conductors that feed the heater", "nominal voltages: 230 V, North America 120 and 240 V (from memory)";
            rating_a: f64, Current, 1.0..=400.0, 16.0, "Breaker or fuse", "Rating printed on the circuit's breaker or fuse", "";
        }
    }
}

inputs! {
    /// Mains at the house.
    pub struct Mains {
        choices {
            circuit: Option<Circuit> = None, "Circuit", "Volts and rating of the circuit that the heaters share; none while it is not known";
            plug: Plug = Plug::NotKnown, "Plug", "Whether heaters are wired in, or by a plug of which rating";
        }
        numbers {}
    }
}
