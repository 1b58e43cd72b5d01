//! Pieces of drawings: colours, dashes, marks, hatching, lines and texts as SVG.

use crate::colours::{MARKS, ON_PAPER, Rgb};
use maud::{Markup, html};

/// Width of a drawing over the whole page, px.
pub(super) const WIDTH: f64 = 680.0;
pub(super) const INK: &str = "#1f2a30";
pub(super) const SOFT: &str = "#57626a";
pub(super) const HAIRLINE: &str = "#d9d3c6";
pub(super) const PAPER: &str = "#ffffff";
pub(super) const ACCENT: &str = "#b5471b";

/// Dashes of the scenarios' lines.
const DASHES: [&str; MARKS] = ["", "7 2.5", "2 2", "9 2.5 2 2.5", "4 2", "12 3", "9 2.5 2 2.5 2 2.5", "1.2 2.6"];

/// A coordinate: two decimals at most, and a number in any case.
pub(super) fn n(value: f64) -> String {
    if !value.is_finite() {
        return "0".to_owned();
    }
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

pub(super) fn hex([r, g, b]: Rgb) -> String {
    format!("#{r:02x}{g:02x}{b:02x}")
}

/// Colour of a scenario.
pub(super) fn colour(slot: usize) -> String {
    hex(ON_PAPER[slot % MARKS])
}

/// Dashes of a scenario's line.
pub(super) fn dashes(slot: usize) -> &'static str {
    DASHES[slot % MARKS]
}

/// Fill of a scenario's bars.
pub(super) fn hatch(slot: usize) -> String {
    format!("url(#hatch-{})", slot % MARKS)
}

/// Points of a line or an area, for `points`.
pub(super) fn points(points: &[[f64; 2]]) -> String {
    points.iter().map(|[x, y]| format!("{},{}", n(*x), n(*y))).collect::<Vec<_>>().join(" ")
}

/// A line through points.
pub(super) fn line(through: &[[f64; 2]], colour: &str, width: f64, dashes: &str) -> Markup {
    let dashes = (!dashes.is_empty()).then_some(dashes);
    html! {
        polyline points=(points(through)) fill="none" stroke=(colour) stroke-width=(n(width)) stroke-dasharray=[dashes]
            stroke-linejoin="round" {}
    }
}

/// A filled rectangle.
pub(super) fn bar(x: f64, y: f64, width: f64, height: f64, fill: &str, stroke: &str) -> Markup {
    html! {
        rect x=(n(x)) y=(n(y)) width=(n(width.max(0.0))) height=(n(height.max(0.0))) fill=(fill) stroke=(stroke)
            stroke-width="0.7" {}
    }
}

/// A text; `class` sets size and colour, `anchor` is start, middle or end.
pub(super) fn text(x: f64, y: f64, anchor: &str, class: &str, words: &str) -> Markup {
    html! { text x=(n(x)) y=(n(y)) text-anchor=(anchor) class=(class) { (words) } }
}

/// A scenario's mark: a shape of its own, with a rim of paper that sets it off from lines.
pub(super) fn mark(slot: usize, x: f64, y: f64, r: f64) -> Markup {
    let ring = |count: usize, radius: f64, turn: f64| -> Vec<[f64; 2]> {
        let corner = |i: usize| {
            let angle = std::f64::consts::TAU * i as f64 / count as f64 + turn;
            [x + radius * angle.sin(), y - radius * angle.cos()]
        };
        (0..count).map(corner).collect()
    };
    let fill = colour(slot);
    let polygon = |corners: Vec<[f64; 2]>| html! { polygon points=(points(&corners)) fill=(fill) stroke=(PAPER) {} };
    let strokes = |tips: Vec<[f64; 2]>| {
        let path: String =
            tips.iter().map(|[u, v]| format!("M{},{}L{},{}", n(*u), n(*v), n(2.0 * x - u), n(2.0 * y - v))).collect();
        html! { path d=(path) stroke=(fill) stroke-width=(n(r * 0.6)) fill="none" {} }
    };
    let eighth = std::f64::consts::FRAC_PI_4;
    match slot % MARKS {
        0 => polygon(ring(4, r * 1.25, eighth)),
        1 => html! { circle cx=(n(x)) cy=(n(y)) r=(n(r)) fill=(fill) stroke=(PAPER) {} },
        2 => polygon(ring(3, r * 1.3, 0.0)),
        3 => polygon(ring(4, r * 1.3, 0.0)),
        4 => strokes(ring(4, r * 1.1, eighth)),
        5 => polygon(ring(3, r * 1.3, std::f64::consts::PI)),
        6 => strokes(ring(3, r * 1.2, 0.0)),
        _ => strokes(ring(4, r * 1.1, 0.0)),
    }
}

/// A scenario's mark beside its name.
pub(super) fn badge(slot: usize) -> Markup {
    html! { svg class="badge" viewBox="0 0 12 12" aria-hidden="true" { (mark(slot, 6.0, 6.0, 4.4)) } }
}

/// A scenario's name with its mark.
pub(super) fn named(slot: usize, name: &str) -> Markup {
    html! { span class="named" { (badge(slot)) (name) } }
}

/// A sample of a scenario's line.
pub(super) fn line_sample(slot: usize) -> Markup {
    html! {
        svg class="sample" viewBox="0 0 36 12" aria-hidden="true" {
            (line(&[[0.0, 6.0], [36.0, 6.0]], &colour(slot), 1.8, dashes(slot))) (mark(slot, 18.0, 6.0, 3.6))
        }
    }
}

/// A sample of any line.
pub(super) fn plain_sample(colour: &str, width: f64, dashes: &str) -> Markup {
    html! {
        svg class="sample" viewBox="0 0 36 12" aria-hidden="true" {
            (line(&[[0.0, 6.0], [36.0, 6.0]], colour, width, dashes))
        }
    }
}

/// A sample of a scenario's bar.
pub(super) fn bar_sample(slot: usize) -> Markup {
    html! {
        svg class="sample" viewBox="0 0 36 12" aria-hidden="true" {
            (bar(4.0, 1.0, 28.0, 10.0, &hatch(slot), &colour(slot)))
        }
    }
}

/// Hatchings of the scenarios' bars and of what rises; defined once on the page.
pub(super) fn hatchings() -> Markup {
    const STROKES: [&str; MARKS] = [
        "",
        "M-1,5L5,-1M-1,1L1,-1M3,5L5,3",
        "M0,2H4",
        "M-1,-1L5,5M-1,3L1,5M3,-1L5,1",
        "M2,0V4",
        "M0,2H4M2,0V4",
        "M-1,5L5,-1M-1,-1L5,5",
        "M1.4,2H2.6",
    ];
    let tile = |id: String, colour: &str, wash: &str, strokes: &str| {
        html! {
            pattern id=(id) width="4" height="4" patternUnits="userSpaceOnUse" {
                rect width="4" height="4" fill=(wash) {}
                path d=(strokes) stroke=(colour) stroke-width="1.1" fill="none" {}
            }
        }
    };
    html! {
        svg class="defs" width="0" height="0" aria-hidden="true" {
            defs {
                @for (slot, strokes) in STROKES.into_iter().enumerate() {
                    // The first scenario's bars are filled.
                    @let wash = if strokes.is_empty() { colour(slot) } else { PAPER.to_owned() };
                    (tile(format!("hatch-{slot}"), &colour(slot), &wash, strokes))
                }
                (tile("hatch-rise".to_owned(), ACCENT, PAPER, STROKES[1]))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scenarios_differ_without_colour() {
        for (i, dashes) in DASHES.iter().enumerate() {
            assert!(!DASHES[..i].contains(dashes), "{dashes:?} twice");
            let drawn = |slot| mark(slot, 6.0, 6.0, 4.0).into_string().replace(&colour(slot), "");
            assert!((0..i).all(|other| drawn(other) != drawn(i)), "mark {i} is that of another");
        }
    }

    #[test]
    fn a_coordinate_is_a_short_number_whatever_comes() {
        assert_eq!([n(1.0), n(-0.001), n(12.345), n(f64::NAN)], ["1", "0", "12.35", "0"]);
    }
}
