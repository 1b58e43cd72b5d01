//! Checks a study: every problem at once, each with its place, its value, what is allowed and what to do.
//!
//! A problem graded [`Severity::Error`] keeps the scenario from being computed; a [`Severity::Warning`] does not.

mod candidates;
mod check;
mod fit;
mod heating;
mod house;
mod kind;
mod money;
mod nearest;
mod problem;
mod room;
mod rows;
mod scenario;
mod season;
mod tent;

pub use kind::ProblemKind;
pub use nearest::nearest_name;
pub use problem::{Problem, Severity};

use super::catalogue::Catalogue;
use super::study::Study;
use check::Check;

/// Most scenarios of one study; more would not fit any comparison.
pub const MOST_SCENARIOS: usize = 50;

/// Every problem of the study, in the order of the file. `catalogue` holds the program's rows; the study's own are
/// added here.
#[must_use]
pub fn problems(study: &Study, catalogue: &Catalogue) -> Vec<Problem> {
    let catalogue = catalogue.with_own(&study.own);
    let mut check = Check::new();
    season::site(study, &mut check);
    season::season(&study.season, &mut check);
    season::hard_night(study, &mut check);
    season::many_winters(study, &mut check);
    season::swept(study, &mut check);
    money::prices(&study.prices, &catalogue, &mut check);
    rows::own_rows(&study.own, &mut check);
    candidates::candidates(study, &catalogue, &mut check);
    season::scenario_list(study, &mut check);
    for (index, scenario) in study.scenarios.iter().enumerate() {
        let mut check = check.within_scenario(index, &scenario.name);
        scenario::scenario(scenario, &catalogue, &mut check);
        money::fuels_have_prices(scenario, &study.prices, &mut check);
    }
    check.found()
}

#[cfg(test)]
mod tests;
