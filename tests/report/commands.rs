//! The commands that write the page and its table, and their figures.

use super::{DEMOS, number, parsed, row_of, warmfold, words};
use warmfold::format;

#[test]
fn figures_are_those_of_the_json() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().join("report.html");
    for demo in DEMOS {
        let json = warmfold(&["run", demo, "--json"]);
        let study: serde_json::Value = serde_json::from_slice(&json.stdout).expect("JSON");
        warmfold(&["report", demo, "--out", &out.to_string_lossy()]);
        let page = std::fs::read_to_string(&out).expect("written");
        let document = parsed(&page);
        let scenarios = study["scenarios"].as_array().expect("a list");
        let expected = |key: &str, decimals| -> Vec<String> {
            scenarios.iter().map(|s| format::number(s[key].as_f64().expect("a number"), decimals)).collect()
        };
        assert_eq!(row_of(&document, "heat"), expected("heat_delivered_kwh", 0), "{demo}");
        assert_eq!(row_of(&document, "running"), expected("cost", 0), "{demo}");
        assert_eq!(row_of(&document, "peak"), expected("peak_heater_w", 0), "{demo}");
        assert_eq!(row_of(&document, "load"), expected("design_load_w_99_6", 0), "{demo}");
        assert_eq!(row_of(&document, "lowest"), expected("crop_zone_min_c", 1), "{demo}");
        assert_eq!(row_of(&document, "below-limit"), expected("hours_below_crop_limit", 0), "{demo}");
        let text = words(document.root_element());
        for scenario in scenarios {
            let held = |value: &serde_json::Value| match value.as_f64() {
                Some(hours) => format!("{}\u{a0}h", format::number(hours, 1)),
                None if value.is_string() => "over\u{a0}120\u{a0}h".to_owned(),
                None => "–".to_owned(),
            };
            let celsius =
                |value: &serde_json::Value| format!("{}\u{a0}°C", format::number(value.as_f64().expect("a number"), 1));
            for course in scenario["asked_power_cut"]["courses"].as_array().expect("a list") {
                for time in ["air_to_crop_limit_h", "trays_to_freezing_h", "water_to_freezing_h", "recovery_h"] {
                    assert!(text.contains(&held(&course[time])), "{demo}: {time} {}", course[time]);
                }
                assert!(text.contains(&celsius(&course["air_min_c"])), "{demo}: {}", course["air_min_c"]);
            }
            let spell = &scenario["colder_spell"];
            for key in ["crop_air_min_c", "holds_down_to_c"] {
                assert!(text.contains(&celsius(&spell[key])), "{demo}: {key} {}", spell[key]);
            }
            let advice = &scenario["air_advice"];
            for (key, unit) in [("flow_needed_m3_per_h", "m³/h"), ("rise_as_it_is_k", "K")] {
                let decimals = usize::from(unit == "K");
                let printed =
                    format!("{}\u{a0}{unit}", format::number(advice[key].as_f64().expect("a number"), decimals));
                assert!(text.contains(&printed), "{demo}: {printed}");
            }
            let airing = scenario["air_changes"]["morning_airing"]["hours_skin_wet"].as_f64().expect("a number");
            assert!(text.contains(&format::signed(airing, 0)), "{demo}: {airing}");
        }
        assert!(text.contains(study["weather_credit"].as_str().expect("a credit")), "{demo}");
        assert!(text.contains(study["weather"].as_str().expect("a name")), "{demo}");
    }
}

#[test]
fn the_commands_refuse_like_the_others() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().join("out");
    let study = folder.path().join("study.ron");
    std::fs::copy(DEMOS[0], &study).expect("copied");
    let (out, study) = (out.to_string_lossy().into_owned(), study.to_string_lossy().into_owned());
    let missing = folder.path().join("no such folder").join("out");
    for command in ["report", "table"] {
        for (arguments, said) in [
            ([command, "tests/data/studies/tent_through_roof.ron", "--out", &out], "tent_through_roof.ron:"),
            ([command, "no-such-file.ron", "--out", &out], "no-such-file.ron"),
            ([command, &study, "--out", &study], "the study itself"),
            ([command, &study, "--out", &missing.to_string_lossy()], "could not be written"),
        ] {
            let output = warmfold(&arguments);
            let error = String::from_utf8_lossy(&output.stderr).into_owned();
            assert_eq!(output.status.code(), Some(2), "{arguments:?}: {error}");
            assert!(error.contains(said) && output.stdout.is_empty(), "{arguments:?}: {error}");
        }
        let output = warmfold(&[command, DEMOS[0], "--out", &out, "--units", "furlongs"]);
        assert_eq!(output.status.code(), Some(2));
    }
    assert!(!std::path::Path::new(&out).exists(), "a refused command writes nothing");
}

#[test]
fn the_table_on_disk_has_the_numbers_of_the_report() {
    let folder = tempfile::tempdir().expect("a folder");
    let (table, report) = (folder.path().join("table.csv"), folder.path().join("report.html"));
    for (command, out) in [("table", &table), ("report", &report)] {
        let output = warmfold(&[command, DEMOS[2], "--out", &out.to_string_lossy(), "--units", "imperial"]);
        assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    }
    let page = std::fs::read_to_string(&report).expect("written");
    let document = parsed(&page);
    let mut reader = csv::Reader::from_path(&table).expect("written");
    let lines: Vec<csv::StringRecord> = reader.records().map(|line| line.expect("a record")).collect();
    for (label, key) in [("Heat delivered", "heat"), ("Lowest at the crop", "lowest"), ("Largest hour", "peak")] {
        let line = lines.iter().find(|line| &line[1] == label).expect("a row");
        let printed = row_of(&document, key);
        let values: Vec<f64> = line.iter().skip(3).take(printed.len()).map(number).collect();
        assert_eq!(values, printed.iter().map(|text| number(text)).collect::<Vec<_>>(), "{label}");
    }
}
