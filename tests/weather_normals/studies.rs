//! Studies on a climate table, on a log and with cold on top: read, refused in place, run and moved.

use std::path::Path;
use std::process::{Command, Output};
use warmfold::model::{Study, WeatherChoice};
use warmfold::storage::{bring_weather, load, load_weather, read_study, write_study};

const SEATTLE: &str = include_str!("../data/measured/seattle_daily_2012_2015.csv");

/// A study of a made-up village with these lines in its site.
fn study(site: &str) -> String {
    format!(
        "(\n    format: 1,\n    site: (\n        latitude_deg: 52.5,\n        longitude_deg: -1.5,\n{site}\n    ),\n)\n"
    )
}

fn table(third: &str) -> String {
    let month =
        |m: usize| if m == 2 { third.to_owned() } else { "(min_c: 1.5, max_c: 8.5, wind_m_per_s: 4.0)".to_owned() };
    let months: Vec<String> = (0..12).map(month).collect();
    format!("        weather: Normals(months: [\n            {},\n        ]),", months.join(",\n            "))
}

fn warmfold(folder: &Path, arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_warmfold"));
    command.args(arguments).current_dir(folder).env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    command.output().expect("the program starts")
}

fn text(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).expect("UTF-8")
}

#[test]
fn a_table_is_run_and_the_report_says_how_the_year_was_made() {
    let folder = tempfile::tempdir().expect("a folder");
    let content = study(&format!("{}\n        colder: (shift_k: 1.5),", table("(min_c: 2.0, max_c: 10.0)")));
    std::fs::write(folder.path().join("a.ron"), &content).expect("written");
    let read = read_study(&content).expect("a study");
    assert_eq!(read_study(&write_study(&read)).expect("its own text"), read);
    let run = warmfold(folder.path(), &["run", "a.ron", "--json"]);
    for words in ["most similar winter", "Belcher, Hacker and Powell 2005", "every hour is taken 1.5 K colder"] {
        assert!(text(&run.stdout).contains(words), "{words} in {}", text(&run.stdout));
    }
    assert_eq!(run.stdout, warmfold(folder.path(), &["run", "a.ron", "--json"]).stdout, "the same bits");
    let report = warmfold(folder.path(), &["report", "a.ron", "--out", "a.html"]);
    assert_eq!(report.status.code(), Some(0), "{}", text(&report.stderr));
    let page = std::fs::read_to_string(folder.path().join("a.html")).expect("a report");
    assert!(page.contains("most similar winter"));
}

#[test]
fn what_is_wrong_with_a_table_is_said_at_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let cases = [
        (study(&table("(min_c: 2.0, max_c: 1.0)")), "9:", "site.weather.months[2].max_c", "not above the minimum"),
        (study(&table("(min_c: 2.0, max_c: 100.0)")), "9:", "site.weather.months[2].max_c", "from -60 °C to 60 °C"),
        (study(&table("(min_c: 2.0, max_c: 9.0, sunshine_h: 900)")), "9:", "months[2].sunshine_h", "from 0 to 744"),
        (study("        weather: Normals(months: [(min_c: 1.0)]),"), "6:", "site.weather.months", "twelve rows"),
        (
            study(&table("(min_c: 2.0)")).replace("        latitude_deg: 52.5,\n", ""),
            "3:",
            "site.latitude_deg",
            "enter it",
        ),
        (
            study("        colder: (snap_from_month: 2, snap_from_day: 30),"),
            "6:",
            "site.colder.snap_from_day",
            "no day 30",
        ),
        (study("        weather: Log(file: \"no.csv\"),"), "6:", "site.weather", "no weather file"),
    ];
    for (content, line, place, words) in cases {
        std::fs::write(folder.path().join("b.ron"), &content).expect("written");
        let output = warmfold(folder.path(), &["check", "b.ron"]);
        let told = text(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{told}\n{content}");
        let found =
            told.lines().any(|l| l.starts_with(&format!("b.ron:{line}")) && l.contains(place) && l.contains(words));
        assert!(found, "{line} {place} {words} in {told}");
    }
}

#[test]
fn a_log_travels_with_its_study_and_another_of_its_name_is_noticed() {
    let (home, away) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
    std::fs::write(home.path().join("shed.csv"), SEATTLE).expect("written");
    std::fs::write(home.path().join("c.ron"), study("        weather: Log(file: \"shed.csv\", coast: true),"))
        .expect("written");
    let mut moved: Study = load(&home.path().join("c.ron")).expect("a study");
    bring_weather(&mut moved, home.path(), away.path()).expect("brought");
    assert_eq!(moved.site.weather.file(), Some("shed.csv"));
    assert!(matches!(&moved.site.weather, WeatherChoice::Log(log) if log.coast));
    let weather = load_weather(&moved.site, away.path()).expect("the weather");
    assert!(weather.climate.notes.iter().any(|n| n.to_string().contains("2014/2015")), "{:?}", weather.climate.notes);
    std::fs::write(away.path().join("shed.csv"), SEATTLE.replacen("5.0", "5.1", 1)).expect("written");
    let refused = load_weather(&moved.site, away.path()).expect_err("another log").to_string();
    assert!(refused.contains("not the one that this study was made with"), "{refused}");
}
