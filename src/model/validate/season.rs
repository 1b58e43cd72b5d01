//! Checks of what belongs to the whole study: site, season, list of scenarios.

use super::MOST_SCENARIOS;
use super::check::Check;
use super::kind::ProblemKind;
use crate::model::climate_table::{
    ClimateTable, Colder, LEAST_SWING_K, MONTHS, MOST_SUNSHINE_H, MOST_WIND_M_PER_S, MonthRow,
};
use crate::model::hard_night::{CutStarts, HardNight};
use crate::model::mains::{Circuit, Mains, PLUG_RANGE_A, Plug};
use crate::model::many_winters::ManyWinters;
use crate::model::study::{Season, Site, Study, WeatherChoice};
use crate::model::swept::SweptInput;
use crate::units::Quantity;

/// Days of each month of a weather year; 29 February is in none of the typical years.
const DAYS: [u32; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

pub(super) fn site(study: &Study, check: &mut Check) {
    let mut check = check.within("site");
    let site = &study.site;
    for (input, value, limit) in
        [(Site::latitude_deg, site.latitude_deg, 90.0), (Site::longitude_deg, site.longitude_deg, 180.0)]
    {
        if let Some(value) = value {
            check.number(input.key, input.label, value, (-limit, limit), Quantity::Angle);
        }
    }
    mains(&site.mains, &mut check.within("mains"));
    check.numbers(site, Site::NUMBERS);
    colder(&site.colder, &mut check.within("colder"));
    weather(site, &mut check);
}

fn weather(site: &Site, check: &mut Check) {
    let (key, label) = (Site::weather.key, Site::weather.label);
    match &site.weather {
        WeatherChoice::Station(named) | WeatherChoice::File(named) => {
            if named.trim().is_empty() {
                check.add(key, label, ProblemKind::Empty);
            }
        }
        WeatherChoice::Log(log) => {
            if log.file.trim().is_empty() {
                check.add(key, label, ProblemKind::Empty);
            }
        }
        WeatherChoice::Normals(table) => months(table, &mut check.within(key)),
    }
    if site.weather.needs_place() {
        for (input, value) in [(Site::latitude_deg, site.latitude_deg), (Site::longitude_deg, site.longitude_deg)] {
            if value.is_none() {
                check.add(input.key, input.label, ProblemKind::NeededForSun);
            }
        }
    }
}

fn months(table: &ClimateTable, check: &mut Check) {
    if table.months.len() != MONTHS {
        check.add("months", ClimateTable::months.label, ProblemKind::NotTwelveMonths { found: table.months.len() });
    }
    for (m, month) in table.months.iter().enumerate() {
        let mut check = check.within(&format!("months[{m}]"));
        check.numbers(month, MonthRow::NUMBERS);
        for (input, value, most, quantity) in [
            (MonthRow::sunshine_h, month.sunshine_h, MOST_SUNSHINE_H, Quantity::Count),
            (MonthRow::cloud_share, month.cloud_share, 1.0, Quantity::Share),
            (MonthRow::wind_m_per_s, month.wind_m_per_s, MOST_WIND_M_PER_S, Quantity::Speed),
        ] {
            if let Some(value) = value {
                check.number(input.key, input.label, value, (0.0, most), quantity);
            }
        }
        if month.max_c - month.min_c < LEAST_SWING_K {
            let kind = ProblemKind::MaximumTooLow { min_c: month.min_c, max_c: month.max_c };
            check.add(MonthRow::max_c.key, MonthRow::max_c.label, kind);
        }
    }
}

fn colder(colder: &Colder, check: &mut Check) {
    check.numbers(colder, Colder::NUMBERS);
    if let Some(problem) = day_of_month(colder.snap_from_month, colder.snap_from_day) {
        check.add(Colder::snap_from_day.key, Colder::snap_from_day.label, problem);
    }
}

fn mains(mains: &Mains, check: &mut Check) {
    if let Some(circuit) = &mains.circuit {
        check.within("circuit").numbers(circuit, Circuit::NUMBERS);
    }
    if let Plug::Rated(rating_a) = mains.plug {
        let range = (*PLUG_RANGE_A.start(), *PLUG_RANGE_A.end());
        check.number(Mains::plug.key, Mains::plug.label, rating_a, range, Quantity::Current);
    }
}

pub(super) fn season(season: &Season, check: &mut Check) {
    let mut check = check.within("season");
    check.numbers(season, Season::NUMBERS);
    day_exists(season.from_month, season.from_day, &Season::from_day, &mut check);
    day_exists(season.to_month, season.to_day, &Season::to_day, &mut check);
}

/// Whether a month has that day; the problem if not.
pub(super) fn day_of_month(month: u32, day: u32) -> Option<ProblemKind> {
    let last = *DAYS.get((month as usize).checked_sub(1)?)?;
    (day < 1 || last < day).then_some(ProblemKind::NoSuchDay { month, day, last })
}

pub(super) fn swept(study: &Study, check: &mut Check) {
    for (part, input) in [("swept.first", &study.swept.first), ("swept.second", &study.swept.second)] {
        check.within(part).numbers(input, SweptInput::NUMBERS);
    }
}

pub(super) fn many_winters(study: &Study, check: &mut Check) {
    check.within("many_winters").numbers(&study.many_winters, ManyWinters::NUMBERS);
}

/// A power cut's day must exist; outside the season it is not followed, which the problem says.
pub(super) fn hard_night(study: &Study, check: &mut Check) {
    let mut check = check.within("hard_night");
    let asked = &study.hard_night;
    check.numbers(asked, HardNight::NUMBERS);
    let CutStarts::At { month, day, hour } = asked.cut_starts else { return };
    let (key, label) = (HardNight::cut_starts.key, HardNight::cut_starts.label);
    for (value, range) in [(month, (1.0, 12.0)), (day, (1.0, 31.0)), (hour, (0.0, 23.0))] {
        check.number(key, label, f64::from(value), range, Quantity::Count);
    }
    if let Some(problem) = day_of_month(month, day) {
        check.add(key, label, problem);
    } else if !study.season.holds(month, day) {
        check.add(key, label, ProblemKind::CutOutsideSeason { month, day });
    }
}

fn day_exists(month: u32, day: u32, input: &crate::model::input::NumberInput<Season>, check: &mut Check) {
    if let Some(problem) = day_of_month(month, day).filter(|_| input.accepts(f64::from(day))) {
        check.add(input.key, input.label, problem);
    }
}

pub(super) fn scenario_list(study: &Study, check: &mut Check) {
    let count = study.scenarios.len();
    if count == 0 {
        check.add("scenarios", "Scenarios", ProblemKind::NoScenarios);
        return;
    }
    if MOST_SCENARIOS < count {
        check.add("scenarios", "Scenarios", ProblemKind::TooManyScenarios { found: count, most: MOST_SCENARIOS });
    }
    if count <= study.reference {
        let kind = ProblemKind::NoSuchReference { found: study.reference, scenarios: count };
        check.add("reference", "Reference scenario", kind);
    }
    for (index, scenario) in study.scenarios.iter().enumerate() {
        let mut check = check.within_scenario(index, &scenario.name);
        let name = scenario.name.trim();
        if name.is_empty() {
            check.add("name", "Name", ProblemKind::Empty);
        } else if study.scenarios.iter().take(index).any(|other| other.name.trim() == name) {
            check.add("name", "Name", ProblemKind::Twice { name: name.to_owned() });
        }
    }
}
