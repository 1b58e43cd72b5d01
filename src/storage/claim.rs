//! A mark that a window has a file open, so that a second window notices.

use super::sidecar::fingerprint;
use std::fs::{self, File, TryLockError};
use std::io;
use std::path::Path;

/// The mark; it goes with the window, however that ends.
#[derive(Debug)]
pub struct Claim {
    _lock: File,
}

impl Claim {
    /// Claims a file; none while another window has it. The marks lie in `folder`, not beside the file.
    ///
    /// # Errors
    /// What the system says.
    pub fn of(folder: &Path, file: &Path) -> io::Result<Option<Self>> {
        fs::create_dir_all(folder)?;
        let whole = fs::canonicalize(file).unwrap_or_else(|_| file.to_owned());
        let name = fingerprint(whole.as_os_str().as_encoded_bytes());
        let lock =
            File::options().create(true).truncate(false).write(true).open(folder.join(format!("{name}.lock")))?;
        match lock.try_lock() {
            Ok(()) => Ok(Some(Self { _lock: lock })),
            Err(TryLockError::WouldBlock) => Ok(None),
            Err(TryLockError::Error(error)) => Err(error),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_claimed_once_by_whatever_path_it_is_reached() {
        let folder = tempfile::tempdir().expect("a folder");
        let marks = folder.path().join("open");
        let file = folder.path().join("house.ron");
        fs::write(&file, "()").expect("written");
        let first = Claim::of(&marks, &file).expect("no error").expect("free");
        let roundabout = folder.path().join("open/../house.ron");
        assert!(Claim::of(&marks, &roundabout).expect("no error").is_none(), "the same file by another path");
        assert!(Claim::of(&marks, &folder.path().join("other.ron")).expect("no error").is_some());
        drop(first);
        assert!(Claim::of(&marks, &file).expect("no error").is_some());
    }
}
