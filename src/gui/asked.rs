//! A question worked out beside the window: the latest one wins, an older one is given up, and its answer stays on show
//! until the next has come.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// Why there is no answer when the thread died over the question.
const FAULT: &str = "The calculation stopped with a fault of the program";

/// What the thread tells and hears while it works.
#[derive(Clone)]
pub struct Progress {
    done: Arc<AtomicUsize>,
    given_up: Arc<AtomicBool>,
    ctx: egui::Context,
}

impl Progress {
    /// So many parts of the work are done.
    pub fn parts(&self, done: usize) {
        self.done.store(done, Ordering::Relaxed);
        self.ctx.request_repaint();
    }

    /// Whether nobody waits for the answer any more.
    #[must_use]
    pub fn given_up(&self) -> bool {
        self.given_up.load(Ordering::Relaxed)
    }
}

/// A question under way.
struct Open<Q, A> {
    question: Q,
    waiting: Waiting,
    coming: Receiver<Result<A, String>>,
}

/// Gives the work up when it goes.
struct Waiting(Progress);

impl Drop for Waiting {
    fn drop(&mut self) {
        self.0.given_up.store(true, Ordering::Relaxed);
    }
}

/// Where the window asks: `Q` tells one question from another, `A` is the answer.
pub struct Asked<Q, A> {
    open: Option<Open<Q, A>>,
    answered: Option<(Q, Result<A, String>)>,
}

impl<Q, A> Default for Asked<Q, A> {
    fn default() -> Self {
        Self { open: None, answered: None }
    }
}

/// Where a question stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing<'a, A> {
    /// So many parts of the work are done.
    Working(usize),
    /// The answer.
    Known(&'a A),
    /// Why there is none.
    Failed(&'a str),
}

impl<Q: PartialEq, A: Send + 'static> Asked<Q, A> {
    /// Asks, unless that was asked last; takes in what has come. `work` runs on a thread of this name.
    pub fn ask(
        &mut self,
        name: &str,
        question: Q,
        ctx: &egui::Context,
        work: impl FnOnce(&Progress) -> Result<A, String> + Send + 'static,
    ) {
        self.take_in();
        let last = self.open.as_ref().map(|open| &open.question).or(self.answered.as_ref().map(|(asked, _)| asked));
        if last == Some(&question) {
            return;
        }
        let progress = Progress { done: Arc::default(), given_up: Arc::default(), ctx: ctx.clone() };
        let (sender, coming) = channel();
        let theirs = progress.clone();
        let thread = move || {
            // The window may have turned to another question: then nobody listens.
            let _ = sender.send(work(&theirs));
            theirs.ctx.request_repaint();
        };
        match std::thread::Builder::new().name(name.to_owned()).spawn(thread) {
            Ok(_) => self.open = Some(Open { question, waiting: Waiting(progress), coming }),
            Err(error) => {
                self.open = None;
                self.answered = Some((question, Err(format!("No thread for the calculation ({error})"))));
            }
        }
    }

    /// Takes in what has come; also once nobody asks any more.
    pub fn take_in(&mut self) {
        let answer = match self.open.as_ref().map(|open| open.coming.try_recv()) {
            Some(Ok(answer)) => answer,
            Some(Err(TryRecvError::Disconnected)) => Err(FAULT.to_owned()),
            Some(Err(TryRecvError::Empty)) | None => return,
        };
        if let Some(open) = self.open.take() {
            self.answered = Some((open.question, answer));
        }
    }

    /// Lets the open question go, as if it had not been asked.
    pub fn let_go(&mut self) {
        self.open = None;
    }

    /// Gives the open question up; it counts as answered by `why` until another is asked.
    pub fn give_up(&mut self, why: &str) {
        if let Some(open) = self.open.take() {
            self.answered = Some((open.question, Err(why.to_owned())));
        }
    }

    /// Forgets a question that has no answer, so that it may be asked again.
    pub fn try_again(&mut self) {
        self.answered = self.answered.take().filter(|(_, answer)| answer.is_ok());
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.open.is_some()
    }

    /// Where a question stands.
    #[must_use]
    pub fn standing(&self, question: &Q) -> Standing<'_, A> {
        if let Some(open) = self.open.as_ref().filter(|open| open.question == *question) {
            return Standing::Working(open.waiting.0.done.load(Ordering::Relaxed));
        }
        match self.answered.as_ref().filter(|(asked, _)| asked == question) {
            Some((_, Ok(answer))) => Standing::Known(answer),
            Some((_, Err(why))) => Standing::Failed(why),
            None => Standing::Working(0),
        }
    }

    /// The last question that was answered, and its answer: what may stay on show, dimmed, while another is worked out.
    #[must_use]
    pub fn last(&self) -> Option<(&Q, &A)> {
        self.answered.as_ref().and_then(|(question, answer)| Some((question, answer.as_ref().ok()?)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn settle(asked: &mut Asked<u32, u32>) {
        while asked.working() {
            std::thread::yield_now();
            asked.take_in();
        }
    }

    #[test]
    fn the_latest_question_wins_and_the_old_answer_stays_until_then() {
        let (mut asked, ctx) = (Asked::default(), egui::Context::default());
        asked.ask("first", 1, &ctx, |_| Ok(10));
        settle(&mut asked);
        assert_eq!(asked.standing(&1), Standing::Known(&10));
        let (gate, wait) = channel::<()>();
        asked.ask("second", 2, &ctx, move |progress| {
            progress.parts(3);
            let _ = wait.recv();
            if progress.given_up() { Err("given up".to_owned()) } else { Ok(20) }
        });
        while asked.standing(&2) != Standing::Working(3) {
            std::thread::yield_now();
        }
        assert_eq!(asked.last(), Some((&1, &10)));
        asked.ask("third", 3, &ctx, |_| Err("no".to_owned()));
        drop(gate);
        settle(&mut asked);
        assert_eq!(asked.standing(&3), Standing::Failed("no"));
        assert_eq!(asked.standing(&2), Standing::Working(0));
    }

    #[test]
    fn a_thread_that_dies_is_not_waited_for() {
        let (mut asked, ctx) = (Asked::default(), egui::Context::default());
        asked.ask("dies", 1, &ctx, |_| std::panic::resume_unwind(Box::new(())));
        settle(&mut asked);
        assert_eq!(asked.standing(&1), Standing::Failed(FAULT));
    }

    #[test]
    fn what_was_given_up_may_be_asked_again() {
        let (mut asked, ctx) = (Asked::default(), egui::Context::default());
        let (gate, wait) = channel::<()>();
        asked.ask("first", 1, &ctx, move |_| wait.recv().map(|()| 10).map_err(|e| e.to_string()));
        asked.give_up("stopped");
        assert_eq!(asked.standing(&1), Standing::Failed("stopped"));
        asked.ask("again", 1, &ctx, |_| Ok(10));
        assert!(!asked.working(), "it was asked last, so it is not asked anew");
        asked.try_again();
        asked.ask("again", 1, &ctx, |_| Ok(10));
        settle(&mut asked);
        assert_eq!(asked.standing(&1), Standing::Known(&10));
        drop(gate);
    }
}
