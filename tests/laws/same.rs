//! What a result must not depend on: the scenarios beside it, threads, the units that it was typed in.

use crate::random_houses::any;
use crate::weathers::CLIMATES;
use crate::{houses, seasons, study};
use proptest::prelude::*;
use warmfold::model::{
    BehindPartyWall, Bench, Crop, Heater, House, NumberInput, PartCovering, Scenario, Tent, TentOpening, Tightness,
    Vents, Vessels,
};
use warmfold::season::{RunOptions, ScenarioRun};
use warmfold::units::{Quantity, UnitSystem};

fn run(scenario: &Scenario, station: usize) -> ScenarioRun {
    seasons::run(&study(), scenario, &CLIMATES[station], RunOptions::default())
}

/// A number as it comes back after it was shown and typed in a family of units.
fn retyped(value: f64, quantity: Quantity, system: UnitSystem) -> f64 {
    let unit = quantity.unit(system);
    unit.value(unit.shown(value))
}

fn retype_numbers<T>(part: &mut T, inputs: &[NumberInput<T>], system: UnitSystem) {
    for input in inputs.iter().filter(|input| input.quantity != Quantity::Count) {
        let value = retyped((input.get)(part), input.quantity, system);
        (input.set)(part, value);
    }
}

/// The same scenario, every number typed in other units.
fn typed_in(mut scenario: Scenario, system: UnitSystem) -> Scenario {
    retype_numbers(&mut scenario.house, House::NUMBERS, system);
    retype_numbers(&mut scenario.tent, Tent::NUMBERS, system);
    retype_numbers(&mut scenario.bench, Bench::NUMBERS, system);
    retype_numbers(&mut scenario.crop, Crop::NUMBERS, system);
    retype_numbers(&mut scenario.vents, Vents::NUMBERS, system);
    for vessels in &mut scenario.water.vessels {
        retype_numbers(vessels, Vessels::NUMBERS, system);
    }
    for heater in [&mut scenario.heater, &mut scenario.standby] {
        retype_numbers(heater, Heater::NUMBERS, system);
        for setpoint in [&mut heater.setpoint_day_c, &mut heater.setpoint_night_c].into_iter().flatten() {
            *setpoint = retyped(*setpoint, Quantity::Temperature, system);
        }
    }
    for exception in &mut scenario.covering.exceptions {
        if let PartCovering::Opaque(u) = &mut exception.covering {
            *u = retyped(*u, Quantity::UValue, system);
        }
    }
    if let TentOpening::Above(t_c) = &mut scenario.tent.opening {
        *t_c = retyped(*t_c, Quantity::Temperature, system);
    }
    if let BehindPartyWall::HeldAt(t_c) = &mut scenario.house.behind_party_wall {
        *t_c = retyped(*t_c, Quantity::Temperature, system);
    }
    if let Tightness::Rate(rate) = &mut scenario.house.tightness {
        *rate = retyped(*rate, Quantity::AirChanges, system);
    }
    scenario
}

/// Largest difference of any hourly mean of the air, K.
fn apart_k(a: &ScenarioRun, b: &ScenarioRun) -> f64 {
    let both = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
    both(&a.hours.house_air_c, &b.hours.house_air_c).max(both(&a.hours.tent_air_c, &b.hours.tent_air_c))
}

proptest! {
    #![proptest_config(houses(15))]

    #[test]
    fn order_and_threads_change_nothing(scenarios in prop::collection::vec(any(), 3), station in 0usize..3) {
        let forward: Vec<_> = scenarios.iter().map(|s| run(s, station)).collect();
        let mut backward: Vec<_> = scenarios.iter().rev().map(|s| run(s, station)).collect();
        backward.reverse();
        let at_once: Vec<_> = std::thread::scope(|scope| {
            let running: Vec<_> = scenarios.iter().map(|s| scope.spawn(move || run(s, station))).collect();
            running.into_iter().map(|thread| thread.join().expect("a season")).collect()
        });
        // To the bit, as neither leaves anything behind.
        prop_assert!(forward == backward);
        prop_assert!(forward == at_once);
    }

    /// Rounding of a typed number, 1e-16 of it, may move an iteration across the edge of its tolerance of a few
    /// millikelvin; it moves nothing more.
    #[test]
    fn units_of_entry_change_nothing(scenario in any(), station in 0usize..3) {
        let metric = run(&scenario, station);
        for system in [UnitSystem::Metric, UnitSystem::Imperial] {
            let typed = run(&typed_in(scenario.clone(), system), station);
            let (a, b) = (metric.summary.heat_delivered_kwh, typed.summary.heat_delivered_kwh);
            prop_assert!((a - b).abs() <= 1e-4 * a.max(1.0), "{a} kWh, typed again {b} kWh");
            let gap = apart_k(&metric, &typed);
            prop_assert!(gap < 0.01, "{gap} K");
        }
    }
}
