//! What a made year is worth: the winter's heat on it against the heat on the real hours of the same place, the place
//! itself left out of the stations that may lend.

use crate::climates::{full_table_of, same_place, temperatures_of};
use crate::seasons::{climate, run};
use warmfold::season::RunOptions;
use warmfold::storage::demo;
use warmfold::weather::bundled::{Station, stations};
use warmfold::weather::normals::{Normals, year_without};
use warmfold::weather::{Climate, WeatherYear};

/// What the product promises: single winters of one place differ by more (7 to 13 % in degree-days of 18.3 °C, more below
/// lower bases, in Chicago and Aachen).
const HOLDS: f64 = 0.08;
const MUST_HOLD: usize = 6;

/// Heat of the whole tunnel, made over real less one.
fn miss(station: &Station, table: fn(&WeatherYear) -> Normals) -> f64 {
    let study = demo().expect("the opening study is embedded");
    let scenario = &study.scenarios[0];
    let heat_kwh = |climate: &Climate| run(&study, scenario, climate, RunOptions::default()).summary.heat_delivered_kwh;
    let normals = table(&station.load().expect("a bundled year"));
    let made = year_without(&normals, &same_place(station)).expect("a lender");
    let (real_kwh, made_kwh) = (heat_kwh(&climate(station.key)), heat_kwh(&Climate::from_year(&made)));
    println!(
        "{:18} {real_kwh:7.0} {made_kwh:7.0} {:+6.1} %  {}",
        station.key,
        100.0 * (made_kwh / real_kwh - 1.0),
        made.credit
    );
    made_kwh / real_kwh - 1.0
}

fn assert_most_hold(table: fn(&WeatherYear) -> Normals) {
    let held = stations().iter().filter(|s| miss(s, table).abs() < HOLDS).count();
    assert!(held >= MUST_HOLD, "{held} of {} within 8 %", stations().len());
}

/// Misses: Port Angeles and Aachen lend to each other, 41 and 6 % of whose winter nights are nearly calm, which no
/// temperature tells; San Francisco needs so little heat that a tenth of a kelvin counts.
#[test]
fn heat_on_minima_and_maxima_alone() {
    assert_most_hold(temperatures_of);
}

/// With wind and sunshine in the table Aachen holds too, its hours then lent by another windy place.
#[test]
fn heat_on_a_full_table() {
    assert_most_hold(full_table_of);
}
