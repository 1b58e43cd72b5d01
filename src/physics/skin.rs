//! The skin of the house: resistance of a stack of sheets, and what wind makes of it.

use crate::model::{Sheet, SheetKind};

/// Resistance of the air gap before a further film, m²·K/W. A modelling choice: published plane air spaces of 13 to
/// 90 mm have 0.147 to 0.178 with opaque faces (AFIA; HyperPhysics); film passes heat radiation, so less is left.
pub const GAP_FILM_M2K_PER_W: f64 = 0.10;
/// Resistance of the air gap before a further rigid sheet, m²·K/W. A modelling choice, see [`GAP_FILM_M2K_PER_W`].
pub const GAP_RIGID_M2K_PER_W: f64 = 0.13;
/// Wind at which handbook U-values hold, m/s (15 mph).
pub const HANDBOOK_WIND_M_PER_S: f64 = 6.7;
/// Emissivity of an opaque wall's outer face (common practice for building surfaces).
pub const OPAQUE_EMISSIVITY: f64 = 0.9;

/// Wind at the house per wind at the mast, for shelter classes 1 to 5. A modelling choice: power law from 10 m open
/// country to 3 m.
const SITE_WIND_SHARE: [f64; 5] = [0.85, 0.70, 0.55, 0.40, 0.30];

/// Wind at the house, m/s. The class is 1 (open) to 5 (well sheltered); others are taken as the nearest of these.
#[must_use]
pub fn site_wind_m_per_s(mast_m_per_s: f64, shelter_class: u32) -> f64 {
    SITE_WIND_SHARE[shelter_index(shelter_class)] * mast_m_per_s
}

/// Index of a shelter class into a table of five.
#[must_use]
pub(crate) fn shelter_index(shelter_class: u32) -> usize {
    (shelter_class.clamp(1, 5) - 1) as usize
}

/// Outer surface coefficient h_e = 4 + 4 v + h_r, W/(m²·K) (ISO 6946 annex: h_c = 4 + 4v).
#[must_use]
pub fn outer_coefficient(wind_m_per_s: f64, h_r: f64) -> f64 {
    4.0 + 4.0 * wind_m_per_s + h_r
}

/// Handbook resistance of a stack, outermost sheet first, m²·K/W:
/// `R = 1/U_first + Σ further (R_gap + R_sheet)`. A liner's measured resistance already holds its gap.
/// An empty stack has no resistance of its own and yields zero.
#[must_use]
pub fn stack_resistance<'a>(sheets: impl IntoIterator<Item = &'a Sheet>) -> f64 {
    let mut resistance = 0.0;
    for (i, sheet) in sheets.into_iter().enumerate() {
        resistance += if i == 0 { 1.0 / sheet.u_as_skin_w_per_m2k } else { added_resistance(sheet) };
    }
    resistance
}

/// Resistance that a further sheet adds with its gap, m²·K/W.
#[must_use]
pub fn added_resistance(sheet: &Sheet) -> f64 {
    let gap = match sheet.kind {
        SheetKind::Film => GAP_FILM_M2K_PER_W,
        SheetKind::Rigid => GAP_RIGID_M2K_PER_W,
        SheetKind::Liner => 0.0,
    };
    gap + sheet.resistance_m2k_per_w
}

/// Resistance in the site's wind, m²·K/W: `R(v) = R − 1/h_e(6.7) + 1/h_e(v)`.
#[must_use]
pub fn resistance_in_wind(handbook_resistance: f64, wind_m_per_s: f64, h_r: f64) -> f64 {
    handbook_resistance - 1.0 / outer_coefficient(HANDBOOK_WIND_M_PER_S, h_r)
        + 1.0 / outer_coefficient(wind_m_per_s, h_r)
}

/// Emissivity of a sheet's outer side for the sky, with what shines through it: `ε_e = min(1, ε + τ_lw)`.
#[must_use]
pub fn sky_emissivity(outer: &Sheet) -> f64 {
    (outer.emissivity + outer.longwave_transmittance).min(1.0)
}
