//! Keeps unsaved changes aside beside the window, and notices a second window on the same file.

use super::document::Document;
use super::state::State;
use crate::model::Study;
use crate::storage::{Claim, Draft, LeftDraft};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, Sender, channel};

/// Seconds between a change and its being kept.
const WAIT_S: f64 = 2.0;

/// What the thread is asked to do.
enum Order {
    Keep(Box<Study>, Option<PathBuf>, String),
    Forget,
    Adopt(Draft),
    Stop,
}

/// Keeps the changes of one window.
pub struct Keeping {
    folder: PathBuf,
    orders: Sender<Order>,
    troubles: Receiver<String>,
    thread: Option<std::thread::JoinHandle<()>>,
    claim: Option<Claim>,
    seen: u64,
    due_s: Option<f64>,
    kept: bool,
}

impl Keeping {
    /// Begins in a folder of its own; gives the drafts that other windows left behind.
    ///
    /// # Errors
    /// Why nothing can be kept.
    pub fn begin(folder: PathBuf) -> Result<(Self, Vec<LeftDraft>), String> {
        let drafts = folder.join("drafts");
        let left = LeftDraft::all(&drafts);
        let draft = Draft::begin(&drafts).map_err(|error| {
            format!("Unsaved changes cannot be kept aside in {} ({error}). Save often", drafts.display())
        })?;
        let (orders, work) = channel();
        let (tell, troubles) = channel();
        let thread = std::thread::Builder::new().name("keeping".to_owned());
        let thread = thread.spawn(move || keep(draft, &work, &tell)).map_err(|error| error.to_string())?;
        let keeping =
            Self { folder, orders, troubles, thread: Some(thread), claim: None, seen: 0, due_s: None, kept: false };
        Ok((keeping, left))
    }

    /// Looks after the study once a frame; gives a trouble to tell.
    pub fn tend(&mut self, document: &Document, ctx: &egui::Context) -> Option<String> {
        let now_s = ctx.input(|i| i.time);
        if document.revision != self.seen {
            self.seen = document.revision;
            self.due_s = Some(now_s + WAIT_S);
        }
        if let Some(due_s) = self.due_s {
            if now_s < due_s {
                ctx.request_repaint_after(std::time::Duration::from_secs_f64(due_s - now_s));
            } else {
                self.due_s = None;
                self.order(document);
            }
        }
        self.troubles.try_recv().ok()
    }

    fn order(&mut self, document: &Document) {
        if document.changed_since_save() {
            let study = Box::new(document.draft.study.clone());
            // A thread that has gone has told why.
            let _ = self.orders.send(Order::Keep(study, document.path.clone(), document.on_disk.clone()));
            self.kept = true;
        } else if std::mem::take(&mut self.kept) {
            let _ = self.orders.send(Order::Forget);
        }
    }

    /// Goes on with a draft that was left behind.
    pub fn adopt(&mut self, draft: Draft) {
        self.kept = true;
        let _ = self.orders.send(Order::Adopt(draft));
    }

    /// Claims the file of the study; false if another window has it open.
    pub fn claim(&mut self, file: Option<&Path>) -> bool {
        self.claim = None;
        let Some(file) = file else { return true };
        match Claim::of(&self.folder.join("open"), file) {
            Ok(Some(claim)) => {
                self.claim = Some(claim);
                true
            }
            Ok(None) => false,
            // Where no marks can be set, no second window can be noticed.
            Err(_) => true,
        }
    }

    /// The window closes as it should: what was not saved was given up.
    pub fn end(&mut self) {
        let _ = self.orders.send(Order::Forget);
        let _ = self.orders.send(Order::Stop);
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

/// The thread: the disk may take its time.
fn keep(mut draft: Draft, work: &Receiver<Order>, tell: &Sender<String>) {
    let mut told = false;
    while let Ok(order) = work.recv() {
        let done = match order {
            Order::Keep(study, of, on_disk) => draft.keep(&study, of.as_deref(), &on_disk),
            Order::Forget => draft.forget(),
            Order::Adopt(other) => {
                draft = other;
                Ok(())
            }
            Order::Stop => return,
        };
        if let Err(error) = done {
            // Once is enough: the next try may go well, and nothing is lost meanwhile.
            if !std::mem::replace(&mut told, true) {
                let _ = tell.send(format!("Unsaved changes could not be kept aside ({error}). Save often"));
            }
        }
    }
}

impl State {
    /// Keeps unsaved changes in a folder from now on.
    pub fn keep_in(&mut self, folder: PathBuf) {
        match Keeping::begin(folder) {
            Ok((keeping, left)) => (self.keeping, self.left) = (Some(keeping), left),
            Err(reason) => self.filing.error = Some(reason),
        }
    }

    /// Marks the study's file as open in this window, and says so if another has it too.
    pub fn claim_file(&mut self, ctx: &egui::Context) {
        let Some(keeping) = &mut self.keeping else { return };
        self.opened_twice = !keeping.claim(self.document.path.as_deref());
        if self.opened_twice {
            self.say(ctx, format!("{} is open in another window too", self.document.name()), false);
        }
    }

    /// Looks after unsaved changes; once a frame.
    pub fn tend(&mut self, ctx: &egui::Context) {
        let Some(keeping) = &mut self.keeping else { return };
        if let Some(trouble) = keeping.tend(&self.document, ctx) {
            self.say(ctx, trouble, false);
        }
    }

    /// Goes on with a draft that was left behind.
    pub fn recover(&mut self, left: LeftDraft, ctx: &egui::Context) {
        let saved = left.of.as_deref().and_then(|path| super::engine::load(path).ok());
        let mut document = Document::recovered(left.study.clone(), left.of.clone(), saved);
        // Another hand may have saved to the file meanwhile: then saving asks first.
        document.on_disk.clone_from(&left.on_disk);
        self.show(document);
        if let Some(keeping) = &mut self.keeping {
            keeping.adopt(left.into_draft());
        }
        self.claim_file(ctx);
    }
}
