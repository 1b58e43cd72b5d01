//! The arch of a tunnel: points at equal parametric angles, exact length, exact area under it.

use crate::model::ArchCurve;
use std::f64::consts::PI;

/// Facets that an arch is cut into (a choice of this program; exact length and area are kept).
pub const ARCH_FACETS: usize = 12;

/// Intervals of the Simpson rule for the ellipse's length; its error is then far below a millimetre.
const SIMPSON_INTERVALS: usize = 512;

/// An arch that springs from two points `width` apart and rises `rise` above them, both in metres and above zero.
#[derive(Debug, Clone, Copy)]
pub struct Arch {
    curve: ArchCurve,
    width_m: f64,
    rise_m: f64,
}

impl Arch {
    /// An arch of this curve.
    #[must_use]
    pub fn new(curve: ArchCurve, width_m: f64, rise_m: f64) -> Self {
        Self { curve, width_m, rise_m }
    }

    /// Radius of the circle through both springings and the crown, m: `R = (W²/4 + r²)/2r`.
    fn radius_m(&self) -> f64 {
        (self.width_m * self.width_m / 4.0 + self.rise_m * self.rise_m) / (2.0 * self.rise_m)
    }

    /// Half the angle that the circle's arc spans, rad.
    fn half_angle(&self) -> f64 {
        let radius = self.radius_m();
        ((radius - self.rise_m) / radius).clamp(-1.0, 1.0).acos()
    }

    /// Point at share `s` (0 back springing, 1 front springing) of the parametric angle: (x from the middle towards
    /// the front, height above the springings), m.
    #[must_use]
    pub fn point(&self, s: f64) -> (f64, f64) {
        match self.curve {
            ArchCurve::Circle => {
                let radius = self.radius_m();
                let angle = (2.0 * s - 1.0) * self.half_angle();
                (radius * angle.sin(), radius * angle.cos() - (radius - self.rise_m))
            }
            ArchCurve::HalfEllipse => {
                let angle = PI * (1.0 - s);
                (self.width_m / 2.0 * angle.cos(), self.rise_m * angle.sin())
            }
        }
    }

    /// Exact length of the arch, m.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        match self.curve {
            ArchCurve::Circle => 2.0 * self.radius_m() * self.half_angle(),
            ArchCurve::HalfEllipse => {
                let (a, b) = (self.width_m / 2.0, self.rise_m);
                let speed = |angle: f64| (a * angle.sin()).hypot(b * angle.cos());
                let step = PI / SIMPSON_INTERVALS as f64;
                let inner: f64 =
                    (1..SIMPSON_INTERVALS).map(|i| if i % 2 == 1 { 4.0 } else { 2.0 } * speed(step * i as f64)).sum();
                step / 3.0 * (speed(0.0) + inner + speed(PI))
            }
        }
    }

    /// Exact area between arch and springing line, m².
    #[must_use]
    pub fn area_m2(&self) -> f64 {
        match self.curve {
            ArchCurve::Circle => {
                let (radius, half) = (self.radius_m(), self.half_angle());
                radius * radius * (half - half.sin() * half.cos())
            }
            ArchCurve::HalfEllipse => PI * self.width_m / 2.0 * self.rise_m / 2.0,
        }
    }

    /// Height above the springings at `x` from the middle, m; zero outside the springings.
    #[must_use]
    pub fn height_m(&self, x: f64) -> f64 {
        let half = self.width_m / 2.0;
        if x.abs() > half {
            return 0.0;
        }
        match self.curve {
            ArchCurve::Circle => {
                let radius = self.radius_m();
                (radius * radius - x * x).max(0.0).sqrt() - (radius - self.rise_m)
            }
            ArchCurve::HalfEllipse => self.rise_m * (1.0 - (x / half).powi(2)).max(0.0).sqrt(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_circle_has_its_textbook_length_and_area() {
        // Both curves are a half circle when the rise is half the width: length πr, area πr²/2 (plane geometry).
        for curve in [ArchCurve::Circle, ArchCurve::HalfEllipse] {
            let arch = Arch::new(curve, 4.0, 2.0);
            assert!((arch.length_m() - 2.0 * PI).abs() < 1e-9);
            assert!((arch.area_m2() - 2.0 * PI).abs() < 1e-9);
            assert!((arch.height_m(1.0) - 3.0_f64.sqrt()).abs() < 1e-12);
        }
    }

    #[test]
    fn flat_and_bulging_arcs_agree_with_their_polygon() {
        for (curve, rise) in [(ArchCurve::Circle, 0.4), (ArchCurve::Circle, 2.6), (ArchCurve::HalfEllipse, 1.1)] {
            let arch = Arch::new(curve, 4.0, rise);
            let points: Vec<_> = (0..=20_000).map(|i| arch.point(f64::from(i) / 20_000.0)).collect();
            let length: f64 = points.windows(2).map(|p| (p[1].0 - p[0].0).hypot(p[1].1 - p[0].1)).sum();
            let area: f64 = points.windows(2).map(|p| (p[1].0 - p[0].0) * (p[1].1 + p[0].1) / 2.0).sum();
            assert!((arch.length_m() - length).abs() < 1e-6, "{curve:?} {rise}");
            assert!((arch.area_m2() - area).abs() < 1e-6, "{curve:?} {rise}");
        }
    }
}
