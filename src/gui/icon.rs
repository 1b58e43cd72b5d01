//! The program's icon, drawn by code: a small house with a warm tent inside, under a night sky.

use egui::IconData;

/// Sides of the picture, px.
pub const SIDE: usize = 256;
/// Samples along each side of a pixel.
const SAMPLES: usize = 4;

/// A colour with its opacity, 0 to 1.
type Ink = [f64; 4];
/// A place in the unit square, from the upper left.
type Place = [f64; 2];

const NIGHT: Ink = [0.078, 0.102, 0.122, 1.0];
const FRAME: Ink = [0.980, 0.973, 0.957, 1.0];
const GLASS: Ink = [0.196, 0.259, 0.302, 1.0];
const WARM: Ink = [0.941, 0.541, 0.294, 1.0];
const LEAF: Ink = [0.992, 0.812, 0.506, 1.0];
const SOIL: Ink = [0.357, 0.275, 0.212, 1.0];
const CLEAR: Ink = [0.0; 4];

/// The house: floor, eaves, ridge.
const HOUSE: [Place; 5] = [[0.17, 0.76], [0.17, 0.45], [0.50, 0.17], [0.83, 0.45], [0.83, 0.76]];
/// Half the width of its frame.
const STROKE: f64 = 0.026;

/// The icon for the window.
#[must_use]
pub fn icon() -> IconData {
    let side = u32::try_from(SIDE).unwrap_or(0);
    IconData { rgba: pixels(), width: side, height: side }
}

/// RGBA, row by row.
fn pixels() -> Vec<u8> {
    let mut out = Vec::with_capacity(4 * SIDE * SIDE);
    for y in 0..SIDE {
        for x in 0..SIDE {
            out.extend(pixel(x, y));
        }
    }
    out
}

/// The mean of a pixel's samples, weighted by their opacity.
fn pixel(x: usize, y: usize) -> [u8; 4] {
    let mut sum = [0.0; 4];
    let place = |cell: usize, sample: usize| (cell as f64 + (sample as f64 + 0.5) / SAMPLES as f64) / SIDE as f64;
    for i in 0..SAMPLES * SAMPLES {
        let [r, g, b, a] = colour([place(x, i % SAMPLES), place(y, i / SAMPLES)]);
        for (total, part) in sum.iter_mut().zip([r * a, g * a, b * a, a]) {
            *total += part;
        }
    }
    let [r, g, b, a] = sum;
    let byte = |share: f64| (share.clamp(0.0, 1.0) * 255.0).round() as u8;
    let opaque = a.max(f64::MIN_POSITIVE);
    [byte(r / opaque), byte(g / opaque), byte(b / opaque), byte(a / (SAMPLES * SAMPLES) as f64)]
}

/// What lies on top at a place.
fn colour(at: Place) -> Ink {
    let layers: [(bool, Ink); 6] = [
        (on_outline(at), FRAME),
        (in_seedling(at), LEAF),
        (in_tent(at), WARM),
        (inside(at) && at[1] < 0.76, GLASS),
        (in_card(at) && 0.76 <= at[1] + STROKE && at[1] < 0.87 && (0.10..0.90).contains(&at[0]), SOIL),
        (in_card(at), NIGHT),
    ];
    layers.into_iter().find(|(there, _)| *there).map_or(CLEAR, |(_, ink)| ink)
}

/// The rounded square that everything stands on.
fn in_card([x, y]: Place) -> bool {
    let (radius, half) = (0.20, 0.48);
    let corner = |v: f64| ((v - 0.5).abs() - (half - radius)).max(0.0);
    corner(x).hypot(corner(y)) <= radius
}

/// Between walls and under both slopes.
fn inside([x, y]: Place) -> bool {
    let [left, _] = HOUSE[0];
    let ([_, eaves], [_, ridge]) = (HOUSE[1], HOUSE[2]);
    let rise = (eaves - ridge) / (0.5 - left);
    (left..=1.0 - left).contains(&x) && y >= ridge + (x - 0.5).abs() * rise
}

fn on_outline(at: Place) -> bool {
    let ends = HOUSE.iter().zip(HOUSE.iter().cycle().skip(1));
    ends.into_iter().any(|(from, to)| distance(at, *from, *to) <= STROKE)
}

/// Distance of a place from a stretch.
fn distance([x, y]: Place, [ax, ay]: Place, [bx, by]: Place) -> f64 {
    let (dx, dy) = (bx - ax, by - ay);
    let along = (((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
    (x - ax - along * dx).hypot(y - ay - along * dy)
}

/// The tent: a low arch on the floor.
fn in_tent([x, y]: Place) -> bool {
    y < 0.76 && ((x - 0.5) / 0.21).hypot((y - 0.76) / 0.25) <= 1.0
}

/// A seedling's two leaves, lit by the warmth.
fn in_seedling([x, y]: Place) -> bool {
    let stem = (x - 0.5).abs() < 0.013 && (0.62..0.76).contains(&y);
    let leaf = |side: f64| {
        let (dx, dy) = ((x - 0.5) * side - 0.062, y - 0.625);
        let (along, across) = (dx * 0.92 - dy * 0.39, dx * 0.39 + dy * 0.92);
        (along / 0.066).hypot(across / 0.030) <= 1.0
    };
    stem || leaf(1.0) || leaf(-1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::ColorImage;

    /// `WARMFOLD_WRITE_ICON=1 cargo test icon` writes it.
    #[test]
    fn the_picture_on_disk_is_the_icon() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/assets/icon/warmfold.png");
        let picture = ColorImage::from_rgba_unmultiplied([SIDE, SIDE], &pixels());
        let bytes = crate::gui::picture::png_of(&picture).expect("a square picture");
        if std::env::var_os("WARMFOLD_WRITE_ICON").is_some() {
            std::fs::write(path, &bytes).expect("the folder is there");
        }
        assert!(std::fs::read(path).is_ok_and(|there| there == bytes), "stale: WARMFOLD_WRITE_ICON=1 cargo test icon");
    }

    #[test]
    fn corners_are_clear_and_the_tent_is_warm() {
        assert_eq!(pixel(0, 0)[3], 0);
        let [r, g, b, a] = pixel(SIDE * 38 / 100, SIDE * 70 / 100);
        assert!(a == 255 && r > g && g > b, "{r} {g} {b}");
    }
}
