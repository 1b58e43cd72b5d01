//! Named undo and redo. A step keeps the draft from before it, so undoing is exact by construction.

use super::document::Draft;

/// Most steps kept.
const DEPTH: usize = 200;

/// One step.
#[derive(Debug, Clone)]
struct Step {
    name: String,
    other_side: Draft,
}

/// What the widgets of one frame changed.
#[derive(Debug, Default)]
pub struct Edits {
    noted: Option<(String, egui::Id)>,
    shared: Option<String>,
}

impl Edits {
    /// Notes a change: its name ("tent height") and the field that made it.
    pub fn note(&mut self, name: impl Into<String>, field: egui::Id) {
        self.noted = Some((name.into(), field));
    }

    /// Asks that all scenarios get the value at a place of the file, "scenarios[1].tent.height_m".
    pub fn share(&mut self, place: String) {
        self.shared = Some(place);
    }

    /// The place whose value all scenarios are to get.
    pub fn take_shared(&mut self) -> Option<String> {
        self.shared.take()
    }

    /// Says in the name of the step that it reached all scenarios.
    pub fn reached_all(&mut self) {
        if let Some((name, _)) = &mut self.noted {
            name.push_str(" in all scenarios");
        }
    }
}

/// Steps back and forth.
#[derive(Debug, Default)]
pub struct History {
    undo: Vec<Step>,
    redo: Vec<Step>,
    /// Field whose drag or typing is still going on: further changes join its step.
    open: Option<egui::Id>,
}

impl History {
    /// Records that the draft changed. `before` is the draft at the beginning of the frame.
    pub fn record(&mut self, before: Draft, edits: Edits) {
        let (name, field) = edits.noted.unwrap_or_else(|| ("change".to_owned(), egui::Id::NULL));
        self.redo.clear();
        if self.open == Some(field) && !self.undo.is_empty() {
            return;
        }
        self.undo.push(Step { name, other_side: before });
        if self.undo.len() > DEPTH {
            self.undo.remove(0);
        }
        self.open = Some(field);
    }

    /// Ends the step in hand: the next change begins its own.
    pub fn close_step(&mut self) {
        self.open = None;
    }

    /// Name of the step that undo takes back.
    #[must_use]
    pub fn undo_name(&self) -> Option<&str> {
        self.undo.last().map(|step| step.name.as_str())
    }

    /// Name of the step that redo makes again.
    #[must_use]
    pub fn redo_name(&self) -> Option<&str> {
        self.redo.last().map(|step| step.name.as_str())
    }

    /// Takes the last step back.
    pub fn undo(&mut self, draft: &mut Draft) -> Option<String> {
        self.open = None;
        swap(&mut self.undo, &mut self.redo, draft)
    }

    /// Makes the last step taken back again.
    pub fn redo(&mut self, draft: &mut Draft) -> Option<String> {
        self.open = None;
        swap(&mut self.redo, &mut self.undo, draft)
    }
}

fn swap(from: &mut Vec<Step>, to: &mut Vec<Step>, draft: &mut Draft) -> Option<String> {
    let step = from.pop()?;
    let now = std::mem::replace(draft, step.other_side);
    to.push(Step { name: step.name.clone(), other_side: now });
    Some(step.name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Study;

    fn named(draft: &Draft, title: &str) -> Draft {
        let mut next = draft.clone();
        next.study.title = title.to_owned();
        next
    }

    fn edits(name: &str, field: &str) -> Edits {
        let mut edits = Edits::default();
        edits.note(name, egui::Id::unique(field));
        edits
    }

    #[test]
    fn a_drag_is_one_step_and_every_step_goes_both_ways() {
        let mut history = History::default();
        let start = Draft::new(Study::default());
        let mut draft = start.clone();
        for title in ["a", "ab", "abc"] {
            let before = std::mem::replace(&mut draft, named(&start, title));
            history.record(before, edits("title", "title"));
        }
        history.close_step();
        let before = std::mem::replace(&mut draft, named(&start, "abcd"));
        history.record(before, edits("title", "title"));
        let end = draft.clone();
        assert_eq!(history.undo_name(), Some("title"));
        history.undo(&mut draft);
        assert_eq!(draft.study.title, "abc");
        history.undo(&mut draft);
        assert_eq!(draft, start);
        assert!(history.undo(&mut draft).is_none());
        history.redo(&mut draft);
        history.redo(&mut draft);
        assert_eq!(draft, end);
    }
}
