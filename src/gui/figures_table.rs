//! The figures of a plot as a table to read: what a plot shows to the eye, in cells that can be read out.

use super::dialogs::set_width;
use super::state::State;
use super::theme::{HEADING, SMALL, regular, semibold, tokens};
use crate::figures::Figures;
use crate::gui::cut::cut;
use egui::{Align2, Context, Id, Rect, Role, Sense, Stroke, Ui, Vec2, WidgetInfo, pos2, vec2};

/// Height of a row.
const ROW: f32 = 20.0;
/// Room on both sides of a cell's text.
const PAD: f32 = 8.0;
/// Most that a column takes; a longer text ends in "…", and its cell reads it out whole.
const WIDEST: f32 = 220.0;
/// Most of the window's height that the rows take.
const SHARE_OF_HEIGHT: f32 = 0.6;

/// A table on show.
pub struct FiguresTable {
    name: String,
    figures: Figures,
    /// Widths of the columns; none until the table has been drawn once.
    widths: Vec<f32>,
}

impl FiguresTable {
    /// A table under the name of its plot.
    #[must_use]
    pub fn new(name: String, figures: Figures) -> Self {
        Self { name, figures, widths: Vec::new() }
    }
}

/// The dialog, while a table is on show.
pub fn table_ui(ctx: &Context, state: &mut State) {
    let Some(mut table) = state.table.take() else { return };
    let mut close = false;
    let frame = egui::Frame::window(&ctx.global_style());
    let response = egui::Modal::new(Id::unique("figures table")).frame(frame).show(ctx, |ui| {
        if table.widths.is_empty() {
            table.widths = widths(ui, &table.figures);
        }
        let window = ctx.content_rect().size();
        let needed: f32 = table.widths.iter().sum();
        set_width(ui, (needed + 16.0).clamp(320.0, (window.x - 120.0).max(320.0)));
        let title = format!("Figures: {}", table.name);
        ui.label(egui::RichText::new(title).font(semibold(HEADING)));
        ui.add_space(8.0);
        figures_ui(ui, &table, (window.y * SHARE_OF_HEIGHT).max(4.0 * ROW));
        ui.add_space(12.0);
        close = ui.button("Close").clicked();
    });
    if !close && !response.should_close() {
        state.table = Some(table);
    }
}

/// Head and rows; only the rows in sight are laid out.
fn figures_ui(ui: &mut Ui, table: &FiguresTable, height: f32) {
    let (figures, widths) = (&table.figures, &table.widths);
    if figures.rows.is_empty() {
        ui.label("There is nothing to list yet");
        return;
    }
    // The whole height at once: a dialog that grew with every frame would move its button away.
    let height = height.min(ROW * figures.rows.len() as f32);
    ui.spacing_mut().item_spacing = Vec2::ZERO;
    egui::ScrollArea::horizontal().id_salt("columns").auto_shrink([false, true]).show(ui, |ui| {
        ui.set_width(widths.iter().sum());
        row_ui(ui, widths, &figures.head, None);
        let rows = egui::ScrollArea::vertical().id_salt("rows").auto_shrink([false, true]);
        rows.max_height(height).min_scrolled_height(height).show_rows(ui, ROW, figures.rows.len(), |ui, range| {
            for row in figures.rows.get(range).unwrap_or_default() {
                row_ui(ui, widths, row, Some(&figures.head));
            }
        });
    });
}

/// One row; `head` names the columns of a row that is not the head itself.
fn row_ui(ui: &mut Ui, widths: &[f32], cells: &[String], head: Option<&[String]>) {
    let t = tokens(ui);
    let (rect, _) = ui.allocate_exact_size(vec2(widths.iter().sum(), ROW), Sense::hover());
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.hairline));
    let (ink, role) = if head.is_some() { (t.ink, Role::Cell) } else { (t.soft, Role::ColumnHeader) };
    let (row, mut left) = (ui.next_auto_id(), rect.left());
    for (column, (text, width)) in cells.iter().zip(widths).enumerate() {
        let cell = Rect::from_min_size(pos2(left, rect.top()), vec2(*width, ROW));
        left += width;
        let galley = cut(ui.painter(), text, regular(SMALL), ink, width - 2.0 * PAD);
        let at = Align2::RIGHT_CENTER.anchor_size(cell.right_center() - vec2(PAD, 0.0), galley.size());
        let elided = galley.elided;
        ui.painter().galley(at.min, galley, ink);
        let response = ui.interact(cell, row.with(column), Sense::hover());
        let title = head.and_then(|head| head.get(column)).map_or("", String::as_str);
        response.widget_info(|| {
            let said = if title.is_empty() { text.clone() } else { format!("{title}: {text}") };
            WidgetInfo::labeled(role, true, said)
        });
        if elided {
            response.on_hover_text(text);
        }
    }
}

/// Widths that the head and the longest cell of each column ask for.
fn widths(ui: &Ui, figures: &Figures) -> Vec<f32> {
    let columns = figures.head.iter().enumerate().map(|(column, title)| {
        let cells = figures.rows.iter().filter_map(|row| row.get(column)).map(String::as_str);
        let longest = cells.max_by_key(|text| text.chars().count()).unwrap_or_default();
        let wide = |text: &str| ui.painter().layout_no_wrap(text.to_owned(), regular(SMALL), tokens(ui).ink).size().x;
        (wide(title).max(wide(longest)) + 2.0 * PAD + 1.0).min(WIDEST)
    });
    columns.collect()
}
