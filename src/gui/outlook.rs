//! Asks what other winters would cost the scenarios on show; their figures come in while more are worked out.

use super::asked::{Asked, Progress, Standing};
use super::document::ScenarioId;
use super::state::State;
use super::worker::Inputs;
use crate::model::{Catalogue, ManyWinters, Scenario, Study};
use crate::season::pool::Workers;
use crate::season::winters::{FanDay, ScenarioWinters, WinterFigures, many_winters};
use crate::weather::Climate;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

/// Time between two looks at unfinished figures.
const BETWEEN_LOOKS: Duration = Duration::from_millis(150);
/// Why there is no answer after the grower stopped it.
const STOPPED: &str = "Stopped";

/// What decides the answer.
#[derive(Clone, PartialEq)]
struct Question {
    seasons: Vec<(ScenarioId, Arc<Inputs>)>,
    many: ManyWinters,
}

/// One scenario's other winters.
#[derive(Debug, Clone)]
pub struct Told {
    /// Which scenario.
    pub id: ScenarioId,
    /// Its figures.
    pub figures: WinterFigures,
    /// Money spent by the end of each day.
    pub fan: Vec<FanDay>,
}

/// What is known of all scenarios on show.
#[derive(Debug, Default)]
pub struct Winters {
    /// By scenario, in the order of the cards.
    pub told: Vec<Told>,
    /// Every winter; empty while they are being worked out.
    pub every: Vec<ScenarioWinters>,
}

type SoFar = Arc<Mutex<Option<Arc<Winters>>>>;

/// Where the window asks.
#[derive(Default)]
pub struct Outlook {
    asked: Asked<Question, Arc<Winters>>,
    question: Option<Question>,
    so_far: SoFar,
}

/// What there is to show.
pub struct View {
    /// Figures: all, those so far, or the last ones while there are none yet.
    pub winters: Option<Arc<Winters>>,
    /// How many winters are done while they are worked out.
    pub working: Option<usize>,
    /// Why there is no more.
    pub failed: Option<String>,
}

impl Outlook {
    /// Stops working; what is known stays on show.
    pub fn stop(&mut self) {
        self.asked.stop(STOPPED);
    }

    /// Asks again what was stopped.
    pub fn again(&mut self) {
        self.asked = Asked::default();
        self.question = None;
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.asked.working()
    }

    fn ask(
        &mut self,
        study: Study,
        question: Question,
        climate: Arc<Climate>,
        rows: Arc<Catalogue>,
        ctx: &egui::Context,
    ) {
        if self.question.as_ref() != Some(&question) {
            self.question = Some(question.clone());
            self.so_far = SoFar::default();
        }
        let (so_far, ids) = (Arc::clone(&self.so_far), question.seasons.iter().map(|(id, _)| *id).collect::<Vec<_>>());
        let work = move |progress: &Progress| work(&study, &ids, &climate, &rows, &so_far, progress);
        self.asked.ask("other winters", question, ctx, work);
    }

    fn view(&self) -> View {
        let so_far = self.so_far.lock().unwrap_or_else(PoisonError::into_inner).clone();
        let last = self.asked.last().map(|(_, winters)| Arc::clone(winters));
        match self.question.as_ref().map(|question| self.asked.standing(question)) {
            Some(Standing::Known(winters)) => View { winters: Some(Arc::clone(winters)), working: None, failed: None },
            Some(Standing::Working(done)) => View { winters: so_far.or(last), working: Some(done), failed: None },
            Some(Standing::Failed(why)) => View { winters: so_far, working: None, failed: Some(why.to_owned()) },
            None => View { winters: None, working: None, failed: None },
        }
    }
}

/// The work on its thread.
fn work(
    study: &Study,
    ids: &[ScenarioId],
    climate: &Climate,
    rows: &Catalogue,
    so_far: &SoFar,
    progress: &Progress,
) -> Result<Arc<Winters>, String> {
    let currency = &study.prices.currency;
    let tell = |winters: &[ScenarioWinters]| -> Vec<Told> {
        let told =
            |(id, w): (&ScenarioId, &ScenarioWinters)| Told { id: *id, figures: w.figures(currency), fan: w.fan() };
        ids.iter().zip(winters).map(told).collect()
    };
    let mut looked = Instant::now();
    let mut look = |winters: &[ScenarioWinters]| {
        progress.parts(winters.first().map_or(0, |w| w.winters.len()));
        if looked.elapsed() > BETWEEN_LOOKS {
            looked = Instant::now();
            let known = Winters { told: tell(winters), every: Vec::new() };
            *so_far.lock().unwrap_or_else(PoisonError::into_inner) = Some(Arc::new(known));
        }
    };
    let workers = Workers { cancelled: &|| progress.given_up(), ..Workers::all() };
    let every = many_winters(study, climate, rows, workers, &mut look);
    let every = every.map_err(|error| error.to_string())?;
    Ok(Arc::new(Winters { told: tell(&every), every }))
}

impl State {
    /// Asks for other winters of the scenarios on show, and gives what is known.
    pub fn other_winters(&mut self, ctx: &egui::Context) -> View {
        let draft = &self.document.draft;
        let mut seasons = Vec::new();
        let mut scenarios: Vec<Scenario> = Vec::new();
        let mut first = None;
        for (scenario, tag) in draft.study.scenarios.iter().zip(&draft.tags).filter(|(scenario, _)| scenario.shown) {
            let Some((season, _)) = self.board.season(tag.id).filter(|(season, _)| !season.is_empty()) else {
                continue;
            };
            scenarios.push(Scenario { name: scenario.name.clone(), ..season.inputs.scenario.clone() });
            seasons.push((tag.id, Arc::clone(&season.inputs)));
            first.get_or_insert_with(|| season.clone());
        }
        let Some(first) = first.filter(|_| !self.board.working()) else { return self.outlook.view() };
        let many = draft.study.many_winters.clone();
        let study = Study { scenarios, many_winters: many.clone(), ..first.inputs.study.clone() };
        let question = Question { seasons, many };
        self.outlook.ask(study, question, Arc::clone(&first.climate), Arc::clone(&self.catalogue), ctx);
        self.outlook.view()
    }
}
