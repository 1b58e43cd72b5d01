//! Every numeric input has an address, which is its path in the file.

use std::collections::BTreeSet;
use warmfold::explore::{find, numeric_inputs};
use warmfold::model::{House, NumberInput, Scenario, Study, Tent, Vents, Vessels};
use warmfold::storage::{demo, read_study};

fn study() -> Study {
    demo().expect("the opening study")
}

#[test]
fn no_two_inputs_share_a_path() {
    let all = numeric_inputs(&study());
    let paths: BTreeSet<&str> = all.iter().map(|input| input.path.as_str()).collect();
    assert_eq!(paths.len(), all.len());
}

/// A number in the study's text, read by hand along the path, is what the address reads.
#[test]
fn an_address_is_the_path_in_the_file() {
    let text = "(format: 1, season: (from_day: 3), prices: (electricity: (price_per_kwh: 0.31)), scenarios: [
        (name: \"a\", house: (length_m: 7.5), heater: (setpoint_night_c: 6.5)),
        (name: \"b\", tent: (height_m: 1.15), water: (vessels: [(count: 3), (litres_each: 60.0)])),
    ])";
    let study = read_study(text).expect("a study");
    let cases = [
        ("season.from_day", 0, 3.0),
        ("prices.electricity.price_per_kwh", 1, 0.31),
        ("house.length_m", 0, 7.5),
        ("heater.setpoint_night_c", 0, 6.5),
        ("tent.height_m", 1, 1.15),
        ("water.vessels[0].count", 1, 3.0),
        ("water.vessels[1].litres_each", 1, 60.0),
    ];
    for (path, scenario, expected) in cases {
        let input = find(&study, path).expect(path);
        assert_eq!(input.value(&study, scenario), Some(expected), "{path}");
    }
    // The second group of vessels belongs to the second scenario alone.
    let second = find(&study, "water.vessels[1].count").expect("a path");
    assert_eq!(second.value(&study, 0), None);
    let refusal = second.set(&mut study.clone(), 0, 2.0).expect_err("no such row");
    assert!(refusal.text(warmfold::units::UnitSystem::Metric).contains("water.vessels[1].count"));
}

/// What is written is read back, and nothing else changes: the address of one input touches no other.
#[test]
fn writing_one_input_leaves_the_others_alone() {
    let study = study();
    let all = numeric_inputs(&study);
    // Setpoints that move together, and the day that moves day and month, are other inputs' fields on purpose.
    let of_several = ["heater.setpoint_c", "season.start_moved_d"];
    for input in all.iter().filter(|input| !of_several.contains(&input.path.as_str())) {
        let mut changed = study.clone();
        let value = if input.whole { input.max.floor() } else { (input.min + input.max) / 2.0 };
        let Some(before) = input.value(&study, 2) else { continue };
        input.set(&mut changed, 2, value).expect("within its range");
        assert_eq!(input.value(&changed, 2), Some(value), "{}", input.path);
        for other in all.iter().filter(|other| !other.path.ends_with("setpoint_c") && other.path != input.path) {
            assert_eq!(other.value(&changed, 2), other.value(&study, 2), "{} by {}", other.path, input.path);
        }
        input.set(&mut changed, 2, before).expect("the value that it had");
        if input.path != "house.tightness" {
            assert_eq!(changed, study, "{}", input.path);
        }
    }
}

#[test]
fn label_range_and_quantity_are_those_of_the_single_definition() {
    fn same<T>(part: &str, place: &str, inputs: &[NumberInput<T>]) {
        let study = study();
        for row in inputs {
            let found = find(&study, &format!("{place}.{}", row.key)).expect(row.key);
            assert_eq!((found.min, found.max, found.quantity), (row.min, row.max, row.quantity), "{}", row.key);
            assert_eq!(found.label, format!("{part}: {}", row.label));
        }
    }
    same(Scenario::house.label, "house", House::NUMBERS);
    same(Scenario::tent.label, "tent", Tent::NUMBERS);
    same(Scenario::vents.label, "vents", Vents::NUMBERS);
    same("Vessels", "water.vessels[0]", Vessels::NUMBERS);
    let whole: Vec<&str> = House::NUMBERS.iter().map(|row| row.key).filter(|key| is_whole("house", key)).collect();
    assert_eq!(whole, ["shelter_class"]);
    assert!(is_whole("water.vessels[0]", "count") && !is_whole("water.vessels[0]", "litres_each"));
}

fn is_whole(place: &str, key: &str) -> bool {
    find(&study(), &format!("{place}.{key}")).expect("a path").whole
}

#[test]
fn an_unknown_path_names_the_nearest() {
    let error = find(&study(), "tent.hieght_m").expect_err("misspelt").to_string();
    assert!(error.contains("\"tent.hieght_m\"") && error.contains("did you mean \"tent.height_m\"?"), "{error}");
    let error = find(&study(), "zzz").expect_err("unknown").to_string();
    assert!(error.contains("such as tent.height_m"), "{error}");
}
