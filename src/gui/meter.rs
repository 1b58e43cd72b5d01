//! Measures the window at work: time to the first results, and what each frame costs in every view while setpoints are
//! dragged.

use super::state::{State, View};
use super::views::VIEWS;
use std::time::{Duration, Instant};

/// Frames of each view.
const FRAMES: usize = 300;

/// What is measured of a frame: layout as the clock shows it, what of it is the window's own work, and all of the frame.
const WHAT: [&str; 3] = ["layout", "layout, processor time of its thread", "whole frame with painting"];

/// The frame counter.
pub struct Meter {
    started: Instant,
    results_after: Option<Duration>,
    /// Views whose frames have been measured.
    measured: usize,
    /// Times of the frames, ms; see [`WHAT`].
    times_ms: Vec<[f64; 3]>,
    report: String,
}

impl Meter {
    /// Starts the clock.
    pub fn new() -> Self {
        let report = String::new();
        Self { started: Instant::now(), results_after: None, measured: 0, times_ms: Vec::new(), report }
    }

    /// Takes in one frame, whose layout took so much time by the clock and of the processor; `whole_s` is the last whole frame, painting included. True once
    /// everything is measured.
    pub fn note(&mut self, (clock, thread): (Duration, Duration), whole_s: Option<f32>, state: &mut State) -> bool {
        let Some(view) = VIEWS.get(self.measured).map(|(view, _)| *view) else { return true };
        if self.results_after.is_none() {
            if state.chosen_season().is_some() && !state.board.working() {
                self.results_after = Some(self.started.elapsed());
            }
            return false;
        }
        if state.view == view {
            let times_s = [clock.as_secs_f64(), thread.as_secs_f64(), f64::from(whole_s.unwrap_or(0.0))];
            self.times_ms.push(times_s.map(|s| 1e3 * s));
        }
        state.view = view;
        drag(state, self.times_ms.len());
        if self.times_ms.len() == FRAMES {
            self.close_view(view, state.document.draft.study.scenarios.len());
        }
        false
    }

    fn close_view(&mut self, view: View, scenarios: usize) {
        let name = VIEWS.iter().find(|(named, _)| *named == view).map_or("", |(_, command)| command.text());
        for (part, what) in WHAT.into_iter().enumerate() {
            let mut sorted: Vec<f64> = self.times_ms.iter().map(|times| times[part]).collect();
            sorted.sort_by(f64::total_cmp);
            let at = |share: f64| sorted.get((share * (sorted.len() - 1) as f64).round() as usize).copied();
            let [half, most, all] = [0.5, 0.99, 1.0].map(|share| at(share).unwrap_or(0.0));
            self.report += &format!(
                "{name}, setpoints of {scenarios} scenarios dragged, {what}: median {half:.1} ms, 99 % below {most:.1} ms, \
                 longest {all:.1} ms\n"
            );
        }
        self.times_ms.clear();
        self.measured += 1;
    }

    /// What was measured, in sentences.
    pub fn report(&self) -> String {
        let after = self.results_after.unwrap_or_default().as_secs_f64();
        format!("all results {after:.2} s after start\n{}", self.report)
    }
}

/// Moves all setpoints as a drag does in one frame.
fn drag(state: &mut State, frame: usize) {
    let setpoint_c = 6.0 + 0.01 * (frame % 200) as f64;
    for scenario in &mut state.document.draft.study.scenarios {
        scenario.heater.setpoint_night_c = Some(setpoint_c);
    }
    state.document.revision += 1;
}
