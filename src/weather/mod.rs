//! Hourly weather: a year of records, where it was measured, and what sun and sky they make.

pub mod bundled;
pub mod climate;
pub mod error;
pub mod fill;
mod fill_sun;
pub mod ground;
pub mod irradiance;
pub mod outdoor;
pub mod raw;
pub mod sky;
mod stations;
pub mod stats;
pub mod sun;
pub mod year;

pub use bundled::Station;
pub use climate::{Climate, ClimateHour, PlaneIrradiance};
pub use error::{Problem, WeatherError};
pub use outdoor::OutdoorFigures;
pub use year::{Filled, Place, Record, WeatherYear};
