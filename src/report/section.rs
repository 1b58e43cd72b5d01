//! The cross-section of a house to scale as SVG: paper, hairlines, zones in the colour of their temperature.

use super::figure::{ACCENT, HAIRLINE, INK, PAPER, SOFT, bar, hex, line, n, points, text};
use crate::colours::{self, Rgb};
use crate::format;
use crate::geometry::section::{Block, Point, Section};
use crate::model::Zone;
use crate::units::{Quantity, UnitSystem};
use maud::{Markup, html};

const SOIL: &str = "#5b4636";
const LEAF: &str = "#3f7a4b";
const IRON: &str = "#2b3339";
const EMBER: &str = "#f08a4b";

/// Room beside, above and below the house, px.
const SIDE: f64 = 58.0;
const ABOVE: f64 = 12.0;
const BELOW: f64 = 32.0;

/// Temperatures and heater output of one hour; what the scenario lacks is none.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Hour {
    pub house_c: Option<f64>,
    pub tent_c: Option<f64>,
    pub house_water_c: Option<f64>,
    pub tent_water_c: Option<f64>,
    /// Share of the rated output, of the first heater and the standby one.
    pub heater_share: [f64; 2],
    pub vent_opening: f64,
}

/// A drawing under way.
pub(super) struct Drawing<'a> {
    pub section: &'a Section,
    pub hour: Hour,
    pub units: UnitSystem,
    /// Size of the drawing, px.
    pub size: [f64; 2],
    /// Pixels per metre.
    pub scale: f64,
}

impl Drawing<'_> {
    /// Most pixels per metre at which a section fits into a drawing of this size.
    pub fn scale_for(section: &Section, [width, height]: [f64; 2]) -> f64 {
        let wall_m = if section.party_wall.is_some() { 0.4 } else { 0.0 };
        ((width - 2.0 * SIDE) / (section.width_m + wall_m))
            .min((height - ABOVE - BELOW) / (section.height_m * 1.07))
            .max(0.1)
    }

    pub fn svg(&self) -> Markup {
        let [width, height] = self.size;
        html! {
            svg viewBox={ "0 0 " (n(width)) " " (n(height)) } role="img" aria-label="Cross-section" {
                (self.ground()) (self.zones()) (self.water()) (self.benches()) (self.tent()) (self.heaters())
                (self.skin()) (self.dimensions()) (self.readings())
            }
        }
    }

    fn at(&self, [x, y]: Point) -> [f64; 2] {
        let left = (self.size[0] - self.section.width_m * self.scale) / 2.0;
        [left + x * self.scale, self.floor() - y * self.scale]
    }

    fn floor(&self) -> f64 {
        self.size[1] - BELOW
    }

    fn block(&self, block: &Block, fill: &str, stroke: &str) -> Markup {
        let ([left, bottom], [right, top]) = (self.at(block.min), self.at(block.max));
        bar(left, top, right - left, bottom - top, fill, stroke)
    }

    fn through(&self, path: &[Point]) -> Vec<[f64; 2]> {
        path.iter().map(|p| self.at(*p)).collect()
    }

    fn ground(&self) -> Markup {
        let (width, y) = (self.size[0], self.floor());
        let strokes: String =
            (0..(width / 9.0) as usize).map(|i| format!("M{},{}l-4,5", n(4.0 + 9.0 * i as f64), n(y + 1.0))).collect();
        html! {
            path d=(strokes) stroke=(HAIRLINE) stroke-width="1" fill="none" {}
            (line(&[[0.0, y], [width, y]], SOFT, 1.0, ""))
        }
    }

    fn zones(&self) -> Markup {
        html! {
            polygon points=(points(&self.through(&self.section.skin))) fill=(hex(fill(self.hour.house_c))) {}
            @if let Some(tent) = &self.section.tent {
                (self.block(tent, &hex(fill(self.hour.tent_c.or(self.hour.house_c))), "none"))
            }
        }
    }

    fn water(&self) -> Markup {
        html! {
            @for row in &self.section.vessels {
                @let in_tent = row.zone == Zone::Tent && self.section.tent.is_some();
                @let water_c = if in_tent { self.hour.tent_water_c } else { self.hour.house_water_c };
                @for block in &row.blocks {
                    (self.block(block, &hex(fill(water_c)), INK))
                    @for share in [0.33, 0.67] {
                        @let y = block.min[1] + share * (block.max[1] - block.min[1]);
                        (line(&self.through(&[[block.min[0], y], [block.max[0], y]]), INK, 0.4, ""))
                    }
                }
            }
        }
    }

    fn benches(&self) -> Markup {
        html! {
            @for board in &self.section.boards {
                (self.block(board, INK, INK))
                @for x in [board.min[0] + 0.06, board.max[0] - 0.06] {
                    (line(&self.through(&[[x, board.min[1]], [x, 0.0]]), INK, 1.0, ""))
                }
            }
            @for tray in &self.section.trays { (self.block(tray, SOIL, SOIL)) (self.plants(tray)) }
        }
    }

    fn plants(&self, tray: &Block) -> Markup {
        let size = (self.scale * 0.07).clamp(1.5, 8.0);
        let count = (tray.width() * self.scale / (size * 2.2)).floor().clamp(1.0, 6.0);
        let plant = |i: usize| {
            let [x, y] = self.at([tray.min[0] + tray.width() * (i as f64 + 0.5) / count, tray.max[1]]);
            let (x, y) = (n(x), n(y));
            let (stem, leaf, rise) = (n(size), n(size * 0.6), n(size * 0.6));
            format!("M{x},{y}v-{stem}m0,{}l-{leaf},-{rise}m{leaf},{rise}l{leaf},-{rise}", n(size * 0.3))
        };
        let path: String = (0..count as usize).map(plant).collect();
        html! { path d=(path) stroke=(LEAF) stroke-width="1.1" fill="none" {} }
    }

    fn tent(&self) -> Markup {
        html! { @if let Some(tent) = &self.section.tent { (self.block(tent, "none", INK)) } }
    }

    fn heaters(&self) -> Markup {
        html! {
            @for (block, standby) in &self.section.heaters {
                @let share = self.hour.heater_share[usize::from(*standby)].clamp(0.0, 1.0);
                (self.block(block, IRON, PAPER))
                @let top = block.min[1] + share * (block.max[1] - block.min[1]);
                @let glow = Block { min: block.min, max: [block.max[0], top] };
                (self.block(&glow, EMBER, "none"))
            }
        }
    }

    fn skin(&self) -> Markup {
        let through = |ends: [Point; 2]| self.through(&ends);
        html! {
            @if let Some(wall) = &self.section.party_wall {
                (self.block(wall, "url(#hatch-rise)", SOFT))
            }
            (line(&self.through(&self.section.skin), INK, 1.7, ""))
            @for stretch in &self.section.boarded { (line(&through(*stretch), INK, 4.5, "")) }
            @for flap in &self.section.flaps {
                @if self.hour.vent_opening > 0.01 { (line(&through([flap.hinge, flap.shut]), PAPER, 2.6, "")) }
                (line(&through([flap.hinge, flap.tip(self.hour.vent_opening)]), ACCENT, 2.4, ""))
            }
        }
    }

    /// Width under the floor, height beside the front wall.
    fn dimensions(&self) -> Markup {
        let metres = |m: f64| format::quantity(m, Quantity::Length, self.units, None);
        let s = self.section;
        let ([left, floor], [right, top]) = (self.at([0.0, 0.0]), self.at([s.width_m, s.height_m]));
        let (below, beside) = (floor + 13.0, right + 12.0);
        html! {
            (line(&[[left, below], [right, below]], SOFT, 0.7, ""))
            (line(&[[beside, floor], [beside, top]], SOFT, 0.7, ""))
            @for x in [left, right] { (line(&[[x, below - 3.0], [x, below + 3.0]], SOFT, 0.7, "")) }
            @for y in [floor, top] { (line(&[[beside - 3.0, y], [beside + 3.0, y]], SOFT, 0.7, "")) }
            (text(f64::midpoint(left, right), below + 13.0, "middle", "tick", &metres(s.width_m)))
            (text(beside + 5.0, f64::midpoint(floor, top) + 3.0, "start", "tick", &metres(s.height_m)))
        }
    }

    /// Each zone's temperature in it, where there is room.
    fn readings(&self) -> Markup {
        let s = self.section;
        let middle_m = s.width_m / 2.0;
        let [x, roof] = self.at([middle_m, s.roof_at(middle_m)]);
        let tent_top = s.tent.as_ref().map_or(f64::INFINITY, |tent| self.at(tent.max)[1]);
        let house_y = (roof + 26.0).min(tent_top - 5.0).max(roof + 14.0);
        html! {
            @if let (Some(tent), Some(t_c)) = (&s.tent, self.hour.tent_c) {
                @let ([left, bottom], [right, top]) = (self.at(tent.min), self.at(tent.max));
                @if right - left > 46.0 && bottom - top > 26.0 {
                    (self.reading(f64::midpoint(left, right), top + 12.0, t_c))
                }
            }
            @if let Some(t_c) = self.hour.house_c.filter(|_| house_y + 3.0 < tent_top.min(self.floor() - 3.0)) {
                (self.reading(x, house_y, t_c))
            }
        }
    }

    fn reading(&self, x: f64, y: f64, t_c: f64) -> Markup {
        let ink = hex(colours::ink_on(fill(Some(t_c))));
        html! {
            text x=(n(x)) y=(n(y)) text-anchor="middle" class="reading" style={ "fill:" (ink) } {
                (format::temperature(t_c, self.units))
            }
        }
    }
}

/// Colour of a zone; a pale one where its temperature is not known.
fn fill(t_c: Option<f64>) -> Rgb {
    t_c.map_or([0xF1, 0xED, 0xE4], colours::temperature)
}
