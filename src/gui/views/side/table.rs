//! The table: groups of rows, a column per scenario, the best of each row marked.

use crate::compare::{Cell, Comparison, Group, Row};
use crate::format;
use crate::gui::marks;
use crate::gui::palette;
use crate::gui::prefs::TablePrefs;
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, Tokens, regular, semibold, tokens};
use crate::units::{Quantity, UnitSystem};
use egui::{Align2, Rect, Sense, Stroke, Ui, pos2, vec2};

/// Width of the labels.
const LABEL: f32 = 200.0;
/// Least and largest width of a scenario's column.
const COLUMN: (f32, f32) = (118.0, 190.0);
/// Height of a row, of a heading, and of the head.
const ROW: f32 = 38.0;
const HEADING: f32 = 32.0;
const HEAD: f32 = 42.0;

/// Widths of the table.
#[derive(Debug, Clone, Copy)]
pub struct Widths {
    /// A scenario's column.
    pub column: f32,
    /// The table.
    pub whole: f32,
}

impl Widths {
    /// For so many scenarios in so much room; wider than the room when they do not fit.
    pub fn fit(room: f32, scenarios: usize) -> Self {
        let count = scenarios.max(1) as f32;
        let column = ((room - LABEL) / count).clamp(COLUMN.0, COLUMN.1);
        Self { column, whole: LABEL + column * count }
    }
}

/// Indices of the rows to show, in the order that the grower gave them.
pub fn arranged(table: &Comparison, prefs: &TablePrefs) -> Vec<usize> {
    let mut rows: Vec<usize> =
        (0..table.rows.len()).filter(|i| !prefs.hidden.iter().any(|key| *key == table.rows[*i].key)).collect();
    let place = |row: usize| prefs.order.iter().position(|key| *key == table.rows[row].key).unwrap_or(usize::MAX);
    rows.sort_by_key(|row| (table.rows[*row].group as usize, place(*row)));
    rows
}

/// Everything below the head.
pub fn rows_ui(ui: &mut Ui, state: &mut State, table: &Comparison, shown: &[usize], widths: Widths) {
    let t = tokens(ui);
    let mut group = None;
    for (place, row) in shown.iter().enumerate() {
        let Some(row) = table.rows.get(*row) else { continue };
        if group != Some(row.group) {
            group = Some(row.group);
            heading_ui(ui, row.group, widths.whole, &t);
        }
        let line = Line { table, row, widths, units: state.prefs.units, t };
        let response = line.ui(ui, &state.document.draft.study.prices.currency);
        response.context_menu(|ui| row_menu(ui, state, table, shown, place));
    }
}

/// The scenarios' names, which stay while the rows scroll.
pub fn head_ui(ui: &mut Ui, state: &State, table: &Comparison, widths: Widths) {
    let t = tokens(ui);
    let (rect, _) = ui.allocate_exact_size(vec2(widths.whole, HEAD), Sense::hover());
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    for (index, name) in table.columns.iter().enumerate() {
        let cell = cell_rect(rect, index, widths.column);
        let mark = state.document.draft.tags.get(index).map_or(index, |tag| tag.mark);
        let colour = palette::scenario(theme, mark);
        let mut job = egui::text::LayoutJob::simple(name.clone(), semibold(SMALL + 0.5), t.ink, cell.width() - 34.0);
        job.wrap.max_rows = 2;
        let galley = ui.painter().layout_job(job);
        let left = cell.right() - galley.size().x - 8.0;
        marks::scenario(ui.painter(), pos2(left - 12.0, cell.center().y), 5.0, mark, colour);
        ui.painter().galley(pos2(left, cell.center().y - galley.size().y / 2.0), galley, t.ink);
        let said = if index == table.reference { format!("{name}, the reference") } else { name.clone() };
        let response = ui.interact(cell, ui.scope_id().with(("column", index)), Sense::hover());
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &said));
        response.on_hover_text(said);
    }
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.soft));
}

fn heading_ui(ui: &mut Ui, group: Group, width: f32, t: &Tokens) {
    let (rect, _) = ui.allocate_exact_size(vec2(width, HEADING), Sense::hover());
    let at = pos2(rect.left(), rect.bottom() - 9.0);
    ui.painter().text(at, Align2::LEFT_CENTER, group.name(), semibold(BODY), t.accent);
}

fn cell_rect(row: Rect, index: usize, column: f32) -> Rect {
    Rect::from_min_size(pos2(row.left() + LABEL + column * index as f32, row.top()), vec2(column, row.height()))
}

/// One row with what it is drawn from.
struct Line<'a> {
    table: &'a Comparison,
    row: &'a Row,
    widths: Widths,
    units: UnitSystem,
    t: Tokens,
}

impl Line<'_> {
    fn ui(&self, ui: &mut Ui, currency: &str) -> egui::Response {
        let (rect, response) = ui.allocate_exact_size(vec2(self.widths.whole, ROW), Sense::click());
        if response.hovered() {
            ui.painter().rect_filled(rect, 0.0, self.t.raised.gamma_multiply(0.6));
        }
        ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, self.t.hairline));
        let label = Rect::from_min_size(rect.min, vec2(LABEL - 8.0, ROW));
        self.cut(ui, &self.row.label, label, false, self.t.soft, false);
        let best = self.row.best_columns();
        let mut said = format!("{}:", self.row.label);
        for (index, cell) in self.row.cells.iter().enumerate() {
            let (value, difference) = self.texts(index, cell, currency);
            let is_best = best.contains(&index);
            let name = self.table.columns.get(index).map_or("", String::as_str);
            said += &format!(" {name} {value}{}{difference};", if is_best { ", best, " } else { " " });
            let column = cell_rect(rect, index, self.widths.column).shrink2(vec2(8.0, 2.0));
            let whole = difference.is_empty();
            let upper = if whole { column } else { column.with_max_y(column.top() + 19.0) };
            let ink = if matches!(cell, Cell::Empty(_)) { self.t.soft } else { self.t.ink };
            let left = self.cut(ui, &value, upper, true, ink, is_best);
            if is_best {
                marks::paint_best(ui.painter(), pos2(left - 10.0, upper.center().y), self.t.accent);
            }
            if !whole {
                let lower = column.with_min_y(column.top() + 18.0);
                let at = pos2(lower.right(), lower.center().y);
                ui.painter().text(at, Align2::RIGHT_CENTER, difference, regular(SMALL - 1.0), self.t.soft);
            }
        }
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Row, true, &said));
        response.on_hover_text(&self.row.label)
    }

    /// Writes a text into a cell, cut where it is too long; gives its left end.
    fn cut(&self, ui: &Ui, text: &str, cell: Rect, right: bool, ink: egui::Color32, bold: bool) -> f32 {
        let font = if bold { semibold(BODY) } else { regular(BODY - 0.5) };
        let mut job = egui::text::LayoutJob::simple_singleline(text.to_owned(), font, ink);
        job.wrap = egui::text::TextWrapping::truncate_at_width(cell.width());
        let galley = ui.painter().layout_job(job);
        let left = if right { cell.right() - galley.size().x } else { cell.left() };
        ui.painter().galley(pos2(left, cell.center().y - galley.size().y / 2.0), galley, ink);
        left
    }

    /// The value, and its difference from the reference.
    fn texts(&self, index: usize, cell: &Cell, currency: &str) -> (String, String) {
        let value = match cell {
            Cell::Number(n) => self.number(*n, currency),
            Cell::Over(n) => format!("more than {}", format::number(*n, 0)),
            Cell::Text(text) => text.clone(),
            Cell::Empty(why) => (*why).to_owned(),
        };
        let difference = self.row.difference(index, self.table.reference).map_or(String::new(), |(d, share)| {
            let shown = self.row.shown_difference(d, self.units);
            if matches!(cell, Cell::Over(_)) {
                return String::new();
            }
            if format::signed(shown, self.row.decimals).chars().all(|c| !('1'..='9').contains(&c)) {
                return "the same".to_owned();
            }
            let amount = match self.row.quantity {
                Quantity::Money => format::money_difference(d, currency),
                Quantity::Power if d > 0.0 => format!("+{}", format::power(d)),
                Quantity::Power => format::power(d),
                _ => format::signed(shown, self.row.decimals),
            };
            match share {
                Some(share) => format!("{amount} ({} %)", format::signed(share * 100.0, 0)),
                None => amount,
            }
        });
        (value, difference)
    }

    fn number(&self, n: f64, currency: &str) -> String {
        match self.row.quantity {
            Quantity::Money => format::money(n, currency),
            Quantity::Power => format::power(n),
            quantity => format::quantity(n, quantity, self.units, Some(self.row.decimals)),
        }
    }
}

fn row_menu(ui: &mut Ui, state: &mut State, table: &Comparison, shown: &[usize], place: usize) {
    let key = |at: usize| shown.get(at).and_then(|i| table.rows.get(*i)).map(|row| (row.group, row.key.to_string()));
    let Some((group, own)) = key(place) else { return };
    let prefs = &mut state.prefs.table;
    if ui.button("Hide this row").clicked() {
        prefs.hidden.push(own.clone());
        ui.close();
    }
    for (text, neighbour) in [("Move up", place.checked_sub(1)), ("Move down", Some(place + 1))] {
        let other = neighbour.and_then(key).filter(|(g, _)| *g == group);
        if ui.add_enabled(other.is_some(), egui::Button::new(text)).clicked()
            && let Some((_, other)) = other
        {
            prefs.order = shown.iter().filter_map(|i| Some(table.rows.get(*i)?.key.to_string())).collect();
            let at = |key: &str| prefs.order.iter().position(|k| k == key);
            if let (Some(a), Some(b)) = (at(&own), at(&other)) {
                prefs.order.swap(a, b);
            }
            ui.close();
        }
    }
}
