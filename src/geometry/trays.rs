//! Whole trays on a bench.

use crate::model::{Bench, TrayKind};

/// Room for rounding, so that a bench exactly as long as its trays holds them, m.
const FIT_M: f64 = 1e-6;

/// Trays that fit a rectangle, all turned the same way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TrayFit {
    /// With their long side along the bench.
    pub along: u32,
    /// With their long side across the bench.
    pub across: u32,
}

impl TrayFit {
    /// Of a bench of this length and width; trays do not stick out.
    #[must_use]
    pub fn of(length_m: f64, width_m: f64, tray: &TrayKind) -> Self {
        Self {
            along: whole(length_m, tray.length_m) * whole(width_m, tray.width_m),
            across: whole(length_m, tray.width_m) * whole(width_m, tray.length_m),
        }
    }

    /// The better of both.
    #[must_use]
    pub fn best(&self) -> u32 {
        self.along.max(self.across)
    }
}

/// Trays on all benches, each turned the better way; none without a bench.
#[must_use]
pub fn trays_on(bench: &Bench, tray: &TrayKind) -> u32 {
    if bench.present { bench.count * TrayFit::of(bench.length_m, bench.width_m, tray).best() } else { 0 }
}

/// How often a side goes into a length. Not above what fits a count; zero for a side of nothing.
fn whole(length_m: f64, side_m: f64) -> u32 {
    if side_m <= 0.0 { 0 } else { ((length_m + FIT_M) / side_m).floor().clamp(0.0, 1e4) as u32 }
}
