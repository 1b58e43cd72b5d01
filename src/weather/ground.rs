//! Temperature of the undisturbed ground one metre down, after Kusuda and Achenbach (1965).

use std::f64::consts::{PI, TAU};

/// Depth of the deep ground, m.
pub const DEPTH_M: f64 = 1.0;
/// Thermal diffusivity of soil, m²/s.
pub const DIFFUSIVITY_M2_PER_S: f64 = 7.0e-7;
const DAYS_PER_YEAR: f64 = 365.0;
const SECONDS_PER_YEAR: f64 = DAYS_PER_YEAR * 86_400.0;
/// Middle of each month, days from 1 January 0 h of a common year.
const MID_MONTH_D: [f64; 12] = [15.5, 45.0, 74.5, 105.0, 135.5, 166.0, 196.5, 227.5, 258.0, 288.5, 319.0, 349.5];

/// Yearly swing of the surface: mean and first harmonic of the monthly mean air temperatures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroundSwing {
    /// Mean of the twelve months, °C.
    pub mean_c: f64,
    /// Amplitude of the first harmonic, K.
    pub amplitude_k: f64,
    /// Day from 1 January 0 h on which the surface is coldest.
    pub coldest_day: f64,
}

impl GroundSwing {
    /// First Fourier harmonic of twelve monthly means placed at mid-month.
    #[must_use]
    pub fn from_monthly_means(means_c: &[f64; 12]) -> Self {
        let mean_c = means_c.iter().sum::<f64>() / 12.0;
        let (mut cos_part, mut sin_part) = (0.0, 0.0);
        for (month_c, day) in means_c.iter().zip(MID_MONTH_D) {
            let (sin, cos) = (TAU * day / DAYS_PER_YEAR).sin_cos();
            cos_part += (month_c - mean_c) * cos / 6.0;
            sin_part += (month_c - mean_c) * sin / 6.0;
        }
        // T = mean − amplitude · cos(ω(t − coldest)), so both parts change sign.
        let coldest = (-sin_part).atan2(-cos_part).rem_euclid(TAU);
        Self { mean_c, amplitude_k: cos_part.hypot(sin_part), coldest_day: coldest * DAYS_PER_YEAR / TAU }
    }

    /// Ground at [`DEPTH_M`] on a day counted from 1 January 0 h, °C.
    #[must_use]
    pub fn deep_c(&self, day: f64) -> f64 {
        let damping = DEPTH_M * (PI / (DIFFUSIVITY_M2_PER_S * SECONDS_PER_YEAR)).sqrt();
        let phase = TAU * (day - self.coldest_day) / DAYS_PER_YEAR;
        self.mean_c - self.amplitude_k * (-damping).exp() * (phase - damping).cos()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A pure cosine comes back: the Fourier sum over unequal months is within 1 % and a day.
    #[test]
    fn first_harmonic_of_a_cosine() {
        let means = MID_MONTH_D.map(|d| 8.0 - 12.0 * (TAU * (d - 20.0) / 365.0).cos());
        let swing = GroundSwing::from_monthly_means(&means);
        assert!((swing.mean_c - 8.0).abs() < 0.1, "{swing:?}");
        assert!((swing.amplitude_k - 12.0).abs() < 0.12, "{swing:?}");
        assert!((swing.coldest_day - 20.0).abs() < 1.0, "{swing:?}");
    }

    /// Kusuda and Achenbach (1965) with a damping depth √(αT/π) = 2.651 m by hand: at 1 m the amplitude is
    /// exp(−0.3772) = 0.6858 of the surface's and comes 0.3772/2π of a year = 21.9 days later.
    #[test]
    fn damping_and_delay_at_one_metre() {
        let swing = GroundSwing { mean_c: 10.0, amplitude_k: 10.0, coldest_day: 20.0 };
        assert!((swing.deep_c(20.0 + 21.9) - (10.0 - 6.858)).abs() < 1e-3);
        assert!((swing.deep_c(20.0 + 21.9 + 182.5) - (10.0 + 6.858)).abs() < 1e-3);
    }
}
