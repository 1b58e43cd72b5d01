//! One change made in other scenarios too.
//!
//! A scenario is compared with itself before the change, value by value as its file names them, so that whatever can be
//! entered can be carried and nothing else of the other scenario is touched.

use super::Scenario;
use serde_json::Value;

/// Values that are a scenario's own and are not carried.
const OWN: [&str; 3] = ["name", "shown", "notes"];

/// Makes in `other` the change that led from `before` to `after`. None when a value cannot be written.
#[must_use]
pub fn carried(before: &Scenario, after: &Scenario, other: &Scenario) -> Option<Scenario> {
    let [before, mut after, other] = [before, after, other].map(serde_json::to_value).map(Result::ok);
    for key in OWN {
        let kept = before.as_ref().and_then(|b| b.get(key)).cloned();
        if let (Some(kept), Some(slot)) = (kept, after.as_mut().and_then(|a| a.get_mut(key))) {
            *slot = kept;
        }
    }
    serde_json::from_value(merged(&before?, &after?, &other?)).ok()
}

/// Gives `other` the value that `from` has at a place of its file, "tent.height_m". None when there is no such place.
#[must_use]
pub fn shared(place: &str, from: &Scenario, other: &Scenario) -> Option<Scenario> {
    let pointer = format!("/{}", place.replace("].", "/").replace(']', "").replace(['.', '['], "/"));
    let from = serde_json::to_value(from).ok()?;
    let mut other = serde_json::to_value(other).ok()?;
    *other.pointer_mut(&pointer)? = from.pointer(&pointer)?.clone();
    serde_json::from_value(other).ok()
}

fn merged(before: &Value, after: &Value, other: &Value) -> Value {
    match (before, after, other) {
        _ if before == after => other.clone(),
        (Value::Object(b), Value::Object(a), Value::Object(o)) if b.keys().eq(a.keys()) && a.keys().eq(o.keys()) => {
            Value::Object(o.iter().map(|(key, other)| (key.clone(), merged(&b[key], &a[key], other))).collect())
        }
        (Value::Array(b), Value::Array(a), Value::Array(o)) if b.len() == a.len() && a.len() == o.len() => {
            Value::Array(b.iter().zip(a).zip(o).map(|((b, a), o)| merged(b, a, o)).collect())
        }
        _ => after.clone(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Tent, TentOpening};

    fn other() -> Scenario {
        let tent = Tent { present: false, width_m: 0.9, sheets: vec!["one".into(), "two".into()], ..Tent::default() };
        Scenario { name: "Other".to_owned(), tent, ..Scenario::default() }
    }

    #[test]
    fn only_the_change_is_carried() {
        let before = Scenario::default();
        let mut after = before.clone();
        after.name = "Renamed".to_owned();
        after.tent.height_m += 0.1 + 0.2;
        after.tent.opening = TentOpening::Above(27.3);
        let mut wanted = other();
        (wanted.tent.height_m, wanted.tent.opening) = (after.tent.height_m, after.tent.opening);
        assert_eq!(carried(&before, &after, &other()), Some(wanted));
    }

    #[test]
    fn a_list_of_another_length_is_carried_whole() {
        let before = Scenario::default();
        let mut after = before.clone();
        after.tent.sheets.push("third".to_owned());
        let carried = carried(&before, &after, &other()).expect("a scenario");
        assert_eq!(carried.tent.sheets, after.tent.sheets);
        assert_eq!(carried.tent.width_m, 0.9);
    }

    #[test]
    fn one_value_is_shared_by_its_place() {
        let from = Scenario { tent: Tent { height_m: 1.23, ..Tent::default() }, ..Scenario::default() };
        let mut wanted = other();
        wanted.tent.height_m = 1.23;
        assert_eq!(shared("tent.height_m", &from, &other()), Some(wanted));
        assert_eq!(shared("tent.nothing", &from, &other()), None);
        assert_eq!(shared("costs[3].price", &from, &other()), None);
    }
}
