//! Step size, books, repeatability and cancelling of whole seasons.
//!
//! The product's own demand: halving all steps moves the season's heat by less than 0.5 % and every hourly mean
//! temperature by less than 0.1 K; the books close to 10⁻⁶ of the throughput.

use std::cell::Cell;
use warmfold::model::{
    Bench, Covering, Heater, House, Scenario, Shape, Site, Study, Vessels, WaterStore, WeatherChoice, Zone,
    bundled_catalogue,
};
use warmfold::season::{RunError, RunOptions, ScenarioRun, run_scenario, run_scenario_with};
use warmfold::storage::{demo, load_weather, read_study};
use warmfold::weather::Climate;

const STUDIES: [&str; 2] =
    [include_str!("../scenarios/box-house-cold-sun.ron"), include_str!("../scenarios/glass-night-tariff.ron")];

fn climate(site: &Site) -> Climate {
    load_weather(site, std::path::Path::new("")).expect("bundled weather").climate
}

fn run(study: &Study, scenario: &Scenario, climate: &Climate, refine: u32) -> ScenarioRun {
    let options = RunOptions { refine, ..RunOptions::default() };
    run_scenario_with(study, scenario, climate, bundled_catalogue(), &|| false, options).expect("runs")
}

/// All hourly temperatures, by name.
fn temperatures(run: &ScenarioRun) -> [(&'static str, &[f64]); 6] {
    let h = &run.hours;
    [
        ("house air", &h.house_air_c),
        ("house floor", &h.house_floor_c),
        ("house water", &h.house_water_c),
        ("tent air", &h.tent_air_c),
        ("tent floor", &h.tent_floor_c),
        ("tent water", &h.tent_water_c),
    ]
}

/// Largest change of an hourly mean temperature: node, hour, K.
fn largest_change(a: &ScenarioRun, b: &ScenarioRun) -> (&'static str, usize, f64) {
    let mut largest = ("", 0, 0.0);
    for ((name, a), (_, b)) in temperatures(a).into_iter().zip(temperatures(b)) {
        for (hour, (a, b)) in a.iter().zip(b).enumerate() {
            if (a - b).abs() > largest.2 {
                largest = (name, hour, (a - b).abs());
            }
        }
    }
    largest
}

#[track_caller]
fn check(study: &Study, scenario: &Scenario, climate: &Climate) {
    let (whole, halved) = (run(study, scenario, climate, 1), run(study, scenario, climate, 2));
    let name = &scenario.name;
    let (a, b) = (whole.summary.heat_delivered_kwh, halved.summary.heat_delivered_kwh);
    assert!((a - b).abs() <= 0.005 * b, "{name}: {a} kWh, with half the step {b} kWh");
    let (node, hour, change_k) = largest_change(&whole, &halved);
    assert!(change_k < 0.1, "{name}: {node} moves by {change_k} K in hour {hour} with half the step");
    for run in [&whole, &halved] {
        let closure = run.summary.books_closure;
        assert!(closure < 1e-6, "{name}: books close to {closure}");
    }
}

#[test]
fn half_the_step_in_the_opening_study() {
    let study = demo().expect("demo");
    let climate = climate(&study.site);
    for scenario in &study.scenarios {
        check(&study, scenario, &climate);
    }
}

#[test]
fn half_the_step_in_the_other_studies() {
    for text in STUDIES {
        let study = read_study(text).expect("study");
        let climate = climate(&study.site);
        for scenario in &study.scenarios {
            check(&study, scenario, &climate);
        }
    }
}

/// A tunnel without heat and with much water, in a place where it freezes through.
fn icy_study() -> Study {
    let scenario = Scenario {
        name: "Unheated, much water, deep cold".to_owned(),
        house: House { shape: Shape::Tunnel, ..House::default() },
        covering: Covering { sheets: vec!["film".to_owned()], ..Covering::default() },
        heater: Heater { present: false, ..Heater::default() },
        water: WaterStore { present: true, vessels: vec![Vessels { count: 8, ..Vessels::default() }] },
        bench: Bench { zone: Zone::House, ..Bench::default() },
        ..Scenario::default()
    };
    let site = Site { weather: WeatherChoice::Station("duluth-mn".to_owned()), ..Site::default() };
    Study { site, scenarios: vec![scenario], ..Study::default() }
}

#[test]
fn half_the_step_with_ice() {
    let study = icy_study();
    let climate = climate(&study.site);
    let scenario = &study.scenarios[0];
    let ice = run(&study, scenario, &climate, 1).summary.water_ice_share_max;
    assert!(ice.is_some_and(|share| share > 0.5), "the case is meant to freeze: {ice:?}");
    check(&study, scenario, &climate);
}

#[test]
fn two_runs_are_the_same_to_the_bit() {
    for study in [demo().expect("demo"), icy_study()] {
        let climate = climate(&study.site);
        for scenario in &study.scenarios {
            let (a, b) = (run(&study, scenario, &climate, 1), run(&study, scenario, &climate, 1));
            for ((name, a), (_, b)) in temperatures(&a).into_iter().zip(temperatures(&b)) {
                let alike = a.iter().zip(b).all(|(a, b)| a.to_bits() == b.to_bits());
                assert!(a.len() == b.len() && alike, "{}: {name}", scenario.name);
            }
            assert_eq!(a, b, "{}", scenario.name);
        }
    }
}

/// Printed in full, two runs differ if any number differs in any bit.
#[test]
fn a_run_does_not_depend_on_the_scenarios_beside_it() {
    let study = demo().expect("demo");
    let climate = climate(&study.site);
    let beside: Vec<_> = study.scenarios.iter().map(|s| format!("{:?}", run(&study, s, &climate, 1))).collect();
    for (scenario, beside) in study.scenarios.iter().zip(beside).rev() {
        let alone = Study { scenarios: vec![scenario.clone()], ..study.clone() };
        assert!(format!("{:?}", run(&alone, scenario, &climate, 1)) == beside, "{}", scenario.name);
    }
}

#[test]
fn a_cancelled_run_says_so() {
    let study = demo().expect("demo");
    let climate = climate(&study.site);
    let catalogue = bundled_catalogue();
    // At once, in the run ahead, and in the season itself: it asks once per simulated day.
    for days in [0, 10, 100] {
        let asked = Cell::new(0);
        let cancelled = || asked.replace(asked.get() + 1) >= days;
        let result = run_scenario(&study, &study.scenarios[0], &climate, catalogue, &cancelled);
        assert_eq!(result.err(), Some(RunError::Cancelled), "after {days} days");
        assert_eq!(asked.get(), days + 1, "it stops at the first yes");
    }
}
