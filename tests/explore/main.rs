//! Many seasons of one study: sweeps, and what to buy first.

#[path = "../common/seasons.rs"]
mod seasons;

mod best_buys;
mod commands;
mod inputs;
mod sweeps;

use std::num::NonZeroUsize;
use warmfold::explore::Workers;
use warmfold::model::{Season, Study};
use warmfold::storage::demo;
use warmfold::weather::Climate;

/// The opening study on its weather.
fn opened() -> (Study, Climate) {
    (demo().expect("the opening study"), seasons::climate("duluth-mn"))
}

/// The opening study in its coldest fortnight: long enough for setpoints to be missed, and quick to run.
fn fortnight() -> (Study, Climate) {
    let (mut study, climate) = opened();
    study.season = Season { from_month: 1, from_day: 8, to_month: 1, to_day: 21 };
    (study, climate)
}

fn on_threads(threads: usize) -> Workers<'static> {
    Workers { threads: NonZeroUsize::new(threads).expect("not zero"), ..Workers::all() }
}
