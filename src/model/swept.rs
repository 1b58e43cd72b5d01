//! Which inputs are swept, and how far: what the view asks for, kept with the study; it changes no season.

use super::input::inputs;

inputs! {
    /// One input and the range that it is moved over.
    pub struct SweptInput {
        choices {
            input: String = String::new(), "Input", "Which input is moved, by its path in the file; empty for none";
        }
        numbers {
            from: f64, Ratio, -1000000.0..=1000000.0, 0.0, "From", "First value, in the file's units", "";
            to: f64, Ratio, -1000000.0..=1000000.0, 1.0, "To", "Last value, in the file's units", "";
            points: u32, Count, 2..=41, 9, "Points", "How many values are run, both ends included", "";
        }
    }
}

inputs! {
    /// One input, or two that make a map.
    pub struct Swept {
        choices {
            first: SweptInput = SweptInput { input: "heater.setpoint_c".to_owned(), from: 4.0, to: 12.0, ..SweptInput::default() }, "Swept", "The input along the bottom";
            second: SweptInput = SweptInput::default(), "And", "A second input, upwards, which makes a map";
        }
        numbers {}
    }
}
