//! A sweep is nothing but runs of the study with the value typed in.

use crate::{fortnight, on_threads, opened, seasons};
use std::sync::atomic::{AtomicUsize, Ordering};
use warmfold::explore::{Axis, AxisError, Refusal, SweepError, Workers, find, sweep};
use warmfold::model::{Study, bundled_catalogue};
use warmfold::season::lean::{SeasonFigures, season_figures};
use warmfold::season::{RunError, RunOptions};
use warmfold::units::UnitSystem;

fn axis(study: &Study, path: &str, from: f64, to: f64, points: usize) -> Axis {
    Axis::new(find(study, path).expect(path), from, to, points).expect("a range")
}

#[test]
fn the_lean_season_has_the_figures_of_the_whole_run() {
    let (study, climate) = opened();
    let scenario = &study.scenarios[3];
    let whole = seasons::run(&study, scenario, &climate, RunOptions::default()).summary;
    let lean = season_figures(&study, scenario, &climate, bundled_catalogue(), &|| false).expect("a season");
    assert_eq!(lean, SeasonFigures::from(&whole));
}

#[test]
fn a_point_is_the_study_with_the_value_typed_into_its_text() {
    let (study, climate) = fortnight();
    let heights = axis(&study, "tent.height_m", 0.7, 1.1, 3);
    assert_eq!(heights.values, [0.7, 0.9, 1.1]);
    let swept = sweep(&study, &[2], &[heights], &climate, bundled_catalogue(), Workers::all()).expect("runs");
    assert_eq!(swept.points.len(), 3);
    for point in &swept.points {
        let mut typed = study.clone();
        typed.scenarios[2].tent.height_m = point.values[0];
        let text = warmfold::storage::write_study(&typed);
        let read = warmfold::storage::read_study(&text).expect("a study");
        let run = seasons::run(&read, &read.scenarios[2], &climate, RunOptions::default()).summary;
        let season = point.season.as_ref().expect("a season");
        assert_eq!(season.cost, run.cost);
        assert_eq!(season.heat_delivered_kwh, run.heat_delivered_kwh);
        assert_eq!(season.crop_zone_min_c, run.crop_zone_min_c);
    }
    // A higher tent has more wall to lose heat through.
    let heats: Vec<f64> = swept.points.iter().flat_map(|p| &p.season).map(|s| s.heat_delivered_kwh).collect();
    assert!(heats.is_sorted() && heats[0] < heats[2], "{heats:?}");
}

/// A map of two runs over every pair, and both values are in force.
#[test]
fn a_map_of_two_inputs_holds_every_pair() {
    let (study, climate) = fortnight();
    let axes = [axis(&study, "heater.setpoint_c", 4.0, 8.0, 2), axis(&study, "season.start_moved_d", 0.0, 7.0, 2)];
    let swept = sweep(&study, &[0, 2], &axes, &climate, bundled_catalogue(), Workers::all()).expect("runs");
    let places: Vec<_> = swept.points.iter().map(|p| (p.scenario, p.values[0], p.values[1])).collect();
    let expected = [0, 2].map(|s| [(s, 4.0, 0.0), (s, 4.0, 7.0), (s, 8.0, 0.0), (s, 8.0, 7.0)]).concat();
    assert_eq!(places, expected);
    let heats: Vec<f64> = swept.of(2).flat_map(|p| &p.season).map(|s| s.heat_delivered_kwh).collect();
    assert!(heats[0] < heats[2] && heats[1] < heats[3], "a warmer house takes more heat: {heats:?}");
    assert!(heats[1] < heats[0] && heats[3] < heats[2], "a shorter season takes less heat: {heats:?}");
    let starts: Vec<String> = swept.of(2).flat_map(|p| &p.season).map(|s| s.season_start.to_string()).collect();
    assert_eq!(starts, ["01-08 01:00", "01-15 01:00", "01-08 01:00", "01-15 01:00"]);
    let table = swept.figures(&study, &axes, UnitSystem::Metric);
    assert_eq!(table.head[..3], ["scenario", "heater.setpoint_c [°C]", "season.start_moved_d"]);
    assert!(table.rows.len() == 8 && table.rows.iter().all(|row| row.len() == table.head.len()));
}

#[test]
fn the_number_of_threads_changes_no_bit() {
    let (study, climate) = fortnight();
    let on = |threads| {
        let axes = [axis(&study, "water.vessels[0].count", 0.0, 6.0, 4)];
        sweep(&study, &[0, 2, 3], &axes, &climate, bundled_catalogue(), on_threads(threads)).expect("runs")
    };
    let one = on(1);
    assert_eq!(one, on(2));
    assert_eq!(one, on(7));
    assert!(one.is_flat(0), "the first scenario has no water store");
    assert!(!one.is_flat(2), "the third has one");
}

/// A tent higher than the tunnel, days that a month lacks and broken numbers of drums say why they are left out.
#[test]
fn a_value_that_the_rules_refuse_is_left_out_with_its_reason() {
    let (study, climate) = fortnight();
    let reasons = |path: &str, from, to, points| {
        let axes = [axis(&study, path, from, to, points)];
        let swept = sweep(&study, &[2], &axes, &climate, bundled_catalogue(), Workers::all()).expect("runs");
        let text = |refusal: &Refusal| refusal.text(UnitSystem::Metric);
        swept.points.iter().map(|p| p.season.as_ref().err().map(text)).collect::<Vec<_>>()
    };
    let tent = reasons("tent.height_m", 0.9, 2.9, 2);
    assert!(tent[0].is_none() && tent[1].as_ref().is_some_and(|r| r.contains("Height")), "{tent:?}");
    let outside = reasons("tent.height_m", 0.9, 90.0, 2);
    assert!(outside[1].as_ref().is_some_and(|r| r.contains("choose from 0.20 m to 6.00 m")), "{outside:?}");
    let day = reasons("season.from_day", 20.0, 40.0, 2);
    assert!(day[0].is_none() && day[1].is_some(), "{day:?}");
    let moved = reasons("season.start_moved_d", 13.0, 14.0, 2);
    assert!(moved[0].is_none() && moved[1].as_ref().is_some_and(|r| r.contains("last day")), "{moved:?}");
    let drums = axis(&study, "water.vessels[0].count", 0.0, 3.0, 9);
    assert_eq!(drums.values, [0.0, 1.0, 2.0, 3.0], "whole numbers, each once");
    let half = drums.input.set(&mut study.clone(), 2, 1.5);
    assert_eq!(half, Err(Refusal::NotWhole(1.5)));
}

#[test]
fn what_is_no_range_is_refused() {
    let (study, climate) = fortnight();
    let of = |from, to, points| Axis::new(find(&study, "tent.height_m").expect("a path"), from, to, points).err();
    assert_eq!(of(1.0, 1.0, 3), Some(AxisError::NoRange(1.0)));
    assert_eq!(of(1.0, f64::NAN, 3), Some(AxisError::NotANumber));
    assert_eq!(of(1.0, f64::INFINITY, 3), Some(AxisError::NotANumber));
    for points in [0, 1, 501] {
        assert_eq!(of(1.0, 2.0, points), Some(AxisError::Points { found: points }));
    }
    let axes = [axis(&study, "tent.height_m", 0.5, 1.0, 200), axis(&study, "tent.width_m", 0.5, 1.0, 200)];
    let swept = sweep(&study, &[0, 1], &axes, &climate, bundled_catalogue(), Workers::all());
    assert_eq!(swept.err(), Some(SweepError::Axis(AxisError::TooMany { found: 80_000 })));
}

#[test]
fn a_sweep_tells_how_far_it_is_and_can_be_given_up() {
    let (study, climate) = fortnight();
    let axes = || [axis(&study, "tent.height_m", 0.7, 1.1, 5)];
    let heard = AtomicUsize::new(0);
    let progress = |_: usize| {
        heard.fetch_add(1, Ordering::Relaxed);
    };
    let workers = Workers { progress: &progress, ..on_threads(2) };
    sweep(&study, &[2], &axes(), &climate, bundled_catalogue(), workers).expect("runs");
    assert_eq!(heard.load(Ordering::Relaxed), 5);
    let asked = AtomicUsize::new(0);
    let cancelled = || asked.fetch_add(1, Ordering::Relaxed) > 100;
    let workers = Workers { cancelled: &cancelled, ..on_threads(2) };
    let given_up = sweep(&study, &[2], &axes(), &climate, bundled_catalogue(), workers);
    assert_eq!(given_up.err(), Some(SweepError::Run(RunError::Cancelled)));
}
