//! The results on show: one per scenario, kept while a newer one is being worked out.

use super::document::{Draft, ScenarioId};
use super::worker::{Inputs, Job, Report, Worker};
use crate::model::Catalogue;
use crate::season::{HourStamp, ScenarioRun};
use crate::weather::Climate;
use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::Arc;

/// Runs kept beyond those on show, so that undo shows its figures at once.
const KEPT: usize = 24;

/// A season with the weather it ran on.
#[derive(Clone)]
pub struct Season {
    /// What it was computed from.
    pub inputs: Arc<Inputs>,
    /// The season.
    pub run: Arc<ScenarioRun>,
    /// Its weather.
    pub climate: Arc<Climate>,
}

impl Season {
    /// Date and hour of an hour of the season.
    #[must_use]
    pub fn stamp(&self, hour: usize) -> Option<HourStamp> {
        let record = *self.run.hours.record.get(hour)?;
        let h = self.climate.hours.get(record)?;
        Some(HourStamp { month: h.month, day: h.day, hour: h.hour })
    }

    /// Hours of the season.
    #[must_use]
    pub fn len(&self) -> usize {
        self.run.hours.record.len()
    }

    /// Whether the season has no hour.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }
}

/// Where a scenario's result stands.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Standing {
    /// It belongs to the inputs on screen.
    Fresh,
    /// It belongs to earlier inputs; the new one is on its way.
    Stale,
}

/// Results by scenario.
#[derive(Default)]
pub struct Board {
    wanted: BTreeMap<ScenarioId, Arc<Inputs>>,
    seasons: BTreeMap<ScenarioId, Season>,
    failures: BTreeMap<ScenarioId, (Arc<Inputs>, String)>,
    kept: Vec<Season>,
    asked: u64,
    done: u64,
}

impl Board {
    /// An empty board for another study; its requests go on counting, so that late answers are dropped.
    #[must_use]
    pub fn after(old: &Self) -> Self {
        Self { kept: old.kept.clone(), asked: old.asked, done: old.done, ..Self::default() }
    }

    /// Says what is on screen now; asks the thread for what is missing. Scenarios in `blocked` have problems and wait.
    pub fn want(
        &mut self,
        draft: &Draft,
        folder: Option<PathBuf>,
        blocked: &[bool],
        catalogue: &Arc<Catalogue>,
        worker: &Worker,
    ) {
        let mut order: Vec<usize> = (0..draft.study.scenarios.len()).collect();
        order.sort_by_key(|i| *i != draft.selected());
        self.wanted.clear();
        let mut runs = Vec::new();
        for index in order {
            let (Some(scenario), Some(tag)) = (draft.study.scenarios.get(index), draft.tags.get(index)) else {
                continue;
            };
            let inputs = Arc::new(Inputs::new(&draft.study, scenario, folder.clone()));
            self.wanted.insert(tag.id, Arc::clone(&inputs));
            if blocked.get(index).copied().unwrap_or(false) || self.settled(tag.id, &inputs) {
                continue;
            }
            runs.push((tag.id, inputs));
        }
        let live = |id: &ScenarioId| draft.tags.iter().any(|tag| tag.id == *id);
        self.seasons.retain(|id, _| live(id));
        self.failures.retain(|id, _| live(id));
        if !runs.is_empty() {
            self.asked += 1;
            worker.ask(Job { revision: self.asked, runs, catalogue: Arc::clone(catalogue) });
        }
    }

    /// Whether these inputs need no run: shown, kept or known to fail.
    fn settled(&mut self, id: ScenarioId, inputs: &Arc<Inputs>) -> bool {
        if self.seasons.get(&id).is_some_and(|s| s.inputs == *inputs) {
            self.failures.remove(&id);
            return true;
        }
        if let Some(season) = self.kept.iter().find(|s| s.inputs == *inputs).cloned() {
            self.show(id, season);
            return true;
        }
        self.failures.get(&id).is_some_and(|(failed, _)| failed == inputs)
    }

    fn show(&mut self, id: ScenarioId, season: Season) {
        self.failures.remove(&id);
        if let Some(old) = self.seasons.insert(id, season) {
            self.kept.retain(|s| s.inputs != old.inputs);
            self.kept.push(old);
            if self.kept.len() > KEPT {
                self.kept.remove(0);
            }
        }
    }

    /// Takes in what the thread has sent. A result of earlier inputs is shown only while nothing newer is.
    pub fn take_in(&mut self, worker: &Worker) {
        while let Some(report) = worker.report() {
            match report {
                Report::Ran { id, inputs, climate, run } => {
                    if self.wanted.get(&id) == Some(&inputs) || !self.seasons.contains_key(&id) {
                        self.show(id, Season { inputs, climate, run: Arc::new(*run) });
                    }
                }
                Report::Failed { id, inputs, reason } => {
                    if self.wanted.get(&id) == Some(&inputs) {
                        self.failures.insert(id, (inputs, reason));
                    }
                }
                Report::Done { revision } => self.done = self.done.max(revision),
            }
        }
    }

    /// The season on show for a scenario, and whether it is of today.
    #[must_use]
    pub fn season(&self, id: ScenarioId) -> Option<(&Season, Standing)> {
        let season = self.seasons.get(&id)?;
        let fresh = self.wanted.get(&id).is_some_and(|wanted| *wanted == season.inputs);
        Some((season, if fresh { Standing::Fresh } else { Standing::Stale }))
    }

    /// Why a scenario could not be run.
    #[must_use]
    pub fn failure(&self, id: ScenarioId) -> Option<&str> {
        self.failures.get(&id).map(|(_, reason)| reason.as_str())
    }

    /// Whether runs are under way.
    #[must_use]
    pub fn working(&self) -> bool {
        self.done < self.asked
    }
}
