//! The commands, run as a user runs them.

use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

const DEMO: &str = "scenarios/allotment-tunnel.ron";
const DEMOS: [&str; 3] = [DEMO, "scenarios/box-house-cold-sun.ron", "scenarios/glass-night-tariff.ron"];

/// Runs the program in the repository's folder, without a display.
fn warmfold(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_warmfold"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .output()
        .expect("the program starts")
}

fn code(output: &Output) -> Option<i32> {
    output.status.code()
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).expect("UTF-8")
}

fn err(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).expect("UTF-8")
}

/// A refusal: exit code 2, nothing on standard output, these words on standard error.
fn refused(output: &Output, words: &[&str]) {
    assert_eq!(code(output), Some(2), "{}", err(output));
    assert_eq!(out(output), "");
    for word in words {
        assert!(err(output).contains(word), "{word:?} is not in {:?}", err(output));
    }
}

/// Twenty winters of the opening study: the words hold the numbers, quantiles are in order, CSV has every winter.
#[test]
fn many_winters_are_told_in_words_numbers_and_rows() {
    let folder = tempfile::tempdir().expect("a folder");
    let csv = folder.path().join("winters.csv");
    let csv_path = csv.to_str().expect("UTF-8");
    let told = warmfold(&["winters", DEMO, "--count", "20", "--json", "--csv", csv_path]);
    assert_eq!(code(&told), Some(0), "{}", err(&told));
    let json: Value = serde_json::from_str(&out(&told)).expect("JSON");
    assert_eq!((json["count"].as_u64(), json["seed"].as_u64()), (Some(20), Some(1)));
    let scenarios = json["scenarios"].as_array().expect("scenarios");
    for scenario in scenarios {
        let [low, middle, high] = ["p10", "p50", "p90"].map(|p| scenario["cost"][p].as_f64().expect("money"));
        assert!(low < middle && middle < high, "{}", scenario["cost"]);
        let sentence = scenario["sentences"][0].as_str().expect("a sentence");
        assert!(sentence.starts_with("One winter in ten costs more than $"), "{sentence}");
        assert_eq!(scenario["winters"], 20);
        let fan = scenario["running_cost"].as_array().expect("days");
        assert!((fan.last().expect("a day")["p50"].as_f64().expect("money") - middle).abs() < 1e-9);
    }
    let rows = std::fs::read_to_string(&csv).expect("written").lines().count();
    assert_eq!(rows, 1 + 20 * scenarios.len());
    refused(&warmfold(&["winters", DEMO, "--count", "5"]), &["--count", "20 to 1000"]);
    refused(&warmfold(&["winters", DEMO, "--count", "20", "--csv", DEMO]), &["the study itself"]);
}

#[test]
fn what_matters_is_ranked_with_its_reasons() {
    let asked = ["sensitivity", DEMO, "--scenario", "Inner tent, propane"];
    let page = out(&warmfold(&asked));
    assert!(page.contains("All doubts together") && page.contains("Why so far"), "{page}");
    let json: Value = serde_json::from_str(&out(&warmfold(&[&asked[..], &["--json"]].concat()))).expect("JSON");
    let cost = json["as_it_is"]["cost"].as_f64().expect("money");
    let [low, high] = [0, 1].map(|end| json["cost_band"][end].as_f64().expect("money"));
    assert!(low < cost && cost < high, "{low} {cost} {high}");
    for effect in json["effects"].as_array().expect("effects") {
        assert!(
            !effect["reason"].as_str().expect("a reason").is_empty() && effect["more"]["cost"].is_f64(),
            "{effect}"
        );
        assert!(page.contains(effect["name"].as_str().expect("a name")));
    }
    let folder = tempfile::tempdir().expect("a folder");
    let csv = folder.path().join("doubts.csv");
    let reference = out(&warmfold(&["sensitivity", DEMO, "--csv", csv.to_str().expect("a path")]));
    assert!(reference.starts_with("Whole tunnel, electricity: "), "{reference}");
    let rows = std::fs::read_to_string(&csv).expect("written").lines().count();
    let why = reference.lines().skip_while(|line| *line != "Why so far").skip(1).count();
    assert_eq!(rows, 2 + why, "head, the season as described, and a row for every doubt");
    refused(&warmfold(&["sensitivity", DEMO, "--scenario", "Inner tent, propan"]), &["did you mean"]);
    refused(&warmfold(&["sensitivity", DEMO, "--csv", DEMO]), &["the study itself"]);
}

/// Keys that every scenario has, and that hold a number.
const NUMBERS: [&str; 39] = [
    "heat_delivered_kwh",
    "fuel_quantity",
    "cost",
    "peak_heater_w",
    "design_load_w_99",
    "design_load_w_99_6",
    "design_load_w_coldest",
    "heater_margin_w_99_6",
    "heater_margin_w_largest_hour",
    "next_heater_w",
    "hours_below_setpoint",
    "degree_hours_below_setpoint_kh",
    "hours_below_crop_limit",
    "crop_zone_min_c",
    "house_min_c",
    "degree_hours_kh",
    "baseline_heat_kwh",
    "baseline_cost",
    "sun_kept_kwh",
    "vapour_loss_kwh",
    "ground_kwh",
    "skin_loss_kwh",
    "leakage_loss_kwh",
    "vent_loss_kwh",
    "party_wall_kwh",
    "store_change_kwh",
    "books_closure",
    "season_hours",
    "crop_limit_c",
    "hours_skin_wet",
    "hours_crop_humidity_90",
    "skin_condensed_kg",
    "tent_wall_condensed_kg",
    "mist_kg",
    "evaporated_kg",
    "burner_water_kg",
    "vapour_carried_out_kg",
    "vapour_store_change_kg",
    "moisture_books_closure",
];

/// Keys that every scenario has; they may hold nothing, such as the water of a house without any.
const OTHERS: [&str; 12] = [
    "name",
    "season_start",
    "season_end",
    "fuel_unit",
    "peak_heater_at",
    "crop_zone_min_at",
    "water_min_c",
    "water_ice_share_max",
    "degree_hour_bracket_low_kwh",
    "degree_hour_bracket_high_kwh",
    "hours_tent_wall_wet",
    "power_cut",
];

#[test]
fn json_of_the_demos_has_its_keys_and_closed_books() {
    let output = warmfold(&["run", DEMOS[0], DEMOS[1], DEMOS[2], "--json"]);
    assert_eq!(code(&output), Some(0), "{}", err(&output));
    let studies: Value = serde_json::from_str(&out(&output)).expect("JSON");
    let studies = studies.as_array().expect("a list for several files");
    assert_eq!(studies.len(), 3);
    for (study, file) in studies.iter().zip(DEMOS) {
        assert_eq!(study["file"], file);
        assert_eq!(study["program_version"], env!("CARGO_PKG_VERSION"));
        assert!(study["weather"].as_str().is_some_and(|name| !name.is_empty()));
        assert!(study["heating_degree_days_18_3_c"].as_f64().is_some_and(|days| days > 1000.0));
        let scenarios = study["scenarios"].as_array().expect("scenarios");
        assert_eq!(scenarios.len(), 4);
        for scenario in scenarios {
            let keys = scenario.as_object().expect("an object");
            for key in NUMBERS {
                // Not a number is written as null.
                assert!(scenario[key].as_f64().is_some_and(f64::is_finite), "{file}: {key} = {}", scenario[key]);
            }
            for key in OTHERS {
                assert!(keys.contains_key(key), "{file}: no {key}");
            }
            // The months add up to the season.
            let by_month = scenario["air_by_month"].as_array().expect("months");
            for key in ["hours_above_35_c", "hours_skin_wet", "hours_crop_humidity_90"] {
                let sum: u64 = by_month.iter().filter_map(|month| month[key].as_u64()).sum();
                assert_eq!(Some(sum), scenario[key].as_u64(), "{file}: {key}");
            }
            let advice = &scenario["air_advice"];
            for key in ["outdoor_c", "rise_shut_k", "rise_as_it_is_k", "flow_needed_m3_per_h", "openings_still_m2"] {
                assert!(advice[key].as_f64().is_some_and(f64::is_finite), "{file}: {key} = {}", advice[key]);
            }
            // Wherever a flue is asked about, it dries; airing always costs.
            let changes = &scenario["air_changes"];
            assert!(changes["morning_airing"]["cost"].as_f64().is_some_and(|cost| cost > 0.0), "{file}: {changes}");
            assert!(changes["flue"].is_null() == (scenario["burner_water_kg"].as_f64() == Some(0.0)), "{file}");
            // The books must close to 10⁻⁶ of throughput.
            assert!(scenario["books_closure"].as_f64().is_some_and(|rest| rest.abs() < 1e-6));
            assert!(scenario["moisture_books_closure"].as_f64().is_some_and(|rest| rest.abs() < 1e-6));
            hard_nights_are_told(scenario, file);
            for water in ["with_water", "without_water"] {
                for of in ["air", "trays"] {
                    for to in ["crop_limit", "freezing"] {
                        let key = format!("{of}_to_{to}_h");
                        assert!(!scenario["power_cut"][water][&key].is_null(), "{file}: {water} {key}");
                    }
                }
            }
        }
    }
}

/// The worst spell, the power cut that is asked for, and the colder spell have their keys.
fn hard_nights_are_told(scenario: &Value, file: &str) {
    let number = |part: &Value, key: &str| part[key].as_f64().unwrap_or_else(|| panic!("{file}: {key}: {part}"));
    let worst = &scenario["worst_spell"];
    for key in ["hours", "below_crop_limit_kh", "below_setpoint_kh", "heat_kwh", "outdoor_min_c", "crop_air_min_c"] {
        number(worst, key);
    }
    assert!(worst["starts_at"].is_string() && worst["by"].is_string(), "{worst}");
    let floor = &worst["floor"];
    assert!(number(floor, "least_kwh") <= number(floor, "first_kwh").min(number(floor, "last_kwh")), "{floor}");
    let cut = &scenario["asked_power_cut"];
    assert_eq!(cut["hours"], 12, "what a study that does not say asks for");
    // It starts where the season's own does, with the same times.
    assert_eq!(cut["starts_at"], scenario["power_cut"]["starts_at"]);
    let whole = &cut["courses"][0];
    assert!(whole["without"].is_null(), "{whole}");
    for key in ["air_to_crop_limit_h", "air_to_freezing_h", "trays_to_crop_limit_h", "trays_to_freezing_h"] {
        assert_eq!(whole[key], scenario["power_cut"]["with_water"][key], "{file}: {key}");
    }
    for course in cut["courses"].as_array().into_iter().flatten() {
        number(course, "air_min_c");
        assert!(course["recovery_h"].is_number() || course["recovery_h"].is_string() || course["recovery_h"].is_null());
    }
    let spell = &scenario["colder_spell"];
    for key in ["hours", "outdoor_min_c", "colder_by_k", "crop_air_min_c", "hours_at_full_output", "heater_needed_w"] {
        number(spell, key);
    }
    // Holding five kelvin colder and the bound say the same.
    let bound_k = number(spell, "most_colder_by_k");
    assert_eq!(spell["holds"], bound_k >= number(spell, "colder_by_k"), "{spell}");
    assert!((number(spell, "outdoor_min_c") - bound_k - number(spell, "holds_down_to_c")).abs() < 1e-9);
}

#[test]
fn the_demo_tells_its_story() {
    let output = warmfold(&["run", DEMO, "--json"]);
    let study: Value = serde_json::from_str(&out(&output)).expect("one object for one file");
    let cost = |index: usize| study["scenarios"][index]["cost"].as_f64().unwrap_or(f64::NAN);
    // Whole tunnel by electricity and propane, inner tent by electricity and propane: the tent saves most.
    assert!(cost(2) < 0.4 * cost(0) && cost(3) < 0.4 * cost(1), "{} {} {} {}", cost(0), cost(1), cost(2), cost(3));
    for index in 0..4 {
        assert_eq!(study["scenarios"][index]["hours_below_crop_limit"], 0);
    }
    // stations.md of the weather data: Duluth, 18.3 °C, hourly daily mean (computed from the same file by another program).
    let days = study["heating_degree_days_18_3_c"].as_f64().unwrap_or(f64::NAN);
    assert!((days - 5303.0).abs() < 1.0, "{days}");
}

#[test]
fn checks_come_with_every_scenario() {
    let output = warmfold(&["run", "tests/data/checks/fails.ron", "--json"]);
    assert_eq!(code(&output), Some(0), "{}", err(&output));
    let results: Value = serde_json::from_str(&out(&output)).expect("JSON");
    let checks = results["scenarios"][0]["checks"].as_array().expect("a list").clone();
    assert!(checks.len() > 15, "{checks:#?}");
    for check in &checks {
        assert!(["stop", "look", "fine"].contains(&check["grade"].as_str().expect("a grade")));
        for key in ["name", "figure", "rule", "source", "remedy"] {
            assert!(check[key].as_str().is_some_and(|text| !text.is_empty()), "{key} of {check}");
        }
    }
    let stops = checks.iter().filter(|check| check["grade"] == "stop").count();
    let page = out(&warmfold(&["run", "tests/data/checks/fails.ron"]));
    assert!(page.contains(&format!("{stops} / ")), "{page}");
}

#[test]
fn the_page_is_aligned_and_names_every_scenario() {
    let output = warmfold(&["run", DEMO]);
    assert_eq!(code(&output), Some(0), "{}", err(&output));
    let page = out(&output);
    for words in ["Duluth", "Whole tunnel, electricity", "Inner tent, propane", "US gal", "Baseline"] {
        assert!(page.contains(words), "{page}");
    }
    let rule = page.lines().position(|line| line.starts_with("---")).expect("a rule under the titles");
    let lengths: Vec<usize> = page.lines().skip(rule).take(5).map(|line| line.chars().count()).collect();
    assert!(lengths.iter().all(|length| *length == lengths[0]), "{page}");
}

#[test]
fn without_a_display_one_sentence_and_the_demo() {
    let output = warmfold(&[]);
    assert_eq!(code(&output), Some(0));
    let said = err(&output);
    assert_eq!(said.lines().count(), 1, "{said}");
    assert!(said.contains("to get"), "{said}");
    assert_eq!(out(&output), out(&warmfold(&["run", DEMO])));
    let other = warmfold(&[DEMOS[1]]);
    assert!(out(&other).contains("Boards and water"), "{}", out(&other));
    refused(&warmfold(&["tests/data/studies/no_sheets.ron"]), &["name at least one sheet"]);
}

fn temporary(name: &str) -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().expect("temporary folder");
    let path = folder.path().join(name);
    (folder, path)
}

fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}

#[test]
fn hours_carry_weather_temperatures_and_closed_books() {
    let (_folder, path) = temporary("hours.csv");
    let output = warmfold(&["hours", DEMO, "--scenario", "Inner tent, electricity", "--out", &text(&path)]);
    assert_eq!(code(&output), Some(0), "{}", err(&output));
    let mut reader = csv::Reader::from_path(&path).expect("a table");
    let titles = reader.headers().expect("titles").clone();
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
    // 15 October to 30 April: 17 + 30 + 31 + 31 + 28 + 31 + 30 days.
    assert_eq!(rows.len(), 198 * 24);
    let number = |row: &csv::StringRecord, title: &str| -> f64 {
        let at = titles.iter().position(|t| t == title).unwrap_or_else(|| panic!("no column {title}"));
        row[at].parse().unwrap_or_else(|_| panic!("{title} = {:?}", &row[at]))
    };
    let (gains, losses) = (
        ["heater_w", "standby_w", "sun_w"],
        [
            "vapour_w",
            "skin_loss_w",
            "leakage_loss_w",
            "vent_loss_w",
            "ground_loss_w",
            "party_wall_loss_w",
            "store_change_w",
        ],
    );
    for row in &rows {
        let gained: f64 = gains.iter().map(|title| number(row, title)).sum();
        let lost: f64 = losses.iter().map(|title| number(row, title)).sum();
        // Ten cells of four decimals round to 5·10⁻⁴ W at most; the solver's iteration leaves less.
        assert!((gained - lost).abs() < 2e-3, "{row:?}: {gained} against {lost}");
    }
    // Water gives its heat across a fixed surface: 7 W/m²K (published 6 to 8) times what the drums show.
    let conductance = |row: &csv::StringRecord| {
        let warmer_k = number(row, "house_water_c") - number(row, "house_air_c");
        (warmer_k.abs() > 5.0).then(|| number(row, "house_water_heat_w") / warmer_k)
    };
    let found: Vec<f64> = rows.iter().filter_map(conductance).collect();
    assert!(!found.is_empty() && found.iter().all(|w| *w > 0.0 && (w - found[0]).abs() < 1e-3 * found[0]));
    for title in [
        "outdoor_c",
        "sky_c",
        "wind_m_per_s",
        "house_air_c",
        "house_water_c",
        "tent_air_c",
        "house_ice_share",
        "vent_opening",
        "air_exchange_m3_per_h",
        "tent_exchange_m3_per_h",
        "house_humidity",
        "tent_humidity",
        "skin_condensation_g_per_m2h",
        "tent_wall_condensation_g_per_m2h",
        "house_mist_g_per_h",
        "tent_mist_g_per_h",
        "setpoint_c",
    ] {
        assert!(number(&rows[0], title).is_finite());
    }
}

#[test]
fn hours_refuse_what_would_do_harm() {
    let (_folder, path) = temporary("hours.csv");
    let unknown = warmfold(&["hours", DEMO, "--scenario", "Inner tent, elektricity", "--out", &text(&path)]);
    refused(&unknown, &["did you mean \"Inner tent, electricity\"?"]);
    assert!(!path.exists());
    let (_folder, study) = temporary("study.ron");
    std::fs::copy(Path::new(env!("CARGO_MANIFEST_DIR")).join(DEMO), &study).expect("copied");
    let before = std::fs::read(&study).expect("read");
    let itself = warmfold(&["hours", &text(&study), "--scenario", "Whole tunnel, propane", "--out", &text(&study)]);
    refused(&itself, &["the study itself"]);
    assert_eq!(std::fs::read(&study).expect("read"), before);
    let nowhere = warmfold(&["hours", DEMO, "--scenario", "Whole tunnel, propane", "--out", "/nowhere/at/all.csv"]);
    refused(&nowhere, &["could not be written", "check the folder"]);
}

#[test]
fn refusals_name_file_line_column_field_and_remedy() {
    refused(
        &warmfold(&["run", "tests/data/studies/field_misspelt.ron", "--json"]),
        &["tests/data/studies/field_misspelt.ron:8:9: scenarios[0].house.lenght_m", "did you mean \"length_m\"?"],
    );
    refused(
        &warmfold(&["check", "tests/data/studies/too_wide.ron", "tests/data/studies/letter.ron"]),
        &["too_wide.ron:7:24: scenarios[0].house.width_m", "from 0.3 m to 20 m", "letter.ron:2:1:"],
    );
    // One broken file among good ones: no half results.
    refused(&warmfold(&["run", DEMO, "tests/data/studies/no_sheets.ron", "--json"]), &["no_sheets.ron:7:26"]);
    refused(&warmfold(&["run", "no-such-study.ron"]), &["no-such-study.ron", "there is no such file"]);
    refused(&warmfold(&["run", "scenarios"]), &["folder"]);
    assert_eq!(code(&warmfold(&["run"])), Some(2));
    assert_eq!(code(&warmfold(&["walk", DEMO])), Some(2));
}

#[test]
fn weather_that_is_not_there_is_refused_at_its_place() {
    let (folder, path) = temporary("study.ron");
    let with_weather = |weather: &str| {
        std::fs::write(&path, format!("(\n  site: (weather: {weather}),\n)\n")).expect("written");
        warmfold(&["check", &text(&path)])
    };
    refused(&with_weather("Station(\"duluth\")"), &["study.ron:2:19: site.weather", "did you mean \"duluth-mn\"?"]);
    refused(&with_weather("File(\"town.epw\")"), &[":2:19: site.weather", "town.epw", "check its name"]);
    std::fs::write(folder.path().join("town.epw"), "Dear neighbour").expect("written");
    refused(&with_weather("File(\"town.epw\")"), &[":2:19: site.weather", "town.epw"]);
    assert_eq!(code(&with_weather("Station(\"duluth-mn\")")), Some(0));
}

#[test]
fn sound_files_pass_the_check_with_their_warnings() {
    let (_folder, path) = temporary("study.ron");
    std::fs::write(&path, "(scenarios: [(name: \"One\", heater: (fuel: \"propane\"))])").expect("written");
    let output = warmfold(&["check", &text(&path)]);
    assert_eq!(code(&output), Some(0));
    assert!(out(&output).contains("sound"));
    assert!(err(&output).contains("warning: ") && err(&output).contains("add it to the prices"), "{}", err(&output));
    let results: Value = serde_json::from_str(&out(&warmfold(&["run", &text(&path), "--json"]))).expect("JSON");
    assert!(results["scenarios"][0]["cost"].is_null(), "without a price the cost is unknown");
}

/// Rows of a table that the command wrote.
fn table_of(which: &str) -> Vec<Vec<String>> {
    let (_folder, path) = temporary("table.csv");
    let output = warmfold(&["table", DEMO, "--table", which, "--out", &text(&path)]);
    assert_eq!(code(&output), Some(0), "{}", err(&output));
    let written = std::fs::read_to_string(&path).expect("a table");
    // RFC 4180, section 2: each record on a line of its own, ended by CRLF; as many fields in each.
    assert_eq!(written.matches('\n').count(), written.matches("\r\n").count());
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(written.as_bytes());
    reader.records().map(|row| row.expect("a row").iter().map(str::to_owned).collect()).collect()
}

fn column_sum(rows: &[Vec<String>], column: usize) -> f64 {
    rows.iter().skip(1).map(|row| row[column].parse::<f64>().expect("a number")).sum()
}

#[test]
fn every_table_adds_up_to_the_season() {
    let study: serde_json::Value = serde_json::from_str(&out(&warmfold(&["run", DEMO, "--json"]))).expect("JSON");
    let scenarios = study["scenarios"].as_array().expect("scenarios");
    let months = table_of("months");
    for (place, scenario) in scenarios.iter().enumerate() {
        let heat_kwh = scenario["heat_delivered_kwh"].as_f64().expect("heat");
        // Seven months, each rounded to a tenth.
        let sum = column_sum(&months, 3 + place);
        assert!((sum - heat_kwh).abs() < 0.36, "{}: {sum} of {heat_kwh}", months[0][3 + place]);
    }
    let steps = table_of("steps");
    let last_of = |name: &str| steps.iter().rfind(|row| row[0] == name).expect("its steps")[2].parse::<f64>();
    for scenario in scenarios {
        let name = scenario["name"].as_str().expect("a name");
        let heat_kwh = scenario["heat_delivered_kwh"].as_f64().expect("heat");
        assert!((last_of(name).expect("heat") - heat_kwh).abs() <= 0.051, "{name}");
    }
    let calendar = table_of("calendar");
    let fuelled = scenarios.iter().find(|s| s["fuel_unit"].as_str().is_some_and(|unit| unit.contains("cylinder")));
    if let Some(scenario) = fuelled {
        let own: Vec<_> = calendar.iter().filter(|row| row[0] == scenario["name"]).cloned().collect();
        let used: f64 = own.iter().map(|row| row[3].parse::<f64>().expect("a number")).sum();
        // Seven months, each rounded to a hundredth.
        assert!((used - scenario["fuel_quantity"].as_f64().expect("fuel")).abs() < 0.036, "{used}");
    }
    let air = table_of("air");
    let hours: u64 = scenarios.iter().filter_map(|s| s["hours_skin_wet"].as_u64()).sum();
    assert!((column_sum(&air, 3) - hours as f64).abs() < 0.5, "{air:?}");
    assert_eq!(calendar[0][..3], ["scenario", "month", "unit"]);
    assert_eq!(table_of("side")[0][..3], ["part", "row", "unit"]);
}

#[test]
fn json_lists_what_is_bought_and_when_fuel_runs_out() {
    let study: serde_json::Value = serde_json::from_str(&out(&warmfold(&["run", DEMO, "--json"]))).expect("JSON");
    let number = |value: &serde_json::Value| value.as_f64().expect("a number");
    let mut calendars = 0;
    for scenario in study["scenarios"].as_array().expect("scenarios") {
        let lines = scenario["buying"].as_array().expect("lines");
        let cost: f64 = lines.iter().map(|line| number(&line["quantity"]) * number(&line["price"])).sum();
        assert!((cost - number(&scenario["buying_cost"])).abs() < 1e-6);
        let Some(calendar) = scenario["fuel_calendar"].as_object() else {
            assert_eq!(scenario["fuel_unit"], "kWh", "only what comes by wire has no calendar here");
            continue;
        };
        calendars += 1;
        let used: f64 = calendar["months"].as_array().expect("months").iter().map(|m| number(&m["used"])).sum();
        assert!((used - number(&scenario["fuel_quantity"])).abs() < 1e-6, "{used}");
        assert_eq!(calendar["unit"], scenario["fuel_unit"]);
        // A unit is empty for each whole one that was burnt, as far as they are listed.
        assert_eq!(calendar["runs_out"].as_array().expect("dates").len(), (used.floor() as usize).min(120));
    }
    assert!(calendars > 0);
}
