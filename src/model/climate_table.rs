//! Weather that the grower knows: twelve months of a climate table, a thermometer's log, and cold beyond either.

use super::input::inputs;
use serde::{Deserialize, Serialize};

inputs! {
    /// A month of a climate table.
    pub struct MonthRow {
        choices {
            sunshine_h: Option<f64> = None, "Sunshine", "Hours of bright sunshine in the whole month; none where not known";
            cloud_share: Option<f64> = None, "Cloud", "Mean cloud cover; counts where sunshine is not known";
            wind_m_per_s: Option<f64> = None, "Wind", "Mean wind at the mast; none where not known";
        }
        numbers {
            min_c: f64, Temperature, -70.0..=50.0, 0.0, "Minimum", "Mean of the daily minima", "";
            max_c: f64, Temperature, -60.0..=60.0, 8.0, "Maximum", "Mean of the daily maxima", "";
        }
    }
}

/// Least swing from mean minimum to mean maximum, K: no month has less than about 2 K.
pub const LEAST_SWING_K: f64 = 0.5;
/// Months of a table.
pub const MONTHS: usize = 12;
/// Most sunshine of a month, h: 31 days without a night.
pub const MOST_SUNSHINE_H: f64 = 744.0;
/// Strongest mean wind of a month, m/s.
pub const MOST_WIND_M_PER_S: f64 = 25.0;

inputs! {
    /// Twelve months of a climate table.
    pub struct ClimateTable {
        choices {
            months: Vec<MonthRow> = vec![MonthRow::default(); MONTHS], "Months", "Mean daily minimum and maximum of January to December, with sunshine or cloud and wind where known";
        }
        numbers {}
    }
}

/// Unit of the temperatures of a log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum LogUnit {
    /// °F where a column's title says so, else °C.
    #[default]
    AsTitled,
    /// °C.
    Celsius,
    /// °F.
    Fahrenheit,
}

/// Order of day and month in dates such as 03/04/2024.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum DateOrder {
    /// As the log itself shows.
    #[default]
    AsShown,
    /// The day first.
    DayFirst,
    /// The month first.
    MonthFirst,
}

inputs! {
    /// A thermometer's log.
    pub struct ThermometerLog {
        choices {
            file: String = String::new(), "Log", "A CSV file of daily minima and maxima or of readings; a relative path starts at the study's folder";
            unit: LogUnit = LogUnit::AsTitled, "Unit", "Unit of its temperatures";
            dates: DateOrder = DateOrder::AsShown, "Dates", "Whether day or month comes first in its dates";
            coast: bool = false, "By the sea", "The sun is estimated from the swing of the day, which the sea makes smaller";
        }
        numbers {}
    }
}

inputs! {
    /// Cold beyond the weather: every hour by a shift, and a snap of days on top.
    pub struct Colder {
        choices {}
        numbers {
            shift_k: f64, TemperatureDifference, -10.0..=20.0, 0.0, "Colder all year by", "Every hour is taken so much colder, ground and sky with it; below zero it is milder", "";
            snap_depth_k: f64, TemperatureDifference, 0.0..=30.0, 0.0, "Cold snap", "How much colder the days of a cold snap are taken, on top", "";
            snap_days: u32, Count, 1..=60, 3, "Days of the snap", "How long it lasts; half a day more leads in and out", "";
            snap_from_month: u32, Count, 1..=12, 1, "Snap from month", "Month of its first day", "";
            snap_from_day: u32, Count, 1..=31, 15, "Snap from day", "Its first day", "";
        }
    }
}

impl Colder {
    /// Whether it changes anything.
    #[must_use]
    pub fn is_any(&self) -> bool {
        self.shift_k != 0.0 || self.snap_depth_k != 0.0
    }
}
