//! Writes weather years as the text of EPW and TMY3 files, for tests to read back and to break.

use super::epw_lines::epw_lines;
use warmfold::weather::{Record, WeatherYear};

/// A weather file in lines: head and rows.
#[derive(Clone)]
pub struct WeatherText {
    pub head: Vec<String>,
    pub rows: Vec<String>,
}

impl WeatherText {
    /// An EPW file of a year.
    pub fn epw(year: &WeatherYear) -> Self {
        let (head, rows) = epw_lines(year);
        Self { head, rows }
    }

    /// A TMY3 CSV file of a year.
    pub fn tmy3(year: &WeatherYear) -> Self {
        let p = &year.place;
        let head = [
            format!(
                "000000,\"{}\",XX,{},{},{},{}",
                p.name, p.utc_offset_h, p.latitude_deg, p.longitude_deg, p.elevation_m
            ),
            "Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),GHI (W/m^2),GHI source,DNI (W/m^2),DHI (W/m^2),TotCld (tenths),\
             OpqCld (tenths),Dry-bulb (C),Dry-bulb source,Dew-point (C),Wspd (m/s),Hvis (m)"
                .to_owned(),
        ];
        Self { head: head.to_vec(), rows: year.records.iter().map(tmy3_row).collect() }
    }

    /// Line of a row, from 1.
    pub fn line(&self, row: usize) -> usize {
        self.head.len() + row + 1
    }

    /// Puts another value in a cell of a row.
    pub fn set(&mut self, row: usize, cell: usize, value: &str) {
        let mut cells: Vec<&str> = self.rows[row].split(',').collect();
        cells[cell] = value;
        self.rows[row] = cells.join(",");
    }

    /// Puts another value in a cell of all rows.
    pub fn set_all(&mut self, cell: usize, value: &str) {
        (0..self.rows.len()).for_each(|row| self.set(row, cell, value));
    }

    /// The file, with this line end.
    pub fn with_line_end(&self, end: &str) -> String {
        let lines = self.head.iter().chain(&self.rows);
        lines.fold(String::new(), |text, line| text + line + end)
    }

    pub fn bytes(&self) -> Vec<u8> {
        self.with_line_end("\n").into_bytes()
    }
}

/// Cells of an EPW row, counted from 0.
pub mod epw_cell {
    pub const MINUTE: usize = 4;
    pub const DRY_BULB: usize = 6;
    pub const DEW_POINT: usize = 7;
    pub const INFRARED: usize = 12;
    pub const GLOBAL: usize = 13;
    pub const DIRECT: usize = 14;
    pub const DIFFUSE: usize = 15;
    pub const WIND: usize = 21;
    pub const TOTAL_CLOUD: usize = 22;
    pub const OPAQUE_CLOUD: usize = 23;
}

fn tmy3_row(r: &Record) -> String {
    format!(
        "{:02}/{:02}/{},{:02}:00,0,{},1,{},{},{},{},{},A,{},{},-9900",
        r.month,
        r.day,
        r.year,
        r.hour,
        r.global_w_per_m2,
        r.direct_normal_w_per_m2,
        r.diffuse_w_per_m2,
        r.cloud_tenths,
        r.cloud_tenths,
        r.dry_bulb_c,
        r.dew_point_c,
        r.wind_m_per_s
    )
}
