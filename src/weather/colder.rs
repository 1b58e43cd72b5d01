//! Weather taken colder than it was.
//!
//! Outdoor air, dew point and sky are lowered together, so that clouds and damp stay as they were; wind and sun stay too.
//! A shift of the whole year lowers the deep ground with it, a snap of days does not reach it.

use super::climate::Climate;
use super::outdoor::OutdoorFigures;
use crate::units::HOURS_PER_DAY;

/// Hours ‡ over which a snap comes, and goes.
const RAMP_H: usize = 12;

/// Cold on top of a year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ColderBy {
    /// Every hour, K; negative is milder.
    pub shift_k: f64,
    /// Hours of the snap, K.
    pub snap_depth_k: f64,
    /// How long the snap lasts, days.
    pub snap_days: usize,
    /// Month and day on which it begins.
    pub snap_from: (u32, u32),
}

impl Climate {
    /// The same year, colder. A snap on a day that the year lacks is left out.
    #[must_use]
    pub fn colder(mut self, by: &ColderBy) -> Self {
        for hour in &mut self.hours {
            hour.warm_by(-by.shift_k);
        }
        for ground_c in &mut self.deep_ground_c {
            *ground_c -= by.shift_k;
        }
        self.deep_ground_min_c -= by.shift_k;
        self.snap(by);
        let outdoor_c: Vec<f64> = self.hours.iter().map(|h| h.outdoor_c).collect();
        self.outdoor = OutdoorFigures::of(&outdoor_c);
        self
    }

    fn snap(&mut self, by: &ColderBy) {
        let hours = self.hours.len();
        let Some(start) = self.hours.iter().position(|h| (h.month, h.day) == by.snap_from) else { return };
        let length = by.snap_days * HOURS_PER_DAY;
        for step in 0..(length + 2 * RAMP_H).min(hours) {
            let to_edge = (step + 1).min(length + 2 * RAMP_H - step);
            let share = (to_edge as f64 / (RAMP_H + 1) as f64).min(1.0);
            if let Some(hour) = self.hours.get_mut((start + hours + step - RAMP_H) % hours) {
                hour.warm_by(-share * by.snap_depth_k);
            }
        }
    }
}
