//! An axis of plain values: ticks at round numbers and at both ends of its range.

use crate::format;
use crate::gui::theme::{SMALL, Tokens, regular};
use crate::units::DisplayUnit;
use egui_plot::{AxisHints, GridMark};
use std::ops::RangeInclusive;

/// Most round numbers between the ends.
const MOST: f64 = 6.0;
/// Share of the range beside its ends that has no other tick.
const CLEAR: f64 = 0.09;

/// The numbers at which ticks stand: both ends, and round ones between.
#[must_use]
pub fn ticks(from: f64, to: f64) -> Vec<GridMark> {
    let (low, high) = (from.min(to), from.max(to));
    let span = high - low;
    let power = 10_f64.powf((span / MOST).log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|m| m * power).find(|s| span / s <= MOST).unwrap_or(span);
    let clear = CLEAR * span;
    let first = ((low + clear) / step).ceil() as i64;
    let inner = (first..).map(|k| k as f64 * step).take_while(|v| *v <= high - clear);
    let all = std::iter::once(low).chain(inner).chain([high]);
    all.map(|value| GridMark { value, step_size: step }).collect()
}

/// A number without the zeros that say nothing.
#[must_use]
pub fn tick_text(value: f64, decimals: usize) -> String {
    let text = format::number(value, decimals);
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

fn formatter(unit: DisplayUnit) -> impl Fn(GridMark, &RangeInclusive<f64>) -> String {
    move |mark, _| tick_text(mark.value, unit.decimals.max(1))
}

/// The axis along the bottom.
pub fn x_axis<'a>(unit: DisplayUnit, t: &Tokens) -> AxisHints<'a> {
    AxisHints::new_x()
        .formatter(formatter(unit))
        .tick_label_color(t.soft)
        .tick_label_font(regular(SMALL))
        .label_spacing(egui::Rangef::new(4.0, 8.0))
}

/// The upright axis.
pub fn y_axis<'a>(unit: DisplayUnit, t: &Tokens) -> AxisHints<'a> {
    AxisHints::new_y()
        .formatter(formatter(unit))
        .placement(egui_plot::HPlacement::Left)
        .min_thickness(52.0)
        .tick_label_color(t.soft)
        .tick_label_font(regular(SMALL))
        .label_spacing(egui::Rangef::new(4.0, 8.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_ends_have_a_tick_and_none_crowds_them() {
        let values = |from, to| ticks(from, to).iter().map(|mark| tick_text(mark.value, 2)).collect::<Vec<_>>();
        assert_eq!(values(4.0, 12.0), ["4", "6", "8", "10", "12"]);
        assert_eq!(values(0.45, 1.35), ["0.45", "0.6", "0.8", "1", "1.2", "1.35"]);
        assert_eq!(values(12.0, 4.0), values(4.0, 12.0));
    }
}
