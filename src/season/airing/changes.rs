//! What other air would change: openers that start higher, an hour of airing every morning, a flue. Each is the
//! difference of two whole winters.

use crate::model::vents::OPENERS_BEGIN_C;
use crate::model::{Catalogue, HeatBasis, Heater, Scenario, Study};
use crate::season::error::RunError;
use crate::season::result::Summary;
use crate::season::run::{RunOptions, run_scenario_with};
use crate::weather::Climate;
use serde::Serialize;

/// Efficiency of a heater with a flue, of the gross heat content: a non-condensing unit heater, 80–83 % (DOE Energy
/// Saver, quoted).
const FLUED_EFFICIENCY: f64 = 0.80;

/// Winters that the changes take at most.
pub const RUNS: usize = 3;

/// A changed winter less the winter as it is: below zero is saved. Field names are JSON keys.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Difference {
    /// Heat of all heaters, kWh.
    pub heat_kwh: f64,
    /// Money; none where a price is missing.
    pub cost: Option<f64>,
    /// Hours in which the skin is wet.
    pub hours_skin_wet: i64,
    /// Hours in which the tent's wall is wet; none without a tent.
    pub hours_tent_wall_wet: Option<i64>,
    /// Hours with at least 90 % relative humidity at the crop.
    pub hours_crop_humidity_90: i64,
    /// Hours with house air above 35 °C.
    pub hours_above_35_c: i64,
    /// Hours below the crop limit.
    pub hours_below_crop_limit: i64,
}

/// What changes of air would do. Field names are JSON keys.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct AirChanges {
    /// Vents and fan that start no lower than 24 °C, the upper end of common practice: what they cost in heat while set
    /// lower, against the hours that are hotter without it. None where nothing starts lower.
    pub higher_openers: Option<Difference>,
    /// An hour of airing by hand every morning.
    pub morning_airing: Difference,
    /// A flue for every flame that has none; none without such a flame.
    pub flue: Option<Difference>,
}

/// Runs the changed winters; `whole` is the winter as it is, and `cancelled` is asked once per simulated day.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn air_changes(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    whole: &Summary,
    cancelled: &dyn Fn() -> bool,
) -> Result<AirChanges, RunError> {
    let changed = |scenario: &Scenario, morning_airing: bool| -> Result<Difference, RunError> {
        let options = RunOptions { morning_airing, ..RunOptions::default() };
        let run = run_scenario_with(study, scenario, climate, catalogue, cancelled, options)?;
        Ok(Difference::of(&run.summary, whole))
    };
    let flue = flued(scenario, &catalogue.with_own(&study.own)).filter(|_| whole.damp.burner_water_kg > 0.0);
    Ok(AirChanges {
        higher_openers: with_higher_openers(scenario).map(|higher| changed(&higher, false)).transpose()?,
        morning_airing: changed(scenario, true)?,
        flue: flue.map(|flued| changed(&flued, false)).transpose()?,
    })
}

impl Difference {
    fn of(changed: &Summary, whole: &Summary) -> Self {
        let hours = |of: fn(&Summary) -> usize| of(changed) as i64 - of(whole) as i64;
        Self {
            heat_kwh: changed.heat_delivered_kwh - whole.heat_delivered_kwh,
            cost: changed.cost.zip(whole.cost).map(|(changed, whole)| changed - whole),
            hours_skin_wet: hours(|s| s.damp.hours_skin_wet),
            hours_tent_wall_wet: whole
                .damp
                .hours_tent_wall_wet
                .map(|_| hours(|s| s.damp.hours_tent_wall_wet.unwrap_or(0))),
            hours_crop_humidity_90: hours(|s| s.damp.hours_crop_humidity_90),
            hours_above_35_c: hours(|s| s.hours_above_35_c),
            hours_below_crop_limit: hours(|s| s.hours_below_crop_limit),
        }
    }
}

/// The scenario with vents and fan that start no lower than the upper end of common practice, each with its own span;
/// none where they do already.
#[must_use]
pub fn with_higher_openers(scenario: &Scenario) -> Option<Scenario> {
    let start_c = *OPENERS_BEGIN_C.end();
    let mut higher = scenario.clone();
    let vents = &mut higher.vents;
    let (low_vents, low_fan) =
        (vents.present && vents.opens_at_c < start_c, vents.fan_present && vents.fan_starts_at_c < start_c);
    if low_vents {
        vents.full_at_c += start_c - vents.opens_at_c;
        vents.opens_at_c = start_c;
    }
    if low_fan {
        vents.fan_starts_at_c = start_c;
    }
    (low_vents || low_fan).then_some(higher)
}

/// The scenario with a flue for every flame that has none, at the efficiency of a common heater with one; none where
/// there is no such flame.
#[must_use]
pub fn flued(scenario: &Scenario, catalogue: &Catalogue) -> Option<Scenario> {
    let mut flued = scenario.clone();
    let mut any = false;
    for heater in [&mut flued.heater, &mut flued.standby] {
        let burns = |h: &Heater| h.present && !h.vented && !h.heat_pump && h.fuel != crate::season::money::ELECTRICITY;
        if burns(heater) {
            let net_per_gross = catalogue.fuel(&heater.fuel).map_or(1.0, |fuel| fuel.net_per_gross);
            heater.efficiency = heater.gross_efficiency(net_per_gross).min(FLUED_EFFICIENCY);
            (heater.vented, heater.basis) = (true, HeatBasis::Gross);
            any = true;
        }
    }
    any.then_some(flued)
}
