//! An hourly year out of twelve monthly means, by the morphing of a bundled station-year.
//!
//! The station with the most similar winter (`choice`) lends its hours; each month's temperatures are shifted and
//! stretched until their mean daily minimum and maximum are the wanted ones (`morph`), and the hour's clearness is carried
//! to the sun of the place (`light`).
//!
//! # References
//! Belcher, Hacker and Powell (2005), Constructing design weather data for future climates, Building Services Engineering
//! Research and Technology 26(1).

mod alignment;
mod brightness;
mod choice;
mod digest;
mod light;
mod morph;
mod sky;

use super::degree_days::DayRange;
use super::error::WeatherError;
use super::year::{Filled, Place, WeatherYear};
use alignment::Alignment;
pub use brightness::Brightness;
use choice::most_similar;

/// Least stretch between mean daily minimum and maximum, K: nowhere is the mean day flatter than about 2 K.
pub const LEAST_SWING_K: f64 = 0.5;

/// What is known of a calendar month.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MonthNormal {
    /// Mean of the daily minima, °C.
    pub min_c: f64,
    /// Mean of the daily maxima, °C; at least [`LEAST_SWING_K`] above the minima.
    pub max_c: f64,
    /// How bright its sky is.
    pub brightness: Option<Brightness>,
    /// Mean wind at the mast, m/s.
    pub wind_m_per_s: Option<f64>,
}

/// A place and its twelve months.
#[derive(Debug, Clone, PartialEq)]
pub struct Normals {
    /// Where.
    pub place: Place,
    /// January to December.
    pub months: [MonthNormal; 12],
}

/// The zone whose clock is nearest to the sun at a longitude, hours from UTC.
#[must_use]
pub fn zone_of_longitude_h(longitude_deg: f64) -> f64 {
    (longitude_deg / 15.0).round()
}

/// Makes the hourly year of a place, its hours lent by the most similar of the bundled stations.
///
/// # Errors
/// When the built-in data are damaged.
pub fn year_from_normals(normals: &Normals) -> Result<WeatherYear, WeatherError> {
    year_without(normals, &[])
}

/// The same without some of the stations, by their keys: what the making is worth shows where the true year is known.
///
/// # Errors
/// When none is left.
pub fn year_without(normals: &Normals, left_out: &[&str]) -> Result<WeatherYear, WeatherError> {
    let lender = most_similar(normals, left_out)?;
    let lent = sky::observed(lender.station.load()?);
    let alignment = Alignment::between(&lent, &normals.place);
    let mut records = alignment.records(&lent);
    let before = records.clone();
    morph::temperatures(&mut records, &normals.months);
    morph::wind(&mut records, &normals.months);
    light::carry(&mut records, &lent, alignment, &normals.place, &lender.shares);
    sky::clouds(&mut records, &lender.shares);
    sky::infrared(&mut records, &before);
    Ok(WeatherYear {
        place: normals.place.clone(),
        credit: format!("Made from monthly means; hours of {}: {}", lender.station.name, lender.station.credit),
        sun_offset_h: lent.sun_offset_h,
        typical: true,
        records,
        filled: Filled::default(),
        notes: vec![lender.reason, METHOD.into()],
    })
}

/// Makes the year of a place of which some months are known by mean daily minimum and maximum: the others follow the
/// station whose known months are nearest.
///
/// # Errors
/// When the built-in data are damaged.
pub fn year_from_known_months(place: &Place, known: &[Option<DayRange>; 12]) -> Result<WeatherYear, WeatherError> {
    let months = choice::complete(place, known)?;
    year_from_normals(&Normals { place: place.clone(), months })
}

/// What was done, in words for the reader of the figures.
const METHOD: &str = "Each month of those hours was shifted and stretched to the typed mean daily minimum and maximum, and their \
     clearness carried to the sun of the place (morphing after Belcher, Hacker and Powell 2005).";
