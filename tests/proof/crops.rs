//! What crops need and what cold they bear: the catalogue against every table that it was put together from.

use std::collections::BTreeMap;

use serde::Deserialize;
use warmfold::model::{CropKind, Span, bundled_catalogue};
use warmfold::units::c_from_fahrenheit;

use super::figure::{Expected, Figure, hold, published};

#[derive(Deserialize)]
struct Cases {
    tolerance_because: String,
    tables: Vec<Table>,
    emergence: Vec<Emerging>,
    limits: Vec<(String, f64, f64)>,
}

/// One table of one source: crop, lowest, highest, as published.
#[derive(Deserialize)]
struct Table {
    source: String,
    what: String,
    field: Field,
    cases: Vec<(String, f64, f64)>,
}

/// Days to emerge of one crop by soil temperature, °F; none where nothing emerges.
#[derive(Deserialize)]
struct Emerging {
    crop: String,
    days: Vec<(f64, Option<(f64, f64)>)>,
}

/// The field of the catalogue that a table fills.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
enum Field {
    SoilMin,
    SoilRange,
    SoilBest,
    SoilMax,
    Sowing,
    Germination,
    Day,
    FastNight,
    Weeks,
    ColdNights,
    Hardening,
}

impl Field {
    fn of(self, crop: &CropKind) -> Option<Span> {
        let one = |value: f64| Span { low: value, high: value };
        match self {
            Self::SoilMin => crop.soil.map(|soil| soil.min_c),
            Self::SoilRange => crop.soil.map(|soil| soil.range_c),
            Self::SoilBest => crop.soil.map(|soil| soil.best_c),
            Self::SoilMax => crop.soil.map(|soil| soil.max_c),
            Self::Sowing => crop.sowing_c.map(one),
            Self::Germination => crop.germination_c,
            Self::Day => crop.day_c,
            Self::FastNight => crop.fast_night_c.map(one),
            Self::Weeks => crop.weeks,
            Self::ColdNights => crop.cold_nights_c,
            Self::Hardening => crop.hardening_c,
        }
    }

    /// A published number in the unit of the catalogue.
    fn metric(self, value: f64) -> f64 {
        if self == Self::Weeks { value } else { c_from_fahrenheit(value) }
    }

    fn unit(self) -> &'static str {
        if self == Self::Weeks { "weeks" } else { "K" }
    }
}

fn crop(key: &str) -> &'static CropKind {
    bundled_catalogue().crop(key).unwrap_or_else(|| panic!("{key} is not in the catalogue"))
}

/// The hull of all published ranges of a field, in the unit of the catalogue.
fn hulls(tables: &[Table]) -> BTreeMap<(Field, &str), Span> {
    let mut hulls: BTreeMap<(Field, &str), Span> = BTreeMap::new();
    for table in tables {
        for (key, low, high) in &table.cases {
            let published = Span { low: table.field.metric(*low), high: table.field.metric(*high) };
            let hull = hulls.entry((table.field, key)).or_insert(published);
            *hull = Span { low: hull.low.min(published.low), high: hull.high.max(published.high) };
        }
    }
    hulls
}

/// How far the catalogue's range is from the hull of the sources; not a number where it has none.
fn miss(field: Field, key: &str, hull: Span) -> f64 {
    field.of(crop(key)).map_or(f64::NAN, |span| (span.low - hull.low).abs().max((span.high - hull.high).abs()))
}

fn tables(file: &Cases) -> Vec<Figure> {
    let hulls = hulls(&file.tables);
    let figure = |table: &Table| {
        let misses = table.cases.iter().map(|(key, ..)| miss(table.field, key, hulls[&(table.field, key.as_str())]));
        Figure {
            what: format!("{}, largest difference of {}", table.what, table.cases.len()),
            source: table.source.clone(),
            unit: table.field.unit().into(),
            decimals: 1,
            expected: Expected::Value(0.0, 0.0501),
            tolerance_because: file.tolerance_because.clone(),
            got: misses.fold(0.0, |worst: f64, miss| if miss.is_nan() { f64::NAN } else { worst.max(miss) }),
        }
    };
    file.tables.iter().map(figure).collect()
}

fn emergence(file: &Cases) -> Vec<Figure> {
    let agrees = |kind: &CropKind, soil_f: f64, days: Option<(f64, f64)>| {
        kind.days_to_emerge(c_from_fahrenheit(soil_f)) == days.map(|(low, high)| Span { low, high })
    };
    let figure = |Emerging { crop: key, days }: &Emerging| Figure {
        what: format!("days to emerge, {key}: soil temperatures that agree"),
        source: "Harrington, days to emerge at half an inch depth (quoted)".into(),
        unit: String::new(),
        decimals: 0,
        expected: Expected::Value(days.len() as f64, 0.0),
        tolerance_because: "every published temperature, among them those at which nothing emerges".into(),
        got: days.iter().filter(|(soil_f, days)| agrees(crop(key), *soil_f, *days)).count() as f64,
    };
    file.emergence.iter().map(figure).collect()
}

fn limits(file: &Cases) -> Vec<Figure> {
    let one = |key: &str, words: &str, published_f: f64, got: Option<f64>| Figure {
        what: format!("cold that {words}, {}", key.replace('-', " ")),
        source: "UMass Greenhouse Update, 19 March 2021; master gardeners' frost lists; Agricultural Research Service"
            .into(),
        unit: "°C".into(),
        decimals: 1,
        expected: Expected::Value(c_from_fahrenheit(published_f), 0.0501),
        tolerance_because: file.tolerance_because.clone(),
        got: got.unwrap_or(f64::NAN),
    };
    let both = |(key, low, high): &(String, f64, f64)| {
        let limits = crop(key).cold_limits_c();
        [
            one(key, "begins to check or harm", *high, limits.map(|l| l.high)),
            one(key, "harms badly", *low, limits.map(|l| l.low)),
        ]
    };
    file.limits.iter().flat_map(both).collect()
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("crops");
    [tables(&file), emergence(&file), limits(&file)].concat()
}

#[test]
fn crops_agree() {
    hold(&figures());
}
