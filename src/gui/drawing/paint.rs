//! Paints the cross-section: paper, hairlines, zones in the colour of their temperature.

use super::frame::Frame;
use super::hour::Hour;
use crate::format;
use crate::geometry::section::Section;
use crate::gui::palette::{ink_on, temperature};
use crate::gui::theme::{SMALL, Tokens, regular, semibold};
use crate::model::Zone;
use crate::units::{Quantity, UnitSystem};
use egui::{Align2, Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};

/// Flame and sun.
const EMBER: Color32 = Color32::from_rgb(0xF0, 0x8A, 0x4B);
const SUN: Color32 = Color32::from_rgb(0xE3, 0x9A, 0x1E);
const SOIL: Color32 = Color32::from_rgb(0x5B, 0x46, 0x36);
const LEAF: Color32 = Color32::from_rgb(0x3F, 0x7A, 0x4B);
const IRON: Color32 = Color32::from_rgb(0x2B, 0x33, 0x39);

/// The pen: painter, frame, colours, units.
pub struct Pen<'a> {
    /// Where to paint.
    pub painter: &'a Painter,
    /// From metres to the screen.
    pub frame: Frame,
    /// Colours.
    pub t: Tokens,
    /// Units of the dimensions.
    pub units: UnitSystem,
    /// Dims the colours of an old result.
    pub fade: f32,
}

impl Pen<'_> {
    /// Paints everything.
    pub fn section(&self, section: &Section, hour: &Hour, rect: Rect) {
        self.sky(hour, rect);
        self.zones(section, hour);
        self.inside(section, hour);
        self.skin(section, hour);
        self.dimensions(section);
        self.readings(section, hour);
    }

    fn fill(&self, t_c: Option<f64>) -> Color32 {
        blend(self.t.paper, t_c.map_or(self.t.raised, temperature), self.fade)
    }

    fn line_on(&self, t_c: Option<f64>) -> Color32 {
        ink_on(self.fill(t_c))
    }

    fn sky(&self, hour: &Hour, rect: Rect) {
        let ground = self.frame.origin.y;
        let sky = Rect::from_min_max(rect.min, pos2(rect.right(), ground));
        let low = blend(self.t.paper, self.fill(hour.outdoor_c), 0.40);
        let high = blend(self.t.paper, low, 0.25);
        let mut mesh = Mesh::default();
        for (corner, colour) in
            [(sky.left_top(), high), (sky.right_top(), high), (sky.right_bottom(), low), (sky.left_bottom(), low)]
        {
            mesh.colored_vertex(corner, colour);
        }
        mesh.add_triangle(0, 1, 2);
        mesh.add_triangle(0, 2, 3);
        self.painter.add(mesh);
        if let Some([east, north, up]) = hour.sun.filter(|s| s[2] > 0.0) {
            let height = up.asin() as f32 / std::f32::consts::FRAC_PI_2;
            let across = (east.atan2(-north) / std::f64::consts::PI) as f32;
            let x = sky.center().x - across * sky.width() * 0.9;
            let y = sky.bottom() - 10.0 - height * (sky.height() - 24.0) * 1.1;
            self.sun(pos2(x.clamp(sky.left() + 16.0, sky.right() - 16.0), y.max(sky.top() + 14.0)));
        }
        self.painter.hline(rect.x_range(), ground, Stroke::new(1.0, self.t.soft));
        let hatch = Stroke::new(1.0, self.t.hairline);
        let mut x = rect.left() + 4.0;
        while x < rect.right() {
            self.painter.line_segment([pos2(x, ground + 1.0), pos2(x - 4.0, ground + 6.0)], hatch);
            x += 9.0;
        }
    }

    fn sun(&self, c: Pos2) {
        let colour = SUN.gamma_multiply(self.fade);
        self.painter.circle_filled(c, 5.0, colour);
        for i in 0..8 {
            let angle = std::f32::consts::TAU * i as f32 / 8.0;
            let d = vec2(angle.cos(), angle.sin());
            self.painter.line_segment([c + d * 7.5, c + d * 10.5], Stroke::new(1.2, colour));
        }
    }

    fn zones(&self, section: &Section, hour: &Hour) {
        let points: Vec<Pos2> = section.skin.iter().map(|p| self.frame.at(*p)).collect();
        self.painter.add(Shape::convex_polygon(points, self.fill(hour.house_c), Stroke::NONE));
        if let Some(tent) = &section.tent {
            self.painter.rect_filled(self.frame.block(tent), 0.0, self.fill(hour.tent_c.or(hour.house_c)));
        }
    }

    fn inside(&self, section: &Section, hour: &Hour) {
        let ink = self.line_on(hour.house_c);
        for vessel in &section.vessels {
            let in_tent = vessel.zone == Zone::Tent && section.tent.is_some();
            let water = if in_tent { hour.tent_water_c } else { hour.house_water_c };
            for block in &vessel.blocks {
                self.vessel(&self.frame.block(block), self.fill(water), ink);
            }
        }
        for board in &section.boards {
            let rect = self.frame.block(board);
            let thick = Rect::from_min_max(rect.min, pos2(rect.right(), rect.bottom().max(rect.top() + 2.0)));
            self.painter.rect_filled(thick, 0.0, ink);
            for x in [rect.left() + 5.0, rect.right() - 5.0] {
                self.painter
                    .line_segment([pos2(x, rect.bottom()), pos2(x, self.frame.origin.y)], Stroke::new(1.2, ink));
            }
        }
        for tray in &section.trays {
            self.tray(&self.frame.block(tray));
        }
        if let Some(tent) = &section.tent {
            let rect = self.frame.block(tent);
            self.painter.rect_stroke(rect, 1.0, Stroke::new(1.4, ink), StrokeKind::Middle);
            if hour.tent_cover_drawn {
                let over = rect.expand(4.0);
                self.dashes(&[over.left_bottom(), over.left_top(), over.right_top(), over.right_bottom()]);
            }
        }
        for (block, standby) in &section.heaters {
            let share = if *standby { hour.standby_share } else { hour.heater_share };
            self.heater(&self.frame.block(block), share);
        }
    }

    fn vessel(&self, rect: &Rect, fill: Color32, ink: Color32) {
        self.painter.rect(*rect, 2.0, fill, Stroke::new(1.0, ink), StrokeKind::Inside);
        for share in [0.33, 0.67] {
            let y = rect.top() + rect.height() * share;
            self.painter.hline(rect.x_range().shrink(1.0), y, Stroke::new(0.7, ink.gamma_multiply(0.5)));
        }
    }

    fn tray(&self, rect: &Rect) {
        self.painter.rect_filled(*rect, 0.0, SOIL);
        let size = (self.frame.scale * 0.07).clamp(2.0, 9.0);
        let count = (rect.width() / (size * 2.2)).floor().clamp(1.0, 6.0) as usize;
        for i in 0..count {
            let foot = pos2(rect.left() + rect.width() * (i as f32 + 0.5) / count as f32, rect.top());
            self.painter.line_segment([foot, foot - vec2(0.0, size)], Stroke::new(1.0, LEAF));
            for side in [-0.6, 0.6] {
                let leaf = [foot - vec2(0.0, size * 0.7), foot + vec2(side * size, -size * 1.3)];
                self.painter.line_segment(leaf, Stroke::new(1.4, LEAF));
            }
        }
    }

    fn heater(&self, rect: &Rect, share: f64) {
        let share = (share as f32).clamp(0.0, 1.0);
        self.painter.rect_filled(*rect, 2.0, IRON);
        let inner = rect.shrink(2.0);
        let glow = Rect::from_min_max(pos2(inner.left(), inner.bottom() - inner.height() * share), inner.max);
        self.painter.rect_filled(glow, 1.0, EMBER.gamma_multiply(self.fade));
    }

    fn skin(&self, section: &Section, hour: &Hour) {
        if let Some(wall) = &section.party_wall {
            let rect = self.frame.block(wall);
            self.painter.rect(rect, 0.0, self.t.raised, Stroke::new(1.0, self.t.soft), StrokeKind::Inside);
            let mut y = rect.top() + 6.0;
            while y < rect.bottom() {
                self.painter.hline(rect.x_range(), y, Stroke::new(0.7, self.t.soft));
                y += 8.0;
            }
        }
        let points: Vec<Pos2> = section.skin.iter().map(|p| self.frame.at(*p)).collect();
        self.painter.add(Shape::line(points, Stroke::new(1.8, self.t.ink)));
        for [a, b] in &section.boarded {
            self.painter.line_segment([self.frame.at(*a), self.frame.at(*b)], Stroke::new(5.0, self.t.ink));
        }
        if hour.cover_drawn {
            self.cover(section);
        }
        for flap in &section.flaps {
            let (hinge, tip) = (self.frame.at(flap.hinge), self.frame.at(flap.tip(hour.vent_opening)));
            if hour.vent_opening > 0.01 {
                self.painter.line_segment([hinge, self.frame.at(flap.shut)], Stroke::new(3.0, self.t.paper));
            }
            self.painter.line_segment([hinge, tip], Stroke::new(2.6, self.t.accent));
            self.painter.circle_filled(hinge, 2.2, self.t.accent);
        }
    }

    /// The night cover, as a dashed line just inside the skin.
    fn cover(&self, section: &Section) {
        let middle = self.frame.at([section.width_m / 2.0, section.height_m * 0.4]);
        let inside = |p: Pos2| p + (middle - p).normalized() * 5.0;
        let mut path: Vec<Pos2> = Vec::new();
        for [a, b] in &section.covered {
            let (a, b) = (inside(self.frame.at(*a)), inside(self.frame.at(*b)));
            if path.last().is_none_or(|last| last.distance(a) > 1.0) {
                self.dashes(&std::mem::take(&mut path));
                path.push(a);
            }
            path.push(b);
        }
        self.dashes(&path);
    }

    fn dashes(&self, path: &[Pos2]) {
        self.painter.extend(Shape::dashed_line(path, Stroke::new(2.2, self.t.ink), 6.0, 3.5));
    }

    /// Width under the floor, height beside the front wall.
    fn dimensions(&self, section: &Section) {
        let text = |metres: f64| format::quantity(metres, Quantity::Length, self.units, None);
        let (left, right) = (self.frame.at([0.0, 0.0]), self.frame.at([section.width_m, 0.0]));
        let y = left.y + 20.0;
        self.measure([pos2(left.x, y), pos2(right.x, y)], vec2(0.0, 4.0));
        self.label(pos2((left.x + right.x) / 2.0, y), &text(section.width_m));
        let top = self.frame.at([section.width_m, section.height_m]);
        let x = right.x + 34.0;
        self.measure([pos2(x, right.y), pos2(x, top.y)], vec2(4.0, 0.0));
        self.label(pos2(x, (right.y + top.y) / 2.0), &text(section.height_m));
    }

    fn measure(&self, ends: [Pos2; 2], tick: egui::Vec2) {
        let line = Stroke::new(1.0, self.t.soft);
        self.painter.line_segment(ends, line);
        for end in ends {
            self.painter.line_segment([end - tick, end + tick], line);
        }
    }

    fn label(&self, at: Pos2, text: &str) {
        let galley = self.painter.layout_no_wrap(text.to_owned(), regular(SMALL), self.t.ink);
        let rect = Align2::CENTER_CENTER.anchor_size(at, galley.size());
        self.painter.rect_filled(rect.expand2(vec2(4.0, 0.0)), 2.0, self.t.paper);
        self.painter.galley(rect.min, galley, self.t.ink);
    }

    /// Writes each zone's temperature into it, where there is room.
    fn readings(&self, section: &Section, hour: &Hour) {
        let text = |t: f64| format::temperature(t, self.units);
        let font = || semibold(SMALL + 1.0);
        if let (Some(tent), Some(t)) = (&section.tent, hour.tent_c) {
            let rect = self.frame.block(tent);
            if rect.width() > 52.0 && rect.height() > 34.0 {
                let at = pos2(rect.center().x, rect.top() + 11.0);
                self.painter.text(at, Align2::CENTER_CENTER, text(t), font(), self.line_on(hour.tent_c));
            }
        }
        if let Some(t) = hour.house_c {
            let middle_m = section.width_m / 2.0;
            let top = self.frame.at([middle_m, section.roof_at(middle_m)]);
            if self.frame.origin.y - top.y < 44.0 {
                return;
            }
            let clear = section.tent.map_or(f32::INFINITY, |tent| self.frame.block(&tent).top()) - 12.0;
            let at = pos2(top.x, (top.y + 30.0).min(clear).max(top.y + 18.0));
            self.painter.text(at, Align2::CENTER_CENTER, text(t), font(), self.line_on(hour.house_c));
        }
    }
}

/// `share` of `over` on `under`.
fn blend(under: Color32, over: Color32, share: f32) -> Color32 {
    let mix = |a: u8, b: u8| (f32::from(a) + (f32::from(b) - f32::from(a)) * share.clamp(0.0, 1.0)).round() as u8;
    Color32::from_rgb(mix(under.r(), over.r()), mix(under.g(), over.g()), mix(under.b(), over.b()))
}
