//! Validation case V8: stack flow through two openings of a well-mixed house.

use warmfold::physics::vent::{Openings, stack_flow};

#[test]
fn v8_stack_flow_through_two_openings() {
    // C_d 0.6, 2 m apart, 15 °C inside, 5 °C outside. The case has g = 9.81, the program standard gravity 9.80665: the
    // flow differs by half of 0.034 %, so 0.02 % is the least honest tolerance.
    for (high_m2, expected) in [(0.5, 0.251_960), (0.25, 0.159_353)] {
        let openings = Openings { inlet_m2: 0.5, outlet_m2: high_m2, height_m: 2.0 };
        let flow = stack_flow(0.6, openings, 15.0, 5.0);
        assert!((flow / expected - 1.0).abs() < 2e-4, "{high_m2} m²: {flow} m³/s");
        let swapped = Openings { inlet_m2: high_m2, outlet_m2: 0.5, height_m: 2.0 };
        assert!((stack_flow(0.6, swapped, 15.0, 5.0) - flow).abs() < 1e-12, "which opening is low does not matter");
    }
}
