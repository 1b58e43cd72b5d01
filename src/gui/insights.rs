//! What the chosen scenario's season is worth knowing beyond itself: where its saving comes from, and what two small
//! changes would alter. Worked out beside the window; the latest question wins, an older one is given up.

use super::board::Season;
use crate::model::Catalogue;
use crate::season::alternatives::{Alternatives, alternatives};
use crate::season::saving::{SavingStep, saving_steps};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::mpsc::{Receiver, channel};

/// The answer to one question.
#[derive(Debug, Clone, PartialEq)]
pub struct Insight {
    /// Steps from the baseline to the scenario.
    pub steps: Vec<SavingStep>,
    /// What two small changes cost or save.
    pub alternatives: Alternatives,
}

/// A question under way or answered.
struct Asked {
    season: Season,
    done: Arc<AtomicUsize>,
    given_up: Arc<AtomicBool>,
    coming: Receiver<Result<Insight, String>>,
    answer: Option<Result<Insight, String>>,
}

impl Drop for Asked {
    fn drop(&mut self) {
        self.given_up.store(true, Ordering::Relaxed);
    }
}

/// Where the window asks.
#[derive(Default)]
pub struct Insights {
    asked: Option<Asked>,
}

/// Where a question stands.
pub enum Standing<'a> {
    /// So many runs of the steps are done.
    Working(usize),
    /// The answer.
    Known(&'a Insight),
    /// Why there is none.
    Failed(&'a str),
}

impl Insights {
    /// Asks about a season, unless that was asked last; takes in what has come.
    pub fn ask(&mut self, season: &Season, catalogue: &Arc<Catalogue>, ctx: &egui::Context) {
        if self.asked.as_ref().is_none_or(|asked| asked.season.inputs != season.inputs) {
            self.asked = Some(ask(season.clone(), Arc::clone(catalogue), ctx.clone()));
        }
        if let Some(asked) = self.asked.as_mut().filter(|asked| asked.answer.is_none()) {
            asked.answer = asked.coming.try_recv().ok();
        }
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.asked.as_ref().is_some_and(|asked| asked.answer.is_none())
    }

    /// Where the question about a season stands.
    #[must_use]
    pub fn standing(&self, season: &Season) -> Standing<'_> {
        match self.asked.as_ref().filter(|asked| asked.season.inputs == season.inputs) {
            None => Standing::Working(0),
            Some(asked) => match &asked.answer {
                Some(Ok(insight)) => Standing::Known(insight),
                Some(Err(why)) => Standing::Failed(why),
                None => Standing::Working(asked.done.load(Ordering::Relaxed)),
            },
        }
    }

    /// The two small changes of the season asked about last; empty until they are known.
    #[must_use]
    pub fn alternatives(&self) -> Alternatives {
        match self.asked.as_ref().and_then(|asked| asked.answer.as_ref()) {
            Some(Ok(insight)) => insight.alternatives,
            _ => Alternatives::default(),
        }
    }
}

fn ask(season: Season, catalogue: Arc<Catalogue>, ctx: egui::Context) -> Asked {
    let (done, given_up) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicBool::new(false)));
    let (sender, coming) = channel();
    let (theirs, count, stop) = (season.clone(), Arc::clone(&done), Arc::clone(&given_up));
    let work = move || {
        let progress = |runs: usize| {
            count.store(runs, Ordering::Relaxed);
            ctx.request_repaint();
        };
        let answer = answer(&theirs, &catalogue, &progress, &|| stop.load(Ordering::Relaxed));
        // The window may have turned to another question: then nobody listens.
        let _ = sender.send(answer);
        ctx.request_repaint();
    };
    let started = std::thread::Builder::new().name("insights".to_owned()).spawn(work);
    let answer = started.err().map(|error| Err(format!("No thread for the calculation ({error})")));
    Asked { season, done, given_up, coming, answer }
}

fn answer(
    season: &Season,
    catalogue: &Catalogue,
    progress: &dyn Fn(usize),
    cancelled: &dyn Fn() -> bool,
) -> Result<Insight, String> {
    let (study, scenario) = (&season.inputs.study, &season.inputs.scenario);
    let (climate, whole) = (&season.climate, &season.run.summary);
    let alternatives =
        alternatives(study, scenario, climate, catalogue, whole, cancelled).map_err(|e| e.to_string())?;
    let steps =
        saving_steps(study, scenario, climate, catalogue, whole, progress, cancelled).map_err(|e| e.to_string())?;
    Ok(Insight { steps, alternatives })
}
