//! How long cold and warm days last, and how much whole winters differ: a chain of standardised daily deviations.
//!
//! Three independent parts: weather that passes within days (autoregressive of second order), spells of some weeks (of
//! first order), and one shift of the whole winter. Weather alone would make seasons differ half as much as they do.
//!
//! # References
//! Constants fitted to the autocorrelations of daily mid-range temperature of Clemson SC, 1930 to 2020 (NOAA, Global
//! Historical Climatology Network, daily) at 1, 2, about 10, about 20 and 60 to 150 days; `tests/winters/fit.rs` repeats
//! the fit and holds the constants to it. That other places have the same persistence is a modelling choice.

use rand_pcg::Pcg64;
use rand_pcg::rand_core::{Rng, SeedableRng};
use std::f64::consts::TAU;

/// Weight of yesterday in today's passing weather.
pub const FAST_FIRST: f64 = 0.755;
/// Weight of the day before yesterday.
pub const FAST_SECOND: f64 = -0.154;
/// Weight of yesterday in today's spell: half of a spell is left after eleven days.
pub const SLOW: f64 = 0.937;
/// Share of spells in the variance of a day.
pub const SLOW_SHARE: f64 = 0.143;
/// Share of the winter's shift in the variance of a day.
pub const WINTER_SHARE: f64 = 0.024;
/// Days that the chain runs before it is used; a spell has died away by then.
const RUN_IN_DAYS: usize = 120;

/// Deviations of `days` days in standard deviations, of mean 0 and variance 1 over many winters. They depend on seed and
/// number of the winter alone; the generator is PCG XSL RR 128/64 (O'Neill 2014), the same on every machine.
#[must_use]
pub fn standard_deviations(seed: u32, winter: u32, days: usize) -> Vec<f64> {
    let mut normal = Normal::new(u64::from(seed) << 32 | u64::from(winter));
    let fast_share = 1.0 - SLOW_SHARE - WINTER_SHARE;
    let fast_step = (fast_share * fast_innovation()).sqrt();
    let slow_step = (SLOW_SHARE * (1.0 - SLOW * SLOW)).sqrt();
    let shift = WINTER_SHARE.sqrt() * normal.draw();
    let (mut fast, mut fast_before, mut slow) = (0.0, 0.0, SLOW_SHARE.sqrt() * normal.draw());
    let mut chain = Vec::with_capacity(days);
    for k in 0..RUN_IN_DAYS + days {
        (fast, fast_before) = (FAST_FIRST * fast + FAST_SECOND * fast_before + fast_step * normal.draw(), fast);
        slow = SLOW * slow + slow_step * normal.draw();
        if k >= RUN_IN_DAYS {
            chain.push(fast + slow + shift);
        }
    }
    chain
}

/// Variance of what each day adds to passing weather of variance 1 (Yule and Walker).
fn fast_innovation() -> f64 {
    (1.0 + FAST_SECOND) * ((1.0 - FAST_SECOND).powi(2) - FAST_FIRST.powi(2)) / (1.0 - FAST_SECOND)
}

/// Normal deviates by Box and Muller (1958), two from each pair of uniform ones.
struct Normal {
    uniform: Pcg64,
    spare: Option<f64>,
}

impl Normal {
    fn new(seed: u64) -> Self {
        Self { uniform: Pcg64::seed_from_u64(seed), spare: None }
    }

    fn draw(&mut self) -> f64 {
        if let Some(spare) = self.spare.take() {
            return spare;
        }
        let radius = (-2.0 * self.above_zero().ln()).sqrt();
        let (sin, cos) = (TAU * self.above_zero()).sin_cos();
        self.spare = Some(radius * sin);
        radius * cos
    }

    /// Above 0 and at most 1, in steps of 2⁻⁵³.
    fn above_zero(&mut self) -> f64 {
        ((self.uniform.next_u64() >> 11) + 1) as f64 / (1_u64 << 53) as f64
    }
}
