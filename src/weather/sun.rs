//! Where the sun stands, and how strong it is above the air.
//!
//! Position by the low-accuracy series of Meeus, *Astronomical Algorithms*, chapters 12, 22 and 25 (the same series as
//! in the NOAA solar calculator), with the parallax of the sun; geometric, without refraction.

use super::year::Place;

/// Seconds between terrestrial time and universal time; 44 to 74 s from 1973 on, and 10 s move the sun 0.0001°.
const DELTA_T_S: f64 = 67.0;
/// Horizontal parallax of the sun at mean distance, 8.794 arc seconds, in radians (Meeus, chapter 40).
const PARALLAX_RAD: f64 = 4.263_5e-5;
/// Solar constant, W/m² (the value that goes with Spencer's series in pvlib 0.16.1).
const SOLAR_CONSTANT_W_PER_M2: f64 = 1366.1;
/// Julian day of 1 January 1970, 0 h universal time.
const JULIAN_DAY_1970: f64 = 2_440_587.5;
/// Julian day of the epoch J2000.
const JULIAN_DAY_2000: f64 = 2_451_545.0;

/// The sun at one instant.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sun {
    /// Unit vector towards the sun: east, north, up.
    pub direction: [f64; 3],
    /// Extraterrestrial normal irradiance, W/m².
    pub extraterrestrial_w_per_m2: f64,
}

impl Sun {
    /// The sun at `place`; the instant is hour `hour` (0 to 24 and beyond) of a calendar day in local standard time.
    #[must_use]
    pub fn at(place: &Place, year: i32, month: u32, day: u32, hour: f64) -> Self {
        let utc_h = hour - place.utc_offset_h;
        let day_number = days_since_1970(year, month, day) + (utc_h / 24.0).floor() as i64;
        let julian_day = JULIAN_DAY_1970 + days_since_1970(year, month, day) as f64 + utc_h / 24.0;
        Self {
            direction: direction(julian_day, place.latitude_deg, place.longitude_deg),
            extraterrestrial_w_per_m2: extraterrestrial(day_of_year(year, day_number)),
        }
    }

    /// Whether the middle of the disc is above the horizon.
    #[must_use]
    pub fn is_up(&self) -> bool {
        self.direction[2] > 0.0
    }

    /// Extraterrestrial irradiance of the horizontal, W/m²; zero while the sun is down.
    #[must_use]
    pub fn extraterrestrial_horizontal_w_per_m2(&self) -> f64 {
        self.extraterrestrial_w_per_m2 * self.direction[2].max(0.0)
    }
}

/// Days from 1 January 1970 to a date of the Gregorian calendar; any day number is accepted.
/// (Counts from 1 March, so that the leap day is the last of its year; common practice.)
#[must_use]
pub fn days_since_1970(year: i32, month: u32, day: u32) -> i64 {
    let (year, month, day) = (i64::from(year), i64::from(month), i64::from(day));
    let year_from_march = if month <= 2 { year - 1 } else { year };
    let century_cycle = year_from_march.div_euclid(400);
    let year_of_cycle = year_from_march.rem_euclid(400);
    let day_of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    century_cycle * 146_097 + year_of_cycle * 365 + year_of_cycle / 4 - year_of_cycle / 100 + day_of_year - 719_468
}

/// Day of its year (from 1) of a day counted from 1970 that lies in `year` or beside it.
fn day_of_year(year: i32, day_number: i64) -> f64 {
    let start = days_since_1970(year, 1, 1);
    let next = days_since_1970(year.saturating_add(1), 1, 1);
    let first = if day_number < start {
        days_since_1970(year.saturating_sub(1), 1, 1)
    } else if day_number >= next {
        next
    } else {
        start
    };
    (day_number - first + 1) as f64
}

/// Extraterrestrial normal irradiance by the series of Spencer (1971), W/m².
fn extraterrestrial(day_of_year: f64) -> f64 {
    let (s, c) = (std::f64::consts::TAU * (day_of_year - 1.0) / 365.0).sin_cos();
    let (s2, c2) = (2.0 * s * c, c * c - s * s);
    SOLAR_CONSTANT_W_PER_M2 * (1.000_11 + 0.034_221 * c + 0.001_28 * s + 0.000_719 * c2 + 0.000_077 * s2)
}

/// Unit vector east, north, up towards the sun at a Julian day of universal time.
fn direction(julian_day: f64, latitude_deg: f64, longitude_deg: f64) -> [f64; 3] {
    let days = julian_day - JULIAN_DAY_2000;
    let t = (days + DELTA_T_S / 86_400.0) / 36_525.0;
    let node = (125.04 - 1934.136 * t).to_radians();
    let obliquity = (23.439_291 - 0.013_004_2 * t + 0.002_56 * node.cos()).to_radians();
    let longitude = apparent_longitude_rad(t, node);
    let ascension = (obliquity.cos() * longitude.sin()).atan2(longitude.cos());
    let declination = (obliquity.sin() * longitude.sin()).asin();
    let sidereal_deg = 280.460_618_37 + 360.985_647_366_29 * days + 0.000_387_933 * t * t;
    let nutation_deg = -0.004_78 * node.sin() * obliquity.cos();
    let hour_angle = (sidereal_deg + nutation_deg + longitude_deg).to_radians() - ascension;
    from_equator(declination, hour_angle, latitude_deg.to_radians())
}

/// Apparent ecliptic longitude, radians; `t` in Julian centuries from J2000.
fn apparent_longitude_rad(t: f64, node: f64) -> f64 {
    let mean_deg = 280.466_46 + 36_000.769_83 * t + 0.000_303_2 * t * t;
    let anomaly = (357.529_11 + 35_999.050_29 * t - 0.000_153_7 * t * t).to_radians();
    let centre_deg = (1.914_602 - 0.004_817 * t) * anomaly.sin()
        + (0.019_993 - 0.000_101 * t) * (2.0 * anomaly).sin()
        + 0.000_289 * (3.0 * anomaly).sin();
    (mean_deg + centre_deg - 0.005_69 - 0.004_78 * node.sin()).to_radians()
}

/// Turns declination and hour angle to east, north, up, seen from the ground instead of the middle of the earth.
fn from_equator(declination: f64, hour_angle: f64, latitude: f64) -> [f64; 3] {
    let (sin_d, cos_d) = declination.sin_cos();
    let (sin_h, cos_h) = hour_angle.sin_cos();
    let (sin_l, cos_l) = latitude.sin_cos();
    let east = -cos_d * sin_h;
    let north = sin_d * cos_l - cos_d * cos_h * sin_l;
    let up = sin_d * sin_l + cos_d * cos_h * cos_l - PARALLAX_RAD;
    let length = (east * east + north * north + up * up).sqrt();
    [east / length, north / length, up / length]
}
