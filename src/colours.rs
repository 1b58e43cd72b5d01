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
    mix(low.1, high.1, share)
}

/// Stops of the scale from little to much, evenly spaced: dark blue over grey to yellow, which get lighter evenly and keep
/// their order without red and green sight.
///
/// Cividis of Nuñez, Anderton and Renslow, *PLOS ONE* 13(7), 2018, at every tenth.
const MUCH: [Rgb; 11] = [
    [0x00, 0x22, 0x4E],
    [0x12, 0x35, 0x70],
    [0x3B, 0x49, 0x6C],
    [0x57, 0x5D, 0x6D],
    [0x70, 0x71, 0x73],
    [0x8A, 0x86, 0x79],
    [0xA5, 0x9C, 0x74],
    [0xC3, 0xB3, 0x69],
    [0xE1, 0xCC, 0x55],
    [0xF3, 0xDB, 0x47],
    [0xFE, 0xE8, 0x38],
];

/// Colour of a share of the way from little to much.
#[must_use]
pub fn much(share: f64) -> Rgb {
    let at = if share.is_finite() { share.clamp(0.0, 1.0) * (MUCH.len() - 1) as f64 } else { 0.0 };
    let lower = (at.floor() as usize).min(MUCH.len() - 2);
    mix(MUCH[lower], MUCH[lower + 1], at - lower as f64)
}

fn mix(low: Rgb, high: Rgb, share: f64) -> Rgb {
    [0, 1, 2].map(|i: usize| {
        let value = f64::from(low[i]) + share * (f64::from(high[i]) - f64::from(low[i]));
        value.round().clamp(0.0, 255.0) as u8
    })
}

/// Black or white, whichever reads on a fill; of the two one always reaches 4.5:1.
#[must_use]
pub fn ink_on(fill: Rgb) -> Rgb {
    const BLACK: Rgb = [0; 3];
    const WHITE: Rgb = [255; 3];
    if contrast(BLACK, fill) >= contrast(WHITE, fill) { BLACK } else { WHITE }
}

/// Contrast ratio of two colours, 1 to 21; WCAG 2.2, definitions of "contrast ratio" and "relative luminance".
#[must_use]
pub fn contrast(a: Rgb, b: Rgb) -> f64 {
    let (x, y) = (luminance(a), luminance(b));
    (x.max(y) + 0.05) / (x.min(y) + 0.05)
}

fn luminance([r, g, b]: Rgb) -> f64 {
    let linear = |v: u8| {
        let s = f64::from(v) / 255.0;
        if s <= 0.04045 { s / 12.92 } else { ((s + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b)
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

    /// Lighter all the way, so that it reads in grey too.
    #[test]
    fn the_scale_of_much_gets_lighter_all_the_way() {
        let light = |[r, g, b]: Rgb| 0.299 * f64::from(r) + 0.587 * f64::from(g) + 0.114 * f64::from(b);
        let lights: Vec<f64> = (0..=100).map(|k| light(much(f64::from(k) / 100.0))).collect();
        assert!(lights.is_sorted() && lights[100] - lights[0] > 150.0, "{lights:?}");
        assert_eq!(much(f64::NAN), much(-1.0));
    }

    #[test]
    fn contrast_is_that_of_the_guidelines() {
        // WCAG 2.2: black on white has 21:1; #767676 is the lightest grey with 4.5:1 on white (WebAIM, Contrast Checker).
        assert!((contrast([0; 3], [255; 3]) - 21.0).abs() < 1e-9);
        assert!(contrast([0x76; 3], [255; 3]) >= 4.5 && contrast([0x77; 3], [255; 3]) < 4.5);
    }

    #[test]
    fn words_can_be_read_on_every_colour_of_both_scales() {
        // WCAG 2.2, criterion 1.4.3: 4.5:1 for text.
        let temperatures = (-350..450).map(|step| temperature(0.1 * f64::from(step)));
        let shares = (0..=100).map(|step| much(0.01 * f64::from(step)));
        for fill in temperatures.chain(shares) {
            assert!(contrast(ink_on(fill), fill) >= 4.5, "{fill:?}");
        }
    }
}
