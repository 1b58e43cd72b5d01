//! "How we know": every figure that was held against something outside the program, as the tests wrote it.

use super::theme::{BODY, HEADING, SMALL, semibold, tokens};
use egui::{RichText, Ui};
use serde::Deserialize;
use std::sync::LazyLock;

/// A group of figures.
#[derive(Deserialize)]
struct Group {
    title: String,
    rows: Vec<Row>,
}

/// One figure: a case, what its source says, what the program computes.
#[derive(Deserialize)]
struct Row {
    what: String,
    source: String,
    expected: String,
    got: String,
    difference: String,
    tolerance: String,
}

static GROUPS: LazyLock<Vec<Group>> =
    LazyLock::new(|| ron::from_str(include_str!("../../assets/proof/figures.ron")).unwrap_or_default());

/// Widths of the columns, as shares.
const SHARES: [f32; 4] = [0.55, 0.17, 0.16, 0.12];

/// The page; only the rows in sight are laid out.
pub fn evidence_ui(ui: &mut Ui) {
    let t = tokens(ui);
    ui.label(RichText::new("How we know").font(semibold(HEADING)));
    let figures: usize = GROUPS.iter().map(|group| group.rows.len()).sum();
    ui.label(
        RichText::new(format!(
            "{figures} figures from standards, handbooks, worked examples and measurements, beside what this program \
             computes for the same case. Hover a line for its source."
        ))
        .color(t.soft),
    );
    ui.add_space(8.0);
    line_ui(ui, ["Case", "Expected", "Warmfold", "Difference"], true);
    ui.separator();
    let lines: Vec<Line> = GROUPS
        .iter()
        .flat_map(|group| std::iter::once(Line::Title(&group.title)).chain(group.rows.iter().map(Line::Figure)))
        .collect();
    let height = ui.spacing().interact_size.y.max(22.0);
    egui::ScrollArea::vertical().max_height(460.0).auto_shrink([false, true]).show_rows(
        ui,
        height,
        lines.len(),
        |ui, range| {
            for line in lines.get(range).unwrap_or_default() {
                match line {
                    Line::Title(title) => {
                        ui.set_min_height(height);
                        ui.label(RichText::new(*title).font(semibold(BODY)));
                    }
                    Line::Figure(row) => {
                        let cells = [&row.what, &row.expected, &row.got, &row.difference].map(String::as_str);
                        let hover = format!("{}\nSource: {}\nTolerance: {}", row.what, row.source, row.tolerance);
                        line_ui(ui, cells, false).on_hover_text(hover);
                    }
                }
            }
        },
    );
}

enum Line<'a> {
    Title(&'a str),
    Figure(&'a Row),
}

fn line_ui(ui: &mut Ui, cells: [&str; 4], head: bool) -> egui::Response {
    let t = tokens(ui);
    let width = ui.available_width() - 24.0;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 8.0;
        for (column, (cell, share)) in cells.into_iter().zip(SHARES).enumerate() {
            let colour = if head || column == 3 { t.soft } else { t.ink };
            let label = egui::Label::new(RichText::new(cell).size(SMALL).color(colour)).truncate();
            let align = if column == 0 { egui::Align::Min } else { egui::Align::Max };
            let layout = egui::Layout::top_down(align);
            let size = egui::vec2(width * share - 8.0, 20.0);
            ui.allocate_ui_with_layout(size, layout, |ui| {
                ui.set_width(size.x);
                ui.add(label);
            });
        }
    })
    .response
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_page_can_be_read() {
        assert!(super::GROUPS.iter().all(|group| !group.title.is_empty() && !group.rows.is_empty()));
        assert!(!super::GROUPS.is_empty(), "the asset is empty or cannot be read");
    }
}
