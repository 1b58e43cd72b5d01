//! Scenarios through the clipboard: as a study of one scenario, which a person can read and any window can take in.

use super::state::State;
use crate::model::{OwnRows, Study};
use crate::storage::{read_study, write_study};

impl State {
    /// Puts the chosen scenario on the clipboard, with the rows of the study's own.
    pub fn copy_scenario(&mut self, ctx: &egui::Context) {
        let Some(scenario) = self.document.draft.scenario().cloned() else { return };
        let study = &self.document.draft.study;
        let name = scenario.name.clone();
        let text = write_study(&Study { scenarios: vec![scenario], reference: 0, ..study.clone() });
        ctx.copy_text(text);
        self.say(ctx, format!("Copied “{name}” as text"), false);
    }

    /// Adds the scenarios of a text behind the chosen one, and the rows of its own that this study lacks.
    pub fn paste_scenarios(&mut self, text: &str, ctx: &egui::Context) {
        let pasted = match read_study(text) {
            Ok(pasted) if !pasted.scenarios.is_empty() => pasted,
            Ok(_) => return self.say(ctx, "The clipboard holds no scenario", false),
            Err(error) => {
                return self.say(ctx, format!("The clipboard holds no scenario: {}", first_line(&error)), false);
            }
        };
        let count = pasted.scenarios.len();
        let draft = &mut self.document.draft;
        add_rows(&mut draft.study.own, pasted.own);
        for scenario in pasted.scenarios {
            let at = (draft.selected() + 1).min(draft.study.scenarios.len());
            draft.insert(at, scenario);
        }
        self.edits.note("paste scenario", egui::Id::unique(("paste", self.document.revision)));
        let text = if count == 1 { "Pasted a scenario".to_owned() } else { format!("Pasted {count} scenarios") };
        self.say(ctx, text, true);
    }
}

fn add_rows(own: &mut OwnRows, more: OwnRows) {
    fn add<T>(rows: &mut Vec<T>, more: Vec<T>, key: impl Fn(&T) -> &str) {
        for row in more {
            if rows.iter().all(|known| key(known) != key(&row)) {
                rows.push(row);
            }
        }
    }
    add(&mut own.sheets, more.sheets, |row| &row.key);
    add(&mut own.screens, more.screens, |row| &row.key);
    add(&mut own.fuels, more.fuels, |row| &row.key);
}

fn first_line(error: &dyn std::fmt::Display) -> String {
    error.to_string().lines().next().unwrap_or_default().to_owned()
}
