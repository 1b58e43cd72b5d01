//! Weather files that lie beside a study.
//!
//! A weather file stays a file of its own: it has a hundred times the size of a study, which is to be read and compared
//! by people. It travels in the study's folder; the study remembers its fingerprint, so that another file of that name
//! is noticed.

use crate::model::{Study, WeatherChoice};
use flate2::Crc;
use std::fs::{self, File};
use std::io::Read;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// A weather file that could not be put beside the study.
#[derive(Debug, Error)]
#[error("the weather file {} could not be put beside the study ({error}); send it along, and keep it in the same folder", path.display())]
pub struct SidecarError {
    /// The file.
    pub path: PathBuf,
    /// What the system says.
    pub error: std::io::Error,
}

/// What tells a file's content from another: CRC-32 and length (ISO 3309, as in gzip).
#[must_use]
pub fn fingerprint(content: &[u8]) -> String {
    let mut crc = Crc::new();
    crc.update(content);
    format!("{:08x}-{}", crc.sum(), content.len())
}

/// Bytes read at a time.
const PIECE: usize = 1 << 20;

/// [`fingerprint`] of a file, read piece by piece. `go_on` hears how many bytes have been read, and stops the reading by
/// saying no: then there is none.
///
/// # Errors
/// When the file cannot be read.
pub fn fingerprint_file(path: &Path, go_on: &dyn Fn(u64) -> bool) -> std::io::Result<Option<String>> {
    let (mut file, mut crc, mut piece, mut length) = (File::open(path)?, Crc::new(), vec![0; PIECE], 0);
    loop {
        let read = file.read(&mut piece)?;
        if read == 0 {
            return Ok(Some(format!("{:08x}-{length}", crc.sum())));
        }
        crc.update(piece.get(..read).unwrap_or_default());
        length += read as u64;
        if !go_on(length) {
            return Ok(None);
        }
    }
}

/// Puts the weather file that a study names into the folder where the study is going to be saved, and names it from
/// there. A relative name starts at `from`, the folder of the study until now. A file of the same name and other
/// content stays: the copy gets a number.
///
/// # Errors
/// When the file cannot be read or written; the study is as it was then.
pub fn bring_weather(study: &mut Study, from: &Path, to: &Path) -> Result<(), SidecarError> {
    let Some(named) = study.site.weather.file() else { return Ok(()) };
    let source = from.join(named);
    let fail = |error| SidecarError { path: source.clone(), error };
    let content = fs::read(&source).map_err(fail)?;
    let mark = fingerprint(&content);
    let name = source.file_name().map_or_else(|| "weather".to_owned(), |name| name.to_string_lossy().into_owned());
    let beside = free_name(&name, to, &mark);
    let target = to.join(&beside);
    if !target.exists() {
        fs::write(&target, &content).map_err(fail)?;
    }
    match &mut study.site.weather {
        WeatherChoice::Log(log) => log.file = beside,
        other => *other = WeatherChoice::File(beside),
    }
    study.site.weather_fingerprint = mark;
    Ok(())
}

/// The name itself, or with a number where another file has it.
fn free_name(name: &str, folder: &Path, mark: &str) -> String {
    let path = Path::new(name);
    let part = |part: Option<&std::ffi::OsStr>| part.map(|p| p.to_string_lossy().into_owned()).unwrap_or_default();
    let (stem, ending) = (part(path.file_stem()), part(path.extension()));
    let numbered = |number: u32| match (number, ending.is_empty()) {
        (1, _) => name.to_owned(),
        (_, true) => format!("{stem}-{number}"),
        (_, false) => format!("{stem}-{number}.{ending}"),
    };
    let fits = |candidate: &String| match fs::read(folder.join(candidate)) {
        Ok(there) => fingerprint(&there) == mark,
        Err(_) => true,
    };
    (1..1000).map(numbered).find(fits).unwrap_or_else(|| name.to_owned())
}
