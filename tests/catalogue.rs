//! The catalogues: every row names its source, keeps its ranges and agrees with the published figure it was taken from.

use warmfold::model::{Catalogue, Draw, NumberInput, Screen, Sheet, SheetKind, Span, bundled_catalogue};
use warmfold::units::{JOULES_PER_BTU, JOULES_PER_KWH, KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON, METRES_PER_FOOT};

fn within_ranges<T>(row: &T, key: &str, numbers: &[NumberInput<T>]) {
    for number in numbers {
        let value = (number.get)(row);
        assert!(number.accepts(value), "{key}: {} = {value}", number.key);
    }
}

fn unique(keys: &[&str]) {
    let mut sorted = keys.to_vec();
    sorted.sort_unstable();
    sorted.dedup();
    assert_eq!(sorted.len(), keys.len(), "a key stands twice in {keys:?}");
}

#[test]
fn every_row_names_its_source_and_keeps_its_ranges() {
    let Catalogue { sheets, screens, fuels, heaters, .. } = bundled_catalogue();
    for row in sheets {
        within_ranges(row, &row.key, Sheet::NUMBERS);
        assert!(row.source.len() > 10 && !row.name.is_empty(), "{}", row.key);
        // What is neither passed nor given off is reflected: the three shares make one.
        assert!(row.emissivity + row.longwave_transmittance <= 1.0, "{}", row.key);
    }
    for row in screens {
        within_ranges(row, &row.key, Screen::NUMBERS);
        assert!(row.source.len() > 10 && !row.name.is_empty(), "{}", row.key);
    }
    for row in fuels {
        assert!(row.source.len() > 10 && !row.units.is_empty(), "{}", row.key);
        assert!(row.units.iter().all(|u| u.kwh_gross_per_unit > 0.0), "{}", row.key);
        assert!((0.85..=1.0).contains(&row.net_per_gross), "{}", row.key);
        unique(&row.units.iter().map(|u| u.unit.as_str()).collect::<Vec<_>>());
    }
    for row in heaters {
        assert!(row.source.len() > 10, "{}", row.name);
        assert!(bundled_catalogue().fuel(&row.fuel).is_some(), "{}: no fuel {}", row.name, row.fuel);
        assert!((0.2..=1.0).contains(&row.efficiency), "{}", row.name);
        assert!(!row.heat_pump || row.fuel == "electricity", "{}", row.name);
    }
    unique(&sheets.iter().map(|r| r.key.as_str()).collect::<Vec<_>>());
    unique(&screens.iter().map(|r| r.key.as_str()).collect::<Vec<_>>());
    unique(&fuels.iter().map(|r| r.key.as_str()).collect::<Vec<_>>());
    unique(&heaters.iter().map(|r| r.name.as_str()).collect::<Vec<_>>());
}

#[test]
fn cylinders_trays_and_crops_are_in_order() {
    let Catalogue { cylinders, trays, crops, .. } = bundled_catalogue();
    let propane = bundled_catalogue().fuel("propane").expect("propane");
    for row in cylinders {
        assert!(row.source.len() > 10 && propane.units.iter().any(|u| u.unit == row.unit), "{}", row.unit);
        if let Draw::Table(table) = &row.draw {
            assert!(
                table.liquid_c.is_sorted() && table.rows.is_sorted_by(|a, b| a.left_kg < b.left_kg),
                "{}",
                row.unit
            );
            assert!(table.rows.iter().all(|r| r.draw_w.len() == table.liquid_c.len() && r.draw_w.is_sorted()));
        }
    }
    for row in trays {
        assert!(row.source.len() > 10 && row.length_m >= row.width_m && row.width_m > 0.0, "{}", row.key);
    }
    for row in crops {
        assert!(row.source.len() > 10 && !row.name.is_empty(), "{}", row.key);
        let soil = row.soil.map(|s| [s.min_c, s.range_c, s.best_c, s.max_c]).into_iter().flatten();
        let others = [row.germination_c, row.day_c, row.weeks, row.cold_nights_c, row.hardening_c];
        let ordered = |span: Span| span.low <= span.high;
        assert!(soil.chain(others.into_iter().flatten()).all(ordered), "{}", row.key);
        assert!(row.emergence.is_sorted_by(|a, b| a.soil_c < b.soil_c), "{}", row.key);
    }
    unique(&cylinders.iter().map(|r| r.unit.as_str()).collect::<Vec<_>>());
    unique(&trays.iter().map(|r| r.key.as_str()).collect::<Vec<_>>());
    unique(&crops.iter().map(|r| r.key.as_str()).collect::<Vec<_>>());
}

#[test]
fn a_multiwall_sheet_has_the_resistance_that_its_u_leaves() {
    // Both surfaces 0.120 + 0.030 m²K/W: Washington Administrative Code 51-11-0526. Tolerance: rows are rounded to 0.001.
    for key in ["double-glass", "twinwall-4", "twinwall-6", "twinwall-8", "twinwall-10", "triple-16", "acrylic-twin-16"]
    {
        let row = bundled_catalogue().sheet(key).expect(key);
        assert_eq!(row.kind, SheetKind::Rigid, "{key}");
        let left = 1.0 / row.u_as_skin_w_per_m2k - 0.150;
        assert!((row.resistance_m2k_per_w - left).abs() < 6e-4, "{key}: {left}");
    }
}

/// Heat in one unit of a fuel, kWh gross.
fn kwh(fuel: &str, unit: &str) -> f64 {
    let row = bundled_catalogue().fuel(fuel).expect(fuel);
    row.units.iter().find(|u| u.unit == unit).expect(unit).kwh_gross_per_unit
}

/// Weights and Measures Act 1985 (United Kingdom), schedule 1.
const LITRES_PER_IMPERIAL_GALLON: f64 = 4.546_09;

#[test]
fn heat_contents_follow_from_the_published_btu() {
    let kwh_from_btu = |btu: f64| btu * JOULES_PER_BTU / JOULES_PER_KWH;
    let cubic_foot_m3 = METRES_PER_FOOT.powi(3);
    let cases = [
        // Energy Information Administration (EIA), Energy Explained: propane, with a trade property sheet's 21,548 Btu/lb.
        ("propane", "US gal", kwh_from_btu(91_452.0)),
        ("propane", "imp gal", kwh_from_btu(91_452.0) / LITRES_PER_US_GALLON * LITRES_PER_IMPERIAL_GALLON),
        ("propane", "L", kwh_from_btu(91_452.0) / LITRES_PER_US_GALLON),
        ("propane", "lb", kwh_from_btu(21_548.0)),
        ("propane", "kg", kwh_from_btu(21_548.0) / KILOGRAMS_PER_POUND),
        ("propane", "20 lb cylinder", kwh_from_btu(21_548.0) * 20.0),
        ("propane", "30 lb cylinder", kwh_from_btu(21_548.0) * 30.0),
        ("propane", "40 lb cylinder", kwh_from_btu(21_548.0) * 40.0),
        ("propane", "100 lb cylinder", kwh_from_btu(21_548.0) * 100.0),
        ("propane", "9 kg cylinder", kwh_from_btu(21_548.0) / KILOGRAMS_PER_POUND * 9.0),
        ("propane", "13 kg cylinder", kwh_from_btu(21_548.0) / KILOGRAMS_PER_POUND * 13.0),
        ("propane", "19 kg cylinder", kwh_from_btu(21_548.0) / KILOGRAMS_PER_POUND * 19.0),
        ("propane", "47 kg cylinder", kwh_from_btu(21_548.0) / KILOGRAMS_PER_POUND * 47.0),
        ("propane", "48 kg cylinder", kwh_from_btu(21_548.0) / KILOGRAMS_PER_POUND * 48.0),
        // EIA: natural gas 1,037 Btu/ft³ (2023); therm 100,000 Btu.
        ("natural-gas", "ft³", kwh_from_btu(1037.0)),
        ("natural-gas", "m³", kwh_from_btu(1037.0) / cubic_foot_m3),
        ("natural-gas", "therm", kwh_from_btu(100_000.0)),
        // UMass Extension, Problems With Using Unvented Greenhouse Heaters.
        ("kerosene", "US gal", kwh_from_btu(135_000.0)),
        ("kerosene", "imp gal", kwh_from_btu(135_000.0) / LITRES_PER_US_GALLON * LITRES_PER_IMPERIAL_GALLON),
        ("kerosene", "L", kwh_from_btu(135_000.0) / LITRES_PER_US_GALLON),
        // EIA: heating oil.
        ("heating-oil", "US gal", kwh_from_btu(137_381.0)),
        ("heating-oil", "imp gal", kwh_from_btu(137_381.0) / LITRES_PER_US_GALLON * LITRES_PER_IMPERIAL_GALLON),
        ("heating-oil", "L", kwh_from_btu(137_381.0) / LITRES_PER_US_GALLON),
        // Heating-fuels comparison, Pennsylvania, 2010: 8,000 Btu/lb.
        ("pellets", "kg", kwh_from_btu(8000.0) / KILOGRAMS_PER_POUND),
        ("pellets", "15 kg bag", kwh_from_btu(8000.0) / KILOGRAMS_PER_POUND * 15.0),
        ("pellets", "40 lb bag", kwh_from_btu(8000.0) * 40.0),
        ("pellets", "tonne", kwh_from_btu(8000.0) / KILOGRAMS_PER_POUND * 1000.0),
        ("pellets", "short ton", kwh_from_btu(8000.0) * 2000.0),
        // EIA: cordwood, 20 million Btu per cord of 128 ft³.
        ("cordwood", "cord", kwh_from_btu(2e7)),
        ("cordwood", "stacked m³", kwh_from_btu(2e7) / (128.0 * cubic_foot_m3)),
    ];
    for (fuel, unit, expected) in cases {
        // Rows carry six figures.
        assert!((kwh(fuel, unit) / expected - 1.0).abs() < 1e-5, "{fuel} {unit}: {expected}");
    }
}

#[test]
fn carbon_dioxide_follows_from_the_published_factor_per_million_btu() {
    // EIA, Carbon Dioxide Emissions Coefficients, 2 Feb 2016, kg per million Btu; rows carry four figures.
    for (fuel, kg_per_million_btu) in
        [("propane", 63.07), ("natural-gas", 53.07), ("kerosene", 72.30), ("heating-oil", 73.16)]
    {
        let per_kwh = bundled_catalogue().fuel(fuel).and_then(|f| f.co2_kg_per_kwh).expect(fuel);
        let expected = kg_per_million_btu / (1e6 * JOULES_PER_BTU / JOULES_PER_KWH);
        assert!((per_kwh - expected).abs() < 6e-5, "{fuel}: {expected}");
    }
}
