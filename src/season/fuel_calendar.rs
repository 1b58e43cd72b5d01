//! When each cylinder, tank filling or pallet of the first heater's fuel runs out, and how many to have by when.

use super::money::{Purchase, heat_per_energy};
use super::result::{HourStamp, HourlySeries};
use crate::model::Heater;
use crate::weather::Climate;
use serde::Serialize;

/// The first heater's fuel through the season, in the unit that it is bought in.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FuelCalendar {
    /// Unit that it is bought in.
    pub unit: String,
    /// End of the hour in which each unit runs out, the first units of the season first.
    pub runs_out: Vec<HourStamp>,
    /// Use by months, in the order of the season.
    pub months: Vec<MonthOfFuel>,
    /// Hours that one unit lasts at rated output; none for a heater without output.
    pub hours_at_full_output: Option<f64>,
    /// Units in the 14 days in a row that take most.
    pub hardest_fortnight: f64,
}

/// A month of the season.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct MonthOfFuel {
    /// 1 to 12.
    pub month: u32,
    /// Units burnt in it.
    pub used: f64,
    /// Whole units that must have come by its end.
    pub needed_by_end: f64,
}

/// Most units that are listed one by one; a fuel bought by the litre has no calendar of litres.
const LISTED: usize = 120;
/// Hours of a fortnight.
const FORTNIGHT_H: usize = 14 * 24;
/// What is less than this share of a unit is rounding, not use.
const NOTHING: f64 = 1e-9;

impl FuelCalendar {
    /// From a season's hours; none for a fuel that comes by wire or pipe.
    #[must_use]
    pub fn of(heater: &Heater, purchase: &Purchase, series: &HourlySeries, climate: &Climate) -> Option<Self> {
        if purchase.piped {
            return None;
        }
        let used: Vec<f64> = series
            .heater_w
            .iter()
            .zip(&series.record)
            .map(|(w, record)| {
                let outdoor_c = climate.hours[*record].outdoor_c;
                w / 1000.0 / heat_per_energy(heater, purchase.net_per_gross, outdoor_c) / purchase.kwh_per_unit
            })
            .collect();
        let full = purchase.kwh_per_unit * heater.gross_efficiency(purchase.net_per_gross) * 1000.0 / heater.rated_w;
        Some(Self {
            unit: purchase.unit.clone(),
            runs_out: runs_out(&used, series, climate),
            months: months(&used, series, climate),
            hours_at_full_output: (heater.rated_w > 0.0).then_some(full),
            hardest_fortnight: hardest(&used),
        })
    }
}

fn runs_out(used: &[f64], series: &HourlySeries, climate: &Climate) -> Vec<HourStamp> {
    let (mut sum, mut out) = (0.0, Vec::new());
    for (units, record) in used.iter().zip(&series.record) {
        sum += units;
        while sum + NOTHING >= (out.len() + 1) as f64 && out.len() < LISTED {
            out.push(HourStamp::of(&climate.hours[*record]));
        }
    }
    out
}

fn months(used: &[f64], series: &HourlySeries, climate: &Climate) -> Vec<MonthOfFuel> {
    let (mut sum, mut months): (f64, Vec<MonthOfFuel>) = (0.0, Vec::new());
    for (units, record) in used.iter().zip(&series.record) {
        let month = climate.hours[*record].month;
        if months.last().is_none_or(|last| last.month != month) {
            months.push(MonthOfFuel { month, used: 0.0, needed_by_end: 0.0 });
        }
        sum += units;
        if let Some(last) = months.last_mut() {
            last.used += units;
            last.needed_by_end = (sum - NOTHING).max(0.0).ceil();
        }
    }
    months
}

fn hardest(used: &[f64]) -> f64 {
    let mut window: f64 = used.iter().take(FORTNIGHT_H).sum();
    let mut most = window;
    for (gone, come) in used.iter().zip(used.iter().skip(FORTNIGHT_H)) {
        window += come - gone;
        most = most.max(window);
    }
    most
}
