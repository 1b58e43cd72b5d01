//! What can be wrong with a study file, where, and what to do about it.

use crate::model::FORMAT;
use std::path::PathBuf;
use thiserror::Error;

/// A place in a text; line and column from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// Line.
    pub line: usize,
    /// Column in characters.
    pub column: usize,
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

/// A text that is not a study.
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{}{fault}", self.place_and_path())]
pub struct StudyFileError {
    /// Where; none where the whole file is meant.
    pub place: Option<Place>,
    /// Field at that place, such as `scenarios[1].tent.height_m`; empty where none is.
    pub path: String,
    /// What is wrong.
    pub fault: Box<Fault>,
}

impl StudyFileError {
    pub(super) fn new(place: Option<Place>, path: &str, fault: Fault) -> Self {
        Self { place, path: path.to_owned(), fault: Box::new(fault) }
    }

    fn place_and_path(&self) -> String {
        let place = self.place.map(|p| format!("{p}: ")).unwrap_or_default();
        if self.path.is_empty() { place } else { format!("{place}{}: ", self.path) }
    }
}

/// What is wrong with a text that should be a study. Each message ends with the remedy.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum Fault {
    /// Larger than any study.
    #[error("the file has {bytes} bytes, more than the {most} of the largest study; choose a study file")]
    TooLarge {
        /// Its size.
        bytes: u64,
        /// Largest size.
        most: u64,
    },
    /// Not text.
    #[error("the file is not UTF-8 text; choose a study file, or save it as UTF-8 in the editor")]
    NotText,
    /// Nothing in it.
    #[error("the file is empty; a study begins with (format: {FORMAT}, …)")]
    Nothing,
    /// Written by a newer program.
    #[error("the file has format {found}, this program reads up to {FORMAT}; open it with a newer version of Warmfold")]
    NewerFormat {
        /// Its format.
        found: u64,
    },
    /// No format number.
    #[error("the format \"{found}\" never existed; write format: {FORMAT}")]
    NoSuchFormat {
        /// What stands there.
        found: String,
    },
    /// A field that does not exist.
    #[error("{within} has no field \"{field}\"; {}", proposal(nearest.as_deref(), known))]
    UnknownField {
        /// The field.
        field: String,
        /// Part of the study.
        within: String,
        /// The nearest known name.
        nearest: Option<String>,
        /// All known names.
        known: Vec<String>,
    },
    /// A choice that does not exist.
    #[error("{within} has no choice \"{choice}\"; {}", proposal(nearest.as_deref(), known))]
    UnknownChoice {
        /// The choice.
        choice: String,
        /// What is chosen.
        within: String,
        /// The nearest known name.
        nearest: Option<String>,
        /// All known names.
        known: Vec<String>,
    },
    /// A field that stands twice.
    #[error("\"{field}\" stands twice; remove one")]
    Twice {
        /// The field.
        field: String,
    },
    /// A field that must be given.
    #[error("\"{field}\" is missing in {within}; add it")]
    Missing {
        /// The field.
        field: String,
        /// Part of the study.
        within: String,
    },
    /// A value of another kind.
    #[error("expected {expected}, but found {found}; correct the value")]
    WrongValue {
        /// What can stand there.
        expected: String,
        /// What stands there.
        found: String,
    },
    /// A number that cannot be computed with.
    #[error("{problem}")]
    NotANumber {
        /// Name, range and remedy.
        problem: String,
    },
    /// A slip in the notation.
    #[error("{what}; {remedy}")]
    Notation {
        /// What the reader stumbled over.
        what: String,
        /// What to do.
        remedy: &'static str,
    },
}

/// A study file that could not be read or written.
#[derive(Debug, Error)]
#[error("{}: {fault}", path.display())]
pub struct FileError {
    /// The file.
    pub path: PathBuf,
    /// What is wrong.
    pub fault: FileFault,
}

/// What is wrong with a file. Each message ends with the remedy.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum FileFault {
    /// Not there.
    #[error("there is no such file; check the name and the folder")]
    NotThere,
    /// A folder.
    #[error("this is a folder; name a file in it")]
    Folder,
    /// May not be read.
    #[error("the file may not be read ({0}); check its permissions")]
    NotReadable(std::io::Error),
    /// Not a study.
    #[error(transparent)]
    NotAStudy(#[from] StudyFileError),
    /// The folder of a file to be saved is missing.
    #[error("the folder is missing; create it or choose another")]
    NoFolder,
    /// Marked as read-only.
    #[error("the file is read-only; save under another name or make it writable")]
    ReadOnly,
    /// What stands there would be lost.
    #[error(
        "another file stands there that is not a study of this program ({0}); it was left alone: save under another name"
    )]
    WouldDestroy(StudyFileError),
    /// What would be written could not be read back.
    #[error("the study holds a value that cannot be saved ({0}); correct it and save again")]
    WouldNotReadBack(StudyFileError),
    /// The disk refused.
    #[error("the file could not be written ({0}); it is as it was before: free some space or save elsewhere")]
    NotWritten(std::io::Error),
}

/// "did you mean …?", or what there is to choose from.
fn proposal(nearest: Option<&str>, known: &[String]) -> String {
    let known = known.join(", ");
    match nearest {
        Some(name) => format!("did you mean \"{name}\"? (known: {known})"),
        None => format!("known: {known}; use one of these or remove it"),
    }
}
