//! What a change of an input costs: one season, all four scenarios of the opening study, one year's climate.

use divan::{Bencher, black_box};
use std::num::NonZeroUsize;
use warmfold::model::{Study, WeatherChoice, bundled_catalogue};
use warmfold::season::pool::Workers;
use warmfold::season::winters::{ScenarioWinters, many_winters};
use warmfold::season::{ScenarioRun, run_scenario};
use warmfold::storage::demo;
use warmfold::weather::{Climate, WeatherYear, bundled};

fn main() {
    divan::main();
}

fn study() -> Study {
    demo().expect("the opening study is embedded")
}

fn year(study: &Study) -> WeatherYear {
    match &study.site.weather {
        WeatherChoice::Station(key) => bundled::load(key).expect("bundled station"),
        other => unreachable!("the opening study names a station, not {other:?}"),
    }
}

fn run(study: &Study, climate: &Climate, scenario: usize) -> ScenarioRun {
    run_scenario(study, &study.scenarios[scenario], climate, bundled_catalogue(), &|| false).expect("runs")
}

/// One season of each scenario of the opening study.
#[divan::bench(args = [0, 1, 2, 3])]
fn one_season(bencher: Bencher, scenario: usize) {
    let study = study();
    let climate = Climate::from_year(&year(&study));
    bencher.bench_local(|| run(black_box(&study), black_box(&climate), scenario));
}

/// All four, one after another.
#[divan::bench]
fn four_scenarios(bencher: Bencher) {
    let study = study();
    let climate = Climate::from_year(&year(&study));
    bencher.bench_local(|| {
        (0..study.scenarios.len()).map(|i| run(black_box(&study), black_box(&climate), i)).collect::<Vec<_>>()
    });
}

/// 200 winters of the four, on one thread and on two.
#[divan::bench(args = [1, 2], sample_count = 3)]
fn two_hundred_winters(bencher: Bencher, threads: usize) {
    let mut study = study();
    study.many_winters.count = 200;
    let climate = Climate::from_year(&year(&study));
    let threads = NonZeroUsize::new(threads).expect("a thread");
    let run = || -> Vec<ScenarioWinters> {
        many_winters(&study, &climate, bundled_catalogue(), Workers { threads, ..Workers::all() }, &mut |_| ())
            .expect("runs")
    };
    bencher.bench_local(run);
}

/// Sun, sky and ground of one year's records.
#[divan::bench]
fn climate_of_a_year(bencher: Bencher) {
    let year = year(&study());
    bencher.bench_local(|| Climate::from_year(black_box(&year)));
}
