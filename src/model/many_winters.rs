//! How many other winters are made up by chance.

use super::input::inputs;

inputs! {
    /// Winters made up by chance round the weather year; they change no figure of the season itself.
    pub struct ManyWinters {
        choices {}
        numbers {
            count: u32, Count, 20..=1000, 200, "Winters", "How many winters are made up by chance", "";
            seed: u32, Count, 0..=999_999, 1, "Seed", "Number that the chance winters are drawn from: the same number gives the same winters", "";
        }
    }
}
