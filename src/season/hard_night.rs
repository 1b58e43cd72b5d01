//! What the season does not tell of hard nights: the power cut that the study asks for, and cold beyond this year's.

use super::colder::{ColderSpell, colder_spell};
use super::error::RunError;
use super::power_cut::{AskedCut, asked_cut};
use crate::model::{Catalogue, Scenario, Study};
use crate::weather::Climate;
use serde::Serialize;

/// Both answers. Field names are the JSON keys.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HardNights {
    /// The power cut.
    pub asked_power_cut: AskedCut,
    /// The coldest spell, colder.
    pub colder_spell: ColderSpell,
}

/// Works both out.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn hard_nights(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
) -> Result<HardNights, RunError> {
    let colder_by_k = study.hard_night.colder_by_k;
    Ok(HardNights {
        asked_power_cut: asked_cut(study, scenario, climate, catalogue, cancelled)?,
        colder_spell: colder_spell(study, scenario, climate, catalogue, colder_by_k, cancelled)?,
    })
}
