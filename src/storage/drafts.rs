//! Changes that are not saved yet, kept aside so that a crash or a power cut takes nothing.
//!
//! Each open window keeps one draft. It holds a lock as long as it lives; a draft that nobody holds was left behind.

use super::files::write_whole;
use super::text::{read_study, write_study};
use crate::model::Study;
use serde::{Deserialize, Serialize};
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

/// Most drafts that are looked for.
const MOST: usize = 64;

/// What a draft's file holds.
#[derive(Serialize, Deserialize)]
struct Content {
    /// File that the study was opened from or saved to; none before the first save.
    of: Option<PathBuf>,
    /// Fingerprint of that file when the study was read or saved last.
    on_disk: String,
    /// The study as its own file would hold it.
    study: String,
}

/// The draft of one window. Its lock goes with it, its file does not.
#[derive(Debug)]
pub struct Draft {
    path: PathBuf,
    _lock: File,
}

/// A draft that a window left behind.
#[derive(Debug)]
pub struct LeftDraft {
    /// The study.
    pub study: Study,
    /// File that it belongs to; none before its first save.
    pub of: Option<PathBuf>,
    /// Fingerprint of that file when the study was read or saved last.
    pub on_disk: String,
    /// When it was written last.
    pub written: Option<SystemTime>,
    draft: Draft,
}

fn draft_path(folder: &Path, number: usize) -> PathBuf {
    folder.join(format!("draft-{number}.ron"))
}

/// The lock of a number; none while another window holds it.
fn lock(folder: &Path, number: usize) -> io::Result<Option<File>> {
    let file =
        File::options().create(true).truncate(false).write(true).open(folder.join(format!("draft-{number}.lock")))?;
    match file.try_lock() {
        Ok(()) => Ok(Some(file)),
        Err(fs::TryLockError::WouldBlock) => Ok(None),
        Err(fs::TryLockError::Error(error)) => Err(error),
    }
}

impl Draft {
    /// A draft of its own for a window, in a folder that is made where it is missing.
    ///
    /// # Errors
    /// What the system says, or that every place is taken.
    pub fn begin(folder: &Path) -> io::Result<Self> {
        fs::create_dir_all(folder)?;
        for number in 0..MOST {
            let path = draft_path(folder, number);
            if let Some(lock) = lock(folder, number)?.filter(|_| !path.exists()) {
                return Ok(Self { path, _lock: lock });
            }
        }
        Err(io::Error::other("too many drafts are kept"))
    }

    /// Keeps a study, whole or not at all. `of` is the file that it belongs to, `on_disk` that file's fingerprint.
    ///
    /// # Errors
    /// What the system says.
    pub fn keep(&self, study: &Study, of: Option<&Path>, on_disk: &str) -> io::Result<()> {
        let content = Content { of: of.map(Path::to_owned), on_disk: on_disk.to_owned(), study: write_study(study) };
        let text = ron::to_string(&content).map_err(io::Error::other)?;
        write_whole(&self.path, text.as_bytes())
    }

    /// Forgets what was kept: the study is saved, or was given up.
    ///
    /// # Errors
    /// What the system says; there being nothing is no error.
    pub fn forget(&self) -> io::Result<()> {
        match fs::remove_file(&self.path) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
            _ => Ok(()),
        }
    }
}

impl LeftDraft {
    /// The drafts that were left behind in a folder, in the order of their numbers. One that cannot be read stays where
    /// it is.
    #[must_use]
    pub fn all(folder: &Path) -> Vec<Self> {
        (0..MOST).filter_map(|number| Self::of_number(folder, number)).collect()
    }

    fn of_number(folder: &Path, number: usize) -> Option<Self> {
        let path = draft_path(folder, number);
        let text = fs::read_to_string(&path).ok()?;
        let lock = lock(folder, number).ok()??;
        let content: Content = ron::from_str(&text).ok()?;
        let study = read_study(&content.study).ok()?;
        let written = fs::metadata(&path).and_then(|about| about.modified()).ok();
        Some(Self { study, of: content.of, on_disk: content.on_disk, written, draft: Draft { path, _lock: lock } })
    }

    /// Gives it up.
    ///
    /// # Errors
    /// What the system says.
    pub fn discard(self) -> io::Result<()> {
        self.draft.forget()
    }

    /// The draft, to go on keeping what was in it.
    #[must_use]
    pub fn into_draft(self) -> Draft {
        self.draft
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn study(title: &str) -> Study {
        Study { title: title.to_owned(), ..Study::default() }
    }

    #[test]
    fn a_draft_is_left_behind_only_when_its_window_is_gone() {
        let folder = tempfile::tempdir().expect("a folder");
        let (one, two) = (Draft::begin(folder.path()).expect("one"), Draft::begin(folder.path()).expect("two"));
        one.keep(&study("One"), Some(Path::new("/here/one.ron")), "a-1").expect("kept");
        two.keep(&study("Two"), None, "").expect("kept");
        assert!(LeftDraft::all(folder.path()).is_empty(), "both windows are open");
        drop(one);
        let left = LeftDraft::all(folder.path());
        assert_eq!(left.len(), 1);
        assert_eq!(left[0].study, study("One"));
        assert_eq!((left[0].of.as_deref(), left[0].on_disk.as_str()), (Some(Path::new("/here/one.ron")), "a-1"));
        let third = Draft::begin(folder.path()).expect("three");
        third.keep(&study("Three"), None, "").expect("kept");
        drop(left);
        assert_eq!(LeftDraft::all(folder.path()).len(), 1, "a new window takes no place of a draft left behind");
    }

    #[test]
    fn what_is_saved_or_given_up_leaves_nothing_behind() {
        let folder = tempfile::tempdir().expect("a folder");
        let draft = Draft::begin(folder.path()).expect("a draft");
        draft.keep(&study("One"), None, "").expect("kept");
        draft.forget().expect("forgotten");
        draft.forget().expect("twice is no error");
        drop(draft);
        assert!(LeftDraft::all(folder.path()).is_empty());
    }

    #[test]
    fn a_draft_goes_on_after_it_was_taken_and_a_damaged_one_stays() {
        let folder = tempfile::tempdir().expect("a folder");
        let draft = Draft::begin(folder.path()).expect("a draft");
        draft.keep(&study("One"), None, "").expect("kept");
        drop(draft);
        let left = LeftDraft::all(folder.path()).remove(0);
        assert_eq!(left.study, study("One"));
        let draft = left.into_draft();
        draft.keep(&study("Two"), None, "").expect("kept");
        drop(draft);
        assert_eq!(LeftDraft::all(folder.path())[0].study, study("Two"));
        fs::write(draft_path(folder.path(), 0), "(of: None, on_d").expect("damaged");
        assert!(LeftDraft::all(folder.path()).is_empty());
        assert!(draft_path(folder.path(), 0).exists(), "nothing of the grower's is thrown away");
        let own = Draft::begin(folder.path()).expect("another place");
        own.keep(&study("Three"), None, "").expect("kept");
        assert_eq!(fs::read_to_string(draft_path(folder.path(), 0)).expect("there"), "(of: None, on_d");
    }
}
