//! What is there to keep people and crop from harm.

use super::input::inputs;
use serde::{Deserialize, Serialize};

/// Whether a thing is there, as far as the grower has looked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Answer {
    /// Not looked up yet.
    #[default]
    NotKnown,
    /// It is there.
    Yes,
    /// It is not there.
    No,
}

impl Answer {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::NotKnown, Self::Yes, Self::No];

    /// Name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::NotKnown => "not known",
            Self::Yes => "yes",
            Self::No => "no",
        }
    }
}

/// Range of the opening for a flame's air, m².
pub const OPENING_RANGE_M2: std::ops::RangeInclusive<f64> = 0.0..=2.0;

inputs! {
    /// Alarms, cut-outs and the air of flames. They alter no heat; the checks ask for them.
    pub struct Precautions {
        choices {
            residual_current_device: Answer = Answer::NotKnown, "RCD or GFCI", "Whether a residual-current device (a ground-fault interrupter) guards everything electric in the house";
            carbon_monoxide_alarm: Answer = Answer::NotKnown, "CO alarm", "Whether a carbon monoxide alarm hangs where a flame burns";
            low_temperature_alarm: Answer = Answer::NotKnown, "Frost alarm", "Whether an alarm wakes somebody before the crop freezes";
            combustion_air_m2: Option<f64> = None, "Air for flames", "Free area of the openings to outdoors that are never shut; off while it is not known, 0 if there are none";
        }
        numbers {
            cylinders: u32, Count, 1..=20, 1, "Cylinders connected", "Gas cylinders that feed the heater at the same time", "";
        }
    }
}
