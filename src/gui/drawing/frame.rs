//! From metres to the screen and back.

use crate::geometry::section::{Block, Point, Section};
use egui::{Pos2, Rect, pos2, vec2};

/// From metres to the screen.
#[derive(Debug, Clone, Copy)]
pub struct Frame {
    /// Foot of the back wall.
    pub origin: Pos2,
    /// Points per metre.
    pub scale: f32,
}

impl Frame {
    /// Fits the section into a rectangle: the floor at its lower part, room for dimensions and the open roof vent.
    #[must_use]
    pub fn fit(section: &Section, rect: Rect) -> Self {
        let (below, above, side) = (34.0, 30.0, 70.0);
        let height = (section.height_m * 1.07) as f32;
        let width = (section.width_m + if section.party_wall.is_some() { 0.4 } else { 0.0 }) as f32;
        let scale = ((rect.height() - below - above) / height).min((rect.width() - 2.0 * side) / width).max(1.0);
        let left = rect.center().x - section.width_m as f32 * scale / 2.0;
        Self { origin: pos2(left, rect.bottom() - below), scale }
    }

    /// Where a point lies on the screen.
    #[must_use]
    pub fn at(&self, p: Point) -> Pos2 {
        self.origin + vec2(p[0] as f32 * self.scale, -p[1] as f32 * self.scale)
    }

    /// Where a block lies on the screen.
    #[must_use]
    pub fn block(&self, b: &Block) -> Rect {
        Rect::from_two_pos(self.at(b.min), self.at(b.max))
    }

    /// A point of the screen in metres.
    #[must_use]
    pub fn metres(&self, p: Pos2) -> Point {
        let offset = p - self.origin;
        [f64::from(offset.x / self.scale), f64::from(-offset.y / self.scale)]
    }
}
