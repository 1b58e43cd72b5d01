//! What a person types into a number field: "6 ft 6", "1,98 m", "55 F", "22:30".

use super::{
    JOULES_PER_BTU, JOULES_PER_KWH, KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON, METRES_PER_FOOT, Quantity,
    SECONDS_PER_HOUR, UnitSystem,
};

/// Litres in an imperial gallon.
const LITRES_PER_IMPERIAL_GALLON: f64 = 4.546_09;

/// Why an entry cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TypedError {
    /// No number in it.
    #[error("“{typed}” is not a number; type it like {example}")]
    NoNumber {
        /// What was typed.
        typed: String,
        /// How it could look.
        example: &'static str,
    },
    /// A sum to be worked out.
    #[error("“{typed}” is a sum to work out; type its result, like {example}")]
    Sum {
        /// What was typed.
        typed: String,
        /// How it could look.
        example: &'static str,
    },
    /// A unit of something else.
    #[error("“{unit}” is not a unit for this; it takes {known}")]
    Unit {
        /// The unit.
        unit: String,
        /// Units that it takes.
        known: String,
    },
}

/// Reads an entry as a value in the units of the file. A bare number is in the unit on screen; a point or a comma parts
/// the decimals; spaces part thousands; feet and inches may stand together.
///
/// # Errors
/// What cannot be read as one number of this quantity.
pub fn typed(text: &str, quantity: Quantity, system: UnitSystem) -> Result<f64, TypedError> {
    let example = example(quantity, system);
    let no_number = || TypedError::NoNumber { typed: quoted(text), example };
    if let Some(hour) = clock(text).filter(|_| quantity == Quantity::HourOfDay) {
        return Ok(hour);
    }
    let words = words(text);
    let sum = words.iter().any(|word| matches!(word, Word::Sign(_)));
    if sum {
        return Err(TypedError::Sum { typed: quoted(text), example });
    }
    let mut parts = Vec::new();
    let mut rest = words.into_iter().peekable();
    while let Some(word) = rest.next() {
        let Word::Number(number) = word else { return Err(no_number()) };
        let unit = rest.next_if(|next| matches!(next, Word::Unit(_)));
        parts.push((number, unit.and_then(|word| if let Word::Unit(unit) = word { Some(unit) } else { None })));
    }
    let value = match parts.as_slice() {
        [(number, None)] => quantity.unit(system).value(*number),
        [(number, Some(unit))] => in_unit(*number, unit, quantity, system)?,
        [(feet, Some(unit)), (inches, below)] if is_feet(unit) && is_length(quantity) => {
            let below = below.as_deref().unwrap_or("in");
            let sign = if feet.is_sign_negative() { -1.0 } else { 1.0 };
            in_unit(*feet, unit, quantity, system)? + sign * in_unit(*inches, below, quantity, system)?
        }
        _ => return Err(no_number()),
    };
    if value.is_finite() { Ok(value) } else { Err(no_number()) }
}

/// Most characters of an entry that a refusal repeats.
const QUOTED: usize = 24;

/// An entry as a refusal repeats it: without the blanks round it, and cut if it is long.
fn quoted(entry: &str) -> String {
    let entry = entry.trim();
    match entry.char_indices().nth(QUOTED) {
        Some((end, _)) => format!("{}…", entry[..end].trim_end()),
        None => entry.to_owned(),
    }
}

/// What an entry is made of.
#[derive(Debug, Clone, PartialEq)]
enum Word {
    Number(f64),
    Unit(String),
    Sign(char),
}

/// Cuts an entry into numbers, units and the signs of a sum.
fn words(text: &str) -> Vec<Word> {
    let mut out = Vec::new();
    let mut chars = text.trim().chars().peekable();
    while let Some(&c) = chars.peek() {
        let minus = matches!(c, '-' | '−' | '+') && out.is_empty();
        if c.is_ascii_digit() || minus || matches!(c, '.' | ',') {
            chars.next();
            let mut number = String::from(if c == '−' { '-' } else { c });
            while let Some(&next) = chars.peek() {
                let space_in_thousands = next.is_whitespace() && {
                    let ahead: String = chars.clone().skip(1).take(4).collect();
                    let three = ahead.chars().take(3).filter(char::is_ascii_digit).count() == 3;
                    three && !ahead.chars().nth(3).is_some_and(|d| d.is_ascii_digit())
                };
                if next.is_ascii_digit() || matches!(next, '.' | ',') {
                    number.push(next);
                } else if !space_in_thousands {
                    break;
                }
                chars.next();
            }
            match number.replace(',', ".").parse() {
                Ok(number) => out.push(Word::Number(number)),
                Err(_) => out.push(Word::Unit(number)),
            }
        } else if c.is_whitespace() {
            chars.next();
        } else if matches!(c, '*' | '×' | '+' | '-' | '−' | '(' | ')' | '=' | '^') || (c == '/' && !follows_unit(&out))
        {
            chars.next();
            out.push(Word::Sign(c));
        } else {
            let mut unit = String::new();
            let digit_of_unit = |unit: &str, c: char| matches!(c, '2' | '3') && unit.ends_with(['m', 't']);
            while let Some(&next) = chars.peek() {
                let ends = matches!(next, '*' | '×' | '+' | '-' | '−' | '(' | ')');
                if ends || matches!(next, '.' | ',') || (next.is_ascii_digit() && !digit_of_unit(&unit, next)) {
                    break;
                }
                unit.push(next);
                chars.next();
            }
            out.push(Word::Unit(unit.trim().to_owned()));
        }
    }
    out
}

fn follows_unit(words: &[Word]) -> bool {
    matches!(words.last(), Some(Word::Unit(_)))
}

/// "22:30" as hours.
fn clock(text: &str) -> Option<f64> {
    let (hours, minutes) = text.trim().split_once(':')?;
    let (hours, minutes): (u32, u32) = (hours.trim().parse().ok()?, minutes.trim().parse().ok()?);
    (hours <= 24 && minutes < 60).then(|| f64::from(hours) + f64::from(minutes) / 60.0)
}

fn is_length(quantity: Quantity) -> bool {
    matches!(quantity, Quantity::Length | Quantity::Depth)
}

fn is_feet(unit: &str) -> bool {
    matches!(plain(unit).as_str(), "ft" | "'" | "foot" | "feet")
}

/// A unit without what people leave out: case, spaces, dots, the degree sign.
fn plain(unit: &str) -> String {
    let kept = unit.chars().filter(|c| !c.is_whitespace() && !matches!(c, '·' | '°'));
    let ascii = kept.map(|c| match c {
        '²' => '2',
        '³' => '3',
        '′' | '’' => '\'',
        '″' | '”' => '"',
        c => c,
    });
    ascii.collect::<String>().to_lowercase()
}

/// A number in a unit as a value of the file.
fn in_unit(number: f64, unit: &str, quantity: Quantity, system: UnitSystem) -> Result<f64, TypedError> {
    let wanted = plain(unit);
    // The unit on screen first: "°F" of a difference is no temperature.
    for family in [system, UnitSystem::Metric, UnitSystem::Imperial] {
        let shown = quantity.unit(family);
        if plain(shown.symbol) == wanted {
            return Ok(shown.value(number));
        }
    }
    let also = also(quantity);
    match also.iter().find(|(names, _)| names.contains(&wanted.as_str())) {
        Some((_, factor)) => Ok(number * factor),
        None if quantity == Quantity::TemperatureDifference && wanted == "c" => Ok(number),
        None => {
            let mut known = vec![quantity.unit(UnitSystem::Metric).symbol, quantity.unit(UnitSystem::Imperial).symbol];
            known.extend(also.iter().filter_map(|(names, _)| names.first()));
            known.retain(|name| !name.is_empty());
            known.dedup();
            let known = if known.is_empty() { "a bare number".to_owned() } else { known.join(", ") };
            Err(TypedError::Unit { unit: quoted(unit), known })
        }
    }
}

/// Further names and units: what one of them is in the unit of the file.
type Also = &'static [(&'static [&'static str], f64)];

fn also(quantity: Quantity) -> Also {
    const INCH: f64 = METRES_PER_FOOT / 12.0;
    const LENGTH: Also = &[
        (&["cm"], 0.01),
        (&["mm"], 0.001),
        (&["in", "\"", "inch", "inches", "''"], INCH),
        (&["ft", "'", "foot", "feet"], METRES_PER_FOOT),
        (&["m", "metre", "metres", "meter", "meters"], 1.0),
    ];
    match quantity {
        Quantity::Length | Quantity::Depth => LENGTH,
        Quantity::Area => &[
            (&["sq ft", "sqft", "sf"], METRES_PER_FOOT * METRES_PER_FOOT),
            (&["sq m", "sqm", "qm"], 1.0),
            (&["cm²", "cm2"], 1e-4),
            (&["in²", "in2", "sqin"], INCH * INCH),
        ],
        Quantity::Volume => &[
            (&["cu ft", "cuft"], METRES_PER_FOOT * METRES_PER_FOOT * METRES_PER_FOOT),
            (&["L", "l", "litre", "litres", "liter", "liters"], 1e-3),
        ],
        Quantity::Liquid => &[
            (&["gal", "gallon", "gallons", "usgallon", "usgallons"], LITRES_PER_US_GALLON),
            (&["imp gal", "impgal"], LITRES_PER_IMPERIAL_GALLON),
            (&["m³", "m3"], 1000.0),
            (&["litre", "litres", "liter", "liters"], 1.0),
        ],
        Quantity::Power => &[(&["kW", "kw"], 1000.0), (&["Btu/h", "btu/h", "btuh"], JOULES_PER_BTU / SECONDS_PER_HOUR)],
        Quantity::Energy => &[
            (&["MJ", "mj"], 1e6 / JOULES_PER_KWH),
            (&["Btu", "btu"], JOULES_PER_BTU / JOULES_PER_KWH),
            (&["therm", "therms"], 1e5 * JOULES_PER_BTU / JOULES_PER_KWH),
        ],
        Quantity::AirFlow => &[(&["L/s", "l/s"], 3.6), (&["m³/s", "m3/s"], SECONDS_PER_HOUR)],
        Quantity::Speed => &[(&["km/h", "kmh"], 1.0 / 3.6)],
        Quantity::HourOfDay => &[(&["hours", "hour", "oclock", "o'clock", "uhr"], 1.0)],
        Quantity::Mass => &[(&["g"], 1e-3), (&["lbs", "pound", "pounds"], KILOGRAMS_PER_POUND), (&["t"], 1000.0)],
        Quantity::AirChanges => &[(&["/h", "1/h", "ach"], 1.0)],
        Quantity::Angle | Quantity::Direction => &[(&["deg", "degrees", ""], 1.0)],
        _ => &[],
    }
}

/// How an entry could look.
fn example(quantity: Quantity, system: UnitSystem) -> &'static str {
    match (quantity, system) {
        (Quantity::Length, _) => "1.98 m or 6 ft 6",
        (Quantity::Depth, _) => "6 cm or 2.5 in",
        (Quantity::Temperature, UnitSystem::Metric) => "12.5 or 55 F",
        (Quantity::Temperature, UnitSystem::Imperial) => "55 or 12.5 C",
        (Quantity::Power, _) => "1500 or 1.5 kW",
        (Quantity::Share, _) => "30",
        (Quantity::HourOfDay, _) => "22 or 22:30",
        _ => "12.5",
    }
}

#[cfg(test)]
#[path = "typed_tests.rs"]
mod tests;
