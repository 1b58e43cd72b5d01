//! A line of text that ends in "…" where its room ends.

use egui::{Color32, FontId, Galley, Painter, text::LayoutJob, text::TextWrapping};
use std::sync::Arc;

/// The line, cut to a width.
pub fn cut(painter: &Painter, text: &str, font: FontId, colour: Color32, width: f32) -> Arc<Galley> {
    let mut job = LayoutJob::simple_singleline(text.to_owned(), font, colour);
    job.wrap = TextWrapping::truncate_at_width(width);
    painter.layout_job(job)
}
