//! Hourly weather: a year of records, where it was measured, and what sun and sky they make.

pub mod bundled;
mod calendar;
mod cells;
pub mod climate;
mod closure;
pub mod colder;
pub mod degree_days;
mod epw;
pub mod error;
pub mod fill;
mod fill_sun;
pub mod ground;
pub mod irradiance;
pub mod log;
pub mod normals;
pub mod note;
pub mod outdoor;
pub mod raw;
mod read;
pub mod sky;
mod stations;
pub mod stats;
pub mod sun;
mod text;
mod tmy3;
pub mod winters;
pub mod year;

pub use bundled::Station;
pub use climate::{Climate, ClimateHour, PlaneIrradiance};
pub use error::{Problem, Stamp, WeatherError};
pub use note::Note;
pub use outdoor::OutdoorFigures;
pub use read::read_weather;
pub use text::MAX_BYTES;
pub use year::{Filled, Place, Record, WeatherYear};
