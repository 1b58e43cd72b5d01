//! The night sky: its emissivity and temperature, and what an infrared-blocking film saves under it.

use serde::Deserialize;
use warmfold::model::{Sheet, bundled_catalogue};
use warmfold::physics::radiation::{radiative_coefficient, sky_equivalent_c};
use warmfold::physics::skin::{
    outer_coefficient, resistance_in_wind, sky_emissivity as sheet_emissivity, stack_resistance,
};
use warmfold::units::{KELVIN_AT_0_C, STEFAN_BOLTZMANN};
use warmfold::weather::sky::{sky_c_from_dew_point, sky_c_from_infrared, sky_emissivity};

use super::figure::{Figure, hold};
use super::sheet::told_figures;

#[derive(Deserialize)]
enum Setting {
    /// Emissivity of the sky at this dew point in K.
    Emissivity { dew_point_k: f64, tenths: f64 },
    /// Infrared on the horizontal, W/m²; air and dew point in K.
    Infrared { air_k: f64, dew_point_k: f64, tenths: f64 },
    /// Sky temperature, °C; air and dew point in K.
    SkyC { air_k: f64, dew_point_k: f64, tenths: f64 },
    /// The same from the infrared of the case before, °C.
    SkyCOfInfrared { infrared_w_per_m2: f64 },
    /// What infrared-blocking film saves of plain film's heat in the handbook's wind, without a sky, %.
    FilmSeason,
    /// The same of a roof under this sky, %.
    FilmNight { inside_c: f64, air_c: f64, dew_point_c: f64, wind_m_per_s: f64 },
}

fn sheet(key: &str) -> &'static Sheet {
    bundled_catalogue().sheet(key).expect("a known sheet")
}

/// Heat through a roof of one sheet under a clear sky, W/m².
fn roof_w_per_m2(sheet: &Sheet, inside_c: f64, air_c: f64, sky_c: f64, wind_m_per_s: f64) -> f64 {
    let h_r = radiative_coefficient(air_c, sky_c);
    let h_e = outer_coefficient(wind_m_per_s, h_r);
    let felt_c = sky_equivalent_c(air_c, sky_c, sheet_emissivity(sheet), h_r, h_e);
    (inside_c - felt_c) / resistance_in_wind(stack_resistance([sheet]), wind_m_per_s, h_r)
}

fn compute(setting: &Setting) -> f64 {
    match *setting {
        Setting::Emissivity { dew_point_k, tenths } => sky_emissivity(dew_point_k - KELVIN_AT_0_C, tenths),
        Setting::Infrared { air_k, dew_point_k, tenths } => {
            sky_emissivity(dew_point_k - KELVIN_AT_0_C, tenths) * STEFAN_BOLTZMANN * air_k.powi(4)
        }
        Setting::SkyC { air_k, dew_point_k, tenths } => {
            sky_c_from_dew_point(air_k - KELVIN_AT_0_C, dew_point_k - KELVIN_AT_0_C, tenths)
        }
        Setting::SkyCOfInfrared { infrared_w_per_m2 } => sky_c_from_infrared(infrared_w_per_m2),
        Setting::FilmSeason => 100.0 * (1.0 - stack_resistance([sheet("film")]) / stack_resistance([sheet("ir-film")])),
        Setting::FilmNight { inside_c, air_c, dew_point_c, wind_m_per_s } => {
            let sky_c = sky_c_from_dew_point(air_c, dew_point_c, 0.0);
            let heat = |key| roof_w_per_m2(sheet(key), inside_c, air_c, sky_c, wind_m_per_s);
            100.0 * (1.0 - heat("ir-film") / heat("film"))
        }
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("night_sky", compute)
}

#[test]
fn night_sky_agrees() {
    hold(&figures());
}
