//! Numbers, money and dates as a person reads them.

use crate::season::HourStamp;
use crate::units::{Quantity, UnitSystem};

/// Narrow space that keeps thousands together.
const THIN: char = '\u{202f}';
/// Invisible, and no line breaks at it (Unicode Standard Annex 14, rule LB11).
const JOINER: char = '\u{2060}';

/// A number with grouped thousands and fixed decimals; a dash for what is not a number.
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let text = format!("{:.decimals$}", value.abs());
    let (whole, rest) = text.split_once('.').map_or((text.as_str(), None), |(w, r)| (w, Some(r)));
    let mut out = String::new();
    let zero = text.chars().all(|c| c == '0' || c == '.');
    if value < 0.0 && !zero {
        out.push('−');
    }
    let digits = whole.len();
    for (i, c) in whole.chars().enumerate() {
        if i > 0 && (digits - i) % 3 == 0 {
            out.push(THIN);
        }
        out.push(c);
    }
    if let Some(rest) = rest {
        out.push('.');
        out.push_str(rest);
    }
    out
}

/// The same with a plus sign for what is above zero.
#[must_use]
pub fn signed(value: f64, decimals: usize) -> String {
    let text = number(value, decimals);
    let plus = value.is_finite() && value > 0.0 && text.chars().any(|c| c.is_ascii_digit() && c != '0');
    if plus { format!("+{text}") } else { text }
}

/// Money without its symbol: whole from 100 on, two decimals below.
#[must_use]
pub fn amount(value: f64) -> String {
    number(value, if value.abs() >= 99.5 { 0 } else { 2 })
}

/// Money with the study's symbol: "$412" or "412 kr".
#[must_use]
pub fn money(value: f64, currency: &str) -> String {
    with_currency(&amount(value), currency)
}

/// A difference of money, with its sign.
#[must_use]
pub fn money_difference(value: f64, currency: &str) -> String {
    let text = signed(value, if value.abs() >= 99.5 { 0 } else { 2 });
    with_currency(&text, currency)
}

/// An amount with the currency where it belongs: a symbol before it, a word of several letters behind.
#[must_use]
pub fn with_currency(text: &str, currency: &str) -> String {
    if currency.chars().count() > 1 {
        return format!("{text} {currency}");
    }
    let sign = text.chars().next().filter(|c| matches!(c, '+' | '−'));
    match sign {
        // A line may break between a minus sign and a currency's, which are both prefixes to the rules of breaking.
        Some(sign) => format!("{sign}{JOINER}{currency}{}", text.trim_start_matches(sign)),
        None => format!("{currency}{text}"),
    }
}

/// A value with its unit on screen, with `decimals` or the quantity's own.
#[must_use]
pub fn quantity(value: f64, quantity: Quantity, system: UnitSystem, decimals: Option<usize>) -> String {
    let unit = quantity.unit(system);
    let text = number(unit.shown(value), decimals.unwrap_or(unit.decimals));
    if unit.symbol.is_empty() { text } else { format!("{text} {}", unit.symbol) }
}

/// A temperature with one decimal.
#[must_use]
pub fn temperature(t_c: f64, system: UnitSystem) -> String {
    quantity(t_c, Quantity::Temperature, system, Some(1))
}

/// Power in W below 10 kW, in kW from there on.
#[must_use]
pub fn power(watts: f64) -> String {
    if watts.abs() < 9_999.5 { format!("{} W", number(watts, 0)) } else { format!("{} kW", number(watts / 1000.0, 1)) }
}

/// A fuel amount: no decimals where they mean nothing.
#[must_use]
pub fn fuel(amount: f64) -> String {
    number(amount, if amount.abs() >= 100.0 { 0 } else { 1 })
}

/// An amount in the unit it is bought in: "903 US gal", "3 × 20 lb cylinder".
#[must_use]
pub fn bought(amount: &str, unit: &str) -> String {
    let times = if unit.starts_with(|c: char| c.is_ascii_digit()) { "× " } else { "" };
    format!("{amount} {times}{unit}")
}

/// Name of a month, three letters.
#[must_use]
pub fn month(month: u32) -> &'static str {
    const NAMES: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    NAMES.get((month as usize).wrapping_sub(1)).copied().unwrap_or("–")
}

/// "14 Jan 05:00", the end of an hour.
#[must_use]
pub fn stamp(at: HourStamp) -> String {
    format!("{} {} {:02}:00", at.day, month(at.month), at.hour)
}

/// "14 Jan".
#[must_use]
pub fn day(at: HourStamp) -> String {
    format!("{} {}", at.day, month(at.month))
}

/// "1 hour", "12 hours".
#[must_use]
pub fn hours(count: usize) -> String {
    format!("{} {}", number(count as f64, 0), if count == 1 { "hour" } else { "hours" })
}

/// Most characters of a scenario's name inside a sentence.
const NAME_IN_SENTENCE: usize = 28;

/// A scenario's name for use inside a sentence: a long one is cut, so that the figures behind it stay in sight.
#[must_use]
pub fn short_name(name: &str) -> String {
    if name.chars().count() <= NAME_IN_SENTENCE {
        return name.to_owned();
    }
    let kept: String = name.chars().take(NAME_IN_SENTENCE - 1).collect();
    format!("{}…", kept.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thousands_are_grouped_and_zero_has_no_sign() {
        assert_eq!(number(1_234_567.4, 0), "1\u{202f}234\u{202f}567");
        assert_eq!(number(-1234.56, 1), "−1\u{202f}234.6");
        assert_eq!(number(-0.04, 1), "0.0");
        assert_eq!(signed(0.0, 1), "0.0");
        assert_eq!(signed(3.0, 0), "+3");
        assert_eq!(number(f64::NAN, 1), "–");
    }

    #[test]
    fn money_places_symbol_and_sign() {
        assert_eq!(money(412.3, "$"), "$412");
        assert_eq!(money_difference(-1236.0, "$"), "−\u{2060}$1\u{202f}236");
        assert_eq!(money(12.5, "kr"), "12.50 kr");
    }
}
