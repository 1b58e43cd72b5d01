//! The report to a file, made on a thread of its own.

use super::state::State;
use crate::model::{Catalogue, Study};
use crate::report::{WeatherUsed, of_runs};
use crate::season::run_scenario;
use crate::storage;
use crate::units::UnitSystem;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// A report or picture under way.
pub struct Export {
    /// What it is.
    pub(super) what: &'static str,
    /// Where it goes.
    pub(super) path: PathBuf,
    /// Tells how it went.
    pub(super) answer: Receiver<Result<(), String>>,
}

impl State {
    /// Starts to write the report of the study as it stands.
    pub fn export_report(&mut self, path: PathBuf, ctx: &egui::Context) {
        let same = |own: &Path| matches!((own.canonicalize(), path.canonicalize()), (Ok(a), Ok(b)) if a == b);
        if self.document.path.as_deref().is_some_and(same) {
            self.filing.error = Some("That is the study itself. Name another file for the report".to_owned());
            return;
        }
        let (sender, answer) = channel();
        let study = self.document.draft.study.clone();
        let (catalogue, folder, units) = (Arc::clone(&self.catalogue), self.folder(), self.prefs.units);
        let (target, waker) = (path.clone(), ctx.clone());
        let work = move || {
            // The window may be gone by then: the file is written all the same.
            let _ = sender.send(write(&study, &catalogue, folder.as_deref(), units, &target));
            waker.request_repaint();
        };
        match std::thread::Builder::new().name("report".to_owned()).spawn(work) {
            Ok(_) => self.export = Some(Export { what: "report", path, answer }),
            Err(error) => self.filing.error = Some(format!("No thread to write the report ({error})")),
        }
    }

    /// Takes in a report or picture that is finished.
    pub fn poll_export(&mut self, ctx: &egui::Context) {
        let Some(export) = &self.export else { return };
        let answer = match export.answer.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Empty) => return,
            Err(TryRecvError::Disconnected) => Err("the calculation stopped with a fault of the program".to_owned()),
        };
        let name = export.path.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
        let what = export.what;
        self.export = None;
        match answer {
            Ok(()) => self.say(ctx, format!("Wrote the {what} {name}"), false),
            Err(reason) => self.filing.error = Some(format!("The {what} was not written: {reason}")),
        }
    }
}

fn write(
    study: &Study,
    catalogue: &Catalogue,
    folder: Option<&Path>,
    units: UnitSystem,
    path: &Path,
) -> Result<(), String> {
    let weather = storage::load_weather(&study.site, folder.unwrap_or(Path::new(""))).map_err(|e| e.to_string())?;
    let run = |scenario| {
        run_scenario(study, scenario, &weather.climate, catalogue, &|| false).map_err(|error| error.to_string())
    };
    let runs = study.scenarios.iter().map(run).collect::<Result<Vec<_>, _>>()?;
    let used = WeatherUsed { climate: &weather.climate, credit: &weather.year.credit, notes: &weather.year.notes };
    let page = of_runs(study, catalogue, used, &runs, units, &|| false).map_err(|error| error.to_string())?;
    storage::write_whole(path, page.as_bytes()).map_err(|error| format!("{}: {error}", path.display()))
}
