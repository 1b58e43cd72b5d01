//! What the house is covered with, by part, and what is drawn over it at night.

use super::house::Part;
use super::input::{Doubt, Off, inputs};
use serde::{Deserialize, Serialize};

/// What closes one part of the house instead of the covering of the rest.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum PartCovering {
    /// Sheets of the catalogue, outermost first.
    Sheets(Vec<String>),
    /// A wall that passes no light, by its thermal transmittance, W/(m²·K).
    Opaque(f64),
}

/// One part that differs from the rest of the house.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PartException {
    /// Which part.
    pub part: Part,
    /// What closes it.
    pub covering: PartCovering,
}

/// When a night cover is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Drawn {
    /// Whenever there is no sun to speak of.
    BySun,
    /// Between two clock hours, local standard time; over midnight if `from` is the later.
    Between {
        /// Hour at which it is drawn.
        from_hour: f64,
        /// Hour at which it is opened.
        to_hour: f64,
    },
}

inputs! {
    /// The covering of the house.
    pub struct Covering {
        choices {
            sheets: Vec<String> = vec!["film".to_owned()], "Sheets", "Layers of the skin, outermost first",
                doubt Doubt { off: Off::Share(0.10), reason: "Single film has 5.7 to 6.8 W/(m²·K) in published tables (eXtension farm energy course), makers' tables of one twin-wall sheet differ by 3 %, and wind moves all of them" };
            exceptions: Vec<PartException> = Vec::new(), "Parts that differ", "A wall or roof with sheets of its own, or boarded";
        }
        numbers {}
    }
}

inputs! {
    /// A cover or screen that is drawn at night.
    pub struct NightCover {
        choices {
            present: bool = false, "Night cover", "A cover or screen drawn when the sun is gone";
            screen: String = "fleece-screen".to_owned(), "Screen", "Which cover, from the catalogue";
            parts: Vec<Part> = vec![Part::Front, Part::Back, Part::Ends, Part::Roof], "Covers", "Parts of the house that it covers; a tent's cover covers the whole tent";
            drawn: Drawn = Drawn::BySun, "Drawn", "By the sun, or between two clock hours";
        }
        numbers {}
    }
}
