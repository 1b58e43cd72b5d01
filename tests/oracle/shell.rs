//! Facets, volume and floor of the four shapes, from the elementary formulas of a school book.

use std::f64::consts::{FRAC_PI_2, PI};
use warmfold::model::{ArchCurve, House, Part, Shape};

/// Chords that stand for the arch.
const CHORDS: usize = 12;

pub struct Facet {
    pub part: Part,
    pub area_m2: f64,
    pub tilt: f64,
    pub azimuth: f64,
}

pub struct Shell {
    pub facets: Vec<Facet>,
    pub volume_m3: f64,
    pub floor_m2: f64,
    pub perimeter_m: f64,
    pub core_m2: f64,
    pub party_wall_m2: f64,
}

impl Shell {
    pub fn of(house: &House) -> Self {
        let (length, width, eaves) = (house.length_m, house.width_m, house.eaves_height_m);
        let rise = house.ridge_height_m - eaves;
        let front = house.front_faces_deg.to_radians();
        let back = front + PI;
        let lean_to = house.shape == Shape::LeanTo;
        let upright = |part, area_m2, azimuth| Facet { part, area_m2, tilt: FRAC_PI_2, azimuth };
        let mut facets = vec![upright(Part::Front, length * eaves, front)];
        if !lean_to {
            facets.push(upright(Part::Back, length * eaves, back));
        }
        let section_m2 = match house.shape {
            Shape::Gable => {
                let slope = f64::hypot(width / 2.0, rise);
                for azimuth in [front, back] {
                    let tilt = (2.0 * rise / width).atan();
                    facets.push(Facet { part: Part::Roof, area_m2: length * slope, tilt, azimuth });
                }
                width * eaves + width * rise / 2.0
            }
            Shape::LeanTo => {
                let slope = f64::hypot(width, rise);
                facets.push(Facet {
                    part: Part::Roof,
                    area_m2: length * slope,
                    tilt: (rise / width).atan(),
                    azimuth: front,
                });
                width * eaves + width * rise / 2.0
            }
            Shape::FlatBox => {
                facets.push(Facet { part: Part::Roof, area_m2: length * width, tilt: 0.0, azimuth: front });
                width * eaves
            }
            Shape::Tunnel => {
                let arch = Arch::of(house.arch, width, rise);
                for chord in &arch.chords {
                    let azimuth = if chord.to_front { front } else { back };
                    let area_m2 = length * chord.length_m * arch.length_m / arch.chord_sum_m();
                    facets.push(Facet { part: Part::Roof, area_m2, tilt: chord.tilt, azimuth });
                }
                width * eaves + arch.area_m2
            }
        };
        for turn in [-FRAC_PI_2, FRAC_PI_2] {
            facets.push(upright(Part::Ends, section_m2, front + turn));
        }
        let from_edge = if lean_to { 1.0 } else { 2.0 };
        Self {
            facets,
            volume_m3: length * section_m2,
            floor_m2: length * width,
            perimeter_m: if lean_to { length + 2.0 * width } else { 2.0 * (length + width) },
            core_m2: (length - 2.0).max(0.0) * (width - from_edge).max(0.0),
            party_wall_m2: if lean_to { length * house.ridge_height_m } else { 0.0 },
        }
    }
}

struct Chord {
    length_m: f64,
    tilt: f64,
    to_front: bool,
}

struct Arch {
    chords: Vec<Chord>,
    /// The exact curve.
    length_m: f64,
    /// Between the curve and the line of the springings.
    area_m2: f64,
}

impl Arch {
    fn of(curve: ArchCurve, width: f64, rise: f64) -> Self {
        let half = width / 2.0;
        let radius = (half * half + rise * rise) / (2.0 * rise);
        let half_angle = half.atan2(radius - rise);
        // From the back springing (share 0) over the crown to the front springing (share 1); x points to the front.
        let point = |share: f64| match curve {
            ArchCurve::Circle => {
                let angle = half_angle * (2.0 * share - 1.0);
                (radius * angle.sin(), radius * angle.cos() - (radius - rise))
            }
            ArchCurve::HalfEllipse => {
                let angle = PI * (1.0 - share);
                (half * angle.cos(), rise * angle.sin())
            }
        };
        let (length_m, area_m2) = match curve {
            ArchCurve::Circle => (2.0 * radius * half_angle, radius * radius * half_angle - half * (radius - rise)),
            ArchCurve::HalfEllipse => {
                let fine = 20_000;
                let at = |i: i32| point(f64::from(i) / f64::from(fine));
                let pieces = (0..fine).map(|i| distance(at(i), at(i + 1)));
                (pieces.sum(), PI * half * rise / 2.0)
            }
        };
        let chords = (0..CHORDS).map(|i| {
            let (a, b) = (point(i as f64 / CHORDS as f64), point((i + 1) as f64 / CHORDS as f64));
            // The outward normal stands at right angles to the chord, upwards.
            let (normal_x, normal_z) = (a.1 - b.1, b.0 - a.0);
            Chord { length_m: distance(a, b), tilt: normal_x.abs().atan2(normal_z), to_front: normal_x > 0.0 }
        });
        Self { chords: chords.collect(), length_m, area_m2 }
    }

    fn chord_sum_m(&self) -> f64 {
        self.chords.iter().map(|c| c.length_m).sum()
    }
}

fn distance(a: (f64, f64), b: (f64, f64)) -> f64 {
    f64::hypot(b.0 - a.0, b.1 - a.1)
}
