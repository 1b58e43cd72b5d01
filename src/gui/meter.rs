//! Measures the window at work: time to the first results, and what each frame costs while setpoints are dragged.

use super::state::State;
use std::time::{Duration, Instant};

/// Frames of each phase.
const FRAMES: usize = 400;

/// What is done in a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Phase {
    /// Waiting for the first results.
    Opening,
    /// The first scenario's setpoint is dragged.
    OneScenario,
    /// All scenarios' setpoints are dragged.
    AllScenarios,
    /// The figures are printed.
    Over,
}

/// The frame counter.
pub struct Meter {
    started: Instant,
    results_after: Option<Duration>,
    phase: Phase,
    /// Frame times of layout alone, and of all the processor does for the frame, ms.
    times_ms: Vec<[f64; 2]>,
    report: String,
}

impl Meter {
    /// Starts the clock.
    pub fn new() -> Self {
        let report = String::new();
        Self { started: Instant::now(), results_after: None, phase: Phase::Opening, times_ms: Vec::new(), report }
    }

    /// Takes in one frame, whose layout took `layout`; `whole_s` is the last whole frame, painting included. True once
    /// everything is measured.
    pub fn note(&mut self, layout: Duration, whole_s: Option<f32>, state: &mut State) -> bool {
        match self.phase {
            Phase::Opening => {
                if state.chosen_season().is_some() && !state.board.working() {
                    self.results_after = Some(self.started.elapsed());
                    self.phase = Phase::OneScenario;
                }
                return false;
            }
            Phase::Over => return true,
            Phase::OneScenario | Phase::AllScenarios => {}
        }
        self.times_ms.push([layout.as_secs_f64() * 1e3, f64::from(whole_s.unwrap_or(0.0)) * 1e3]);
        drag(state, self.times_ms.len(), self.phase == Phase::AllScenarios);
        if self.times_ms.len() == FRAMES {
            self.close_phase(state.document.draft.study.scenarios.len());
        }
        self.phase == Phase::Over
    }

    fn close_phase(&mut self, scenarios: usize) {
        let (dragged, next) = match self.phase {
            Phase::OneScenario => (1, Phase::AllScenarios),
            _ => (scenarios, Phase::Over),
        };
        for (part, name) in ["layout", "whole frame with painting"].into_iter().enumerate() {
            let mut sorted: Vec<f64> = self.times_ms.iter().map(|times| times[part]).collect();
            sorted.sort_by(f64::total_cmp);
            let at = |share: f64| sorted.get((share * (sorted.len() - 1) as f64).round() as usize).copied();
            let [half, most, all] = [0.5, 0.99, 1.0].map(|share| at(share).unwrap_or(0.0));
            self.report += &format!(
                "{dragged} of {scenarios} setpoints dragged, {name}: median {half:.1} ms, 99 % below {most:.1} ms, \
                 longest {all:.1} ms\n"
            );
        }
        self.times_ms.clear();
        self.phase = next;
    }

    /// What was measured, in sentences.
    pub fn report(&self) -> String {
        let after = self.results_after.unwrap_or_default().as_secs_f64();
        format!("all results {after:.2} s after start\n{}", self.report)
    }
}

/// Moves setpoints as a drag does in one frame.
fn drag(state: &mut State, frame: usize, all: bool) {
    let setpoint_c = 6.0 + 0.01 * (frame % 200) as f64;
    let scenarios = &mut state.document.draft.study.scenarios;
    let dragged = if all { scenarios.len() } else { 1 };
    for scenario in scenarios.iter_mut().take(dragged) {
        scenario.heater.setpoint_night_c = Some(setpoint_c);
    }
    state.document.revision += 1;
}
