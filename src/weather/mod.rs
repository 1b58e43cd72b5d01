//! Hourly weather: a year of records, where it was measured, and what sun and sky they make.

pub mod climate;
pub mod year;

pub use climate::{Climate, ClimateHour, PlaneIrradiance};
pub use year::{Filled, Place, Record, WeatherYear};
