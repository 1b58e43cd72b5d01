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
