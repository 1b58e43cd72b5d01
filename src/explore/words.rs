//! The best buy in sentences.

use super::best_buy::{BestBuy, Offer};
use super::measures::Combination;
use crate::format::{money, number, temperature};
use crate::model::Study;
use crate::units::UnitSystem;

impl Combination {
    /// The names of its measures, or that it has none.
    #[must_use]
    pub fn names(&self, study: &Study) -> String {
        let names: Vec<&str> =
            self.candidates.iter().filter_map(|index| Some(study.candidates.get(*index)?.name.as_str())).collect();
        if names.is_empty() { "nothing".to_owned() } else { names.join(" + ") }
    }
}

impl BestBuy<'_> {
    /// What to buy, and what comes next; or that nothing holds the crop, and what comes nearest.
    #[must_use]
    pub fn verdict(&self, study: &Study, units: UnitSystem) -> Vec<String> {
        let currency = &study.prices.currency;
        let winters = if self.winters == 1 { "one winter".to_owned() } else { format!("{} winters", self.winters) };
        let Some(best) = self.best() else { return self.none_holds(study, units) };
        let mut sentences = vec![format!(
            "Best buy: {}, {} to buy and {} a winter to run, {} in {winters}.",
            best.combination.names(study),
            money(best.buying, currency),
            money(best.running, currency),
            money(best.total, currency)
        )];
        if let Some(next) = self.runner_up() {
            let names = next.combination.names(study);
            sentences.push(format!("Runner-up: {names}, {} dearer.", money(next.total - best.total, currency)));
        }
        sentences
    }

    fn none_holds(&self, study: &Study, units: UnitSystem) -> Vec<String> {
        let within = self.budget.map_or(String::new(), |b| format!(" for {}", money(b, &study.prices.currency)));
        let mut sentences = vec![format!("None of the combinations{within} holds the crop.")];
        if let Some(offer) = self.least_bad() {
            sentences.push(nearest(offer, study, units));
        }
        if let Some(offer) = self.beyond_budget.first() {
            let (names, buying) = (offer.combination.names(study), money(offer.buying, &study.prices.currency));
            sentences.push(format!("The cheapest to buy that does: {names}, {buying}."));
        }
        sentences
    }
}

fn nearest(offer: &Offer, study: &Study, units: UnitSystem) -> String {
    format!(
        "Nearest to it: {}, with {} hours below the crop limit and {} at the lowest.",
        offer.combination.names(study),
        number(offer.season.hours_below_crop_limit as f64, 0),
        temperature(offer.season.crop_zone_min_c, units)
    )
}
