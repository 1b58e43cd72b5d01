//! "Where the saving comes from", worked out beside the window: the latest question wins, an older one is given up.

use super::worker::Inputs;
use crate::model::Catalogue;
use crate::season::Summary;
use crate::season::saving::{SavingStep, saving_steps};
use crate::weather::Climate;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::mpsc::{Receiver, channel};

/// The answer to one question.
type Answer = Result<Vec<SavingStep>, String>;

/// A question under way or answered.
struct Asked {
    inputs: Arc<Inputs>,
    done: Arc<AtomicUsize>,
    given_up: Arc<AtomicBool>,
    coming: Receiver<Answer>,
    answer: Option<Answer>,
}

impl Drop for Asked {
    fn drop(&mut self) {
        self.given_up.store(true, Ordering::Relaxed);
    }
}

/// Where the window asks for steps.
#[derive(Default)]
pub struct Savings {
    asked: Option<Asked>,
}

/// Where a question stands.
pub enum Standing<'a> {
    /// So many runs are done.
    Working(usize),
    /// The steps.
    Known(&'a [SavingStep]),
    /// Why there are none.
    Failed(&'a str),
}

impl Savings {
    /// The steps of a season on show; asks for them when they are not those asked for last.
    pub fn of(
        &mut self,
        inputs: &Arc<Inputs>,
        summary: &Summary,
        climate: &Arc<Climate>,
        catalogue: &Arc<Catalogue>,
        ctx: &egui::Context,
    ) -> Standing<'_> {
        if self.asked.as_ref().is_none_or(|asked| asked.inputs != *inputs) {
            self.asked = Some(ask(inputs, summary.clone(), Arc::clone(climate), Arc::clone(catalogue), ctx.clone()));
        }
        let Some(asked) = &mut self.asked else { return Standing::Working(0) };
        if asked.answer.is_none() {
            asked.answer = asked.coming.try_recv().ok();
        }
        match &asked.answer {
            Some(Ok(steps)) => Standing::Known(steps),
            Some(Err(why)) => Standing::Failed(why),
            None => Standing::Working(asked.done.load(Ordering::Relaxed)),
        }
    }
}

fn ask(
    inputs: &Arc<Inputs>,
    summary: Summary,
    climate: Arc<Climate>,
    catalogue: Arc<Catalogue>,
    ctx: egui::Context,
) -> Asked {
    let (done, given_up) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicBool::new(false)));
    let (sender, coming) = channel();
    let (theirs, count, stop) = (Arc::clone(inputs), Arc::clone(&done), Arc::clone(&given_up));
    let work = move || {
        let progress = |runs: usize| {
            count.store(runs, Ordering::Relaxed);
            ctx.request_repaint();
        };
        let cancelled = || stop.load(Ordering::Relaxed);
        let steps =
            saving_steps(&theirs.study, &theirs.scenario, &climate, &catalogue, &summary, &progress, &cancelled);
        // The window may have turned to another question: then nobody listens.
        let _ = sender.send(steps.map_err(|error| error.to_string()));
        ctx.request_repaint();
    };
    let started = std::thread::Builder::new().name("saving steps".to_owned()).spawn(work);
    let answer = started.err().map(|error| Err(format!("no thread for the calculation ({error})")));
    Asked { inputs: Arc::clone(inputs), done, given_up, coming, answer }
}
