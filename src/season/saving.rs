//! Where the saving comes from: from the baseline's formula to the scenario as it is, one change at a time.
//!
//! Every step is a whole run of the season, and a bar is the difference of two of them, so that all bars add up to the
//! scenario's heat and money exactly, whatever the order hides in each of them.

use super::baseline::Baseline;
use super::error::RunError;
use super::result::Summary;
use super::run::{RunOptions, heat_and_money};
use crate::model::{Catalogue, HeatTarget, PartCovering, Scenario, Study, Zone};
use crate::weather::Climate;
use serde::Serialize;

/// What changes at a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum Change {
    /// The baseline, by formula.
    Baseline,
    /// The same house hour by hour: its own floor, sun, wind, sky and vents.
    Weather,
    /// The further sheets of the skin.
    Covering,
    /// The inner tent, with the heater in its own zone.
    Tent,
    /// Night covers.
    NightCovers,
    /// The water store.
    Water,
    /// Hours of the setpoint, and what the heater warms.
    Setpoints,
    /// The heater as rated, with the standby heater.
    Heater,
}

impl Change {
    /// All of them, in order.
    pub const ALL: [Self; 8] = [
        Self::Baseline,
        Self::Weather,
        Self::Covering,
        Self::Tent,
        Self::NightCovers,
        Self::Water,
        Self::Setpoints,
        Self::Heater,
    ];

    /// Name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Baseline => "Baseline by formula",
            Self::Weather => "Real hours: sun, wind, floor",
            Self::Covering => "Further sheets",
            Self::Tent => "Inner tent",
            Self::NightCovers => "Night covers",
            Self::Water => "Water store",
            Self::Setpoints => "Setpoint hours, heater place",
            Self::Heater => "Heater as it is",
        }
    }
}

/// Heat and money of the season after a change.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SavingStep {
    /// What changed last.
    pub change: Change,
    /// Heat of the season, kWh.
    pub heat_kwh: f64,
    /// Money of that heat, without fans and standing charges; none where there is no heater or its price is missing.
    pub cost: Option<f64>,
}

/// The steps of a scenario, in the order of [`Change::ALL`]. `progress` hears how many runs are done of
/// [`RUNS`]; `cancelled` is asked once per simulated day.
///
/// # Errors
/// As [`super::run_scenario`].
pub fn saving_steps(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    whole: &Summary,
    progress: &dyn Fn(usize),
    cancelled: &dyn Fn() -> bool,
) -> Result<Vec<SavingStep>, RunError> {
    let setpoint_c = Baseline::setpoint_of(scenario);
    let formula = SavingStep { change: Change::Baseline, heat_kwh: whole.baseline_heat_kwh, cost: whole.baseline_cost };
    let mut steps = vec![formula];
    for (done, change) in Change::ALL.into_iter().skip(1).enumerate() {
        let options = RunOptions { unlimited_heat: change != Change::Heater, ..RunOptions::default() };
        let staged = staged(scenario, change, setpoint_c);
        let (heat_kwh, cost) = heat_and_money(study, &staged, climate, catalogue, cancelled, options)?;
        // Without a heater of its own the steps hold the crop's wanted air with an imagined one, which has no price.
        let cost = cost.filter(|_| scenario.heater.present);
        steps.push(SavingStep { change, heat_kwh, cost });
        progress(done + 1);
    }
    Ok(steps)
}

/// Runs that the steps take.
pub const RUNS: usize = Change::ALL.len() - 1;

/// The scenario with every change up to this one.
fn staged(scenario: &Scenario, change: Change, setpoint_c: f64) -> Scenario {
    let reached = |step: Change| change as usize >= step as usize;
    let mut staged = scenario.clone();
    if !reached(Change::Covering) {
        staged.covering.sheets.truncate(1);
        for exception in &mut staged.covering.exceptions {
            if let PartCovering::Sheets(sheets) = &mut exception.covering {
                sheets.truncate(1);
            }
        }
    }
    if !reached(Change::Tent) {
        staged.tent.present = false;
    }
    if !reached(Change::NightCovers) {
        for cover in [&mut staged.night_cover, &mut staged.tent.night_cover] {
            cover.present = false;
        }
    }
    if !reached(Change::Water) {
        staged.water.present = false;
    }
    if !reached(Change::Setpoints) {
        let heater = &mut staged.heater;
        heater.present = true;
        heater.target = HeatTarget::Air;
        if !reached(Change::Tent) {
            heater.zone = Zone::House;
        }
        (heater.setpoint_day_c, heater.setpoint_night_c) = (Some(setpoint_c), Some(setpoint_c));
    }
    if !reached(Change::Heater) {
        staged.standby.present = false;
    }
    staged
}
