//! Many winters: every winter of every scenario, and the fan of money day by day.

use super::{Figures, date, dated, plain};
use crate::season::winters::ScenarioWinters;

/// A row for each winter of each scenario.
#[must_use]
pub fn winters(scenarios: &[ScenarioWinters], currency: &str) -> Figures {
    let head = [
        "scenario",
        "winter",
        &format!("cost, {currency}"),
        "heat, kWh",
        "energy bought, kWh",
        "fuel",
        "unit",
        "standby fuel",
        "unit of standby fuel",
        "lowest crop air, °C",
        "hours below crop limit",
        "coldest outdoor hour, °C",
    ];
    let rows = scenarios.iter().flat_map(|scenario| {
        let [first, standby] = &scenario.fuels;
        scenario.winters.iter().map(move |winter| {
            vec![
                scenario.name.clone(),
                (winter.number + 1).to_string(),
                plain(winter.cost.unwrap_or(f64::NAN), 2),
                plain(winter.heat_kwh, 1),
                plain(winter.energy_kwh, 1),
                plain(winter.fuel_quantity[0], 3),
                first.unit.clone(),
                plain(winter.fuel_quantity[1], 3),
                standby.unit.clone(),
                plain(winter.crop_air_min_c, 2),
                winter.hours_below_crop_limit.to_string(),
                plain(winter.outdoor_min_c, 2),
            ]
        })
    });
    Figures { head: head.map(str::to_owned).to_vec(), rows: rows.collect() }
}

/// Money spent by the end of each day: what a tenth, half and nine tenths of the winters stay below, three columns a
/// scenario; empty cells where a price is missing.
#[must_use]
pub fn winter_fans(scenarios: &[ScenarioWinters], currency: &str) -> Figures {
    let mut head = dated(false);
    for scenario in scenarios {
        head.extend(["P10", "P50", "P90"].map(|p| format!("{}: {p}, {currency}", scenario.name)));
    }
    let fans: Vec<_> = scenarios.iter().map(ScenarioWinters::fan).collect();
    let days = scenarios.first().map_or(&[][..], |scenario| &scenario.days);
    let rows = days.iter().enumerate().map(|(day, at)| {
        let cells = fans.iter().flat_map(|fan| {
            let cost = fan.get(day).map(|day| day.cost);
            cost.map_or([f64::NAN; 3], |c| [c.p10, c.p50, c.p90]).map(|money| plain(money, 2))
        });
        date(*at, false).into_iter().chain(cells).collect()
    });
    Figures { head, rows: rows.collect() }
}
