//! A scenario on a weather: hourly series, season summary, books, design load, power cut.

pub mod airing;
pub mod alternatives;
pub mod baseline;
pub mod buying;
pub mod colder;
pub mod damp;
pub mod drive;
pub mod error;
mod essentials;
pub mod fuel_calendar;
pub mod hard_night;
pub mod hour;
pub mod hours;
pub mod house_model;
pub mod layout;
pub mod lean;
pub mod money;
pub mod openings;
pub mod plan;
pub mod pool;
pub mod power_cut;
pub mod record;
pub mod result;
pub mod run;
pub mod saving;
pub mod sensitivity;
pub mod sizing;
pub mod steady;
pub mod stored;
pub mod summary;
pub mod sums;
pub mod thermostats;
pub mod winters;
pub mod worst_spell;

pub use damp::{DampFigures, DampSeries};
pub use error::RunError;
pub use result::{
    Hold, HourStamp, HourlySeries, POWER_CUT_HOURS, PowerCut, PowerCutTimes, ScenarioRun, ShellFigures, Summary,
};
pub use run::{RunOptions, run_scenario, run_scenario_with};
