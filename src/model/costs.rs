//! What a scenario costs to buy, line by line, with the years that each thing lasts.

use super::input::inputs;
use serde::{Deserialize, Serialize};

/// What a price is for, which decides how often the scenario pays it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Measure {
    /// The skin, per square metre that passes light.
    Covering,
    /// The inner tent, per square metre of its wall and top.
    Tent,
    /// The night cover, per square metre of the parts that it covers.
    NightCover,
    /// The tent's night cover, per square metre of the tent.
    TentNightCover,
    /// A vessel of the water store, each.
    Vessel,
    /// The first heater.
    Heater,
    /// The standby heater.
    StandbyHeater,
    /// Vents and fan, together.
    Vents,
    /// Anything else, once.
    Other,
}

impl Measure {
    /// All of them, in the order of the editor.
    pub const ALL: [Self; 9] = [
        Self::Covering,
        Self::Tent,
        Self::NightCover,
        Self::TentNightCover,
        Self::Vessel,
        Self::Heater,
        Self::StandbyHeater,
        Self::Vents,
        Self::Other,
    ];

    /// Name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Covering => "Covering",
            Self::Tent => "Inner tent",
            Self::NightCover => "Night cover",
            Self::TentNightCover => "Tent night cover",
            Self::Vessel => "Water vessels",
            Self::Heater => "Heater",
            Self::StandbyHeater => "Standby heater",
            Self::Vents => "Vents and fan",
            Self::Other => "Something else",
        }
    }

    /// Whether its price is for a square metre.
    #[must_use]
    pub fn by_area(self) -> bool {
        matches!(self, Self::Covering | Self::Tent | Self::NightCover | Self::TentNightCover)
    }
}

inputs! {
    /// One thing to buy.
    pub struct CostLine {
        choices {
            measure: Measure = Measure::Other, "What for", "What is bought; areas and numbers follow the drawing";
            note: String = String::new(), "Note", "What exactly, and where the price was read";
        }
        numbers {
            price: f64, Money, 0.0..=1000000.0, 0.0, "Price", "Price of one: of a square metre, a vessel, a heater", "";
            life_years: f64, Count, 0.5..=100.0, 5.0, "Lasts, years", "Years before it is bought again", "the buyer's own estimate; film 3 to 4 years: common practice";
        }
    }
}
