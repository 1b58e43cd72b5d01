//! A measured cold frame without heat, on the weather measured beside it.

use serde::Deserialize;
use warmfold::model::{Scenario, Study, bundled_catalogue};
use warmfold::season::run_scenario;
use warmfold::weather::fill::fill;
use warmfold::weather::raw::{RawRow, RawYear, Setting};
use warmfold::weather::stats::{lowest, mean};
use warmfold::weather::{Climate, Place, bundled};

use super::figure::{Expected, Figure, hold, published};

#[derive(Deserialize)]
struct Case {
    source: String,
    tolerance_because: String,
    tolerance_k: f64,
    scenario: Scenario,
    latitude_deg: f64,
    longitude_deg: f64,
    utc_offset_h: f64,
    elevation_m: f64,
}

/// One measured hour; outdoors is missing in eight of them.
#[derive(Deserialize)]
struct Measured {
    hour_start: String,
    t_frame_c: f64,
    t_station_c: Option<f64>,
    rh_station_pct: Option<f64>,
    wind_station_mph: Option<f64>,
}

const METRES_PER_S_PER_MPH: f64 = 0.447_04;

impl Measured {
    fn stamp(&self) -> [u32; 4] {
        [0..4, 5..7, 8..10, 11..13].map(|range| self.hour_start[range].parse().expect("stamp"))
    }

    /// The hour as a row of weather: sun and sky are left to the program's own rules.
    fn row(&self) -> RawRow {
        let [year, month, day, start] = self.stamp();
        let dew_point = |t_c: f64, percent: f64| {
            // Magnus over water: a = 17.62, b = 243.12 °C (World Meteorological Organization, Guide No. 8).
            let g = (percent / 100.0).ln() + 17.62 * t_c / (243.12 + t_c);
            243.12 * g / (17.62 - g)
        };
        RawRow {
            year: year as i32,
            month,
            day,
            hour: start + 1,
            dry_bulb_c: self.t_station_c,
            dew_point_c: self.t_station_c.zip(self.rh_station_pct).map(|(t_c, percent)| dew_point(t_c, percent)),
            wind_m_per_s: self.wind_station_mph.map(|mph| mph * METRES_PER_S_PER_MPH),
            ..RawRow::default()
        }
    }
}

fn measured() -> Vec<Measured> {
    let mut reader = csv::Reader::from_path("tests/data/validation/coldframe_2018_hourly.csv").expect("test data");
    reader.deserialize().collect::<Result<_, _>>().expect("rows")
}

/// The measured spring within the typical year of a station in the same state, which gives the ground its mean.
fn climate(case: &Case, hours: &[Measured]) -> Climate {
    let frame = bundled::load("duluth-mn").expect("a bundled station");
    let mut rows: Vec<RawRow> = frame
        .records
        .iter()
        .map(|r| RawRow {
            year: 2018,
            month: r.month,
            day: r.day,
            hour: r.hour,
            dry_bulb_c: Some(r.dry_bulb_c),
            dew_point_c: Some(r.dew_point_c),
            wind_m_per_s: Some(r.wind_m_per_s),
            global_w_per_m2: Some(r.global_w_per_m2),
            direct_normal_w_per_m2: Some(r.direct_normal_w_per_m2),
            diffuse_w_per_m2: Some(r.diffuse_w_per_m2),
            opaque_cloud_tenths: Some(r.cloud_tenths),
            ..RawRow::default()
        })
        .collect();
    let first = hours[0].row();
    let start = rows.iter().position(|r| (r.month, r.day, r.hour) == (first.month, first.day, first.hour));
    for (row, hour) in rows.iter_mut().skip(start.expect("the day is in the year")).zip(hours) {
        *row = hour.row();
    }
    let place = Place {
        name: "Minnesota".into(),
        latitude_deg: case.latitude_deg,
        longitude_deg: case.longitude_deg,
        utc_offset_h: case.utc_offset_h,
        elevation_m: case.elevation_m,
    };
    let raw = RawYear {
        place,
        setting: Setting::Inland,
        credit: String::new(),
        sun_offset_h: -0.5,
        typical: false,
        rows,
        notes: Vec::new(),
    };
    Climate::from_year(&fill(raw).expect("no long gap"))
}

/// Lowest hour of each calendar day over the lowest outdoors, K: measured and computed.
fn gains_k(case: &Case) -> Vec<(f64, f64)> {
    let hours = measured();
    let climate = climate(case, &hours);
    let mut study = Study::default();
    (study.season.from_month, study.season.from_day) = (3, 19);
    (study.season.to_month, study.season.to_day) = (5, 31);
    let run = run_scenario(&study, &case.scenario, &climate, bundled_catalogue(), &|| false).expect("a season");
    assert_eq!(run.hours.outdoor_c.len(), hours.len(), "the season is the measured spring");
    let frame_c: Vec<f64> = hours.iter().map(|hour| hour.t_frame_c).collect();
    let days = frame_c.chunks(24).zip(run.hours.house_air_c.chunks(24)).zip(run.hours.outdoor_c.chunks(24));
    days.map(|((frame, house), outdoor)| (lowest(frame) - lowest(outdoor), lowest(house) - lowest(outdoor))).collect()
}

pub fn figures() -> Vec<Figure> {
    let case: Case = published("coldframe");
    let gains = gains_k(&case);
    vec![Figure {
        what: format!("unheated cold frame, minimum of the day over outdoors, mean of {} days", gains.len()),
        source: case.source,
        unit: "K".into(),
        decimals: 1,
        expected: Expected::Value(mean(&gains.iter().map(|gain| gain.0).collect::<Vec<_>>()), case.tolerance_k),
        tolerance_because: case.tolerance_because,
        got: mean(&gains.iter().map(|gain| gain.1).collect::<Vec<_>>()),
    }]
}

#[test]
fn the_measured_cold_frame_agrees() {
    hold(&figures());
}
