//! What the lines of a plot stand for, in one row above it.

use crate::gui::theme::{SMALL, regular, tokens};
use egui::{Color32, Sense, Stroke, Ui, pos2, vec2};

/// How an entry is drawn.
#[derive(Debug, Clone, Copy)]
pub enum Sample {
    /// A plain line.
    Line,
    /// A dashed line.
    Dashed,
}

/// One entry.
pub fn entry(ui: &mut Ui, sample: Sample, colour: Color32, name: &str, most: f32) -> egui::Response {
    let t = tokens(ui);
    let mut job = egui::text::LayoutJob::simple_singleline(name.to_owned(), regular(SMALL), t.ink);
    job.wrap = egui::text::TextWrapping::truncate_at_width(most);
    let galley = ui.painter().layout_job(job);
    let gap = 26.0;
    let (rect, response) = ui.allocate_exact_size(vec2(gap + galley.size().x + 6.0, 18.0), Sense::hover());
    let (left, middle) = (rect.left(), rect.center().y);
    match sample {
        Sample::Line => {
            ui.painter().hline(left..=left + 20.0, middle, Stroke::new(2.0, colour));
        }
        Sample::Dashed => {
            for x in [0.0, 8.0, 16.0] {
                ui.painter().hline(left + x..=left + x + 5.0, middle, Stroke::new(1.6, colour));
            }
        }
    }
    ui.painter().galley(pos2(left + gap, middle - galley.size().y / 2.0), galley, t.ink);
    response
}
