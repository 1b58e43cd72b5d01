//! Warmfold: what a winter costs in a small heated plant house.
//!
//! Layers, each using only those above it:
//!
//! 1. [`units`]: constants and conversions; SI inside, temperatures in °C.
//! 2. [`model`]: what the grower describes, as plain data with its checks. [`weather`]: hourly weather.
//! 3. [`physics`]: one mechanism per file; plain numbers in, watts out; the thermal network and its solver.
//! 4. [`season`]: a scenario on a weather: hourly series, season summary, books, design load, power cut.
//! 5. [`safety`]: rules of the trades for gas, wiring, air and weight. [`checks`]: a scenario held against them.
//!    [`compare`]: scenarios side by side, as a table. [`figures`]: what plots and lists show, as plain tables.
//!    [`working`]: how each headline figure came about. [`mod@format`]: numbers, money and dates as a person reads them.
//!    [`colours`]: colours with a meaning. [`explore`]: many seasons of one study. [`report`]: the printable page.
//! 6. [`storage`]: study files. [`headless`]: the commands that need no window.
//! 7. `gui`: the window (feature `gui`).
//!
//! Layers 1 to 5 touch neither disk, clock nor screen, and of them [`season::pool`] alone threads, whose
//! number changes no figure: the same input gives the same bits.

pub mod checks;
pub mod colours;
pub mod compare;
pub mod explore;
pub mod figures;
pub mod format;
pub mod geometry;
#[cfg(feature = "gui")]
pub mod gui;
pub mod headless;
pub mod model;
pub mod physics;
pub mod report;
pub mod safety;
pub mod season;
pub mod storage;
pub mod units;
pub mod weather;
pub mod working;
