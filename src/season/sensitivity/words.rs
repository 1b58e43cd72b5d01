//! How sure a season's money is, in round figures.

use super::{Sensitivity, WEATHER};
use crate::format::{number, with_currency};

impl Sensitivity {
    /// The cost and the ends of its band in two figures, as "310", "240" and "390"; none without a price, and before the
    /// weather is among the doubts, and where nothing moves the cost.
    #[must_use]
    pub fn likely(&self) -> Option<Likely> {
        let (cost, [low, high]) = self.as_it_is.cost.zip(self.cost_band)?;
        let step = 10_f64.powf(high.max(0.1).log10().floor() - 1.0);
        let round = |amount: f64| (amount / step).round() * step;
        let decimals = (-step.log10()).ceil().max(0.0) as usize;
        let weathered = self.effects.iter().any(|effect| effect.name == WEATHER);
        // A house without a heater costs nothing, whatever is in doubt.
        let moved = high > low;
        (weathered && moved).then(|| {
            let [about, low, high] = [cost, low, high].map(|amount| number(round(amount), decimals));
            Likely { about, low, high }
        })
    }

    /// The doubt that moves the money most, but the weather.
    #[must_use]
    pub fn largest_of_the_house(&self) -> Option<&'static str> {
        self.effects.iter().map(|effect| effect.name).find(|name| *name != WEATHER)
    }
}

/// A cost and its band in round figures, without the currency.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Likely {
    /// The season as described.
    pub about: String,
    /// Lower end.
    pub low: String,
    /// Upper end.
    pub high: String,
}

impl Likely {
    /// "likely $240 to $390".
    #[must_use]
    pub fn band(&self, currency: &str) -> String {
        format!("likely {} to {}", with_currency(&self.low, currency), with_currency(&self.high, currency))
    }

    /// "About $310, likely $240 to $390".
    #[must_use]
    pub fn text(&self, currency: &str) -> String {
        format!("About {}, {}", with_currency(&self.about, currency), self.band(currency))
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Effect, Outcome};
    use super::*;

    fn likely(cost: f64, low: f64, high: f64) -> Option<String> {
        let outcome = |cost| Outcome { cost: Some(cost), crop_air_min_c: 5.0 };
        let weather = Effect {
            name: WEATHER,
            input: "site.weather",
            range: String::new(),
            reason: "",
            less: outcome(low),
            more: outcome(high),
        };
        let found = Sensitivity { as_it_is: outcome(cost), effects: vec![weather], cost_band: Some([low, high]) };
        found.likely().map(|likely| likely.text("$"))
    }

    #[test]
    fn a_band_is_told_in_two_figures() {
        assert_eq!(likely(312.4, 238.0, 392.0).as_deref(), Some("About $310, likely $240 to $390"));
        assert_eq!(
            likely(1648.0, 1310.0, 2049.0).as_deref(),
            Some("About $1\u{202f}600, likely $1\u{202f}300 to $2\u{202f}000")
        );
        assert_eq!(likely(4.26, 3.11, 5.68).as_deref(), Some("About $4.3, likely $3.1 to $5.7"));
        assert_eq!(likely(0.0, 0.0, 0.0), None, "nothing is no band");
    }

    #[test]
    fn without_the_weather_nothing_is_said() {
        let outcome = Outcome { cost: Some(10.0), crop_air_min_c: 5.0 };
        assert_eq!(Sensitivity { as_it_is: outcome, effects: Vec::new(), cost_band: Some([9.0, 11.0]) }.likely(), None);
    }
}
