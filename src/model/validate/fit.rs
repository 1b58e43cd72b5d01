//! Whether the tent's upper corners lie within the cross-section of the house.

use crate::geometry::profile_height_m;
use crate::model::house::House;
use crate::model::tent::{Tent, TentBase};

/// Slack for rounding of typed figures, m.
pub(super) const SLACK_M: f64 = 1e-6;

/// Which long side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Front,
    Back,
}

impl Side {
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
        }
    }

    pub(super) fn upper_corner(self) -> &'static str {
        match self {
            Self::Front => "upper front",
            Self::Back => "upper back",
        }
    }
}

/// How a corner sticks out of the house.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Overlap {
    /// Beyond the long wall.
    Wall { overlap_m: f64 },
    /// Above the roof, which is `roof_m` high there.
    Roof { overlap_m: f64, roof_m: f64 },
}

/// How the tent's upper corner on one side sticks out; none if it fits. Every cross-section is convex, so two corners
/// that lie within it hold the whole tent.
pub(super) fn corner(tent: &Tent, house: &House, side: Side) -> Option<Overlap> {
    let half_m = tent.width_m / 2.0;
    let x_m = match side {
        Side::Front => tent.offset_m + half_m,
        Side::Back => tent.offset_m - half_m,
    };
    let beyond_m = x_m.abs() - house.width_m / 2.0;
    if beyond_m > SLACK_M {
        // A tent moved far enough may have both corners beyond the same wall; each side speaks for its own wall.
        let own_wall = (x_m > 0.0) == (side == Side::Front);
        return own_wall.then_some(Overlap::Wall { overlap_m: beyond_m });
    }
    let base_m = if tent.base == TentBase::Floor { 0.0 } else { tent.base_height_m };
    // Within the slack a corner stands at the wall.
    let roof_m = profile_height_m(house, x_m.signum() * x_m.abs().min(house.width_m / 2.0));
    let overlap_m = base_m + tent.height_m - roof_m;
    (overlap_m > SLACK_M).then_some(Overlap::Roof { overlap_m, roof_m })
}
