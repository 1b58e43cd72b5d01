//! The thermal network against lumped cases with an exact answer, and against a season integrated on its own.
//!
//! Unless a test says otherwise the tolerance is the cases' own: 0.02 K, or 0.1 % of the temperature span.

mod denver_season;
mod freezing;
mod lumped;
mod network;
mod order;
