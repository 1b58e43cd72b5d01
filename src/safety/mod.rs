//! Rules of the trades that keep people and crop from harm: what a cylinder gives, what a circuit carries, what air a
//! flame needs, what water weighs. Plain numbers in and out; local codes come first.

pub mod cautions;
pub mod circuit;
pub mod combustion_air;
pub mod cylinder;
pub mod indoor_air;
pub mod sizing;
pub mod weight;
