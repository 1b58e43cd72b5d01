//! Which measures to buy: those combinations that hold the crop, ranked by what they cost in all.
//!
//! The total is what is bought, bought again whenever its life is over, and the running cost of every winter, without
//! interest, as the buying list of a scenario counts it. Every winter is taken to be that of the weather year.

use super::measures::Combination;
use crate::season::buying::{BuyingLine, NO_MONEY, Payback};
use crate::season::lean::SeasonFigures;
use std::cmp::Ordering;

/// A combination as money.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer<'a> {
    /// Which measures.
    pub combination: &'a Combination,
    /// Its season.
    pub season: &'a SeasonFigures,
    /// What is bought, once.
    pub buying: f64,
    /// The same over all winters, with what must be bought again.
    pub buying_over: f64,
    /// Running cost of a winter.
    pub running: f64,
    /// Buying and running over all winters.
    pub total: f64,
}

impl<'a> Offer<'a> {
    /// None where the season or its cost is not known.
    fn of(combination: &'a Combination, winters: u32) -> Option<Self> {
        let season = combination.season.as_ref().ok()?;
        let (running, winters) = (season.cost?, f64::from(winters));
        let sum =
            |cost: &dyn Fn(&BuyingLine) -> f64| combination.lines.iter().map(cost).fold(0.0, |sum, cost| sum + cost);
        let buying_over = sum(&|line| line.cost_over(winters));
        let total = buying_over + running * winters;
        Some(Self { combination, season, buying: sum(&BuyingLine::cost), buying_over, running, total })
    }

    /// Whether no hour falls below the crop limit.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.season.hours_below_crop_limit == 0
    }

    /// Cheaper in all first; of equals the one with fewer measures, then as the study lists them.
    fn by_total(&self, other: &Self) -> Ordering {
        self.total.total_cmp(&other.total).then_with(|| self.by_measures(other))
    }

    fn by_measures(&self, other: &Self) -> Ordering {
        let (own, theirs) = (&self.combination.candidates, &other.combination.candidates);
        own.len().cmp(&theirs.len()).then_with(|| own.cmp(theirs))
    }

    /// Less cold first.
    fn by_cold(&self, other: &Self) -> Ordering {
        let hours = self.season.hours_below_crop_limit.cmp(&other.season.hours_below_crop_limit);
        let depth = |of: &Self| of.season.degree_hours_below_crop_limit_kh;
        hours.then(depth(self).total_cmp(&depth(other))).then_with(|| self.by_total(other))
    }
}

/// A step of spending more to run for less.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step<'a> {
    /// What is bought then, in all.
    pub offer: Offer<'a>,
    /// What it costs more to buy than the step before.
    pub extra_buying: f64,
    /// What a winter costs less than with the step before.
    pub saving_per_winter: f64,
    /// Whether the budget reaches.
    pub within_budget: bool,
}

impl Step<'_> {
    /// What each further unit of money saves in a winter; none where it takes no more money.
    #[must_use]
    pub fn saving_per_unit(&self) -> Option<f64> {
        (self.extra_buying > NO_MONEY).then(|| self.saving_per_winter / self.extra_buying)
    }

    /// When the step has paid for itself.
    #[must_use]
    pub fn payback(&self) -> Payback {
        Payback::of(self.extra_buying, self.saving_per_winter)
    }
}

/// The answer.
#[derive(Debug, Clone, PartialEq)]
pub struct BestBuy<'a> {
    /// Winters that are planned for.
    pub winters: u32,
    /// Most that may be spent on buying at once; none is no limit.
    pub budget: Option<f64>,
    /// What holds the crop within the budget, the cheapest in all first.
    pub ranked: Vec<Offer<'a>>,
    /// What does not, within the budget, the least cold first.
    pub short: Vec<Offer<'a>>,
    /// What holds the crop beyond the budget, the cheapest to buy first.
    pub beyond_budget: Vec<Offer<'a>>,
    /// Of all that hold the crop: from the cheapest to buy on, each next one that saves most for what it costs more.
    pub steps: Vec<Step<'a>>,
    /// What could not be computed or has no cost.
    pub left_out: Vec<&'a Combination>,
}

impl<'a> BestBuy<'a> {
    /// Ranks combinations. Runs nothing, so that budget and winters can be moved freely.
    #[must_use]
    pub fn of(combinations: &'a [Combination], budget: Option<f64>, winters: u32) -> Self {
        let (mut ranked, mut short, mut beyond_budget, mut left_out) = (vec![], vec![], vec![], vec![]);
        let affordable = |offer: &Offer| budget.is_none_or(|budget| offer.buying <= budget + NO_MONEY);
        for combination in combinations {
            match Offer::of(combination, winters) {
                None => left_out.push(combination),
                Some(offer) if offer.holds() && affordable(&offer) => ranked.push(offer),
                Some(offer) if offer.holds() => beyond_budget.push(offer),
                Some(offer) if affordable(&offer) => short.push(offer),
                Some(_) => {}
            }
        }
        ranked.sort_by(Offer::by_total);
        short.sort_by(Offer::by_cold);
        beyond_budget.sort_by(|a, b| a.buying.total_cmp(&b.buying).then_with(|| a.by_total(b)));
        let holding: Vec<Offer> = ranked.iter().chain(&beyond_budget).copied().collect();
        let steps = steps(&holding, affordable);
        Self { winters, budget, ranked, short, beyond_budget, steps, left_out }
    }

    /// The cheapest in all that holds the crop.
    #[must_use]
    pub fn best(&self) -> Option<&Offer<'a>> {
        self.ranked.first()
    }

    /// The next after it.
    #[must_use]
    pub fn runner_up(&self) -> Option<&Offer<'a>> {
        self.ranked.get(1)
    }

    /// Where nothing within the budget holds the crop: what comes nearest.
    #[must_use]
    pub fn least_bad(&self) -> Option<&Offer<'a>> {
        if self.ranked.is_empty() { self.short.first() } else { None }
    }
}

/// From the cheapest to buy on, each time to the offer that saves most a winter for what it costs more to buy, so that
/// each further unit of money brings less than the one before.
fn steps<'a>(offers: &[Offer<'a>], affordable: impl Fn(&Offer) -> bool) -> Vec<Step<'a>> {
    let least = |a: &&Offer, b: &&Offer| {
        a.buying.total_cmp(&b.buying).then(a.running.total_cmp(&b.running)).then_with(|| a.by_measures(b))
    };
    let Some(first) = offers.iter().min_by(least) else { return Vec::new() };
    let step = |offer: Offer<'a>, extra_buying, saving_per_winter| {
        let within_budget = affordable(&offer);
        Step { offer, extra_buying, saving_per_winter, within_budget }
    };
    let mut steps = vec![step(*first, first.buying, 0.0)];
    let mut before = *first;
    let slope = |from: &Offer, to: &Offer| (from.running - to.running) / (to.buying - from.buying);
    while let Some(next) = offers
        .iter()
        .filter(|offer| offer.buying > before.buying && before.running - offer.running > NO_MONEY)
        .max_by(|a, b| {
            let equal = || a.buying.total_cmp(&b.buying).then_with(|| b.by_measures(a));
            slope(&before, a).total_cmp(&slope(&before, b)).then_with(equal)
        })
    {
        steps.push(step(*next, next.buying - before.buying, before.running - next.running));
        before = *next;
    }
    steps
}
