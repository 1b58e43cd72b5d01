//! The engine against a second, plain solver that was written from the description of the model alone.
//!
//! The two share the catalogue's rows and the weather records, and no line of physics: geometry, skin, sky, sun, ground,
//! openings, water and thermostats are worked out here anew, and the season is run in forward Euler steps of two seconds
//! instead of the engine's implicit steps of up to forty minutes. What one of them misread, the other shows.

mod cases;
mod house;
mod random;

mod shell;
mod skin;
mod sky;
mod solver;

use cases::Case;
use solver::HourOutcome;
use warmfold::model::{Severity, bundled_catalogue, problems};
use warmfold::season::{HourlySeries, RunOptions, run_scenario_with};
use warmfold::weather::{Climate, bundled};

/// What two runs may differ by.
struct Bar {
    /// Parts that the engine's steps are cut into.
    refine: u32,
    /// Of the season's heat.
    heat: f64,
    /// In any hourly mean, K.
    temperature_k: f64,
    /// In the share of ice.
    ice: f64,
}

/// The program as it is shown: the bar that its step sets itself. Ice: 0.1 K of air over a drum's 1.25 m² at 7 W/m²K
/// moves 0.9 W, in a week 0.8 % of the heat of freezing 208 kg.
const AS_SHOWN: Bar = Bar { refine: 1, heat: 0.005, temperature_k: 0.1, ice: 0.008 };
/// Steps cut into eight, which leaves the physics alone. What remains is the leakage, whose iteration may leave 0.02 K,
/// and two positions of the sun up to 0.02° apart, a few ten-thousandths of the beam, which move a sunny floor by 0.01 K.
const SHORT_STEPS: Bar = Bar { refine: 8, heat: 0.001, temperature_k: 0.03, ice: 0.001 };

/// The largest difference of a column, and the hour of the season where it is.
fn worst(ours: &[f64], theirs: impl Iterator<Item = f64>) -> (f64, usize) {
    ours.iter()
        .zip(theirs)
        .enumerate()
        .map(|(hour, (a, b))| ((a - b).abs(), hour))
        .fold((0.0, 0), |worst, here| if here.0 > worst.0 || here.0.is_nan() { here } else { worst })
}

type Of = fn(&HourOutcome) -> f64;

fn columns<'a>(hours: &'a HourlySeries, bar: &Bar) -> [(&'static str, &'a [f64], Of, f64); 8] {
    let t = bar.temperature_k;
    [
        ("house air", &hours.house_air_c, |h| h.house.air_c, t),
        ("house floor", &hours.house_floor_c, |h| h.house.floor_c, t),
        ("house water", &hours.house_water_c, |h| h.house.water_c, t),
        ("house ice", &hours.house_ice_share, |h| h.house.ice_share, bar.ice),
        ("tent air", &hours.tent_air_c, |h| h.tent.air_c, t),
        ("tent bench", &hours.tent_floor_c, |h| h.tent.floor_c, t),
        ("tent water", &hours.tent_water_c, |h| h.tent.water_c, t),
        ("tent ice", &hours.tent_ice_share, |h| h.tent.ice_share, bar.ice),
    ]
}

/// Compares two runs of one case; what is out of tolerance comes back as lines.
fn compare(engine: &HourlySeries, plain: &[HourOutcome], bar: &Bar) -> Vec<String> {
    assert_eq!(plain.len(), engine.house_air_c.len());
    let mut missed = Vec::new();
    let mut check = |line: String, good: bool| {
        println!("  {line}");
        if !good {
            missed.push(line);
        }
    };
    let sum = |values: &[f64]| values.iter().sum::<f64>() / 1000.0;
    let of = |column: Of| plain.iter().map(column).sum::<f64>() / 1000.0;
    let (first, standby, vents) = (of(|h| h.heater_w[0]), of(|h| h.heater_w[1]), of(|h| h.vent_loss_w));
    // Each start of a heater falls inside a step and may cost up to three watt-hours: of less than 10 kWh, what some
    // nights happen to lack, that is no longer a small share.
    let heat_kwh = bar.heat * (first + standby).max(10.0);
    // Vents have no bar of their own. Their flow springs from nothing at the opener's first movement, so that each hour
    // in which they move adds a few watt-hours of either sign; warm wind brings heat in that cold air takes out again.
    let moved_kwh = plain.iter().map(|h| h.vent_loss_w.abs()).sum::<f64>() / 1000.0;
    let vents_kwh = 2.0 * bar.heat * (moved_kwh + 5.0);
    for (what, ours, theirs, tolerance_kwh) in [
        ("all heat", sum(&engine.heater_w) + sum(&engine.standby_w), first + standby, heat_kwh),
        ("first heater", sum(&engine.heater_w), first, heat_kwh),
        ("standby heater", sum(&engine.standby_w), standby, heat_kwh),
        ("vents and fan", sum(&engine.vent_loss_w), vents, vents_kwh),
    ] {
        check(format!("{what}: {ours:.3} and {theirs:.3} kWh"), (ours - theirs).abs() <= tolerance_kwh);
    }
    for (what, ours, theirs, tolerance) in columns(engine, bar) {
        if !ours.is_empty() {
            let (gap, hour) = worst(ours, plain.iter().map(theirs));
            check(format!("{what}: at most {gap:.4} apart, at {:.2} in hour {hour}", ours[hour]), gap <= tolerance);
        }
    }
    missed
}

/// What took part in a case, so that no part of the model goes untried.
#[derive(Default)]
struct Part {
    ice_share: f64,
    vent_opening: f64,
    fan_share: f64,
    standby_kwh: f64,
}

impl Part {
    fn of(hours: &HourlySeries) -> Self {
        let most = |values: &[f64]| values.iter().copied().fold(0.0, f64::max);
        Self {
            ice_share: most(&hours.house_ice_share),
            vent_opening: most(&hours.vent_opening),
            fan_share: most(&hours.fan_share),
            standby_kwh: hours.standby_w.iter().sum::<f64>() / 1000.0,
        }
    }
}

fn try_case(case: &Case) -> (Vec<String>, Part) {
    let rows = bundled_catalogue();
    let refused: Vec<_> = problems(&case.study, rows).into_iter().filter(|p| p.severity() == Severity::Error).collect();
    assert!(refused.is_empty(), "{refused:?}");
    let year = bundled::load(case.station).expect("a bundled station");
    let climate = Climate::from_year(&year);
    let (study, scenario) = (&case.study, case.scenario());
    let plain = solver::run(study, scenario, &year, rows);
    let mut missed = Vec::new();
    let mut part = Part::default();
    for bar in [AS_SHOWN, SHORT_STEPS] {
        println!("{}, steps cut into {}", scenario.name, bar.refine);
        let options = RunOptions { refine: bar.refine, ..RunOptions::default() };
        let engine = run_scenario_with(study, scenario, &climate, rows, &|| false, options).expect("a season");
        let lines = compare(&engine.hours, &plain, &bar);
        missed.extend(lines.into_iter().map(|line| format!("{}, cut into {}: {line}", scenario.name, bar.refine)));
        part = Part::of(&engine.hours);
    }
    (missed, part)
}

#[test]
fn two_solvers_agree() {
    let cases = cases::all();
    let results: Vec<(Vec<String>, Part)> = std::thread::scope(|scope| {
        let halves: Vec<_> = cases.chunks(cases.len().div_ceil(2)).collect();
        let running: Vec<_> =
            halves.into_iter().map(|half| scope.spawn(move || half.iter().map(try_case).collect::<Vec<_>>())).collect();
        running.into_iter().flat_map(|thread| thread.join().expect("a comparison")).collect()
    });
    let missed: Vec<_> = results.iter().flat_map(|(lines, _)| lines).collect();
    assert!(missed.is_empty(), "{missed:#?}");

    let any = |used: fn(&Part) -> bool| results.iter().filter(|(_, part)| used(part)).count();
    assert!(any(|p| p.ice_share > 0.0 && p.ice_share < 1.0) > 0, "no water froze in part");
    assert!(any(|p| p.ice_share == 1.0) > 0, "no water froze through");
    assert!(any(|p| p.vent_opening == 1.0) > 2, "vents hardly opened");
    assert!(any(|p| p.fan_share == 1.0) > 0, "no fan ran full");
    assert!(any(|p| p.standby_kwh > 5.0) > 2, "standby heaters hardly ran");
}
