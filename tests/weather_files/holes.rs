//! Missing values: filled, estimated, counted.

use super::*;

/// Infrared 9999 and total cloud 99 throughout, opaque cloud 0 as a placeholder: not a clear year.
#[test]
fn placeholder_cloud_is_not_a_clear_sky() {
    let mut file = good();
    file.set_all(epw_cell::INFRARED, "9999");
    file.set_all(epw_cell::TOTAL_CLOUD, "99");
    file.set_all(epw_cell::OPAQUE_CLOUD, "0");
    let year = read(&file);
    assert_eq!((year.filled.cloud, year.filled.infrared), (8760, 8760));
    assert!(year.records.iter().all(|r| r.cloud_tenths == 5.0 && r.infrared_w_per_m2.is_none()));
}

#[test]
fn total_cloud_stands_in_for_opaque() {
    let mut file = good();
    file.set_all(epw_cell::TOTAL_CLOUD, "7");
    file.set_all(epw_cell::OPAQUE_CLOUD, "99");
    let year = read(&file);
    assert_eq!(year.filled.cloud, 0);
    assert!(year.records.iter().all(|r| r.cloud_tenths == 7.0));
}

/// Infrared of zero or less is missing, hour by hour.
#[test]
fn infrared_of_zero_is_missing() {
    let mut file = good();
    file.set(FEBRUARY, epw_cell::INFRARED, "0");
    file.set(FEBRUARY + 1, epw_cell::INFRARED, "-1");
    let year = read(&file);
    assert_eq!((year.filled.infrared, year.records[FEBRUARY].infrared_w_per_m2), (2, None));
}

/// Three missing hours between −10 and −6 °C lie on the straight line.
#[test]
fn short_gaps_are_interpolated_and_counted() {
    for cell in [epw_cell::DRY_BULB, epw_cell::DEW_POINT, epw_cell::WIND] {
        let mut file = good();
        let sign = if cell == epw_cell::WIND { "" } else { "-" };
        file.set(FEBRUARY, cell, &format!("{sign}10"));
        file.set(FEBRUARY + 4, cell, &format!("{sign}6"));
        let missing = if cell == epw_cell::WIND { ["999", "", "999.0"] } else { ["99.9", "", "-9999"] };
        (1..4).zip(missing).for_each(|(step, code)| file.set(FEBRUARY + step, cell, code));
        let year = read(&file);
        let value = |row: usize| match cell {
            epw_cell::DRY_BULB => -year.records[row].dry_bulb_c,
            epw_cell::DEW_POINT => -year.records[row].dew_point_c,
            _ => year.records[row].wind_m_per_s,
        };
        let counts = [year.filled.dry_bulb, year.filled.dew_point, year.filled.wind];
        assert_eq!(counts.iter().sum::<usize>(), 3, "{counts:?}");
        for (step, expected) in [(1, 9.0), (2, 8.0), (3, 7.0)] {
            assert!((value(FEBRUARY + step) - expected).abs() < 1e-9);
        }
    }
}

/// At the ends of the year the nearest value holds.
#[test]
fn gaps_at_the_ends_take_the_nearest_value() {
    let mut file = good();
    (0..6).for_each(|row| file.set(row, epw_cell::DRY_BULB, "99.9"));
    (8754..8760).for_each(|row| file.set(row, epw_cell::DRY_BULB, "99.9"));
    let year = read(&file);
    assert_eq!(year.filled.dry_bulb, 12);
    assert_eq!(year.records[0].dry_bulb_c, DULUTH.records[6].dry_bulb_c);
    assert_eq!(year.records[8759].dry_bulb_c, DULUTH.records[8753].dry_bulb_c);
}

/// Without dew points the day's lowest dry bulb stands in; without wind 2 m/s.
#[test]
fn missing_columns_fall_back() {
    let mut file = good();
    file.set_all(epw_cell::DEW_POINT, "99.9");
    file.set_all(epw_cell::WIND, "999");
    let year = read(&file);
    assert_eq!((year.filled.dew_point, year.filled.wind), (8760, 8760));
    let day = &year.records[240..264];
    let lowest = day.iter().map(|r| r.dry_bulb_c).fold(f64::INFINITY, f64::min);
    assert!(day.iter().all(|r| r.dew_point_c == lowest && r.wind_m_per_s == 2.0));
}

/// A missing part closes with the two others: over the sunny hours within the 0.7 to 2.9 W/m² rms to which typical years
/// close (computed with pvlib's SPA over the same files; the diffuse is the same difference with the other sign).
#[test]
fn missing_sun_parts_follow_from_the_others() {
    for cell in [epw_cell::GLOBAL, epw_cell::DIFFUSE] {
        let mut file = good();
        file.set_all(cell, "9999");
        let year = read(&file);
        let pairs = year.records.iter().zip(&DULUTH.records).filter(|(_, o)| o.direct_normal_w_per_m2 > 50.0);
        let errors: Vec<f64> = pairs
            .map(|(new, old)| match cell {
                epw_cell::GLOBAL => new.global_w_per_m2 - old.global_w_per_m2,
                _ => new.diffuse_w_per_m2 - old.diffuse_w_per_m2,
            })
            .collect();
        let rms = (errors.iter().map(|e| e * e).sum::<f64>() / errors.len() as f64).sqrt();
        assert!(rms > 0.0 && rms < 3.0, "{rms}");
        assert_eq!(year.filled.sun, 0);
    }
}

/// Global alone is split by Erbs; the parts close, and the sunny hours are counted.
#[test]
fn global_alone_is_split() {
    let mut file = good();
    file.set_all(epw_cell::DIRECT, "9999");
    file.set_all(epw_cell::DIFFUSE, "9999");
    let year = read(&file);
    let sunny = DULUTH.records.iter().filter(|r| r.global_w_per_m2 > 0.0).count();
    assert_eq!(year.filled.sun, sunny);
    assert!(year.notes.iter().any(|note| note.to_string().contains("split from the global")));
    for hour in Climate::from_year(&year).hours {
        let sum = hour.diffuse_w_per_m2 + hour.beam_normal_w_per_m2 * hour.sun[2].max(0.0);
        assert!((sum - hour.global_w_per_m2).abs() < 1e-6);
    }
}

/// A gap of five sunny hours is interpolated; the other hours stay as they were.
#[test]
fn short_sun_gaps_are_interpolated() {
    let mut file = good();
    for row in FEBRUARY - 5..FEBRUARY {
        for cell in [epw_cell::GLOBAL, epw_cell::DIRECT, epw_cell::DIFFUSE] {
            file.set(row, cell, "9999");
        }
    }
    let year = read(&file);
    assert_eq!(year.filled.sun, 5);
    let (from, to) = (&DULUTH.records[FEBRUARY - 6], &DULUTH.records[FEBRUARY]);
    let middle = 0.5 * (from.global_w_per_m2 + to.global_w_per_m2);
    assert!((year.records[FEBRUARY - 3].global_w_per_m2 - middle).abs() < 1e-9);
    assert_eq!(year.records[FEBRUARY - 6], *from);
}

/// FAO Irrigation and Drainage Paper 56, example 15 (from memory): Lyon, 45.72° N, mid-July, 26.6 and 14.8 °C: 40.6 MJ/m² above
/// the air, 22.3 on the ground. 1.5 % covers the day's choice and sums over hours instead of the integral.
#[test]
fn sun_from_the_daily_swing() {
    let mut file = good();
    file.head[0] = "LOCATION,Lyon,-,FRA,invented,0,45.717,4.85,1,200".to_owned();
    for cell in [epw_cell::GLOBAL, epw_cell::DIRECT, epw_cell::DIFFUSE] {
        file.set_all(cell, "9999");
    }
    for cell in [epw_cell::TOTAL_CLOUD, epw_cell::OPAQUE_CLOUD] {
        file.set_all(cell, "99");
    }
    let first = 195 * 24;
    (first..first + 24).for_each(|row| file.set(row, epw_cell::DRY_BULB, "20"));
    file.set(first + 4, epw_cell::DRY_BULB, "14.8");
    file.set(first + 14, epw_cell::DRY_BULB, "26.6");
    let year = read(&file);
    assert_eq!(year.filled.sun, 8760);
    let day = &year.records[first..first + 24];
    let megajoules: f64 = day.iter().map(|r| r.global_w_per_m2 * 3600.0 / 1e6).sum();
    assert!((megajoules / 22.3 - 1.0).abs() < 0.015, "{megajoules}");
    // Cloud by hand: share 0.16 √11.8 = 0.5496 of a ceiling 0.754 leaves 2.71 tenths.
    assert!(day.iter().all(|r| (r.cloud_tenths - 2.71).abs() < 0.01));
}
