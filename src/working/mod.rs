//! How each headline figure came about: this scenario's numbers put into the formula, so that a pencil can follow.
//!
//! Everything is taken from the season that was run, or from the same plan of the house that it was run with; nothing
//! is worked out a second way. Window and report show the same [`Panel`]s.

pub mod account;
mod baseline;
mod cold;
mod difference;
mod energy;
mod ink;
mod load;

pub use account::{Account, Factor, Number, Row};

use crate::model::{Catalogue, Scenario, Study};
use crate::season::ScenarioRun;
use crate::season::openings::Openings;
use crate::season::plan::Plan;
use crate::units::UnitSystem;
use crate::weather::Climate;
use ink::Ink;

/// What is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Topic {
    /// What the winter costs.
    Cost,
    /// Fuel in the unit it is bought in.
    Fuel,
    /// Lowest air round the crop.
    Lowest,
    /// Hours below the crop limit.
    BelowLimit,
    /// Heater against design load.
    Margin,
    /// What changes against the reference.
    Difference,
    /// The degree-hour baseline.
    Baseline,
}

impl Topic {
    /// All of them, in order.
    pub const ALL: [Self; 7] =
        [Self::Cost, Self::Fuel, Self::Lowest, Self::BelowLimit, Self::Margin, Self::Difference, Self::Baseline];

    /// Name on screen; for a headline figure that of the figure.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Cost => "Winter cost",
            Self::Fuel => "Fuel",
            Self::Lowest => "Lowest at crop",
            Self::BelowLimit => "Below crop limit",
            Self::Margin => "Heater margin",
            Self::Difference => "Against the reference",
            Self::Baseline => "Baseline",
        }
    }
}

/// How one figure was worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// Which.
    pub topic: Topic,
    /// The formula in words.
    pub formula: &'static str,
    /// The sums, in the order in which they build on each other.
    pub accounts: Vec<Account>,
    /// Where the formula comes from.
    pub source: &'static str,
}

/// A scenario with its season, and what it is compared with.
#[derive(Clone, Copy)]
pub struct Case<'a> {
    /// The study, for its prices.
    pub study: &'a Study,
    /// The scenario.
    pub scenario: &'a Scenario,
    /// Its weather.
    pub climate: &'a Climate,
    /// The program's catalogue rows with the study's own.
    pub catalogue: &'a Catalogue,
    /// Its season.
    pub run: &'a ScenarioRun,
    /// Name and season of the reference; none if this is it.
    pub reference: Option<(&'a str, &'a ScenarioRun)>,
    /// Units on the page.
    pub units: UnitSystem,
}

/// The panels of a scenario, in the order of [`Topic::ALL`]; those that do not concern it are left out.
#[must_use]
pub fn panels(case: &Case) -> Vec<Panel> {
    let Ok(plan) = Plan::new(case.scenario, case.catalogue) else { return Vec::new() };
    let openings = Openings::of(case.scenario, &plan);
    let ink = Ink { units: case.units, currency: &case.study.prices.currency };
    let cold = cold::Cold::of(case, ink);
    let all = [
        Some(energy::cost(case, ink)),
        energy::fuel(case, ink),
        cold.as_ref().map(cold::Cold::lowest),
        cold.as_ref().map(cold::Cold::below_limit),
        Some(load::margin(case, &plan, ink)),
        case.reference.map(|(name, reference)| difference::difference(case.run, name, reference, ink)),
        Some(baseline::baseline(case, &plan, &openings, ink)),
    ];
    all.into_iter().flatten().collect()
}
