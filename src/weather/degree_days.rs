//! Degree-days of days whose lowest and highest temperature alone are known, and of months whose mean alone is known.

/// Slope of Hitchin's formula, 1/K (from memory; against the UK standard year, see `tests/proof/degree_days.rs`).
const HITCHIN_PER_K: f64 = 0.71;

/// What a day adds to the two sums, K·d. Neither is negative.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DegreeDays {
    /// Below the base.
    pub heating_k_d: f64,
    /// Above the base.
    pub cooling_k_d: f64,
}

/// The lowest and highest temperature of a day, as a minimum and maximum thermometer shows them.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DayRange {
    /// °C.
    pub min_c: f64,
    /// °C, not below the lowest.
    pub max_c: f64,
}

impl DayRange {
    /// Of the temperatures of a day; `None` of none.
    #[must_use]
    pub fn of(temperatures_c: &[f64]) -> Option<Self> {
        let min_c = temperatures_c.iter().copied().reduce(f64::min)?;
        let max_c = temperatures_c.iter().copied().reduce(f64::max)?;
        Some(Self { min_c, max_c })
    }

    /// Middle of the day's range, °C: the weather services' daily mean.
    #[must_use]
    pub fn middle_c(self) -> f64 {
        f64::midpoint(self.min_c, self.max_c)
    }

    /// Degree-days by the middle of the range (US weather services). A day that crosses the base counts on one side only.
    #[must_use]
    pub fn by_middle(self, base_c: f64) -> DegreeDays {
        let below_k = base_c - self.middle_c();
        DegreeDays { heating_k_d: below_k.max(0.0), cooling_k_d: (-below_k).max(0.0) }
    }

    /// Degree-days by the four cases of the British Meteorological Office, in which a day that crosses the base counts on
    /// both sides. Heating less cooling is the base less the middle in every case.
    ///
    /// # References
    /// Met Éireann, degree-day page; Degree Days Direct, calculation page: the same table.
    #[must_use]
    pub fn by_four_cases(self, base_c: f64) -> DegreeDays {
        let (below_k, above_k) = (base_c - self.min_c, self.max_c - base_c);
        if below_k <= 0.0 || above_k <= 0.0 {
            return self.by_middle(base_c);
        }
        if self.middle_c() > base_c {
            DegreeDays { heating_k_d: below_k / 4.0, cooling_k_d: above_k / 2.0 - below_k / 4.0 }
        } else {
            DegreeDays { heating_k_d: below_k / 2.0 - above_k / 4.0, cooling_k_d: above_k / 4.0 }
        }
    }
}

/// Heating degree-days of a month from its mean temperature, K·d: `N (b − T)/(1 − exp(−k(b − T)))`, N/k at the base.
///
/// Within 2 % of the British standard year from October to March, within 5 % at a base of 10 °C; poor in the warm half of
/// the year. `days` is the length of the month.
///
/// # References
/// Form and k = 0.71 after Hitchin (from memory).
#[must_use]
pub fn hitchin_k_d(days: f64, mean_c: f64, base_c: f64) -> f64 {
    let steepness = HITCHIN_PER_K * (base_c - mean_c);
    // x/(1 − e⁻ˣ) is 1 + x/2 near zero, where the quotient would lose its digits.
    let ratio = if steepness.abs() < 1e-6 { 1.0 + steepness / 2.0 } else { steepness / -(-steepness).exp_m1() };
    days * ratio / HITCHIN_PER_K
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Stated by Met Éireann for all four cases; exact but for rounding.
    #[test]
    fn heating_less_cooling_is_base_less_middle() {
        for k in 0..400 {
            let range = DayRange { min_c: f64::from(k % 20), max_c: f64::from(k % 20 + k / 20) };
            let DegreeDays { heating_k_d, cooling_k_d } = range.by_four_cases(15.5);
            assert!((heating_k_d - cooling_k_d - (15.5 - range.middle_c())).abs() < 1e-12, "{range:?}");
            assert!(heating_k_d >= 0.0 && cooling_k_d >= 0.0, "{range:?}");
        }
    }

    #[test]
    fn a_month_at_the_base_is_the_limit_of_months_beside_it() {
        let [below, at, above] = [-1e-5, 0.0, 1e-5].map(|step| hitchin_k_d(30.0, 15.5 + step, 15.5));
        assert!(above < at && at < below && below - above < 1e-3, "{below} {at} {above}");
    }
}
