//! What the engine makes of many winters: the same figures always, and figures that hang together.

use crate::weather::{Hour, constant};
use std::num::NonZeroUsize;
use std::sync::atomic::{AtomicUsize, Ordering};
use warmfold::figures;
use warmfold::model::{Season, Study, bundled_catalogue};
use warmfold::season::pool::Workers;
use warmfold::season::winters::{ScenarioWinters, Spread, many_winters};
use warmfold::season::{RunError, run_scenario};
use warmfold::storage::demo;
use warmfold::weather::winters::WinterMaker;
use warmfold::weather::{Climate, bundled};

/// The opening study with its second and third scenario, propane and electricity, and a short season.
fn study(count: u32, seed: u32) -> Study {
    let mut study = demo().expect("the opening study is embedded");
    study.scenarios = study.scenarios.drain(1..3).collect();
    study.season = Season { from_month: 12, from_day: 20, to_month: 1, to_day: 20 };
    (study.many_winters.count, study.many_winters.seed) = (count, seed);
    study
}

fn climate() -> Climate {
    Climate::from_year(&bundled::load("duluth-mn").expect("bundled"))
}

fn run(study: &Study, climate: &Climate, threads: usize) -> Vec<ScenarioWinters> {
    let threads = NonZeroUsize::new(threads).expect("a thread");
    many_winters(study, climate, bundled_catalogue(), Workers { threads, ..Workers::all() }, &mut |_| ())
        .expect("winters")
}

#[test]
fn the_number_of_threads_changes_no_bit() {
    let (study, climate) = (study(40, 1), climate());
    let alone = run(&study, &climate, 1);
    assert_eq!(alone, run(&study, &climate, 2));
    assert!(alone.iter().all(|scenario| scenario.winters.len() == 40));
}

#[test]
fn a_seed_gives_its_winters_and_another_gives_others() {
    let climate = climate();
    let [first, again, other] = [1, 1, 2].map(|seed| run(&study(20, seed), &climate, 2));
    assert_eq!(first, again);
    let costs = |w: &[ScenarioWinters]| w[0].winters.iter().map(|w| w.cost).collect::<Vec<_>>();
    assert!(costs(&first).iter().zip(costs(&other)).all(|(a, b)| *a != b), "a winter of both seeds");
    // More winters are the same ones and further ones.
    let more = run(&study(30, 1), &climate, 2);
    assert_eq!(more[1].winters[..20], first[1].winters[..]);
}

#[test]
fn every_winter_is_told_of_as_it_comes_in() {
    let mut counts = Vec::new();
    let two = NonZeroUsize::new(2).expect("two");
    let mut told = |so_far: &[ScenarioWinters]| {
        assert!(so_far.iter().all(|s| s.winters.is_sorted_by_key(|w| w.number)));
        counts.push(so_far[1].winters.len());
    };
    let workers = Workers { threads: two, ..Workers::all() };
    many_winters(&study(20, 1), &climate(), bundled_catalogue(), workers, &mut told).expect("winters");
    assert_eq!(counts, (0..=20).collect::<Vec<_>>());
}

/// Whoever gives up in the fifth winter is answered within the day that is being run, not after the last winter.
#[test]
fn who_gives_up_is_answered_at_once() {
    let done = AtomicUsize::new(0);
    let two = NonZeroUsize::new(2).expect("two");
    let mut told = |_: &[ScenarioWinters]| {
        done.fetch_add(1, Ordering::Relaxed);
    };
    let given_up = || done.load(Ordering::Relaxed) > 5;
    let workers = Workers { threads: two, cancelled: &given_up, ..Workers::all() };
    let answer = many_winters(&study(1000, 1), &climate(), bundled_catalogue(), workers, &mut told);
    assert_eq!(answer, Err(RunError::Cancelled));
    // Two threads may each have had a winter ready.
    assert!(done.load(Ordering::Relaxed) <= 6 + 2, "{done:?}");
}

#[test]
fn the_weather_year_among_them_is_the_season_itself() {
    let (study, climate) = (study(20, 1), climate());
    for (scenario, winters) in study.scenarios.iter().zip(run(&study, &climate, 2)) {
        let season =
            run_scenario(&study, scenario, &climate, bundled_catalogue(), &|| false).expect("a season").summary;
        assert_eq!(winters.weather_year.cost, season.cost);
        assert_eq!(winters.weather_year.heat_kwh, season.heat_delivered_kwh);
        assert_eq!(winters.weather_year.fuel_quantity[0], season.fuel_quantity);
        assert_eq!(winters.weather_year.crop_air_min_c, season.crop_zone_min_c);
        assert_eq!(winters.weather_year.hours_below_crop_limit, season.hours_below_crop_limit);
    }
}

#[test]
fn figures_hang_together() {
    let study = study(60, 1);
    let winters = run(&study, &climate(), 2);
    let currency = &study.prices.currency;
    for scenario in &winters {
        let figures = scenario.figures(currency);
        let in_order = |spread: Option<Spread>| spread.is_some_and(|s| s.p10 <= s.p50 && s.p50 <= s.p90);
        assert!(in_order(figures.cost) && in_order(figures.heat_kwh) && in_order(figures.fuel_quantity));
        assert!(in_order(figures.crop_air_min_c) && in_order(figures.outdoor_min_c));
        let cost = figures.cost.expect("prices");
        let above = scenario.winters.iter().filter(|w| w.cost > Some(cost.p90)).count();
        assert_eq!(above, 6, "a tenth of 60 winters costs more");
        let below = scenario.winters.iter().filter(|w| w.hours_below_crop_limit > 0).count();
        assert_eq!(figures.winters_below_crop_limit, below);
        assert_eq!(figures.fuel_to_stock.is_none(), figures.fuel_unit == "kWh", "nobody stores electricity");
        if let Some(stock) = figures.fuel_to_stock {
            let lasts = scenario.winters.iter().filter(|w| w.fuel_quantity[0] <= stock).count();
            assert!(lasts >= 54 && stock.fract() == 0.0, "{stock} lasts {lasts} of 60 winters");
        }
        for winter in &scenario.winters {
            let spent = winter.running_cost.last().copied().expect("days");
            assert!((spent - winter.cost.expect("prices")).abs() < 1e-9, "{spent}");
            assert!(winter.running_cost.is_sorted());
        }
        let fan = scenario.fan();
        assert_eq!(fan.len(), 32);
        assert!((fan[31].cost.p90 - cost.p90).abs() < 1e-9);
    }
    assert_eq!(figures::winters(&winters, currency).rows.len(), 120);
    assert_eq!(figures::winter_fans(&winters, currency).rows[31].len(), 2 + 6);
}

/// Type 7 of Hyndman and Fan (1996) by hand: of ten values the tenth part lies at rank 1 + 0.9.
#[test]
fn quantiles_are_of_type_seven() {
    let values: Vec<f64> = (1..=10).map(f64::from).collect();
    let spread = Spread::of(&values).expect("values");
    assert!((spread.p10 - 1.9).abs() < 1e-12 && (spread.p50 - 5.5).abs() < 1e-12 && (spread.p90 - 9.1).abs() < 1e-12);
    assert_eq!(Spread::of(&[]), None);
}

/// What made winters share with the weather year: dates, wind, sun, dryness of the air and clearness of the sky. Air that
/// held its dew point does so still.
#[test]
fn air_dew_point_and_sky_move_together() {
    let climate = climate();
    let winter = WinterMaker::of(&climate).winter(3, 7);
    for (made, own) in winter.hours.iter().zip(&climate.hours) {
        let by_k = made.outdoor_c - own.outdoor_c;
        assert!((made.dew_point_c - own.dew_point_c - by_k).abs() < 1e-9);
        assert!((made.sky_c - own.sky_c - by_k).abs() < 1e-9);
        assert!(made.dew_point_c <= made.outdoor_c + (own.dew_point_c - own.outdoor_c).max(0.0) + 1e-9);
        let same = warmfold::weather::ClimateHour {
            outdoor_c: own.outdoor_c,
            dew_point_c: own.dew_point_c,
            sky_c: own.sky_c,
            ..*made
        };
        assert_eq!(same, *own);
    }
}

/// Weather without deviations has none to change.
#[test]
fn a_place_without_weather_has_one_winter_only() {
    let climate = constant(&Hour { outdoor_c: -3.0, ..Hour::default() });
    let winter = WinterMaker::of(&climate).winter(1, 1);
    assert!(winter.hours.iter().all(|hour| (hour.outdoor_c + 3.0).abs() < 1e-9));
}
