//! Rows of what the runs gave.

use super::{Best, Cell, Group, Row};
use crate::model::Study;
use crate::season::buying::Payback;
use crate::season::summary::OVERHEATED_C;
use crate::season::{Hold, POWER_CUT_HOURS, ScenarioRun};
use crate::units::Quantity;

const NOT_RUN: &str = "not run";
const NO_PRICE: &str = "a price is missing";

/// A row made of one number per run.
struct Of {
    key: &'static str,
    label: &'static str,
    group: Group,
    quantity: Quantity,
    decimals: usize,
    best: Best,
}

impl Of {
    fn row(&self, runs: &[Option<&ScenarioRun>], cell: impl Fn(&ScenarioRun) -> Cell) -> Row {
        Row {
            key: self.key.into(),
            label: self.label.to_owned(),
            limit_c: None,
            group: self.group,
            quantity: self.quantity,
            decimals: self.decimals,
            best: self.best,
            cells: runs.iter().map(|run| run.map_or(Cell::Empty(NOT_RUN), &cell)).collect(),
        }
    }
}

const fn of(
    group: Group,
    key: &'static str,
    label: &'static str,
    quantity: Quantity,
    decimals: usize,
    best: Best,
) -> Of {
    Of { key, label, group, quantity, decimals, best }
}

/// All rows of results.
pub(super) fn rows(study: &Study, runs: &[Option<&ScenarioRun>]) -> Vec<Row> {
    let mut rows = money(study, runs);
    rows.extend(safety(runs));
    rows.extend(energy(runs));
    rows
}

fn energy(runs: &[Option<&ScenarioRun>]) -> Vec<Row> {
    use Quantity::{Count, Energy, Mass, Power};
    let of = |key, label, quantity, best| of(Group::Energy, key, label, quantity, 0, best);
    vec![
        of("heat", "Heat delivered", Energy, Best::Lowest)
            .row(runs, |run| Cell::Number(run.summary.heat_delivered_kwh)),
        of("fuel", "Fuel bought", Count, Best::None).row(runs, fuel),
        of("peak", "Largest hour", Power, Best::Lowest).row(runs, |run| Cell::Number(run.summary.peak_heater_w)),
        of("load", "Design load, 99.6 %", Power, Best::Lowest)
            .row(runs, |run| Cell::Number(run.summary.design_load_w_99_6)),
        of("co2", "CO₂", Mass, Best::Lowest).row(runs, |run| Cell::or(run.summary.co2_kg, "no factor for this energy")),
    ]
}

fn fuel(run: &ScenarioRun) -> Cell {
    let s = &run.summary;
    if s.fuel_unit.is_empty() {
        return Cell::Empty("no heater");
    }
    let decimals = if s.fuel_quantity < 20.0 { 1 } else { 0 };
    Cell::Text(format!("{:.decimals$} {}", s.fuel_quantity, s.fuel_unit))
}

fn money(study: &Study, runs: &[Option<&ScenarioRun>]) -> Vec<Row> {
    use Quantity::Money;
    let winters = f64::from(study.prices.winters);
    let reference = runs.get(study.reference).copied().flatten();
    let row = |key, label, best| of(Group::Money, key, label, Money, 0, best);
    let fine = |key, label| of(Group::Money, key, label, Money, 2, Best::Lowest);
    let running = |run: &ScenarioRun| run.summary.cost;
    let mut rows = vec![
        row("running", "Running cost of a winter", Best::Lowest).row(runs, |run| Cell::or(running(run), NO_PRICE)),
        row("buying", "Buying cost", Best::Lowest).row(runs, |run| Cell::Number(run.buying.cost())),
        row("buying-per-year", "Buying cost by year of life", Best::Lowest)
            .row(runs, |run| Cell::Number(run.buying.cost_per_year())),
        row("yearly", "Running and buying, by year", Best::Lowest)
            .row(runs, |run| Cell::or(running(run).map(|cost| cost + run.buying.cost_per_year()), NO_PRICE)),
    ];
    let payback = |run: &ScenarioRun| match payback(run, reference) {
        Some(payback) => Cell::Text(payback.words()),
        None => Cell::Empty(NO_PRICE),
    };
    rows.push(row("payback", "Simple payback", Best::None).row(runs, payback));
    let net = of(Group::Money, "net-saving", "", Money, 0, Best::Highest).row(runs, |run| {
        let saving = reference.and_then(|reference| {
            let yearly = running(reference)? - running(run)?;
            Some(winters * yearly - (run.buying.cost_over(winters) - reference.buying.cost_over(winters)))
        });
        Cell::or(saving, NO_PRICE)
    });
    rows.push(Row { label: format!("Net saving after {winters:.0} winters"), ..net });
    for row in rows.iter_mut().filter(|row| matches!(row.key.as_ref(), "payback" | "net-saving")) {
        if let Some(own) = row.cells.get_mut(study.reference).filter(|cell| !matches!(cell, Cell::Empty(_))) {
            *own = Cell::Empty("reference");
        }
    }
    let per_bench = Of { quantity: Quantity::MoneyPerArea, ..fine("per-bench", "Running cost by area of bench") };
    rows.push(per_bench.row(runs, |run| {
        let bench_m2 = Some(run.shell.bench_m2).filter(|m2| *m2 > 0.0);
        Cell::or(running(run).zip(bench_m2).map(|(cost, m2)| cost / m2), "no bench or no price")
    }));
    rows.push(fine("per-tray", "Running cost per tray").row(runs, |run| {
        let trays = Some(f64::from(run.shell.trays)).filter(|trays| *trays > 0.0);
        Cell::or(running(run).zip(trays).map(|(cost, trays)| cost / trays), "no tray or no price")
    }));
    rows.push(
        of(Group::Money, "trays", "Trays on the bench", Quantity::Count, 0, Best::Highest)
            .row(runs, |run| Cell::Number(f64::from(run.shell.trays))),
    );
    rows
}

/// Payback of a run against the reference; none while a price is missing.
fn payback(run: &ScenarioRun, reference: Option<&ScenarioRun>) -> Option<Payback> {
    let reference = reference?;
    let saving = reference.summary.cost? - run.summary.cost?;
    Some(Payback::of(run.buying.cost() - reference.buying.cost(), saving))
}

fn safety(runs: &[Option<&ScenarioRun>]) -> Vec<Row> {
    use Quantity::{Count, Temperature};
    let row = |key, label, quantity, decimals, best| of(Group::Safety, key, label, quantity, decimals, best);
    let overheated = row("overheated", "Hours above {limit} in the house", Count, 0, Best::Lowest)
        .row(runs, |run| Cell::Number(run.summary.hours_above_35_c as f64));
    vec![
        row("lowest", "Lowest at the crop", Temperature, 1, Best::Highest)
            .row(runs, |run| Cell::Number(run.summary.crop_zone_min_c)),
        row("below-limit", "Hours below the crop limit", Count, 0, Best::Lowest)
            .row(runs, |run| Cell::Number(run.summary.hours_below_crop_limit as f64)),
        row("below-setpoint", "Hours below setpoint", Count, 0, Best::Lowest)
            .row(runs, |run| Cell::Number(run.summary.hours_below_setpoint as f64)),
        row("air-holds", "Power cut: the air holds, h", Count, 1, Best::Highest)
            .row(runs, |run| hold(run.summary.power_cut.with_water.air_to_crop_limit_h)),
        row("trays-hold", "Power cut: the trays hold, h", Count, 1, Best::Highest)
            .row(runs, |run| hold(run.summary.power_cut.with_water.trays_to_crop_limit_h)),
        Row { limit_c: Some(OVERHEATED_C), ..overheated },
    ]
}

fn hold(hold: Hold) -> Cell {
    match hold {
        Hold::Hours(hours) => Cell::Number(hours),
        Hold::Beyond => Cell::Over(POWER_CUT_HOURS as f64),
        Hold::NotApplicable => Cell::Empty("nothing to hold"),
    }
}
