//! The commands, run as a user runs them.

use serde_json::Value;
use std::process::{Command, Output};

const DEMO: &str = "scenarios/allotment-tunnel.ron";

fn warmfold(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_warmfold"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the program starts")
}

fn out(output: &Output) -> String {
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout.clone()).expect("UTF-8")
}

/// A refusal: exit code 2, nothing on standard output, these words on standard error.
fn refused(arguments: &[&str], words: &[&str]) {
    let output = warmfold(arguments);
    let error = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(2), "{error}");
    assert!(output.stdout.is_empty());
    for word in words {
        assert!(error.contains(word), "{word:?} is not in {error:?}");
    }
}

const HEIGHT: [&str; 8] = ["sweep", DEMO, "--input", "tent.height_m", "--from", "0.9", "--to", "2.9"];
const TENT: [&str; 2] = ["--scenario", "Inner tent, electricity"];

#[test]
fn sweep_prints_a_table_json_and_csv() {
    let folder = tempfile::tempdir().expect("a folder");
    let csv = folder.path().join("heights.csv");
    let csv = csv.to_str().expect("UTF-8");
    let asked = [&HEIGHT[..], &TENT, &["--points", "2"]].concat();
    let page = out(&warmfold(&asked));
    for words in
        ["Inner tent: Height (tent.height_m)", "height_m", "Left out: Inner tent, electricity, tent.height_m 2.9"]
    {
        assert!(page.contains(words), "{words:?} is not in {page}");
    }
    let json: Value =
        serde_json::from_str(&out(&warmfold(&[&asked[..], &["--json", "--csv", csv]].concat()))).expect("JSON");
    assert_eq!(json["axes"][0]["path"], "tent.height_m");
    assert_eq!(json["axes"][0]["values"], serde_json::json!([0.9, 2.9]));
    let points = &json["scenarios"][0]["points"];
    assert!(points[0]["left_out"].is_null() && points[1]["left_out"].is_string());
    // The study has a tent of 0.9 m: its own season.
    let run: Value = serde_json::from_str(&out(&warmfold(&["run", DEMO, "--json"]))).expect("JSON");
    let season = &run["scenarios"][2];
    assert_eq!(season["name"], json["scenarios"][0]["name"]);
    for key in ["cost", "heat_delivered_kwh", "fuel_quantity", "crop_zone_min_c", "hours_below_setpoint"] {
        assert_eq!(points[0][key], season[key], "{key}");
    }
    let table = std::fs::read_to_string(csv).expect("written");
    assert!(table.starts_with("scenario,tent.height_m [m],cost [$],heat [kWh]"), "{table}");
    assert_eq!(table.lines().count(), 3);
}

#[test]
fn sweep_lists_its_inputs_and_refuses_what_it_cannot_do() {
    let list = out(&warmfold(&["sweep", DEMO, "--list"]));
    for path in ["tent.height_m", "heater.setpoint_c", "water.vessels[0].count", "season.start_moved_d"] {
        assert!(list.contains(path), "{path}");
    }
    let of = |path: &'static str| ["sweep", DEMO, "--input", path, "--from", "1", "--to", "2"];
    refused(&of("tent.hight_m"), &["tent.hight_m", "did you mean \"tent.height_m\"?"]);
    refused(
        &[&HEIGHT[..], &["--scenario", "Inner tent, electrisity"]].concat(),
        &["did you mean \"Inner tent, electricity\"?"],
    );
    refused(&HEIGHT[..6], &["--from and --to"]);
    refused(&[&HEIGHT[..], &["--points", "1"]].concat(), &["choose from 2 to 500"]);
    refused(&[&HEIGHT[..], &["--csv", DEMO]].concat(), &["this is the study itself"]);
}

#[test]
fn best_buy_prints_a_table_json_and_csv() {
    let folder = tempfile::tempdir().expect("a folder");
    let csv = folder.path().join("measures.csv");
    let csv = csv.to_str().expect("UTF-8");
    let page = out(&warmfold(&["best-buy", DEMO, "--budget", "400"]));
    for words in
        ["Best buy: ", "Runner-up: ", "What the next money brings", "32 combinations, 5 winters, budget $ 400.00"]
    {
        assert!(page.contains(words), "{words:?} is not in {page}");
    }
    let asked = ["best-buy", DEMO, "--scenario", "Inner tent, electricity", "--winters", "3", "--json", "--csv", csv];
    let json: Value = serde_json::from_str(&out(&warmfold(&asked))).expect("JSON");
    assert_eq!((json["winters"].as_u64(), json["budget"].is_null()), (Some(3), true));
    // Nothing bought is the scenario itself.
    let ranked = json["ranked"].as_array().expect("a list");
    let nothing = ranked.iter().find(|o| o["buys"] == serde_json::json!([])).expect("nothing is bought in one");
    let run: Value = serde_json::from_str(&out(&warmfold(&["run", DEMO, "--json"]))).expect("JSON");
    assert_eq!(nothing["cost"], run["scenarios"][2]["cost"]);
    assert_eq!(nothing["total_cost"].as_f64(), nothing["cost"].as_f64().map(|cost| 3.0 * cost));
    assert_eq!(json["best"], ranked[0]);
    let table = std::fs::read_to_string(csv).expect("written");
    assert!(table.starts_with("rank,buys,holds the crop,to buy [$]"), "{table}");
    assert_eq!(table.lines().count() as u64, 1 + json["combinations"].as_u64().expect("a number"));
}

#[test]
fn best_buy_refuses_what_it_cannot_do() {
    refused(&["best-buy", "scenarios/glass-night-tariff.ron"], &["no measure is ticked", "candidates"]);
    refused(&["best-buy", DEMO, "--budget=-5"], &["budget"]);
    refused(&["best-buy", DEMO, "--winters", "0"], &["winters"]);
    refused(&["best-buy", DEMO, "--scenario", "Whole tunel, electricity"], &["did you mean"]);
    refused(&["best-buy", DEMO, "--csv", DEMO], &["this is the study itself"]);
}
