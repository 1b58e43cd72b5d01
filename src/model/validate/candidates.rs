//! Checks of the measures that may be bought, as far as they need no scenario: whether a measure fits into one is seen
//! when it is tried.

use super::check::Check;
use super::kind::ProblemKind;
use super::scenario::{night_cover, stack, vessels};
use super::{heating, rows};
use crate::model::candidate::{Candidate, CandidateChange};
use crate::model::catalogue::Catalogue;
use crate::model::house::{House, RATE_RANGE_PER_H, Tightness};
use crate::model::prices::Prices;
use crate::model::study::Study;
use crate::model::tent::Tent;
use crate::units::Quantity;

pub(super) fn candidates(study: &Study, catalogue: &Catalogue, check: &mut Check) {
    let all = &study.candidates;
    for (index, candidate) in all.iter().enumerate() {
        let mut check = check.within(&format!("candidates[{index}]"));
        check.numbers(candidate, Candidate::NUMBERS);
        let name = candidate.name.trim();
        if name.is_empty() {
            check.add("name", Candidate::name.label, ProblemKind::Empty);
        } else if all.iter().take(index).any(|other| other.name.trim() == name) {
            check.add("name", Candidate::name.label, ProblemKind::Twice { name: name.to_owned() });
        }
        change(&candidate.change, catalogue, &mut check.within("change"));
    }
    if let Some(budget) = study.prices.budget {
        let input = Prices::budget;
        let range = (Candidate::price.min, Candidate::price.max);
        check.within("prices").number(input.key, input.label, budget, range, Quantity::Money);
    }
}

fn change(change: &CandidateChange, catalogue: &Catalogue, check: &mut Check) {
    match change {
        CandidateChange::Sheet(key) if catalogue.sheet(key).is_none() => {
            let known = catalogue.sheets.iter().map(|sheet| sheet.key.as_str());
            rows::unknown("sheet", key, known, "", Candidate::change.label, check);
        }
        CandidateChange::Sheet(_) => {}
        CandidateChange::Tent(tent) => {
            check.numbers(tent, Tent::NUMBERS);
            stack(&tent.sheets, "sheets", catalogue, check);
        }
        CandidateChange::NightCover(cover) => night_cover(cover, true, catalogue, check),
        CandidateChange::TentNightCover(cover) => night_cover(cover, false, catalogue, check),
        CandidateChange::Vessels(group) => vessels(group, check),
        CandidateChange::Heater(heater) | CandidateChange::Standby(heater) => {
            heating::numbers_and_fuel(heater, catalogue, check)
        }
        CandidateChange::Edge(factor) => {
            let input = House::edge_f_w_per_mk;
            check.number("", input.label, *factor, (input.min, input.max), input.quantity);
        }
        CandidateChange::Tightness(Tightness::Rate(rate)) => {
            let range = (*RATE_RANGE_PER_H.start(), *RATE_RANGE_PER_H.end());
            check.number("", House::tightness.label, *rate, range, Quantity::AirChanges);
        }
        CandidateChange::Tightness(_) => {}
    }
}
