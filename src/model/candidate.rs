//! Measures that may be bought: what each changes in a scenario, its price, and the years that it lasts.

use super::costs::Measure;
use super::covering::NightCover;
use super::heater::Heater;
use super::house::Tightness;
use super::input::inputs;
use super::tent::Tent;
use super::water::Vessels;
use serde::{Deserialize, Serialize};

/// What a measure changes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum CandidateChange {
    /// A further sheet on the inner side of the skin, by its key.
    Sheet(String),
    /// An inner tent, instead of the one that there may be.
    Tent(Tent),
    /// A cover drawn over the house at night.
    NightCover(NightCover),
    /// A cover drawn over the tent at night.
    TentNightCover(NightCover),
    /// Vessels of water, beside those that there are.
    Vessels(Vessels),
    /// Another first heater. It keeps the setpoints and their hours of the one that it replaces.
    Heater(Heater),
    /// A standby heater.
    Standby(Heater),
    /// An insulated floor edge, by its factor, W/(m·K).
    Edge(f64),
    /// Joints, laps and doors made tighter.
    Tightness(Tightness),
}

impl CandidateChange {
    /// What its price is for.
    #[must_use]
    pub fn measure(&self) -> Measure {
        match self {
            Self::Sheet(_) => Measure::Covering,
            Self::Tent(_) => Measure::Tent,
            Self::NightCover(_) => Measure::NightCover,
            Self::TentNightCover(_) => Measure::TentNightCover,
            Self::Vessels(_) => Measure::Vessel,
            Self::Heater(_) => Measure::Heater,
            Self::Standby(_) => Measure::StandbyHeater,
            Self::Edge(_) | Self::Tightness(_) => Measure::Other,
        }
    }

    /// What kind of measure it is, on screen.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Sheet(_) => "Further sheet",
            Self::Tent(_) => "Inner tent",
            Self::NightCover(_) => "Night cover",
            Self::TentNightCover(_) => "Tent night cover",
            Self::Vessels(_) => "Water vessels",
            Self::Heater(_) => "Heater",
            Self::Standby(_) => "Standby heater",
            Self::Edge(_) => "Insulated floor edge",
            Self::Tightness(_) => "Tighter joints and doors",
        }
    }

    /// Whether it stands in the place of another of its kind, so that two of them cannot be bought together.
    #[must_use]
    pub fn excludes(&self, other: &Self) -> bool {
        let adds = matches!(self, Self::Sheet(_) | Self::Vessels(_));
        !adds && std::mem::discriminant(self) == std::mem::discriminant(other)
    }
}

inputs! {
    /// A measure that may be bought.
    pub struct Candidate {
        choices {
            name: String = String::new(), "Name", "What it is";
            ticked: bool = true, "Ticked", "Whether the best buy looks at it";
            change: CandidateChange = CandidateChange::Sheet("film".to_owned()), "Changes", "What it changes in the scenario";
            note: String = String::new(), "Note", "What exactly, and where the price was read";
        }
        numbers {
            price: f64, Money, 0.0..=1000000.0, 0.0, "Price", "Price of one: of a square metre, a vessel, a heater; of edge and joints for all", "";
            life_years: f64, Count, 0.5..=100.0, 5.0, "Lasts, years", "Years before it is bought again", "the buyer's own estimate; film 3 to 4 years: common practice";
        }
    }
}
