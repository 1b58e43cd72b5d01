//! Kinds of crop: what they need to sprout and to grow on, and what cold they bear.

use serde::{Deserialize, Serialize};

/// A range; where sources differ it holds all of them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Span {
    /// Lowest.
    pub low: f64,
    /// Highest.
    pub high: f64,
}

/// Soil temperature for germination, °C.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GerminationSoil {
    /// Below this no seed sprouts.
    pub min_c: Span,
    /// Range in which most sprout.
    pub range_c: Span,
    /// Where they sprout best.
    pub best_c: Span,
    /// Above this no seed sprouts.
    pub max_c: Span,
}

/// Days from sowing to emergence at one soil temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Emergence {
    /// Soil, °C.
    pub soil_c: f64,
    /// Days; none where no seedling comes up.
    #[serde(default)]
    pub days: Option<Span>,
}

/// How a crop takes cold above freezing (UMass Greenhouse Update, 19 March 2021).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Chilling {
    /// May not survive below 5.6 °C; injury can begin at 12.8 °C.
    Sensitive,
    /// Growth stops below 4.4 °C.
    Intermediate,
    /// No injury down to freezing.
    Tolerant,
}

/// How a crop takes frost (lists of master gardeners).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Frost {
    /// Damaged by light frost, −2.2 to 0 °C.
    Tender,
    /// Withstands light frost.
    LightFrost,
    /// Withstands hard frost, below −2.2 °C.
    HardFrost,
}

/// A kind of crop. A field is empty where no source was read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CropKind {
    /// Name in files.
    pub key: String,
    /// Name on screen.
    pub name: String,
    /// Soil for germination.
    #[serde(default)]
    pub soil: Option<GerminationSoil>,
    /// Soil at which it is realistic to sow, °C.
    #[serde(default)]
    pub sowing_c: Option<f64>,
    /// Days to emergence by soil temperature, from cold to warm.
    #[serde(default)]
    pub emergence: Vec<Emergence>,
    /// Mix on a mat or in a chamber until the root shows, °C.
    #[serde(default)]
    pub germination_c: Option<Span>,
    /// Air by day for transplants, °C.
    #[serde(default)]
    pub day_c: Option<Span>,
    /// Lowest night for growth on schedule, °C; not for survival.
    #[serde(default)]
    pub fast_night_c: Option<f64>,
    /// Weeks from seed to planting out.
    #[serde(default)]
    pub weeks: Option<Span>,
    /// Cells of a tray that it is raised in.
    #[serde(default)]
    pub cells: Vec<u32>,
    /// How it takes cold above freezing.
    #[serde(default)]
    pub chilling: Option<Chilling>,
    /// How it takes frost.
    #[serde(default)]
    pub frost: Option<Frost>,
    /// Nights that check growth below the high end and harm below the low end, °C.
    #[serde(default)]
    pub cold_nights_c: Option<Span>,
    /// Lowest air while it is hardened off, °C.
    #[serde(default)]
    pub hardening_c: Option<Span>,
    /// Where the numbers come from.
    pub source: String,
}

/// Below this most vegetables are in danger, °C (25 °F; lists of master gardeners).
const DANGER_C: f64 = -3.9;
/// Between light and hard frost, °C (28 °F).
const HARD_FROST_C: f64 = -2.2;

impl CropKind {
    /// Air below which the crop is checked or begins to be harmed (high end) and below which it is harmed badly or
    /// dies (low end), °C; of the strictest class that it is in. None where no source was read.
    #[must_use]
    pub fn cold_limits_c(&self) -> Option<Span> {
        let chilling = self.chilling.map(|class| match class {
            Chilling::Sensitive => Span { low: 5.6, high: 12.8 },
            Chilling::Intermediate => Span { low: 0.0, high: 4.4 },
            Chilling::Tolerant => Span { low: 0.0, high: 0.0 },
        });
        let frost = self.frost.map(|class| match class {
            Frost::Tender => Span { low: HARD_FROST_C, high: 0.0 },
            Frost::LightFrost => Span { low: DANGER_C, high: HARD_FROST_C },
            Frost::HardFrost => Span { low: DANGER_C, high: DANGER_C },
        });
        let classes = [self.cold_nights_c, chilling, frost];
        classes.into_iter().flatten().max_by(|a, b| a.high.total_cmp(&b.high))
    }

    /// Days to emergence at a soil temperature, linear between the published ones. None outside them, beside one at
    /// which nothing comes up, and where no source was read.
    #[must_use]
    pub fn days_to_emerge(&self, soil_c: f64) -> Option<Span> {
        if let Some(exact) = self.emergence.iter().find(|e| (e.soil_c - soil_c).abs() < 1e-9) {
            return exact.days;
        }
        let warmer = self.emergence.iter().position(|e| e.soil_c > soil_c)?;
        let below = self.emergence.get(warmer.checked_sub(1)?)?;
        let above = self.emergence.get(warmer)?;
        let (low, high) = (below.days?, above.days?);
        let share = (soil_c - below.soil_c) / (above.soil_c - below.soil_c);
        let between = |a: f64, b: f64| a + share * (b - a);
        Some(Span { low: between(low.low, high.low), high: between(low.high, high.high) })
    }
}
