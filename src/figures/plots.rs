//! What the plots of a season draw: running sums, months, days, and the coldest spell.

use super::{Figures, Named, date, dated, plain};
use crate::season::HourlySeries;
use crate::season::sums;
use crate::units::{Quantity, UnitSystem};
use std::ops::Range;

/// What adds up over the season.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RunningSum<'a> {
    /// Money, in this currency.
    Cost(&'a str),
    /// Heat.
    Heat,
}

impl RunningSum<'_> {
    fn unit(self) -> String {
        match self {
            Self::Cost(currency) => currency.to_owned(),
            Self::Heat => "kWh".to_owned(),
        }
    }

    fn of(self, hours: &HourlySeries) -> Vec<f64> {
        match self {
            Self::Cost(_) => summed(&hours.cost),
            Self::Heat => summed(&hours.heat_kwh()),
        }
    }

    fn of_baseline(self, hours: &HourlySeries) -> Vec<f64> {
        match self {
            Self::Cost(_) => summed(&hours.baseline_cost),
            Self::Heat => summed(&hours.baseline_kwh()),
        }
    }

    /// Without a price there is no cost to write, not a cost of nothing.
    fn is_known(self, named: &Named) -> bool {
        self == Self::Heat || named.run.summary.cost.is_some()
    }
}

fn summed(column: &[f64]) -> Vec<f64> {
    let add = |sum: &mut f64, value: &f64| {
        *sum += value;
        Some(*sum)
    };
    column.iter().scan(0.0, add).collect()
}

const BASELINE: &str = "degree-hour baseline";

/// Running cost or heat at the end of every hour.
#[must_use]
pub fn running(runs: &[Named], baseline: Option<Named>, sum: RunningSum) -> Figures {
    let known: Vec<&Named> = runs.iter().filter(|named| sum.is_known(named)).collect();
    let mut columns: Vec<(String, Vec<f64>)> =
        known.iter().map(|named| (titled(named.name, &sum.unit()), sum.of(&named.run.hours))).collect();
    if let Some(base) = baseline {
        columns.push((titled(BASELINE, &sum.unit()), sum.of_baseline(&base.run.hours)));
    }
    let dates = runs.first().copied().or(baseline);
    hourly(dates, 0..usize::MAX, &columns, 3)
}

/// Heat, degree-hours and baseline of every month.
#[must_use]
pub fn months(runs: &[Named], baseline: Option<Named>, units: UnitSystem) -> Figures {
    let unit = Quantity::TemperatureDifference.unit(units);
    let Some(first) = baseline.or(runs.first().copied()) else { return Figures::default() };
    let base = sums::months(first.run, first.climate);
    let of_each: Vec<_> = runs.iter().map(|named| sums::months(named.run, named.climate)).collect();
    let mut head = vec!["month".to_owned(), format!("degree-hours, {}·h", unit.symbol), format!("{BASELINE}, kWh")];
    head.extend(runs.iter().map(|named| titled(named.name, "kWh")));
    let row = |place: usize| {
        let month = base[place];
        let mut cells =
            vec![month.month.to_string(), plain(unit.shown(month.degree_hours_kh), 0), plain(month.baseline_kwh, 1)];
        cells.extend(of_each.iter().map(|own| plain(own.get(place).map_or(f64::NAN, |m| m.heat_kwh), 1)));
        cells
    };
    Figures { head, rows: (0..base.len()).map(row).collect() }
}

/// Degree-hours and heat of every day; each scenario has degree-hours below a temperature of its own.
#[must_use]
pub fn days(runs: &[Named], units: UnitSystem) -> Figures {
    let unit = Quantity::TemperatureDifference.unit(units);
    let of_each: Vec<_> = runs.iter().map(|named| sums::days(named.run, named.climate)).collect();
    let mut head = dated(false);
    for named in runs {
        head.push(titled(named.name, &format!("degree-hours, {}·h", unit.symbol)));
        head.push(titled(named.name, "heat, kWh"));
    }
    let Some(first) = of_each.first() else { return Figures { head, rows: Vec::new() } };
    let row = |place: usize| {
        let mut cells = date(first[place].at, false);
        for own in &of_each {
            let (degree_hours, heat) =
                own.get(place).map_or((f64::NAN, f64::NAN), |d| (unit.shown(d.degree_hours_kh), d.heat_kwh));
            cells.extend([plain(degree_hours, 1), plain(heat, 2)]);
        }
        cells
    };
    Figures { head, rows: (0..first.len()).map(row).collect() }
}

/// Temperatures and heater output hour by hour through some hours of a season.
#[must_use]
pub fn spell(named: Named, hours: Range<usize>, units: UnitSystem) -> Figures {
    let h = &named.run.hours;
    let unit = Quantity::Temperature.unit(units);
    let setpoint: Vec<f64> = h.setpoint_c.iter().map(|s| s.unwrap_or(f64::NAN)).collect();
    let limit = vec![named.run.summary.crop_limit_c; h.record.len()];
    let traces: [(&str, &[f64]); 7] = [
        ("outdoors", &h.outdoor_c),
        ("house", &h.house_air_c),
        ("inner tent", &h.tent_air_c),
        ("water, house", &h.house_water_c),
        ("water, tent", &h.tent_water_c),
        ("setpoint", &setpoint),
        ("crop limit", &limit),
    ];
    let there = traces.into_iter().filter(|(_, column)| column.iter().any(|t_c| t_c.is_finite()));
    let shown = |(name, column): (&str, &[f64])| {
        (titled(name, unit.symbol), column.iter().map(|t_c| unit.shown(*t_c)).collect())
    };
    let mut columns: Vec<(String, Vec<f64>)> = there.map(shown).collect();
    let heaters = [("heater", &h.heater_w), ("standby heater", &h.standby_w)];
    columns.extend(heaters.map(|(name, watts)| (titled(name, "W"), watts.clone())));
    hourly(Some(named), hours, &columns, 2)
}

pub(super) fn titled(name: &str, unit: &str) -> String {
    format!("{name}, {unit}")
}

/// Columns over the hours of a season that has the dates.
pub(super) fn hourly(
    dates: Option<Named>,
    hours: Range<usize>,
    columns: &[(String, Vec<f64>)],
    decimals: usize,
) -> Figures {
    let mut head = dated(true);
    head.extend(columns.iter().map(|(title, _)| title.clone()));
    let Some(named) = dates else { return Figures { head, rows: Vec::new() } };
    let end = hours.end.min(named.run.hours.record.len());
    let row = |hour: usize| {
        let mut cells = date(named.run.hours.stamp(hour, named.climate)?, true);
        cells.extend(columns.iter().map(|(_, column)| plain(column.get(hour).copied().unwrap_or(f64::NAN), decimals)));
        Some(cells)
    };
    Figures { head, rows: (hours.start..end).filter_map(row).collect() }
}
