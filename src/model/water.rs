//! The water store: drums, butts and bottles that carry the day's warmth into the night.

use super::input::inputs;
use serde::{Deserialize, Serialize};

/// One of the two zones. The tent stands for the house while no tent is put up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Zone {
    /// The plant house.
    House,
    /// The inner tent; the house while there is none.
    Tent,
}

inputs! {
    /// A number of equal vessels of water.
    pub struct Vessels {
        choices {
            name: String = "Drums".to_owned(), "Name", "What they are";
            zone: Zone = Zone::House, "Stand in", "The zone whose air they touch";
        }
        numbers {
            count: u32, Count, 0..=500, 4, "How many", "Number of equal vessels", "";
            litres_each: f64, Liquid, 0.5..=5000.0, 208.0, "Water in each", "Water in one vessel, leaving a tenth for ice", "55 US gallon drum";
            exposed_area_m2_each: f64, Area, 0.0..=50.0, 1.25, "Exposed area of each", "Surface that touches the air: a drum in a row shows 70 % of side and lid", "geometry of a 0.572 × 0.851 m drum; the 70 % is a modelling choice";
            sunlit_area_m2_each: f64, Area, 0.0..=50.0, 0.5, "Sunlit area of each", "Area that the sun can strike", "drum side seen from the front, 0.572 × 0.851 m";
            absorptance: f64, Share, 0.0..=1.0, 0.9, "Absorptance", "Share of the striking sun that is taken up: black 90 %, blue 70 %, bare steel 50 %", "common practice";
            footprint_m2_each: f64, Area, 0.0..=50.0, 0.27, "Floor under each", "Floor that one vessel takes up", "23 inch drum";
        }
    }
}

inputs! {
    /// All vessels of the scenario.
    pub struct WaterStore {
        choices {
            present: bool = false, "Water store", "Water that stores the day's warmth";
            vessels: Vec<Vessels> = vec![Vessels::default()], "Vessels", "Groups of equal vessels";
        }
        numbers {}
    }
}
