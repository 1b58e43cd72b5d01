//! Walks through one scenario.

use super::check::Check;
use super::kind::ProblemKind;
use super::{heating, house, room, rows, season, tent};
use crate::model::catalogue::{Catalogue, SheetKind};
use crate::model::costs::CostLine;
use crate::model::covering::{Drawn, NightCover};
use crate::model::crop::{Bench, Crop};
use crate::model::precautions::{OPENING_RANGE_M2, Precautions};
use crate::model::study::Scenario;
use crate::model::vents::Vents;
use crate::model::water::{BEARS_RANGE_KG_PER_M2, HEADSPACE_RANGE, Vessels, Zone};
use crate::units::Quantity;
use std::ops::RangeInclusive;

/// Months of a year.
const MONTHS: (f64, f64) = (1.0, 12.0);
/// Hours of a clock.
const CLOCK: (f64, f64) = (0.0, 24.0);

pub(super) fn scenario(scenario: &Scenario, catalogue: &Catalogue, check: &mut Check) {
    house::house(&scenario.house, &mut check.within("house"));
    house::covering(scenario, catalogue, &mut check.within("covering"));
    night_cover(&scenario.night_cover, true, catalogue, &mut check.within("night_cover"));
    tent::tent(scenario, catalogue, &mut check.within("tent"));
    for (index, vessels) in scenario.water.vessels.iter().enumerate() {
        self::vessels(vessels, &mut check.within(&format!("water.vessels[{index}]")));
    }
    heating::heaters(scenario, catalogue, check);
    crop(&scenario.crop, catalogue, &mut check.within("crop"));
    let bench = &scenario.bench;
    if bench.present && catalogue.tray(&bench.tray).is_none() {
        let known = catalogue.trays.iter().map(|t| t.key.as_str());
        rows::unknown("tray", &bench.tray, known, "bench.tray", Bench::tray.label, check);
    }
    room::bench(scenario, &mut check.within("bench"));
    room::vessels(scenario, &mut check.within("water"));
    vents(&scenario.vents, &mut check.within("vents"));
    precautions(&scenario.precautions, &mut check.within("precautions"));
    for (index, line) in scenario.costs.iter().enumerate() {
        check.within(&format!("costs[{index}]")).numbers(line, CostLine::NUMBERS);
    }
}

/// The zone that is meant: without a tent the house stands for it.
pub(super) fn zone_of(scenario: &Scenario, zone: Zone) -> Zone {
    if scenario.tent.present { zone } else { Zone::House }
}

/// A stack of sheets, outermost first.
pub(super) fn stack(sheets: &[String], field: &str, catalogue: &Catalogue, check: &mut Check) {
    if sheets.is_empty() {
        check.add(field, "Sheets", ProblemKind::NoSheet);
    }
    for (index, key) in sheets.iter().enumerate() {
        let place = format!("{field}[{index}]");
        let Some(sheet) = catalogue.sheet(key) else {
            rows::unknown("sheet", key, catalogue.sheets.iter().map(|s| s.key.as_str()), &place, "Sheets", check);
            continue;
        };
        if index == 0 && sheet.kind == SheetKind::Liner {
            let kind = ProblemKind::LinerOutermost { key: key.clone(), kind: sheet.kind };
            check.add(&place, "Sheets", kind);
        }
    }
}

/// A night cover; one over the house must name the parts that it covers.
pub(super) fn night_cover(cover: &NightCover, names_parts: bool, catalogue: &Catalogue, check: &mut Check) {
    if catalogue.screen(&cover.screen).is_none() {
        let known = catalogue.screens.iter().map(|s| s.key.as_str());
        rows::unknown("night screen", &cover.screen, known, "screen", NightCover::screen.label, check);
    }
    if names_parts && cover.present && cover.parts.is_empty() {
        check.add("parts", NightCover::parts.label, ProblemKind::CoversNothing);
    }
    if let Drawn::Between { from_hour, to_hour } = cover.drawn {
        check.number("drawn.from_hour", "Drawn from", from_hour, CLOCK, Quantity::HourOfDay);
        check.number("drawn.to_hour", "Drawn to", to_hour, CLOCK, Quantity::HourOfDay);
    }
}

fn crop(crop: &Crop, catalogue: &Catalogue, check: &mut Check) {
    check.numbers(crop, Crop::NUMBERS);
    if !crop.kind.is_empty() && catalogue.crop(&crop.kind).is_none() {
        rows::unknown(
            "crop",
            &crop.kind,
            catalogue.crops.iter().map(|c| c.key.as_str()),
            "kind",
            Crop::kind.label,
            check,
        );
    }
    if let Some((month, day)) = crop.planting_out {
        check.number("planting_out", "Month of planting out", f64::from(month), MONTHS, Quantity::Count);
        if let Some(problem) = season::day_of_month(month, day) {
            check.add("planting_out", Crop::planting_out.label, problem);
        }
    }
    if crop.wanted_air_c < crop.limit_c {
        let kind = ProblemKind::LimitAboveWanted { limit_c: crop.limit_c, wanted_c: crop.wanted_air_c };
        check.add("limit_c", Crop::limit_c.label, kind);
    }
}

pub(super) fn vessels(vessels: &Vessels, check: &mut Check) {
    check.numbers(vessels, Vessels::NUMBERS);
    if let Some(load) = vessels.bears_kg_per_m2 {
        let input = Vessels::bears_kg_per_m2;
        check.number(input.key, input.label, load, ends(&BEARS_RANGE_KG_PER_M2), Quantity::AreaLoad);
    }
    if let Some(share) = vessels.headspace {
        let input = Vessels::headspace;
        check.number(input.key, input.label, share, ends(&HEADSPACE_RANGE), Quantity::Share);
    }
}

fn precautions(precautions: &Precautions, check: &mut Check) {
    check.numbers(precautions, Precautions::NUMBERS);
    if let Some(area_m2) = precautions.combustion_air_m2 {
        let input = Precautions::combustion_air_m2;
        check.number(input.key, input.label, area_m2, ends(&OPENING_RANGE_M2), Quantity::SmallArea);
    }
}

fn ends(range: &RangeInclusive<f64>) -> (f64, f64) {
    (*range.start(), *range.end())
}

fn vents(vents: &Vents, check: &mut Check) {
    check.numbers(vents, Vents::NUMBERS);
    if vents.present && vents.full_at_c <= vents.opens_at_c {
        let kind = ProblemKind::OpenerReversed { opens_at_c: vents.opens_at_c, full_at_c: vents.full_at_c };
        check.add("full_at_c", Vents::full_at_c.label, kind);
    }
}
