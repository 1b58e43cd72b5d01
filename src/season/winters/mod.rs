//! A study through many winters: the season of each scenario on weather made warmer and colder by chance.

mod engine;
mod figures;
mod words;

pub use engine::many_winters;
pub use figures::{FanDay, Fuel, Spread, WinterFigures};

use super::error::RunError;
use super::result::HourStamp;
use super::run::lean_season;
use crate::model::{Catalogue, Scenario, Study};
use crate::units::HOURS_PER_DAY;
use crate::weather::Climate;
use crate::weather::stats::lowest;

/// What one winter of a scenario comes to. Only figures are kept: a thousand winters of hours would fill the memory.
#[derive(Debug, Clone, PartialEq)]
pub struct OneWinter {
    /// Which winter, counted from 0; the same of every scenario.
    pub number: u32,
    /// Money: fuel, fans, standing charge. None when a price is missing.
    pub cost: Option<f64>,
    /// Heat given by all heaters, kWh.
    pub heat_kwh: f64,
    /// Energy bought for heat, kWh gross, fans included.
    pub energy_kwh: f64,
    /// Fuel of first and standby heater, each in the unit that it is bought in.
    pub fuel_quantity: [f64; 2],
    /// Lowest hourly mean of the crop's zone air, °C.
    pub crop_air_min_c: f64,
    /// Hours below the crop limit.
    pub hours_below_crop_limit: usize,
    /// Coldest hour of the season, °C.
    pub outdoor_min_c: f64,
    /// Money spent by the end of each day, standing charge included; empty when a price is missing.
    pub running_cost: Vec<f64>,
}

/// A scenario's winters so far, in the order of their numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct ScenarioWinters {
    /// Name of the scenario.
    pub name: String,
    /// The season on the weather year itself.
    pub weather_year: OneWinter,
    /// First and standby heater's fuel.
    pub fuels: [Fuel; 2],
    /// Last hour of each day of the season.
    pub days: Vec<HourStamp>,
    /// The chance winters.
    pub winters: Vec<OneWinter>,
}

/// Runs one season and keeps its figures, the fuels, and the days.
fn one_winter(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    number: u32,
    cancelled: &dyn Fn() -> bool,
) -> Result<(OneWinter, [Fuel; 2], Vec<HourStamp>), RunError> {
    let (essentials, passed) = lean_season(study, scenario, climate, catalogue, cancelled)?;
    let days = passed.series.cost.chunks(HOURS_PER_DAY);
    let standing_per_day = essentials.bought.standing_charges / days.len().max(1) as f64;
    let mut spent = 0.0;
    let by_day = days.map(|day| {
        spent += day.iter().sum::<f64>() + standing_per_day;
        spent
    });
    let winter = OneWinter {
        number,
        cost: essentials.cost,
        heat_kwh: essentials.heat_kwh,
        energy_kwh: essentials.energy_kwh,
        fuel_quantity: essentials.bought.quantity,
        crop_air_min_c: essentials.crop.min_c,
        hours_below_crop_limit: essentials.crop.hours_short,
        outdoor_min_c: lowest(&passed.series.outdoor_c),
        running_cost: if essentials.cost.is_some() { by_day.collect() } else { Vec::new() },
    };
    let fuels = passed.money.purchases.each_ref().map(|purchase| Fuel::of(purchase.as_ref()));
    let last_hours = passed.series.record.chunks(HOURS_PER_DAY).filter_map(|day| climate.hours.get(*day.last()?));
    Ok((winter, fuels, last_hours.map(HourStamp::of).collect()))
}
