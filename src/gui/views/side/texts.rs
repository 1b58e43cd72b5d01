//! The texts of the table, made anew only when something changes that they depend on.

use crate::compare::{Cell, Comparison, Row};
use crate::format;
use crate::gui::prefs::TablePrefs;
use crate::gui::state::State;
use crate::model::{Catalogue, Study};
use crate::season::ScenarioRun;
use crate::units::{Quantity, UnitSystem};
use std::sync::Arc;

/// The table with its texts.
pub struct Texts {
    made_from: MadeFrom,
    /// The table.
    pub table: Comparison,
    /// The rows on show, from top to bottom.
    pub rows: Vec<RowTexts>,
}

/// Everything that decides the texts.
struct MadeFrom {
    study: Study,
    catalogue: Arc<Catalogue>,
    runs: Vec<Option<Arc<ScenarioRun>>>,
    prefs: TablePrefs,
    units: UnitSystem,
}

/// Texts of a row.
pub struct RowTexts {
    /// Place of the row in the table.
    pub row: usize,
    /// What a screen reader says.
    pub said: String,
    /// A cell per scenario.
    pub cells: Vec<CellTexts>,
}

/// Texts of a cell.
pub struct CellTexts {
    /// The value.
    pub value: String,
    /// Its difference from the reference; empty where there is none.
    pub difference: String,
    /// Whether there is nothing to say.
    pub empty: bool,
    /// Whether it is the best of its row.
    pub best: bool,
}

/// The texts of what is on show now.
pub fn texts(state: &mut State) -> Arc<Texts> {
    let held = state.side.texts.take().filter(|texts| texts.made_from.holds(state));
    let texts = held.unwrap_or_else(|| Arc::new(Texts::of(MadeFrom::now(state))));
    state.side.texts = Some(Arc::clone(&texts));
    texts
}

impl MadeFrom {
    fn now(state: &State) -> Self {
        let draft = &state.document.draft;
        let run = |id| state.board.season(id).map(|(season, _)| Arc::clone(&season.run));
        Self {
            study: draft.study.clone(),
            catalogue: Arc::clone(&state.rows),
            runs: draft.tags.iter().map(|tag| run(tag.id)).collect(),
            prefs: state.prefs.table.clone(),
            units: state.prefs.units,
        }
    }

    fn holds(&self, state: &State) -> bool {
        let draft = &state.document.draft;
        let same_run = |(id, held): (_, &Option<Arc<ScenarioRun>>)| match (state.board.season(id), held) {
            (Some((season, _)), Some(run)) => Arc::ptr_eq(&season.run, run),
            (None, None) => true,
            _ => false,
        };
        self.units == state.prefs.units
            && self.prefs == state.prefs.table
            && Arc::ptr_eq(&self.catalogue, &state.rows)
            && self.runs.len() == draft.tags.len()
            && draft.tags.iter().map(|tag| tag.id).zip(&self.runs).all(same_run)
            && self.study == draft.study
    }
}

impl Texts {
    fn of(made_from: MadeFrom) -> Self {
        let runs: Vec<Option<&ScenarioRun>> = made_from.runs.iter().map(Option::as_deref).collect();
        let table = Comparison::of(&made_from.study, &made_from.catalogue, &runs);
        let currency = &made_from.study.prices.currency;
        let rows = arranged(&table, &made_from.prefs);
        let rows = rows.into_iter().map(|row| RowTexts::of(&table, row, made_from.units, currency)).collect();
        Self { table, rows, made_from }
    }
}

/// Indices of the rows to show, in the order that the grower gave them.
fn arranged(table: &Comparison, prefs: &TablePrefs) -> Vec<usize> {
    let mut rows: Vec<usize> =
        (0..table.rows.len()).filter(|i| !prefs.hidden.iter().any(|key| *key == table.rows[*i].key)).collect();
    let place = |row: usize| prefs.order.iter().position(|key| *key == table.rows[row].key).unwrap_or(usize::MAX);
    rows.sort_by_key(|row| (table.rows[*row].group as usize, place(*row)));
    rows
}

impl RowTexts {
    fn of(table: &Comparison, index: usize, units: UnitSystem, currency: &str) -> Self {
        let row = &table.rows[index];
        let best = row.best_columns();
        let label = row.title(units);
        let mut said = format!("{label}:");
        let mut cells = Vec::new();
        for (column, cell) in row.cells.iter().enumerate() {
            let best = best.contains(&column);
            let (value, difference) =
                (value(row, cell, units, currency), difference(table, row, column, units, currency));
            let name = table.columns.get(column).map_or("", String::as_str);
            said += &format!(" {name} {value}{}{difference};", if best { ", best, " } else { " " });
            cells.push(CellTexts { value, difference, empty: matches!(cell, Cell::Empty(_)), best });
        }
        Self { row: index, said, cells }
    }
}

fn value(row: &Row, cell: &Cell, units: UnitSystem, currency: &str) -> String {
    match cell {
        Cell::Number(n) => match row.quantity {
            Quantity::Money => format::money(*n, currency),
            Quantity::MoneyPerArea => money_per_area(*n, units, currency),
            Quantity::Power => format::power(*n),
            quantity => format::quantity(*n, quantity, units, Some(row.decimals)),
        },
        Cell::Over(n) => format!("more than {}", format::number(*n, 0)),
        Cell::Text(text) => text.clone(),
        Cell::Empty(why) => (*why).to_owned(),
    }
}

fn money_per_area(per_m2: f64, units: UnitSystem, currency: &str) -> String {
    let unit = Quantity::MoneyPerArea.unit(units);
    format!("{} {}", format::money(unit.shown(per_m2), currency), unit.symbol)
}

/// The difference from the reference.
fn difference(table: &Comparison, row: &Row, column: usize, units: UnitSystem, currency: &str) -> String {
    let known =
        row.difference(column, table.reference).filter(|_| !matches!(row.cells.get(column), Some(Cell::Over(_))));
    let Some((d, share)) = known else { return String::new() };
    let shown = row.shown_difference(d, units);
    if format::signed(shown, row.decimals).chars().all(|c| !('1'..='9').contains(&c)) {
        return "the same".to_owned();
    }
    let amount = match row.quantity {
        Quantity::Money | Quantity::MoneyPerArea => format::money_difference(shown, currency),
        Quantity::Power if d > 0.0 => format!("+{}", format::power(d)),
        Quantity::Power => format::power(d),
        _ => format::signed(shown, row.decimals),
    };
    match share {
        Some(share) => format!("{amount} ({} %)", format::signed(share * 100.0, 0)),
        None => amount,
    }
}
