//! The inner tent: a box of film or fleece round the bench.

use super::covering::NightCover;
use super::input::{Doubt, Off, inputs};
use serde::{Deserialize, Serialize};

/// What the tent stands on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum TentBase {
    /// The floor of the house.
    Floor,
    /// A bench board, which is its base.
    Bench,
    /// A bench board with insulation under it.
    InsulatedBench,
}

/// When the tent is opened to the house.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum TentOpening {
    /// Kept shut.
    Never,
    /// Open while there is sun.
    ByDay,
    /// Opens over 2 K above this tent temperature, °C.
    Above(f64),
}

inputs! {
    /// The inner tent.
    pub struct Tent {
        choices {
            present: bool = false, "Inner tent", "A tent round the bench inside the house";
            base: TentBase = TentBase::Bench, "Stands on", "The floor, or a bench board that is its base";
            sheets: Vec<String> = vec!["film".to_owned()], "Sheets", "Layers of the tent, outermost first";
            opening: TentOpening = TentOpening::Above(28.0), "Opened", "When the tent is opened to the house";
            night_cover: NightCover = NightCover::default(), "Tent night cover", "A cover drawn over the tent at night";
        }
        numbers {
            length_m: f64, Length, 0.3..=60.0, 4.0, "Length", "Length of the tent", "";
            width_m: f64, Length, 0.3..=20.0, 1.2, "Width", "Width of the tent", "";
            height_m: f64, Length, 0.2..=6.0, 0.9, "Height", "Height of the tent above its base", "";
            base_height_m: f64, Length, 0.0..=3.0, 0.8, "Bench board at", "Height of the bench board above the floor, for a tent round a bench", "";
            offset_m: f64, Length, -10.0..=10.0, 0.0, "Moved forward", "How far the tent stands in front of the middle of the house; negative is towards the back", "";
            air_changes_per_h: f64, AirChanges, 0.0..=20.0, 0.5, "Air changes", "Air exchanged between tent and house through flaps and seams", "common practice: 0.5 pinned and weighted, 1 to 2 loosely hung",
                doubt Doubt { off: Off::Share(0.5), reason: "0.5 per hour pinned and weighted, 1 to 2 loosely hung, and nobody measures it (common practice)" };
            planted_share: f64, Share, 0.0..=1.0, 0.8, "Planted base", "Share of the tent's base that is planted or kept wet", "modelling choice";
        }
    }
}
