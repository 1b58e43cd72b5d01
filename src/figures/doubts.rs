//! What matters: a row for each doubt.

use super::{Figures, plain};
use crate::season::sensitivity::{Outcome, Sensitivity};
use crate::units::{Quantity, UnitSystem};

/// A row for each doubt, and first the season as described.
#[must_use]
pub fn doubts(found: &Sensitivity, currency: &str, units: UnitSystem) -> Figures {
    let degree = Quantity::Temperature.unit(units);
    let head = [
        "in doubt".to_owned(),
        "moved by".to_owned(),
        format!("cost with less, {currency}"),
        format!("cost with more, {currency}"),
        format!("lowest crop air with less, {}", degree.symbol),
        format!("lowest crop air with more, {}", degree.symbol),
        "why so far".to_owned(),
    ];
    let line = |name: &str, range: String, [less, more]: [&Outcome; 2], reason: &str| {
        let cost = |outcome: &Outcome| outcome.cost.map_or(String::new(), |cost| plain(cost, 2));
        let air = |outcome: &Outcome| plain(degree.shown(outcome.crop_air_min_c), 2);
        let texts = [name.to_owned(), range, cost(less), cost(more), air(less), air(more), reason.to_owned()];
        texts.to_vec()
    };
    let as_it_is = line("as described", String::new(), [&found.as_it_is; 2], "");
    let effects = found.effects.iter().map(|e| line(e.name, e.range_in(units), [&e.less, &e.more], e.reason));
    Figures { head: head.to_vec(), rows: std::iter::once(as_it_is).chain(effects).collect() }
}
