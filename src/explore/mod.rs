//! Many seasons of one study: an input swept over a range, and what to buy first.
//!
//! It works on several threads. Every season is reckoned by itself and put back in its
//! place, so that their number changes no bit of a result.

pub mod best_buy;
pub mod contour;
mod csv;
mod derived;
pub mod inputs;
mod measure;
pub mod measures;
pub mod refusal;
pub mod sweep;
mod words;

pub use crate::season::pool::Workers;
pub use best_buy::{BestBuy, Offer, Step};
pub use inputs::{NumericInput, UnknownInput, find, numeric_inputs};
pub use measure::Measured;
pub use measures::{Combination, MOST_CANDIDATES, MeasuresError, combinations, combinations_when_ready, sets};
pub use refusal::Refusal;
pub use sweep::{Axis, AxisError, Sweep, SweepError, SweepPoint, sweep, sweep_when_ready};
