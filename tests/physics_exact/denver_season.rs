//! A season integrated hour by hour on the Denver typical year: validation reference, "Season integration".

use crate::network::{network, state};
use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{State, Thermostat, advance};

/// Heat-loss coefficient of the case, W/K.
const UA_W_PER_K: f64 = 100.0;
/// October to April, in the order of the season.
const MONTHS: [u32; 7] = [10, 11, 12, 1, 2, 3, 4];

/// One hour of the season.
struct Hour {
    month: u32,
    outdoor_c: f64,
    global_w_per_m2: f64,
}

/// October to December, then January to April.
fn season() -> Vec<Hour> {
    let mut reader = csv::Reader::from_path("tests/data/validation/denver_tmy3_hourly.csv").expect("test data");
    let rows: Vec<Hour> = reader
        .records()
        .map(|row| {
            let row = row.expect("row");
            let number = |i: usize| row[i].parse::<f64>().expect("number");
            Hour { month: number(0) as u32, outdoor_c: number(3), global_w_per_m2: number(4) }
        })
        .collect();
    assert_eq!(rows.len(), 8760);
    let (spring, autumn): (Vec<Hour>, Vec<Hour>) =
        rows.into_iter().filter(|h| MONTHS.contains(&h.month)).partition(|h| h.month < 6);
    autumn.into_iter().chain(spring).collect()
}

fn house(capacity_j_per_k: f64, hour: &Hour, gain_m2: f64, heat_w: f64) -> Network {
    let mut house = network(&[Node::Capacity(capacity_j_per_k)], &[]);
    house.add_boundary(0, UA_W_PER_K, hour.outdoor_c);
    house.add_input(0, gain_m2 * hour.global_w_per_m2 + heat_w);
    house
}

/// Heat of each hour in which the house is held, W, without capacity.
fn massless_w(hours: &[Hour], setpoint_c: f64) -> Vec<f64> {
    let hold = Thermostat { node: 0, setpoint_c, min_w: 0.0, max_w: 1e6 };
    let heat = |hour: &Hour| {
        let house = house(0.0, hour, 0.0, 0.0);
        advance(&house, &state(&house, &[setpoint_c]), 3600.0, &[hold]).heater_w[0]
    };
    hours.iter().map(heat).collect()
}

#[test]
fn the_season_is_the_case() {
    let hours = season();
    assert_eq!(hours.len(), 5088);
    let mean_c = hours.iter().map(|h| h.outdoor_c).sum::<f64>() / hours.len() as f64;
    assert!((mean_c - 3.9169).abs() < 6e-5, "{mean_c}");
}

#[test]
fn a_house_without_stores_needs_the_degree_hours() {
    let hours = season();
    let cases = [
        (5.0, 1833.48, 2841, 2440.0, [42.87, 276.40, 364.68, 406.10, 411.52, 157.99, 173.92]),
        (10.0, 3582.67, 3973, 2940.0, [192.32, 548.09, 668.67, 708.28, 694.93, 375.51, 394.87]),
    ];
    for (setpoint_c, kwh, heating_hours, peak_w, monthly_kwh) in cases {
        let heat_w = massless_w(&hours, setpoint_c);
        // 0.01 kWh, the case's own tolerance.
        let total_kwh = heat_w.iter().sum::<f64>() / 1000.0;
        assert!((total_kwh - kwh).abs() < 0.01, "{setpoint_c} °C: {total_kwh} kWh");
        // A massless house meets its setpoint without rounding noise larger than a microwatt.
        assert_eq!(heat_w.iter().filter(|w| **w > 1e-6).count(), heating_hours, "{setpoint_c} °C");
        let highest_w = heat_w.iter().copied().fold(0.0, f64::max);
        assert!((highest_w - peak_w).abs() < 1e-6, "{setpoint_c} °C: {highest_w} W");
        for (month, expected) in MONTHS.into_iter().zip(monthly_kwh) {
            let of_month = hours.iter().zip(&heat_w).filter(|(h, _)| h.month == month).map(|(_, w)| w / 1000.0);
            let found: f64 = of_month.sum();
            assert!((found - expected).abs() < 0.01, "{setpoint_c} °C, month {month}: {found} kWh");
        }
    }
}

/// Runs an hour in equal steps with constant power.
fn hour_end(house: &Network, start: &State, steps: u32) -> State {
    (0..steps).fold(*start, |state, _| advance(house, &state, 3600.0 / f64::from(steps), &[]).end)
}

/// Season heat with one capacity, kWh: the power of an hour is constant and just enough to be at 5 °C at its end.
///
/// The end is affine in the power, so two trials of the hour give that power.
fn with_capacity_kwh(hours: &[Hour], capacity_j_per_k: f64, gain_m2: f64, steps: u32) -> f64 {
    const SETPOINT_C: f64 = 5.0;
    const TRIAL_W: f64 = 1000.0;
    let mut now = state(&house(capacity_j_per_k, &hours[0], gain_m2, 0.0), &[SETPOINT_C]);
    let mut sum_kwh = 0.0;
    for hour in hours {
        let end = |heat_w: f64| hour_end(&house(capacity_j_per_k, hour, gain_m2, heat_w), &now, steps);
        let (free, trial) = (end(0.0), end(TRIAL_W));
        let per_w = (trial.temperature_c[0] - free.temperature_c[0]) / TRIAL_W;
        let heat_w = ((SETPOINT_C - free.temperature_c[0]) / per_w).max(0.0);
        now = end(heat_w);
        sum_kwh += heat_w / 1000.0;
    }
    sum_kwh
}

/// The same through the thermostat of one whole-hour step.
fn with_thermostat_kwh(hours: &[Hour], capacity_j_per_k: f64, gain_m2: f64) -> f64 {
    let hold = Thermostat { node: 0, setpoint_c: 5.0, min_w: 0.0, max_w: 1e6 };
    let mut now = state(&house(capacity_j_per_k, &hours[0], gain_m2, 0.0), &[5.0]);
    let mut sum_kwh = 0.0;
    for hour in hours {
        let step = advance(&house(capacity_j_per_k, hour, gain_m2, 0.0), &now, 3600.0, &[hold]);
        sum_kwh += step.heater_w[0] / 1000.0;
        now = step.end;
    }
    sum_kwh
}

/// Capacity in J/K, gain in m² of horizontal sun, season heat in kWh.
const WITH_CAPACITY: [(f64, f64, f64); 6] = [
    (1e6, 0.0, 1774.406),
    (5e6, 0.0, 1587.357),
    (20e6, 0.0, 1372.281),
    (1e6, 6.0, 1296.005),
    (5e6, 6.0, 680.320),
    (20e6, 6.0, 303.618),
];

#[test]
fn a_house_with_one_capacity() {
    // The case integrates exactly; four equal steps of the third-order method in each hour, with the hour's one power,
    // come within its 0.01 kWh.
    let hours = season();
    for (capacity, gain_m2, expected) in WITH_CAPACITY {
        let found = with_capacity_kwh(&hours, capacity, gain_m2, 4);
        assert!((found - expected).abs() < 0.01, "{capacity} J/K, {gain_m2} m²: {found} kWh, not {expected}");
    }
}

#[test]
fn the_thermostat_finds_the_power_that_ends_the_hour_at_setpoint() {
    // One whole-hour step. 1 MJ/K has a time constant of 2.8 h, of which an hour is too large a part for 0.01 kWh
    // (it misses by 0.07 kWh, with sun 0.29 kWh); the other capacities hold it.
    let hours = season();
    for (capacity, gain_m2, expected) in WITH_CAPACITY {
        let found = with_thermostat_kwh(&hours, capacity, gain_m2);
        let by_trial = with_capacity_kwh(&hours, capacity, gain_m2, 1);
        assert!((found - by_trial).abs() < 1e-6, "{capacity} J/K, {gain_m2} m²: {found} and by trial {by_trial} kWh");
        if capacity > 1e6 {
            assert!((found - expected).abs() < 0.01, "{capacity} J/K, {gain_m2} m²: {found} kWh, not {expected}");
        }
    }
}
