//! The crop and the bench it stands on.

use super::input::inputs;
use super::water::Zone;

inputs! {
    /// What is grown and what it can bear.
    pub struct Crop {
        choices {
            name: String = "Vegetable starts".to_owned(), "Crop", "What is grown";
            kind: String = String::new(), "Kind", "Crop of the catalogue, for its limits and weeks; empty for one of your own";
            planting_out: Option<(u32, u32)> = None, "Planting out", "Month and day on which it leaves the house; sowing is counted back from it";
            zone: Zone = Zone::Tent, "Grows in", "The zone whose air decides whether it lives";
        }
        numbers {
            wanted_air_c: f64, Temperature, -5.0..=30.0, 8.0, "Wanted air", "Air temperature that the crop wants at night", "";
            limit_c: f64, Temperature, -15.0..=25.0, 2.0, "Crop limit", "Air temperature below which the crop is harmed", "chilling and freezing classes: UMass Greenhouse Update, 19 March 2021";
            transpiration_share: f64, Share, 0.0..=0.7, 0.5, "Sun into vapour", "Share of the sun on planted or wet ground that leaves as vapour", "modelling choice; 0.5 for a full, watered canopy (from memory)";
        }
    }
}

inputs! {
    /// Benches and the potting medium on them. Under a tent round a bench, the tent's base is the bench.
    pub struct Bench {
        choices {
            present: bool = true, "Bench", "Benches with trays";
            zone: Zone = Zone::Tent, "Stands in", "The zone that it stands in";
            tray: String = "1020".to_owned(), "Tray", "Kind of tray, from the catalogue";
        }
        numbers {
            count: u32, Count, 1..=50, 1, "How many", "Number of equal benches", "";
            length_m: f64, Length, 0.2..=60.0, 4.0, "Length", "Length of a bench", "";
            width_m: f64, Length, 0.2..=5.0, 1.0, "Width", "Width of a bench", "";
            height_m: f64, Length, 0.0..=2.0, 0.8, "Height", "Height of the bench board above the floor", "";
            cells: u32, Count, 1..=1000, 72, "Cells in a tray", "Plants that one tray holds", "trade pages: 50, 72, 128 and 200";
            medium_depth_m: f64, Depth, 0.0..=0.5, 0.05, "Potting medium", "Depth of moist medium on the bench, averaged over it", "";
        }
    }
}
