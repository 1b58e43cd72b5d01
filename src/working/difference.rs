//! What changes against the reference, flow by flow.

use super::account::{Account, Factor, Number, Row, decimals};
use super::energy::{FLOWS, Flow, flow_decimals};
use super::ink::Ink;
use super::{Panel, Topic};
use crate::format;
use crate::season::ScenarioRun;

/// The panel.
pub(super) fn difference(own: &ScenarioRun, name: &str, reference: &ScenarioRun, ink: Ink) -> Panel {
    let (own, other) = (&own.summary, &reference.summary);
    let decimals_kwh = flow_decimals(own).min(flow_decimals(other));
    let row = |(flow, of, gain): &Flow| {
        let factors = vec![Factor::TimesDifference(ink.kwh(of(own), decimals_kwh), ink.kwh(of(other), decimals_kwh))];
        let row = Row::product(*flow, factors, ink.kwh(of(own) - of(other), decimals_kwh));
        if *gain { row.taken_away() } else { row }
    };
    let rows = FLOWS.iter().filter(|(_, of, _)| of(own) != 0.0 || of(other) != 0.0).map(row).collect();
    let heat_kwh = own.heat_delivered_kwh - other.heat_delivered_kwh;
    let heading = format!("Heat, this scenario less “{}”", format::short_name(name));
    let mut accounts = vec![Account::sum(heading, rows, "Change of heat", ink.kwh(heat_kwh, decimals_kwh))];
    if let (Some(cost), Some(before)) = (own.cost, other.cost) {
        accounts.push(money(cost, before, ink));
    }
    Panel {
        topic: Topic::Difference,
        formula: "Each flow of heat in this scenario less the same flow in the reference; what is added up is the change of \
            heat.",
        accounts,
        source: "Books of both seasons, on the same weather and prices.",
    }
}

fn money(cost: f64, before: f64, ink: Ink) -> Account {
    let change = cost - before;
    let mut rows = vec![Row::product(
        "Change of cost",
        vec![Factor::TimesDifference(ink.money(cost), ink.money(before))],
        ink.money(change),
    )];
    if before > 0.0 {
        let percent = change / before * 100.0;
        let hundred = Factor::Times(Number::exact(100.0, 0, "%"));
        rows.push(Row::product(
            "In percent of the reference",
            vec![Factor::Times(ink.money(change)), Factor::Over(ink.money(before)), hundred],
            Number::new(percent, decimals(percent).min(1), "%"),
        ));
    }
    Account::list("Money", rows)
}
