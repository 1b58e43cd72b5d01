//! Broken files are told where, what, and what to do.

use super::*;

/// What a broken file is told: where (if it has a place) and some words of problem or remedy.
#[track_caller]
fn expect(bytes: &[u8], line: Option<usize>, words: &[&str]) {
    let error = read_weather(bytes, "garden.epw").expect_err("a broken file").to_string();
    assert!(error.starts_with("garden.epw: "), "{error}");
    if let Some(line) = line {
        let (_, after) = error.split_once(&format!("line {line}")).unwrap_or_else(|| panic!("line {line} in: {error}"));
        assert!(!after.starts_with(|c: char| c.is_ascii_digit()), "line {line} in: {error}");
    }
    for word in words {
        assert!(error.contains(word), "“{word}” in: {error}");
    }
}

#[track_caller]
fn expect_cell(cell: usize, value: &str, words: &[&str]) {
    let mut file = good();
    file.set(FEBRUARY, cell, value);
    expect(&file.bytes(), Some(file.line(FEBRUARY)), words);
}

#[test]
fn nothing_in_it() {
    expect(b"", None, &["empty", "download it again"]);
    expect(b"\n \r\n\t\n", None, &["empty"]);
}

#[test]
fn too_large() {
    expect(&vec![b' '; MAX_BYTES + 1], None, &["larger than 50 MB", "single-year"]);
    expect(&gzip(&vec![b' '; MAX_BYTES + 1]), None, &["larger than 50 MB"]);
}

#[test]
fn damaged_packing() {
    let packed = gzip(&good().bytes());
    expect(&packed[..packed.len() / 2], None, &["gzip", "damaged", "again"]);
    expect(b"PK\x03\x04\x14\x00garden", None, &["zip archive", "unpack"]);
}

#[test]
fn no_text() {
    expect(b"LOCATION\nabc\0def", Some(2), &["not plain text"]);
    let utf_16: Vec<u8> = "LOCATION,".encode_utf16().flat_map(u16::to_le_bytes).collect();
    expect(&utf_16, Some(1), &["saved as plain text"]);
}

#[test]
fn no_weather() {
    expect(b"Dear diary,\nit was cold today.\n", Some(1), &["Dear diary", "neither an EPW", "choose"]);
    expect(b"{\"weather\": true}", Some(1), &["neither an EPW"]);
    expect(format!("{}\n", "x".repeat(500)).as_bytes(), Some(1), &["xxx…"]);
}

#[test]
fn location_is_wrong() {
    for (from, to, words) in [
        ("46.83,-92.22,-6,433", "46.83", &["LOCATION needs 10 fields but has 7"]),
        ("46.83", "146.83", &["latitude is 146.83", "between -90 and 90"]),
        ("-92.22", "west", &["longitude", "“west”"]),
        ("-6", "-16", &["time zone is -16", "correct"]),
        ("433", "", &["elevation"]),
    ] as [(&str, &str, &[&str]); 5]
    {
        let mut file = good();
        assert!(file.head[0].contains(from));
        file.head[0] = file.head[0].replacen(from, to, 1);
        expect(&file.bytes(), Some(1), words);
    }
}

#[test]
fn head_does_not_end() {
    let mut file = good();
    file.head.pop();
    expect(&file.bytes(), Some(8), &["DATA PERIODS", "put that line in"]);
    expect(b"LOCATION,a,b,c,d,e,1,2,0,4\nCOMMENTS 1,x\n", Some(2), &["DATA PERIODS"]);
}

#[test]
fn periods_are_wrong() {
    for (line, words) in [
        ("DATA PERIODS,2,1,A,Sunday,1/1,6/30,B,Sunday,7/1,12/31", &["2 data periods", "single period"]),
        ("DATA PERIODS,1,4,Data,Sunday,1/1,12/31", &["4 records an hour", "average"]),
        ("DATA PERIODS,one,1,Data", &["count", "“one”"]),
        ("DATA PERIODS,1", &["DATA PERIODS needs 3 fields", "complete"]),
    ] {
        let mut file = good();
        file.head[7] = line.to_owned();
        expect(&file.bytes(), Some(8), words);
    }
}

#[test]
fn offset_comment_is_wrong() {
    for (comment, word) in [("soon", "“soon”"), ("-77", "between -24 and 24")] {
        let mut file = good();
        file.head[6] = format!("COMMENTS 2,Irradiance Time Offset (h): {comment}");
        expect(&file.bytes(), Some(7), &["irradiance time offset", word]);
    }
}

#[test]
fn cut_off() {
    let mut file = good();
    file.rows.clear();
    expect(&file.bytes(), Some(8), &["without any data", "download"]);
    let mut file = good();
    file.rows.truncate(3700);
    expect(&file.bytes(), Some(3708), &["month 6 day 4 hour 4", "3700 hours", "needs 8760"]);
    let bytes = good().bytes();
    let mut file = good();
    file.rows.truncate(5000);
    file.rows[4999].truncate(40);
    expect(&file.bytes(), Some(5008), &["cut off", "needs 24"]);
    assert!(read_weather(&bytes[..bytes.len() - 100], "x").is_err());
    let mut leap = WeatherText::epw(&leap_year());
    leap.head[4] = "HOLIDAYS/DAYLIGHT SAVINGS,Yes,0,0,0".to_owned();
    leap.rows.truncate(8760);
    expect(&leap.bytes(), Some(8768), &["8760 hours", "needs 8784"]);
}

#[test]
fn rows_out_of_order() {
    let mut missing = good();
    missing.rows.remove(FEBRUARY);
    let line = missing.line(FEBRUARY);
    expect(&missing.bytes(), Some(line), &["day 9 hour 16 should come", "day 9 hour 17 does", "complete"]);
    let mut swapped = good();
    swapped.rows.swap(FEBRUARY, FEBRUARY + 100);
    expect(&swapped.bytes(), Some(line), &["should come here", "sort"]);
    let mut by_month = good();
    by_month.rows.rotate_left(181 * 24);
    expect(&by_month.bytes(), Some(9), &["month 1 day 1 hour 1 should", "month 7 day 1 hour 1", "from 1 January"]);
    let mut half_leap = WeatherText::epw(&leap_year());
    half_leap.head[4] = "HOLIDAYS/DAYLIGHT SAVINGS,Yes,0,0,0".to_owned();
    half_leap.rows.drain(59 * 24 + 12..60 * 24);
    expect(&half_leap.bytes(), Some(9 + 59 * 24 + 12), &["month 2 day 29 hour 13 should"]);
}

#[test]
fn hours_come_twice() {
    let mut doubled = good();
    doubled.rows = doubled.rows.iter().flat_map(|row| [row.clone(), row.clone()]).collect();
    expect(&doubled.bytes(), Some(10), &["second time", "averaged"]);
    let mut clock_change = good();
    clock_change.rows.insert(FEBRUARY, good().rows[FEBRUARY].clone());
    expect(&clock_change.bytes(), Some(clock_change.line(FEBRUARY + 1)), &["second time", "clock change"]);
    let mut two_years = good();
    two_years.rows.extend(good().rows);
    expect(&two_years.bytes(), Some(8769), &["goes on after the 8760 hours", "cut it to one year"]);
}

#[test]
fn dates_are_wrong() {
    expect_cell(0, "20xx", &["year", "“20xx”"]);
    expect_cell(0, "9999", &["year is 9999", "between 1800 and 2200"]);
    expect_cell(1, "13", &["month is 13", "between 1 and 12"]);
    expect_cell(2, "9.5", &["day", "“9.5”"]);
    expect_cell(2, "", &["day should be a number"]);
    expect_cell(3, "0", &["hour is 0", "between 1 and 24"]);
}

#[test]
fn values_are_wrong() {
    expect_cell(epw_cell::DRY_BULB, "cold", &["dry bulb should be a number", "“cold”", "leave it empty"]);
    expect_cell(epw_cell::DRY_BULB, "NaN", &["dry bulb", "“NaN”"]);
    expect_cell(epw_cell::DRY_BULB, "85", &["dry bulb is 85", "between -70 and 70", "missing"]);
    expect_cell(epw_cell::DEW_POINT, "-80", &["dew point is -80"]);
    expect_cell(epw_cell::WIND, "-3", &["wind speed is -3", "between 0 and 40"]);
    expect_cell(epw_cell::GLOBAL, "5000", &["global sun is 5000"]);
    expect_cell(epw_cell::INFRARED, "inf", &["infrared", "“inf”"]);
    expect_cell(epw_cell::OPAQUE_CLOUD, "25", &["opaque cloud is 25", "between 0 and 10"]);
}

/// Seven hours without a dry bulb are too many to guess; six are not.
#[test]
fn long_gap() {
    let mut file = good();
    (0..6).for_each(|step| file.set(FEBRUARY + step, epw_cell::DRY_BULB, "99.9"));
    assert_eq!(read(&file).filled.dry_bulb, 6);
    file.set(FEBRUARY + 6, epw_cell::DRY_BULB, "99.9");
    let line = Some(file.line(FEBRUARY));
    expect(&file.bytes(), line, &["month 2 day 9 hour 16", "7 hours", "another station"]);
}

#[test]
fn tmy3_is_wrong() {
    let good = WeatherText::tmy3(&DULUTH);
    let mut file = good.clone();
    file.head[0] = "000000,\"Duluth\",MN".to_owned();
    expect(&file.bytes(), Some(1), &["station needs 7 fields", "has 3"]);
    let mut file = good.clone();
    file.head[1] = file.head[1].replace("Dry-bulb (C)", "Temperature");
    expect(&file.bytes(), Some(2), &["no column “Dry-bulb (C)”", "choose"]);
    for (cell, value, words) in [
        (0, "1980-01-01", "MM/DD/YYYY"),
        (0, "13/01/1980", "month is 13"),
        (1, "0100", "HH:MM"),
        (9, "cold", "dry bulb"),
    ] {
        let mut file = good.clone();
        file.set(FEBRUARY, cell, value);
        expect(&file.bytes(), Some(file.line(FEBRUARY)), &[words]);
    }
    let mut file = good.clone();
    file.rows[FEBRUARY].truncate(30);
    expect(&file.bytes(), Some(file.line(FEBRUARY)), &["cut off"]);
}
