//! What the chosen scenario's season is worth knowing beyond itself: where its saving comes from, and what two small
//! changes would alter.

use super::asked::{Asked, Progress, Standing};
use super::board::Season;
use super::worker::Inputs;
use crate::model::Catalogue;
use crate::season::alternatives::{Alternatives, alternatives};
use crate::season::saving::{SavingStep, saving_steps};
use std::sync::Arc;

/// The answer to one question.
#[derive(Debug, Clone, PartialEq)]
pub struct Insight {
    /// Steps from the baseline to the scenario.
    pub steps: Vec<SavingStep>,
    /// What two small changes cost or save.
    pub alternatives: Alternatives,
}

/// Where the window asks.
#[derive(Default)]
pub struct Insights {
    asked: Asked<Arc<Inputs>, Insight>,
}

impl Insights {
    /// Asks about a season, unless that was asked last; takes in what has come.
    pub fn ask(&mut self, season: &Season, catalogue: &Arc<Catalogue>, ctx: &egui::Context) {
        let (theirs, catalogue) = (season.clone(), Arc::clone(catalogue));
        let work = move |progress: &Progress| answer(&theirs, &catalogue, progress);
        self.asked.ask("insights", Arc::clone(&season.inputs), ctx, work);
    }

    /// Takes in what has come.
    pub fn take_in(&mut self) {
        self.asked.take_in();
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.asked.working()
    }

    /// Stops what is being worked out.
    pub fn give_up(&mut self) {
        self.asked.give_up("Stopped before it was known");
    }

    /// Works out once more what was stopped or failed.
    pub fn try_again(&mut self) {
        self.asked.try_again();
    }

    /// Where the question about a season stands.
    #[must_use]
    pub fn standing(&self, season: &Season) -> Standing<'_, Insight> {
        self.asked.standing(&season.inputs)
    }

    /// The two small changes of the season asked about last; empty until they are known.
    #[must_use]
    pub fn alternatives(&self) -> Alternatives {
        match self.asked.last() {
            Some((_, insight)) if !self.working() => insight.alternatives,
            _ => Alternatives::default(),
        }
    }
}

fn answer(season: &Season, catalogue: &Catalogue, progress: &Progress) -> Result<Insight, String> {
    let (study, scenario) = (&season.inputs.study, &season.inputs.scenario);
    let (climate, whole) = (&season.climate, &season.run.summary);
    let cancelled = || progress.given_up();
    let alternatives =
        alternatives(study, scenario, climate, catalogue, whole, &cancelled).map_err(|e| e.to_string())?;
    let parts = |runs: usize| progress.parts(runs);
    let steps =
        saving_steps(study, scenario, climate, catalogue, whole, &parts, &cancelled).map_err(|e| e.to_string())?;
    Ok(Insight { steps, alternatives })
}
