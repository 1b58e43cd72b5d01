//! Colours with a meaning: one per scenario, and the scale from cold to warm.

use crate::colours::{self, ON_PAPER};
use egui::{Color32, Theme};

pub use crate::colours::{MARKS, SCALE_RANGE_C};

/// Colour of a scenario's mark; see [`ON_PAPER`].
#[must_use]
pub fn scenario(theme: Theme, slot: usize) -> Color32 {
    const DARK: [Color32; MARKS] = [
        Color32::from_rgb(0x56, 0xB4, 0xE9),
        Color32::from_rgb(0xE6, 0xB0, 0x2E),
        Color32::from_rgb(0x2E, 0xC4, 0x9A),
        Color32::from_rgb(0xE0, 0x95, 0xBF),
        Color32::from_rgb(0x8F, 0xD3, 0xEE),
        Color32::from_rgb(0xCF, 0xC2, 0x83),
        Color32::from_rgb(0xAE, 0xA4, 0xF0),
        Color32::from_rgb(0xB0, 0xB8, 0xBC),
    ];
    match theme {
        Theme::Light => screen(ON_PAPER[slot % MARKS]),
        Theme::Dark => DARK[slot % MARKS],
    }
}

/// Colour of a temperature.
#[must_use]
pub fn temperature(t_c: f64) -> Color32 {
    screen(colours::temperature(t_c))
}

/// Colour of a share of the way from little to much.
#[must_use]
pub fn much(share: f64) -> Color32 {
    screen(colours::much(share))
}

/// Dark or light ink, whichever reads on a fill.
#[must_use]
pub fn ink_on(fill: Color32) -> Color32 {
    screen(colours::ink_on([fill.r(), fill.g(), fill.b()]))
}

fn screen([r, g, b]: colours::Rgb) -> Color32 {
    Color32::from_rgb(r, g, b)
}
