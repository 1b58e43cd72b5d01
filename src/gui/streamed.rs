//! A long question whose answer grows on show while it is worked out.

use super::asked::{Asked, Progress, Standing};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

/// Time between two looks at an unfinished answer.
const BETWEEN_LOOKS: Duration = Duration::from_millis(120);
/// Why there is no answer after the grower stopped it.
const STOPPED: &str = "Stopped";

type SoFar<A> = Arc<Mutex<Option<Arc<A>>>>;

/// Where the window asks.
pub struct Streamed<Q, A> {
    asked: Asked<Q, Arc<A>>,
    question: Option<Q>,
    so_far: SoFar<A>,
}

impl<Q, A> Default for Streamed<Q, A> {
    fn default() -> Self {
        Self { asked: Asked::default(), question: None, so_far: SoFar::default() }
    }
}

/// What there is to show.
pub struct Grown<A> {
    /// The answer: all of it, what is known so far, or the last one while nothing of it is known yet.
    pub answer: Option<Arc<A>>,
    /// Whether it belongs to an older question.
    pub stale: bool,
    /// How many parts are done while it is worked out.
    pub working: Option<usize>,
    /// Why there is no more.
    pub failed: Option<String>,
}

impl<A> Grown<A> {
    /// The answer once all of it is known.
    #[must_use]
    pub fn whole(&self) -> Option<&Arc<A>> {
        self.answer.as_ref().filter(|_| !self.stale && self.working.is_none() && self.failed.is_none())
    }
}

/// What the thread tells and hears while it works.
pub struct Teller<'a, A> {
    progress: &'a Progress,
    so_far: &'a SoFar<A>,
    looked: Mutex<Instant>,
}

impl<A> Teller<'_, A> {
    /// So many parts of the work are done.
    pub fn parts(&self, done: usize) {
        self.progress.parts(done);
    }

    /// Whether nobody waits for the answer any more.
    #[must_use]
    pub fn given_up(&self) -> bool {
        self.progress.given_up()
    }

    /// Shows what is known so far, now and then.
    pub fn tell(&self, known: impl FnOnce() -> A) {
        let mut looked = self.looked.lock().unwrap_or_else(PoisonError::into_inner);
        if looked.elapsed() > BETWEEN_LOOKS {
            *looked = Instant::now();
            *self.so_far.lock().unwrap_or_else(PoisonError::into_inner) = Some(Arc::new(known()));
        }
    }
}

impl<Q: PartialEq + Clone, A: Send + Sync + 'static> Streamed<Q, A> {
    /// Asks, unless that was asked last. `work` runs on a thread of this name.
    pub fn ask(
        &mut self,
        name: &str,
        question: Q,
        ctx: &egui::Context,
        work: impl FnOnce(&Teller<A>) -> Result<A, String> + Send + 'static,
    ) {
        if self.question.as_ref() != Some(&question) {
            self.question = Some(question.clone());
            self.so_far = SoFar::default();
        }
        let so_far = Arc::clone(&self.so_far);
        self.asked.ask(name, question, ctx, move |progress| {
            let teller = Teller { progress, so_far: &so_far, looked: Mutex::new(Instant::now()) };
            work(&teller).map(Arc::new)
        });
    }

    /// Stops working; what is known stays on show.
    pub fn stop(&mut self) {
        self.asked.give_up(STOPPED);
    }

    /// Asks again what was stopped or failed.
    pub fn again(&mut self) {
        self.asked.try_again();
    }

    /// Lets go of what is under way and no view waits for; it is asked for anew when that is shown again.
    pub fn let_go(&mut self) {
        self.asked.let_go();
    }

    /// Takes in what has come.
    pub fn take_in(&mut self) {
        self.asked.take_in();
    }

    /// Forgets what was asked, and gives it up; the next question has no older answer to show.
    pub fn forget(&mut self) {
        *self = Self::default();
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.asked.working()
    }

    /// The answer to this question, if it is the one known.
    #[must_use]
    pub fn known(&self, question: &Q) -> Option<&Arc<A>> {
        self.asked.last().filter(|(asked, _)| *asked == question).map(|(_, answer)| answer)
    }

    /// What there is to show.
    #[must_use]
    pub fn grown(&self) -> Grown<A> {
        let so_far = self.so_far.lock().unwrap_or_else(PoisonError::into_inner).clone();
        let last = self.asked.last().map(|(_, answer)| Arc::clone(answer));
        let stale = so_far.is_none();
        match self.question.as_ref().map(|question| self.asked.standing(question)) {
            Some(Standing::Known(answer)) => {
                Grown { answer: Some(Arc::clone(answer)), stale: false, working: None, failed: None }
            }
            Some(Standing::Working(done)) => {
                Grown { answer: so_far.or(last), stale, working: Some(done), failed: None }
            }
            Some(Standing::Failed(why)) => {
                Grown { answer: so_far.or(last), stale, working: None, failed: Some(why.to_owned()) }
            }
            None => Grown { answer: None, stale: false, working: None, failed: None },
        }
    }
}
