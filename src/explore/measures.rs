//! All combinations of the measures that may be bought, each as a scenario of its own, and their seasons.

use super::refusal::Refusal;
use super::sweep::season_of;
use crate::model::candidate::{Candidate, CandidateChange};
use crate::model::{Catalogue, PartCovering, Scenario, Study, Tent};
use crate::season::RunError;
use crate::season::buying::{BuyingLine, quantity};
use crate::season::lean::SeasonFigures;
use crate::season::plan::Plan;
use crate::season::pool::{Workers, in_order};
use crate::weather::Climate;
use thiserror::Error;

/// Most ticked measures: their combinations are twice as many with each.
pub const MOST_CANDIDATES: usize = 10;

/// Measures bought together, and the season with them.
#[derive(Debug, Clone, PartialEq)]
pub struct Combination {
    /// Indices into the study's candidates, in their order.
    pub candidates: Vec<usize>,
    /// What is bought, a line for each.
    pub lines: Vec<BuyingLine>,
    /// The season, whose cost is known; or why there is none.
    pub season: Result<SeasonFigures, Refusal>,
}

/// Why nothing can be compared.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum MeasuresError {
    /// No such scenario.
    #[error("there is no scenario number {0}")]
    NoScenario(usize),
    /// Nothing to choose from.
    #[error("no measure is ticked; write some into the study's list \"candidates\" or tick one")]
    NoCandidates,
    /// More than can be run through.
    #[error(
        "{found} ticked measures are more than {MOST_CANDIDATES}, whose combinations can still be run; untick some"
    )]
    TooMany {
        /// How many.
        found: usize,
    },
    /// The runs.
    #[error(transparent)]
    Run(#[from] RunError),
}

/// Runs a scenario with every combination of the ticked candidates, that of none of them included. What the scenario
/// already has counts as bought. Two that exclude each other, and a cover of a tent that is not there, are in none.
///
/// # Errors
/// [`MeasuresError`]; one combination that cannot be computed is no error, but says so itself.
pub fn combinations(
    study: &Study,
    scenario: usize,
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
) -> Result<Vec<Combination>, MeasuresError> {
    let mut all = Vec::new();
    let mut ready = |place: usize, combination: Combination| all.push((place, combination));
    combinations_when_ready(study, scenario, climate, catalogue, workers, &mut ready)?;
    Ok(in_order(all))
}

/// The combinations of the ticked candidates that go together, each by its indices.
///
/// # Errors
/// No such scenario, nothing ticked, too much ticked.
pub fn sets(study: &Study, scenario: usize) -> Result<Vec<Vec<usize>>, MeasuresError> {
    let ticked: Vec<usize> = (0..study.candidates.len()).filter(|index| study.candidates[*index].ticked).collect();
    if ticked.is_empty() {
        return Err(MeasuresError::NoCandidates);
    }
    if MOST_CANDIDATES < ticked.len() {
        return Err(MeasuresError::TooMany { found: ticked.len() });
    }
    let base = study.scenarios.get(scenario).ok_or(MeasuresError::NoScenario(scenario))?;
    let chosen_of = |set: usize| -> Vec<usize> {
        ticked.iter().enumerate().filter(|(bit, _)| set >> bit & 1 == 1).map(|(_, index)| *index).collect()
    };
    let measures = |chosen: &[usize]| chosen.iter().map(|index| &study.candidates[*index]).collect::<Vec<_>>();
    Ok((0..1_usize << ticked.len()).map(chosen_of).filter(|chosen| go_together(base, &measures(chosen))).collect())
}

/// As [`combinations`], handing over each with its place as it is ready.
///
/// # Errors
/// As [`combinations`].
pub fn combinations_when_ready(
    study: &Study,
    scenario: usize,
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
    ready: &mut dyn FnMut(usize, Combination),
) -> Result<(), MeasuresError> {
    let sets = sets(study, scenario)?;
    let base = &study.scenarios[scenario];
    let combination = |at: usize| {
        let chosen: Vec<&Candidate> = sets[at].iter().map(|index| &study.candidates[*index]).collect();
        let mut varied = study.clone();
        varied.scenarios[scenario] = with(base, &chosen);
        let lines = lines(&varied.scenarios[scenario], &chosen, &catalogue.with_own(&study.own));
        let season = match Refusal::of(&varied, scenario, catalogue) {
            Some(refusal) => Err(refusal),
            None => season_of(&varied, scenario, climate, catalogue, workers.cancelled)?,
        };
        let season = season.and_then(|season| if season.cost.is_some() { Ok(season) } else { Err(Refusal::NoPrice) });
        let (lines, season) = match lines {
            Ok(lines) => (lines, season),
            Err(error) => (Vec::new(), season.and(Err(Refusal::Run(error)))),
        };
        Ok(Combination { candidates: sets[at].clone(), lines, season })
    };
    Ok(workers.each_when_ready(sets.len(), &combination, ready)?)
}

/// Whether measures can be bought together.
fn go_together(base: &Scenario, chosen: &[&Candidate]) -> bool {
    let pairs = || chosen.iter().enumerate().flat_map(|(i, a)| chosen[i + 1..].iter().map(move |b| (a, b)));
    let tent = base.tent.present || chosen.iter().any(|c| matches!(c.change, CandidateChange::Tent(_)));
    let covers_tent = chosen.iter().any(|c| matches!(c.change, CandidateChange::TentNightCover(_)));
    (tent || !covers_tent) && pairs().all(|(a, b)| !a.change.excludes(&b.change))
}

/// The scenario with measures. A tent comes before the cover that is drawn over it.
#[must_use]
pub fn with(base: &Scenario, chosen: &[&Candidate]) -> Scenario {
    let mut scenario = base.clone();
    let (covers, others): (Vec<_>, Vec<_>) =
        chosen.iter().map(|c| &c.change).partition(|change| matches!(change, CandidateChange::TentNightCover(_)));
    for change in others.into_iter().chain(covers) {
        put(&mut scenario, change);
    }
    scenario
}

fn put(scenario: &mut Scenario, change: &CandidateChange) {
    match change {
        CandidateChange::Sheet(key) => {
            scenario.covering.sheets.push(key.clone());
            for exception in &mut scenario.covering.exceptions {
                if let PartCovering::Sheets(sheets) = &mut exception.covering {
                    sheets.push(key.clone());
                }
            }
        }
        CandidateChange::Tent(tent) => scenario.tent = Tent { present: true, ..tent.clone() },
        CandidateChange::NightCover(cover) => {
            scenario.night_cover = cover.clone();
            scenario.night_cover.present = true;
        }
        CandidateChange::TentNightCover(cover) => {
            scenario.tent.night_cover = cover.clone();
            scenario.tent.night_cover.present = true;
        }
        CandidateChange::Vessels(vessels) => {
            if !scenario.water.present {
                scenario.water.vessels.clear();
            }
            scenario.water.present = true;
            scenario.water.vessels.push(vessels.clone());
        }
        CandidateChange::Heater(heater) => {
            let old = std::mem::replace(&mut scenario.heater, heater.clone());
            scenario.heater.present = true;
            if old.present {
                scenario.heater.setpoint_day_c = old.setpoint_day_c;
                scenario.heater.setpoint_night_c = old.setpoint_night_c;
                scenario.heater.day_from_hour = old.day_from_hour;
                scenario.heater.day_to_hour = old.day_to_hour;
            }
        }
        CandidateChange::Standby(heater) => {
            scenario.standby = heater.clone();
            scenario.standby.present = true;
        }
        CandidateChange::Edge(factor) => scenario.house.edge_f_w_per_mk = *factor,
        CandidateChange::Tightness(tightness) => scenario.house.tightness = *tightness,
    }
}

/// What is bought, with the areas that the drawing gives; of vessels those of the measure alone.
fn lines(scenario: &Scenario, chosen: &[&Candidate], catalogue: &Catalogue) -> Result<Vec<BuyingLine>, RunError> {
    let plan = Plan::new(scenario, catalogue)?;
    let line = |candidate: &&Candidate| {
        let measure = candidate.change.measure();
        let quantity = match &candidate.change {
            CandidateChange::Vessels(vessels) => f64::from(vessels.count),
            _ => quantity(measure, scenario, &plan),
        };
        BuyingLine {
            name: measure.name(),
            note: candidate.name.clone(),
            quantity,
            by_area: measure.by_area(),
            price: candidate.price,
            life_years: candidate.life_years,
        }
    };
    Ok(chosen.iter().map(line).collect())
}
