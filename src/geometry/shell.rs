//! The outer surface of a house: its facets, volume, floor and perimeter.

use super::arch::{ARCH_FACETS, Arch};
use crate::model::{House, Part, Shape};

/// A facet steeper than this is a wall, degrees.
pub const WALL_TILT_DEG: f64 = 60.0;

/// Strip along an exposed edge that loses its heat through the edge and not to deep ground, m.
const EDGE_STRIP_M: f64 = 1.0;

/// A flat piece of the outer surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Facet {
    /// m².
    pub area_m2: f64,
    /// From horizontal, degrees; beyond 90 it faces down.
    pub tilt_deg: f64,
    /// Compass direction that it faces, degrees.
    pub azimuth_deg: f64,
    /// Part of the house.
    pub part: Part,
}

impl Facet {
    /// Outward unit vector: east, north, up.
    #[must_use]
    pub fn normal(&self) -> [f64; 3] {
        let (sin_tilt, cos_tilt) = self.tilt_deg.to_radians().sin_cos();
        let (sin_azimuth, cos_azimuth) = self.azimuth_deg.to_radians().sin_cos();
        [sin_tilt * sin_azimuth, sin_tilt * cos_azimuth, cos_tilt]
    }

    /// Share of the sky dome that it sees: `F = (1 + cos tilt)/2`.
    #[must_use]
    pub fn sky_view(&self) -> f64 {
        (1.0 + self.tilt_deg.to_radians().cos()) / 2.0
    }

    /// Whether it counts as a wall.
    #[must_use]
    pub fn is_wall(&self) -> bool {
        self.tilt_deg > WALL_TILT_DEG
    }
}

/// The measured house.
#[derive(Debug, Clone, PartialEq)]
pub struct Shell {
    /// Outer facets, without a lean-to's party wall.
    pub facets: Vec<Facet>,
    /// Gross volume, m³.
    pub volume_m3: f64,
    /// Floor, m².
    pub floor_m2: f64,
    /// Edge of the floor towards outdoors, m.
    pub exposed_perimeter_m: f64,
    /// Floor further than a metre from an exposed edge, m².
    pub core_floor_m2: f64,
    /// Party wall of a lean-to, m²; zero for the others.
    pub party_wall_m2: f64,
}

impl Shell {
    /// Measures a house whose inputs are within their ranges and whose ridge is above its eaves.
    #[must_use]
    pub fn of(house: &House) -> Self {
        let (length, width) = (house.length_m, house.width_m);
        let end_area = end_area_m2(house);
        let lean_to = house.shape == Shape::LeanTo;
        let mut facets = vec![facet(length * house.eaves_height_m, 90.0, house.front_faces_deg, Part::Front)];
        if !lean_to {
            facets.push(facet(length * house.eaves_height_m, 90.0, house.front_faces_deg + 180.0, Part::Back));
        }
        for side in [90.0, -90.0] {
            facets.push(facet(end_area, 90.0, house.front_faces_deg + side, Part::Ends));
        }
        facets.extend(roof(house));
        facets.retain(|f| f.area_m2 > 0.0);
        let (core_width, exposed_perimeter_m) = if lean_to {
            (width - EDGE_STRIP_M, length + 2.0 * width)
        } else {
            (width - 2.0 * EDGE_STRIP_M, 2.0 * (length + width))
        };
        Self {
            facets,
            volume_m3: end_area * length,
            floor_m2: length * width,
            exposed_perimeter_m,
            core_floor_m2: (length - 2.0 * EDGE_STRIP_M).max(0.0) * core_width.max(0.0),
            party_wall_m2: if lean_to { length * house.ridge_height_m } else { 0.0 },
        }
    }

    /// Outer surface, without a party wall, m².
    #[must_use]
    pub fn surface_m2(&self) -> f64 {
        self.facets.iter().map(|f| f.area_m2).sum()
    }
}

/// Inside height of the house at `x` from its middle (positive towards the front), m; zero outside.
#[must_use]
pub fn profile_height_m(house: &House, x: f64) -> f64 {
    let half = house.width_m / 2.0;
    if x.abs() > half + 1e-9 {
        return 0.0;
    }
    let (eaves, rise) = (house.eaves_height_m, house.ridge_height_m - house.eaves_height_m);
    match house.shape {
        Shape::Gable => eaves + rise * (1.0 - x.abs() / half),
        Shape::LeanTo => eaves + rise * (half - x) / house.width_m,
        Shape::Tunnel => eaves + Arch::new(house.arch, house.width_m, rise).height_m(x),
        Shape::FlatBox => eaves,
    }
}

fn facet(area_m2: f64, tilt_deg: f64, azimuth_deg: f64, part: Part) -> Facet {
    Facet { area_m2, tilt_deg, azimuth_deg: azimuth_deg.rem_euclid(360.0), part }
}

fn end_area_m2(house: &House) -> f64 {
    let rise = house.ridge_height_m - house.eaves_height_m;
    house.width_m * house.eaves_height_m
        + match house.shape {
            Shape::Gable | Shape::LeanTo => house.width_m * rise / 2.0,
            Shape::Tunnel => Arch::new(house.arch, house.width_m, rise).area_m2(),
            Shape::FlatBox => 0.0,
        }
}

fn roof(house: &House) -> Vec<Facet> {
    let (length, width, front) = (house.length_m, house.width_m, house.front_faces_deg);
    let rise = house.ridge_height_m - house.eaves_height_m;
    match house.shape {
        Shape::Gable => {
            let (run, tilt) = (width / 2.0, rise.atan2(width / 2.0).to_degrees());
            [front, front + 180.0].map(|azimuth| facet(length * run.hypot(rise), tilt, azimuth, Part::Roof)).to_vec()
        }
        Shape::LeanTo => {
            vec![facet(length * width.hypot(rise), rise.atan2(width).to_degrees(), front, Part::Roof)]
        }
        Shape::Tunnel => arch_facets(&Arch::new(house.arch, width, rise), length, front),
        Shape::FlatBox => vec![facet(length * width, 0.0, front, Part::Roof)],
    }
}

/// Tilt and direction of each facet are its chord's; areas are scaled to the exact arc.
fn arch_facets(arch: &Arch, length_m: f64, front_faces_deg: f64) -> Vec<Facet> {
    let point = |i: usize| arch.point(i as f64 / ARCH_FACETS as f64);
    let chords: Vec<(f64, f64)> =
        (0..ARCH_FACETS).map(|i| (point(i + 1).0 - point(i).0, point(i + 1).1 - point(i).1)).collect();
    let polygon_m: f64 = chords.iter().map(|(dx, dz)| dx.hypot(*dz)).sum();
    let scale = arch.length_m() / polygon_m;
    chords
        .iter()
        .map(|&(dx, dz)| {
            // The outward normal of a chord that runs from back to front is (−dz, dx).
            let azimuth = if dz > 0.0 { front_faces_deg + 180.0 } else { front_faces_deg };
            facet(dx.hypot(dz) * scale * length_m, dz.abs().atan2(dx).to_degrees(), azimuth, Part::Roof)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::ArchCurve;

    fn house(shape: Shape) -> House {
        House { shape, length_m: 6.0, width_m: 3.0, eaves_height_m: 1.6, ridge_height_m: 2.4, ..House::default() }
    }

    #[test]
    fn gable_measures_as_on_paper() {
        // Garden glasshouse of worked example E16: 3.6 × 2.4 m, eaves 1.8, ridge 2.4: A 32.7 m², V 18.1 m³.
        let shell = Shell::of(&House {
            length_m: 3.6,
            width_m: 2.4,
            eaves_height_m: 1.8,
            ridge_height_m: 2.4,
            ..house(Shape::Gable)
        });
        assert!((shell.surface_m2() - 32.7).abs() < 0.05, "{}", shell.surface_m2());
        assert!((shell.volume_m3 - 18.1).abs() < 0.05, "{}", shell.volume_m3);
    }

    #[test]
    fn lean_to_gives_its_back_to_the_building() {
        let shell = Shell::of(&house(Shape::LeanTo));
        assert!(shell.facets.iter().all(|f| f.part != Part::Back));
        assert!((shell.party_wall_m2 - 6.0 * 2.4).abs() < 1e-12);
        assert!((shell.exposed_perimeter_m - 12.0).abs() < 1e-12);
        assert!((shell.core_floor_m2 - 8.0).abs() < 1e-12);
        assert!((shell.volume_m3 - 6.0 * 3.0 * 2.0).abs() < 1e-12);
    }

    #[test]
    fn arch_keeps_exact_area_and_is_symmetric() {
        for arch in [ArchCurve::Circle, ArchCurve::HalfEllipse] {
            let shell = Shell::of(&House { arch, eaves_height_m: 0.9, ridge_height_m: 2.4, ..house(Shape::Tunnel) });
            let roof: Vec<_> = shell.facets.iter().filter(|f| f.part == Part::Roof).collect();
            assert_eq!(roof.len(), ARCH_FACETS);
            let area: f64 = roof.iter().map(|f| f.area_m2).sum();
            assert!((area - 6.0 * std::f64::consts::PI * 1.5).abs() < 1e-9, "rise is half the width: a half circle");
            for (a, b) in roof.iter().zip(roof.iter().rev()) {
                assert!((a.tilt_deg - b.tilt_deg).abs() < 1e-9 && (a.area_m2 - b.area_m2).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn closed_surface_has_no_net_direction() {
        // Gauss: the area vectors of a closed surface add to zero, so those of skin and party wall face the floor's.
        for shape in [Shape::Gable, Shape::Tunnel, Shape::FlatBox] {
            let shell = Shell::of(&house(shape));
            let mut sum = [0.0; 3];
            for f in &shell.facets {
                for (axis, n) in sum.iter_mut().zip(f.normal()) {
                    *axis += n * f.area_m2;
                }
            }
            assert!(sum[0].abs() < 1e-9 && sum[1].abs() < 1e-9, "{shape:?} {sum:?}");
            let arch_slack = if shape == Shape::Tunnel { 0.02 * shell.floor_m2 } else { 1e-9 };
            assert!((sum[2] - shell.floor_m2).abs() < arch_slack, "{shape:?} {sum:?}");
        }
    }
}
