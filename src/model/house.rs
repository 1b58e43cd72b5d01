//! The plant house: shape, size, exposure, tightness, ground edge.

use super::input::{Doubt, Off, inputs};
use serde::{Deserialize, Serialize};

/// The cross-section of the house.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Shape {
    /// Two equal roof slopes meeting at a ridge.
    Gable,
    /// One roof slope that rises from the front eave to a party wall.
    LeanTo,
    /// Straight side walls under a round arch.
    Tunnel,
    /// Four walls under a flat lid.
    FlatBox,
}

impl Shape {
    /// Name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Gable => "Gable roof",
            Self::LeanTo => "Lean-to",
            Self::Tunnel => "Round-arch tunnel",
            Self::FlatBox => "Flat box",
        }
    }
}

/// The curve of a tunnel's arch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum ArchCurve {
    /// The circle through both springings and the crown.
    Circle,
    /// Half an ellipse with semi-axes half the width and the rise.
    HalfEllipse,
}

/// What stands behind a lean-to's party wall.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum BehindPartyWall {
    /// Outdoor air.
    Outdoors,
    /// A building held at this temperature, °C.
    HeldAt(f64),
}

/// How tight the house is. Rates are air changes per hour at design weather (wind 6.7 m/s, 20 K warmer than outdoors).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Tightness {
    /// New and carefully sealed: 0.5 per hour (low end of the handbook range 0.5–1.5, from memory).
    Sealed,
    /// New or well kept: 1.0 per hour (a published hoop-house example uses 1).
    Sound,
    /// Older, kept up: 1.5 per hour (handbook range 1–2, from memory).
    Worn,
    /// Old, gaps to be seen: 3.0 per hour (handbook range 2–4, from memory).
    Leaky,
    /// A rate of one's own, per hour at design weather.
    Rate(f64),
}

/// Range of a typed leakage, air changes per hour.
pub const RATE_RANGE_PER_H: std::ops::RangeInclusive<f64> = 0.0..=30.0;

impl Tightness {
    /// Air changes per hour at design weather.
    #[must_use]
    pub fn design_air_changes_per_h(self) -> f64 {
        match self {
            Self::Sealed => 0.5,
            Self::Sound => 1.0,
            Self::Worn => 1.5,
            Self::Leaky => 3.0,
            Self::Rate(rate) => rate,
        }
    }
}

impl Tightness {
    /// The class beside it that lets less air through; the tightest class and a rate of one's own lose a third, as
    /// between neighbouring classes.
    #[must_use]
    pub fn tighter(self) -> Self {
        match self {
            Self::Sealed => Self::Rate(Self::Sealed.design_air_changes_per_h() / 1.5),
            Self::Sound => Self::Sealed,
            Self::Worn => Self::Sound,
            Self::Leaky => Self::Worn,
            Self::Rate(rate) => Self::Rate(rate / 1.5),
        }
    }

    /// The class beside it that lets more air through; the leakiest class and a rate of one's own gain a half.
    #[must_use]
    pub fn looser(self) -> Self {
        match self {
            Self::Sealed => Self::Sound,
            Self::Sound => Self::Worn,
            Self::Worn => Self::Leaky,
            Self::Leaky => Self::Rate(Self::Leaky.design_air_changes_per_h() * 1.5),
            Self::Rate(rate) => Self::Rate(rate * 1.5),
        }
    }
}

/// Which outer surface of the house.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Part {
    /// The long wall that faces the house's direction.
    Front,
    /// The long wall opposite; a lean-to's party wall.
    Back,
    /// Both end walls.
    Ends,
    /// Roof slopes, arch or lid.
    Roof,
}

inputs! {
    /// The plant house.
    pub struct House {
        choices {
            shape: Shape = Shape::Gable, "Shape", "Cross-section of the house";
            arch: ArchCurve = ArchCurve::Circle, "Arch", "Curve of a tunnel's arch";
            tightness: Tightness = Tightness::Sound, "Tightness", "Air that leaks through joints, laps and doors",
                doubt Doubt { off: Off::Class, reason: "Handbook ranges of neighbouring classes overlap, and a house is seldom measured" };
            behind_party_wall: BehindPartyWall = BehindPartyWall::HeldAt(15.0), "Behind the wall", "What a lean-to's party wall leans on";
        }
        numbers {
            length_m: f64, Length, 0.5..=60.0, 6.0, "Length", "Length of the long walls", "";
            width_m: f64, Length, 0.3..=20.0, 3.0, "Width", "Width across the house", "";
            eaves_height_m: f64, Length, 0.0..=6.0, 1.6, "Eaves height", "Height of the straight side walls; the whole height of a flat box", "";
            ridge_height_m: f64, Length, 0.2..=9.0, 2.4, "Ridge height", "Height of the ridge, the crown or a lean-to's back wall", "";
            front_faces_deg: f64, Direction, 0.0..=360.0, 180.0, "Front faces", "Compass direction that the front long wall faces: 180 is south", "";
            shelter_class: u32, Count, 1..=5, 3, "Shelter", "1 open country to 5 well sheltered from the wind", "wind shelter classes of the ASHRAE Handbook Fundamentals, infiltration chapter",
                doubt Doubt { off: Off::Class, reason: "The five classes are told by looking round (ASHRAE Handbook Fundamentals, infiltration chapter)" };
            edge_f_w_per_mk: f64, EdgeFactor, 0.0..=3.0, 1.26, "Floor edge", "Heat lost through the floor's edge per metre and kelvin: 1.26 bare, 0.94 with 60 cm of R-10 board", "Washington Administrative Code 51-11C, table A106.1: unheated slab, uninsulated 0.73 Btu/h·ft·°F",
                doubt Doubt { off: Off::Share(0.25), reason: "Bare and insulated edge, 1.26 and 0.94 W/(m·K), lie a quarter apart (Washington Administrative Code 51-11C)" };
            party_wall_u_w_per_m2k: f64, UValue, 0.05..=7.0, 1.2, "Party wall U", "Thermal transmittance of a lean-to's back wall", "hollow block wall, from the resistances of the Project Lead The Way density chart";
            fullness: f64, Share, 0.0..=0.5, 0.3, "Fullness", "How much of the passing light meets plants, benches and pots: 0 empty, 50 % full", "modelling choice",
                doubt Doubt { off: Off::By(0.1), reason: "How full a house stands is a guess, and changes over the winter (modelling choice)" };
            planted_share: f64, Share, 0.0..=1.0, 0.2, "Planted floor", "Share of the house floor outside the tent that is planted or kept wet", "modelling choice",
                doubt Doubt { off: Off::By(0.1), reason: "How much of the floor is planted or wet is a guess, and changes over the winter (modelling choice)" };
        }
    }
}
