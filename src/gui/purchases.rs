//! Asks what the chosen scenario comes to with every combination of the ticked measures. Prices, budget and winters run
//! nothing anew.

use super::state::State;
use super::streamed::{Grown, Streamed, Teller};
use super::worker::Inputs;
use crate::explore::{Combination, combinations_when_ready, sets};
use crate::model::{Candidate, Catalogue, Scenario, Study};
use crate::season::pool::Workers;
use crate::weather::Climate;
use std::sync::{Arc, Weak};

/// What decides the seasons.
#[derive(Clone, PartialEq)]
pub struct Question {
    inputs: Arc<Inputs>,
    measures: Vec<Candidate>,
}

/// The combinations so far, each with its measures by their place in the study.
pub type Combinations = Vec<Combination>;

/// Where the window asks.
#[derive(Default)]
pub struct Purchases {
    asked: Streamed<Question, Combinations>,
    priced: Option<Priced>,
}

/// Combinations at the prices on screen, with what they were made of.
struct Priced {
    of: Weak<Combinations>,
    at: Vec<[f64; 2]>,
    combinations: Arc<Combinations>,
}

impl Purchases {
    /// Stops working; what is known stays on show.
    pub fn stop(&mut self) {
        self.asked.stop();
    }

    /// Asks again what was stopped or failed.
    pub fn again(&mut self) {
        self.asked.again();
    }

    /// Lets go of what is under way and no view waits for.
    pub fn let_go(&mut self) {
        self.asked.let_go();
    }

    /// Takes in what has come.
    pub fn take_in(&mut self) {
        self.asked.take_in();
    }

    /// Whether a question is still open.
    #[must_use]
    pub fn working(&self) -> bool {
        self.asked.working()
    }

    /// Combinations at the prices and lives of the study.
    fn priced(&mut self, known: &Arc<Combinations>, candidates: &[Candidate]) -> Arc<Combinations> {
        let prices: Vec<[f64; 2]> = candidates.iter().map(|c| [c.price, c.life_years]).collect();
        let held = self.priced.as_ref().filter(|held| held.of.as_ptr() == Arc::as_ptr(known) && held.at == prices);
        if let Some(held) = held {
            return Arc::clone(&held.combinations);
        }
        let mut priced = Combinations::clone(known);
        for combination in &mut priced {
            for (line, index) in combination.lines.iter_mut().zip(&combination.candidates) {
                if let Some([price, life_years]) = prices.get(*index) {
                    (line.price, line.life_years) = (*price, *life_years);
                }
            }
        }
        let priced = Arc::new(priced);
        self.priced = Some(Priced { of: Arc::downgrade(known), at: prices, combinations: Arc::clone(&priced) });
        priced
    }
}

impl State {
    /// Asks for the combinations of the ticked measures with the chosen scenario, and gives what is known; none without a
    /// season.
    ///
    /// # Errors
    /// Too many measures, or none.
    pub fn purchases(&mut self, ctx: &egui::Context) -> Result<Option<(Grown<Combinations>, usize)>, String> {
        let Some((question, study, climate)) = self.purchase() else { return Ok(None) };
        let count = sets(&study, 0).map_err(|error| error.to_string())?.len();
        if !self.board.working() {
            let rows = Arc::clone(&self.catalogue);
            self.purchases.asked.ask("best buy", question, ctx, move |teller| work(&study, &climate, &rows, teller));
        }
        let mut grown = self.purchases.asked.grown();
        if let Some(known) = &grown.answer {
            grown.answer = Some(self.purchases.priced(known, &self.document.draft.study.candidates));
        }
        Ok(Some((grown, count)))
    }

    /// The combinations with the chosen scenario as it stands, with its place in the study; none where they are not known.
    #[must_use]
    pub fn known_purchases(&mut self) -> Option<(usize, Combinations)> {
        let (question, ..) = self.purchase().filter(|_| !self.board.working())?;
        let known = Arc::clone(self.purchases.asked.known(&question)?);
        let priced = self.purchases.priced(&known, &self.document.draft.study.candidates);
        Some((self.document.draft.selected(), Combinations::clone(&priced)))
    }

    /// What is asked of the chosen scenario, as a study of its own, and its weather; none without a season.
    fn purchase(&self) -> Option<(Question, Study, Arc<Climate>)> {
        let (season, _) = self.chosen_season().filter(|(season, _)| !season.is_empty())?;
        let (inputs, climate) = (Arc::clone(&season.inputs), Arc::clone(&season.climate));
        // Names and prices move no season.
        let bare = |(place, c): (usize, &Candidate)| Candidate {
            name: place.to_string(),
            ticked: c.ticked,
            change: c.change.clone(),
            ..Candidate::default()
        };
        let measures: Vec<Candidate> = self.document.draft.study.candidates.iter().enumerate().map(bare).collect();
        let scenario = Scenario { name: "chosen".to_owned(), ..inputs.scenario.clone() };
        let study = Study { scenarios: vec![scenario], candidates: measures.clone(), ..inputs.study.clone() };
        Some((Question { inputs, measures }, study, climate))
    }
}

/// The work on its thread.
fn work(
    study: &Study,
    climate: &Climate,
    rows: &Catalogue,
    teller: &Teller<Combinations>,
) -> Result<Combinations, String> {
    let (progress, cancelled) = (|done| teller.parts(done), || teller.given_up());
    let workers = Workers { progress: &progress, cancelled: &cancelled, ..Workers::all() };
    let mut known: Vec<(usize, Combination)> = Vec::new();
    let in_order = |known: &[(usize, Combination)]| {
        let mut known = known.to_vec();
        known.sort_by_key(|(place, _)| *place);
        known.into_iter().map(|(_, combination)| combination).collect::<Combinations>()
    };
    let mut ready = |place: usize, combination: Combination| {
        known.push((place, combination));
        teller.tell(|| in_order(&known));
    };
    combinations_when_ready(study, 0, climate, rows, workers, &mut ready).map_err(|error| error.to_string())?;
    Ok(in_order(&known))
}
