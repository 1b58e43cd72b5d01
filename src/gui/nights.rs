//! What hard nights do to the chosen scenario: the power cut that the study asks for, and the coldest spell, colder.

use super::asked::{Asked, Progress, Standing};
use super::board::Season;
use super::worker::Inputs;
use crate::model::{Catalogue, HardNight, Study};
use crate::season::colder::{ColderSpell, colder_spell};
use crate::season::power_cut::{AskedCut, asked_cut};
use std::sync::Arc;

/// Where the window asks.
#[derive(Default)]
pub struct Nights {
    cut: Asked<(Arc<Inputs>, HardNight), Arc<AskedCut>>,
    colder: Asked<(Arc<Inputs>, f64), Arc<ColderSpell>>,
}

/// An answer on show.
pub enum Answer<'a, A> {
    /// That of the question.
    Fresh(&'a A),
    /// The last one, while the question is worked out.
    Stale(&'a A),
    /// None yet.
    Coming,
    /// Why there is none.
    Failed(&'a str),
}

impl<'a, A> Answer<'a, A> {
    /// What there is to show.
    #[must_use]
    pub fn shown(&self) -> Option<&'a A> {
        match self {
            Self::Fresh(answer) | Self::Stale(answer) => Some(answer),
            Self::Coming | Self::Failed(_) => None,
        }
    }
}

impl Nights {
    /// Asks for the power cut of a study on a season.
    pub fn cut(
        &mut self,
        season: &Season,
        asked: &HardNight,
        catalogue: &Arc<Catalogue>,
        ctx: &egui::Context,
    ) -> Answer<'_, Arc<AskedCut>> {
        let named = HardNight { colder_by_k: 0.0, ..asked.clone() };
        let (theirs, catalogue) = (season.clone(), Arc::clone(catalogue));
        let study = Study { hard_night: named.clone(), ..season.inputs.study.clone() };
        let work = move |progress: &Progress| {
            let cancelled = || progress.given_up();
            asked_cut(&study, &theirs.inputs.scenario, &theirs.climate, &catalogue, &cancelled)
                .map(Arc::new)
                .map_err(|e| e.to_string())
        };
        let question = (Arc::clone(&season.inputs), named);
        self.cut.ask("power cut", question.clone(), ctx, work);
        answer(&self.cut, &question)
    }

    /// Asks for the coldest spell, so much colder.
    pub fn colder(
        &mut self,
        season: &Season,
        colder_by_k: f64,
        catalogue: &Arc<Catalogue>,
        ctx: &egui::Context,
    ) -> Answer<'_, Arc<ColderSpell>> {
        let (theirs, catalogue) = (season.clone(), Arc::clone(catalogue));
        let work = move |progress: &Progress| {
            let (study, scenario) = (&theirs.inputs.study, &theirs.inputs.scenario);
            let cancelled = || progress.given_up();
            colder_spell(study, scenario, &theirs.climate, &catalogue, colder_by_k, &cancelled)
                .map(Arc::new)
                .map_err(|e| e.to_string())
        };
        let question = (Arc::clone(&season.inputs), colder_by_k);
        self.colder.ask("colder spell", question.clone(), ctx, work);
        answer(&self.colder, &question)
    }

    /// Takes in what has come.
    pub fn take_in(&mut self) {
        self.cut.take_in();
        self.colder.take_in();
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.cut.working() || self.colder.working()
    }
}

fn answer<'a, Q: PartialEq, A: Send + 'static>(asked: &'a Asked<Q, A>, question: &Q) -> Answer<'a, A> {
    match (asked.standing(question), asked.last()) {
        (Standing::Known(answer), _) => Answer::Fresh(answer),
        (Standing::Failed(why), _) => Answer::Failed(why),
        (Standing::Working(_), Some((_, last))) => Answer::Stale(last),
        (Standing::Working(_), None) => Answer::Coming,
    }
}
