//! From a study file to another file that is made from it.

use super::evaluate::Opened;
use super::{REFUSED, open, print, refuse};
use crate::storage::write_whole;
use std::path::Path;
use std::process::ExitCode;

/// Opens a study, makes `what` from it and writes that to a file, whole or not at all.
pub(super) fn write(
    study: &Path,
    out: &Path,
    what: &str,
    make: impl FnOnce(Opened) -> Result<Vec<u8>, String>,
) -> ExitCode {
    let Some(opened) = open(study) else { return ExitCode::from(REFUSED) };
    match make(opened).and_then(|bytes| save(&bytes, study, out, what)) {
        Ok(()) => print(&format!("{}: written\n", out.display())),
        Err(reason) => refuse(&reason),
    }
}

/// The study itself is never overwritten by what was made from it.
pub(super) fn save(bytes: &[u8], study: &Path, out: &Path, what: &str) -> Result<(), String> {
    let same = matches!((std::fs::canonicalize(study), std::fs::canonicalize(out)), (Ok(a), Ok(b)) if a == b);
    if same {
        return Err(format!("{}: this is the study itself; name another file for the {what}", out.display()));
    }
    write_whole(out, bytes)
        .map_err(|error| format!("{}: the {what} could not be written ({error}); check the folder", out.display()))
}
