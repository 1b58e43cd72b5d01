//! Each mechanism switched on alone moves a whole run by what its own formula says.
//!
//! The house is bare: single film, no leakage, edge, deep ground, bench, vents, tent or water, in weather that is the
//! same all year, so that a run comes to rest and a hand formula can follow it. Formulas and coefficients are written
//! out here and not taken from the program: those of the model's description, whose sources stand at its constants.

mod air;
mod airing;
mod colder;
mod crop;
mod damp;
mod ground;
mod heaters;
mod house;
mod power_cut;
mod skin;
mod stores;
mod sun;
mod tent;

#[path = "../common/weather.rs"]
mod weather;
