//! What matters: each input that a grower cannot know exactly is moved as far as it may be off, one at a time, and the
//! season is run anew.

mod doubts;

pub use doubts::{DOUBTS, Doubt, Way};

use super::error::RunError;
use super::run::lean_season;
use super::winters::{ScenarioWinters, Spread};
use crate::model::{Catalogue, Scenario, Study};
use crate::weather::Climate;
use doubts::Case;
use serde::Serialize;

/// What a season comes to.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Outcome {
    /// Money; none when a price is missing.
    pub cost: Option<f64>,
    /// Lowest hourly mean of the crop's zone air, °C.
    pub crop_air_min_c: f64,
}

/// The effect of one doubt. Field names are the JSON keys.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Effect {
    /// What is in doubt.
    pub name: &'static str,
    /// How far it is moved.
    pub range: &'static str,
    /// Why so far.
    pub reason: &'static str,
    /// The season with less of it.
    pub less: Outcome,
    /// The season with more of it.
    pub more: Outcome,
}

impl Effect {
    /// Largest move of the season's money; zero where it is not known.
    #[must_use]
    pub fn moves_cost(&self, as_it_is: &Outcome) -> f64 {
        let off = |outcome: &Outcome| outcome.cost.zip(as_it_is.cost).map_or(0.0, |(a, b)| (a - b).abs());
        off(&self.less).max(off(&self.more))
    }
}

/// What matters to a scenario.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sensitivity {
    /// The season as described.
    pub as_it_is: Outcome,
    /// What moves it, most money first.
    pub effects: Vec<Effect>,
    /// Lower and upper end of the money if all doubts are independent: the moves to one side, squared and added. None
    /// when a price is missing.
    pub cost_band: Option<[f64; 2]>,
}

/// Runs the season with each doubt moved both ways. With the scenario's many winters, the weather is one of them: its
/// tenth and nine tenths. `cancelled` is asked once per simulated day.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn sensitivity(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    winters: Option<&ScenarioWinters>,
    cancelled: &dyn Fn() -> bool,
) -> Result<Sensitivity, RunError> {
    let outcome = |case: &Case| -> Result<Outcome, RunError> {
        let (essentials, _) = lean_season(&case.study, &case.scenario, climate, &case.catalogue, cancelled)?;
        Ok(Outcome { cost: essentials.cost, crop_air_min_c: essentials.crop.min_c })
    };
    let case = || Case { study: study.clone(), scenario: scenario.clone(), catalogue: catalogue.clone() };
    let turned = |doubt: &Doubt, way: Way| {
        let mut case = case();
        (doubt.turn)(&mut case, way);
        outcome(&case)
    };
    let effect = |doubt: &Doubt| {
        let (less, more) = (turned(doubt, Way::Less)?, turned(doubt, Way::More)?);
        Ok(Effect { name: doubt.name, range: doubt.range, reason: doubt.reason, less, more })
    };
    let as_it_is = outcome(&case())?;
    let mut effects = DOUBTS.iter().map(effect).collect::<Result<Vec<_>, RunError>>()?;
    effects.extend(winters.and_then(weather));
    effects.sort_by(|a, b| b.moves_cost(&as_it_is).total_cmp(&a.moves_cost(&as_it_is)));
    let cost_band = as_it_is.cost.map(|cost| band(cost, &effects));
    Ok(Sensitivity { as_it_is, effects, cost_band })
}

/// The winters as one more doubt; none without winters. A mild winter costs less and is the warmer one for the crop.
fn weather(winters: &ScenarioWinters) -> Option<Effect> {
    let costs: Option<Vec<f64>> = winters.winters.iter().map(|winter| winter.cost).collect();
    let cost = costs.and_then(|costs| Spread::of(&costs));
    let air = Spread::of(&winters.winters.iter().map(|winter| winter.crop_air_min_c).collect::<Vec<_>>())?;
    Some(Effect {
        name: "Weather",
        range: "one winter in ten, each way",
        reason: "Chance winters, fitted to the days of 91 years (NOAA, Global Historical Climatology Network, daily)",
        less: Outcome { cost: cost.map(|c| c.p10), crop_air_min_c: air.p90 },
        more: Outcome { cost: cost.map(|c| c.p90), crop_air_min_c: air.p10 },
    })
}

/// Moves to one side add as independent errors do.
fn band(cost: f64, effects: &[Effect]) -> [f64; 2] {
    let squares = |side: f64| {
        let of = |effect: &Effect| {
            let moves = [effect.less.cost, effect.more.cost].into_iter().flatten().map(|c| side * (c - cost));
            moves.fold(0.0, f64::max).powi(2)
        };
        effects.iter().map(of).sum::<f64>().sqrt()
    };
    [cost - squares(-1.0), cost + squares(1.0)]
}
