//! The cross-section in metres: x from the back wall to the front, y up from the floor. Nothing is painted here.

use crate::model::{ArchCurve, House, Part, PartCovering, Scenario, Shape, TentBase, Zone};

/// A point, m.
pub type Point = [f64; 2];

/// A rectangle, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// Lower back corner.
    pub min: Point,
    /// Upper front corner.
    pub max: Point,
}

impl Block {
    fn standing(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self { min: [x, y], max: [x + width, y + height] }
    }

    /// Width, m.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.max[0] - self.min[0]
    }
}

/// Vessels in rows, seen from the end.
#[derive(Debug, Clone, PartialEq)]
pub struct VesselRow {
    /// The zone they stand in.
    pub zone: Zone,
    /// One block per row.
    pub blocks: Vec<Block>,
}

/// A vent: where it is hinged, its free end shut, and how far it swings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flap {
    /// Hinge.
    pub hinge: Point,
    /// Free end while shut.
    pub shut: Point,
    /// Angle of the full opening, radians; positive turns from x to y.
    pub swing_rad: f64,
}

impl Flap {
    /// The free end at a share of the full opening.
    #[must_use]
    pub fn tip(&self, opening: f64) -> Point {
        let angle = self.swing_rad * opening.clamp(0.0, 1.0);
        let (dx, dy) = (self.shut[0] - self.hinge[0], self.shut[1] - self.hinge[1]);
        [self.hinge[0] + dx * angle.cos() - dy * angle.sin(), self.hinge[1] + dx * angle.sin() + dy * angle.cos()]
    }
}

/// All of the cross-section.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Skin of the house from the foot of the back wall over the roof to the foot of the front wall.
    pub skin: Vec<Point>,
    /// Boarded stretches of the skin.
    pub boarded: Vec<[Point; 2]>,
    /// Stretches of the skin that the night cover lies under while drawn.
    pub covered: Vec<[Point; 2]>,
    /// Party wall of a lean-to.
    pub party_wall: Option<Block>,
    /// Inner tent.
    pub tent: Option<Block>,
    /// Bench boards.
    pub boards: Vec<Block>,
    /// Trays on the benches.
    pub trays: Vec<Block>,
    /// Water.
    pub vessels: Vec<VesselRow>,
    /// Heaters, with whether each is the standby one.
    pub heaters: Vec<(Block, bool)>,
    /// Vents.
    pub flaps: Vec<Flap>,
    /// Width of the house, m.
    pub width_m: f64,
    /// Height of the house, m.
    pub height_m: f64,
}

/// Points of a curved roof.
const ARC_POINTS: usize = 48;
/// Thickness of a bench board, m.
const BOARD: f64 = 0.04;

/// A length that can be drawn, whatever was typed.
fn sane(value: f64, low: f64) -> f64 {
    if value.is_finite() { value.clamp(low, 100.0) } else { low }
}

/// The cross-section of a scenario.
#[must_use]
pub fn section(s: &Scenario) -> Section {
    let house = &s.house;
    let width = sane(house.width_m, 0.1);
    let eaves = sane(house.eaves_height_m, 0.0);
    let ridge = match house.shape {
        Shape::FlatBox => eaves.max(0.1),
        _ => sane(house.ridge_height_m, 0.1).max(eaves + 0.01),
    };
    let skin = skin(house, width, eaves, ridge);
    let tent = s.tent.present.then(|| tent(s, width));
    let (boards, trays) = benches(s, tent, width);
    Section {
        boarded: boarded(s, &skin),
        covered: covered(s, &skin),
        party_wall: (house.shape == Shape::LeanTo).then(|| Block::standing(-0.2, 0.0, 0.2, ridge + 0.3)),
        flaps: flaps(s, &skin, width, eaves, ridge),
        vessels: vessels(s, tent, width),
        heaters: heaters(s, tent, width),
        skin,
        tent,
        boards,
        trays,
        width_m: width,
        height_m: ridge,
    }
}

fn skin(house: &House, width: f64, eaves: f64, ridge: f64) -> Vec<Point> {
    match house.shape {
        Shape::Gable => vec![[0.0, 0.0], [0.0, eaves], [width / 2.0, ridge], [width, eaves], [width, 0.0]],
        Shape::LeanTo => vec![[0.0, 0.0], [0.0, ridge], [width, eaves], [width, 0.0]],
        Shape::FlatBox => vec![[0.0, 0.0], [0.0, ridge], [width, ridge], [width, 0.0]],
        Shape::Tunnel => {
            let mut points = vec![[0.0, 0.0]];
            points
                .extend((0..=ARC_POINTS).map(|i| arch(house.arch, width, eaves, ridge, i as f64 / ARC_POINTS as f64)));
            points.push([width, 0.0]);
            points
        }
    }
}

/// A point of the arch; `share` runs from the back springing to the front one.
fn arch(curve: ArchCurve, width: f64, eaves: f64, ridge: f64, share: f64) -> Point {
    let (half, rise) = (width / 2.0, ridge - eaves);
    match curve {
        ArchCurve::HalfEllipse => {
            let angle = std::f64::consts::PI * (1.0 - share);
            [half + half * angle.cos(), eaves + rise * angle.sin()]
        }
        ArchCurve::Circle => {
            let radius = (half * half + rise * rise) / (2.0 * rise);
            let centre = ridge - radius;
            let start = (eaves - centre).atan2(-half);
            let start = if start < 0.0 { start + std::f64::consts::TAU } else { start };
            let end = std::f64::consts::PI - start;
            let angle = start + (end - start) * share;
            [half + radius * angle.cos(), centre + radius * angle.sin()]
        }
    }
}

/// The stretches of the skin that belong to a part; the ends are not seen.
fn stretches(part: Part, skin: &[Point]) -> impl Iterator<Item = [Point; 2]> {
    let last = skin.len().saturating_sub(1);
    let of_part = match part {
        Part::Back => 0..1,
        Part::Front => last - 1..last,
        Part::Roof => 1..last - 1,
        Part::Ends => 0..0,
    };
    of_part.filter_map(|i| Some([*skin.get(i)?, *skin.get(i + 1)?]))
}

fn boarded(s: &Scenario, skin: &[Point]) -> Vec<[Point; 2]> {
    let opaque = s.covering.exceptions.iter().filter(|e| matches!(e.covering, PartCovering::Opaque(_)));
    opaque.flat_map(|exception| stretches(exception.part, skin)).collect()
}

fn covered(s: &Scenario, skin: &[Point]) -> Vec<[Point; 2]> {
    let parts = s.night_cover.parts.iter().filter(|_| s.night_cover.present);
    parts.flat_map(|part| stretches(*part, skin)).collect()
}

fn tent(s: &Scenario, width: f64) -> Block {
    let (w, h) = (sane(s.tent.width_m, 0.05), sane(s.tent.height_m, 0.05));
    let base = if s.tent.base == TentBase::Floor { 0.0 } else { sane(s.tent.base_height_m, 0.0) };
    let offset = if s.tent.offset_m.is_finite() { s.tent.offset_m.clamp(-100.0, 100.0) } else { 0.0 };
    Block::standing(width / 2.0 + offset - w / 2.0, base, w, h)
}

fn benches(s: &Scenario, tent: Option<Block>, width: f64) -> (Vec<Block>, Vec<Block>) {
    let hung = tent.filter(|_| s.tent.base != TentBase::Floor);
    let mut boards: Vec<Block> =
        hung.iter().map(|tent| Block::standing(tent.min[0], tent.min[1] - BOARD, tent.width(), BOARD)).collect();
    let bench = &s.bench;
    let mut carrying = Vec::new();
    if bench.present {
        let (w, h) = (sane(bench.width_m, 0.05), sane(bench.height_m, 0.0));
        match (bench.zone, tent, hung) {
            (Zone::Tent, _, Some(tent)) => {
                let w = w.min(tent.width());
                carrying.push(Block::standing((tent.min[0] + tent.max[0] - w) / 2.0, tent.min[1] - BOARD, w, BOARD));
            }
            (Zone::Tent, Some(tent), None) => {
                let w = w.min(tent.width());
                carrying.push(Block::standing((tent.min[0] + tent.max[0] - w) / 2.0, h, w, BOARD));
                boards.extend(carrying.iter().copied());
            }
            _ => {
                carrying.push(Block::standing(0.1, h, w.min(width), BOARD));
                if bench.count > 1 && 2.0 * w + 0.5 < width {
                    carrying.push(Block::standing(width - 0.1 - w, h, w, BOARD));
                }
                boards.extend(carrying.iter().copied());
            }
        }
    }
    let depth = sane(bench.medium_depth_m, 0.0).max(0.03);
    let trays = carrying.iter().flat_map(|board| trays_on(board, depth)).collect();
    (boards, trays)
}

/// Trays 35 cm wide side by side on a board.
fn trays_on(board: &Block, depth: f64) -> Vec<Block> {
    let count = ((board.width() - 0.04) / 0.37).floor().max(1.0);
    let step = board.width() / count;
    let tray =
        |i: usize| Block::standing(board.min[0] + step * i as f64 + 0.02, board.max[1], (step - 0.04).max(0.02), depth);
    (0..count as usize).map(tray).collect()
}

/// Diameter of a vessel shaped like a drum, m: 1.49 times as high as wide, a tenth of it left for ice
/// (proportions of a 0.572 × 0.851 m drum).
fn drum_diameter_m(litres: f64) -> f64 {
    let volume_m3 = sane(litres / 1000.0, 1e-4) / 0.9;
    (volume_m3 * 4.0 / (std::f64::consts::PI * 1.49)).cbrt()
}

fn vessels(s: &Scenario, tent: Option<Block>, width: f64) -> Vec<VesselRow> {
    if !s.water.present {
        return Vec::new();
    }
    let mut used = 0.1;
    let mut rows = Vec::new();
    for group in s.water.vessels.iter().filter(|v| v.count > 0) {
        let d = drum_diameter_m(group.litres_each);
        let in_tent = tent.filter(|_| group.zone == Zone::Tent);
        let length = sane(in_tent.map_or(s.house.length_m, |_| s.tent.length_m), 0.1);
        let per_row = (length / d).floor().max(1.0);
        let wanted = (f64::from(group.count) / per_row).ceil();
        let room = in_tent.map_or(width - used - 0.1, |t| t.width());
        let shown = wanted.min((room / d).floor().max(1.0)) as usize;
        let (x, y) = in_tent.map_or((used, 0.0), |t| (t.min[0] + 0.03, t.min[1]));
        let blocks = (0..shown).map(|i| Block::standing(x + d * i as f64, y, d * 0.96, d * 1.49)).collect();
        if in_tent.is_none() {
            used += d * shown as f64;
        }
        rows.push(VesselRow { zone: group.zone, blocks });
    }
    rows
}

fn heaters(s: &Scenario, tent: Option<Block>, width: f64) -> Vec<(Block, bool)> {
    let mut out: Vec<(Block, bool)> = Vec::new();
    for (heater, standby) in [(&s.heater, false), (&s.standby, true)] {
        if !heater.present {
            continue;
        }
        let steps = if standby { 2.6 } else { 1.3 };
        let block = match tent.filter(|_| heater.zone == Zone::Tent) {
            Some(t) => {
                let size = (t.width() * 0.14).clamp(0.08, 0.24);
                Block::standing(t.max[0] - size * steps, t.min[1] + (t.max[1] - t.min[1]) * 0.3, size, size)
            }
            None => {
                let size = (width * 0.06).clamp(0.12, 0.34);
                Block::standing(width - size * steps - 0.05, 0.0, size, size * 1.15)
            }
        };
        out.push((block, standby));
    }
    out
}

fn flaps(s: &Scenario, skin: &[Point], width: f64, eaves: f64, ridge: f64) -> Vec<Flap> {
    if !s.vents.present {
        return Vec::new();
    }
    let mut out = Vec::new();
    if s.vents.outlet_area_m2 > 0.0 {
        let (hinge, shut) = match s.house.shape {
            Shape::Gable => ([width / 2.0, ridge], along([width / 2.0, ridge], [width, eaves], 0.3)),
            Shape::LeanTo => ([0.0, ridge], along([0.0, ridge], [width, eaves], 0.25)),
            Shape::FlatBox => ([width / 2.0, ridge], [width * 0.85, ridge]),
            Shape::Tunnel => {
                let middle = 1 + ARC_POINTS / 2;
                let point = |i: usize| skin.get(i).copied().unwrap_or([width / 2.0, ridge]);
                (point(middle), point(middle + ARC_POINTS / 8))
            }
        };
        out.push(Flap { hinge, shut, swing_rad: 0.7 });
    }
    if s.vents.inlet_area_m2 > 0.0 {
        let wall = eaves.max(ridge * 0.3);
        let (low, high) = (wall * 0.25, (wall * 0.75).min(wall * 0.25 + 0.5));
        let x = |y: f64| if y <= eaves { width } else { edge_at(skin, y).unwrap_or(width) };
        out.push(Flap { hinge: [x(high), high], shut: [x(low), low], swing_rad: 0.7 });
    }
    out
}

fn along(a: Point, b: Point, share: f64) -> Point {
    [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
}

impl Section {
    /// Outward normal of the skin above this place of the floor, of length one.
    #[must_use]
    pub fn normal_at(&self, x_m: f64) -> Point {
        let step = self.width_m * 0.01;
        let (dx, dy) = (2.0 * step, self.roof_at(x_m + step) - self.roof_at(x_m - step));
        let length = dx.hypot(dy);
        [-dy / length, dx / length]
    }

    /// Height of the skin above this place of the floor, m.
    #[must_use]
    pub fn roof_at(&self, x_m: f64) -> f64 {
        let heights = self.skin.windows(2).filter_map(|pair| {
            let ([x0, y0], [x1, y1]) = (pair[0], pair[1]);
            let within = (x0.min(x1)..=x0.max(x1)).contains(&x_m) && x0 != x1;
            within.then(|| y0 + (y1 - y0) * (x_m - x0) / (x1 - x0))
        });
        heights.fold(0.0, f64::max)
    }
}

/// Where the front of the skin stands at a height.
fn edge_at(skin: &[Point], y: f64) -> Option<f64> {
    skin.windows(2).rev().find_map(|pair| {
        let (a, b) = (pair.first()?, pair.get(1)?);
        let (low, high) = (a[1].min(b[1]), a[1].max(b[1]));
        (low <= y && y <= high && high - low > 1e-9).then(|| a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1]))
    })
}

#[cfg(test)]
#[path = "section_tests.rs"]
mod tests;
