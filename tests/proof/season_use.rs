//! Seasons of heated houses beside published savings and uses.

use std::collections::BTreeMap;

use serde::Deserialize;
use warmfold::model::{Scenario, Season, Study};
use warmfold::physics::solar::DAY_THRESHOLD_W_PER_M2;
use warmfold::season::{RunOptions, ScenarioRun};
use warmfold::weather::Climate;

use super::figure::{Expected, Figure, hold, published};
use crate::seasons::{climate, run};

#[derive(Deserialize)]
struct Cases {
    houses: BTreeMap<String, Scenario>,
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    what: String,
    quantity: Quantity,
    station: String,
    unit: String,
    expected: Expected,
    source: String,
    because: String,
}

/// What is compared; houses by their names.
#[derive(Deserialize)]
enum Quantity {
    /// Heat at night, % of the season's.
    NightShare(String),
    /// Heat that the first house needs less than the second, %.
    Saved(String, String),
    /// Heat from one day to another, kWh per m² of floor.
    PerFloor(String, (u32, u32), (u32, u32)),
    /// Heat at the first setpoint, % of that at the second, °C.
    SetpointShare(String, f64, f64),
}

/// First and last day of the heating season.
const HEATING_SEASON: [(u32, u32); 2] = [(10, 1), (4, 30)];

struct Winter<'a> {
    houses: &'a BTreeMap<String, Scenario>,
    climate: Climate,
}

impl Winter<'_> {
    fn of(&self, scenario: &Scenario, [from, to]: [(u32, u32); 2]) -> ScenarioRun {
        let season = Season { from_month: from.0, from_day: from.1, to_month: to.0, to_day: to.1 };
        let study = Study { season, ..Study::default() };
        run(&study, scenario, &self.climate, RunOptions { unlimited_heat: true, ..RunOptions::default() })
    }

    fn heating_season(&self, house: &str) -> ScenarioRun {
        self.of(&self.houses[house], HEATING_SEASON)
    }

    fn heat_kwh_at(&self, house: &str, setpoint_c: f64) -> f64 {
        let mut scenario = self.houses[house].clone();
        (scenario.heater.setpoint_day_c, scenario.heater.setpoint_night_c) = (Some(setpoint_c), Some(setpoint_c));
        self.of(&scenario, HEATING_SEASON).summary.heat_delivered_kwh
    }

    /// Heat of the hours in which a screen would be drawn, W.
    fn nights_w(&self, run: &ScenarioRun) -> Vec<f64> {
        let is_night = |record: usize| self.climate.hours[record].global_w_per_m2 <= DAY_THRESHOLD_W_PER_M2;
        let hours = run.hours.record.iter().zip(&run.hours.heater_w);
        hours.filter(|(record, _)| is_night(**record)).map(|(_, w)| *w).collect()
    }

    fn night_share(&self, house: &str) -> f64 {
        let run = self.heating_season(house);
        100.0 * self.nights_w(&run).iter().sum::<f64>() / run.hours.heater_w.iter().sum::<f64>()
    }

    fn value(&self, quantity: &Quantity) -> f64 {
        match quantity {
            Quantity::NightShare(house) => self.night_share(house),
            Quantity::Saved(better, plain) => {
                let heat = |house: &str| self.heating_season(house).summary.heat_delivered_kwh;
                100.0 * (1.0 - heat(better) / heat(plain))
            }
            Quantity::PerFloor(house, from, to) => {
                let run = self.of(&self.houses[house], [*from, *to]);
                run.summary.heat_delivered_kwh / run.shell.floor_m2
            }
            Quantity::SetpointShare(house, low_c, high_c) => {
                100.0 * self.heat_kwh_at(house, *low_c) / self.heat_kwh_at(house, *high_c)
            }
        }
    }
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("season_use");
    let figure = |case: &Case| {
        let winter = Winter { houses: &file.houses, climate: climate(&case.station) };
        Figure {
            what: case.what.clone(),
            source: case.source.clone(),
            unit: case.unit.clone(),
            decimals: 0,
            expected: case.expected,
            tolerance_because: case.because.clone(),
            got: winter.value(&case.quantity),
        }
    };
    file.cases.iter().map(figure).collect()
}

#[test]
fn season_use_agrees() {
    hold(&figures());
}
