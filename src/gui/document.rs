//! The open study: what is being edited, where it is kept, and whether it was saved.

use super::engine::fingerprint;
use super::history::{Edits, History};
use super::palette;
use crate::model::{Scenario, Study};
use std::path::{Path, PathBuf};

/// A name for a scenario that survives moving and renaming.
pub type ScenarioId = u64;

/// What the window knows of a scenario beside its content.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tag {
    /// Identity.
    pub id: ScenarioId,
    /// Slot of its mark: shape and colour.
    pub mark: usize,
}

/// A study in hand, with the chosen scenario.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// The study.
    pub study: Study,
    /// One tag per scenario, in the same order.
    pub tags: Vec<Tag>,
    /// Index of the chosen scenario.
    pub selected: usize,
    next_id: ScenarioId,
}

impl Draft {
    /// A draft of a study, with the first scenario chosen.
    #[must_use]
    pub fn new(study: Study) -> Self {
        let mut draft = Self { tags: Vec::new(), selected: 0, next_id: 0, study };
        if draft.study.scenarios.is_empty() {
            draft.study.scenarios.push(Scenario::default());
        }
        draft.study.reference = draft.study.reference.min(draft.study.scenarios.len() - 1);
        for _ in 0..draft.study.scenarios.len() {
            let tag = draft.fresh_tag();
            draft.tags.push(tag);
        }
        draft
    }

    fn fresh_tag(&mut self) -> Tag {
        let used = |slot: &usize| self.tags.iter().any(|tag| tag.mark == *slot);
        let mark = (0..palette::MARKS).find(|slot| !used(slot)).unwrap_or(self.tags.len() % palette::MARKS);
        self.next_id += 1;
        Tag { id: self.next_id, mark }
    }

    /// Index of the chosen scenario, always valid.
    #[must_use]
    pub fn selected(&self) -> usize {
        self.selected.min(self.study.scenarios.len().saturating_sub(1))
    }

    /// The chosen scenario.
    #[must_use]
    pub fn scenario(&self) -> Option<&Scenario> {
        self.study.scenarios.get(self.selected())
    }

    /// Puts a scenario behind the place `at` and chooses it.
    pub fn insert(&mut self, at: usize, mut scenario: Scenario) {
        scenario.name = self.free_name(&scenario.name);
        let tag = self.fresh_tag();
        let place = at.min(self.study.scenarios.len());
        self.study.scenarios.insert(place, scenario);
        self.tags.insert(place, tag);
        if self.study.reference >= place && self.study.scenarios.len() > 1 {
            self.study.reference += 1;
        }
        self.selected = place;
    }

    /// Copies a scenario beside itself and chooses the copy.
    pub fn duplicate(&mut self, at: usize) {
        if let Some(scenario) = self.study.scenarios.get(at).cloned() {
            self.insert(at + 1, scenario);
        }
    }

    /// Takes a scenario out; the last one stays.
    pub fn remove(&mut self, at: usize) {
        if self.study.scenarios.len() < 2 || at >= self.study.scenarios.len() {
            return;
        }
        self.study.scenarios.remove(at);
        self.tags.remove(at);
        if self.study.reference > at {
            self.study.reference -= 1;
        }
        let last = self.study.scenarios.len() - 1;
        self.study.reference = self.study.reference.min(last);
        if self.selected > at {
            self.selected -= 1;
        }
        self.selected = self.selected.min(last);
    }

    /// Moves a scenario to another place; reference and choice follow.
    pub fn shift(&mut self, from: usize, to: usize) {
        if from == to || from >= self.tags.len() || to >= self.tags.len() {
            return;
        }
        let moved = |index: usize| match index {
            i if i == from => to,
            i if from < i && i <= to => i - 1,
            i if to <= i && i < from => i + 1,
            i => i,
        };
        let scenario = self.study.scenarios.remove(from);
        self.study.scenarios.insert(to, scenario);
        let tag = self.tags.remove(from);
        self.tags.insert(to, tag);
        self.study.reference = moved(self.study.reference);
        self.selected = moved(self.selected);
    }

    /// A name that no scenario has: "Tent 2" beside "Tent".
    #[must_use]
    pub fn free_name(&self, wanted: &str) -> String {
        let taken = |name: &str| self.study.scenarios.iter().any(|s| s.name == name);
        if !taken(wanted) {
            return wanted.to_owned();
        }
        let stem = wanted.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
        (2..).map(|n| format!("{stem} {n}")).find(|name| !taken(name)).unwrap_or_default()
    }
}

/// The open study with its history and its file.
#[derive(Debug)]
pub struct Document {
    /// What is being edited.
    pub draft: Draft,
    /// Undo and redo.
    pub history: History,
    /// Where it is kept; none before the first save.
    pub path: Option<PathBuf>,
    /// Grows with every change.
    pub revision: u64,
    /// Fingerprint of its file when it was last read or written; empty without one.
    pub on_disk: String,
    saved: Study,
}

impl Document {
    /// Opens a study; `path` is where it will be saved.
    #[must_use]
    pub fn new(study: Study, path: Option<PathBuf>) -> Self {
        let draft = Draft::new(study);
        let on_disk = path.as_deref().map(fingerprint).unwrap_or_default();
        Self { saved: draft.study.clone(), draft, history: History::default(), path, revision: 1, on_disk }
    }

    /// Goes on with changes to a file that were never saved; `saved` is what the file holds, if it can be read.
    #[must_use]
    pub fn recovered(study: Study, path: Option<PathBuf>, saved: Option<Study>) -> Self {
        Self { saved: saved.unwrap_or_default(), ..Self::new(study, path) }
    }

    /// Whether its file holds something else than what was last read or written here.
    #[must_use]
    pub fn changed_elsewhere(&self, path: &Path) -> bool {
        self.path.as_deref() == Some(path) && path.exists() && fingerprint(path) != self.on_disk
    }

    /// Whether the study differs from what was last opened or saved.
    #[must_use]
    pub fn changed_since_save(&self) -> bool {
        self.draft.study != self.saved
    }

    /// Notes that the study now lies in a file.
    pub fn mark_saved(&mut self, study: Study, path: PathBuf) {
        self.saved = study;
        self.on_disk = fingerprint(&path);
        self.path = Some(path);
    }

    /// Takes in what a frame changed; `busy` while a drag or typing goes on.
    pub fn settle(&mut self, before: Draft, edits: Edits, busy: bool) {
        if self.draft.study != before.study {
            self.history.record(before, edits);
            self.revision += 1;
        } else if self.draft != before {
            self.revision += 1;
        }
        if !busy {
            self.history.close_step();
        }
    }

    /// Takes the last step back and gives its name.
    pub fn undo(&mut self) -> Option<String> {
        self.revision += 1;
        self.history.undo(&mut self.draft)
    }

    /// Makes the last step taken back again and gives its name.
    pub fn redo(&mut self) -> Option<String> {
        self.revision += 1;
        self.history.redo(&mut self.draft)
    }

    /// Name for the title bar.
    #[must_use]
    pub fn name(&self) -> String {
        if let Some(name) = self.path.as_ref().and_then(|p| p.file_name()) {
            return name.to_string_lossy().into_owned();
        }
        let title = self.draft.study.title.trim();
        if title.is_empty() { "New study".to_owned() } else { title.to_owned() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn draft(names: &[&str]) -> Draft {
        let scenarios = names.iter().map(|n| Scenario { name: (*n).to_owned(), ..Scenario::default() }).collect();
        Draft::new(Study { scenarios, ..Study::default() })
    }

    fn names(draft: &Draft) -> Vec<&str> {
        draft.study.scenarios.iter().map(|s| s.name.as_str()).collect()
    }

    #[test]
    fn reference_and_choice_follow_moves() {
        let mut d = draft(&["a", "b", "c", "d"]);
        d.study.reference = 1;
        d.selected = 3;
        let tag = d.tags[3];
        d.shift(3, 0);
        assert_eq!(names(&d), ["d", "a", "b", "c"]);
        assert_eq!((d.study.reference, d.selected, d.tags[0]), (2, 0, tag));
        d.remove(1);
        assert_eq!(names(&d), ["d", "b", "c"]);
        assert_eq!((d.study.reference, d.selected), (1, 0));
    }

    #[test]
    fn a_copy_has_its_own_name_and_mark_and_the_last_scenario_stays() {
        let mut d = draft(&["Tent"]);
        d.duplicate(0);
        d.duplicate(0);
        assert_eq!(names(&d), ["Tent", "Tent 3", "Tent 2"]);
        assert_eq!(d.study.reference, 0);
        let marks: std::collections::BTreeSet<_> = d.tags.iter().map(|t| t.mark).collect();
        assert_eq!(marks.len(), 3);
        for _ in 0..5 {
            d.remove(0);
        }
        assert_eq!(names(&d).len(), 1);
    }
}
