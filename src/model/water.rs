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

/// What vessels stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Stand {
    /// The floor or the ground.
    Floor,
    /// A bench or a shelf.
    Bench,
}

/// Range of the share of a vessel left empty.
pub const HEADSPACE_RANGE: std::ops::RangeInclusive<f64> = 0.0..=0.9;
/// Range of what a floor or a bench bears, kg/m².
pub const BEARS_RANGE_KG_PER_M2: std::ops::RangeInclusive<f64> = 0.0..=50_000.0;

inputs! {
    /// A number of equal vessels of water.
    pub struct Vessels {
        choices {
            name: String = "Drums".to_owned(), "Name", "What they are";
            zone: Zone = Zone::House, "Stand in", "The zone whose air they touch";
            stand: Stand = Stand::Floor, "Stand on", "Floor or bench, which must bear their weight";
            bears_kg_per_m2: Option<f64> = None, "It bears", "Load that this floor or bench is made for; off while it is not known";
            headspace: Option<f64> = None, "Left empty", "Share of each vessel left empty for ice, in a vessel that is not sealed; off while it is not known, 0 if sealed or full";
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
