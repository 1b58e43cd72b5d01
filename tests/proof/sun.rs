//! Sun position and light on planes against pvlib 0.16.1 (NREL SPA, Spencer, Hay–Davies), 200 instants at four stations.

use std::collections::HashMap;

use serde::Deserialize;
use warmfold::weather::{ClimateHour, Place, Record};

use super::figure::{Figure, hold};
use super::sheet::told_figures;

/// One row of the check file.
struct Check(HashMap<String, String>);

impl Check {
    fn all() -> Vec<Self> {
        let mut reader = csv::Reader::from_reader(include_str!("../data/pvlib_checks.csv").as_bytes());
        reader.deserialize().map(|row| Self(row.expect("a row of the check file"))).collect()
    }

    fn number(&self, column: &str) -> f64 {
        self.0[column].parse().expect("a number")
    }

    fn whole(&self, column: &str) -> u32 {
        self.0[column].parse().expect("a whole number")
    }

    /// Piedmont's file holds instants 10 min 34 s after the stamp, the others means of the hour before it.
    fn sun_offset_h(&self) -> f64 {
        if self.0["station"].starts_with("Piedmont") { 0.1761 } else { -0.5 }
    }

    fn hour(&self) -> ClimateHour {
        let place = Place {
            name: self.0["station"].clone(),
            latitude_deg: self.number("lat"),
            longitude_deg: self.number("lon"),
            utc_offset_h: self.number("tz_h"),
            elevation_m: self.number("elev_m"),
        };
        let record = Record {
            year: self.number("row_year") as i32,
            month: self.whole("row_month"),
            day: self.whole("row_day"),
            hour: self.whole("row_hour"),
            dry_bulb_c: 0.0,
            dew_point_c: 0.0,
            wind_m_per_s: 0.0,
            global_w_per_m2: self.number("ghi"),
            direct_normal_w_per_m2: self.number("dni"),
            diffuse_w_per_m2: self.number("dhi"),
            infrared_w_per_m2: None,
            cloud_tenths: 5.0,
        };
        ClimateHour::from_record(&record, &place, self.sun_offset_h(), 0)
    }
}

fn normal(tilt_deg: f64, azimuth_deg: f64) -> [f64; 3] {
    let (tilt, azimuth) = (tilt_deg.to_radians(), azimuth_deg.to_radians());
    [tilt.sin() * azimuth.sin(), tilt.sin() * azimuth.cos(), tilt.cos()]
}

/// Largest size of a quantity over all checks.
fn worst(deviations: impl Fn(&Check) -> Vec<f64>) -> f64 {
    Check::all().iter().flat_map(deviations).fold(0.0, |worst, x| worst.max(x.abs()))
}

/// How far the sun is off in height and sideways, degrees.
fn sun_off_deg(check: &Check) -> Vec<f64> {
    let sun = check.hour().sun;
    let zenith = sun[0].hypot(sun[1]).atan2(sun[2]).to_degrees();
    let azimuth = sun[0].atan2(sun[1]).to_degrees().rem_euclid(360.0);
    let turn = (azimuth - check.number("azimuth_deg") + 540.0).rem_euclid(360.0) - 180.0;
    vec![zenith - check.number("zenith_deg"), turn * zenith.to_radians().sin()]
}

/// How far the sunlight above the air is off, W/m²; the share of the circumsolar light carries it.
fn above_the_air_off(check: &Check) -> Vec<f64> {
    if check.number("dni") <= 100.0 {
        return Vec::new();
    }
    let hour = check.hour();
    vec![hour.beam_normal_w_per_m2 / hour.anisotropy - check.number("dni_extra")]
}

/// Six planes: four walls and two roofs, tilt and direction in degrees.
const PLANES: [(u32, u32); 6] = [(90, 180), (90, 90), (90, 270), (90, 0), (26, 180), (26, 0)];

/// What each plane gets by the program and by pvlib, W/m².
fn on_planes(check: &Check) -> Vec<(f64, f64)> {
    let hour = check.hour();
    let light = |(tilt, azimuth)| {
        let plane = hour.on_plane(normal(f64::from(tilt), f64::from(azimuth)));
        (plane.beam + plane.diffuse, check.number(&format!("hd_{tilt}_{azimuth}")))
    };
    PLANES.map(light).to_vec()
}

/// Light at which half a per cent is 1 W/m².
const BRIGHT_W_PER_M2: f64 = 200.0;

fn dim_off(check: &Check) -> Vec<f64> {
    on_planes(check).iter().filter(|(_, x)| *x <= BRIGHT_W_PER_M2).map(|(got, x)| got - x).collect()
}

fn bright_off_percent(check: &Check) -> Vec<f64> {
    on_planes(check).iter().filter(|(_, x)| *x > BRIGHT_W_PER_M2).map(|(got, x)| 100.0 * (got / x - 1.0)).collect()
}

fn incidence_off_deg(check: &Check) -> Vec<f64> {
    let hour = check.hour();
    let off = |(tilt, azimuth)| {
        let light = hour.on_plane(normal(f64::from(tilt), f64::from(azimuth)));
        light.cos_incidence.clamp(-1.0, 1.0).acos().to_degrees() - check.number(&format!("aoi_{tilt}_{azimuth}"))
    };
    PLANES.map(off).to_vec()
}

#[derive(Deserialize)]
enum Setting {
    SunDeg,
    AboveTheAir,
    IncidenceDeg,
    DimPlanes,
    BrightPlanesPercent,
}

fn compute(setting: &Setting) -> f64 {
    worst(match setting {
        Setting::SunDeg => sun_off_deg,
        Setting::AboveTheAir => above_the_air_off,
        Setting::IncidenceDeg => incidence_off_deg,
        Setting::DimPlanes => dim_off,
        Setting::BrightPlanesPercent => bright_off_percent,
    })
}

pub fn figures() -> Vec<Figure> {
    told_figures("sun", compute)
}

#[test]
fn sun_agrees() {
    let planes = Check::all().iter().flat_map(on_planes).count();
    assert_eq!((Check::all().len(), planes), (200, 1200));
    hold(&figures());
}

/// A beam written into a row whose mid-hour sun is down lights nothing; the diffuse light stays and is even.
#[test]
fn beam_is_dropped_while_the_sun_is_down() {
    let mut night = Check::all().into_iter().find(|c| c.number("zenith_deg") > 95.0).expect("a night row");
    for (column, value) in [("ghi", "30"), ("dni", "80"), ("dhi", "20")] {
        night.0.insert(column.to_owned(), value.to_owned());
    }
    let hour = night.hour();
    assert_eq!((hour.beam_normal_w_per_m2, hour.anisotropy), (0.0, 0.0));
    for azimuth in [0.0, 90.0, 180.0, 270.0] {
        let light = hour.on_plane(normal(90.0, azimuth));
        // Isotropic sky and ground by hand: 20/2 + 30 × 0.2/2.
        assert!((light.diffuse - 13.0).abs() < 1e-9 && light.beam == 0.0);
    }
}
