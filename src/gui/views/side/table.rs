//! The table: groups of rows, a column per scenario, the best of each row marked.

use super::texts::{RowTexts, Texts};
use crate::compare::{Comparison, Group};
use crate::gui::cut::cut;
use crate::gui::marks;
use crate::gui::palette;
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, Tokens, regular, semibold, tokens};
use egui::{Align2, Popup, Rect, Sense, SetOpenCommand, Stroke, Ui, pos2, vec2};

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

/// Everything below the head.
pub fn rows_ui(ui: &mut Ui, state: &mut State, texts: &Texts, widths: Widths) {
    let t = tokens(ui);
    let mut group = None;
    for (place, line) in texts.rows.iter().enumerate() {
        let Some(row) = texts.table.rows.get(line.row) else { continue };
        if group != Some(row.group) {
            group = Some(row.group);
            heading_ui(ui, row.group, widths.whole, &t);
        }
        let response = line_ui(ui, &row.title(state.prefs.units), line, widths, &t);
        response.context_menu(|ui| row_menu(ui, state, texts, place));
        // Enter opens the same menu below the row.
        let by_keys = response.clicked() && !ui.input(|i| i.pointer.any_released());
        let below = Popup::menu(&response).id(response.id.with("by keys"));
        below.open_memory(by_keys.then_some(SetOpenCommand::Bool(true))).show(|ui| row_menu(ui, state, texts, place));
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

/// One row.
fn line_ui(ui: &mut Ui, label: &str, line: &RowTexts, widths: Widths, t: &Tokens) -> egui::Response {
    let (rect, response) = ui.allocate_exact_size(vec2(widths.whole, ROW), Sense::click());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Row, true, &line.said));
    if !ui.is_rect_visible(rect) {
        return response;
    }
    if response.hovered() {
        ui.painter().rect_filled(rect, 0.0, t.raised.gamma_multiply(0.6));
    }
    marks::focus_ring(ui, &response, rect);
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.hairline));
    write(ui, label, Rect::from_min_size(rect.min, vec2(LABEL - 8.0, ROW)), false, t.soft, false);
    for (index, cell) in line.cells.iter().enumerate() {
        let column = cell_rect(rect, index, widths.column).shrink2(vec2(8.0, 2.0));
        let whole = cell.difference.is_empty();
        let upper = if whole { column } else { column.with_max_y(column.top() + 19.0) };
        let left = write(ui, &cell.value, upper, true, if cell.empty { t.soft } else { t.ink }, cell.best);
        if cell.best {
            marks::paint_best(ui.painter(), pos2(left - 10.0, upper.center().y), t.accent);
        }
        if !whole {
            let lower = column.with_min_y(column.top() + 18.0);
            let at = pos2(lower.right(), lower.center().y);
            ui.painter().text(at, Align2::RIGHT_CENTER, &cell.difference, regular(SMALL - 1.0), t.soft);
        }
    }
    response.on_hover_text(label)
}

/// Writes a text into a cell, cut where it is too long; gives its left end.
fn write(ui: &Ui, text: &str, cell: Rect, right: bool, ink: egui::Color32, bold: bool) -> f32 {
    let font = if bold { semibold(BODY) } else { regular(BODY - 0.5) };
    let galley = cut(ui.painter(), text, font, ink, cell.width());
    let left = if right { cell.right() - galley.size().x } else { cell.left() };
    ui.painter().galley(pos2(left, cell.center().y - galley.size().y / 2.0), galley, ink);
    left
}

fn row_menu(ui: &mut Ui, state: &mut State, texts: &Texts, place: usize) {
    let row = |line: &RowTexts| texts.table.rows.get(line.row).map(|row| (row.group, row.key.to_string()));
    let key = |at: usize| texts.rows.get(at).and_then(row);
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
            prefs.order = texts.rows.iter().filter_map(row).map(|(_, key)| key).collect();
            let at = |key: &str| prefs.order.iter().position(|k| k == key);
            if let (Some(a), Some(b)) = (at(&own), at(&other)) {
                prefs.order.swap(a, b);
            }
            ui.close();
        }
    }
}
