//! Sweeps as plain tables for a spreadsheet.

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
