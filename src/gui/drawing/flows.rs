//! The heat that moves in an hour, as arrows as wide as their watts.

use super::hour::Hour;
use super::paint::Pen;
use crate::format;
use crate::geometry::section::{Block, Point, Section};
use crate::gui::board::Season;
use crate::gui::theme::{SMALL, regular};
use egui::{Align2, Color32, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

/// Width of the widest arrow of the season, points.
const WIDEST: f32 = 26.0;
/// Arrows that would be thinner than this are left out, points.
const LEFT_OUT: f32 = 0.2;
/// The thinnest arrow that can be seen, points.
const THINNEST: f32 = 1.4;
/// Heat that comes in.
const GAIN: Color32 = Color32::from_rgb(0xF0, 0x8A, 0x4B);
/// Heat from the sun.
const SUN: Color32 = Color32::from_rgb(0xE3, 0x9A, 0x1E);
/// Heat that leaves.
const LOSS: Color32 = Color32::from_rgb(0x3E, 0x74, 0xA8);

/// One flow: where it starts, which way it goes when positive, and how strong it is.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Flow {
    from: Point,
    /// Right and up, of length one.
    towards: [f64; 2],
    watts: f64,
    length: f32,
    colour: Color32,
}

/// Strongest flow of the season that is drawn, W: what the widest arrow stands for.
#[must_use]
pub fn widest_w(season: &Season) -> f64 {
    let hours = &season.run.hours;
    let series = [&hours.heater_w, &hours.skin_loss_w, &hours.sun_w, &hours.vent_loss_w];
    series.iter().flat_map(|column| column.iter()).copied().fold(1.0, f64::max)
}

impl Pen<'_> {
    /// Paints the flows and what their width means.
    pub fn flows(&self, section: &Section, hour: &Hour, widest_w: f64, rect: Rect) {
        for flow in flows(section, hour) {
            let width = WIDEST * (flow.watts.abs() / widest_w) as f32;
            if width >= LEFT_OUT {
                self.arrow(&flow, width.clamp(THINNEST, WIDEST));
            }
        }
        self.key(widest_w, rect);
    }

    fn arrow(&self, flow: &Flow, width: f32) {
        let way = vec2(flow.towards[0] as f32, -flow.towards[1] as f32);
        // A wide arrow needs a shaft to be one; under the ground there is no room.
        let length = if flow.towards[1] < -0.9 { flow.length } else { flow.length.max(width * 1.4) };
        let foot = self.frame.at(flow.from);
        let (tail, way) = if flow.watts < 0.0 { (foot + way * length, -way) } else { (foot, way) };
        let colour = flow.colour.gamma_multiply(self.fade);
        let shapes = arrow(tail, way, length, width);
        // A rim of paper first: a blue arrow must stand out from a cold house.
        for shape in &shapes {
            self.painter.add(Shape::closed_line(shape.clone(), Stroke::new(2.0, self.t.paper)));
        }
        for shape in shapes {
            self.painter.add(Shape::convex_polygon(shape, colour, Stroke::NONE));
        }
    }

    /// How wide a round number of watts is.
    fn key(&self, widest_w: f64, rect: Rect) {
        let watts = round_below(widest_w * 0.5);
        let width = WIDEST * (watts / widest_w) as f32;
        let at = pos2(rect.left() + 14.0, self.frame.origin.y - 24.0 - width / 2.0);
        for shape in arrow(at, vec2(1.0, 0.0), 26.0, width) {
            self.painter.add(Shape::convex_polygon(shape, self.t.soft, Stroke::NONE));
        }
        let below = pos2(at.x, self.frame.origin.y - 10.0);
        self.painter.text(below, Align2::LEFT_CENTER, format::power(watts), regular(SMALL), self.t.ink);
    }
}

/// 1, 2 or 5 times a power of ten, the largest not above a value.
fn round_below(value: f64) -> f64 {
    let power = 10.0_f64.powf(value.max(1.0).log10().floor());
    [5.0, 2.0].iter().map(|n| n * power).find(|round| *round <= value).unwrap_or(power)
}

/// Shaft and head of an arrow.
fn arrow(tail: Pos2, way: Vec2, length: f32, width: f32) -> [Vec<Pos2>; 2] {
    let side = vec2(-way.y, way.x);
    let head = (width * 0.5 + 4.0).min(length * 0.55);
    let (neck, tip) = (tail + way * (length - head), tail + way * length);
    let (half, wing) = (side * width / 2.0, side * (width / 2.0 + 3.0));
    [vec![tail + half, neck + half, neck - half, tail - half], vec![neck + wing, tip, neck - wing]]
}

fn flows(section: &Section, hour: &Hour) -> Vec<Flow> {
    let (width, height) = (section.width_m, section.height_m);
    let loss = |from, towards, watts, length| Flow { from, towards, watts, length, colour: LOSS };
    let gain = |from, towards, watts, length| Flow { from, towards, watts, length, colour: GAIN };
    let roof = |share: f64| [width * share, section.roof_at(width * share)];
    let mut out = vec![
        loss(roof(0.2), section.normal_at(width * 0.2), hour.skin_w, 28.0),
        loss(roof(0.38), section.normal_at(width * 0.38), hour.leakage_w, 24.0),
        loss([width * 0.1, 0.0], [0.0, -1.0], hour.ground_w, 15.0),
    ];
    if let Some(flap) = section.flaps.first() {
        let towards = if flap.hinge[0] < width * 0.9 { [0.35, 0.94] } else { [1.0, 0.0] };
        out.push(loss(flap.tip(hour.vent_opening), towards, hour.vent_w, 26.0));
    }
    if section.party_wall.is_some() {
        out.push(loss([0.0, height * 0.45], [-1.0, 0.0], hour.party_wall_w, 22.0));
    }
    if let Some(sun) = hour.sun {
        // From the side where the sun is drawn: south in the middle, morning on the left.
        let across = (sun[0].atan2(-sun[1]) / std::f64::consts::PI * 1.8).clamp(-0.7, 0.7);
        let down = (1.0 - across * across).sqrt();
        out.push(Flow { from: roof(0.72), towards: [-across, down], watts: -hour.sun_w, length: 34.0, colour: SUN });
    }
    if let Some(tent) = &section.tent {
        // Through the wall to the left: above the tent stands the temperature of the house.
        let at = [tent.min[0], tent.min[1] + (tent.max[1] - tent.min[1]) * 0.75];
        out.push(loss(at, [-1.0, 0.0], hour.tent_w, 22.0));
    }
    for row in &section.vessels {
        let in_tent = row.zone == crate::model::Zone::Tent && section.tent.is_some();
        let watts = if in_tent { hour.tent_water_w } else { hour.house_water_w };
        out.extend(row.blocks.first().map(|block| gain(above(block), [0.0, 1.0], watts, 20.0)));
    }
    for (block, standby) in &section.heaters {
        let watts = if *standby { hour.standby_w } else { hour.heater_w };
        out.push(gain(above(block), [0.0, 1.0], watts, 24.0));
    }
    out
}

fn above(block: &Block) -> Point {
    [(block.min[0] + block.max[0]) / 2.0, block.max[1] + 0.03]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::section::section;
    use crate::model::Scenario;

    #[test]
    fn round_numbers_stand_in_the_key() {
        let found: Vec<f64> = [7400.0, 4999.0, 1999.0, 130.0, 0.0].map(round_below).to_vec();
        assert_eq!(found, [5000.0, 2000.0, 1000.0, 100.0, 1.0]);
    }

    #[test]
    fn losses_leave_through_the_roof_and_gains_rise_from_their_source() {
        let mut scenario = Scenario::default();
        scenario.heater.present = true;
        let section = section(&scenario);
        let hour = Hour { skin_w: 800.0, heater_w: 900.0, ground_w: 50.0, ..Hour::default() };
        let flows = flows(&section, &hour);
        let of = |watts: f64| flows.iter().find(|flow| flow.watts == watts).copied().expect("drawn");
        assert!(of(800.0).towards[1] > 0.0 && of(50.0).towards[1] < 0.0 && of(900.0).towards[1] > 0.0);
        assert!((of(800.0).from[1] - section.roof_at(of(800.0).from[0])).abs() < 1e-12);
        assert!(flows.iter().all(|f| (f.towards[0].hypot(f.towards[1]) - 1.0).abs() < 1e-9 || f.watts == 0.0));
    }
}
