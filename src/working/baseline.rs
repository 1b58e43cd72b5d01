//! The baseline, which needs no program at all.

use super::account::{Account, Factor, Number, Row, decimals, shared_decimals};
use super::ink::Ink;
use super::{Case, Panel, Topic};
use crate::physics::air::exchange_w_per_k;
use crate::season::openings::Openings;
use crate::season::plan::Plan;
use crate::units::Quantity;

/// The panel.
pub(super) fn baseline(case: &Case, plan: &Plan, openings: &Openings, ink: Ink) -> Panel {
    let accounts = vec![coefficient(case, plan, openings, ink), heat(case, ink), money(case, ink)];
    Panel {
        topic: Topic::Baseline,
        formula: "(skin + leakage + edge) × degree-hours ÷ efficiency × price: the same shell with its outermost sheet alone, \
            the whole house held, without sun, tent, water or night covers.",
        accounts,
        source: "Degree-hours: ISO 15927-6:2007, accumulated temperature difference from hourly means. Handbook U of each \
            sheet: catalogue. Floor edge: F × exposed perimeter, US DOE engineering reference.",
    }
}

fn coefficient(case: &Case, plan: &Plan, openings: &Openings, ink: Ink) -> Account {
    let house = &case.scenario.house;
    let unit = Quantity::HeatLossCoefficient.unit(ink.units);
    let total = case.run.summary.baseline_ua_w_per_k;
    let shared = shared_decimals([unit.shown(total)]);
    let loss = |w_per_k: f64| Number::new(unit.shown(w_per_k), shared, unit.symbol);
    let quantity = |value, quantity| Factor::Times(ink.quantity(value, quantity));
    let mut rows: Vec<Row> = Vec::new();
    for group in &plan.skin {
        let u = 1.0 / group.outermost_resistance;
        let factors = vec![quantity(group.area_m2, Quantity::Area), quantity(u, Quantity::UValue)];
        rows.push(Row::product("Skin, area × U", factors, loss(group.area_m2 * u)));
    }
    let rate = house.tightness.design_air_changes_per_h();
    let per_volume = unit.shown(exchange_w_per_k(1.0, 1.0)) / Quantity::Volume.unit(ink.units).shown(1.0);
    let factors = vec![
        quantity(plan.shell.volume_m3, Quantity::Volume),
        Factor::Times(Number::new(rate, decimals(rate), "per hour")),
        Factor::Times(Number::new(per_volume, decimals(per_volume), heat_of_air(ink))),
    ];
    rows.push(Row::product("Air that leaks", factors, loss(openings.design_leakage_w_per_k())));
    let factors = vec![
        quantity(plan.shell.exposed_perimeter_m, Quantity::Length),
        quantity(house.edge_f_w_per_mk, Quantity::EdgeFactor),
    ];
    rows.push(Row::product("Edge of the floor", factors, loss(plan.edge_w_per_k)));
    Account::sum("Loss for each degree", rows, "Skin, leakage and edge", loss(total))
}

/// Unit of the heat that air carries.
fn heat_of_air(ink: Ink) -> &'static str {
    match ink.units {
        crate::units::UnitSystem::Metric => "Wh/m³K",
        crate::units::UnitSystem::Imperial => "Btu/ft³·°F",
    }
}

fn heat(case: &Case, ink: Ink) -> Account {
    let s = &case.run.summary;
    let factors = vec![
        Factor::Times(ink.quantity(s.baseline_ua_w_per_k, Quantity::HeatLossCoefficient)),
        Factor::Times(ink.degree_hours(s.degree_hours_kh)),
        ink.to_kwh(),
    ];
    let held = ink.temperature(s.baseline_setpoint_c).text();
    let row =
        Row::product("Heat of the season", factors, ink.kwh(s.baseline_heat_kwh, decimals(s.baseline_heat_kwh).min(1)));
    Account::list(format!("Times the degree-hours below {held}"), vec![row])
}

fn money(case: &Case, ink: Ink) -> Account {
    let (s, money) = (&case.run.summary, &case.run.money);
    let energy_kwh = money.baseline_energy_kwh;
    let mut rows = Vec::new();
    if energy_kwh > 0.0 {
        let ratio = s.baseline_heat_kwh / energy_kwh;
        let pump = case.scenario.heater.heat_pump;
        let by = if pump { "of COP in the mean" } else { "of efficiency" };
        let heat = ink.kwh(s.baseline_heat_kwh, decimals(s.baseline_heat_kwh).min(1));
        let factors = vec![Factor::Times(heat), Factor::Over(Number::new(ratio, decimals(ratio), by))];
        rows.push(Row::product("Energy, gross", factors, ink.kwh(energy_kwh, decimals(energy_kwh).min(1))));
        if let Some(cost) = s.baseline_cost {
            let energy = ink.kwh(energy_kwh, decimals(energy_kwh).min(1));
            let factors = vec![Factor::Times(energy), Factor::Times(ink.price(cost / energy_kwh))];
            rows.push(Row::product("Cost, at the mean price of its hours", factors, ink.money(cost)));
        }
    }
    rows.push(Row::given(
        "Heat of this scenario",
        ink.kwh(s.heat_delivered_kwh, decimals(s.heat_delivered_kwh).min(1)),
    ));
    Account::list("Into energy and money", rows)
}
