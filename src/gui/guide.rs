//! The user guide: two pages of a small part of Markdown, shown as a leaflet.

use super::theme::{BODY, HEADING, Tokens, regular, semibold, tokens};
use egui::text::{LayoutJob, TextFormat};
use egui::{Label, RichText, ScrollArea, Ui};

/// The guide as it is kept.
pub const GUIDE: &str = include_str!("../../assets/guide.md");

/// A line of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Block<'a> {
    Title(&'a str),
    Heading(&'a str),
    Item(&'a str),
    Text(&'a str),
}

/// A stretch of text of one kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Span<'a> {
    Plain(&'a str),
    /// `**…**`: an entry of a menu.
    Strong(&'a str),
    /// `` `…` ``: keys.
    Keys(&'a str),
}

fn blocks(text: &str) -> impl Iterator<Item = Block<'_>> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).map(|line| {
        let after = |mark| line.strip_prefix(mark);
        after("## ")
            .map(Block::Heading)
            .or_else(|| after("# ").map(Block::Title))
            .or_else(|| after("- ").map(Block::Item))
            .unwrap_or(Block::Text(line))
    })
}

fn spans(text: &str) -> Vec<Span<'_>> {
    let mut spans = Vec::new();
    for (index, part) in text.split("**").enumerate() {
        if index % 2 == 1 {
            spans.push(Span::Strong(part));
            continue;
        }
        for (index, part) in part.split('`').enumerate() {
            spans.push(if index % 2 == 1 { Span::Keys(part) } else { Span::Plain(part) });
        }
    }
    spans.retain(|span| !matches!(span, Span::Plain("")));
    spans
}

/// The leaflet.
pub fn guide_ui(ui: &mut Ui) {
    let t = tokens(ui);
    let height = (ui.ctx().content_rect().height() - 180.0).clamp(240.0, 900.0);
    let area = ScrollArea::vertical().max_height(height).min_scrolled_height(height).auto_shrink([false, true]);
    area.show(ui, |ui| {
        // The scroll bar floats over the rightmost points.
        ui.set_max_width(ui.available_width() - 12.0);
        ui.spacing_mut().item_spacing.y = 5.0;
        for block in blocks(GUIDE) {
            match block {
                Block::Title(text) => {
                    ui.label(RichText::new(text).font(semibold(HEADING + 3.0)));
                }
                Block::Heading(text) => {
                    ui.add_space(6.0);
                    ui.label(RichText::new(text).font(semibold(HEADING - 1.0)));
                }
                Block::Text(text) => {
                    ui.label(job(text, &t));
                }
                Block::Item(text) => {
                    ui.horizontal_top(|ui| {
                        ui.label(RichText::new("•").color(t.accent));
                        ui.add(Label::new(job(text, &t)).wrap());
                    });
                }
            }
        }
    });
}

fn job(text: &str, t: &Tokens) -> LayoutJob {
    let mut job = LayoutJob::default();
    for span in spans(text) {
        let (text, font, color) = match span {
            Span::Plain(text) => (text, regular(BODY), t.ink),
            Span::Strong(text) => (text, semibold(BODY), t.ink),
            Span::Keys(text) => (text, semibold(BODY), t.accent),
        };
        job.append(text, 0.0, TextFormat { font_id: font, color, ..TextFormat::default() });
    }
    job
}

#[cfg(test)]
mod tests {
    use super::super::command::Command;
    use super::*;

    #[test]
    fn every_entry_and_every_key_that_the_guide_names_exists() {
        let ctx = egui::Context::default();
        let keys: Vec<String> =
            Command::ALL.iter().filter_map(|c| c.shortcut()).map(|s| ctx.format_shortcut(&s)).collect();
        let mut named = 0;
        for block in blocks(GUIDE) {
            let (Block::Title(text) | Block::Heading(text) | Block::Item(text) | Block::Text(text)) = block;
            assert!(text.matches("**").count() % 2 == 0 && text.matches('`').count() % 2 == 0, "{text}");
            for span in spans(text) {
                match span {
                    Span::Strong(entry) => assert!(Command::ALL.iter().any(|c| c.text() == entry), "{entry}"),
                    Span::Keys(pressed) => assert!(keys.iter().any(|k| k == pressed), "{pressed} of {keys:?}"),
                    Span::Plain(_) => continue,
                }
                named += 1;
            }
        }
        assert!(named > 20, "{named}");
    }

    #[test]
    fn keys_stand_beside_the_entry_that_they_belong_to() {
        // "**Entry** (`Keys`)" is how the guide writes both.
        let ctx = egui::Context::default();
        for block in blocks(GUIDE) {
            let (Block::Title(text) | Block::Heading(text) | Block::Item(text) | Block::Text(text)) = block;
            for three in spans(text).windows(3) {
                if let [Span::Strong(entry), Span::Plain(" ("), Span::Keys(pressed)] = three {
                    let command = Command::ALL.into_iter().find(|c| c.text() == *entry);
                    let keys = command.and_then(Command::shortcut).map(|s| ctx.format_shortcut(&s));
                    assert_eq!(keys.as_deref(), Some(*pressed), "{entry}");
                }
            }
        }
    }

    #[test]
    fn it_fits_two_pages() {
        // A page of A4 at 10 points holds about 65 lines of 95 letters (common practice of a plain print).
        let lines: usize = blocks(GUIDE)
            .map(|block| match block {
                Block::Title(_) | Block::Heading(_) => 2,
                Block::Item(text) | Block::Text(text) => text.chars().count().div_ceil(95),
            })
            .sum();
        assert!(lines <= 2 * 65, "{lines}");
    }
}
