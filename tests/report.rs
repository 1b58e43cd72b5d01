//! The printable report: well-formed, self-contained, and in its figures the same as the other outputs.

#[path = "common/opening.rs"]
mod opening;
#[path = "common/seasons.rs"]
mod seasons;

use opening::{opened, runs};
use roxmltree::{Document, Node, ParsingOptions};
use std::path::Path;
use std::process::{Command, Output};
use warmfold::checks::{Case, checks};
use warmfold::format;
use warmfold::model::{CostLine, Measure, Scenario, Shape, Study, WeatherChoice, bundled_catalogue};
use warmfold::report::{Report, WeatherUsed, html};
use warmfold::season::ScenarioRun;
use warmfold::season::airing::{AirChanges, air_changes};
use warmfold::season::hard_night::{HardNights, hard_nights};
use warmfold::season::saving::{SavingStep, saving_steps};
use warmfold::storage::{self, read_bytes, read_file};
use warmfold::units::UnitSystem;
use warmfold::weather::Climate;

const DEMOS: [&str; 3] =
    ["scenarios/allotment-tunnel.ron", "scenarios/box-house-cold-sun.ron", "scenarios/glass-night-tariff.ron"];

/// The page of a study that was run, with the steps of the saving as far as they are given.
fn page(study: &Study, climate: &Climate, units: UnitSystem, runs: &[ScenarioRun], saving: Saving) -> String {
    html(&Report {
        study,
        catalogue: bundled_catalogue(),
        weather: WeatherUsed { climate, credit: "a credit", notes: &["a note".to_owned()] },
        runs: runs.iter().map(Some).collect(),
        saving,
        air: air(study, climate, runs),
        hard_nights: nights(study, climate),
        marks: &[],
        units,
        program_version: "1.2.3",
    })
}

fn air(study: &Study, climate: &Climate, runs: &[ScenarioRun]) -> Vec<Option<AirChanges>> {
    let changes = |(scenario, run): (&Scenario, &ScenarioRun)| {
        air_changes(study, scenario, climate, bundled_catalogue(), &run.summary, &|| false).ok()
    };
    study.scenarios.iter().zip(runs).map(changes).collect()
}

fn nights(study: &Study, climate: &Climate) -> Vec<Option<HardNights>> {
    let of_one = |scenario| hard_nights(study, scenario, climate, bundled_catalogue(), &|| false).ok();
    study.scenarios.iter().map(of_one).collect()
}

type Saving = Vec<Option<Vec<SavingStep>>>;

fn saving(study: &Study, climate: &Climate, runs: &[ScenarioRun]) -> Saving {
    let steps = |(scenario, run): (&Scenario, &ScenarioRun)| {
        saving_steps(study, scenario, climate, bundled_catalogue(), &run.summary, &|_| (), &|| false).ok()
    };
    study.scenarios.iter().zip(runs).map(steps).collect()
}

/// Reads the page as XML, which is stricter than any browser.
fn parsed(page: &str) -> Document<'_> {
    Document::parse_with_options(page, ParsingOptions { allow_dtd: true, ..ParsingOptions::default() })
        .unwrap_or_else(|error| panic!("not well-formed: {error}"))
}

/// A page that loads nothing, runs nothing, and prints no broken number.
fn sound<'a>(page: &'a str, what: &str) -> Document<'a> {
    let document = parsed(page);
    for word in ["<script", "http", "@import", "javascript", "<link", "<img", "<iframe", "<object"] {
        assert!(!page.contains(word), "{what}: {word}");
    }
    assert_eq!(page.matches("url(").count(), page.matches("url(#").count(), "{what}: something is loaded");
    let mut ids = Vec::new();
    for node in document.descendants() {
        let values = node.attributes().map(|a| a.value()).chain(node.text());
        for value in values.filter(|_| !node.has_tag_name("style")) {
            let words = value.split(|c: char| !c.is_alphanumeric());
            assert!(words.clone().all(|word| !matches!(word, "NaN" | "inf" | "Infinity")), "{what}: {value:?}");
        }
        for attribute in node.attributes() {
            assert!(!attribute.name().starts_with("on"), "{what}: {attribute:?}");
            assert!(!matches!(attribute.name(), "src" | "href" | "srcset"), "{what}: {attribute:?}");
        }
        ids.extend(node.attribute("id"));
    }
    for reference in page.split("url(#").skip(1).filter_map(|rest| rest.split(')').next()) {
        assert!(ids.contains(&reference), "{what}: {reference} is not on the page");
    }
    document
}

fn words(node: Node) -> String {
    node.descendants().filter(Node::is_text).filter_map(|text| text.text()).collect()
}

fn class_is(node: &Node, class: &str) -> bool {
    node.attribute("class").is_some_and(|classes| classes.split(' ').any(|c| c == class))
}

/// Printed values of a row of the tables side by side, without the differences below them.
fn row_of(document: &Document, key: &str) -> Vec<String> {
    let rows = document.descendants().filter(|node| node.attribute("data-row") == Some(key));
    let cells = rows.flat_map(|row| row.children().filter(|cell| cell.has_tag_name("td")));
    let value = |cell: Node| cell.first_element_child().map(words).unwrap_or_default();
    cells.map(value).collect()
}

fn number(text: &str) -> f64 {
    let plain: String =
        text.replace('−', "-").chars().filter(|c| c.is_ascii_digit() || matches!(c, '-' | '.')).collect();
    plain.parse().unwrap_or_else(|_| panic!("{text:?} is no number"))
}

fn warmfold(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_warmfold"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the program starts")
}

#[test]
fn the_worked_examples_print_in_both_unit_systems() {
    let folder = tempfile::tempdir().expect("a folder");
    for demo in DEMOS {
        for units in ["metric", "imperial"] {
            let out = folder.path().join(format!("{units}.html"));
            let output = warmfold(&["report", demo, "--out", &out.to_string_lossy(), "--units", units]);
            assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
            let page = std::fs::read_to_string(&out).expect("written");
            let document = sound(&page, demo);
            let text = words(document.root_element());
            assert_eq!(text.contains("°F"), units == "imperial", "{demo}");
            assert!(text.contains(env!("CARGO_PKG_VERSION")));
            for heading in [
                "In short",
                "The houses",
                "Side by side",
                "The winter",
                "Hard nights",
                "Power cut",
                "Air",
                "Damp",
                "Prices",
                "Cautions",
                "Sources",
            ] {
                assert!(text.contains(heading), "{demo}: {heading}");
            }
        }
    }
}

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
fn the_bars_add_up_to_the_printed_totals() {
    let (study, climate) = opened();
    let runs = runs(&study, &climate);
    let page = page(&study, &climate, UnitSystem::Metric, &runs, saving(&study, &climate, &runs));
    let document = parsed(&page);
    let figures: Vec<Node> = document.descendants().filter(|node| class_is(node, "steps")).collect();
    assert_eq!(figures.len(), study.scenarios.len());
    for (figure, run) in figures.iter().zip(&runs) {
        for (column, first, last) in [
            ("heat", run.summary.baseline_heat_kwh, run.summary.heat_delivered_kwh),
            ("money", run.summary.baseline_cost.expect("priced"), f64::NAN),
        ] {
            let printed: Vec<f64> =
                figure.descendants().filter(|node| class_is(node, column)).map(|node| number(&words(node))).collect();
            assert_eq!(printed.len(), 9, "a total, seven differences, a total");
            let sum: f64 = printed[..8].iter().sum();
            assert_eq!(sum, printed[8], "{}: {column} {printed:?}", run.summary.name);
            // Rounded to whole numbers.
            assert!((printed[0] - first).abs() <= 0.5, "{column} {printed:?}");
            assert!(last.is_nan() || (printed[8] - last).abs() <= 0.5, "{column} {printed:?}");
        }
    }
}

#[test]
fn names_from_the_study_are_escaped_everywhere() {
    let (mut study, climate) = opened();
    let nasty = "<b>&\" </td>";
    study.title = format!("{nasty} title");
    study.notes = format!("{nasty} notes");
    study.prices.electricity.origin = nasty.to_owned();
    study.prices.currency = "<$>".to_owned();
    study.scenarios.truncate(2);
    study.scenarios[0].name = nasty.to_owned();
    study.scenarios[1].notes = nasty.to_owned();
    study.scenarios[0].crop.name = nasty.to_owned();
    study.scenarios[0].costs =
        vec![CostLine { measure: Measure::Other, note: nasty.to_owned(), price: 3.0, life_years: 2.0 }];
    let page = page(&study, &climate, UnitSystem::Metric, &runs(&study, &climate), Vec::new());
    let document = sound(&page, "nasty");
    assert!(!document.descendants().any(|node| node.has_tag_name("b") && words(node).is_empty()));
    let named = document.descendants().filter(|node| class_is(node, "named") && words(*node) == nasty);
    assert!(named.count() >= 4, "the name stands as typed where the scenario is named");
    assert!(words(document.root_element()).contains("<$>"));
}

#[test]
fn one_scenario_and_many_with_long_names_fit() {
    let (study, climate) = opened();
    let long =
        "Inner tent over hoops round the long bench run, with film, fleece, drums and a heater of its own ".repeat(2);
    let runs = runs(&study, &climate);
    for count in [1, 6, 15] {
        let mut study = study.clone();
        let scenario = |i: usize| Scenario { name: format!("{long}{i}"), ..study.scenarios[i % 4].clone() };
        study.scenarios = (0..count).map(scenario).collect();
        let runs: Vec<ScenarioRun> = (0..count).map(|i| runs[i % 4].clone()).collect();
        let page = page(&study, &climate, UnitSystem::Imperial, &runs, Vec::new());
        let document = sound(&page, "long names");
        let widest = document
            .descendants()
            .filter(|node| node.has_tag_name("tr"))
            .map(|row| row.children().filter(|cell| cell.has_tag_name("td") || cell.has_tag_name("th")).count());
        assert!(widest.max().expect("tables") <= 9, "more columns than a page holds");
        assert_eq!(row_of(&document, "heat").len(), count);
        // A cited source is an "engineering reference"; what scenarios are compared with is "the reference".
        assert_eq!(words(document.root_element()).contains("the reference"), count > 1, "{count}");
        assert_eq!(document.descendants().filter(|node| class_is(node, "house")).count(), count);
    }
}

#[test]
fn odd_studies_give_a_page_without_broken_numbers() {
    let (study, climate) = opened();
    let bare = |change: &dyn Fn(&mut Study)| {
        let mut study = study.clone();
        study.scenarios.truncate(2);
        change(&mut study);
        study
    };
    let odd: [(&str, Study); 6] = [
        ("no heater", bare(&|s| s.scenarios.iter_mut().for_each(|s| s.heater.present = false))),
        ("no price", bare(&|s| s.prices.fuels.clear())),
        (
            "nothing known costs",
            bare(&|s| {
                s.prices.fuels.clear();
                s.scenarios.remove(0);
            }),
        ),
        (
            "a week",
            bare(&|s| {
                (s.season.from_month, s.season.from_day, s.season.to_month, s.season.to_day) = (12, 29, 1, 4);
            }),
        ),
        (
            "all hidden, free",
            bare(&|s| {
                s.scenarios.iter_mut().for_each(|s| s.shown = false);
                s.prices.electricity.price_per_kwh = 0.0;
            }),
        ),
        (
            "shapes",
            bare(&|s| {
                s.scenarios[0].house.shape = Shape::FlatBox;
                s.scenarios[1].house.shape = Shape::LeanTo;
                s.scenarios[1].heater.setpoint_day_c = None;
                s.scenarios[1].heater.rated_w = 0.0;
            }),
        ),
    ];
    for (what, study) in odd {
        let runs = runs(&study, &climate);
        let saving = saving(&study, &climate, &runs);
        for units in [UnitSystem::Metric, UnitSystem::Imperial] {
            sound(&page(&study, &climate, units, &runs, saving.clone()), what);
        }
    }
}

#[test]
fn a_study_that_was_not_run_still_gives_its_inputs() {
    let (study, climate) = opened();
    let report = Report {
        study: &study,
        catalogue: bundled_catalogue(),
        weather: WeatherUsed { climate: &climate, credit: "", notes: &[] },
        runs: Vec::new(),
        saving: Vec::new(),
        air: Vec::new(),
        hard_nights: Vec::new(),
        marks: &[],
        units: UnitSystem::Metric,
        program_version: "1.2.3",
    };
    let page = html(&report);
    let text = words(sound(&page, "not run").root_element());
    assert!(text.contains("could not be run") && text.contains("Inputs of the reference"));
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

/// Words of a page without its sources and without what the study and the catalogue write themselves.
fn own_words(document: &Document, study: &Study) -> String {
    let in_sources = |node: Node| node.ancestors().any(|above| above.attribute("class") == Some("sources"));
    let texts = document.descendants().filter(|node| node.is_text() && !in_sources(*node));
    let outside_style = texts.filter(|node| !node.ancestors().any(|above| above.has_tag_name("style")));
    let mut text = outside_style.filter_map(|node| node.text()).collect::<Vec<_>>().join(" ");
    let catalogue = bundled_catalogue();
    let mut quoted: Vec<String> = study.scenarios.iter().map(|s| s.name.clone()).collect();
    quoted.extend(study.scenarios.iter().flat_map(|s| s.costs.iter().map(|line| line.note.clone())));
    quoted.extend(study.scenarios.iter().flat_map(|s| [s.heater.name.clone(), s.notes.clone()]));
    quoted.extend([study.title.clone(), study.notes.clone(), study.site.name.clone()]);
    quoted.extend(catalogue.sheets.iter().map(|row| row.name.clone()));
    quoted.extend(catalogue.screens.iter().map(|row| row.name.clone()));
    quoted.extend(catalogue.trays.iter().map(|row| row.name.clone()));
    quoted.extend(study.prices.fuels.iter().flat_map(|fuel| [fuel.origin.clone(), fuel.unit.clone()]));
    quoted.push(study.prices.electricity.origin.clone());
    quoted.sort_by_key(|words| std::cmp::Reverse(words.len()));
    for words in quoted.iter().filter(|words| !words.trim().is_empty()) {
        text = text.replace(words.as_str(), " ").replace(&words.replace(' ', "\u{a0}"), " ");
    }
    text
}

#[test]
fn a_page_has_the_units_of_its_reader_alone() {
    let metric = [
        "°C", "K", "m", "m²", "m³", "cm", "mm", "km", "kg", "g", "L", "K·h", "K·d", "m/s", "m³/h", "W/K", "W/m²K",
        "W/mK", "m²K/W", "kJ/m²K", "g/m²", "litre", "litres", "metre", "metres", "kelvin",
    ];
    // "in" is a word too.
    let imperial = [
        "°F",
        "ft",
        "ft²",
        "ft³",
        "lb",
        "oz",
        "oz/ft²",
        "gal",
        "mph",
        "cfm",
        "cfm/ft²",
        "°F·h",
        "°F·d",
        "Btu/h·°F",
        "Btu/h·ft²·°F",
        "Btu/h·ft·°F",
        "h·ft²·°F/Btu",
        "Btu/ft²·°F",
        "foot",
        "feet",
        "inch",
        "inches",
        "pound",
        "pounds",
    ];
    for (place, file) in DEMOS.into_iter().enumerate() {
        let study = storage::read_study(&std::fs::read_to_string(file).expect("a study")).expect("it reads");
        let WeatherChoice::Station(station) = &study.site.weather else { unreachable!("{file} names a station") };
        let climate = seasons::climate(station);
        let runs = runs(&study, &climate);
        for (units, foreign) in [(UnitSystem::Metric, &imperial[..]), (UnitSystem::Imperial, &metric[..])] {
            let saving = if place == 0 { saving(&study, &climate, &runs) } else { Vec::new() };
            let page = page(&study, &climate, units, &runs, saving);
            let text = own_words(&parsed(&page), &study);
            let is_edge = |c: char| c.is_whitespace() || ",;:.()\"“”–".contains(c);
            let words: Vec<&str> = text.split(is_edge).filter(|word| !word.is_empty()).collect();
            let odd = words.iter().enumerate().filter(|(_, word)| foreign.contains(word));
            let odd: Vec<String> =
                odd.map(|(at, _)| words[at.saturating_sub(8)..(at + 4).min(words.len())].join(" ")).collect();
            assert!(odd.is_empty(), "{file}, {units:?}: {odd:#?}");
            // What this looks through has numbers with units of the reader's own.
            let own = if units == UnitSystem::Metric { &metric[..] } else { &imperial[..] };
            assert!(words.iter().filter(|word| own.contains(word)).count() > 50, "{file}, {units:?}");
        }
    }
}

#[test]
fn marks_are_those_of_the_cards() {
    let (study, climate) = opened();
    let runs = runs(&study, &climate);
    let with = |marks: &[usize]| {
        html(&Report {
            study: &study,
            catalogue: bundled_catalogue(),
            weather: WeatherUsed { climate: &climate, credit: "", notes: &[] },
            runs: runs.iter().map(Some).collect(),
            saving: Vec::new(),
            air: Vec::new(),
            hard_nights: Vec::new(),
            marks,
            units: UnitSystem::Metric,
            program_version: "1.2.3",
        })
    };
    let order: Vec<usize> = (0..study.scenarios.len()).collect();
    assert_eq!(with(&[]), with(&order), "a file gives marks in its order");
    let mut moved = order.clone();
    moved.rotate_left(1);
    let badges = |page: &str| -> Vec<String> {
        let document = parsed(page);
        let digest = document.descendants().find(|node| node.attribute("class") == Some("digest")).expect("a digest");
        let badges = digest.descendants().filter(|node| node.attribute("class") == Some("badge"));
        badges.map(|badge| page[badge.range()].to_owned()).collect()
    };
    let (before, mut after) = (badges(&with(&order)), badges(&with(&moved)));
    after.rotate_right(1);
    assert_eq!(before, after);
    assert_ne!(before[0], before[1]);
}

#[test]
fn every_check_is_printed_with_its_rule() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/checks/fails.ron");
    let study = read_bytes(&read_file(&path).expect("a file")).expect("a study");
    let climate = seasons::climate("duluth-mn");
    let runs = runs(&study, &climate);
    for units in [UnitSystem::Metric, UnitSystem::Imperial] {
        let text = page(&study, &climate, units, &runs, vec![None]);
        let document = sound(&text, "checks");
        let section = document.descendants().find(|node| class_is(node, "checks")).expect("the section");
        let printed = words(section);
        let case =
            Case { study: &study, scenario: &study.scenarios[0], catalogue: bundled_catalogue(), run: &runs[0], units };
        for check in checks(&case) {
            for part in [check.name, check.grade.name(), &check.figure, &check.rule, check.source, &check.remedy] {
                assert!(printed.contains(part), "{part:?} is not printed");
            }
        }
    }
}
