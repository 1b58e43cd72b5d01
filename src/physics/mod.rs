//! One mechanism per file: plain numbers in, watts or W/K out. Nothing here knows of weather files or studies' files.

pub mod air;
pub mod combustion;
pub mod condensation;
mod factor;
mod freezing;
pub mod ground;
pub mod leakage;
pub mod moist_air;
pub mod network;
pub mod neutral_level;
pub mod radiation;
pub mod skin;
pub mod solar;
pub mod step;
pub mod stores;
mod switching;
pub mod tent_wall;
pub mod vapour;
pub mod vent;
pub mod vent_sizing;
