//! A weather file that is read beside the window: how far it is, and the way to stop it.

use super::engine;
use super::history::Edits;
use super::state::State;
use crate::model::WeatherChoice;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// A file under way; dropping it stops the reading.
pub struct Import {
    path: PathBuf,
    bytes: u64,
    read: Arc<AtomicU64>,
    stopped: Arc<AtomicBool>,
    coming: Receiver<Option<String>>,
}

impl Drop for Import {
    fn drop(&mut self) {
        self.stopped.store(true, Ordering::Relaxed);
    }
}

impl Import {
    /// Name of the file.
    #[must_use]
    pub fn name(&self) -> String {
        self.path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned())
    }

    /// How much of it has been read.
    #[must_use]
    pub fn percent(&self) -> u64 {
        (100 * self.read.load(Ordering::Relaxed)).checked_div(self.bytes).unwrap_or(0).min(100)
    }
}

impl State {
    /// Reads a weather file on a thread; the study takes it once it is known.
    pub(super) fn import_weather(&mut self, path: PathBuf, ctx: &egui::Context) {
        let (sender, coming) = channel();
        let (read, stopped) = (Arc::new(AtomicU64::new(0)), Arc::new(AtomicBool::new(false)));
        let bytes = std::fs::metadata(&path).map_or(0, |about| about.len());
        let (theirs, tell, stop, ctx) = (path.clone(), Arc::clone(&read), Arc::clone(&stopped), ctx.clone());
        let thread = move || {
            let go_on = |so_far| {
                tell.store(so_far, Ordering::Relaxed);
                ctx.request_repaint();
                !stop.load(Ordering::Relaxed)
            };
            // Nobody listens any more once it was stopped.
            let _ = sender.send(engine::weather_fingerprint(&theirs, &go_on));
            ctx.request_repaint();
        };
        match std::thread::Builder::new().name("weather file".to_owned()).spawn(thread) {
            Ok(_) => self.import = Some(Import { path, bytes, read, stopped, coming }),
            Err(error) => self.filing.error = Some(format!("No thread to read the weather file ({error})")),
        }
    }

    /// Takes in a weather file that has been read.
    pub fn poll_import(&mut self) {
        let Some(import) = &self.import else { return };
        let mark = match import.coming.try_recv() {
            Ok(mark) => mark,
            Err(TryRecvError::Disconnected) => None,
            Err(TryRecvError::Empty) => return,
        };
        let file = import.path.display().to_string();
        self.import = None;
        let Some(mark) = mark else { return };
        let before = self.document.draft.clone();
        let site = &mut self.document.draft.study.site;
        match &mut site.weather {
            WeatherChoice::Log(log) => log.file = file,
            other => *other = WeatherChoice::File(file),
        }
        site.weather_fingerprint = mark;
        let mut edits = Edits::default();
        edits.note("weather", egui::Id::unique("weather file"));
        self.document.settle(before, edits, false);
    }
}
