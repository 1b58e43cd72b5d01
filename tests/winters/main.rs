//! Many winters: the chance days held against series of several years, and what the engine makes of them.

mod chicago;
mod clemson;
mod engine;
mod fit;

#[path = "../common/measured.rs"]
mod measured;
#[path = "../common/weather.rs"]
mod weather;
