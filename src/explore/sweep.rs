//! One input, or two, moved over a range: what the season then comes to.

use super::inputs::NumericInput;
use super::refusal::Refusal;
use crate::model::{Catalogue, Study};
use crate::season::RunError;
use crate::season::lean::{SeasonFigures, season_figures};
use crate::season::pool::{Workers, in_order};
use crate::weather::Climate;
use thiserror::Error;

/// Most points of one axis.
pub const MOST_POINTS: usize = 500;
/// Most seasons of one sweep: some minutes of an ordinary machine.
pub const MOST_RUNS: usize = 10_000;

/// An input with the values that it takes.
#[derive(Debug)]
pub struct Axis {
    /// Which input.
    pub input: NumericInput,
    /// Its values, in the file's units.
    pub values: Vec<f64>,
}

/// A range that gives no axis, or a sweep too large.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum AxisError {
    /// An end that is no number.
    #[error("both ends of the range must be numbers")]
    NotANumber,
    /// Too few points, or too many.
    #[error("{found} points are not allowed; choose from 2 to {MOST_POINTS}")]
    Points {
        /// How many.
        found: usize,
    },
    /// Both ends are the same.
    #[error("both ends of the range are {0}; choose two that differ")]
    NoRange(f64),
    /// More seasons than anybody waits for.
    #[error("{found} seasons are more than the {MOST_RUNS} of one sweep; choose fewer points or scenarios")]
    TooMany {
        /// How many.
        found: usize,
    },
}

impl Axis {
    /// Evenly spaced values, both ends included. Of an input in whole numbers they are rounded, each taken once.
    ///
    /// # Errors
    /// Ends that are no numbers or the same, too few or too many points.
    pub fn new(input: NumericInput, from: f64, to: f64, points: usize) -> Result<Self, AxisError> {
        if !from.is_finite() || !to.is_finite() {
            return Err(AxisError::NotANumber);
        }
        if !(2..=MOST_POINTS).contains(&points) {
            return Err(AxisError::Points { found: points });
        }
        if from == to {
            return Err(AxisError::NoRange(from));
        }
        let last = points - 1;
        let at = |k: usize| (from * (last - k) as f64 + to * k as f64) / last as f64;
        let mut values: Vec<f64> = (0..points).map(|k| tidied(at(k))).collect();
        if input.whole {
            values = values.into_iter().map(f64::round).collect();
            values.dedup();
        }
        Ok(Self { input, values })
    }
}

/// Without the noise of the division: 0.7, not 0.7000000000000001, so that a value can be typed again.
fn tidied(value: f64) -> f64 {
    let rounded = (value * 1e9).round() / 1e9;
    if (rounded - value).abs() <= value.abs() * 1e-12 { rounded } else { value }
}

/// One scenario at one value, or at one pair of values.
#[derive(Debug, Clone, PartialEq)]
pub struct SweepPoint {
    /// Index of the scenario.
    pub scenario: usize,
    /// A value for each axis.
    pub values: Vec<f64>,
    /// The season, or why there is none.
    pub season: Result<SeasonFigures, Refusal>,
}

/// All points: scenario by scenario, of each the first axis slowest.
#[derive(Debug, Clone, PartialEq)]
pub struct Sweep {
    /// The points.
    pub points: Vec<SweepPoint>,
}

impl Sweep {
    /// The points of a scenario.
    pub fn of(&self, scenario: usize) -> impl Iterator<Item = &SweepPoint> {
        self.points.iter().filter(move |point| point.scenario == scenario)
    }

    /// Whether the values make no difference to a scenario, such as the height of a tent that is not put up.
    #[must_use]
    pub fn is_flat(&self, scenario: usize) -> bool {
        let mut seasons = self.of(scenario).filter_map(|point| point.season.as_ref().ok());
        let Some(first) = seasons.next() else { return false };
        let mut others = seasons.peekable();
        others.peek().is_some() && others.all(|season| season == first)
    }
}

/// Runs the scenarios named by their indices at every value of one axis, or at every pair of two. A point that the
/// study's rules refuse says why and is left out.
///
/// # Errors
/// [`AxisError::TooMany`] seasons; [`RunError::Cancelled`].
pub fn sweep(
    study: &Study,
    scenarios: &[usize],
    axes: &[Axis],
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
) -> Result<Sweep, SweepError> {
    let mut points = Vec::new();
    sweep_when_ready(study, scenarios, axes, climate, catalogue, workers, &mut |index, point| {
        points.push((index, point))
    })?;
    Ok(Sweep { points: in_order(points) })
}

/// The same, handing over each point with its place as it is ready: the first value of every scenario first.
///
/// # Errors
/// As [`sweep`].
pub fn sweep_when_ready(
    study: &Study,
    scenarios: &[usize],
    axes: &[Axis],
    climate: &Climate,
    catalogue: &Catalogue,
    workers: Workers,
    ready: &mut dyn FnMut(usize, SweepPoint),
) -> Result<(), SweepError> {
    let per_scenario: usize = axes.iter().map(|axis| axis.values.len()).product();
    let count = per_scenario * scenarios.len();
    if MOST_RUNS < count {
        return Err(AxisError::TooMany { found: count }.into());
    }
    // Curves grow together: every scenario at one value, then at the next.
    let place = |turn: usize| turn % scenarios.len() * per_scenario + turn / scenarios.len();
    let point = |turn: usize| {
        let index = place(turn);
        let scenario = scenarios[index / per_scenario];
        let values = values_at(axes, index % per_scenario);
        let season = match varied(study, scenario, axes, &values, catalogue) {
            Ok(varied) => season_of(&varied, scenario, climate, catalogue, workers.cancelled)?,
            Err(refusal) => Err(refusal),
        };
        Ok(SweepPoint { scenario, values, season })
    };
    workers.each_when_ready(count, &point, &mut |turn, point| ready(place(turn), point))?;
    Ok(())
}

/// A sweep that gives no result.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SweepError {
    /// What is asked for.
    #[error(transparent)]
    Axis(#[from] AxisError),
    /// The runs.
    #[error(transparent)]
    Run(#[from] RunError),
}

/// The values of a point, by its number: the last axis runs fastest.
fn values_at(axes: &[Axis], mut point: usize) -> Vec<f64> {
    let mut values: Vec<f64> = Vec::with_capacity(axes.len());
    for axis in axes.iter().rev() {
        values.push(axis.values[point % axis.values.len()]);
        point /= axis.values.len();
    }
    values.reverse();
    values
}

/// The study with the values typed into it.
fn varied(
    study: &Study,
    scenario: usize,
    axes: &[Axis],
    values: &[f64],
    catalogue: &Catalogue,
) -> Result<Study, Refusal> {
    let mut varied = study.clone();
    for (axis, value) in axes.iter().zip(values) {
        axis.input.set(&mut varied, scenario, *value)?;
    }
    Refusal::of(&varied, scenario, catalogue).map_or(Ok(varied), Err)
}

/// The season of a scenario; only a given-up run ends the work.
pub(super) fn season_of(
    study: &Study,
    scenario: usize,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &(dyn Fn() -> bool + Sync),
) -> Result<Result<SeasonFigures, Refusal>, RunError> {
    let Some(scenario) = study.scenarios.get(scenario) else {
        return Ok(Err(Refusal::NoSuchRow { path: format!("scenarios[{scenario}]") }));
    };
    match season_figures(study, scenario, climate, catalogue, &|| cancelled()) {
        Err(RunError::Cancelled) => Err(RunError::Cancelled),
        season => Ok(season.map_err(Refusal::Run)),
    }
}
