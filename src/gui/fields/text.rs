//! Texts of a form: what a number looks like, how it is typed, how a step is named.

use super::Spec;
use crate::format;
use crate::units::{Quantity, UnitSystem};

/// Whether two values are the same for a person.
pub fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

/// Name of an undo step: "tent height".
pub fn step_name(part: &str, label: &str) -> String {
    let label = lower(label);
    if part.is_empty() || label.starts_with(part) { label } else { format!("{part} {label}") }
}

/// A text with a large first letter.
pub fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

/// A label inside a sentence: first letter small, unless it is an abbreviation.
pub fn lower(label: &str) -> String {
    let mut chars = label.chars();
    match (chars.next(), chars.next()) {
        (Some(a), Some(b)) if b.is_lowercase() || b == ' ' => {
            a.to_lowercase().collect::<String>() + &label[a.len_utf8()..]
        }
        _ => label.to_owned(),
    }
}

/// A number on screen as the field writes it.
pub fn text(spec: &Spec, units: UnitSystem, shown: f64) -> String {
    let decimals = spec.quantity.unit(units).decimals;
    if spec.quantity == Quantity::Money {
        let long = format!("{shown:.4}");
        let cut = long.trim_end_matches('0');
        let short = format!("{shown:.2}");
        return if cut.len() > short.len() { cut.to_owned() } else { short };
    }
    format::number(shown, decimals)
}

/// Change per point of a drag, in the unit on screen. `step` is the internal size of one shown unit.
pub fn speed(quantity: Quantity, step: f64) -> f64 {
    let internal = match quantity {
        Quantity::Length => 0.02,
        Quantity::Depth => 0.001,
        Quantity::Temperature | Quantity::TemperatureDifference => 0.05,
        Quantity::Power => 10.0,
        Quantity::Share => 0.005,
        Quantity::Money => 0.002,
        Quantity::Direction => 1.0,
        Quantity::Liquid | Quantity::AirFlow => 1.0,
        Quantity::Area | Quantity::Volume => 0.02,
        Quantity::UValue | Quantity::EdgeFactor | Quantity::Resistance | Quantity::AirChanges => 0.01,
        Quantity::Energy => 1.0,
        _ => 0.05,
    };
    internal / step
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn undo_names_read_as_words() {
        assert_eq!(step_name("tent", "Height"), "tent height");
        assert_eq!(step_name("heater", "Heater"), "heater");
        assert_eq!(step_name("", "U as outer skin"), "u as outer skin");
    }
}
