//! Opens the window, or says how to get one and prints the results instead.

use super::evaluate;
use super::{REFUSED, page, print, refuse};
use crate::storage::{DEMO_NAME, demo, demo_text};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Opens the window on a study, or on the worked example.
pub(super) fn open(file: Option<PathBuf>) -> ExitCode {
    match try_window(file.clone()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(how_to_get_one) => {
            eprintln!("{how_to_get_one}");
            results(file.as_deref())
        }
    }
}

/// Measures the window at work.
#[cfg(feature = "gui")]
pub(super) fn measure() -> ExitCode {
    match crate::gui::measure() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => refuse(&error.to_string()),
    }
}

#[cfg(feature = "gui")]
fn try_window(file: Option<PathBuf>) -> Result<(), String> {
    crate::gui::run(file).map_err(|error| error.to_string())
}

#[cfg(not(feature = "gui"))]
fn try_window(_file: Option<PathBuf>) -> Result<(), String> {
    Err("This program was built without its window: build it with the feature \"gui\", which is on by default, to get it.".to_owned())
}

/// The results of the file, or of the worked example.
fn results(file: Option<&Path>) -> ExitCode {
    let opened = match file {
        Some(file) => evaluate::open(file),
        None => demo()
            .map_err(|error| vec![format!("{DEMO_NAME}: {error}")])
            .and_then(|study| evaluate::check(DEMO_NAME.to_owned(), study, demo_text(), Path::new(""))),
    };
    for complaint in evaluate::complaints(&opened) {
        eprintln!("{complaint}");
    }
    let Ok(opened) = opened else { return ExitCode::from(REFUSED) };
    match opened.evaluate() {
        Ok(results) => print(&page::text(&results)),
        Err(complaint) => refuse(&complaint),
    }
}
