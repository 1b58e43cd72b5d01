//! Every action of the menus: a closed list with text and shortcut.

use egui::{Key, KeyboardShortcut, Modifiers};

/// An action.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// An empty study.
    New,
    /// The demo study.
    OpenDemo,
    /// A study from a file.
    Open,
    /// To the study's file.
    Save,
    /// To another file.
    SaveAs,
    /// The printable report.
    ExportReport,
    /// A picture of the view.
    SavePicture,
    /// Leave.
    Quit,
    /// One step back.
    Undo,
    /// One step forward again.
    Redo,
    /// A scenario with default values.
    AddScenario,
    /// A copy of the chosen scenario.
    DuplicateScenario,
    /// The chosen scenario as text, for another study.
    CopyScenario,
    /// Scenarios from text.
    PasteScenario,
    /// Take the chosen scenario out.
    DeleteScenario,
    /// Compare the others with the chosen scenario.
    MakeReference,
    /// Let each change reach all scenarios, or one again.
    ChangeAll,
    /// Move the chosen scenario up.
    MoveUp,
    /// Move the chosen scenario down.
    MoveDown,
    /// Choose the scenario above.
    PreviousScenario,
    /// Choose the scenario below.
    NextScenario,
    /// °C and metres.
    Metric,
    /// °F and feet.
    Imperial,
    /// Light theme.
    Light,
    /// Dark theme.
    Dark,
    /// The theme of the system.
    SystemTheme,
    /// The view of the whole winter.
    WinterView,
    /// The view of the coldest nights.
    ColdestView,
    /// The view of the scenarios side by side.
    SideView,
    /// The view of air and damp.
    AirView,
    /// The view of the checks.
    ChecksView,
    /// The view of many winters.
    WintersView,
    /// The view of what matters.
    MattersView,
    /// The view of a sweep.
    SweepView,
    /// The view of the best buy.
    BuyView,
    /// Play the coldest spell, or stop it.
    Play,
    /// The user guide.
    Guide,
    /// How the headline figures were worked out.
    Workings,
    /// About this program.
    About,
    /// Cautions.
    Cautions,
    /// Figures from outside.
    Evidence,
    /// List of shortcuts.
    Shortcuts,
}

impl Command {
    /// All of them, in the order of the menus.
    pub const ALL: [Self; 42] = [
        Self::New,
        Self::OpenDemo,
        Self::Open,
        Self::Save,
        Self::SaveAs,
        Self::ExportReport,
        Self::SavePicture,
        Self::Quit,
        Self::Undo,
        Self::Redo,
        Self::AddScenario,
        Self::DuplicateScenario,
        Self::CopyScenario,
        Self::PasteScenario,
        Self::DeleteScenario,
        Self::MakeReference,
        Self::ChangeAll,
        Self::MoveUp,
        Self::MoveDown,
        Self::PreviousScenario,
        Self::NextScenario,
        Self::Metric,
        Self::Imperial,
        Self::Light,
        Self::Dark,
        Self::SystemTheme,
        Self::WinterView,
        Self::ColdestView,
        Self::SideView,
        Self::AirView,
        Self::ChecksView,
        Self::WintersView,
        Self::MattersView,
        Self::SweepView,
        Self::BuyView,
        Self::Play,
        Self::Guide,
        Self::Workings,
        Self::About,
        Self::Cautions,
        Self::Evidence,
        Self::Shortcuts,
    ];

    /// Text in the menu.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Self::New => "New",
            Self::OpenDemo => "Open the demo",
            Self::Open => "Open…",
            Self::Save => "Save",
            Self::SaveAs => "Save as…",
            Self::ExportReport => "Export report…",
            Self::SavePicture => "Save picture of the view…",
            Self::Quit => "Quit",
            Self::Undo => "Undo",
            Self::Redo => "Redo",
            Self::AddScenario => "Add scenario",
            Self::DuplicateScenario => "Duplicate scenario",
            Self::CopyScenario => "Copy scenario as text",
            Self::PasteScenario => "Paste scenario",
            Self::DeleteScenario => "Delete scenario",
            Self::MakeReference => "Compare others with this",
            Self::ChangeAll => "Change all scenarios alike",
            Self::MoveUp => "Move up",
            Self::MoveDown => "Move down",
            Self::PreviousScenario => "Scenario above",
            Self::NextScenario => "Scenario below",
            Self::Metric => "Units °C and metres",
            Self::Imperial => "Units °F and feet",
            Self::Light => "Light",
            Self::Dark => "Dark",
            Self::SystemTheme => "Light or dark as the system",
            Self::WinterView => "Winter",
            Self::ColdestView => "Coldest nights",
            Self::SideView => "Side by side",
            Self::AirView => "Air & damp",
            Self::ChecksView => "Checks",
            Self::WintersView => "Many winters",
            Self::MattersView => "What matters",
            Self::SweepView => "Sweep",
            Self::BuyView => "Best buy",
            Self::Play => "Play the coldest spell",
            Self::Guide => "Guide",
            Self::Workings => "How it was worked out",
            Self::About => "About Warmfold",
            Self::Cautions => "Cautions",
            Self::Evidence => "How we know",
            Self::Shortcuts => "Keyboard",
        }
    }

    /// Its keys, if it has any.
    #[must_use]
    pub fn shortcut(self) -> Option<KeyboardShortcut> {
        let ctrl = Modifiers::COMMAND;
        let alt = Modifiers::ALT;
        let (modifiers, key) = match self {
            Self::New => (ctrl, Key::N),
            Self::Open => (ctrl, Key::O),
            Self::Save => (ctrl, Key::S),
            Self::SaveAs => (ctrl.plus(Modifiers::SHIFT), Key::S),
            Self::ExportReport => (ctrl, Key::P),
            Self::Quit => (ctrl, Key::Q),
            Self::Undo => (ctrl, Key::Z),
            Self::Redo => (ctrl.plus(Modifiers::SHIFT), Key::Z),
            Self::CopyScenario => (ctrl | Modifiers::SHIFT, Key::C),
            Self::DuplicateScenario => (ctrl, Key::D),
            Self::AddScenario => (ctrl.plus(Modifiers::SHIFT), Key::N),
            Self::DeleteScenario => (ctrl, Key::Backspace),
            Self::MakeReference => (ctrl, Key::R),
            Self::ChangeAll => (ctrl, Key::L),
            Self::MoveUp => (alt.plus(Modifiers::SHIFT), Key::ArrowUp),
            Self::MoveDown => (alt.plus(Modifiers::SHIFT), Key::ArrowDown),
            Self::PreviousScenario => (alt, Key::ArrowUp),
            Self::NextScenario => (alt, Key::ArrowDown),
            Self::WinterView => (ctrl, Key::Num1),
            Self::ColdestView => (ctrl, Key::Num2),
            Self::SideView => (ctrl, Key::Num3),
            Self::AirView => (ctrl, Key::Num4),
            Self::ChecksView => (ctrl, Key::Num5),
            Self::WintersView => (ctrl, Key::Num6),
            Self::MattersView => (ctrl, Key::Num7),
            Self::SweepView => (ctrl, Key::Num8),
            Self::BuyView => (ctrl, Key::Num9),
            Self::Metric => (ctrl.plus(Modifiers::SHIFT), Key::M),
            Self::Imperial => (ctrl.plus(Modifiers::SHIFT), Key::I),
            Self::Light => (ctrl.plus(Modifiers::SHIFT), Key::L),
            Self::Dark => (ctrl.plus(Modifiers::SHIFT), Key::D),
            Self::Play => (Modifiers::NONE, Key::F5),
            Self::Guide => (Modifiers::NONE, Key::F1),
            Self::Workings => (Modifiers::NONE, Key::F2),
            Self::Shortcuts => (ctrl, Key::K),
            _ => return None,
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }

    /// The command whose keys were pressed in this frame; longer chords first.
    #[must_use]
    pub fn pressed(ctx: &egui::Context) -> Option<Self> {
        let mut keyed: Vec<_> = Self::ALL.iter().filter_map(|c| c.shortcut().map(|s| (*c, s))).collect();
        keyed.sort_by_key(|(_, s)| std::cmp::Reverse(chord_length(s)));
        let typing = ctx.text_edit_focused();
        keyed
            .into_iter()
            .filter(|(command, _)| !typing || !matches!(command, Self::Undo | Self::Redo | Self::DeleteScenario))
            .find(|(_, shortcut)| ctx.input_mut(|i| i.consume_shortcut(shortcut)))
            .map(|(command, _)| command)
    }
}

fn chord_length(shortcut: &KeyboardShortcut) -> usize {
    let m = shortcut.modifiers;
    usize::from(m.shift) + usize::from(m.alt) + usize::from(m.command)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_commands_share_keys_or_text() {
        for (i, a) in Command::ALL.iter().enumerate() {
            for b in &Command::ALL[i + 1..] {
                assert_ne!(a.text(), b.text());
                if let (Some(x), Some(y)) = (a.shortcut(), b.shortcut()) {
                    assert_ne!(x, y, "{a:?} and {b:?}");
                }
            }
        }
    }
}
