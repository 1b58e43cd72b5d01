//! From a file to the results of its scenarios, or to what is wrong with it.

use crate::checks::{Case, Check, checks};
use crate::model::validate::nearest_name;
use crate::model::{Problem, Scenario, Severity, Study, bundled_catalogue, problems};
use crate::season::{ScenarioRun, run_scenario};
use crate::storage::{FileError, FileFault, SiteWeather, load_weather, place_of, read_bytes, read_file};
use crate::units::UnitSystem;
use crate::weather::stats::{DEGREE_DAY_BASE_C, DayMean, degree_days_k_d};
use std::path::Path;

/// A study that can be run, with its weather.
pub(super) struct Opened {
    /// File name as given.
    pub(super) file: String,
    pub(super) study: Study,
    pub(super) weather: SiteWeather,
    /// Warnings, ready to print.
    warnings: Vec<String>,
}

/// A study with the runs of its scenarios.
pub(super) struct Evaluated {
    pub(super) file: String,
    pub(super) study: Study,
    pub(super) weather: SiteWeather,
    pub(super) heating_degree_days_k_d: f64,
    pub(super) runs: Vec<ScenarioRun>,
}

/// Opens a study file, checks it and loads its weather.
///
/// # Errors
/// The complaints, ready to print.
pub(super) fn open(path: &Path) -> Result<Opened, Vec<String>> {
    let file = path.display().to_string();
    let refuse = |fault: FileFault| vec![complaint_of(&FileError { path: path.to_owned(), fault })];
    let bytes = read_file(path).map_err(refuse)?;
    let study = read_bytes(&bytes).map_err(|error| refuse(error.into()))?;
    check(file, study, &String::from_utf8_lossy(&bytes), path.parent().unwrap_or(Path::new("")))
}

/// Checks a study whose text and folder are known.
///
/// # Errors
/// The complaints, ready to print.
pub(super) fn check(file: String, study: Study, text: &str, folder: &Path) -> Result<Opened, Vec<String>> {
    let found = problems(&study, bundled_catalogue());
    let lines = |grade: Severity| -> Vec<String> {
        found.iter().filter(|p| p.severity() == grade).map(|p| complaint_about(&file, text, p)).collect()
    };
    let mut errors = lines(Severity::Error);
    let weather = match load_weather(&study.site, folder) {
        Ok(weather) => Some(weather),
        Err(error) => {
            errors.push(complaint_at(&file, text, "site.weather", &error.to_string()));
            None
        }
    };
    match weather {
        Some(weather) if errors.is_empty() => {
            let warnings = lines(Severity::Warning).iter().map(|line| format!("warning: {line}")).collect();
            Ok(Opened { file, study, weather, warnings })
        }
        _ => Err(errors),
    }
}

/// What to print about a file that was opened or refused.
pub(super) fn complaints(opened: &Result<Opened, Vec<String>>) -> Vec<String> {
    match opened {
        Ok(study) => study.warnings.clone(),
        Err(errors) => errors.clone(),
    }
}

impl Evaluated {
    /// The checks of one of its scenarios, in metric units.
    pub(super) fn checks_of(&self, scenario: &Scenario, run: &ScenarioRun) -> Vec<Check> {
        let catalogue = &bundled_catalogue().with_own(&self.study.own);
        checks(&Case { study: &self.study, scenario, catalogue, run, units: UnitSystem::Metric })
    }
}

impl Opened {
    /// Runs every scenario.
    ///
    /// # Errors
    /// The complaint, ready to print.
    pub(super) fn evaluate(self) -> Result<Evaluated, String> {
        let runs = self.study.scenarios.iter().map(|scenario| self.run(scenario)).collect::<Result<Vec<_>, _>>()?;
        let outdoor_c: Vec<f64> = self.weather.climate.hours.iter().map(|h| h.outdoor_c).collect();
        let heating_degree_days_k_d = degree_days_k_d(&outdoor_c, DEGREE_DAY_BASE_C, DayMean::Hourly);
        Ok(Evaluated { file: self.file, study: self.study, weather: self.weather, heating_degree_days_k_d, runs })
    }

    /// Index of the scenario with this name.
    ///
    /// # Errors
    /// The complaint, ready to print.
    pub(super) fn scenario(&self, name: &str) -> Result<usize, String> {
        let names = || self.study.scenarios.iter().map(|s| s.name.as_str());
        names().position(|known| known.trim() == name.trim()).ok_or_else(|| {
            let remedy = match nearest_name(name, names()) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => format!("choose one of: {}", names().collect::<Vec<_>>().join(", ")),
            };
            format!("{}: there is no scenario \"{name}\"; {remedy}", self.file)
        })
    }

    /// Index of the scenario of that name; of the reference without a name.
    pub(super) fn scenario_or_reference(&self, name: Option<&str>) -> Result<usize, String> {
        name.map_or(Ok(self.study.reference), |name| self.scenario(name))
    }

    /// Runs one scenario of the study.
    ///
    /// # Errors
    /// The complaint, ready to print.
    pub(super) fn run(&self, scenario: &Scenario) -> Result<ScenarioRun, String> {
        run_scenario(&self.study, scenario, &self.weather.climate, bundled_catalogue(), &|| false)
            .map_err(|error| format!("{}: scenario \"{}\": {error}", self.file, scenario.name))
    }
}

/// `file:line:column: path: what is wrong; what to do`.
fn complaint_of(error: &FileError) -> String {
    let file = error.path.display();
    match &error.fault {
        FileFault::NotAStudy(inner) => {
            let place = inner.place.map(|p| format!(":{}:{}", p.line, p.column)).unwrap_or_default();
            let path = if inner.path.is_empty() { String::new() } else { format!("{}: ", inner.path) };
            format!("{file}{place}: {path}{}", inner.fault)
        }
        _ => error.to_string(),
    }
}

fn complaint_about(file: &str, text: &str, problem: &Problem) -> String {
    let about = if problem.scenario_name.is_empty() {
        problem.text(crate::units::UnitSystem::Metric)
    } else {
        format!("scenario \"{}\": {}", problem.scenario_name, problem.text(crate::units::UnitSystem::Metric))
    };
    complaint_at(file, text, &problem.path, &about)
}

fn complaint_at(file: &str, text: &str, path: &str, about: &str) -> String {
    let place = place_of(text, path).map(|p| format!(":{}:{}", p.line, p.column)).unwrap_or_default();
    format!("{file}{place}: {path}: {about}")
}
