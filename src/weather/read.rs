//! Any weather file: finds out what it is, reads it, fills its holes.

use super::error::{Problem, WeatherError, quoted};
use super::fill::fill;
use super::raw::RawYear;
use super::text::text_of;
use super::year::WeatherYear;
use super::{closure, epw, tmy3};

/// Reads a weather file (EPW or TMY3 CSV, plain or gzipped) from its bytes. `name` is the file's name for messages and
/// the credit line. A caller that reads from disk refuses files larger than [`super::MAX_BYTES`] before it reads them.
///
/// # Errors
/// Says what is wrong, on which line, and what to do about it.
pub fn read_weather(bytes: &[u8], name: &str) -> Result<WeatherYear, WeatherError> {
    read_raw(bytes, name).and_then(fill).map_err(|problem| problem.in_file(name))
}

fn read_raw(bytes: &[u8], name: &str) -> Result<RawYear, Problem> {
    let text = text_of(bytes)?;
    let mut raw = if epw::is_epw(&text) {
        epw::read(&text, name)?
    } else if tmy3::is_tmy3(&text) {
        tmy3::read(&text, name)?
    } else {
        return Err(Problem::NotWeather { start: quoted(text.lines().next().unwrap_or_default()) });
    };
    raw.notes.extend(closure::note(&raw));
    Ok(raw)
}
