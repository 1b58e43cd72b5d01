//! Colours with a meaning that window and report share, as red, green and blue.

/// Red, green, blue.
pub type Rgb = [u8; 3];

/// Number of different scenario marks.
pub const MARKS: usize = 8;

/// Colours of the scenarios on light paper; readable without colour vision together with the mark's shape.
///
/// Hues after Okabe and Ito, *Color Universal Design*, 2008, darkened to reach 3:1.
pub const ON_PAPER: [Rgb; MARKS] = [
    [0x00, 0x72, 0xB2],
    [0xA8, 0x6F, 0x00],
    [0x00, 0x7D, 0x5C],
    [0xA5, 0x4E, 0x86],
    [0x3A, 0x8F, 0xB7],
    [0x6B, 0x5F, 0x2A],
    [0x5A, 0x4F, 0xA2],
    [0x6A, 0x73, 0x78],
];

/// Stops of the temperature scale, °C: blue for cold, ember for warm, pale at what tender plants live in.
const SCALE: [(f64, Rgb); 8] = [
    (-30.0, [0x1E, 0x2F, 0x66]),
    (-15.0, [0x2F, 0x5F, 0xA5]),
    (-5.0, [0x6F, 0xA3, 0xCF]),
    (2.0, [0xBB, 0xD6, 0xE6]),
    (8.0, [0xF1, 0xE8, 0xD2]),
    (16.0, [0xF3, 0xBE, 0x7C]),
    (25.0, [0xDD, 0x77, 0x33]),
    (38.0, [0x92, 0x30, 0x14]),
];

/// Lower and upper end of the temperature scale, °C.
pub const SCALE_RANGE_C: (f64, f64) = (SCALE[0].0, SCALE[SCALE.len() - 1].0);

/// Colour of a temperature.
#[must_use]
pub fn temperature(t_c: f64) -> Rgb {
    let t_c = if t_c.is_finite() { t_c.clamp(SCALE_RANGE_C.0, SCALE_RANGE_C.1) } else { SCALE_RANGE_C.0 };
    let upper = SCALE.iter().position(|stop| t_c <= stop.0).unwrap_or(SCALE.len() - 1).max(1);
    let (low, high) = (SCALE[upper - 1], SCALE[upper]);
    let share = (t_c - low.0) / (high.0 - low.0);
    let mix = |i: usize| {
        let value = f64::from(low.1[i]) + share * (f64::from(high.1[i]) - f64::from(low.1[i]));
        value.round().clamp(0.0, 255.0) as u8
    };
    [mix(0), mix(1), mix(2)]
}

/// Dark or light ink, whichever reads on a fill.
#[must_use]
pub fn ink_on([r, g, b]: Rgb) -> Rgb {
    let light = 0.299 * f64::from(r) + 0.587 * f64::from(g) + 0.114 * f64::from(b);
    if light > 135.0 { [0x1F, 0x2A, 0x30] } else { [0xFA, 0xF8, 0xF4] }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_is_continuous_and_survives_nonsense() {
        for step in -500..500 {
            let t = f64::from(step) * 0.1;
            let (a, b) = (temperature(t), temperature(t + 0.1));
            assert!(a.iter().zip(&b).all(|(a, b)| a.abs_diff(*b) < 6), "{t}");
        }
        assert_eq!(temperature(f64::NAN), temperature(-99.0));
    }
}
