//! Writes a weather year as the lines of an EPW file.

use warmfold::weather::{Record, WeatherYear};

/// Head and rows.
pub fn epw_lines(year: &WeatherYear) -> (Vec<String>, Vec<String>) {
    let p = &year.place;
    let head = [
        format!(
            "LOCATION,\"{}\",-,unknown,invented,000000,{},{},{},{}",
            p.name, p.latitude_deg, p.longitude_deg, p.utc_offset_h, p.elevation_m
        ),
        "DESIGN CONDITIONS,0".to_owned(),
        "TYPICAL/EXTREME PERIODS,0".to_owned(),
        "GROUND TEMPERATURES,0".to_owned(),
        "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0".to_owned(),
        "COMMENTS 1,none".to_owned(),
        "COMMENTS 2,none".to_owned(),
        "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31".to_owned(),
    ];
    (head.to_vec(), year.records.iter().map(epw_row).collect())
}

fn epw_row(r: &Record) -> String {
    let infrared = r.infrared_w_per_m2.unwrap_or(9999.0);
    format!(
        "{},{},{},{},0,?9?9?9?9E0?9?9,{},{},70,98000,9999,9999,{},{},{},{},999999,999999,999999,9999,180,{},{},{},9999,99999,9,\
         999999999,999,0.999,999,99,999,999,99",
        r.year,
        r.month,
        r.day,
        r.hour,
        r.dry_bulb_c,
        r.dew_point_c,
        infrared,
        r.global_w_per_m2,
        r.direct_normal_w_per_m2,
        r.diffuse_w_per_m2,
        r.wind_m_per_s,
        r.cloud_tenths,
        r.cloud_tenths
    )
}
