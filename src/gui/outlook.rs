//! Asks what other winters would cost the scenarios on show; their figures come in while more are worked out.

use super::document::ScenarioId;
use super::state::State;
use super::streamed::{Grown, Streamed, Teller};
use super::worker::Inputs;
use crate::model::{Catalogue, ManyWinters, Scenario, Study};
use crate::season::pool::Workers;
use crate::season::winters::{FanDay, ScenarioWinters, WinterFigures, many_winters};
use crate::weather::Climate;
use std::sync::Arc;

/// What decides the answer.
#[derive(Clone, PartialEq)]
pub struct Question {
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

/// Where the window asks.
pub type Outlook = Streamed<Question, Winters>;

/// What there is to show.
pub type View = Grown<Winters>;

/// The work on its thread.
fn work(
    study: &Study,
    ids: &[ScenarioId],
    climate: &Climate,
    rows: &Catalogue,
    teller: &Teller<Winters>,
) -> Result<Winters, String> {
    let currency = &study.prices.currency;
    let tell = |winters: &[ScenarioWinters]| -> Vec<Told> {
        let told =
            |(id, w): (&ScenarioId, &ScenarioWinters)| Told { id: *id, figures: w.figures(currency), fan: w.fan() };
        ids.iter().zip(winters).map(told).collect()
    };
    let mut look = |winters: &[ScenarioWinters]| teller.tell(|| Winters { told: tell(winters), every: Vec::new() });
    let (progress, cancelled) = (|done| teller.parts(done), || teller.given_up());
    let workers = Workers { progress: &progress, cancelled: &cancelled, ..Workers::all() };
    let every = many_winters(study, climate, rows, workers, &mut look).map_err(|error| error.to_string())?;
    Ok(Winters { told: tell(&every), every })
}

impl State {
    /// Asks for other winters of the scenarios on show, and gives what is known.
    pub fn other_winters(&mut self, ctx: &egui::Context) -> View {
        let many = self.document.draft.study.many_winters.clone();
        if let Some(shown) = self.shown_seasons().filter(|_| !self.board.working()) {
            let study = Study { many_winters: many.clone(), ..shown.study };
            let ids: Vec<ScenarioId> = shown.seasons.iter().map(|(id, _)| *id).collect();
            let question = Question { seasons: shown.seasons, many };
            let (climate, rows) = (shown.climate, Arc::clone(&self.catalogue));
            self.outlook.ask("other winters", question, ctx, move |teller| work(&study, &ids, &climate, &rows, teller));
        }
        self.outlook.grown()
    }

    /// What is known of other winters of every scenario as it stands, in the order of the study.
    #[must_use]
    pub fn known_winters(&self) -> Vec<Option<WinterFigures>> {
        let many = self.document.draft.study.many_winters.clone();
        let question = self.shown_seasons().map(|shown| Question { seasons: shown.seasons, many });
        let known = question.filter(|_| !self.board.working()).and_then(|question| self.outlook.known(&question));
        let of = |id: ScenarioId| known?.told.iter().find(|told| told.id == id).map(|told| told.figures.clone());
        self.document.draft.tags.iter().map(|tag| of(tag.id)).collect()
    }

    /// The scenarios on show that have a season, as a study of their own; none if there is none.
    #[must_use]
    pub fn shown_seasons(&self) -> Option<ShownSeasons> {
        let draft = &self.document.draft;
        let (mut seasons, mut scenarios, mut first) = (Vec::new(), Vec::new(), None);
        for (scenario, tag) in draft.study.scenarios.iter().zip(&draft.tags).filter(|(scenario, _)| scenario.shown) {
            let Some((season, _)) = self.board.season(tag.id).filter(|(season, _)| !season.is_empty()) else {
                continue;
            };
            scenarios.push(Scenario { name: scenario.name.clone(), ..season.inputs.scenario.clone() });
            seasons.push((tag.id, Arc::clone(&season.inputs)));
            first.get_or_insert(season);
        }
        let first = first?;
        let study = Study { scenarios, ..first.inputs.study.clone() };
        Some(ShownSeasons { seasons, study, climate: Arc::clone(&first.climate) })
    }
}

/// The scenarios on show, ready to be run otherwise.
pub struct ShownSeasons {
    /// By scenario, in the order of the cards, what each was computed from.
    pub seasons: Vec<(ScenarioId, Arc<Inputs>)>,
    /// The study with these scenarios alone, in the same order.
    pub study: Study,
    /// Its weather.
    pub climate: Arc<Climate>,
}
