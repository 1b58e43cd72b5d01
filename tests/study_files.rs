//! Study files: round trips, broken files, saving that loses nothing.

use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use std::fs;
use std::path::{Path, PathBuf};
use warmfold::model::{
    ArchCurve, CutStarts, HardNight, Heater, House, NumberInput, Part, PartCovering, PartException, Scenario, Season,
    Severity, Shape, Study, Tent, TentOpening, Tightness, Vents, bundled_catalogue, problems,
};
use warmfold::storage::{Fault, FileFault, demo, load, place_of, read_bytes, read_study, save, write_study};

fn repository(folder: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)
}

fn ron_files(folder: &str) -> Vec<PathBuf> {
    let mut files: Vec<_> = fs::read_dir(repository(folder))
        .expect("folder")
        .map(|entry| entry.expect("entry").path())
        .filter(|path| path.extension().is_some_and(|e| e == "ron"))
        .collect();
    files.sort();
    files
}

/// First error of a file as the commands print it: `line:column: message`.
fn complaint(bytes: &[u8]) -> Option<String> {
    match read_bytes(bytes) {
        Err(error) => Some(error.to_string()),
        Ok(study) => {
            let text = String::from_utf8_lossy(bytes);
            let problem =
                problems(&study, bundled_catalogue()).into_iter().find(|p| p.severity() == Severity::Error)?;
            let place = place_of(&text, &problem.path).map(|p| format!("{p}: ")).unwrap_or_default();
            Some(format!("{place}{problem}"))
        }
    }
}

/// Each broken file names in its first line what its complaint must contain: `// expect: line 3, column 5 | did you mean`.
#[test]
fn thirty_broken_files_are_refused_with_place_and_remedy() {
    let files = ron_files("tests/data/studies");
    assert!(30 <= files.len(), "only {} files", files.len());
    let mut failed = Vec::new();
    for file in files {
        let bytes = fs::read(&file).expect("readable");
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let text = String::from_utf8_lossy(&bytes);
        let first = text.lines().next().unwrap_or_default();
        let expected = first.split_once("expect: ").unwrap_or_else(|| panic!("{name} has no expectation")).1;
        let complaint = complaint(&bytes).unwrap_or_else(|| panic!("{name} was accepted"));
        for part in expected.split('|').map(str::trim) {
            if !complaint.contains(part) {
                failed.push(format!("{name}: {part:?} is not in {complaint:?}"));
            }
        }
    }
    assert!(failed.is_empty(), "{}", failed.join("\n"));
}

#[test]
fn what_no_editor_would_write_is_refused_too() {
    let too_large = vec![b' '; 5_000_001];
    assert!(matches!(read_bytes(&too_large).map_err(|e| *e.fault), Err(Fault::TooLarge { .. })));
    let not_text = read_bytes(b"(format: 1,\n title: \"\xff\")").expect_err("not text");
    assert_eq!((not_text.place.map(|p| p.line), *not_text.fault), (Some(2), Fault::NotText));
    assert!(matches!(read_bytes(b" \n").map_err(|e| *e.fault), Err(Fault::Nothing)));
    let deep = format!("(title: {})", "(".repeat(100_000));
    assert!(read_study(&deep).is_err());
}

#[test]
fn demo_studies_open_without_a_problem_and_round_trip() {
    let files = ron_files("scenarios");
    assert_eq!(files.len(), 3);
    for file in files {
        let study = load(&file).unwrap_or_else(|e| panic!("{e}"));
        let found: Vec<_> = problems(&study, bundled_catalogue()).iter().map(ToString::to_string).collect();
        assert_eq!(found, Vec::<String>::new(), "{}", file.display());
        assert_eq!(read_study(&write_study(&study)), Ok(study));
    }
    assert_eq!(demo().map(|d| d.scenarios.len()), Ok(4));
}

#[test]
fn short_files_take_the_defaults() {
    let mut scenario = Scenario { name: "Fleece".to_owned(), ..Scenario::default() };
    scenario.tent.present = true;
    scenario.heater.setpoint_day_c = None;
    let expected = Study { scenarios: vec![scenario], ..Study::default() };
    // Without a format number, with a byte order mark, with and without Some, with struct names.
    for text in [
        "(scenarios: [(name: \"Fleece\", tent: (present: true), heater: (setpoint_day_c: None))])",
        "\u{feff}(format: 1, scenarios: [(name: \"Fleece\", tent: (present: true), heater: (setpoint_day_c: None, setpoint_night_c: Some(8.0)))])",
        "Study(scenarios: [Scenario(name: \"Fleece\", tent: Tent(present: true), heater: (setpoint_day_c: None, setpoint_night_c: 8))])",
    ] {
        assert_eq!(read_study(text).as_ref(), Ok(&expected), "{text}");
    }
}

#[test]
fn saving_writes_whole_files_and_destroys_nothing() {
    let folder = tempfile::tempdir().expect("temporary folder");
    let path = folder.path().join("study.ron");
    let study = demo().expect("demo");
    save(&path, &study).expect("saved");
    assert_eq!(load(&path).expect("loaded"), study);
    let mut changed = study.clone();
    changed.title = "Changed".to_owned();
    save(&path, &changed).expect("saved over a study");
    assert_eq!(load(&path).expect("loaded").title, "Changed");

    for (name, content) in [
        ("letter.ron", "Dear neighbour"),
        ("newer.ron", "(format: 2, roof: Green)"),
        ("torn.ron", "(format: 1, title: \"a"),
    ] {
        let other = folder.path().join(name);
        fs::write(&other, content).expect("written");
        let error = save(&other, &study).expect_err(name);
        assert!(matches!(error.fault, FileFault::WouldDestroy(_)), "{error}");
        assert!(error.to_string().contains("save under another name"), "{error}");
        assert_eq!(fs::read_to_string(&other).expect("still there"), content);
    }
    let empty = folder.path().join("empty.ron");
    fs::write(&empty, "").expect("written");
    save(&empty, &study).expect("an empty file holds nothing to lose");

    // Only what was saved is in the folder: no leftovers of a save.
    assert_eq!(fs::read_dir(folder.path()).expect("listing").count(), 5);
}

#[test]
fn saving_says_why_it_cannot() {
    let folder = tempfile::tempdir().expect("temporary folder");
    let study = demo().expect("demo");
    let missing = save(&folder.path().join("none/study.ron"), &study).expect_err("no folder");
    assert!(matches!(missing.fault, FileFault::NoFolder));
    assert!(matches!(save(folder.path(), &study).expect_err("a folder").fault, FileFault::Folder));
    let path = folder.path().join("locked.ron");
    save(&path, &study).expect("saved");
    let mut permissions = fs::metadata(&path).expect("there").permissions();
    permissions.set_readonly(true);
    fs::set_permissions(&path, permissions).expect("set");
    let error = save(&path, &Study::default()).expect_err("read-only");
    assert!(matches!(error.fault, FileFault::ReadOnly));
    assert_eq!(load(&path).expect("unchanged"), study);
    let mut endless = study.clone();
    endless.scenarios[0].house.length_m = f64::INFINITY;
    let error = save(&folder.path().join("endless.ron"), &endless).expect_err("endless");
    assert!(matches!(error.fault, FileFault::WouldNotReadBack(_)), "{error}");
    assert!(matches!(load(&folder.path().join("gone.ron")).expect_err("gone").fault, FileFault::NotThere));
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link() {
    let folder = tempfile::tempdir().expect("temporary folder");
    let (file, link) = (folder.path().join("study.ron"), folder.path().join("link.ron"));
    save(&file, &Study::default()).expect("saved");
    std::os::unix::fs::symlink(&file, &link).expect("linked");
    let study = demo().expect("demo");
    save(&link, &study).expect("saved through the link");
    assert!(fs::symlink_metadata(&link).expect("there").is_symlink());
    assert_eq!(load(&file).expect("loaded"), study);
}

/// Sets every number of a part to a share of its range.
fn fill<T>(part: &mut T, numbers: &[NumberInput<T>], shares: &[f64]) {
    for (number, share) in numbers.iter().zip(shares.iter().cycle()) {
        (number.set)(part, number.min + share * (number.max - number.min));
    }
}

fn any_study() -> impl Strategy<Value = Study> {
    let shares = prop::collection::vec(0.0..=1.0_f64, 13);
    let choices = (0..4_usize, any::<bool>(), prop::option::of(-5.0..35.0_f64), 0.0..30.0_f64);
    (shares, choices, "\\PC{0,20}").prop_map(|(shares, (shape, flag, setpoint, rate), text)| {
        let mut scenario = Scenario { name: text.clone(), notes: text.clone(), ..Scenario::default() };
        fill(&mut scenario.house, House::NUMBERS, &shares);
        fill(&mut scenario.tent, Tent::NUMBERS, &shares);
        fill(&mut scenario.heater, Heater::NUMBERS, &shares);
        fill(&mut scenario.vents, Vents::NUMBERS, &shares);
        scenario.house.shape = [Shape::Gable, Shape::LeanTo, Shape::Tunnel, Shape::FlatBox][shape];
        scenario.house.arch = if flag { ArchCurve::HalfEllipse } else { ArchCurve::Circle };
        scenario.house.tightness = if flag { Tightness::Rate(rate) } else { Tightness::Worn };
        scenario.heater.setpoint_day_c = setpoint;
        scenario.tent.present = flag;
        scenario.tent.opening = if flag { TentOpening::ByDay } else { TentOpening::Above(rate) };
        let covering = if flag { PartCovering::Opaque(rate) } else { PartCovering::Sheets(vec![text.clone()]) };
        scenario.covering.exceptions.push(PartException { part: Part::Ends, covering });
        let mut study = Study { title: text, scenarios: vec![scenario], ..Study::default() };
        study.site.latitude_deg = setpoint;
        fill(&mut study.season, Season::NUMBERS, &shares);
        fill(&mut study.hard_night, HardNight::NUMBERS, &shares);
        if flag {
            study.hard_night.cut_starts = CutStarts::At { month: 1, day: 2, hour: shape as u32 };
        }
        study
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_study_is_read_back_exactly(study in any_study()) {
        prop_assert_eq!(read_study(&write_study(&study)), Ok(study));
    }

    #[test]
    fn mutated_bytes_never_panic(changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..20), cut in any::<prop::sample::Index>()) {
        let mut bytes = warmfold::storage::demo_text().as_bytes().to_vec();
        for (index, byte) in changes {
            let at = index.index(bytes.len());
            bytes[at] = byte;
        }
        bytes.truncate(cut.index(bytes.len()) + 1);
        let _ = complaint(&bytes);
    }
}
