//! New, open and save: system file windows on a thread, the in-app path dialog, and the question about unsaved changes.

use super::handout::Handout;
use super::saving::Saving;
use super::state::State;
use crate::model::Study;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::{Duration, Instant};

/// What a path is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ask {
    /// A study to open.
    Open,
    /// A place to save to.
    Save,
    /// A weather file.
    Weather,
    /// A place for the report.
    Report,
    /// A place for a picture of the view.
    Picture,
    /// A place for the picture or the figures of a plot.
    Handout,
}

impl Ask {
    /// Whether a file is to be written.
    #[must_use]
    pub fn writes(self) -> bool {
        !matches!(self, Self::Open | Self::Weather)
    }
}

/// What was wanted when the question about unsaved changes came up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Next {
    /// An empty study.
    New,
    /// The demo.
    Demo,
    /// A file to be chosen.
    Choose,
    /// This file.
    Open(PathBuf),
    /// Leave.
    Quit,
}

/// The in-app path dialog.
#[derive(Debug, Clone)]
pub struct PathDialog {
    /// What for.
    pub ask: Ask,
    /// What is typed.
    pub text: String,
    /// Why the last try failed, or that the file exists.
    pub notice: String,
    /// Whether an existing file may be replaced.
    pub replace: bool,
}

/// A window that is gone sooner was never there; a busy machine takes a while to say so.
const AT_ONCE: Duration = Duration::from_millis(400);

struct Pending {
    ask: Ask,
    /// What was chosen, and how long that took.
    answer: Receiver<(Option<PathBuf>, Duration)>,
}

/// State of opening and saving.
#[derive(Default)]
pub struct Filing {
    /// The in-app path dialog, while open.
    pub dialog: Option<PathDialog>,
    /// What waits for the question about unsaved changes.
    pub question: Option<Next>,
    /// The study's file, when it was changed by another hand and would be overwritten.
    pub conflict: Option<PathBuf>,
    /// An error to show.
    pub error: Option<String>,
    /// Only use the in-app path dialog.
    pub in_app_only: bool,
    /// What is being written.
    pub(super) saving: Option<Saving>,
    /// What follows once it is written.
    pub(super) after_save: Option<Next>,
    pending: Option<Pending>,
}

impl Filing {
    /// Whether a system file window is open.
    #[must_use]
    pub fn waiting(&self) -> bool {
        self.pending.is_some()
    }

    /// Whether a study is being written.
    #[must_use]
    pub fn saving(&self) -> bool {
        self.saving.is_some()
    }

    /// Forgets the system file window.
    pub fn forget_pending(&mut self) {
        self.pending = None;
    }

    /// Opens the in-app path dialog.
    pub fn open_dialog(&mut self, ask: Ask, text: String, notice: &str) {
        self.dialog = Some(PathDialog { ask, text, notice: notice.to_owned(), replace: false });
    }
}

impl State {
    /// Begins something that leaves the study: asks first when it has unsaved changes.
    pub fn begin(&mut self, next: Next, ctx: &egui::Context) {
        if self.document.changed_since_save() {
            self.filing.question = Some(next);
        } else {
            self.go_on(next, ctx);
        }
    }

    /// Does what was wanted, unsaved changes or not.
    pub fn go_on(&mut self, next: Next, ctx: &egui::Context) {
        match next {
            Next::New => self.open(Study::default(), None),
            Next::Demo => self.open(super::engine::demo(), None),
            Next::Choose => self.ask_path(Ask::Open, ctx),
            Next::Open(path) => self.open_file(&path, ctx),
            Next::Quit => {
                self.may_close = true;
                ctx.send_viewport_cmd(egui::ViewportCommand::Close);
            }
        }
    }

    /// Asks for a path: by the system's file window where there is one.
    pub fn ask_path(&mut self, ask: Ask, ctx: &egui::Context) {
        if self.filing.waiting() {
            return;
        }
        if self.filing.in_app_only {
            let text = self.suggested_path(ask);
            self.filing.open_dialog(ask, text, "");
            return;
        }
        let (sender, answer) = channel();
        let suggestion = PathBuf::from(self.suggested_path(ask));
        let ctx = ctx.clone();
        let spawned = std::thread::Builder::new().name("file window".to_owned()).spawn(move || {
            let since = Instant::now();
            let chosen = system_dialog(ask, &suggestion);
            let _ = sender.send((chosen, since.elapsed()));
            ctx.request_repaint();
        });
        match spawned {
            Ok(_) => self.filing.pending = Some(Pending { ask, answer }),
            Err(_) => self.filing.open_dialog(ask, self.suggested_path(ask), ""),
        }
    }

    /// Looks whether the system's file window has answered.
    pub fn poll_filing(&mut self, ctx: &egui::Context) {
        let Some(pending) = &self.filing.pending else { return };
        let ask = pending.ask;
        let (answer, took) = match pending.answer.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Disconnected) => (None, Duration::ZERO),
            Err(TryRecvError::Empty) => return,
        };
        self.filing.pending = None;
        match answer {
            Some(path) => self.take_answer(ask, path, ctx),
            // No one presses Cancel this fast: there is no file window on this system.
            None if took < AT_ONCE => {
                let text = self.suggested_path(ask);
                self.filing.open_dialog(ask, text, "");
            }
            None => self.filing.after_save = None,
        }
    }

    /// A path with the ending of what is written there, where none was typed.
    #[must_use]
    pub fn with_ending(&self, ask: Ask, path: PathBuf) -> PathBuf {
        match ask {
            Ask::Open | Ask::Weather => path,
            Ask::Save => with_extension(path, "ron"),
            Ask::Picture => with_extension(path, "png"),
            Ask::Report => with_extension(path, "html"),
            Ask::Handout => with_extension(path, self.handout.as_ref().map_or("csv", Handout::ending)),
        }
    }

    /// Goes on with a path from the system's file window. That one asked about the name as it was typed.
    fn take_answer(&mut self, ask: Ask, typed: PathBuf, ctx: &egui::Context) {
        let path = self.with_ending(ask, typed.clone());
        if path != typed && path.exists() {
            self.filing.open_dialog(ask, path.display().to_string(), "A file of that name is there already");
        } else {
            self.take_path(ask, path, ctx);
        }
    }

    /// Goes on with a path that was chosen.
    pub fn take_path(&mut self, ask: Ask, path: PathBuf, ctx: &egui::Context) {
        match ask {
            Ask::Open => self.open_file(&path, ctx),
            Ask::Save => self.save_to(&path, ctx),
            Ask::Picture => self.save_picture(path, ctx),
            Ask::Report => self.export_report(path, ctx),
            Ask::Handout => self.write_handout(path, ctx),
            Ask::Weather => self.import_weather(path, ctx),
        }
    }

    /// Opens a study file; on error the open study stays.
    pub fn open_file(&mut self, path: &Path, ctx: &egui::Context) {
        match super::engine::load(path) {
            Ok(study) => {
                self.prefs.remember(path);
                self.open(study, Some(path.to_owned()));
                self.say(ctx, format!("Opened {}", self.document.name()), false);
                self.claim_file(ctx);
            }
            Err(reason) => self.filing.error = Some(reason),
        }
    }

    fn suggested_path(&self, ask: Ask) -> String {
        let folder =
            self.folder().or_else(|| self.prefs.folder()).or_else(|| std::env::current_dir().ok()).unwrap_or_default();
        match ask {
            Ask::Save => {
                let name = self.document.path.as_deref().and_then(Path::file_name).map(PathBuf::from);
                let name = name.unwrap_or_else(|| PathBuf::from(format!("{}.ron", file_stem(&self.document.name()))));
                folder.join(name).display().to_string()
            }
            Ask::Report | Ask::Picture | Ask::Handout => {
                let stem =
                    self.document.path.as_deref().and_then(Path::file_stem).map(|s| s.to_string_lossy().into_owned());
                let stem = stem.unwrap_or_else(|| file_stem(&self.document.name()));
                let name = match (&self.handout, ask) {
                    (Some(handout), Ask::Handout) => {
                        format!("{stem}-{}.{}", file_stem(&handout.name), handout.ending())
                    }
                    (_, Ask::Report) => format!("{stem}.html"),
                    _ => format!("{stem}.png"),
                };
                folder.join(name).display().to_string()
            }
            Ask::Open | Ask::Weather => format!("{}{}", folder.display(), std::path::MAIN_SEPARATOR),
        }
    }
}

/// A file name made from a title.
fn file_stem(title: &str) -> String {
    let plain = |c: char| if c.is_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let stem: String = title.chars().map(plain).collect();
    let words: Vec<_> = stem.split('-').filter(|w| !w.is_empty()).collect();
    if words.is_empty() { "study".to_owned() } else { words.join("-") }
}

fn with_extension(path: PathBuf, ending: &str) -> PathBuf {
    if path.extension().is_some() { path } else { path.with_extension(ending) }
}

fn system_dialog(ask: Ask, suggestion: &Path) -> Option<PathBuf> {
    let folder = if ask.writes() { suggestion.parent() } else { Some(suggestion) };
    let mut dialog = rfd::FileDialog::new();
    if let Some(folder) = folder.filter(|f| f.is_dir()) {
        dialog = dialog.set_directory(folder);
    }
    match ask {
        Ask::Open => dialog.add_filter("Study", &["ron"]).pick_file(),
        Ask::Weather => {
            dialog.add_filter("Weather", &["epw", "csv", "txt", "tsv", "gz", "EPW", "CSV", "TXT"]).pick_file()
        }
        Ask::Save | Ask::Report | Ask::Picture | Ask::Handout => {
            let name = suggestion.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
            let ending = suggestion.extension().map(|e| e.to_string_lossy().into_owned()).unwrap_or_default();
            let kind = match ending.as_str() {
                "html" => "Report",
                "png" => "Picture",
                "csv" => "Table",
                _ => "Study",
            };
            dialog.add_filter(kind, &[ending]).set_file_name(name).save_file()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn titles_become_plain_file_names() {
        assert_eq!(file_stem("Allotment society: starts & citrus"), "allotment-society-starts-citrus");
        assert_eq!(file_stem("  "), "study");
        assert_eq!(with_extension(PathBuf::from("a/b"), "ron"), PathBuf::from("a/b.ron"));
    }
}
