//! A season in the few figures by which many of them are compared, without what takes further runs.

use super::error::RunError;
use super::result::{HourStamp, Summary};
use super::run::lean_season;
use crate::model::{Catalogue, Scenario, Study};
use crate::weather::Climate;
use serde::Serialize;

/// The figures of a season; each equals the one of the same name in [`super::Summary`] bit for bit. Names are JSON keys.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SeasonFigures {
    /// Money: fuel, fans, standing charge; none when a price is missing.
    pub cost: Option<f64>,
    /// Heat given by all heaters, kWh.
    pub heat_delivered_kwh: f64,
    /// Name of the first heater's fuel; empty without it.
    pub fuel_name: String,
    /// What the first heater buys, in [`SeasonFigures::fuel_unit`].
    pub fuel_quantity: f64,
    /// The unit that it is bought in; empty without a heater.
    pub fuel_unit: String,
    /// What the standby heater buys, in [`SeasonFigures::standby_fuel_unit`].
    pub standby_fuel_quantity: f64,
    /// The unit that it is bought in; empty without a standby heater.
    pub standby_fuel_unit: String,
    /// Lowest hourly mean of the air of the crop's zone, °C.
    pub crop_zone_min_c: f64,
    /// Hours below the crop limit.
    pub hours_below_crop_limit: usize,
    /// How far and how long, K·h.
    pub degree_hours_below_crop_limit_kh: f64,
    /// Hours below the first heater's setpoint by more than 0.1 K.
    pub hours_below_setpoint: usize,
    /// End of the season's first hour.
    pub season_start: HourStamp,
}

impl From<&Summary> for SeasonFigures {
    fn from(season: &Summary) -> Self {
        Self {
            cost: season.cost,
            heat_delivered_kwh: season.heat_delivered_kwh,
            fuel_name: season.fuel_name.clone(),
            fuel_quantity: season.fuel_quantity,
            fuel_unit: season.fuel_unit.clone(),
            standby_fuel_quantity: season.standby_fuel_quantity,
            standby_fuel_unit: season.standby_fuel_unit.clone(),
            crop_zone_min_c: season.crop_zone_min_c,
            hours_below_crop_limit: season.hours_below_crop_limit,
            degree_hours_below_crop_limit_kh: season.degree_hours_below_crop_limit_kh,
            hours_below_setpoint: season.hours_below_setpoint,
            season_start: season.season_start,
        }
    }
}

/// Runs a scenario of the study on a climate for its figures alone. `cancelled` is asked once per simulated day.
///
/// # Errors
/// As [`super::run_scenario`].
pub fn season_figures(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
) -> Result<SeasonFigures, RunError> {
    let (essentials, passed) = lean_season(study, scenario, climate, catalogue, cancelled)?;
    let first = passed.series.record.first().and_then(|record| climate.hours.get(*record));
    let [fuel_quantity, standby_fuel_quantity] = essentials.bought.quantity;
    let [fuel_unit, standby_fuel_unit] = essentials.bought.unit;
    Ok(SeasonFigures {
        cost: essentials.cost,
        heat_delivered_kwh: essentials.heat_kwh,
        fuel_name: essentials.bought.name,
        fuel_quantity,
        fuel_unit,
        standby_fuel_quantity,
        standby_fuel_unit,
        crop_zone_min_c: essentials.crop.min_c,
        hours_below_crop_limit: essentials.crop.hours_short,
        degree_hours_below_crop_limit_kh: essentials.crop.degree_hours,
        hours_below_setpoint: essentials.held.hours_short,
        season_start: HourStamp::of(first.ok_or(RunError::EmptySeason)?),
    })
}
