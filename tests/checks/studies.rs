//! The two studies that the view and the report are looked at with.

use super::{of, pairs};
use std::path::Path;
use warmfold::checks::{Check, Grade, count};
use warmfold::model::{bundled_catalogue, problems};
use warmfold::storage::{read_bytes, read_file};
use warmfold::units::UnitSystem;

fn checked(name: &str) -> Vec<Check> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/checks").join(name);
    let study = read_bytes(&read_file(&path).expect("a file")).expect("a study");
    assert_eq!(problems(&study, bundled_catalogue()), [], "{name} is sound");
    of(&study, &study.scenarios[0], UnitSystem::Metric)
}

#[test]
fn one_study_fails_everything() {
    let checks = checked("fails.ron");
    for name in pairs::all_names() {
        let check = checks.iter().find(|check| check.name == name);
        let check = check.unwrap_or_else(|| panic!("{name} is missing"));
        assert_ne!(check.grade, Grade::Fine, "{check:?}");
    }
    assert_eq!(checks.len(), pairs::all_names().len(), "every check is in the table of pairs");
    assert!(checks.is_sorted_by_key(|check| check.grade), "the worst first");
}

#[test]
fn another_fails_nothing() {
    let checks = checked("passes.ron");
    let open: Vec<_> = checks.iter().filter(|check| check.grade != Grade::Fine).map(|check| check.name).collect();
    // What only eyes can see stays.
    assert_eq!(open, ["Clear space round the heater"], "{checks:#?}");
    assert!(count(&checks, Grade::Fine) >= 8);
}
