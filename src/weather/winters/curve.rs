//! A smooth curve through the days of a year.

use std::f64::consts::TAU;

/// Mean and first harmonics of a year of days.
#[derive(Debug, Clone, PartialEq)]
pub struct YearCurve {
    mean: f64,
    /// Cosine and sine part of each harmonic.
    parts: Vec<(f64, f64)>,
    days: usize,
}

impl YearCurve {
    /// Mean and `harmonics` first harmonics of one value for each day of the year, which are least squares too since
    /// the days lie evenly.
    #[must_use]
    pub fn through(days: &[f64], harmonics: u32) -> Self {
        let count = days.len().max(1) as f64;
        let part = |harmonic: u32| {
            days.iter().enumerate().fold((0.0, 0.0), |(cos_part, sin_part), (day, value)| {
                let (sin, cos) = angle(harmonic, day, days.len()).sin_cos();
                (cos_part + 2.0 / count * value * cos, sin_part + 2.0 / count * value * sin)
            })
        };
        Self { mean: days.iter().sum::<f64>() / count, parts: (1..=harmonics).map(part).collect(), days: days.len() }
    }

    /// Mean over the year.
    #[must_use]
    pub fn mean(&self) -> f64 {
        self.mean
    }

    /// The curve in the middle of each day.
    #[must_use]
    pub fn values(&self) -> Vec<f64> {
        let at = |day: usize| {
            let swing = (1..).zip(&self.parts).map(|(harmonic, (cos_part, sin_part))| {
                let (sin, cos) = angle(harmonic, day, self.days).sin_cos();
                cos_part * cos + sin_part * sin
            });
            self.mean + swing.sum::<f64>()
        };
        (0..self.days).map(at).collect()
    }
}

fn angle(harmonic: u32, day: usize, days: usize) -> f64 {
    f64::from(harmonic) * TAU * (day as f64 + 0.5) / days as f64
}
