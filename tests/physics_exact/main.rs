//! The mathematics of the thermal network: order of convergence, damping, books of heat that close through freezing.
//!
//! Cases with figures from outside stand in `tests/proof/`.

mod freezing;
#[path = "../common/network.rs"]
mod network;
mod order;
mod vapour;
