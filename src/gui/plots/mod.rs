//! The figures of the views, each drawn from data made once per season.

pub mod air_days;
pub mod air_months;
pub mod axis;
pub mod coldest;
pub mod column;
pub mod daily;
mod data;
pub mod doubts;
pub mod fan;
pub mod legend;
pub mod map;
pub mod months;
pub mod power_cut;
pub mod rows;
pub mod running;
pub mod swept;
pub mod values;

pub use data::PlotShelf;

/// Least height and width of a plot: below it there is no room for its axes.
const LEAST: f32 = 80.0;

/// Room for a plot: what is available less what stands beside it, and never too little to be drawn.
#[must_use]
pub fn room(available: f32, less: f32) -> f32 {
    (available - less).max(LEAST)
}
