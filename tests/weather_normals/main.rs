//! Hourly years made from monthly means: the means are met, the degree-days follow, the heat is that of the real hours.

mod climates;
mod colder;
mod means;
mod season_heat;
#[path = "../common/seasons.rs"]
mod seasons;
mod studies;
