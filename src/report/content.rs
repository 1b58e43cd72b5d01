//! What all parts of the report draw from, worked out once.

use super::Report;
use crate::compare::{Cell, Comparison};
use crate::format;
use crate::model::{Catalogue, Scenario};
use crate::season::ScenarioRun;
use crate::season::airing::AirChanges;
use crate::season::hard_night::HardNights;
use crate::season::saving::SavingStep;
use crate::season::sensitivity::Sensitivity;
use crate::season::winters::WinterFigures;
use crate::units::{Quantity, UnitSystem};

/// A scenario that was run.
#[derive(Clone, Copy)]
pub(super) struct Entry<'a> {
    /// Its place in the study.
    pub slot: usize,
    /// Slot of its mark and colour.
    pub mark: usize,
    pub scenario: &'a Scenario,
    pub run: &'a ScenarioRun,
    pub steps: Option<&'a [SavingStep]>,
    /// What other air would change; none where that was not worked out.
    pub air: Option<AirChanges>,
    /// What it does in hard nights; none where that was not worked out.
    pub hard_nights: Option<&'a HardNights>,
}

/// The material of the report.
pub(super) struct Content<'a> {
    pub report: &'a Report<'a>,
    /// The program's rows with the study's own.
    pub catalogue: Catalogue,
    pub table: Comparison,
    /// Every scenario that was run.
    pub entries: Vec<Entry<'a>>,
}

impl<'a> Content<'a> {
    pub fn of(report: &'a Report<'a>) -> Self {
        let catalogue = report.catalogue.with_own(&report.study.own);
        let scenarios = &report.study.scenarios;
        let run_of = |slot: usize| report.runs.get(slot).copied().flatten();
        let runs: Vec<_> = (0..scenarios.len()).map(run_of).collect();
        let entry = |(slot, scenario): (usize, &'a Scenario)| {
            let run = run_of(slot).filter(|run| !run.hours.record.is_empty())?;
            let steps = report.saving.get(slot).and_then(|steps| steps.as_deref());
            let air = report.air.get(slot).copied().flatten();
            let hard_nights = report.hard_nights.get(slot).and_then(|nights| nights.as_ref());
            Some(Entry { slot, mark: mark_of(report, slot), scenario, run, steps, air, hard_nights })
        };
        Self {
            table: Comparison::of(report.study, &catalogue, &runs),
            entries: scenarios.iter().enumerate().filter_map(entry).collect(),
            catalogue,
            report,
        }
    }

    /// The entries that the plots show; all if the study hides every one.
    pub fn shown(&self) -> Vec<Entry<'a>> {
        let shown: Vec<_> = self.entries.iter().copied().filter(|entry| entry.scenario.shown).collect();
        if shown.is_empty() { self.entries.clone() } else { shown }
    }

    /// Slot of the mark of the scenario at a place.
    pub fn mark(&self, slot: usize) -> usize {
        mark_of(self.report, slot)
    }

    /// Whether there is anything to compare.
    pub fn several(&self) -> bool {
        self.report.study.scenarios.len() > 1
    }

    /// The reference, if it was run.
    pub fn reference(&self) -> Option<Entry<'a>> {
        self.entries.iter().copied().find(|entry| entry.slot == self.report.study.reference)
    }

    /// The scenario that is cheapest to run, if prices are known.
    pub fn cheapest(&self) -> Option<Entry<'a>> {
        let priced = self.entries.iter().copied().filter_map(|entry| Some((entry.run.summary.cost?, entry)));
        priced.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, entry)| entry)
    }

    /// The scenario whose nights are drawn: the cheapest, else the reference, else the first.
    pub fn spotlight(&self) -> Option<Entry<'a>> {
        self.cheapest().or(self.reference()).or(self.entries.first().copied())
    }

    /// What matters to a scenario; none where that was not tried.
    pub fn matters(&self, entry: &Entry) -> Option<&'a Sensitivity> {
        self.report.explored.matters.get(entry.slot)?.as_ref()
    }

    /// A scenario's many winters; none where they were not run.
    pub fn winters(&self, entry: &Entry) -> Option<&'a WinterFigures> {
        self.report.explored.winters.get(entry.slot)?.as_ref()
    }

    /// A cell of the table by its row's stable name.
    pub fn cell(&self, key: &str, slot: usize) -> Option<&Cell> {
        self.table.rows.iter().find(|row| row.key == key)?.cells.get(slot)
    }

    pub fn units(&self) -> UnitSystem {
        self.report.units
    }

    pub fn currency(&self) -> &'a str {
        &self.report.study.prices.currency
    }

    pub fn money(&self, amount: f64) -> String {
        kept_together(&format::money(amount, self.currency()))
    }

    pub fn temperature(&self, t_c: f64) -> String {
        kept_together(&format::temperature(t_c, self.units()))
    }

    pub fn quantity(&self, value: f64, quantity: Quantity, decimals: Option<usize>) -> String {
        kept_together(&format::quantity(value, quantity, self.units(), decimals))
    }

    /// The number alone, whole, in the unit on the page.
    pub fn number_of(&self, value: f64, quantity: Quantity) -> String {
        format::number(quantity.unit(self.units()).shown(value), 0)
    }

    /// Symbol of a difference of temperatures.
    pub fn degree(&self) -> &'static str {
        Quantity::TemperatureDifference.unit(self.units()).symbol
    }
}

/// A number that no line break parts from its unit.
pub(super) fn kept_together(text: &str) -> String {
    text.replace(' ', "\u{a0}")
}

/// A study that comes from a file gives its scenarios marks in their order.
fn mark_of(report: &Report, slot: usize) -> usize {
    report.marks.get(slot).copied().unwrap_or(slot)
}
