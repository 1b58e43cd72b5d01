//! Sun, sky and deep ground of a weather record.

use std::f64::consts::{PI, TAU};
use warmfold::weather::{Place, Record, WeatherYear};

/// W/(m²·K⁴).
pub const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
pub const ZERO_C_IN_K: f64 = 273.15;
/// Solar constant, W/m².
const SOLAR_CONSTANT: f64 = 1366.1;

/// The light of one hour.
pub struct Light {
    /// Towards the sun: east, north, up.
    pub sun: [f64; 3],
    /// Direct normal, zero while the sun is down.
    pub beam: f64,
    pub diffuse: f64,
    pub global: f64,
    /// Share of the diffuse light that comes from round the sun.
    pub circumsolar: f64,
}

impl Light {
    pub fn of(record: &Record, place: &Place, sun_offset_h: f64) -> Self {
        let days = days_from_j2000(record, sun_offset_h - place.utc_offset_h);
        let sun = towards_sun(days, place);
        let beam = if sun[2] > 0.0 { record.direct_normal_w_per_m2.max(0.0) } else { 0.0 };
        Self {
            sun,
            beam,
            diffuse: record.diffuse_w_per_m2.max(0.0),
            global: record.global_w_per_m2.max(0.0),
            circumsolar: (beam / extraterrestrial(record)).clamp(0.0, 1.0),
        }
    }

    /// Beam and all other light on a plane, and the cosine of incidence (Hay and Davies 1980, albedo 0.2).
    pub fn on_plane(&self, tilt: f64, azimuth: f64) -> (f64, f64, f64) {
        let normal = [tilt.sin() * azimuth.sin(), tilt.sin() * azimuth.cos(), tilt.cos()];
        let cosine = normal.iter().zip(self.sun).map(|(n, s)| n * s).sum::<f64>().max(0.0);
        let ratio = cosine / self.sun[2].max(0.01745);
        let view = (1.0 + tilt.cos()) / 2.0;
        let sky = self.diffuse * (self.circumsolar * ratio + (1.0 - self.circumsolar) * view);
        (self.beam * cosine, sky + self.global * 0.2 * (1.0 - view), cosine)
    }
}

/// Days since noon of 1 January 2000, universal time.
fn days_from_j2000(record: &Record, shift_h: f64) -> f64 {
    let (mut year, mut month) = (i64::from(record.year), i64::from(record.month));
    if month <= 2 {
        year -= 1;
        month += 12;
    }
    // Julian day number of the Gregorian calendar at 0 h, less 2 451 545.0 (Meeus, Astronomical Algorithms, ch. 7).
    let century = year.div_euclid(100);
    let leap = 2 - century + century.div_euclid(4);
    let whole = (365.25 * (year + 4716) as f64).floor() + (30.6001 * (month + 1) as f64).floor();
    let julian = whole + f64::from(record.day) + leap as f64 - 1524.5;
    julian - 2_451_545.0 + (f64::from(record.hour) + shift_h) / 24.0
}

/// Low-precision sun of the Astronomical Almanac, 0.01° from 1950 to 2050.
fn towards_sun(days: f64, place: &Place) -> [f64; 3] {
    let mean_longitude = 280.460 + 0.985_647_4 * days;
    let anomaly = (357.528 + 0.985_600_3 * days).to_radians();
    let longitude = (mean_longitude + 1.915 * anomaly.sin() + 0.020 * (2.0 * anomaly).sin()).to_radians();
    let obliquity = (23.439 - 0.000_000_4 * days).to_radians();
    let right_ascension = (obliquity.cos() * longitude.sin()).atan2(longitude.cos());
    let declination = (obliquity.sin() * longitude.sin()).asin();
    let sidereal_h = 18.697_374_558 + 24.065_709_824_419_08 * days;
    let hour_angle = (15.0 * sidereal_h + place.longitude_deg).to_radians() - right_ascension;
    let latitude = place.latitude_deg.to_radians();
    [
        -declination.cos() * hour_angle.sin(),
        declination.sin() * latitude.cos() - declination.cos() * latitude.sin() * hour_angle.cos(),
        declination.sin() * latitude.sin() + declination.cos() * latitude.cos() * hour_angle.cos(),
    ]
}

/// Extraterrestrial normal irradiance after Spencer (1971).
fn extraterrestrial(record: &Record) -> f64 {
    let before_month = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
    let day = before_month[record.month as usize - 1] + record.day - 1;
    let b = TAU * f64::from(day) / 365.0;
    let distance = 1.000_110
        + 0.034_221 * b.cos()
        + 0.001_280 * b.sin()
        + 0.000_719 * (2.0 * b).cos()
        + 0.000_077 * (2.0 * b).sin();
    SOLAR_CONSTANT * distance
}

/// Sky temperature, °C: by infrared, else Clark and Allen (1978) with Walton's cloud factor.
pub fn sky_c(record: &Record) -> f64 {
    let kelvin = match record.infrared_w_per_m2 {
        Some(infrared) => (infrared / STEFAN_BOLTZMANN).powf(0.25),
        None => {
            let clear = 0.787 + 0.764 * ((record.dew_point_c + ZERO_C_IN_K) / 273.0).ln();
            let n = record.cloud_tenths;
            let cloudy = clear * (1.0 + 0.0224 * n - 0.0035 * n * n + 0.00028 * n * n * n);
            (record.dry_bulb_c + ZERO_C_IN_K) * cloudy.min(1.0).powf(0.25)
        }
    };
    kelvin - ZERO_C_IN_K
}

/// Kusuda and Achenbach (1965): the year's swing of the surface, damped and late one metre down.
pub struct Ground {
    mean_c: f64,
    cosine_k: f64,
    sine_k: f64,
}

impl Ground {
    pub fn of(year: &WeatherYear) -> Self {
        let mut start_d = 0.0;
        let mut months = Vec::new();
        for (month, days) in (1..).zip([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]) {
            let of_month: Vec<f64> = year.records.iter().filter(|r| r.month == month).map(|r| r.dry_bulb_c).collect();
            let middle_d = start_d + f64::from(days) / 2.0;
            months.push((TAU * middle_d / 365.0, of_month.iter().sum::<f64>() / of_month.len() as f64));
            start_d += f64::from(days);
        }
        let mean_c = months.iter().map(|(_, t_c)| t_c / 12.0).sum::<f64>();
        // Months are not equally long, so a constant taken along would give a swing.
        let part = |wave: fn(f64) -> f64| months.iter().map(|(angle, t_c)| (t_c - mean_c) * wave(*angle) / 6.0).sum();
        Self { mean_c, cosine_k: part(f64::cos), sine_k: part(f64::sin) }
    }

    pub fn deep_c(&self, record: usize) -> f64 {
        let year_s = 365.0 * 86_400.0;
        let lag = (PI / (7.0e-7 * year_s)).sqrt();
        let angle = TAU * (record as f64 + 0.5) / 24.0 / 365.0 - lag;
        self.mean_c + (-lag).exp() * (self.cosine_k * angle.cos() + self.sine_k * angle.sin())
    }
}
