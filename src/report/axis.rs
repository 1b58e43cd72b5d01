//! Axes of the plots: from values to the page, round marks, months and days.

use super::figure::{HAIRLINE, SOFT, line, text};
use crate::format;
use crate::season::HourStamp;
use crate::season::sums::Day;
use maud::{Markup, html};

/// A plot's frame on the page, and the values at its edges.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axes {
    /// Left and right edge.
    pub across: (f64, f64),
    /// Top and bottom edge.
    pub down: (f64, f64),
    /// Values at the left and the right edge.
    pub x: (f64, f64),
    /// Values at the bottom and the top edge.
    pub y: (f64, f64),
}

impl Axes {
    pub fn x(&self, value: f64) -> f64 {
        self.across.0 + share(value, self.x) * (self.across.1 - self.across.0)
    }

    pub fn y(&self, value: f64) -> f64 {
        self.down.1 - share(value, self.y) * (self.down.1 - self.down.0)
    }

    pub fn at(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [self.x(x), self.y(y)]
    }

    /// Hairlines and values of the upright axis.
    pub fn upright(&self, most: usize, say: impl Fn(f64) -> String) -> Markup {
        html! {
            @for value in ticks(self.y.0, self.y.1, most) {
                @let y = self.y(value);
                (line(&[[self.across.0, y], [self.across.1, y]], HAIRLINE, 0.7, ""))
                (text(self.across.0 - 6.0, y + 3.2, "end", "tick", &say(value)))
            }
        }
    }

    /// Months under a plot of the season, days under one of a few weeks.
    pub fn dates(&self, days: &[Day]) -> Markup {
        if days.len() < DAYS_SHOWN_AS_MONTHS { self.every_few_days(days) } else { self.months(days) }
    }

    fn months(&self, days: &[Day]) -> Markup {
        let mut starts: Vec<(f64, HourStamp)> = Vec::new();
        for day in days {
            if starts.last().is_none_or(|(_, at)| at.month != day.at.month) {
                starts.push((day.hour as f64, day.at));
            }
        }
        let ends = starts.iter().skip(1).map(|(hour, _)| *hour).chain([self.x.1]).collect::<Vec<_>>();
        html! {
            @for ((start, at), end) in starts.iter().zip(ends) {
                (self.tick(*start))
                @if self.x(end) - self.x(*start) > 22.0 {
                    (text(self.x(f64::midpoint(*start, end)), self.down.1 + 14.0, "middle", "tick", format::month(at.month)))
                }
            }
            (self.tick(self.x.1))
        }
    }

    fn every_few_days(&self, days: &[Day]) -> Markup {
        let step = days.len().div_ceil(9).max(1);
        html! {
            @for day in days.iter().step_by(step) {
                (self.tick(day.hour as f64))
                (text(self.x(day.hour as f64) + 2.0, self.down.1 + 14.0, "start", "tick", &format::day(day.at)))
            }
        }
    }

    fn tick(&self, x: f64) -> Markup {
        let x = self.x(x);
        line(&[[x, self.down.1], [x, self.down.1 + 5.0]], SOFT, 0.7, "")
    }
}

/// A season shorter than this is marked by days.
const DAYS_SHOWN_AS_MONTHS: usize = 62;

fn share(value: f64, (low, high): (f64, f64)) -> f64 {
    if high > low { (value - low) / (high - low) } else { 0.0 }
}

/// Round values at 1, 2 or 5 times a power of ten between two values, `most` at the most.
pub(super) fn ticks(low: f64, high: f64, most: usize) -> Vec<f64> {
    let least = (high - low) / most.max(1) as f64;
    if !(least.is_finite() && least > 0.0) {
        return Vec::new();
    }
    let power = 10_f64.powf(least.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|m| m * power).find(|s| *s >= least * 0.999).unwrap_or(least);
    let (first, last) = ((low / step - 1e-6).ceil(), (high / step + 1e-6).floor());
    (0..=most).map(|i| first + i as f64).take_while(|i| *i <= last).map(|i| i * step).collect()
}

/// Lowest and highest of what is a number; none of nothing.
pub(super) fn span(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    values.filter(|v| v.is_finite()).fold(None, |span, v| {
        let (low, high) = span.unwrap_or((v, v));
        Some((low.min(v), high.max(v)))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_round_and_few() {
        assert_eq!(ticks(0.0, 1640.0, 5), [0.0, 500.0, 1000.0, 1500.0]);
        assert_eq!(ticks(-33.0, 12.0, 6), [-30.0, -20.0, -10.0, 0.0, 10.0]);
        assert!(ticks(0.0, f64::NAN, 5).is_empty() && ticks(1.0, 1.0, 5).is_empty());
    }
}
