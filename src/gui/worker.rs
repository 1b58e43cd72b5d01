//! The background thread that runs seasons: the latest request wins, an older one is cancelled.

use super::document::ScenarioId;
use crate::model::{Catalogue, HardNight, Mains, ManyWinters, Scenario, Site, Study, Swept};
use crate::season::ScenarioRun;
use crate::weather::Climate;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Condvar, Mutex, PoisonError};

/// Everything that decides a scenario's result; equal inputs give the same run.
#[derive(Debug, Clone, PartialEq)]
pub struct Inputs {
    /// The study without its scenarios and texts.
    pub study: Study,
    /// The scenario without its name, notes and switch.
    pub scenario: Scenario,
    /// Folder of the study, for weather files with a relative path.
    pub folder: Option<PathBuf>,
}

impl Inputs {
    /// The inputs of a scenario of a study.
    #[must_use]
    pub fn new(study: &Study, scenario: &Scenario, folder: Option<PathBuf>) -> Self {
        let bare = Study {
            title: String::new(),
            notes: String::new(),
            reference: 0,
            scenarios: Vec::new(),
            site: study.site.clone(),
            season: study.season.clone(),
            // What is asked about hard nights and other winters moves no season.
            hard_night: HardNight::default(),
            many_winters: ManyWinters::default(),
            prices: study.prices.clone(),
            own: study.own.clone(),
            // What may be bought is tried on its own.
            candidates: Vec::new(),
            swept: Swept::default(),
            format: study.format,
        };
        let scenario = Scenario { name: String::new(), notes: String::new(), shown: true, ..scenario.clone() };
        Self { study: bare, scenario, folder }
    }
}

/// What the thread is asked for.
pub struct Job {
    /// Which request this is.
    pub revision: u64,
    /// Scenarios to run, in order.
    pub runs: Vec<(ScenarioId, Arc<Inputs>)>,
    /// Rows to draw from.
    pub catalogue: Arc<Catalogue>,
}

/// What the thread answers.
pub enum Report {
    /// A scenario's season.
    Ran {
        /// Whose.
        id: ScenarioId,
        /// With what.
        inputs: Arc<Inputs>,
        /// On which weather.
        climate: Arc<Climate>,
        /// The season.
        run: Box<ScenarioRun>,
    },
    /// A scenario that could not be run, and why.
    Failed {
        /// Whose.
        id: ScenarioId,
        /// With what.
        inputs: Arc<Inputs>,
        /// Why, with the remedy.
        reason: String,
    },
    /// A request was worked off.
    Done {
        /// Which.
        revision: u64,
    },
}

#[derive(Default)]
struct Desk {
    job: Mutex<Option<Job>>,
    bell: Condvar,
    latest: AtomicU64,
}

/// Handle of the background thread.
pub struct Worker {
    desk: Arc<Desk>,
    reports: Receiver<Report>,
}

impl Worker {
    /// Starts the thread; it wakes the window with every report.
    ///
    /// # Errors
    /// When the system gives no thread.
    pub fn start(ctx: &egui::Context) -> std::io::Result<Self> {
        let desk = Arc::new(Desk::default());
        let (sender, reports) = channel();
        let (theirs, ctx) = (Arc::clone(&desk), ctx.clone());
        std::thread::Builder::new().name("season runs".to_owned()).spawn(move || {
            let out = Outbox { sender, ctx };
            let mut weather = WeatherShelf::default();
            while let Some(job) = wait_for_job(&theirs) {
                if !work_off(&job, &theirs.latest, &mut weather, &out) {
                    return;
                }
            }
        })?;
        Ok(Self { desk, reports })
    }

    /// Asks for runs; whatever was asked before is given up.
    pub fn ask(&self, job: Job) {
        self.desk.latest.store(job.revision, Ordering::Relaxed);
        *self.desk.job.lock().unwrap_or_else(PoisonError::into_inner) = Some(job);
        self.desk.bell.notify_one();
    }

    /// The next report that has come in.
    #[must_use]
    pub fn report(&self) -> Option<Report> {
        self.reports.try_recv().ok()
    }
}

impl Drop for Worker {
    fn drop(&mut self) {
        self.desk.latest.store(u64::MAX, Ordering::Relaxed);
        self.desk.bell.notify_one();
    }
}

struct Outbox {
    sender: Sender<Report>,
    ctx: egui::Context,
}

impl Outbox {
    /// False once the window is gone.
    fn send(&self, report: Report) -> bool {
        let sent = self.sender.send(report).is_ok();
        self.ctx.request_repaint();
        sent
    }
}

/// Waits for the next request; none when the window is gone.
fn wait_for_job(desk: &Desk) -> Option<Job> {
    let mut job = desk.job.lock().unwrap_or_else(PoisonError::into_inner);
    loop {
        if desk.latest.load(Ordering::Relaxed) == u64::MAX {
            return None;
        }
        if let Some(job) = job.take() {
            return Some(job);
        }
        job = desk.bell.wait(job).unwrap_or_else(PoisonError::into_inner);
    }
}

/// Runs every scenario of a request; false once the window is gone.
fn work_off(job: &Job, latest: &AtomicU64, weather: &mut WeatherShelf, out: &Outbox) -> bool {
    let cancelled = || latest.load(Ordering::Relaxed) != job.revision;
    for (id, inputs) in &job.runs {
        if cancelled() {
            return true;
        }
        let outcome = catch_unwind(AssertUnwindSafe(|| run(inputs, &job.catalogue, weather, &cancelled)))
            .unwrap_or_else(|_| {
                Err("The calculation stopped with a fault of the program. Undo the last change".to_owned())
            });
        if cancelled() {
            return true;
        }
        let (id, inputs) = (*id, Arc::clone(inputs));
        let sent = out.send(match outcome {
            Ok((climate, run)) => Report::Ran { id, inputs, climate, run: Box::new(run) },
            Err(reason) => Report::Failed { id, inputs, reason },
        });
        if !sent {
            return false;
        }
    }
    out.send(Report::Done { revision: job.revision })
}

fn run(
    inputs: &Inputs,
    catalogue: &Catalogue,
    weather: &mut WeatherShelf,
    cancelled: &dyn Fn() -> bool,
) -> Result<(Arc<Climate>, ScenarioRun), String> {
    let climate = weather.climate(inputs)?;
    let run = super::engine::run(&inputs.study, &inputs.scenario, &climate, catalogue, cancelled)?;
    Ok((climate, run))
}

/// The weather read last.
#[derive(Default)]
struct WeatherShelf {
    held: Option<(Site, Option<PathBuf>, Arc<Climate>)>,
}

impl WeatherShelf {
    fn climate(&mut self, inputs: &Inputs) -> Result<Arc<Climate>, String> {
        let choice = &Site { mains: Mains::default(), ..inputs.study.site.clone() };
        if let Some((held, folder, climate)) = &self.held
            && held == choice
            && *folder == inputs.folder
        {
            return Ok(Arc::clone(climate));
        }
        let climate = Arc::new(super::engine::climate(&inputs.study.site, inputs.folder.as_deref())?);
        self.held = Some((choice.clone(), inputs.folder.clone(), Arc::clone(&climate)));
        Ok(climate)
    }
}
