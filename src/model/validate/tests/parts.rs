//! Rules between the parts of a scenario.

use super::*;

#[test]
fn coverings() {
    one(&in_scenario(|s| s.covering.sheets.clear()), "scenarios[0].covering.sheets", &["at least one sheet"]);
    one(
        &in_scenario(|s| s.covering.sheets = vec!["bubble-liner".to_owned(), "glass".to_owned()]),
        "scenarios[0].covering.sheets[0]",
        &["liner", "outermost"],
    );
    let exception = |part, covering| PartException { part, covering };
    one(
        &in_scenario(|s| s.covering.exceptions = vec![exception(Part::Back, PartCovering::Opaque(9.0))]),
        "scenarios[0].covering.exceptions[0].covering",
        &["0.05 W/m²K to 7 W/m²K"],
    );
    one(
        &in_scenario(|s| s.covering.exceptions = vec![exception(Part::Ends, PartCovering::Opaque(0.5)); 2]),
        "scenarios[0].covering.exceptions[1].part",
        &["\"Ends\" stands twice"],
    );
    one(
        &in_scenario(|s| {
            s.house.shape = Shape::LeanTo;
            s.covering.exceptions = vec![exception(Part::Back, PartCovering::Opaque(0.5))];
        }),
        "scenarios[0].covering.exceptions[0].part",
        &["party wall"],
    );
    one(
        &in_scenario(|s| {
            s.night_cover.present = true;
            s.night_cover.parts.clear();
        }),
        "scenarios[0].night_cover.parts",
        &["no part"],
    );
}

#[test]
fn heights_of_the_house() {
    for shape in [Shape::Gable, Shape::LeanTo, Shape::Tunnel] {
        let low = in_scenario(|s| {
            s.house.shape = shape;
            s.house.ridge_height_m = 1.5;
        });
        one(&low, "scenarios[0].house.ridge_height_m", &["1.5 m", "1.6 m"]);
    }
    let flat = in_scenario(|s| {
        s.house.shape = Shape::FlatBox;
        s.house.eaves_height_m = 0.1;
        s.bench.present = false;
    });
    one(&flat, "scenarios[0].house.eaves_height_m", &["0.2 m"]);
}

#[test]
fn a_tent_that_does_not_fit_names_corner_and_overlap() {
    // Gable 3 m wide, eaves 1.6 m, ridge 2.4 m: 0.6 m off the middle the roof is at 1.6 + 0.8·(1 − 0.6/1.5) = 2.08 m.
    let high = in_scenario(|s| {
        s.tent.present = true;
        (s.tent.height_m, s.tent.base_height_m) = (1.5, 0.8);
    });
    assert_eq!(high.len(), 2, "{high:?}");
    assert!(high[0].contains("upper front corner stands 0.22 m above the roof, which is 2.08 m high"), "{high:?}");
    assert!(high[1].contains("upper back corner"), "{high:?}");
    // Moved 1.2 m forward its front side stands at 1.8 m, 0.3 m beyond the wall.
    let moved = in_scenario(|s| {
        s.tent.present = true;
        s.tent.offset_m = 1.2;
    });
    one(&moved, "scenarios[0].tent.width_m", &["front side stands 0.3 m beyond"]);
    let long = in_scenario(|s| {
        s.tent.present = true;
        s.tent.length_m = 6.5;
    });
    one(&long, "scenarios[0].tent.length_m", &["6.5 m", "6 m"]);
}

#[test]
fn a_round_arch_bounds_the_tent() {
    // Half circle of radius 1.5 m on the ground: at 0.9 m off the middle it is 1.2 m high (3-4-5 triangle).
    let place = |height_m: f64| {
        in_scenario(|s| {
            s.house.shape = Shape::Tunnel;
            (s.house.eaves_height_m, s.house.ridge_height_m) = (0.0, 1.5);
            (s.tent.present, s.tent.base) = (true, TentBase::Floor);
            (s.tent.width_m, s.tent.height_m) = (1.8, height_m);
        })
    };
    assert_eq!(place(1.2), Vec::<String>::new());
    assert!(place(1.3)[0].contains("0.1 m above the roof, which is 1.2 m high"));
}

#[test]
fn benches_and_vessels_have_room() {
    one(&in_scenario(|s| s.bench.length_m = 7.0), "scenarios[0].bench.length_m", &["7 m × 1 m", "6 m × 3 m"]);
    one(&in_scenario(|s| s.bench.count = 5), "scenarios[0].bench.count", &["20 m²", "18 m²"]);
    let in_tent = in_scenario(|s| {
        s.tent.present = true;
        s.bench.width_m = 1.3;
    });
    assert!(in_tent[0].contains("does not fit the tent's bench board"), "{in_tent:?}");
    let drums = in_scenario(|s| {
        s.water.present = true;
        s.water.vessels[0].count = 67;
    });
    // 67 × 0.27 m² = 18.09 m² on 18 m².
    one(&drums, "scenarios[0].water.vessels", &["18.09 m²", "18 m²"]);
    one(
        &in_scenario(|s| {
            (s.tent.present, s.tent.base) = (true, TentBase::Floor);
            s.bench.height_m = 0.95;
        }),
        "scenarios[0].bench.height_m",
        &["0.95 m is higher than the tent"],
    );
}

#[test]
fn vents_and_setpoints() {
    one(&in_scenario(|s| s.vents.full_at_c = 20.0), "scenarios[0].vents.full_at_c", &["not above 20 °C"]);
    let garden = in_scenario(|s| s.heater.setpoint_day_c = Some(21.0));
    one(&garden, "scenarios[0].heater.setpoint_day_c", &["heat the garden", "lower the setpoint"]);
    let tent = in_scenario(|s| {
        s.tent.present = true;
        s.heater.setpoint_day_c = Some(21.0);
    });
    assert_eq!(tent, Vec::<String>::new(), "a tent's heater does not open the vents of the house");
    let fan = in_scenario(|s| {
        (s.vents.fan_present, s.vents.fan_starts_at_c) = (true, 6.0);
        s.heater.setpoint_night_c = None;
    });
    one(&fan, "scenarios[0].heater.setpoint_day_c", &["fan starts"]);
}

#[test]
fn heaters_in_their_place() {
    one(
        &in_scenario(|s| s.heater.target = HeatTarget::Bench),
        "scenarios[0].heater.target",
        &["put up the tent or heat the air"],
    );
    one(&in_scenario(|s| s.heater.target = HeatTarget::Water), "scenarios[0].heater.target", &["add vessels"]);
    let elsewhere = in_scenario(|s| {
        (s.tent.present, s.water.present) = (true, true);
        s.heater.target = HeatTarget::Water;
    });
    one(&elsewhere, "scenarios[0].heater.target", &["no vessels stand in its zone"]);
    let standby = in_scenario(|s| {
        s.standby.present = true;
        s.standby.setpoint_night_c = Some(8.0);
    });
    one(&standby, "scenarios[0].standby.setpoint_night_c", &["8 °C at 0:00 is not below the first heater's 8 °C"]);
    let other_sensor = in_scenario(|s| {
        s.tent.present = true;
        (s.standby.present, s.standby.zone, s.standby.setpoint_night_c) = (true, Zone::House, Some(8.0));
    });
    assert_eq!(other_sensor, Vec::<String>::new());
    let pump = found(|s| {
        s.prices.fuels.push(FuelPrice::default());
        (s.scenarios[0].heater.heat_pump, s.scenarios[0].heater.fuel) = (true, "propane".to_owned());
    });
    one(&pump, "scenarios[0].heater.fuel", &["runs on electricity"]);
}
