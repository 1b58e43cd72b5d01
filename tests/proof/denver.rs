//! The Denver typical year of `tests/data/validation/`, as records of the program.

use warmfold::weather::{Place, Record};

/// Station 725650.
pub fn place() -> Place {
    Place {
        name: "Denver".into(),
        latitude_deg: 39.833,
        longitude_deg: -104.65,
        utc_offset_h: -7.0,
        elevation_m: 1650.0,
    }
}

/// The year's hours from 1 January. The file does not tell the years that its months come from; the sun of any year
/// serves, as it stands within a few tenths of a degree of any other's.
pub fn records() -> Vec<Record> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/validation/denver_tmy3_hourly.csv");
    let mut reader = csv::Reader::from_path(path).expect("the weather file");
    let records: Vec<Record> = reader.records().map(|row| record(&row.expect("a row"))).collect();
    assert_eq!(records.len(), 8760, "a whole year");
    records
}

fn record(row: &csv::StringRecord) -> Record {
    let number = |column: usize| row[column].parse::<f64>().expect("a number");
    Record {
        year: 2001,
        month: number(0) as u32,
        day: number(1) as u32,
        hour: number(2) as u32,
        dry_bulb_c: number(3),
        dew_point_c: number(4),
        infrared_w_per_m2: Some(number(5)),
        global_w_per_m2: number(6),
        direct_normal_w_per_m2: number(7),
        diffuse_w_per_m2: number(8),
        wind_m_per_s: number(9),
        cloud_tenths: 5.0,
    }
}

/// The file is the one that its reference describes: means and sums of the year, to half a unit of the last digit.
#[test]
fn the_weather_is_the_one_described() {
    let records = records();
    let mean = |of: fn(&Record) -> f64| records.iter().map(of).sum::<f64>() / records.len() as f64;
    let total = |of: fn(&Record) -> f64| records.iter().map(of).sum::<f64>();
    assert!((mean(|r| r.dry_bulb_c) - 10.8753).abs() < 6e-5);
    assert!((total(|r| r.global_w_per_m2) - 1_670_220.0).abs() < 0.5);
    assert!((total(|r| r.direct_normal_w_per_m2) - 1_977_576.0).abs() < 0.5);
    assert!((total(|r| r.diffuse_w_per_m2) - 556_451.0).abs() < 0.5);
    assert!((mean(|r| r.infrared_w_per_m2.unwrap_or(f64::NAN)) - 310.026).abs() < 6e-4);
    assert!((mean(|r| r.wind_m_per_s) - 3.9165).abs() < 6e-5);
}
