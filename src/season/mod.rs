//! A scenario on a weather: hourly series, season summary, books, design load, power cut.

pub mod result;

pub use result::{Hold, HourStamp, HourlySeries, PowerCut, PowerCutTimes, ScenarioRun, ShellFigures, Summary};
