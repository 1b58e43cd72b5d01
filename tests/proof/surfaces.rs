//! Surfaces: films outside and inside, and what a surface sees of the sky; the ground below.

use serde::Deserialize;
use warmfold::geometry::Facet;
use warmfold::model::{Part, Sheet, SheetKind};
use warmfold::physics::ground::SOIL_CONDUCTIVITY;
use warmfold::physics::radiation::radiative_coefficient;
use warmfold::physics::skin::outer_coefficient;
use warmfold::physics::tent_wall::tent_u_w_per_m2k;
use warmfold::weather::ground::DIFFUSIVITY_M2_PER_S;

use super::figure::{Figure, hold};
use super::sheet::told_figures;

/// Radiative coefficient of a surface at 5 °C, W/(m²·K): a winter's air and sky taken together.
pub fn radiative_at_5_c() -> f64 {
    radiative_coefficient(5.0, 5.0)
}

#[derive(Deserialize)]
enum Setting {
    /// Outer coefficient in this wind, m/s, W/(m²·K).
    OuterCoefficient(f64),
    /// Its inverse, m²·K/W.
    OuterFilm(f64),
    /// Both calm surfaces of an opaque black sheet without a resistance of its own, m²·K/W.
    TwoCalmSurfaces,
    /// Share of the sky that a facet of this tilt sees.
    SkyView(f64),
    /// W/(m·K).
    SoilConductivity,
    /// m² per day.
    SoilDiffusivity,
}

fn compute(setting: &Setting) -> f64 {
    match *setting {
        Setting::OuterCoefficient(wind) => outer_coefficient(wind, radiative_at_5_c()),
        Setting::OuterFilm(wind) => 1.0 / outer_coefficient(wind, radiative_at_5_c()),
        Setting::TwoCalmSurfaces => {
            let black = Sheet {
                kind: SheetKind::Rigid,
                emissivity: 1.0,
                longwave_transmittance: 0.0,
                resistance_m2k_per_w: 0.0,
                ..Sheet::default()
            };
            1.0 / tent_u_w_per_m2k([&black])
        }
        Setting::SkyView(tilt_deg) => Facet { area_m2: 1.0, tilt_deg, azimuth_deg: 0.0, part: Part::Roof }.sky_view(),
        Setting::SoilConductivity => SOIL_CONDUCTIVITY,
        Setting::SoilDiffusivity => DIFFUSIVITY_M2_PER_S * 86_400.0,
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("surfaces", compute)
}

#[test]
fn surfaces_agree() {
    hold(&figures());
}
