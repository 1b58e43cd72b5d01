//! Figures of the program held against figures from outside it: standards, handbooks, worked examples, measurements.
//!
//! A group is a file here that computes its [`figure::Figure`]s through the functions that the program uses; expected
//! values, settings, sources and tolerances stand in `tests/data/published/`. The page "How we know" is written from
//! the same figures, see `page.rs`.

mod air_for_the_house;
mod coldframe;
mod coverings;
mod coverings_in_wind;
mod crops;
mod cycles;
mod damp_air;
mod damp_house;
mod degree_days;
mod denver;
mod denver_season;
mod fabric;
mod figure;
mod flames;
mod freezing;
mod fuel_examples;
mod fuels;
mod glasshouse;
mod heat_loss;
mod heaters;
mod layers;
mod lumped;
#[path = "../common/measured.rs"]
mod measured;
mod measured_years;
#[path = "../common/network.rs"]
mod network;
mod night_sky;
mod page;
mod room;
mod safety;
mod season_use;
mod sheet;
mod small_house_coefficients;
mod soil;
mod stack_flow;
mod stations;
mod sun;
mod surfaces;
mod tariffs;
mod test_house;
mod trays;
mod unheated;
mod water;

#[path = "../common/nights.rs"]
mod nights;
#[path = "../common/seasons.rs"]
mod seasons;
#[path = "../common/weather.rs"]
mod weather;
mod whole_houses;
