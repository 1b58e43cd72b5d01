//! What matters to a season: doubts move it the way they must, and by what their own formula says where one is known.

use std::cell::RefCell;
use std::num::NonZeroUsize;
use warmfold::model::{Study, Tightness, bundled_catalogue};
use warmfold::season::pool::Workers;
use warmfold::season::sensitivity::{Effect, Sensitivity, runs_of_what_matters, sensitivity, what_matters};
use warmfold::storage::demo;
use warmfold::weather::{Climate, bundled};

/// The opening study's second scenario: a whole tunnel on propane.
fn found(change: impl FnOnce(&mut Study), with_winters: bool) -> Sensitivity {
    let mut study = demo().expect("the opening study is embedded");
    study.scenarios = study.scenarios.drain(1..2).collect();
    study.many_winters.count = 20;
    change(&mut study);
    let climate = Climate::from_year(&bundled::load("duluth-mn").expect("bundled"));
    let catalogue = bundled_catalogue();
    let (scenario, workers) = (&study.scenarios[0], Workers::all());
    let find = if with_winters { what_matters } else { sensitivity };
    find(&study, scenario, &climate, catalogue, workers, &mut |_| ()).expect("seasons")
}

fn effect<'a>(found: &'a Sensitivity, name: &str) -> &'a Effect {
    found.effects.iter().find(|effect| effect.name == name).unwrap_or_else(|| panic!("no {name}"))
}

#[test]
fn more_costs_more_and_the_dearest_comes_first() {
    let found = found(|_| (), true);
    let cost = found.as_it_is.cost.expect("prices");
    // All ten but the tent's, and the weather.
    assert_eq!(found.effects.len(), 9 + 1, "{:?}", found.effects.iter().map(|e| e.name).collect::<Vec<_>>());
    for effect in &found.effects {
        let (less, more) = (effect.less.cost.expect("prices"), effect.more.cost.expect("prices"));
        assert!(less < cost && cost < more, "{}: {less} {cost} {more}", effect.name);
    }
    assert!(found.effects.is_sorted_by(|a, b| a.moves_cost(&found.as_it_is) >= b.moves_cost(&found.as_it_is)));
    // No narrower than the widest doubt, no wider than all of them at once.
    let [low, high] = found.cost_band.expect("prices");
    let up = |effect: &Effect| effect.more.cost.expect("prices") - cost;
    let (widest, all) = (found.effects.iter().map(up).fold(0.0, f64::max), found.effects.iter().map(up).sum::<f64>());
    assert!(cost + widest < high && high < cost + all, "{high}");
    assert!(Some(low) < effect(&found, "Leakage").less.cost);
}

/// The scenario buys propane alone, so that its money goes with the price: a fifth each way, and no other air.
#[test]
fn prices_move_money_in_proportion_and_nothing_else() {
    let found = found(|_| (), false);
    let (as_it_is, prices) = (found.as_it_is, effect(&found, "Prices of energy"));
    let share = |cost: Option<f64>| cost.expect("prices") / as_it_is.cost.expect("prices");
    assert!((share(prices.less.cost) - 0.8).abs() < 1e-9 && (share(prices.more.cost) - 1.2).abs() < 1e-9);
    assert_eq!(prices.less.crop_air_min_c, as_it_is.crop_air_min_c);
}

/// Kept at its setpoint by a heater large enough, the crop's air is a kelvin colder and warmer with the dial.
#[test]
fn a_dial_that_is_off_moves_the_crop_by_as_much() {
    let found = found(|study| study.scenarios[0].heater.rated_w = 100_000.0, false);
    let dial = effect(&found, "Setpoint");
    let held = found.as_it_is.crop_air_min_c;
    // Air dips by some hundredths within the hour in which the setpoint is reached.
    assert!((dial.more.crop_air_min_c - held - 1.0).abs() < 0.05, "{dial:?}");
    assert!((dial.less.crop_air_min_c - held + 1.0).abs() < 0.05, "{dial:?}");
}

#[test]
fn classes_of_tightness_lie_in_order() {
    let classes = [Tightness::Sealed, Tightness::Sound, Tightness::Worn, Tightness::Leaky, Tightness::Rate(2.0)];
    for class in classes {
        let [less, now, more] = [class.tighter(), class, class.looser()].map(Tightness::design_air_changes_per_h);
        assert!(less < now && now < more, "{class:?}");
    }
    assert_eq!(Tightness::Sound.looser().tighter(), Tightness::Sound);
}

#[test]
fn without_a_price_there_is_no_money_but_still_a_crop() {
    let found = found(|study| study.prices.fuels.clear(), false);
    assert!(found.as_it_is.cost.is_none() && found.cost_band.is_none());
    assert!(effect(&found, "Leakage").more.crop_air_min_c <= found.as_it_is.crop_air_min_c);
}

/// What must be burnt for a heat is that heat over the efficiency: a twentieth less efficiency buys 1/0.95 of the fuel, and
/// the crop's air stays.
#[test]
fn a_worse_heater_burns_more_by_its_own_formula() {
    let found = found(|_| (), false);
    let efficiency = effect(&found, "Heater efficiency");
    let share = |cost: Option<f64>| cost.expect("prices") / found.as_it_is.cost.expect("prices");
    assert!((share(efficiency.more.cost) - 1.0 / 0.95).abs() < 1e-3, "{efficiency:?}");
    assert_eq!(efficiency.more.crop_air_min_c, found.as_it_is.crop_air_min_c);
}

/// All the current of an electric heater becomes heat, and a house without a tent has no tent that leaks.
#[test]
fn what_is_not_there_is_in_no_doubt() {
    let electric = found(
        |study| {
            study.scenarios[0].heater.fuel = "electricity".to_owned();
            study.scenarios[0].heater.efficiency = 1.0;
        },
        false,
    );
    for name in ["Heater efficiency", "Tent leakage"] {
        assert!(electric.effects.iter().all(|effect| effect.name != name), "{name}");
    }
}

/// One thread or two, the same bits; each doubt is told of as it comes in, and as many seasons are run as were announced.
#[test]
fn threads_change_no_bit_and_every_doubt_is_told() {
    let mut study = demo().expect("the opening study is embedded");
    study.many_winters.count = 20;
    let climate = Climate::from_year(&bundled::load("duluth-mn").expect("bundled"));
    let scenario = &study.scenarios[2];
    let heard = RefCell::new((0, 0));
    let run = |threads: usize| {
        let progress = |done| heard.borrow_mut().0 = done;
        let threads = NonZeroUsize::new(threads).expect("a thread");
        let workers = Workers { threads, progress: &progress, ..Workers::all() };
        let mut told = |found: &Sensitivity| heard.borrow_mut().1 = found.effects.len();
        what_matters(&study, scenario, &climate, bundled_catalogue(), workers, &mut told).expect("seasons")
    };
    let alone = run(1);
    assert_eq!(alone, run(2));
    assert_eq!(*heard.borrow(), (runs_of_what_matters(&study, scenario), alone.effects.len() - 1));
}
