//! Where the window meets weather, engine and files: errors become texts with a remedy.

use crate::model::{Catalogue, Scenario, Site, Study};
use crate::season::{ScenarioRun, run_scenario};
use crate::storage;
use crate::weather::{Climate, MAX_BYTES};
use std::path::Path;

/// The weather that a study names; a relative path starts at its folder.
pub fn climate(site: &Site, folder: Option<&Path>) -> Result<Climate, String> {
    let loaded = storage::load_weather(site, folder.unwrap_or(Path::new(""))).map_err(|e| e.to_string())?;
    Ok(loaded.climate)
}

/// A scenario's season.
pub fn run(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
) -> Result<ScenarioRun, String> {
    run_scenario(study, scenario, climate, catalogue, cancelled).map_err(|e| e.to_string())
}

/// The demo study; an empty one if it cannot be read.
pub fn demo() -> Study {
    storage::demo().unwrap_or_default()
}

/// Fingerprint of a weather file; empty if it cannot be read, which opening it will tell.
pub fn fingerprint(path: &Path) -> String {
    std::fs::read(path).map_or_else(|_| String::new(), |content| storage::fingerprint(&content))
}

/// Fingerprint of a weather file, none once `go_on` says no; empty if it is too large or cannot be read, which opening it
/// will tell.
pub fn weather_fingerprint(path: &Path, go_on: &dyn Fn(u64) -> bool) -> Option<String> {
    let too_large = std::fs::metadata(path).is_ok_and(|about| about.len() > MAX_BYTES as u64);
    if too_large {
        return Some(String::new());
    }
    storage::fingerprint_file(path, go_on).unwrap_or_else(|_| Some(String::new()))
}

/// Puts the study's weather file beside the file that it is saved to.
pub fn bring_weather(study: &mut Study, folder: Option<&Path>, file: &Path) -> Result<(), String> {
    let to = file.parent().unwrap_or(Path::new(""));
    storage::bring_weather(study, folder.unwrap_or(Path::new("")), to).map_err(|e| e.to_string())
}

/// Reads a study file.
pub fn load(path: &Path) -> Result<Study, String> {
    storage::load(path).map_err(|e| e.to_string())
}

/// Writes a study file whole or not at all.
pub fn save(path: &Path, study: &Study) -> Result<(), String> {
    storage::save(path, study).map_err(|e| e.to_string())
}
