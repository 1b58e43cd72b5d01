//! Humidity, wet covers and mist: the vapour of house and tent, hour by hour, beside the balance of heat.
//!
//! Each zone is one well-mixed store of vapour, driven by the hourly means of a season that has been run. It does not
//! act back on the heat: the vapour's heat has left that balance with the sun's share.

mod balance;
mod figures;
mod water;

pub use balance::DampInputs;
pub use figures::{DampFigures, DampRun, HUMID_SHARE, WET_HOUR_G_PER_M2, damp_season};

/// What the balance of vapour gives, hour by hour; means and sums over each hour.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DampSeries {
    /// Relative humidity of the house, share of one.
    pub house_humidity: Vec<f64>,
    /// Relative humidity of the tent, share of one; empty without a tent.
    pub tent_humidity: Vec<f64>,
    /// Water that condenses on the skin's inner side, mean over its area, g/(m²·h).
    pub skin_condensation_g_per_m2h: Vec<f64>,
    /// Water that condenses on the tent's inner side, g/(m²·h); empty without a tent.
    pub tent_wall_condensation_g_per_m2h: Vec<f64>,
    /// Mist in the house: vapour above saturation, g/h.
    pub house_mist_g_per_h: Vec<f64>,
    /// Mist in the tent, g/h; empty without a tent.
    pub tent_mist_g_per_h: Vec<f64>,
}

impl DampSeries {
    /// Empty series with room for this many hours.
    fn with_room(hours: usize, tent: bool) -> Self {
        let room = || Vec::with_capacity(hours);
        let tent_room = || Vec::with_capacity(if tent { hours } else { 0 });
        Self {
            house_humidity: room(),
            tent_humidity: tent_room(),
            skin_condensation_g_per_m2h: room(),
            tent_wall_condensation_g_per_m2h: tent_room(),
            house_mist_g_per_h: room(),
            tent_mist_g_per_h: tent_room(),
        }
    }
}
