//! Checks of the house and its covering.

use super::check::Check;
use super::kind::ProblemKind;
use super::scenario::stack;
use crate::model::catalogue::Catalogue;
use crate::model::covering::{Covering, PartCovering};
use crate::model::house::{BehindPartyWall, House, Part, RATE_RANGE_PER_H, Shape, Tightness};
use crate::model::study::Scenario;
use crate::units::Quantity;

/// Least rise of ridge or crown over the eaves, m: below it a roof is a lid.
const LEAST_RISE_M: f64 = 0.05;
/// Least height of a flat box, m: a cold frame for trays.
const LEAST_BOX_HEIGHT_M: f64 = 0.2;
/// Range of the temperature behind a party wall, °C.
const BEHIND_WALL_C: (f64, f64) = (-30.0, 40.0);
/// Range of an opaque part's thermal transmittance, W/(m²·K).
const OPAQUE_U_W_PER_M2K: (f64, f64) = (0.05, 7.0);

pub(super) fn house(house: &House, check: &mut Check) {
    check.numbers(house, House::NUMBERS);
    if let Tightness::Rate(rate) = house.tightness {
        let range = (*RATE_RANGE_PER_H.start(), *RATE_RANGE_PER_H.end());
        check.number("tightness", House::tightness.label, rate, range, Quantity::AirChanges);
    }
    if let BehindPartyWall::HeldAt(held_c) = house.behind_party_wall {
        let label = House::behind_party_wall.label;
        check.number("behind_party_wall", label, held_c, BEHIND_WALL_C, Quantity::Temperature);
    }
    heights(house, check);
}

fn heights(house: &House, check: &mut Check) {
    let (ridge_m, eaves_m) = (house.ridge_height_m, house.eaves_height_m);
    if house.shape == Shape::FlatBox {
        if eaves_m < LEAST_BOX_HEIGHT_M {
            let kind = ProblemKind::WallsTooLow { height_m: eaves_m, least_m: LEAST_BOX_HEIGHT_M };
            check.add("eaves_height_m", House::eaves_height_m.label, kind);
        }
    } else if ridge_m < eaves_m + LEAST_RISE_M {
        let kind = ProblemKind::RidgeTooLow { ridge_m, eaves_m, least_rise_m: LEAST_RISE_M };
        check.add("ridge_height_m", House::ridge_height_m.label, kind);
    }
}

pub(super) fn covering(scenario: &Scenario, catalogue: &Catalogue, check: &mut Check) {
    let covering = &scenario.covering;
    stack(&covering.sheets, "sheets", catalogue, check);
    for (index, exception) in covering.exceptions.iter().enumerate() {
        let mut check = check.within(&format!("exceptions[{index}]"));
        let label = Covering::exceptions.label;
        if covering.exceptions.iter().take(index).any(|other| other.part == exception.part) {
            check.add("part", label, ProblemKind::Twice { name: format!("{:?}", exception.part) });
        }
        if scenario.house.shape == Shape::LeanTo && exception.part == Part::Back {
            check.add("part", label, ProblemKind::PartyWallException);
        }
        match &exception.covering {
            PartCovering::Sheets(sheets) => stack(sheets, "covering", catalogue, &mut check),
            PartCovering::Opaque(u) => {
                check.number("covering", "Opaque part", *u, OPAQUE_U_W_PER_M2K, Quantity::UValue);
            }
        }
    }
}
