//! What sheets, wind and clear sky make of a facet, and what the tent's wall is worth.

use crate::sky::{STEFAN_BOLTZMANN, ZERO_C_IN_K};
use warmfold::model::{Catalogue, Drawn, NightCover, Part, PartCovering, Scenario, Sheet, SheetKind};

/// A stack of sheets or an opaque wall.
pub struct Cover {
    /// At 6.7 m/s, m²·K/W.
    pub resistance: f64,
    pub emissivity: f64,
    /// None if opaque.
    pub passes: Option<f64>,
    pub heat_j_per_m2k: f64,
}

fn sheets_of<'a>(keys: &[String], rows: &'a Catalogue) -> Vec<&'a Sheet> {
    keys.iter().map(|key| rows.sheet(key).expect("a sheet of the catalogue")).collect()
}

/// Gap and sheet of a further layer.
fn further(sheet: &Sheet) -> f64 {
    let gap = match sheet.kind {
        SheetKind::Film => 0.10,
        SheetKind::Rigid => 0.13,
        SheetKind::Liner => 0.0,
    };
    gap + sheet.resistance_m2k_per_w
}

impl Cover {
    pub fn of(scenario: &Scenario, part: Part, rows: &Catalogue) -> Self {
        let own = scenario.covering.exceptions.iter().find(|e| e.part == part);
        let keys = match own.map(|e| &e.covering) {
            Some(PartCovering::Opaque(u)) => {
                return Self { resistance: 1.0 / u, emissivity: 0.9, passes: None, heat_j_per_m2k: 0.0 };
            }
            Some(PartCovering::Sheets(keys)) => keys,
            None => &scenario.covering.sheets,
        };
        let sheets = sheets_of(keys, rows);
        let outer = sheets[0];
        Self {
            resistance: 1.0 / outer.u_as_skin_w_per_m2k + sheets[1..].iter().map(|s| further(s)).sum::<f64>(),
            emissivity: (outer.emissivity + outer.longwave_transmittance).min(1.0),
            passes: Some(passed(&sheets)),
            heat_j_per_m2k: heat_capacity(&sheets),
        }
    }
}

fn passed(sheets: &[&Sheet]) -> f64 {
    sheets.iter().map(|s| s.solar_transmittance).product()
}

fn heat_capacity(sheets: &[&Sheet]) -> f64 {
    sheets.iter().map(|s| 1000.0 * s.heat_capacity_kj_per_m2k).sum()
}

/// Wall and top of the tent: resistance (m²·K/W), light passed, heat capacity (J/m²K).
pub fn tent_wall(keys: &[String], rows: &Catalogue) -> (f64, f64, f64) {
    let sheets = sheets_of(keys, rows);
    let outer = sheets[0];
    let (mut emissivity, mut longwave) = (outer.emissivity, outer.longwave_transmittance);
    if outer.kind == SheetKind::Film {
        // The film is wet: what it no longer passes it takes up.
        emissivity += 0.75 * longwave;
        longwave *= 0.25;
    }
    let (convection, radiation) = (2.5, 5.1);
    let across = (convection + emissivity * radiation) / 2.0 + longwave * radiation;
    let first = 1.0 / across + outer.resistance_m2k_per_w;
    (first + sheets[1..].iter().map(|s| further(s)).sum::<f64>(), passed(&sheets), heat_capacity(&sheets))
}

/// What the wind and the sky of an hour do to any facet.
pub struct Outside {
    pub air_c: f64,
    sky_c: f64,
    h_handbook: f64,
    h_now: f64,
    h_radiation: f64,
}

impl Outside {
    pub fn of(air_c: f64, sky_c: f64, site_wind: f64) -> Self {
        let mean_k = (air_c + sky_c) / 2.0 + ZERO_C_IN_K;
        let h_radiation = 4.0 * STEFAN_BOLTZMANN * mean_k.powi(3);
        let h = |wind: f64| 4.0 + 4.0 * wind + h_radiation;
        Self { air_c, sky_c, h_handbook: h(6.7), h_now: h(site_wind), h_radiation }
    }

    /// Transmittance of a facet now, W/m²K, and the temperature that it feels outdoors, °C.
    pub fn facet(&self, cover: &Cover, night_resistance: f64, tilt: f64) -> (f64, f64) {
        let resistance = cover.resistance + night_resistance - 1.0 / self.h_handbook + 1.0 / self.h_now;
        let view = (1.0 + tilt.cos()) / 2.0;
        let below_air_k = view * cover.emissivity * self.h_radiation * (self.air_c - self.sky_c) / self.h_now;
        (1.0 / resistance, self.air_c - below_air_k)
    }
}

/// Added resistance and light passed of a cover in an hour: none and all while it is open.
pub fn night_cover(cover: &NightCover, rows: &Catalogue, global: f64, mid_hour: f64) -> (f64, f64) {
    let drawn = match cover.drawn {
        Drawn::BySun => global <= 5.0,
        Drawn::Between { from_hour, to_hour } => within(mid_hour, from_hour, to_hour),
    };
    if !cover.present || !drawn {
        return (0.0, 1.0);
    }
    let screen = rows.screen(&cover.screen).expect("a screen of the catalogue");
    (screen.added_resistance_m2k_per_w, screen.solar_transmittance)
}

/// Whether a clock hour lies in a span that may run over midnight.
pub fn within(hour: f64, from: f64, to: f64) -> bool {
    if from > to { hour >= from || hour < to } else { hour >= from && hour < to }
}
