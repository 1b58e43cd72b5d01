//! The weather that the laws are tried in.

use crate::seasons;
use std::sync::LazyLock;
use warmfold::units::{STEFAN_BOLTZMANN, kelvin_from_c};
use warmfold::weather::sky::sky_c_from_dew_point;
use warmfold::weather::{Climate, WeatherYear, bundled};

/// Stations with a hard winter, a sunny one and a mild cloudy one.
pub static CLIMATES: LazyLock<[Climate; 3]> =
    LazyLock::new(|| ["duluth-mn", "denver-co", "port-angeles-wa"].map(seasons::climate));

/// The hard winter without its sun.
pub static DARK: LazyLock<Climate> = LazyLock::new(|| {
    let mut year = duluth();
    take_sun(&mut year);
    Climate::from_year(&year)
});

/// The stations of [`CLIMATES`], air, dew and sky warmer by this, K: clouds, wind and sun stay.
pub fn warmer(station: usize, by_k: f64) -> Climate {
    let mut year = bundled::load(["duluth-mn", "denver-co", "port-angeles-wa"][station]).expect("a bundled station");
    for record in &mut year.records {
        let sky_c = match record.infrared_w_per_m2 {
            Some(infrared) => (infrared / STEFAN_BOLTZMANN).powf(0.25) - kelvin_from_c(0.0),
            None => sky_c_from_dew_point(record.dry_bulb_c, record.dew_point_c, record.cloud_tenths),
        };
        record.infrared_w_per_m2 = Some(STEFAN_BOLTZMANN * kelvin_from_c(sky_c + by_k).powi(4));
        record.dry_bulb_c += by_k;
        record.dew_point_c += by_k;
    }
    Climate::from_year(&year)
}

/// A year without any difference: air, sky, ground and building at one temperature, no sun, wind as measured.
pub fn even(t_c: f64) -> Climate {
    let mut year = duluth();
    for record in &mut year.records {
        record.dry_bulb_c = t_c;
        record.infrared_w_per_m2 = Some(STEFAN_BOLTZMANN * kelvin_from_c(t_c).powi(4));
    }
    take_sun(&mut year);
    Climate::from_year(&year)
}

fn duluth() -> WeatherYear {
    bundled::load("duluth-mn").expect("a bundled station")
}

fn take_sun(year: &mut WeatherYear) {
    for record in &mut year.records {
        record.global_w_per_m2 = 0.0;
        record.direct_normal_w_per_m2 = 0.0;
        record.diffuse_w_per_m2 = 0.0;
    }
}
