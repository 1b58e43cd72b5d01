//! Monthly means to begin with: those of the bundled years, each told by its own hours.

use warmfold::units::HOURS_PER_DAY;
use warmfold::weather::bundled::{Station, stations};
use warmfold::weather::normals::{Brightness, MonthNormal, Normals};
use warmfold::weather::{Record, WeatherYear};

/// Sunshine is a beam of at least 120 W/m² (World Meteorological Organization).
const SHINING_W_PER_M2: f64 = 120.0;

/// Days of a month.
pub fn days(year: &WeatherYear, month: u32) -> impl Iterator<Item = &[Record]> + Clone {
    year.records.chunks(HOURS_PER_DAY).filter(move |day| day[0].month == month)
}

/// Mean daily minimum and maximum of a month, °C.
pub fn mean_min_max_c(year: &WeatherYear, month: u32) -> [f64; 2] {
    let count = days(year, month).count() as f64;
    let lows = days(year, month).map(|day| day.iter().map(|r| r.dry_bulb_c).fold(f64::INFINITY, f64::min));
    let highs = days(year, month).map(|day| day.iter().map(|r| r.dry_bulb_c).fold(f64::NEG_INFINITY, f64::max));
    [lows.sum::<f64>() / count, highs.sum::<f64>() / count]
}

/// What a climate table of this year would print: minima and maxima.
pub fn temperatures_of(year: &WeatherYear) -> Normals {
    let month = |m: usize| {
        let [min_c, max_c] = mean_min_max_c(year, m as u32 + 1);
        MonthNormal { min_c, max_c, brightness: None, wind_m_per_s: None }
    };
    Normals { place: year.place.clone(), months: std::array::from_fn(month) }
}

/// The same with hours of sunshine and mean wind.
pub fn full_table_of(year: &WeatherYear) -> Normals {
    let mut normals = temperatures_of(year);
    for (m, month) in (1..).zip(&mut normals.months) {
        let records: Vec<&Record> = days(year, m).flatten().collect();
        let sunny = records.iter().filter(|r| r.direct_normal_w_per_m2 >= SHINING_W_PER_M2).count();
        month.brightness = Some(Brightness::SunshineHours(sunny as f64));
        month.wind_m_per_s = Some(records.iter().map(|r| r.wind_m_per_s).sum::<f64>() / records.len() as f64);
    }
    normals
}

/// Keys of all station-years of the same place: none of them may lend.
pub fn same_place(station: &Station) -> Vec<&'static str> {
    let here = station.place();
    let there = |s: &&Station| {
        (s.latitude_deg - here.latitude_deg).abs() < 0.5 && (s.longitude_deg - here.longitude_deg).abs() < 0.5
    };
    stations().iter().filter(there).map(|s| s.key).collect()
}
