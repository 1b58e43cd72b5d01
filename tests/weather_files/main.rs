//! Reading EPW and TMY3 files: the traps of real files, and what broken ones are told. Layouts and missing codes: EPW data
//! dictionary; NREL, User's Manual for TMY3 Data Sets (2008). Broken files are made from a good one, cell by cell.

mod broken_files;
mod damaged_bytes;
#[path = "../common/epw_lines.rs"]
mod epw_lines;
mod good_files;
mod holes;
mod logs;
#[path = "../common/weather_text.rs"]
mod weather_text;

use std::io::Write;
use std::sync::LazyLock;

use flate2::Compression;
use flate2::write::GzEncoder;
use warmfold::weather::bundled::load;
use warmfold::weather::{Climate, MAX_BYTES, WeatherYear, read_weather};
use weather_text::{WeatherText, epw_cell};

static DULUTH: LazyLock<WeatherYear> = LazyLock::new(|| load("duluth-mn").expect("a bundled station"));
static GOOD: LazyLock<WeatherText> = LazyLock::new(|| WeatherText::epw(&DULUTH));

/// Row of a February afternoon: 9 February, hour 16.
const FEBRUARY: usize = (31 + 8) * 24 + 15;

fn good() -> WeatherText {
    GOOD.clone()
}

#[track_caller]
fn read(file: &WeatherText) -> WeatherYear {
    read_weather(&file.bytes(), "garden.epw").expect("a file that can be read")
}

fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::fast());
    encoder.write_all(bytes).expect("memory takes all");
    encoder.finish().expect("memory takes all")
}

/// The leap year 2020 made from a measured year: 29 February repeats the 28th.
fn leap_year() -> WeatherYear {
    let mut year = load("aachen-2021").expect("a bundled station");
    year.records.iter_mut().for_each(|r| r.year = 2020);
    let end_of_february = (31 + 28) * 24;
    let mut extra = year.records[end_of_february - 24..end_of_february].to_vec();
    extra.iter_mut().for_each(|r| r.day = 29);
    year.records.splice(end_of_february..end_of_february, extra);
    year
}
