//! A study is written beside the window: its weather, which it brings along, may be large.

use super::engine;
use super::filing::{Ask, Next};
use super::state::State;
use crate::model::{Site, Study};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// A study on its way to a file.
pub(super) struct Saving {
    path: PathBuf,
    /// Its place before the weather was brought along.
    site: Site,
    answer: Receiver<Result<Saved, String>>,
}

struct Saved {
    /// What the file holds.
    study: Study,
    /// Why its weather stayed where it was.
    left_behind: Option<String>,
}

impl State {
    /// Saves to the study's file, or asks for one; then goes on with `next`.
    pub fn save(&mut self, next: Option<Next>, ctx: &egui::Context) {
        self.filing.after_save = next;
        match self.document.path.clone() {
            Some(path) => self.save_to(&path, ctx),
            None => self.ask_path(Ask::Save, ctx),
        }
    }

    pub(super) fn save_to(&mut self, path: &Path, ctx: &egui::Context) {
        if self.document.changed_elsewhere(path) {
            self.filing.conflict = Some(path.to_owned());
            return;
        }
        let (sender, answer) = channel();
        let (study, folder, to) = (self.document.draft.study.clone(), self.folder(), path.to_owned());
        let (site, waker) = (study.site.clone(), ctx.clone());
        let write = move || {
            // The window may be gone by then: the file is written all the same.
            let _ = sender.send(written(study, folder.as_deref(), &to));
            waker.request_repaint();
        };
        match std::thread::Builder::new().name("save".to_owned()).spawn(write) {
            Ok(_) => self.filing.saving = Some(Saving { path: path.to_owned(), site, answer }),
            Err(error) => self.not_saved(format!("No thread to write the study ({error})")),
        }
    }

    /// Takes in that the study is written, or why not.
    pub fn poll_saving(&mut self, ctx: &egui::Context) {
        let Some(saving) = &self.filing.saving else { return };
        let answer = match saving.answer.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Empty) => return,
            Err(TryRecvError::Disconnected) => Err("The study was not written, by a fault of the program".to_owned()),
        };
        let Some(Saving { path, site, .. }) = self.filing.saving.take() else { return };
        let Saved { study, left_behind } = match answer {
            Ok(saved) => saved,
            Err(reason) => return self.not_saved(reason),
        };
        self.prefs.remember(&path);
        // Weather that was chosen meanwhile stays chosen.
        if self.document.draft.study.site == site {
            self.document.draft.study.site = study.site.clone();
        }
        self.document.revision += 1;
        self.document.mark_saved(study, path);
        self.claim_file(ctx);
        self.say(ctx, format!("Saved {}", self.document.name()), false);
        self.filing.error = left_behind.map(|reason| format!("The study is saved, but {reason}"));
        if let Some(next) = self.filing.after_save.take() {
            self.go_on(next, ctx);
        }
    }

    fn not_saved(&mut self, reason: String) {
        self.filing.after_save = None;
        self.filing.error = Some(reason);
    }
}

/// What cannot be brought along stays where it is; the study is saved all the same.
fn written(mut study: Study, folder: Option<&Path>, path: &Path) -> Result<Saved, String> {
    let left_behind = engine::bring_weather(&mut study, folder, path).err();
    engine::save(path, &study)?;
    Ok(Saved { study, left_behind })
}
