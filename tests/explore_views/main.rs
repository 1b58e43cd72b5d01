//! The views of many seasons of one study by their labels: what matters, sweeps, the best buy.

mod buy;
mod matters;
mod sweep;
#[path = "../common/window.rs"]
mod window;

use warmfold::model::{Season, Study};
use warmfold::storage::demo;
use window::Window;

/// The opening study with a short season and few winters, so that many seasons take a moment.
fn short() -> Study {
    let mut study = demo().expect("the opening study is embedded");
    study.season = Season { from_month: 1, from_day: 1, to_month: 1, to_day: 14 };
    study.many_winters.count = 20;
    study
}

/// Chooses a scenario by its place.
fn choose(h: &mut Window, place: usize) {
    h.state_mut().document.draft.selected = place;
    h.state_mut().document.revision += 1;
    h.run_steps(4);
    window::until(h, "the seasons", |h| !h.state().board.working());
}
