//! What one more air change or a flue would do to a damp house.

use super::balance::DampInputs;
use super::figures::{DampFigures, damp_season};
use crate::model::{Catalogue, Scenario, Study};
use crate::season::drive::{DriveSettings, drives_of};
use crate::season::error::RunError;
use crate::season::plan::Plan;
use crate::season::result::ScenarioRun;
use crate::weather::Climate;

/// Something done against damp. The heat that it costs is not in the figures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DampChange {
    /// This many air changes of the house with outdoors on top, per hour, in every hour.
    AirChangesPerH(f64),
    /// The flames get flues, so that their water goes outdoors.
    Flue,
}

/// The season's damp after a change, beside the run without it. A pure function of the run; it takes a fraction of the
/// time of a season.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn changed_damp(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    run: &ScenarioRun,
    change: DampChange,
) -> Result<DampFigures, RunError> {
    let catalogue = &catalogue.with_own(&study.own);
    let plan = &Plan::new(scenario, catalogue)?;
    let settings = DriveSettings::of(scenario);
    let series = &run.hours;
    let (drives, faces) = drives_of(plan, settings, climate, series.record.iter().copied());
    let inputs = DampInputs { plan, scenario, catalogue, climate, series, drives: &drives, faces: &faces };
    Ok(damp_season(inputs, Some(change)).figures)
}
