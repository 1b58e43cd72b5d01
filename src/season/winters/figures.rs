//! Many winters in figures: quantiles by type 7 of Hyndman and Fan (1996), the usual one of spreadsheets, and counts.

use super::ScenarioWinters;
use crate::season::money::Purchase;
use crate::season::result::HourStamp;
use crate::weather::stats::percentile;
use serde::Serialize;

/// A fuel as it is bought; all empty without a heater.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Fuel {
    /// Name.
    pub name: String,
    /// Unit that it is bought in.
    pub unit: String,
    /// Whether it comes by wire or pipe, so that nobody stores it.
    pub piped: bool,
}

impl Fuel {
    pub(super) fn of(purchase: Option<&Purchase>) -> Self {
        purchase.map_or_else(Self::default, |p| Self {
            name: p.fuel_name.clone(),
            unit: p.unit.clone(),
            piped: p.piped,
        })
    }
}

/// What a tenth, half and nine tenths of the winters stay below.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Spread {
    /// One winter in ten lies below.
    pub p10: f64,
    /// As many winters lie below as above.
    pub p50: f64,
    /// One winter in ten lies above.
    pub p90: f64,
}

impl Spread {
    /// Of these values; none of nothing.
    #[must_use]
    pub fn of(values: &[f64]) -> Option<Self> {
        let at = |percent| percentile(values, percent);
        Some(Self { p10: at(10.0)?, p50: at(50.0)?, p90: at(90.0)? })
    }
}

/// A day of the fan: money spent by its end.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct FanDay {
    /// Its last hour.
    pub at: HourStamp,
    /// Money spent by its end.
    #[serde(flatten)]
    pub cost: Spread,
}

/// A scenario's winters in figures. Field names are the JSON keys.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WinterFigures {
    /// Name of the scenario.
    pub name: String,
    /// Winters that are counted.
    pub winters: usize,
    /// Money of the season; none where a price is missing, or without winters.
    pub cost: Option<Spread>,
    /// The same on the weather year itself.
    pub cost_of_weather_year: Option<f64>,
    /// Heat, kWh.
    pub heat_kwh: Option<Spread>,
    /// Lowest hourly mean of the crop's zone air, °C.
    pub crop_air_min_c: Option<Spread>,
    /// Coldest hour of the season, °C.
    pub outdoor_min_c: Option<Spread>,
    /// Winters in which an hour of the crop's air is below its limit.
    pub winters_below_crop_limit: usize,
    /// That as share of all.
    pub chance_below_crop_limit: Option<f64>,
    /// Name of the first heater's fuel; empty without it.
    pub fuel_name: String,
    /// Unit that it is bought in.
    pub fuel_unit: String,
    /// Fuel of the first heater in that unit.
    pub fuel_quantity: Option<Spread>,
    /// Whole units that last nine winters in ten; none for what comes by wire or pipe.
    pub fuel_to_stock: Option<f64>,
    /// Name of the standby heater's fuel; empty without it.
    pub standby_fuel_name: String,
    /// Unit that it is bought in.
    pub standby_fuel_unit: String,
    /// Fuel of the standby heater in that unit.
    pub standby_fuel_quantity: Option<Spread>,
    /// Whole units that last nine winters in ten; none for what comes by wire or pipe.
    pub standby_fuel_to_stock: Option<f64>,
    /// The same in sentences.
    pub sentences: Vec<String>,
}

impl ScenarioWinters {
    /// The winters so far in figures, money in the study's currency.
    #[must_use]
    pub fn figures(&self, currency: &str) -> WinterFigures {
        let spread =
            |take: &dyn Fn(&super::OneWinter) -> f64| Spread::of(&self.winters.iter().map(take).collect::<Vec<_>>());
        let costs: Option<Vec<f64>> = self.winters.iter().map(|winter| winter.cost).collect();
        let [first, standby] =
            [0, 1].map(|i| spread(&|w| w.fuel_quantity[i]).filter(|_| !self.fuels[i].unit.is_empty()));
        let below = self.winters.iter().filter(|winter| winter.hours_below_crop_limit > 0).count();
        let count = self.winters.len();
        let mut figures = WinterFigures {
            name: self.name.clone(),
            winters: count,
            cost: costs.and_then(|costs| Spread::of(&costs)),
            cost_of_weather_year: self.weather_year.cost,
            heat_kwh: spread(&|w| w.heat_kwh),
            crop_air_min_c: spread(&|w| w.crop_air_min_c),
            outdoor_min_c: spread(&|w| w.outdoor_min_c),
            winters_below_crop_limit: below,
            chance_below_crop_limit: (count > 0).then(|| below as f64 / count as f64),
            fuel_name: self.fuels[0].name.clone(),
            fuel_unit: self.fuels[0].unit.clone(),
            fuel_to_stock: to_stock(&self.fuels[0], first),
            fuel_quantity: first,
            standby_fuel_name: self.fuels[1].name.clone(),
            standby_fuel_unit: self.fuels[1].unit.clone(),
            standby_fuel_to_stock: to_stock(&self.fuels[1], standby),
            standby_fuel_quantity: standby,
            sentences: Vec::new(),
        };
        figures.sentences = figures.sentences_with(currency);
        figures
    }

    /// The fan of money: what is spent by the end of each day; empty where a price is missing, or without winters.
    #[must_use]
    pub fn fan(&self) -> Vec<FanDay> {
        let days = self.winters.iter().map(|winter| winter.running_cost.len()).min().unwrap_or(0);
        let of_day = |(day, at): (usize, &HourStamp)| {
            let spent: Vec<f64> = self.winters.iter().map(|winter| winter.running_cost[day]).collect();
            Some(FanDay { at: *at, cost: Spread::of(&spent)? })
        };
        self.days.iter().take(days).enumerate().filter_map(of_day).collect()
    }
}

/// Whole units for nine winters in ten. Rounding of the last digits buys no unit.
fn to_stock(fuel: &Fuel, quantity: Option<Spread>) -> Option<f64> {
    (!fuel.piped).then_some(quantity?).map(|spread| (spread.p90 - 1e-9).ceil().max(0.0))
}
