//! Checks of the inner tent.

use super::check::Check;
use super::fit;
use super::kind::ProblemKind;
use super::scenario::{night_cover, stack};
use crate::model::catalogue::Catalogue;
use crate::model::study::Scenario;
use crate::model::tent::{Tent, TentOpening};
use crate::units::Quantity;

/// Range of the temperature above which a tent is opened, °C.
const OPENED_ABOVE_C: (f64, f64) = (0.0, 60.0);

pub(super) fn tent(scenario: &Scenario, catalogue: &Catalogue, check: &mut Check) {
    let tent = &scenario.tent;
    check.numbers(tent, Tent::NUMBERS);
    stack(&tent.sheets, "sheets", catalogue, check);
    night_cover(&tent.night_cover, false, catalogue, &mut check.within("night_cover"));
    if let TentOpening::Above(above_c) = tent.opening {
        check.number("opening", Tent::opening.label, above_c, OPENED_ABOVE_C, Quantity::Temperature);
    }
    if tent.present {
        fits(scenario, check);
    }
}

fn fits(scenario: &Scenario, check: &mut Check) {
    let (tent, house) = (&scenario.tent, &scenario.house);
    if house.length_m + fit::SLACK_M < tent.length_m {
        let kind = ProblemKind::TooLong { length_m: tent.length_m, room_m: house.length_m, inside: "the house" };
        check.add("length_m", Tent::length_m.label, kind);
    }
    for side in [fit::Side::Front, fit::Side::Back] {
        match fit::corner(tent, house, side) {
            Some(fit::Overlap::Wall { overlap_m }) => {
                let kind = ProblemKind::TentThroughWall { side: side.name(), overlap_m };
                check.add("width_m", Tent::width_m.label, kind);
            }
            Some(fit::Overlap::Roof { overlap_m, roof_m }) => {
                let kind = ProblemKind::TentThroughRoof { corner: side.upper_corner(), overlap_m, roof_m };
                check.add("height_m", Tent::height_m.label, kind);
            }
            None => {}
        }
    }
}
