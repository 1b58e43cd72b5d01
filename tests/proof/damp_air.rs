//! Vapour in air, dew on the cover, water from leaves.

use serde::Deserialize;
use warmfold::physics::combustion::Hydrocarbon;
use warmfold::physics::condensation::{inner_surface_c, wetting_humidity};
use warmfold::physics::moist_air::{
    air_pressure_pa, carried_kg_per_h, dew_point_c, dry_air_m3_per_kg, evaporation_kg_per_m2s, humidity_ratio,
    saturation_kg_per_m3, saturation_over_ice_pa, saturation_pa, vapour_kg_per_m3,
};
use warmfold::units::{SECONDS_PER_HOUR, STANDARD_PRESSURE_PA};

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

#[derive(Deserialize)]
struct Cases {
    saturation: Sheets<Saturated>,
    vapour_density: Sheets<Saturated>,
    humidity_ratio: Sheets<Saturated>,
    air_pressure: Sheets<f64>,
    dry_air: Sheets<f64>,
    dew_point: Sheets<Damp>,
    inner_surface: Sheets<Cover>,
    wetting: Sheets<Cover>,
    leaves: Sheets<Leaf>,
    carried: Sheets<f64>,
    removal: Sheets<String>,
}

#[derive(Deserialize)]
enum Over {
    Water,
    Ice,
}

#[derive(Deserialize)]
struct Saturated {
    t_c: f64,
    over: Over,
}

impl Saturated {
    fn pa(&self) -> f64 {
        match self.over {
            Over::Water => saturation_pa(self.t_c),
            Over::Ice => saturation_over_ice_pa(self.t_c),
        }
    }

    fn words(&self) -> String {
        let over = match self.over {
            Over::Water => "water",
            Over::Ice => "ice",
        };
        format!("at {} °C over {over}", self.t_c)
    }
}

#[derive(Deserialize)]
struct Damp {
    t_c: f64,
    humidity: f64,
}

/// A cover with 8 W/(m²·K) on its inner side.
#[derive(Deserialize)]
struct Cover {
    inside_c: f64,
    outside_c: f64,
    u: f64,
}

impl Cover {
    fn surface_c(&self) -> f64 {
        inner_surface_c(self.inside_c, self.outside_c, self.u, 1.0 / 8.0)
    }

    fn words(&self) -> String {
        format!("cover of U {}, {} °C inside, {} °C outside", self.u, self.inside_c, self.outside_c)
    }
}

#[derive(Deserialize)]
struct Leaf {
    t_c: f64,
    humidity: f64,
    leaf_s_per_m: f64,
}

impl Leaf {
    fn grams_per_h(&self) -> f64 {
        let saturated = saturation_kg_per_m3(self.t_c);
        let flux = evaporation_kg_per_m2s(saturated, self.humidity * saturated, self.leaf_s_per_m + 200.0);
        flux * SECONDS_PER_HOUR * 1000.0
    }
}

/// Vapour density of the house at 15 °C, 85 %, and of outdoor air at −5 °C, 80 % of saturation over ice, kg/m³.
fn house_and_outdoor() -> (f64, f64) {
    (0.85 * saturation_kg_per_m3(15.0), vapour_kg_per_m3(0.80 * saturation_over_ice_pa(-5.0), -5.0))
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("damp_air");
    let (house, outdoor) = house_and_outdoor();
    [
        file.saturation.figures(|c| (format!("saturation pressure {}", c.words()), c.pa())),
        file.vapour_density
            .figures(|c| (format!("vapour in saturated air {}", c.words()), 1000.0 * vapour_kg_per_m3(c.pa(), c.t_c))),
        file.humidity_ratio.figures(|c| {
            let ratio = humidity_ratio(c.pa(), STANDARD_PRESSURE_PA);
            (format!("vapour per dry air, saturated {}", c.words()), 1000.0 * ratio)
        }),
        file.air_pressure.figures(|h| (format!("standard air pressure at {h} m"), air_pressure_pa(*h))),
        file.dry_air.figures(|t| (format!("room that dry air takes at {t} °C"), dry_air_m3_per_kg(*t))),
        file.dew_point.figures(|c| {
            let dew_point = dew_point_c(c.humidity * saturation_pa(c.t_c));
            (format!("dew point of air at {} °C and {:.0} %", c.t_c, 100.0 * c.humidity), dew_point)
        }),
        file.inner_surface.figures(|c| (format!("inner side of a {}", c.words()), c.surface_c())),
        file.wetting.figures(|c| {
            (format!("humidity that wets a {}", c.words()), 100.0 * wetting_humidity(c.surface_c(), c.inside_c))
        }),
        file.leaves
            .figures(|c| (format!("water from 1 m² of leaf of {} s/m by night", c.leaf_s_per_m), c.grams_per_h())),
        file.carried.figures(|changes| {
            let carried = carried_kg_per_h(30.0, *changes, house, outdoor);
            (format!("water that {changes} air changes per hour carry out"), 1000.0 * carried)
        }),
        file.removal.figures(|fuel| {
            let burnt = Hydrocarbon::of_fuel(fuel).expect("a hydrocarbon");
            let water_kg = burnt.water_kg_per_kg() * burnt.kg_per_kwh_gross();
            let per_m3 = carried_kg_per_h(1.0, 1.0, house, outdoor);
            (format!("outdoor air that dries off an unvented kilowatt of {fuel}"), water_kg / per_m3)
        }),
    ]
    .concat()
}

#[test]
fn damp_air_agrees() {
    hold(&figures());
}
