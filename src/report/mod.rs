//! The printable report: one self-contained page of a study and its results, without script, network or disk.
//!
//! [`html`] takes what was run and gives the text of the page. It prints on A4 and Letter, and reads in black and
//! white: lines differ by dashes and marks, bars by hatching, the best values by a frame.

mod airing;
mod assumptions;
mod axis;
mod best_buy;
mod buying;
mod checks;
mod coldest;
mod content;
mod damp;
mod digest;
mod explored;
mod figure;
mod fuel;
mod hard_nights;
mod houses;
mod inputs;
mod matters;
mod months;
mod page;
mod power_cut;
mod prices;
mod running;
mod section;
mod sources;
mod steps;
mod table;
mod winters;
mod workings;

pub use explored::Explored;

use crate::model::{Catalogue, Study};
use crate::season::airing::{AirChanges, air_changes};
use crate::season::hard_night::{HardNights, hard_nights};
use crate::season::saving::{SavingStep, saving_steps};
use crate::season::{RunError, ScenarioRun};
use crate::units::UnitSystem;
use crate::weather::Climate;
use crate::weather::Note;

/// What a report is made from.
pub struct Report<'a> {
    /// The study.
    pub study: &'a Study,
    /// The program's catalogue rows; the study's own are added.
    pub catalogue: &'a Catalogue,
    /// The weather that it ran on.
    pub weather: WeatherUsed<'a>,
    /// One entry per scenario; none where it was not run.
    pub runs: Vec<Option<&'a ScenarioRun>>,
    /// Where the saving comes from, one entry per scenario; none where that was not worked out.
    pub saving: Vec<Option<Vec<SavingStep>>>,
    /// What other air would change, one entry per scenario; none where that was not worked out.
    pub air: Vec<Option<AirChanges>>,
    /// What each does in hard nights, one entry per scenario; none where that was not worked out.
    pub hard_nights: Vec<Option<HardNights>>,
    /// What was worked out beyond the seasons.
    pub explored: Explored,
    /// Slot of each scenario's mark and colour; without one, its place in the study.
    pub marks: &'a [usize],
    /// Units on the page.
    pub units: UnitSystem,
    /// Version of the program that ran it.
    pub program_version: &'a str,
}

/// The weather of a report.
#[derive(Debug, Clone, Copy)]
pub struct WeatherUsed<'a> {
    /// Place and hours.
    pub climate: &'a Climate,
    /// Credit line of its source.
    pub credit: &'a str,
    /// What is worth knowing about it.
    pub notes: &'a [Note],
}

/// The page as HTML, which is well-formed XML too.
#[must_use]
pub fn html(report: &Report) -> String {
    page::page(&content::Content::of(report)).into_string()
}

/// The report of finished runs, with what was worked out beyond them: works out where the saving of each comes from, what other air would change and what hard
/// nights do, and writes the page.
///
/// # Errors
/// As [`saving_steps`].
pub fn of_runs(
    study: &Study,
    catalogue: &Catalogue,
    weather: WeatherUsed,
    runs: &[ScenarioRun],
    explored: Explored,
    (units, marks): (UnitSystem, &[usize]),
    cancelled: &dyn Fn() -> bool,
) -> Result<String, RunError> {
    let of_one = |(scenario, run): (_, &ScenarioRun)| {
        saving_steps(study, scenario, weather.climate, catalogue, &run.summary, &|_| (), cancelled).map(Some)
    };
    let saving = study.scenarios.iter().zip(runs).map(of_one).collect::<Result<Vec<_>, _>>()?;
    let air_of_one = |(scenario, run): (_, &ScenarioRun)| {
        air_changes(study, scenario, weather.climate, catalogue, &run.summary, cancelled).map(Some)
    };
    let air = study.scenarios.iter().zip(runs).map(air_of_one).collect::<Result<Vec<_>, _>>()?;
    let of_nights = |scenario| hard_nights(study, scenario, weather.climate, catalogue, cancelled).map(Some);
    let hard_nights = study.scenarios.iter().map(of_nights).collect::<Result<Vec<_>, _>>()?;
    let program_version = env!("CARGO_PKG_VERSION");
    Ok(html(&Report {
        study,
        catalogue,
        weather,
        runs: runs.iter().map(Some).collect(),
        saving,
        air,
        hard_nights,
        explored,
        marks,
        units,
        program_version,
    }))
}
