//! Many seasons of one study: an input swept over a range, and what to buy first.
//!
//! The only part of the library that works on several threads. Every season is reckoned by itself and put back in its
//! place, so that their number changes no bit of a result.

mod csv;
mod derived;
pub mod inputs;
pub mod pool;
pub mod refusal;
pub mod sweep;

pub use inputs::{NumericInput, UnknownInput, find, numeric_inputs};
pub use pool::Workers;
pub use refusal::Refusal;
pub use sweep::{Axis, AxisError, Sweep, SweepError, SweepPoint, sweep};
