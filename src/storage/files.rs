//! Study files on disk.
//!
//! Saving writes a new file beside the old one and swaps them, so a file is there whole, old or new, at any moment.
//! What cannot be read as a study is never overwritten: neither a file of another kind, nor a damaged study, nor one
//! of a newer format. An empty file holds nothing to lose and may be overwritten.

use super::fault::{Fault, FileError, FileFault, StudyFileError};
use super::text::{LARGEST_FILE_BYTES, read_bytes, write_study};
use crate::model::Study;
use atomic_write_file::AtomicWriteFile;
use std::fs;
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

/// Reads a study file.
///
/// # Errors
/// When the file cannot be read or is not a study.
pub fn load(path: &Path) -> Result<Study, FileError> {
    read_file(path)
        .and_then(|bytes| read_bytes(&bytes).map_err(FileFault::from))
        .map_err(|fault| FileError { path: path.to_owned(), fault })
}

/// Bytes of a file that is not too large for a study.
///
/// # Errors
/// When the file is missing, a folder, too large or may not be read.
pub fn read_file(path: &Path) -> Result<Vec<u8>, FileFault> {
    let about = fs::metadata(path).map_err(reading)?;
    if about.is_dir() {
        return Err(FileFault::Folder);
    }
    if LARGEST_FILE_BYTES < about.len() {
        let fault = Fault::TooLarge { bytes: about.len(), most: LARGEST_FILE_BYTES };
        return Err(StudyFileError::new(None, "", fault).into());
    }
    fs::read(path).map_err(reading)
}

fn reading(error: std::io::Error) -> FileFault {
    match error.kind() {
        ErrorKind::NotFound => FileFault::NotThere,
        _ => FileFault::NotReadable(error),
    }
}

/// Saves a study, whole or not at all.
///
/// # Errors
/// When the folder is missing, the file is read-only or not a study, the study could not be read back, or the disk
/// refuses. What stood there is then unchanged.
pub fn save(path: &Path, study: &Study) -> Result<(), FileError> {
    save_fault(path, study).map_err(|fault| FileError { path: path.to_owned(), fault })
}

fn save_fault(path: &Path, study: &Study) -> Result<(), FileFault> {
    let text = write_study(study);
    super::text::read_study(&text).map_err(FileFault::WouldNotReadBack)?;
    // A link would be replaced by a plain file: follow it first.
    let target = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    may_be_written(&target)?;
    write_whole(&target, text.as_bytes()).map_err(FileFault::NotWritten)
}

/// Writes a file, whole or not at all.
///
/// # Errors
/// What the system says.
pub fn write_whole(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut file = AtomicWriteFile::open(path)?;
    file.write_all(bytes)?;
    file.commit()
}

fn may_be_written(target: &Path) -> Result<(), FileFault> {
    if !folder_of(target).is_dir() {
        return Err(FileFault::NoFolder);
    }
    let about = match fs::metadata(target) {
        Ok(about) => about,
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(()),
        Err(error) => return Err(FileFault::NotReadable(error)),
    };
    if about.permissions().readonly() {
        return Err(FileFault::ReadOnly);
    }
    match read_file(target).and_then(|bytes| read_bytes(&bytes).map_err(FileFault::from)) {
        Ok(_) => Ok(()),
        Err(FileFault::NotAStudy(_)) if about.len() == 0 => Ok(()),
        Err(FileFault::NotAStudy(error)) => Err(FileFault::WouldDestroy(error)),
        Err(fault) => Err(fault),
    }
}

fn folder_of(path: &Path) -> PathBuf {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder.to_owned(),
        _ => PathBuf::from("."),
    }
}
