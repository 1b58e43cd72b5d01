use super::*;
use UnitSystem::{Imperial, Metric};

fn reads(text: &str, quantity: Quantity, system: UnitSystem, wanted: f64) {
    match typed(text, quantity, system) {
        Ok(found) => assert!((found - wanted).abs() < 1e-9 * wanted.abs().max(1.0), "{text}: {found} is not {wanted}"),
        Err(error) => panic!("{text}: {error}"),
    }
}

#[test]
fn lengths_are_read_in_feet_and_metres_alike() {
    // An inch is 25.4 mm by definition (1959).
    for text in ["6 ft 6", "6ft 6in", "6' 6\"", "6′6″", "6 feet 6 inches", "78 in", "1.9812 m", "198.12cm", "1981,2 mm"]
    {
        reads(text, Quantity::Length, Metric, 1.9812);
        reads(text, Quantity::Length, Imperial, 1.9812);
    }
    reads("6.5", Quantity::Length, Imperial, 6.5 * 0.3048);
    reads("6,5", Quantity::Length, Metric, 6.5);
    reads("2 in", Quantity::Depth, Metric, 0.0508);
    reads("-0 ft 6", Quantity::Length, Metric, -0.1524);
}

#[test]
fn temperatures_and_their_differences_are_told_apart() {
    // 55 °F is 12.78 °C, and 9 °F of difference are 5 K.
    reads("55 F", Quantity::Temperature, Metric, (55.0 - 32.0) / 1.8);
    reads("55", Quantity::Temperature, Imperial, (55.0 - 32.0) / 1.8);
    reads("−4.5 °C", Quantity::Temperature, Imperial, -4.5);
    reads("9 F", Quantity::TemperatureDifference, Metric, 5.0);
    reads("5 K", Quantity::TemperatureDifference, Imperial, 5.0);
    reads("5 C", Quantity::TemperatureDifference, Metric, 5.0);
}

#[test]
fn other_quantities_take_the_units_of_their_trade() {
    reads("2\u{202f}000 W", Quantity::Power, Metric, 2000.0);
    reads("2 000", Quantity::Power, Metric, 2000.0);
    reads("1.5 kW", Quantity::Power, Metric, 1500.0);
    // One Btu/h is 0.29307 W (ASHRAE Fundamentals, conversion table).
    assert!((typed("1000 Btu/h", Quantity::Power, Metric).unwrap() - 293.07).abs() < 5e-3);
    reads("55 gal", Quantity::Liquid, Metric, 55.0 * 3.785_411_784);
    reads("30 %", Quantity::Share, Metric, 0.30);
    reads("30", Quantity::Share, Metric, 0.30);
    reads("22:30", Quantity::HourOfDay, Metric, 22.5);
    reads("100 cfm", Quantity::AirFlow, Metric, 100.0 * 0.3048_f64.powi(3) * 60.0);
    reads("40 m2", Quantity::Area, Imperial, 40.0);
    reads("0.5 W/m²K", Quantity::UValue, Imperial, 0.5);
    reads("180°", Quantity::Direction, Metric, 180.0);
}

#[test]
fn sums_words_and_strange_units_are_refused_with_a_remedy() {
    let refusal = |text: &str, quantity| typed(text, quantity, Metric).unwrap_err().to_string();
    for sum in ["2*3", "2 + 3", "1/2", "(4)", "7-1", "3 ft + 2 in"] {
        assert!(refusal(sum, Quantity::Length).contains("type its result, like 1.98 m or 6 ft 6"), "{sum}");
    }
    assert_eq!(refusal("warm", Quantity::Temperature), "“warm” is not a number; type it like 12.5 or 55 F");
    for nothing in ["", "  ", "-", "1.2.3", "m", "4 m 3 m 2 m", "4 m 30 cm 5", "1e400"] {
        assert!(typed(nothing, Quantity::Length, Metric).is_err(), "{nothing:?}");
    }
    let strange = refusal("5 kg", Quantity::Length);
    assert!(strange.contains("“kg”") && strange.contains("m, ft, cm, mm, in"), "{strange}");
    assert!(refusal("5 m", Quantity::Count).contains("a bare number"));
}

#[test]
fn what_the_screen_shows_is_read_back() {
    let quantities = [
        Quantity::Length,
        Quantity::Depth,
        Quantity::Area,
        Quantity::Volume,
        Quantity::Liquid,
        Quantity::Temperature,
        Quantity::TemperatureDifference,
        Quantity::Power,
        Quantity::Energy,
        Quantity::UValue,
        Quantity::HeatLossCoefficient,
        Quantity::EdgeFactor,
        Quantity::Resistance,
        Quantity::AirChanges,
        Quantity::AirFlow,
        Quantity::Speed,
        Quantity::Share,
        Quantity::HourOfDay,
        Quantity::Direction,
        Quantity::Angle,
        Quantity::AreaHeatCapacity,
        Quantity::Mass,
        Quantity::MoneyPerArea,
    ];
    for quantity in quantities {
        for system in [Metric, Imperial] {
            let unit = quantity.unit(system);
            for number in [-7.0, 0.0, 3.5, 1200.0] {
                reads(&format!("{number} {}", unit.symbol), quantity, system, unit.value(number));
            }
        }
    }
}

#[test]
fn a_refusal_repeats_no_more_than_the_beginning_of_a_long_entry() {
    let refused = typed(&"naïve words ".repeat(40), Quantity::Length, UnitSystem::Metric).unwrap_err().to_string();
    assert!(refused.starts_with("“naïve words naïve words…” is not a number"), "{refused}");
    let unit = typed(&format!("5 {}", "x".repeat(400)), Quantity::Length, UnitSystem::Metric).unwrap_err().to_string();
    assert!(unit.chars().count() < 120, "{unit}");
}
