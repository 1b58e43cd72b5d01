//! The window on the demo study, with every result drawn.

#[path = "drawn.rs"]
mod drawn;

pub use drawn::Window;
use std::time::{Duration, Instant};
use warmfold::gui::State;
use warmfold::storage;

/// The window on the demo, every result drawn; `frame` draws it.
pub fn drawn_by(size: [f32; 2], frame: impl FnMut(&mut egui::Ui, &mut State) + 'static) -> Window {
    let mut h = drawn::drawn_by(size, storage::demo().unwrap(), frame);
    settle(&mut h);
    h
}

/// Steps until nothing is worked out any more and nothing moves.
pub fn settle(h: &mut Window) {
    let start = Instant::now();
    h.run_steps(4);
    while h.state().working() {
        assert!(start.elapsed() < Duration::from_secs(120), "the results did not come");
        std::thread::sleep(Duration::from_millis(5));
        h.step();
    }
    h.run_steps(4);
}
