//! Changes that go to all scenarios at once.

use super::document::Draft;
use super::history::Edits;
use super::state::State;
use crate::model::carry::{carried, shared};

impl State {
    /// Makes what was changed in one scenario in the others too, where that was asked for.
    pub fn carry_changes(&mut self, before: &Draft, edits: &mut Edits) {
        let draft = &mut self.document.draft;
        if draft.tags != before.tags {
            return;
        }
        if let Some(place) = edits.take_shared() {
            share(draft, &place, edits);
        } else if self.to_all {
            carry(draft, before, edits);
        }
    }
}

fn carry(draft: &mut Draft, before: &Draft, edits: &mut Edits) {
    let scenarios = &mut draft.study.scenarios;
    let changed = scenarios.iter().zip(&before.study.scenarios).position(|(now, then)| now != then);
    let Some((after, then)) =
        changed.and_then(|at| Some((scenarios.get(at)?.clone(), before.study.scenarios.get(at)?)))
    else {
        return;
    };
    let mut reached = false;
    for (at, other) in scenarios.iter_mut().enumerate().filter(|(at, _)| Some(*at) != changed) {
        let Some(new) = carried(then, &after, other) else { continue };
        reached |= before.study.scenarios.get(at) != Some(&new);
        *other = new;
    }
    if reached {
        edits.reached_all();
    }
}

/// `place` names the scenario and the value in it: "scenarios[1].tent.height_m".
fn share(draft: &mut Draft, place: &str, edits: &mut Edits) {
    let Some((scenario, value)) = place.split_once('.') else { return };
    let Some(at) = scenario.strip_prefix("scenarios[").and_then(|s| s.strip_suffix(']')?.parse::<usize>().ok()) else {
        return;
    };
    let Some(from) = draft.study.scenarios.get(at).cloned() else { return };
    for other in &mut draft.study.scenarios {
        if let Some(new) = shared(value, &from, other) {
            *other = new;
        }
    }
    edits.reached_all();
}
