//! A season integrated hour by hour on the Denver typical year, without and with a store.

use serde::Deserialize;
use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{State, Thermostat, advance};
use warmfold::weather::Record;

use super::denver;
use super::figure::{Expected, Figure, hold, published};
use super::network::{network, state};

/// October to April, in the order of the season.
const MONTHS: [(u32, &str); 7] =
    [(10, "October"), (11, "November"), (12, "December"), (1, "January"), (2, "February"), (3, "March"), (4, "April")];
/// Setpoint of the houses with a store, °C.
const SETPOINT_C: f64 = 5.0;
/// Equal steps in each hour of the houses with a store.
const STEPS_PER_HOUR: u32 = 4;

#[derive(Deserialize)]
struct Cases {
    source: String,
    source_stores: String,
    ua_w_per_k: f64,
    tolerance_kwh: f64,
    tolerance_because: String,
    mean_c: f64,
    massless: Vec<Massless>,
    with_capacity: Vec<WithCapacity>,
}

#[derive(Deserialize)]
struct Massless {
    setpoint_c: f64,
    kwh: f64,
    heating_hours: u32,
    peak_w: f64,
    monthly_kwh: Vec<f64>,
}

#[derive(Deserialize)]
struct WithCapacity {
    capacity_j_per_k: f64,
    gain_m2: f64,
    kwh: f64,
}

/// October to December, then January to April.
fn season() -> Vec<Record> {
    let wanted = denver::records().into_iter().filter(|hour| MONTHS.iter().any(|&(month, _)| month == hour.month));
    let (spring, autumn): (Vec<Record>, Vec<Record>) = wanted.partition(|hour| hour.month < 6);
    autumn.into_iter().chain(spring).collect()
}

impl Cases {
    fn house(&self, hour: &Record, capacity_j_per_k: f64, gain_m2: f64, heat_w: f64) -> Network {
        let mut house = network(&[Node::Capacity(capacity_j_per_k)], &[]);
        house.add_boundary(0, self.ua_w_per_k, hour.dry_bulb_c);
        house.add_input(0, gain_m2 * hour.global_w_per_m2 + heat_w);
        house
    }

    /// Heat of each hour in which the house without a store is held, W.
    fn massless_w(&self, hours: &[Record], setpoint_c: f64) -> Vec<f64> {
        let thermostat = Thermostat { node: 0, setpoint_c, min_w: 0.0, max_w: 1e6 };
        let heat_w = |hour: &Record| {
            let house = self.house(hour, 0.0, 0.0, 0.0);
            advance(&house, &state(&house, &[setpoint_c]), 3600.0, &[thermostat]).heater_w[0]
        };
        hours.iter().map(heat_w).collect()
    }

    /// Season heat with one capacity, kWh: the power of an hour is constant and just enough to be at setpoint at its
    /// end. The end is affine in the power, so two trials of the hour give that power.
    fn with_capacity_kwh(&self, hours: &[Record], case: &WithCapacity, steps: u32) -> f64 {
        const TRIAL_W: f64 = 1000.0;
        let house = |hour, heat_w| self.house(hour, case.capacity_j_per_k, case.gain_m2, heat_w);
        let mut now = state(&house(&hours[0], 0.0), &[SETPOINT_C]);
        let mut sum_kwh = 0.0;
        for hour in hours {
            let end = |heat_w: f64| hour_end(&house(hour, heat_w), &now, steps);
            let free_c = end(0.0).temperature_c[0];
            let per_w = (end(TRIAL_W).temperature_c[0] - free_c) / TRIAL_W;
            let heat_w = ((SETPOINT_C - free_c) / per_w).max(0.0);
            now = end(heat_w);
            sum_kwh += heat_w / 1000.0;
        }
        sum_kwh
    }

    /// The same through the thermostat of one whole-hour step.
    fn with_thermostat_kwh(&self, hours: &[Record], case: &WithCapacity) -> f64 {
        let thermostat = Thermostat { node: 0, setpoint_c: SETPOINT_C, min_w: 0.0, max_w: 1e6 };
        let house = |hour| self.house(hour, case.capacity_j_per_k, case.gain_m2, 0.0);
        let mut now = state(&house(&hours[0]), &[SETPOINT_C]);
        let mut sum_kwh = 0.0;
        for hour in hours {
            let step = advance(&house(hour), &now, 3600.0, &[thermostat]);
            sum_kwh += step.heater_w[0] / 1000.0;
            now = step.end;
        }
        sum_kwh
    }

    fn of_massless(&self, hours: &[Record], case: &Massless) -> Vec<Figure> {
        let heat_w = self.massless_w(hours, case.setpoint_c);
        let house = format!("house of {} W/K held at {} °C, Denver", self.ua_w_per_k, case.setpoint_c);
        let figure = |what: String, value: f64, got: f64| Figure {
            what: format!("{house}: {what}"),
            source: self.source.clone(),
            unit: "kWh".into(),
            decimals: 2,
            expected: Expected::Value(value, self.tolerance_kwh),
            tolerance_because: self.tolerance_because.clone(),
            got,
        };
        let mut figures = vec![figure("October to April".into(), case.kwh, heat_w.iter().sum::<f64>() / 1000.0)];
        for ((month, name), expected_kwh) in MONTHS.into_iter().zip(&case.monthly_kwh) {
            let of_month = hours.iter().zip(&heat_w).filter(|(hour, _)| hour.month == month);
            figures.push(figure(name.into(), *expected_kwh, of_month.map(|(_, w)| w / 1000.0).sum()));
        }
        // A massless house meets its setpoint without rounding noise larger than a microwatt.
        let heating_hours = heat_w.iter().filter(|w| **w > 1e-6).count() as f64;
        figures.push(Figure {
            unit: "h".into(),
            decimals: 0,
            expected: Expected::Value(f64::from(case.heating_hours), 0.0),
            tolerance_because: "a count".into(),
            ..figure("hours with heat".into(), 0.0, heating_hours)
        });
        figures.push(Figure {
            unit: "W".into(),
            decimals: 0,
            expected: Expected::Value(case.peak_w, 1e-6),
            tolerance_because: "a product of round numbers".into(),
            ..figure("largest hourly heat".into(), 0.0, heat_w.iter().copied().fold(0.0, f64::max))
        });
        figures
    }

    fn of_capacity(&self, hours: &[Record], case: &WithCapacity) -> Figure {
        let sun = if case.gain_m2 > 0.0 { format!("{} m² of sun", case.gain_m2) } else { "no sun".into() };
        let store = case.capacity_j_per_k / 1e6;
        Figure {
            what: format!("house of {} W/K with a store of {store} MJ/K, {sun}: season heat", self.ua_w_per_k),
            source: self.source_stores.clone(),
            unit: "kWh".into(),
            decimals: 3,
            expected: Expected::Value(case.kwh, self.tolerance_kwh),
            tolerance_because: "0.01 kWh, the case's own; four steps of the third order in each hour stay inside"
                .into(),
            got: self.with_capacity_kwh(hours, case, STEPS_PER_HOUR),
        }
    }
}

/// Runs an hour in equal steps with constant power.
fn hour_end(house: &Network, start: &State, steps: u32) -> State {
    (0..steps).fold(*start, |now, _| advance(house, &now, 3600.0 / f64::from(steps), &[]).end)
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("denver_season");
    let hours = season();
    let massless = file.massless.iter().flat_map(|case| file.of_massless(&hours, case));
    massless.chain(file.with_capacity.iter().map(|case| file.of_capacity(&hours, case))).collect()
}

#[test]
fn the_denver_season_agrees() {
    hold(&figures());
}

#[test]
fn the_season_is_the_case() {
    let hours = season();
    assert_eq!(hours.len(), 5088);
    let mean_c = hours.iter().map(|hour| hour.dry_bulb_c).sum::<f64>() / hours.len() as f64;
    let expected_c = published::<Cases>("denver_season").mean_c;
    assert!((mean_c - expected_c).abs() < 6e-5, "{mean_c}");
}

#[test]
fn the_thermostat_finds_the_power_that_ends_the_hour_at_setpoint() {
    // One whole-hour step. 1 MJ/K has a time constant of 2.8 h, of which an hour is too large a part for 0.01 kWh
    // (it misses by 0.07 kWh, with sun 0.29 kWh); the other capacities hold it.
    let file: Cases = published("denver_season");
    let hours = season();
    for case in &file.with_capacity {
        let (capacity, gain_m2) = (case.capacity_j_per_k, case.gain_m2);
        let found = file.with_thermostat_kwh(&hours, case);
        let by_trial = file.with_capacity_kwh(&hours, case, 1);
        assert!((found - by_trial).abs() < 1e-6, "{capacity} J/K, {gain_m2} m²: {found} and by trial {by_trial} kWh");
        if capacity > 1e6 {
            assert!((found - case.kwh).abs() < file.tolerance_kwh, "{capacity} J/K, {gain_m2} m²: {found} kWh");
        }
    }
}
