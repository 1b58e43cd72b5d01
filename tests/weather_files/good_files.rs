//! Files that are right, in every spelling seen.

use super::*;

/// A stitched typical year comes back hour for hour.
#[test]
fn epw_reads_back_what_was_written() {
    let year = read(&good());
    assert_eq!(year.records, DULUTH.records);
    assert_eq!(year.place, DULUTH.place);
    assert_eq!((year.sun_offset_h, year.typical), (-0.5, true));
    assert_eq!(year.filled, DULUTH.filled);
    assert!(year.credit.contains("garden.epw") && year.credit.contains("invented"));
}

/// TMY3 has hour 24:00, a visibility of −9900 and no infrared column.
#[test]
fn tmy3_reads_back_what_was_written() {
    let greensboro = load("greensboro-nc").expect("a bundled station");
    let year = read_weather(&WeatherText::tmy3(&greensboro).bytes(), "garden.csv").expect("readable");
    assert_eq!(year.records, greensboro.records);
    assert_eq!(year.place.name, format!("{}, XX", greensboro.place.name));
    assert_eq!((year.filled.infrared, year.typical), (8760, true));
}

#[test]
fn packing_and_line_ends_do_not_matter() {
    let plain = good().bytes();
    let crlf = good().with_line_end("\r\n").into_bytes();
    let cr = good().with_line_end("\r").into_bytes();
    let marked = [b"\xef\xbb\xbf".as_slice(), &plain].concat();
    let no_last_end = plain.strip_suffix(b"\n").expect("it ends a line").to_vec();
    let blank_end = [plain.as_slice(), b"\n\n"].concat();
    for bytes in [gzip(&plain), crlf, cr, marked, no_last_end, blank_end] {
        assert_eq!(read_weather(&bytes, "x").expect("readable").records, DULUTH.records);
    }
}

/// Byte 0xFC in a comment, as in a German file: not valid UTF-8.
#[test]
fn latin_1_is_read() {
    let mut file = good();
    file.head[0] = file.head[0].replace("Duluth, Minnesota", "München");
    let text = file.with_line_end("\n");
    let bytes: Vec<u8> = text.chars().map(|c| u8::try_from(c).unwrap_or(b'?')).collect();
    assert!(std::str::from_utf8(&bytes).is_err());
    assert_eq!(read_weather(&bytes, "x").expect("readable").place.name, "München");
}

/// Minute 60, `DAYLIGHT SAVING` without s, daylight saving dates, a tenth LOCATION field, an end date with the year,
/// blanks, further fields, and comments with commas and quotes: all seen in real files.
#[test]
fn spellings_and_extras_are_tolerated() {
    let mut file = good();
    file.set_all(epw_cell::MINUTE, "60");
    file.head[0].push_str(",extra");
    file.head[4] = "HOLIDAYS/DAYLIGHT SAVING,No,3/11,11/4,0".to_owned();
    file.head[5] = "comments 1,\"an unclosed quote, and commas,,".to_owned();
    file.head[7] = "data periods,1,1,Data,Thursday,2015/ 1/ 1,2015/12/31".to_owned();
    file.rows.iter_mut().for_each(|row| *row = format!(" {},99,extra", row.replace(',', ", ")));
    assert_eq!(read(&file).records, DULUTH.records);
}

/// The head may be shorter or longer than eight lines.
#[test]
fn head_ends_with_data_periods() {
    let mut file = good();
    file.head.drain(1..5);
    file.head.insert(1, "COMMENTS 3,one more".to_owned());
    assert_eq!(read(&file).records, DULUTH.records);
}

/// A file without names of city, region and country is named by its coordinates.
#[test]
fn nameless_place_gets_its_coordinates() {
    let mut file = good();
    file.head[0] = "LOCATION,unknown,-,unknown,ECMWF,unknown,45.0,-8.5,1,250".to_owned();
    assert_eq!(read(&file).place.name, "45.00° N 8.50° W");
}

/// A measured leap year: 8784 rows with "Yes" or an empty field; with "No" its leap day is left out, and said so.
#[test]
fn leap_years() {
    let year = leap_year();
    let mut file = WeatherText::epw(&year);
    for observed in ["Yes", ""] {
        file.head[4] = format!("HOLIDAYS/DAYLIGHT SAVINGS,{observed},0,0,0");
        let back = read(&file);
        assert_eq!((back.records.len(), back.typical), (8784, false));
        let climate = Climate::from_year(&back);
        assert_eq!(climate.hours.len(), 8784);
        // 1 January 2020 was a Wednesday, 31 December a Thursday (calendar).
        assert_eq!((climate.hours[0].weekday, climate.hours[8783].weekday), (2, 3));
    }
    file.head[4] = "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0".to_owned();
    let back = read(&file);
    assert_eq!(back.records.len(), 8760);
    assert!(back.notes.iter().any(|note| note.to_string().contains("29 February")), "{:?}", back.notes);
    assert!(back.records.iter().all(|r| (r.month, r.day) != (2, 29)));
}

/// "Yes" without a 29 February: nobody invents one.
#[test]
fn missing_leap_day_is_not_invented() {
    let mut file = good();
    file.head[4] = "HOLIDAYS/DAYLIGHT SAVINGS,Yes,0,0,0".to_owned();
    assert_eq!(read(&file).records.len(), 8760);
}

/// Instantaneous irradiance 10 min 34 s after the stamp; its comment counts from another instant. `-0.00` is zero, cloud 99
/// is missing in all rows.
#[test]
fn instantaneous_irradiance_is_placed_by_its_comment() {
    let piedmont = load("piedmont-it").expect("a bundled station");
    let mut file = WeatherText::epw(&piedmont);
    file.set_all(epw_cell::TOTAL_CLOUD, "99");
    file.set_all(epw_cell::OPAQUE_CLOUD, "99");
    for row in 0..8760 {
        if file.rows[row].split(',').nth(epw_cell::DIRECT) == Some("0") {
            file.set(row, epw_cell::DIRECT, "-0.00");
        }
    }
    for comment in ["-0.8239", "0.1761"] {
        file.head[6] = format!("COMMENTS 2,Irradiance Time Offset (h):{comment}");
        let year = read(&file);
        assert!((year.sun_offset_h - 0.1761).abs() < 1e-9, "{comment}: {}", year.sun_offset_h);
        assert_eq!((year.filled.cloud, &year.records), (8760, &piedmont.records));
        assert!(year.records.iter().all(|r| r.direct_normal_w_per_m2.is_sign_positive()));
    }
}

/// The same file without the comment: the sun misses by 41 W/m² (computed with pvlib), and the user is told.
#[test]
fn sun_that_does_not_fit_is_noted() {
    let piedmont = load("piedmont-it").expect("a bundled station");
    let notes = read(&WeatherText::epw(&piedmont)).notes;
    assert!(notes.iter().any(|note| note.to_string().contains("41 W/m²")), "{notes:?}");
    assert!(read(&good()).notes.iter().all(|note| !note.to_string().contains("miss each other")));
}
