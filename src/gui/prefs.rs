//! What the window remembers between starts: preferences only, never a study.

use crate::units::UnitSystem;
use std::path::{Path, PathBuf};

/// Most files kept in the list of recent ones.
const RECENT: usize = 8;

/// Light, dark, or as the system.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
pub enum ThemeChoice {
    /// Light paper.
    Light,
    /// Dark paper.
    Dark,
    /// As the system.
    #[default]
    System,
}

impl ThemeChoice {
    /// The same for egui.
    #[must_use]
    pub fn preference(self) -> egui::ThemePreference {
        match self {
            Self::Light => egui::ThemePreference::Light,
            Self::Dark => egui::ThemePreference::Dark,
            Self::System => egui::ThemePreference::System,
        }
    }
}

/// How the table side by side is arranged.
#[derive(Debug, Clone, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
#[serde(default)]
pub struct TablePrefs {
    /// Keys of the rows that are hidden.
    pub hidden: Vec<String>,
    /// Keys in the order that was asked for; other rows follow in their own.
    pub order: Vec<String>,
}

/// Preferences.
#[derive(Debug, Clone, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
#[serde(default)]
pub struct Prefs {
    /// Units on screen.
    pub units: UnitSystem,
    /// Theme.
    pub theme: ThemeChoice,
    /// Files opened or saved last, newest first.
    pub recent: Vec<PathBuf>,
    /// The table side by side.
    pub table: TablePrefs,
    /// Whether the first steps have been taken or put away.
    pub started: bool,
}

impl Prefs {
    /// Puts a file in front of the recent ones.
    pub fn remember(&mut self, path: &Path) {
        self.recent.retain(|p| p != path);
        self.recent.insert(0, path.to_owned());
        self.recent.truncate(RECENT);
    }

    /// Folder to begin with when a file is asked for.
    #[must_use]
    pub fn folder(&self) -> Option<PathBuf> {
        self.recent.first().and_then(|p| p.parent()).map(Path::to_owned)
    }
}
