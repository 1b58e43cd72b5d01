//! Study files on disk and the weather that they name.
//!
//! A study is RON with a `format` number at the top; every field has a default, unknown fields are refused with their
//! place and the nearest known name. Reading and writing text touches no disk; [`load`] and [`save`] do.

mod claim;
mod demo;
mod drafts;
mod fault;
mod files;
mod own_weather;
mod scan;
mod sidecar;
mod text;
mod weather_source;

pub use claim::Claim;
pub use demo::{DEMO_NAME, demo, demo_text};
pub use drafts::{Draft, LeftDraft};
pub use fault::{Fault, FileError, FileFault, Place, StudyFileError};
pub use files::{load, read_file, save, write_whole};
pub use scan::{path_at, place_of};
pub use sidecar::{SidecarError, bring_weather, fingerprint, fingerprint_file};
pub use text::{LARGEST_FILE_BYTES, read_bytes, read_study, write_study};
pub use weather_source::{SiteWeather, WeatherSourceError, load_weather};
