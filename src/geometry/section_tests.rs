use super::*;
use crate::model::{PartException, Vessels};

fn house(shape: Shape) -> Scenario {
    let mut s = Scenario::default();
    s.house.shape = shape;
    s.house.width_m = 4.0;
    s.house.eaves_height_m = 1.0;
    s.house.ridge_height_m = 2.5;
    s
}

/// Area under the skin, m².
fn area(skin: &[Point]) -> f64 {
    skin.windows(2).map(|p| (p[1][0] - p[0][0]) * (p[0][1] + p[1][1]) / 2.0).sum()
}

#[test]
fn areas_are_those_of_the_textbook_shapes() {
    // Closed forms: rectangle plus triangle, trapezium, rectangle, rectangle plus half ellipse.
    let close = |s: &Scenario, wanted: f64, tolerance: f64| {
        let found = area(&section(s).skin);
        assert!((found - wanted).abs() < tolerance, "{:?}: {found} is not {wanted}", s.house.shape);
    };
    close(&house(Shape::Gable), 4.0 * 1.0 + 4.0 * 1.5 / 2.0, 1e-12);
    close(&house(Shape::LeanTo), 4.0 * (1.0 + 2.5) / 2.0, 1e-12);
    close(&house(Shape::FlatBox), 4.0 * 1.0, 1e-12);
    let mut tunnel = house(Shape::Tunnel);
    tunnel.house.arch = ArchCurve::HalfEllipse;
    // 48 chords fall short of a half ellipse by about π²/6·(1/48)² = 0.07 % of its 4.71 m².
    close(&tunnel, 4.0 + std::f64::consts::FRAC_PI_2 * 2.0 * 1.5, 0.005);
}

#[test]
fn a_circle_springs_from_both_walls_and_reaches_the_crown() {
    for (eaves, ridge) in [(1.0, 2.5), (0.0, 2.0), (0.5, 3.4)] {
        let mut s = house(Shape::Tunnel);
        s.house.eaves_height_m = eaves;
        s.house.ridge_height_m = ridge;
        let skin = section(&s).skin;
        let near = |p: Point, q: Point| (p[0] - q[0]).abs() < 1e-9 && (p[1] - q[1]).abs() < 1e-9;
        assert!(near(skin[1], [0.0, eaves]));
        assert!(near(skin[1 + ARC_POINTS / 2], [2.0, ridge]));
        assert!(near(skin[1 + ARC_POINTS], [4.0, eaves]));
    }
}

#[test]
fn trays_stand_on_the_hung_tents_board_and_drums_on_the_floor() {
    let mut s = house(Shape::Gable);
    s.tent.present = true;
    s.tent.width_m = 1.2;
    s.tent.base_height_m = 0.8;
    s.water.present = true;
    s.water.vessels = vec![Vessels { count: 20, litres_each: 208.0, ..Vessels::default() }];
    let drawn = section(&s);
    let tent = drawn.tent.unwrap();
    assert_eq!(tent.min[1], 0.8);
    assert!((tent.min[0] + tent.max[0] - 4.0).abs() < 1e-12);
    assert!(!drawn.trays.is_empty());
    assert!(drawn.trays.iter().all(|t| t.min[0] >= tent.min[0] && t.max[0] <= tent.max[0] && t.min[1] == 0.8));
    assert_eq!(drawn.boards.len(), 1);
    // Ten drums 0.58 m wide fit a house 6 m long: two rows.
    assert_eq!(drawn.vessels[0].blocks.len(), 2);
    assert!(drawn.vessels[0].blocks.iter().all(|b| b.min[1] == 0.0 && b.max[0] < 4.0));
}

#[test]
fn a_boarded_back_wall_is_the_back_wall() {
    let mut s = house(Shape::FlatBox);
    s.covering.exceptions.push(PartException { part: Part::Back, covering: PartCovering::Opaque(0.5) });
    assert_eq!(section(&s).boarded, vec![[[0.0, 0.0], [0.0, 1.0]]]);
}

#[test]
fn vents_open_outwards() {
    for shape in [Shape::Gable, Shape::LeanTo, Shape::FlatBox, Shape::Tunnel] {
        for flap in section(&house(shape)).flaps {
            let (shut, open) = (flap.tip(0.0), flap.tip(1.0));
            assert!((shut[0] - flap.shut[0]).abs() < 1e-12);
            assert!(open[1] > shut[1] + 0.05 || open[0] > shut[0] + 0.05, "{shape:?} {flap:?} {open:?}");
        }
    }
}

#[test]
fn nonsense_can_still_be_drawn() {
    let mut s = house(Shape::Tunnel);
    s.house.width_m = f64::NAN;
    s.house.ridge_height_m = -3.0;
    s.tent.present = true;
    s.tent.height_m = f64::INFINITY;
    s.tent.offset_m = f64::NAN;
    let drawn = section(&s);
    assert!(drawn.skin.iter().flatten().all(|v| v.is_finite()));
    let tent = drawn.tent.unwrap();
    assert!(tent.min.iter().chain(&tent.max).all(|v| v.is_finite()));
    assert!(drawn.height_m > 0.0 && drawn.width_m > 0.0);
}

#[test]
fn the_roof_of_a_lean_to_falls_from_the_wall() {
    let lean_to = section(&house(Shape::LeanTo));
    assert!((lean_to.roof_at(2.0) - 1.75).abs() < 1e-9, "{}", lean_to.roof_at(2.0));
}
