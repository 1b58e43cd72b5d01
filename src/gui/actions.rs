//! What each command does.

use super::command::Command;
use super::document::Draft;
use super::drawing::Playback;
use super::editor::Section;
use super::filing::{Ask, Next};
use super::prefs::ThemeChoice;
use super::state::{Leaflet, State, View};
use crate::model::Scenario;
use crate::units::UnitSystem;
use crate::working::Topic;

impl State {
    /// Whether a command can be given now; if not, why.
    #[must_use]
    pub fn refusal(&self, command: Command) -> Option<&'static str> {
        let draft = &self.document.draft;
        let last = draft.study.scenarios.len().saturating_sub(1);
        match command {
            Command::Undo if self.document.history.undo_name().is_none() => Some("Nothing to undo"),
            Command::Redo if self.document.history.redo_name().is_none() => Some("Nothing to redo"),
            Command::DeleteScenario if last == 0 => Some("A study has at least one scenario"),
            Command::MoveUp | Command::PreviousScenario if draft.selected() == 0 => Some("It is the first scenario"),
            Command::MoveDown | Command::NextScenario if draft.selected() == last => Some("It is the last scenario"),
            Command::Save | Command::SaveAs if self.filing.saving() => Some("It is being written"),
            Command::ExportReport | Command::SavePicture if self.export.is_some() => {
                Some("The last one is still being written")
            }
            Command::ExportReport if (0..=last).any(|i| self.blocked(i)) => {
                Some("Mend what is marked in the editor first")
            }
            Command::Play if !self.view.has_drawing() => Some("This view has no hours to play"),
            Command::Play if self.chosen_season().is_none_or(|(season, _)| season.is_empty()) => {
                Some("There is no season to play yet")
            }
            Command::ChangeAll if last == 0 => Some("There is one scenario only"),
            Command::MakeReference if draft.study.reference == draft.selected() => Some("It is the reference already"),
            _ => None,
        }
    }

    /// Text of a command in the menu, with the name of the step for undo and redo.
    #[must_use]
    pub fn command_text(&self, command: Command) -> String {
        let step = match command {
            Command::Undo => self.document.history.undo_name(),
            Command::Redo => self.document.history.redo_name(),
            _ => None,
        };
        step.map_or_else(|| command.text().to_owned(), |step| format!("{} {step}", command.text()))
    }

    /// Commands that change the scenarios; they become undo steps.
    pub fn edit_by(&mut self, command: Command, ctx: &egui::Context) {
        if self.refusal(command).is_some() {
            return;
        }
        let draft = &mut self.document.draft;
        let at = draft.selected();
        let id = egui::Id::unique(("command", self.document.revision));
        let name = match command {
            Command::AddScenario => {
                draft.insert(
                    draft.study.scenarios.len(),
                    Scenario { name: "New scenario".to_owned(), ..Scenario::default() },
                );
                self.renaming = draft.tags.last().map(|tag| tag.id);
                "add scenario"
            }
            Command::DuplicateScenario => {
                draft.duplicate(at);
                "duplicate scenario"
            }
            Command::DeleteScenario => {
                let gone = draft.scenario().map(|s| s.name.clone()).unwrap_or_default();
                draft.remove(at);
                self.say(ctx, format!("Deleted “{gone}”"), true);
                "delete scenario"
            }
            Command::MakeReference => {
                draft.study.reference = at;
                "reference scenario"
            }
            Command::MoveUp => {
                draft.shift(at, at - 1);
                "order of scenarios"
            }
            Command::MoveDown => {
                draft.shift(at, at + 1);
                "order of scenarios"
            }
            Command::PreviousScenario => {
                draft.selected = at - 1;
                return;
            }
            Command::NextScenario => {
                draft.selected = at + 1;
                return;
            }
            _ => return,
        };
        self.edits.note(name, id);
    }

    /// All other commands.
    pub fn act(&mut self, command: Command, ctx: &egui::Context) {
        if self.refusal(command).is_some() {
            return;
        }
        match command {
            Command::New => self.begin(Next::New, ctx),
            Command::OpenDemo => self.begin(Next::Demo, ctx),
            Command::Open => self.begin(Next::Choose, ctx),
            Command::Save => self.save(None, ctx),
            Command::SaveAs => self.ask_path(Ask::Save, ctx),
            Command::ExportReport => self.ask_path(Ask::Report, ctx),
            Command::SavePicture => self.ask_path(Ask::Picture, ctx),
            Command::Quit => self.begin(Next::Quit, ctx),
            Command::Undo => {
                let before = self.document.draft.clone();
                if let Some(step) = self.document.undo() {
                    self.bring_forward(&before);
                    self.say(ctx, format!("Undone: {step}"), false);
                }
            }
            Command::Redo => {
                let before = self.document.draft.clone();
                if let Some(step) = self.document.redo() {
                    self.bring_forward(&before);
                    self.say(ctx, format!("Done again: {step}"), false);
                }
            }
            Command::Play => {
                self.playback = match self.playback {
                    Some(_) => None,
                    None => {
                        let now_s = ctx.input(|i| i.time);
                        self.chosen_season().map(|(season, _)| Playback::coldest(season, now_s))
                    }
                }
            }
            Command::ChangeAll => self.to_all = !self.to_all,
            Command::CopyScenario => self.copy_scenario(ctx),
            Command::PasteScenario => ctx.send_viewport_cmd(egui::ViewportCommand::RequestPaste),
            Command::Metric => self.prefs.units = UnitSystem::Metric,
            Command::Imperial => self.prefs.units = UnitSystem::Imperial,
            Command::Light => self.choose_theme(ThemeChoice::Light, ctx),
            Command::Dark => self.choose_theme(ThemeChoice::Dark, ctx),
            Command::SystemTheme => self.choose_theme(ThemeChoice::System, ctx),
            Command::WinterView => self.view = View::Winter,
            Command::ColdestView => self.view = View::Coldest,
            Command::SideView => self.view = View::Side,
            Command::AirView => self.view = View::Air,
            Command::ChecksView => self.view = View::Checks,
            Command::WintersView => self.view = View::Winters,
            Command::MattersView => self.view = View::Matters,
            Command::SweepView => self.view = View::Sweep,
            Command::BuyView => self.view = View::Buy,
            Command::Guide => self.leaflet = Some(Leaflet::Guide),
            Command::Workings => {
                let open = self.workings.topic.is_some();
                self.workings.topic = (!open).then_some(Topic::Cost);
            }
            Command::About => self.leaflet = Some(Leaflet::About),
            Command::Cautions => self.leaflet = Some(Leaflet::Cautions),
            Command::Evidence => self.leaflet = Some(Leaflet::Evidence),
            Command::Shortcuts => self.leaflet = Some(Leaflet::Shortcuts),
            _ => {}
        }
    }

    /// Shows a scenario in the plots or hides it, as one step; `by` is the control that was used.
    pub fn toggle_shown(&mut self, index: usize, by: egui::Id) {
        if let Some(scenario) = self.document.draft.study.scenarios.get_mut(index) {
            scenario.shown = !scenario.shown;
            self.edits.note(if scenario.shown { "show scenario" } else { "hide scenario" }, by);
        }
    }

    /// Opens the section of the editor that differs from before, so that an undone step is seen.
    fn bring_forward(&mut self, before: &Draft) {
        let draft = &self.document.draft;
        let at = draft.selected();
        let tag = draft.tags.get(at).map(|tag| tag.id);
        let was = before.tags.iter().position(|old| Some(old.id) == tag).and_then(|i| before.study.scenarios.get(i));
        if let (Some(was), Some(now)) = (was, draft.study.scenarios.get(at)) {
            self.sought = Section::OF_SCENARIO.into_iter().find(|section| section.differs(was, now));
        }
        self.site_sought = before.study.site != draft.study.site;
    }

    fn choose_theme(&mut self, theme: ThemeChoice, ctx: &egui::Context) {
        self.prefs.theme = theme;
        ctx.set_theme(theme.preference());
    }
}
