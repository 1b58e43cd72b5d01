//! How fast a gas cylinder gives gas, and how long it lasts.

use crate::model::{Cylinder, Draw, DrawTable};
use crate::physics::vent::linear_share;

/// Share left at which a cylinder is reckoned with: the manual's own planning rule of 50,000 Btu/h from a 100 lb cylinder
/// at 0 °F is its table with 35 lb left (generator installation manual TP-6727, appendix D).
pub const PLANNING_SHARE_LEFT: f64 = 0.35;

/// How much the content of two cylinders may differ for the draw of one to stand for the other's: 20 lb and 9 kg, 30 lb
/// and 13 kg, 40 lb and 19 kg, 47 and 48 kg. A modelling choice.
const ALIKE_SHARE: f64 = 0.05;

/// A figure for cold winters is taken to hold down to here, °C; its source names no temperature. A modelling choice.
const COLD_WINTER_C: f64 = 0.0;

/// Boiling point of propane, °C (−44 °F); no vapour below it.
pub const BOILING_POINT_C: f64 = -42.0;

/// Most continuous draw, W gross, with so much left and the liquid this cold.
///
/// From a table: linear between its rows and columns. Colder than the table, in proportion to the height above the
/// boiling point, as the table itself falls; emptier than the table, in proportion to what is left. Warmer or fuller
/// than the table, its last value. Sustained draw chills the liquid, so that by night this is an upper bound.
///
/// From one figure for cold winters: below 0 °C it falls in proportion to the height above the boiling point, as tables
/// do between 40 and 0 °F.
#[must_use]
pub fn draw_limit_w(cylinder: &Cylinder, left_kg: f64, liquid_c: f64) -> f64 {
    match &cylinder.draw {
        Draw::Table(table) => of_table(table, left_kg, liquid_c),
        Draw::ColdWinter(draw_w) => interpolated((BOILING_POINT_C, 0.0), &[(COLD_WINTER_C, *draw_w)], liquid_c),
    }
}

/// The catalogue's cylinder nearest in content, if it is nearly alike.
#[must_use]
pub fn alike(cylinders: &[Cylinder], content_kg: f64) -> Option<&Cylinder> {
    let off = |c: &Cylinder| (c.content_kg / content_kg - 1.0).abs();
    let nearest = cylinders.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
    (off(nearest) <= ALIKE_SHARE).then_some(nearest)
}

fn of_table(table: &DrawTable, left_kg: f64, liquid_c: f64) -> f64 {
    let row = |draws: &[f64]| by_temperature(&table.liquid_c, draws, liquid_c);
    let rows: Vec<(f64, f64)> = table.rows.iter().map(|r| (r.left_kg, row(&r.draw_w))).collect();
    interpolated((0.0, 0.0), &rows, left_kg)
}

fn by_temperature(columns_c: &[f64], draws_w: &[f64], liquid_c: f64) -> f64 {
    let points: Vec<(f64, f64)> = columns_c.iter().copied().zip(draws_w.iter().copied()).collect();
    interpolated((BOILING_POINT_C, 0.0), &points, liquid_c)
}

/// Linear between points that rise in x, from `origin` to the first of them; the last value beyond, the origin's before.
fn interpolated(origin: (f64, f64), points: &[(f64, f64)], x: f64) -> f64 {
    let mut from = origin;
    for &to in points {
        if x < to.0 {
            return from.1 + linear_share(x, from.0, to.0) * (to.1 - from.1);
        }
        from = to;
    }
    from.1
}

/// Hours that a store of energy lasts at a steady draw; infinite without one.
#[must_use]
pub fn lasts_h(energy_kwh: f64, draw_w: f64) -> f64 {
    energy_kwh * 1000.0 / draw_w
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::bundled_catalogue;

    #[test]
    fn the_draw_falls_to_nothing_with_the_content_and_at_the_boiling_point() {
        let cylinder = bundled_catalogue().cylinder("100 lb cylinder").expect("a row");
        // Propane boils at −42 °C (NIST Chemistry WebBook: 231.0 K): there is a draw just above it, and none at it.
        assert!(draw_limit_w(cylinder, 0.0, 20.0) == 0.0 && draw_limit_w(cylinder, 20.0, -42.0) == 0.0);
        assert!(draw_limit_w(cylinder, 20.0, -41.9) > 0.0);
        let warm = draw_limit_w(cylinder, 60.0, 40.0);
        assert!((warm - 87_921.0).abs() < 1e-9, "full and warm: the last value of the table, {warm}");
        assert!(draw_limit_w(cylinder, 20.0, -30.0) < draw_limit_w(cylinder, 20.0, -20.0));
    }
}
