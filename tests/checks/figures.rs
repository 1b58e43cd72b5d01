//! Figures of the checks against worked examples of their sources.

use super::{named, of, study};
use warmfold::model::{Circuit, Heater, Scenario};
use warmfold::units::UnitSystem;

fn figure(change: impl Fn(&mut warmfold::model::Study, &mut Scenario), name: &str, units: UnitSystem) -> String {
    let (mut study, mut scenario) = (study(), Scenario::default());
    change(&mut study, &mut scenario);
    named(&of(&study, &scenario, units), name).map_or_else(|| "none".to_owned(), |check| check.figure.clone())
}

#[test]
fn a_heater_of_fifteen_hundred_watts_is_over_a_circuit_of_fifteen_amperes() {
    // 12.5 A against 12.0 A (NEC 2017, 80 % of 15 A), worked out by hand.
    let figure = figure(
        |study, s| {
            study.site.mains.circuit = Some(Circuit { volts: 120.0, rating_a: 15.0 });
            s.heater.rated_w = 1500.0;
        },
        "Load on the circuit",
        UnitSystem::Metric,
    );
    assert_eq!(figure, "12.5 A of 12.0 A");
}

#[test]
fn the_worked_example_of_a_fixed_heater_needs_fifty_four_amperes() {
    // Holt, NEC Q&A, October 2019: 9,600 W at 240 V and a fan of 3 A are 43 A; times 1.25 are 53.75 A.
    let (mut study, mut s) = (study(), Scenario::default());
    study.site.mains.circuit = Some(Circuit { volts: 240.0, rating_a: 50.0 });
    s.heater = Heater { rated_w: 9600.0, fan_w: 720.0, ..Heater::default() };
    let checks = of(&study, &s, UnitSystem::Metric);
    let check = named(&checks, "Load on the circuit").expect("a load");
    assert_eq!(check.figure, "43.0 A of 40.0 A");
    assert!(check.remedy.contains("53.8 A"), "{}", check.remedy);
}

#[test]
fn a_greenhouse_heater_of_125_000_btu_asks_for_fifty_square_inches() {
    // Michigan State University Extension, Malfunctioning greenhouse unit heaters; 80 % efficient, so that one opening by
    // its input, 156,250 Btu/h over 3,000, is the larger: 52 in².
    for (efficiency, expected) in [(1.0, "50 in²"), (0.8, "52 in²")] {
        let figure = figure(
            |_, s| {
                s.heater = Heater { fuel: "propane".to_owned(), vented: true, ..Heater::default() };
                s.heater.rated_w = 125_000.0 * 1055.056 / 3600.0;
                s.heater.efficiency = efficiency;
            },
            "Opening for the flame's air",
            UnitSystem::Imperial,
        );
        assert_eq!(figure, format!("not known, {expected} needed"));
    }
}

#[test]
fn a_filled_drum_lays_its_weight_on_a_two_foot_square() {
    // 55 US gallons and a steel drum of 40 lb: 499 lb, 125 lb/ft² on 2 × 2 ft, worked out by hand.
    let figure = figure(
        |_, s| {
            s.water.present = true;
            s.water.vessels[0].litres_each = 55.0 * 3.785_411_784;
            s.water.vessels[0].footprint_m2_each = 4.0 * 0.3048 * 0.3048;
        },
        "Weight of water",
        UnitSystem::Imperial,
    );
    assert_eq!(figure, "125 lb/ft² limit not known");
}

#[test]
fn the_room_rule_is_fifty_cubic_feet_for_a_thousand_btu() {
    // A gas company's guide: 150,000 Btu/h need 7,500 ft³.
    let figure = figure(
        |_, s| {
            s.heater = Heater { fuel: "propane".to_owned(), ..Heater::default() };
            s.heater.rated_w = 150_000.0 * 1055.056 / 3600.0;
        },
        "Room round the flame",
        UnitSystem::Imperial,
    );
    assert!(figure.contains("of 7\u{202f}500 ft³ needed"), "{figure}");
}
