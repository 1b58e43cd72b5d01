//! Asks what matters to the chosen scenario: while its view is on show at once, else when the grower pauses, for the
//! headline's band. Answers are kept, so that going from card to card asks nothing twice.

use super::board::{Season, Standing};
use super::state::{State, View};
use super::streamed::{Grown, Streamed, Teller};
use super::worker::Inputs;
use crate::model::{Catalogue, ManyWinters, Study};
use crate::season::pool::Workers;
use crate::season::sensitivity::{Sensitivity, runs_of_what_matters, what_matters};
use std::num::NonZeroUsize;
use std::sync::Arc;

/// Seconds without a change after which the headline's band is worked out.
const PAUSE_S: f64 = 0.5;
/// Answers kept.
const KEPT: usize = 16;

/// What decides the answer.
#[derive(Clone, PartialEq)]
pub struct Question {
    inputs: Arc<Inputs>,
    many: ManyWinters,
}

/// Where the window asks.
#[derive(Default)]
pub struct Matters {
    asked: Streamed<Question, Sensitivity>,
    known: Vec<(Question, Arc<Sensitivity>)>,
    /// What is waited for before it is asked, and since when.
    waiting: Option<(Question, f64)>,
}

impl Matters {
    /// What is known of a question.
    #[must_use]
    fn known(&self, question: &Question) -> Option<&Arc<Sensitivity>> {
        self.known.iter().find(|(known, _)| known == question).map(|(_, answer)| answer)
    }

    /// Keeps the answer to a question.
    fn keep(&mut self, question: Question, answer: Arc<Sensitivity>) {
        if self.known(&question).is_none() {
            self.known.push((question, answer));
            if self.known.len() > KEPT {
                self.known.remove(0);
            }
        }
    }

    /// Stops working; what is known stays on show.
    pub fn stop(&mut self) {
        self.asked.stop();
    }

    /// Asks again what was stopped or failed.
    pub fn again(&mut self) {
        self.asked.again();
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.asked.working()
    }

    /// Whether the grower has paused long enough over a question; an older one is given up.
    fn paused(&mut self, question: &Question, ctx: &egui::Context) -> bool {
        let now = ctx.input(|i| i.time);
        match &self.waiting {
            Some((waiting, since)) if waiting == question => {
                let left = PAUSE_S - (now - since);
                if left > 0.0 {
                    ctx.request_repaint_after_secs(left as f32);
                }
                left <= 0.0
            }
            _ => {
                self.waiting = Some((question.clone(), now));
                self.asked.forget();
                ctx.request_repaint_after_secs(PAUSE_S as f32);
                false
            }
        }
    }
}

impl State {
    /// Asks what matters to the chosen scenario, and gives what is known; none without a season.
    pub fn what_matters(&mut self, ctx: &egui::Context) -> Option<(Grown<Sensitivity>, usize)> {
        let (season, question) = self.matters_question()?;
        let count = runs_of_what_matters(&self.study_of(&season), &season.inputs.scenario);
        if let Some(answer) = self.matters.known(&question) {
            return Some((
                Grown { answer: Some(Arc::clone(answer)), stale: false, working: None, failed: None },
                count,
            ));
        }
        self.ask_what_matters(&season, question.clone(), Workers::all().threads, ctx);
        let grown = self.matters.asked.grown();
        if let Some(answer) = grown.whole() {
            self.matters.keep(question, Arc::clone(answer));
        }
        Some((grown, count))
    }

    /// Works the headline's band out while nothing else is to be done.
    pub fn attend_to_what_matters(&mut self, ctx: &egui::Context) {
        let Some((season, question)) = self.matters_question() else { return };
        if self.view == View::Matters || self.board.working() || self.matters.known(&question).is_some() {
            return;
        }
        if self.matters.paused(&question, ctx) {
            // One processor stays free for the window and the next change.
            let threads = NonZeroUsize::new(Workers::all().threads.get() - 1).unwrap_or(NonZeroUsize::MIN);
            self.ask_what_matters(&season, question.clone(), threads, ctx);
            if let Some(answer) = self.matters.asked.grown().whole() {
                self.matters.keep(question, Arc::clone(answer));
            }
        }
    }

    /// What is known of how sure the chosen scenario's figures are.
    #[must_use]
    pub fn chosen_matters(&self) -> Option<Arc<Sensitivity>> {
        let (_, question) = self.matters_question()?;
        self.matters.known(&question).cloned()
    }

    /// What is known of every scenario, in the order of the study.
    #[must_use]
    pub fn known_matters(&self) -> Vec<Option<Sensitivity>> {
        let many = &self.document.draft.study.many_winters;
        let of = |tag: &super::document::Tag| {
            let (season, _) = self.board.season(tag.id).filter(|(_, standing)| *standing == Standing::Fresh)?;
            let question = Question { inputs: Arc::clone(&season.inputs), many: many.clone() };
            self.matters.known(&question).map(|answer| Sensitivity::clone(answer))
        };
        self.document.draft.tags.iter().map(of).collect()
    }

    fn matters_question(&self) -> Option<(Season, Question)> {
        let (season, standing) = self.chosen_season()?;
        let many = self.document.draft.study.many_winters.clone();
        let question = Question { inputs: Arc::clone(&season.inputs), many };
        (standing == Standing::Fresh && !season.is_empty()).then(|| (season.clone(), question))
    }

    /// The study that a season was computed from, with the number of winters asked for.
    fn study_of(&self, season: &Season) -> Study {
        Study { many_winters: self.document.draft.study.many_winters.clone(), ..season.inputs.study.clone() }
    }

    fn ask_what_matters(&mut self, season: &Season, question: Question, threads: NonZeroUsize, ctx: &egui::Context) {
        let (study, rows) = (self.study_of(season), Arc::clone(&self.catalogue));
        let season = season.clone();
        self.matters
            .asked
            .ask("what matters", question, ctx, move |teller| work(&study, &season, &rows, threads, teller));
    }
}

/// The work on its thread.
fn work(
    study: &Study,
    season: &Season,
    rows: &Catalogue,
    threads: NonZeroUsize,
    teller: &Teller<Sensitivity>,
) -> Result<Sensitivity, String> {
    let (progress, cancelled) = (|done| teller.parts(done), || teller.given_up());
    let workers = Workers { threads, progress: &progress, cancelled: &cancelled };
    let mut so_far = |known: &Sensitivity| teller.tell(|| known.clone());
    what_matters(study, &season.inputs.scenario, &season.climate, rows, workers, &mut so_far)
        .map_err(|error| error.to_string())
}
