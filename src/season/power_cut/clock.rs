//! When a limit is reached.

use crate::physics::network::{MAX_NODES, NodeValues};
use crate::physics::step::State;
use crate::season::result::Hold;
use crate::season::summary::SETPOINT_TOLERANCE_K;
use crate::units::SECONDS_PER_HOUR;

/// Watches one temperature fall through its limits.
pub(super) struct Clock {
    passed_s: f64,
    now_c: f64,
    limits: [(f64, Option<f64>); 2],
}

impl Clock {
    pub(super) fn new(start_c: f64, crop_limit_c: f64) -> Self {
        let limit = |limit_c: f64| (limit_c, (start_c < limit_c).then_some(0.0));
        Self { passed_s: 0.0, now_c: start_c, limits: [limit(crop_limit_c), limit(0.0)] }
    }

    pub(super) fn advance(&mut self, dt_s: f64, t_c: f64) {
        for (limit_c, reached) in &mut self.limits {
            if reached.is_none() && t_c < *limit_c {
                let share = (self.now_c - *limit_c) / (self.now_c - t_c);
                *reached = Some((self.passed_s + share * dt_s) / SECONDS_PER_HOUR);
            }
        }
        self.passed_s += dt_s;
        self.now_c = t_c;
    }

    pub(super) fn holds(&self) -> [Hold; 2] {
        self.limits.map(|(_, reached)| reached.map_or(Hold::Beyond, Hold::Hours))
    }
}

/// Watches all water for its first ice.
pub(super) struct FirstIce {
    passed_s: f64,
    /// Heat above freezing of each node with water, J; not a number for others.
    left_j: NodeValues,
    reached_h: Option<f64>,
}

impl FirstIce {
    /// `heat_j` gives a node's heat above liquid water at 0 °C, none for a node without water.
    pub(super) fn new(state: &State, heat_j: impl Fn(&State, usize) -> Option<f64>) -> Self {
        let mut ice = Self { passed_s: 0.0, left_j: [f64::NAN; MAX_NODES], reached_h: None };
        for node in 0..MAX_NODES {
            if let Some(left_j) = heat_j(state, node) {
                ice.left_j[node] = left_j;
                ice.reached_h = ice.reached_h.or((state.ice_share[node] > 0.0).then_some(0.0));
            }
        }
        ice
    }

    pub(super) fn advance(&mut self, dt_s: f64, state: &State, heat_j: impl Fn(&State, usize) -> Option<f64>) {
        let mut first_share = f64::INFINITY;
        for node in 0..MAX_NODES {
            let Some(now_j) = heat_j(state, node) else { continue };
            if now_j < 0.0 {
                first_share = first_share.min(self.left_j[node] / (self.left_j[node] - now_j));
            }
            self.left_j[node] = now_j;
        }
        if self.reached_h.is_none() && first_share.is_finite() {
            self.reached_h = Some((self.passed_s + first_share.max(0.0) * dt_s) / SECONDS_PER_HOUR);
        }
        self.passed_s += dt_s;
    }

    pub(super) fn holds(&self) -> Hold {
        if self.left_j.iter().all(|j| j.is_nan()) {
            Hold::NotApplicable
        } else {
            self.reached_h.map_or(Hold::Beyond, Hold::Hours)
        }
    }
}

/// Watches what a heater senses come back to its setpoint.
pub(super) struct Recovery {
    passed_s: f64,
    before_c: f64,
    reached_h: Option<f64>,
}

impl Recovery {
    pub(super) fn new(sensed_c: f64) -> Self {
        Self { passed_s: 0.0, before_c: sensed_c, reached_h: None }
    }

    pub(super) fn is_done(&self) -> bool {
        self.reached_h.is_some()
    }

    /// `setpoint_c` of the moment; none while off.
    pub(super) fn advance(&mut self, dt_s: f64, sensed_c: f64, setpoint_c: Option<f64>) {
        if let Some(setpoint_c) = setpoint_c
            && self.reached_h.is_none()
        {
            let enough_c = setpoint_c - SETPOINT_TOLERANCE_K;
            if self.before_c >= enough_c {
                self.reached_h = Some(self.passed_s / SECONDS_PER_HOUR);
            } else if sensed_c >= enough_c {
                let share = (enough_c - self.before_c) / (sensed_c - self.before_c);
                self.reached_h = Some((self.passed_s + share * dt_s) / SECONDS_PER_HOUR);
            }
        }
        self.passed_s += dt_s;
        self.before_c = sensed_c;
    }

    pub(super) fn holds(&self) -> Hold {
        self.reached_h.map_or(Hold::Beyond, Hold::Hours)
    }
}
