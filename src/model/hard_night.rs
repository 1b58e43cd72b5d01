//! A night harder than the season's own: mains that fail, and cold beyond this year's.

use super::input::inputs;
use serde::{Deserialize, Serialize};

/// When a power cut begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum CutStarts {
    /// With the coldest twelve hours of the season.
    Coldest,
    /// On a day of the season.
    At {
        /// 1 to 12.
        month: u32,
        /// 1 to 31.
        day: u32,
        /// Clock hour, local standard time, 0 to 23.
        hour: u32,
    },
}

inputs! {
    /// What is asked about hard nights; it changes no figure of the season itself.
    pub struct HardNight {
        choices {
            cut_starts: CutStarts = CutStarts::Coldest, "Power cut starts", "When the mains fail: with the coldest twelve hours of the season, or on a day of it";
        }
        numbers {
            cut_hours: u32, Count, 1..=96, 12, "Hours without mains", "How long the mains stay away", "";
            colder_by_k: f64, TemperatureDifference, 0.0..=30.0, 5.0, "Colder by", "How much colder than this year's the coldest spell is taken", "Typical years leave out the extremes of their decades: a modelling choice";
        }
    }
}
