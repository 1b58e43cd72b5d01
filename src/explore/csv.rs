//! Sweeps and measures as plain tables for a spreadsheet.

use super::best_buy::{BestBuy, Offer};
use super::measures::Combination;
use super::sweep::{Axis, Sweep, SweepPoint};
use crate::figures::{Figures, plain};
use crate::model::Study;
use crate::season::lean::SeasonFigures;
use crate::units::{Quantity, UnitSystem};

impl Sweep {
    /// One line per scenario and value; a point that was left out says why.
    #[must_use]
    pub fn figures(&self, study: &Study, axes: &[Axis], units: UnitSystem) -> Figures {
        let mut head = vec!["scenario".to_owned()];
        head.extend(axes.iter().map(|axis| titled(&axis.input.path, axis.input.quantity, units)));
        head.extend(season_head(&study.prices.currency, units));
        head.push("left out".to_owned());
        let line = |point: &SweepPoint| {
            let mut line = vec![study.scenarios.get(point.scenario).map_or(String::new(), |s| s.name.clone())];
            let values = axes.iter().zip(&point.values);
            line.extend(values.map(|(axis, value)| axis.input.quantity.unit(units).shown(*value).to_string()));
            line.extend(season_cells(point.season.as_ref().ok(), units));
            line.push(point.season.as_ref().err().map_or(String::new(), |refusal| refusal.text(units)));
            line
        };
        Figures { head, rows: self.points.iter().map(line).collect() }
    }
}

fn titled(name: &str, quantity: Quantity, units: UnitSystem) -> String {
    match quantity.unit(units).symbol {
        "" => name.to_owned(),
        symbol => format!("{name} [{symbol}]"),
    }
}

/// Titles of a season's figures.
pub(super) fn season_head(currency: &str, units: UnitSystem) -> Vec<String> {
    [
        &format!("cost [{currency}]"),
        "heat [kWh]",
        "fuel",
        "fuel quantity",
        "fuel unit",
        "standby fuel quantity",
        "standby fuel unit",
        &titled("lowest crop air", Quantity::Temperature, units),
        "hours below crop limit",
        "hours below setpoint",
        "season start",
    ]
    .map(str::to_owned)
    .to_vec()
}

/// The figures of a season, as many cells as [`season_head`] has titles.
pub(super) fn season_cells(season: Option<&SeasonFigures>, units: UnitSystem) -> Vec<String> {
    let Some(s) = season else { return vec![String::new(); season_head("", units).len()] };
    vec![
        s.cost.map_or(String::new(), |cost| plain(cost, 2)),
        plain(s.heat_delivered_kwh, 1),
        s.fuel_name.clone(),
        plain(s.fuel_quantity, 3),
        s.fuel_unit.clone(),
        plain(s.standby_fuel_quantity, 3),
        s.standby_fuel_unit.clone(),
        plain(Quantity::Temperature.unit(units).shown(s.crop_zone_min_c), 2),
        s.hours_below_crop_limit.to_string(),
        s.hours_below_setpoint.to_string(),
        s.season_start.to_string(),
    ]
}

impl BestBuy<'_> {
    /// One line per combination: those that hold the crop by rank, those beyond the budget, those that do not hold it,
    /// those without a result.
    #[must_use]
    pub fn figures(&self, study: &Study, units: UnitSystem) -> Figures {
        let currency = &study.prices.currency;
        let mut head = vec!["rank".to_owned(), "buys".to_owned(), "holds the crop".to_owned()];
        head.extend(["to buy", "to buy in all winters", "total"].map(|title| format!("{title} [{currency}]")));
        head.extend(season_head(currency, units));
        head.push("left out".to_owned());
        let offer = |(offer, rank): (&Offer, String)| {
            let holds = if offer.holds() { "yes" } else { "no" };
            let mut line = vec![rank, offer.combination.names(study), holds.to_owned()];
            line.extend([offer.buying, offer.buying_over, offer.total].map(|amount| plain(amount, 2)));
            line.extend(season_cells(Some(offer.season), units));
            line.push(String::new());
            line
        };
        let left_out = |combination: &&Combination| {
            let mut line = vec![String::new(), combination.names(study)];
            line.resize(head.len() - 1, String::new());
            line.push(combination.season.as_ref().err().map_or(String::new(), |refusal| refusal.text(units)));
            line
        };
        let ranked = self.ranked.iter().enumerate().map(|(at, offer)| (offer, (at + 1).to_string()));
        let unranked = self.beyond_budget.iter().chain(&self.short).map(|offer| (offer, String::new()));
        let mut rows: Vec<Vec<String>> = ranked.chain(unranked).map(offer).collect();
        rows.extend(self.left_out.iter().map(left_out));
        Figures { head, rows }
    }
}
