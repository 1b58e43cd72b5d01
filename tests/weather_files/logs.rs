//! Thermometers' logs. The real ones are daily series of Seattle and Clemson (NOAA; `tests/data/README.md`).

use super::gzip;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use std::fmt::Write as _;
use warmfold::units::{HOURS_PER_DAY, fahrenheit_from_c};
use warmfold::weather::bundled::load;
use warmfold::weather::log::{DayOrder, LogSettings, TemperatureUnit, read_log};
use warmfold::weather::raw::Setting;
use warmfold::weather::{Place, WeatherYear};

const SEATTLE: &str = include_str!("../data/measured/seattle_daily_2012_2015.csv");
const CLEMSON: &[u8] = include_bytes!("../data/measured/clemson_daily_1930_2020.csv.gz");

fn seattle() -> LogSettings {
    LogSettings {
        place: Place {
            name: "Seattle".to_owned(),
            latitude_deg: 47.6,
            longitude_deg: -122.3,
            utc_offset_h: -8.0,
            elevation_m: 50.0,
        },
        setting: Setting::Coast,
        unit: TemperatureUnit::AsTitled,
        order: DayOrder::AsShown,
    }
}

fn read(text: &str) -> WeatherYear {
    read_log(text.as_bytes(), "log.csv", &seattle()).unwrap_or_else(|e| panic!("{e}"))
}

/// Year, month, day, minimum and maximum of the winter 2014/15.
fn winter() -> Vec<(i32, u32, u32, f64, f64)> {
    let row = |line: &str| {
        let cells: Vec<&str> = line.split(',').collect();
        let number = |text: &str| text.parse::<f64>().expect("a number");
        let date: Vec<u32> = cells[0].split('-').map(|p| p.parse().expect("a number")).collect();
        (date[0] as i32, date[1], date[2], number(cells[1]), number(cells[2]))
    };
    let all = SEATTLE.lines().skip(1).map(row);
    all.filter(|(y, m, ..)| (*y == 2014 && *m >= 7) || (*y == 2015 && *m < 7)).collect()
}

fn written(title: &str, row: impl Fn((i32, u32, u32, f64, f64)) -> String) -> String {
    let mut text = format!("{title}\n");
    for day in winter() {
        writeln!(text, "{}", row(day)).expect("memory takes all");
    }
    text
}

fn plain() -> String {
    written("date,tmin_c,tmax_c", |(y, m, d, min, max)| format!("{y}-{m:02}-{d:02},{min},{max}"))
}

fn day_range(year: &WeatherYear, month: u32, day: u32) -> (f64, f64) {
    let hours = year.records.iter().filter(|r| (r.month, r.day) == (month, day));
    hours.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), r| (low.min(r.dry_bulb_c), high.max(r.dry_bulb_c)))
}

#[track_caller]
fn assert_replays(year: &WeatherYear, tolerance_k: f64) {
    assert_eq!(year.records.len(), 8760);
    for (_, month, day, min_c, max_c) in winter() {
        let (low, high) = day_range(year, month, day);
        assert!((low - min_c).abs() < tolerance_k && (high - max_c).abs() < tolerance_k, "{month}-{day}: {low} {high}");
    }
}

#[test]
fn each_day_has_its_logged_extremes() {
    let year = read(SEATTLE);
    assert_replays(&year, 1e-9);
    assert!(year.notes.iter().any(|n| n.to_string().contains("2014/2015")), "{:?}", year.notes);
    assert!(year.notes.iter().any(|n| n.to_string().contains("estimated from the daily swing")), "{:?}", year.notes);
    assert_eq!(year.filled.dry_bulb, 0);
}

/// 33 000 days of which the last full winter is taken, its gaps filled.
#[test]
fn a_long_log_is_read_packed() {
    let mut settings = seattle();
    settings.place = Place { latitude_deg: 34.7, longitude_deg: -82.8, utc_offset_h: -6.0, ..settings.place };
    let year = read_log(CLEMSON, "clemson.csv.gz", &settings).expect("a log");
    assert_eq!(year.records.len(), 8760);
    assert!(year.records.iter().all(|r| r.dry_bulb_c.is_finite() && r.global_w_per_m2.is_finite()));
}

#[test]
fn dates_numbers_and_units_in_their_many_ways() {
    assert_replays(&read(&plain()), 1e-9);
    let german = written("Datum;Min;Max", |(y, m, d, min, max)| {
        format!("{d:02}.{m:02}.{y};{};{}", min.to_string().replace('.', ","), max.to_string().replace('.', ","))
    });
    assert_replays(&read(&german), 1e-9);
    assert_replays(&read(&written("Date\tLow\tHigh", |(y, m, d, a, b)| format!("{d}/{m}/{y}\t{a} °C\t{b} °C"))), 1e-9);
    assert_replays(&read(&written("# shed\ndate,min,max", |(y, m, d, a, b)| format!("{y}{m:02}{d:02},{a},{b}"))), 1e-9);
    assert_replays(&read(&plain().replacen("date,tmin_c,tmax_c\n", "", 1)), 1e-9);
    let quoted = |(y, m, d, a, b): (i32, u32, u32, f64, f64)| {
        format!("{y}/{m}/{d},\"{}\",\"{}\"", a.to_string().replace('.', ","), b.to_string().replace('.', ","))
    };
    assert_replays(&read(&written("day,min,max", quoted)), 1e-9);
    // Written to a tenth of a degree Fahrenheit: half of it is 0.028 K.
    let fahrenheit = written("Date,Min (°F),Max (°F)", |(y, m, d, min, max)| {
        format!("{m}/{d}/{y},{:.1},{:.1}", fahrenheit_from_c(min), fahrenheit_from_c(max))
    });
    assert_replays(&read(&fahrenheit), 0.03);
    assert_replays(&read_log(&gzip(fahrenheit.as_bytes()), "log.csv.gz", &seattle()).expect("a packed log"), 0.03);
}

#[test]
fn readings_at_any_interval() {
    let measured = load("aachen-2021").expect("a bundled year");
    let mut text = "date,time,temperature °C\n".to_owned();
    for r in &measured.records {
        let (year, half) = (r.year, if r.hour <= 12 { "AM" } else { "PM" });
        let hour = if r.hour == 24 { "24:00".to_owned() } else { format!("{}:00 {half}", (r.hour + 11) % 12 + 1) };
        let hour = if r.hour == 12 { "12:00 PM".to_owned() } else { hour };
        writeln!(text, "{year}-{:02}-{:02},{hour},{}", r.month, r.day, r.dry_bulb_c).expect("memory takes all");
    }
    let mut south = seattle();
    south.place.latitude_deg = -47.6;
    let year = read_log(text.as_bytes(), "log.csv", &south).expect("a log");
    for (a, b) in year.records.iter().zip(&measured.records) {
        assert!((a.dry_bulb_c - b.dry_bulb_c).abs() < 1e-9, "{a:?} {b:?}");
    }
}

#[test]
fn gaps_are_filled_and_named() {
    let without = |gone: fn(u32, u32) -> bool| {
        let keep = |line: &&str| {
            let date: Vec<u32> =
                line.split(',').next().unwrap_or("").split('-').filter_map(|p| p.parse().ok()).collect();
            date.len() != 3 || !gone(date[1], date[2])
        };
        let text = plain();
        let kept: Vec<&str> = text.lines().filter(keep).collect();
        read(&kept.join("\n"))
    };
    let short = without(|m, d| m == 1 && (d == 5 || d == 6));
    assert_eq!(short.filled.dry_bulb, 2 * HOURS_PER_DAY);
    assert!(
        short.notes.iter().any(|n| n.to_string().contains("2 days") && n.to_string().contains("5 Jan, 6 Jan")),
        "{:?}",
        short.notes
    );
    let long = without(|m, _| m == 2);
    assert_eq!(long.filled.dry_bulb, 28 * HOURS_PER_DAY);
    assert!(
        long.notes.iter().any(|n| n.to_string().contains("1 Feb to 28 Feb") && n.to_string().contains("672 hours")),
        "{:?}",
        long.notes
    );
    let summerless = without(|m, _| (5..=9).contains(&m));
    assert!(summerless.records.iter().filter(|r| r.month == 7).all(|r| (0.0..40.0).contains(&r.dry_bulb_c)));
}

#[track_caller]
fn expect(text: &str, words: &[&str]) {
    let error = read_log(text.as_bytes(), "log.csv", &seattle()).expect_err("a broken log").to_string();
    assert!(error.starts_with("log.csv: "), "{error}");
    for word in words {
        assert!(error.contains(word), "“{word}” in: {error}");
    }
}

#[test]
fn broken_logs_are_told_where_what_and_what_to_do() {
    let changed = |from: &str, to: &str| plain().replacen(from, to, 1);
    let third = plain().lines().nth(2).expect("a row").to_owned();
    let date = third.split(',').next().expect("a date").to_owned();
    expect("", &["empty"]);
    expect("date,weather\n2014-07-01,fine\n", &["line 1", "temperature", "name the columns"]);
    expect(&changed(&third, &format!("{date},cold,20")), &["line 3", "minimum", "cold", "correct it"]);
    expect(&changed(&third, &format!("{date},-99,20")), &["line 3", "minimum", "-70"]);
    expect(&changed(&third, &format!("{date},20,10")), &["line 3", "above the maximum", "correct"]);
    expect(&changed(&date, "2014-02-30"), &["line 3", "2014-02-30", "no date"]);
    expect(&changed(&date, "2014-07-01"), &["line 3", "before", "keep one"]);
    expect(&plain().lines().take(30).collect::<Vec<_>>().join("\n"), &["29 days", "60", "monthly means"]);
    let doubtful = "date,min,max\n01/02/2015,1,2\n02/02/2015,1,2\n";
    expect(doubtful, &["line 2", "01/02/2015", "day or the month comes first"]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever bytes are damaged, the log is read or refused, and a year that comes out can be computed with.
    #[test]
    fn damaged_bytes_do_not_crash(hits in proptest::collection::vec((0.0..1.0_f64, any::<u8>()), 1..40), cut in 0.0..1.0_f64) {
        let mut bytes = plain().into_bytes();
        let length = bytes.len() as f64;
        for (at, byte) in hits {
            bytes[(at * length) as usize] = byte;
        }
        bytes.truncate((length * (0.3 + 0.7 * cut)) as usize);
        if let Ok(year) = read_log(&bytes, "log.csv", &seattle()) {
            prop_assert_eq!(year.records.len(), 8760);
            prop_assert!(year.records.iter().all(|r| r.dry_bulb_c.is_finite() && r.global_w_per_m2 >= 0.0));
        }
    }
}
