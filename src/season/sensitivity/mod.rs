//! What matters: each input that a grower cannot know exactly is moved as far as it may be off, one at a time, and the
//! season is run anew; and many winters are one more doubt.

mod doubts;
mod words;

pub use doubts::{DOUBTS, Doubt, Way};
pub use words::Likely;

use super::error::RunError;
use super::pool::Workers;
use super::run::lean_season;
use super::winters::{ScenarioWinters, Spread, many_winters};
use crate::model::{Catalogue, Scenario, Study};
use crate::units::UnitSystem;
use crate::weather::Climate;
use doubts::Case;
use serde::Serialize;

/// Name of the doubt that many winters are.
pub const WEATHER: &str = "Weather";

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
    /// The input, by its path in the file.
    pub input: &'static str,
    /// How far it is moved, metric.
    pub range: String,
    /// Why so far.
    pub reason: &'static str,
    /// The season with less of it.
    pub less: Outcome,
    /// The season with more of it.
    pub more: Outcome,
}

impl Effect {
    fn of(doubt: &Doubt, less: Outcome, more: Outcome) -> Self {
        let reason = doubt.doubt.map_or("", |doubt| doubt.reason);
        Self { name: doubt.name, input: doubt.input, range: doubt.range(UnitSystem::Metric), reason, less, more }
    }

    /// How far it is moved, in a reader's units.
    #[must_use]
    pub fn range_in(&self, units: UnitSystem) -> String {
        let doubt = DOUBTS.iter().find(|doubt| doubt.name == self.name);
        doubt.map_or_else(|| self.range.clone(), |doubt| doubt.range(units))
    }

    /// Largest move of the season's money; zero where it is not known.
    #[must_use]
    pub fn moves_cost(&self, as_it_is: &Outcome) -> f64 {
        let off = |outcome: &Outcome| outcome.cost.zip(as_it_is.cost).map_or(0.0, |(a, b)| (a - b).abs());
        off(&self.less).max(off(&self.more))
    }

    /// Largest move of the crop's lowest air, K.
    #[must_use]
    pub fn moves_crop_air_k(&self, as_it_is: &Outcome) -> f64 {
        let off = |outcome: &Outcome| (outcome.crop_air_min_c - as_it_is.crop_air_min_c).abs();
        off(&self.less).max(off(&self.more))
    }
}

/// What matters to a scenario.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sensitivity {
    /// The season as described.
    pub as_it_is: Outcome,
    /// What moves it, most money first; without a price the most cold.
    pub effects: Vec<Effect>,
    /// Lower and upper end of the money if all doubts are independent: the moves to one side, squared and added. None
    /// when a price is missing.
    pub cost_band: Option<[f64; 2]>,
}

impl Sensitivity {
    fn of(as_it_is: Outcome, mut effects: Vec<Effect>) -> Self {
        effects.sort_by(|a, b| {
            let cold = |effect: &Effect| effect.moves_crop_air_k(&as_it_is);
            b.moves_cost(&as_it_is).total_cmp(&a.moves_cost(&as_it_is)).then_with(|| cold(b).total_cmp(&cold(a)))
        });
        let cost_band = as_it_is.cost.map(|cost| band(cost, &effects));
        Self { as_it_is, effects, cost_band }
    }

    /// With the winters as one more doubt. A mild winter costs less and is the warmer one for the crop.
    #[must_use]
    pub fn with_weather(mut self, winters: &ScenarioWinters) -> Self {
        let costs: Option<Vec<f64>> = winters.winters.iter().map(|winter| winter.cost).collect();
        let cost = costs.and_then(|costs| Spread::of(&costs));
        let air = Spread::of(&winters.winters.iter().map(|winter| winter.crop_air_min_c).collect::<Vec<_>>());
        self.effects.extend(air.map(|air| Effect {
            name: WEATHER,
            input: "site.weather",
            range: "one winter in ten, each way".to_owned(),
            reason: "Chance winters, fitted to the days of 91 years (NOAA, Global Historical Climatology Network, daily)",
            less: Outcome { cost: cost.map(|c| c.p10), crop_air_min_c: air.p90 },
            more: Outcome { cost: cost.map(|c| c.p90), crop_air_min_c: air.p10 },
        }));
        Self::of(self.as_it_is, self.effects)
    }
}

/// Runs the season with each doubt moved both ways, all but the weather. `so_far` is told after every doubt.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn sensitivity(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
    so_far: &mut dyn FnMut(&Sensitivity),
) -> Result<Sensitivity, RunError> {
    let doubts = doubts_of(scenario);
    let outcome = |run: usize| -> Result<Outcome, RunError> {
        let mut case = Case { study: study.clone(), scenario: scenario.clone(), catalogue: catalogue.clone() };
        if let Some(doubt) = run.checked_sub(1).and_then(|turn| doubts.get(turn / 2)) {
            (doubt.turn)(&mut case, if run % 2 == 1 { Way::Less } else { Way::More });
        }
        let cancelled = || (workers.cancelled)();
        let (essentials, _) = lean_season(&case.study, &case.scenario, climate, &case.catalogue, &cancelled)?;
        Ok(Outcome { cost: essentials.cost, crop_air_min_c: essentials.crop.min_c })
    };
    let mut outcomes: Vec<Option<Outcome>> = vec![None; runs_of_doubts(scenario)];
    let known = |outcomes: &[Option<Outcome>]| {
        let as_it_is = outcomes.first().copied().flatten()?;
        let both = |(doubt, ways): (&&Doubt, &[Option<Outcome>])| Some(Effect::of(doubt, ways[0]?, ways[1]?));
        let effects = doubts.iter().zip(outcomes[1..].chunks_exact(2)).filter_map(both).collect();
        Some(Sensitivity::of(as_it_is, effects))
    };
    workers.each_when_ready(outcomes.len(), &outcome, &mut |run, found| {
        outcomes[run] = Some(found);
        if let Some(found) = known(&outcomes) {
            so_far(&found);
        }
    })?;
    known(&outcomes).ok_or(RunError::EmptySeason)
}

/// The same with the study's many winters as one more doubt.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn what_matters(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
    so_far: &mut dyn FnMut(&Sensitivity),
) -> Result<Sensitivity, RunError> {
    let found = sensitivity(study, scenario, climate, catalogue, workers, so_far)?;
    let alone = Study { scenarios: vec![scenario.clone()], reference: 0, ..study.clone() };
    let before = runs_of_doubts(scenario);
    let progress = |done: usize| (workers.progress)(before + done);
    let winters = many_winters(&alone, climate, catalogue, Workers { progress: &progress, ..workers }, &mut |_| ())?;
    Ok(match winters.first() {
        Some(winters) => found.with_weather(winters),
        None => found,
    })
}

/// How many seasons [`what_matters`] runs.
#[must_use]
pub fn runs_of_what_matters(study: &Study, scenario: &Scenario) -> usize {
    runs_of_doubts(scenario) + study.many_winters.count as usize
}

fn runs_of_doubts(scenario: &Scenario) -> usize {
    1 + 2 * doubts_of(scenario).len()
}

/// The doubts that a scenario has.
fn doubts_of(scenario: &Scenario) -> Vec<&'static Doubt> {
    DOUBTS.iter().filter(|doubt| (doubt.applies)(scenario)).collect()
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
    [(cost - squares(-1.0)).max(0.0), cost + squares(1.0)]
}
