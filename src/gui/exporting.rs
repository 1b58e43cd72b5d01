//! Report, pictures and figures to a file or the clipboard, made beside the window.

use super::figures_table::FiguresTable;
use super::handout::Make;
use super::state::State;
use crate::figures::Figures;
use crate::model::{Catalogue, Study};
use crate::report::{Explored, WeatherUsed, of_runs};
use crate::season::run_scenario;
use crate::storage;
use crate::units::UnitSystem;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// Something that is being written or copied.
pub struct Export {
    what: &'static str,
    /// Name of the file; none for the clipboard.
    file: Option<String>,
    answer: Receiver<Result<Done, String>>,
}

/// How it ended.
pub enum Done {
    /// The file is there.
    Written,
    /// This picture belongs on the clipboard.
    Picture(egui::ColorImage),
    /// This text belongs on the clipboard.
    Text(String),
    /// This table is to be shown under its name.
    Table(String, Figures),
}

impl Done {
    /// Writes a file, whole or not at all.
    ///
    /// # Errors
    /// The path with what the system says.
    pub fn write(path: &Path, bytes: &[u8]) -> Result<Self, String> {
        storage::write_whole(path, bytes).map_err(|error| format!("{}: {error}", path.display()))?;
        Ok(Self::Written)
    }
}

impl State {
    /// Starts to write the report of the study as it stands, with what the views know of it beyond the seasons.
    pub fn export_report(&mut self, path: PathBuf, ctx: &egui::Context) {
        let study = self.document.draft.study.clone();
        let (catalogue, folder, units) = (Arc::clone(&self.catalogue), self.folder(), self.prefs.units);
        let marks: Vec<usize> = self.document.draft.tags.iter().map(|tag| tag.mark).collect();
        let (winters, matters, measures) = (self.known_winters(), self.known_matters(), self.known_purchases());
        let explored = Explored { winters, matters, measures };
        let make = move || report(&study, &catalogue, folder.as_deref(), explored, (units, &marks));
        self.make_beside("report", Some(path), ctx, make);
    }

    /// Makes a text on a thread of its own: to a file, else to the clipboard.
    pub fn make_beside(
        &mut self,
        what: &'static str,
        path: Option<PathBuf>,
        ctx: &egui::Context,
        make: impl FnOnce() -> Result<String, String> + Send + 'static,
    ) {
        let file = path.clone();
        self.work_beside(what, path.as_deref(), ctx, move || {
            make().and_then(|text| match &file {
                Some(file) => Done::write(file, text.as_bytes()),
                None => Ok(Done::Text(text)),
            })
        });
    }

    /// Makes a table on a thread of its own, and shows it then.
    pub fn show_figures(&mut self, name: &str, make: Make, ctx: &egui::Context) {
        let name = name.to_owned();
        self.work_beside("table", None, ctx, move || Ok(Done::Table(name, make())));
    }

    fn work_beside(
        &mut self,
        what: &'static str,
        path: Option<&Path>,
        ctx: &egui::Context,
        work: impl FnOnce() -> Result<Done, String> + Send + 'static,
    ) {
        let (sender, answer) = channel();
        if !self.begin_export(what, path, answer) {
            return;
        }
        let waker = ctx.clone();
        let work = move || {
            // The window may be gone by then: a file is written all the same.
            let _ = sender.send(work());
            waker.request_repaint();
        };
        if let Err(error) = std::thread::Builder::new().name(what.to_owned()).spawn(work) {
            self.export = None;
            self.filing.error = Some(format!("No thread to write the {what} ({error})"));
        }
    }

    /// Waits for an answer from now on; the study itself is never overwritten by what was made from it.
    pub(super) fn begin_export(
        &mut self,
        what: &'static str,
        path: Option<&Path>,
        answer: Receiver<Result<Done, String>>,
    ) -> bool {
        let study = self.document.path.as_deref();
        let same = study
            .zip(path)
            .is_some_and(|(own, path)| matches!((own.canonicalize(), path.canonicalize()), (Ok(a), Ok(b)) if a == b));
        if same {
            self.filing.error = Some(format!("That is the study itself. Name another file for the {what}"));
            return false;
        }
        let file = path.map(|path| path.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default());
        self.export = Some(Export { what, file, answer });
        true
    }

    /// Takes in what is finished.
    pub fn poll_export(&mut self, ctx: &egui::Context) {
        let Some(export) = &self.export else { return };
        let answer = match export.answer.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Empty) => return,
            Err(TryRecvError::Disconnected) => Err("the calculation stopped with a fault of the program".to_owned()),
        };
        let (what, file) = (export.what, export.file.clone().unwrap_or_default());
        self.export = None;
        match answer {
            Ok(Done::Written) => return self.say(ctx, format!("Wrote the {what} {file}"), false),
            Ok(Done::Picture(picture)) => ctx.copy_image(picture),
            Ok(Done::Text(text)) => ctx.copy_text(text),
            Ok(Done::Table(name, figures)) => {
                self.table = Some(FiguresTable::new(name, figures));
                return;
            }
            Err(reason) => {
                self.filing.error = Some(format!("The {what} was not written: {reason}"));
                return;
            }
        }
        self.say(ctx, format!("Copied the {what}"), false);
    }
}

fn report(
    study: &Study,
    catalogue: &Catalogue,
    folder: Option<&Path>,
    explored: Explored,
    look: (UnitSystem, &[usize]),
) -> Result<String, String> {
    let weather = storage::load_weather(&study.site, folder.unwrap_or(Path::new(""))).map_err(|e| e.to_string())?;
    let run = |scenario| {
        run_scenario(study, scenario, &weather.climate, catalogue, &|| false).map_err(|error| error.to_string())
    };
    let runs = study.scenarios.iter().map(run).collect::<Result<Vec<_>, _>>()?;
    let used = WeatherUsed { climate: &weather.climate, credit: &weather.year.credit, notes: &weather.year.notes };
    of_runs(study, catalogue, used, &runs, explored, look, &|| false).map_err(|error| error.to_string())
}
