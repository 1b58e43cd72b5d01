//! Asks what the scenarios on show come to when an input, or two, are moved; points come in one after another.

use super::document::ScenarioId;
use super::state::State;
use super::streamed::{Grown, Streamed, Teller};
use super::worker::Inputs;
use crate::explore::{Axis, Sweep, SweepPoint, find, sweep_when_ready};
use crate::model::{Catalogue, Study, SweptInput};
use crate::season::pool::Workers;
use crate::weather::Climate;
use std::sync::Arc;

/// What decides the answer.
#[derive(Clone, PartialEq)]
pub struct Question {
    seasons: Vec<(ScenarioId, Arc<Inputs>)>,
    axes: Vec<SweptInput>,
}

/// What is known.
pub struct SweptSeasons {
    /// The scenarios, in the order of their points.
    pub ids: Vec<ScenarioId>,
    /// The study with these scenarios alone.
    pub study: Arc<Study>,
    /// What is moved.
    pub axes: Arc<Vec<Axis>>,
    /// The points so far; each scenario by its place in `ids`.
    pub sweep: Sweep,
}

impl SweptSeasons {
    /// How many points there will be.
    #[must_use]
    pub fn whole(&self) -> usize {
        self.ids.len() * self.axes.iter().map(|axis| axis.values.len()).product::<usize>()
    }
}

/// Where the window asks.
pub type Sweeps = Streamed<Question, SweptSeasons>;

impl State {
    /// Asks for the sweep of the study: one input of all scenarios on show, or two of the chosen one.
    ///
    /// # Errors
    /// What cannot be swept, and what to do.
    pub fn swept(&mut self, ctx: &egui::Context) -> Result<Option<(Grown<SweptSeasons>, usize)>, String> {
        let swept = self.document.draft.study.swept.clone();
        let asked: Vec<SweptInput> = [swept.first, swept.second].into_iter().filter(|s| !s.input.is_empty()).collect();
        let Some(mut shown) = self.shown_seasons() else { return Ok(None) };
        let map = asked.len() > 1;
        if let (true, Some((season, _)), Some(name)) = (map, self.chosen_season(), self.document.draft.scenario()) {
            let chosen = self.document.draft.tags.get(self.document.draft.selected()).map_or(0, |tag| tag.id);
            shown.seasons = vec![(chosen, Arc::clone(&season.inputs))];
            shown.climate = Arc::clone(&season.climate);
            let scenario = crate::model::Scenario { name: name.name.clone(), ..season.inputs.scenario.clone() };
            shown.study = Study { scenarios: vec![scenario], ..season.inputs.study.clone() };
        }
        let axes = asked.iter().map(|asked| axis(&shown.study, asked)).collect::<Result<Vec<Axis>, String>>()?;
        if axes.is_empty() {
            return Err("Choose an input to sweep".to_owned());
        }
        if map && axes[0].input.path == axes[1].input.path {
            return Err("Both inputs are the same: choose another one, or none, for the second".to_owned());
        }
        let count = axes.iter().map(|axis| axis.values.len()).product::<usize>() * shown.seasons.len();
        if !self.board.working() {
            let question = Question { seasons: shown.seasons.clone(), axes: asked };
            let known = SweptSeasons {
                ids: shown.seasons.iter().map(|(id, _)| *id).collect(),
                study: Arc::new(shown.study),
                axes: Arc::new(axes),
                sweep: Sweep { points: Vec::new() },
            };
            let (climate, rows) = (shown.climate, Arc::clone(&self.catalogue));
            self.sweeps.ask("sweep", question, ctx, move |teller| work(known, &climate, &rows, teller));
        }
        Ok(Some((self.sweeps.grown(), count)))
    }
}

/// The axis of what the study asks for.
fn axis(study: &Study, asked: &SweptInput) -> Result<Axis, String> {
    let input = find(study, &asked.input).map_err(|error| format!("{error}: choose another input"))?;
    let label = input.label.clone();
    Axis::new(input, asked.from, asked.to, asked.points as usize).map_err(|error| format!("{label}: {error}"))
}

/// The work on its thread.
fn work(
    known: SweptSeasons,
    climate: &Climate,
    rows: &Catalogue,
    teller: &Teller<SweptSeasons>,
) -> Result<SweptSeasons, String> {
    let (progress, cancelled) = (|done| teller.parts(done), || teller.given_up());
    let workers = Workers { progress: &progress, cancelled: &cancelled, ..Workers::all() };
    let scenarios: Vec<usize> = (0..known.ids.len()).collect();
    let mut points: Vec<Option<SweepPoint>> = vec![None; known.whole()];
    let so_far = |points: &[Option<SweepPoint>]| SweptSeasons {
        ids: known.ids.clone(),
        study: Arc::clone(&known.study),
        axes: Arc::clone(&known.axes),
        sweep: Sweep { points: points.iter().flatten().cloned().collect() },
    };
    let mut ready = |place: usize, point: SweepPoint| {
        points[place] = Some(point);
        teller.tell(|| so_far(&points));
    };
    sweep_when_ready(&known.study, &scenarios, &known.axes, climate, rows, workers, &mut ready)
        .map_err(|error| error.to_string())?;
    Ok(so_far(&points))
}
