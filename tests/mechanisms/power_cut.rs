//! A power cut of the bare house, which is two nodes, against its analytic solution; and what each measure is worth.

use warmfold::model::{CutStarts, NightCover, Scenario, TentOpening, Zone, bundled_catalogue};
use warmfold::season::Hold;
use warmfold::season::power_cut::{AskedCut, CutAt, CutCourse, Measure, asked_cut, courses};

use crate::house::{FLOOR_M2, HELD_C, RHO_CP, VOLUME_M3, bare, film_u, h_r, run_limited, skin_m2, study};
use crate::weather::{Hour, constant};

const OUTDOOR_C: f64 = -10.0;
/// The third day of the season, when the floor is as warm as the air.
const AT: CutAt = CutAt { start: 60, hours: 10 };

fn cold() -> Hour {
    Hour { outdoor_c: OUTDOOR_C, ..Hour::default() }
}

fn cut(scenario: &Scenario, at: CutAt) -> Vec<CutCourse> {
    courses(&study(), scenario, &constant(&cold()), bundled_catalogue(), at, &|| false).expect("a cut")
}

fn hours(hold: Hold) -> f64 {
    match hold {
        Hold::Hours(h) => h,
        Hold::Beyond => f64::INFINITY,
        Hold::NotApplicable => f64::NAN,
    }
}

/// Air and floor over outdoors, K, as two modes that decay; heat into the air.
struct TwoNodes {
    /// Of air and floor at rest, K.
    rest_k: [f64; 2],
    /// Per mode: decay, 1/s, and its part of the air and of the floor, K.
    modes: [(f64, [f64; 2]); 2],
}

impl TwoNodes {
    fn new(start_k: [f64; 2], heat_w: f64) -> Self {
        let (skin, floor) = (skin_m2() * film_u(0.0, h_r(OUTDOOR_C, OUTDOOR_C), 0.0), 8.0 * FLOOR_M2);
        // Air with frame and foliage and half a film of 0.2 kJ/m²K; 0.12 m of floor at 2 MJ/m³K.
        let air_j = RHO_CP * VOLUME_M3 + 20_000.0 * FLOOR_M2 + 0.5 * 200.0 * skin_m2();
        let floor_j = 0.12 * 2.0e6 * FLOOR_M2;
        let matrix = [[(skin + floor) / air_j, -floor / air_j], [-floor / floor_j, floor / floor_j]];
        let (trace, det) = (matrix[0][0] + matrix[1][1], matrix[0][0] * matrix[1][1] - matrix[0][1] * matrix[1][0]);
        let root = (trace * trace / 4.0 - det).sqrt();
        let decays = [trace / 2.0 + root, trace / 2.0 - root];
        let rest_k = [heat_w / skin; 2];
        let from = [start_k[0] - rest_k[0], start_k[1] - rest_k[1]];
        // A mode of decay λ has air to floor as (m₁₁ − λ) to −m₁₀.
        let shape = decays.map(|decay| (matrix[1][1] - decay) / -matrix[1][0]);
        let first = (from[0] - shape[1] * from[1]) / (shape[0] - shape[1]);
        let floors = [first, from[1] - first];
        let modes = [0, 1].map(|i| (decays[i], [shape[i] * floors[i], floors[i]]));
        Self { rest_k, modes }
    }

    fn after(&self, h: f64) -> [f64; 2] {
        let sum = |i: usize| self.modes.iter().map(|(decay, part)| part[i] * (-decay * 3600.0 * h).exp()).sum::<f64>();
        [self.rest_k[0] + sum(0), self.rest_k[1] + sum(1)]
    }

    /// Hours until the air passes this temperature, °C, on its way down or up.
    fn air_passes_h(&self, t_c: f64) -> f64 {
        let beyond = |h: f64| self.after(h)[0] + OUTDOOR_C < t_c;
        let (mut low, mut high, starts_beyond) = (0.0, 200.0, beyond(0.0));
        for _ in 0..100 {
            let middle = f64::midpoint(low, high);
            if beyond(middle) == starts_beyond { low = middle } else { high = middle }
        }
        low
    }
}

/// The bare house with a heater of a third more than it needs.
fn two_nodes() -> (Scenario, f64) {
    let mut scenario = bare();
    let steady_w = skin_m2() * film_u(0.0, h_r(OUTDOOR_C, OUTDOOR_C), 0.0) * (HELD_C - OUTDOOR_C);
    scenario.heater.rated_w = 4.0 / 3.0 * steady_w;
    scenario.crop.limit_c = 5.0;
    (scenario, 4.0 / 3.0 * steady_w)
}

/// A limit is read from a straight line over a step of 200 s, in a fall whose fast mode has 800 s: 200²/(8 × 800) s
/// late or early; steps of 400 s, 25 s.
const READ_H: f64 = 25.0 / 3600.0;

#[test]
fn the_air_of_two_nodes_falls_as_it_must() {
    let (scenario, _) = two_nodes();
    let done = cut(&scenario, AT);
    assert_eq!(done.len(), 1, "there is nothing to take away");
    let (course, exact) = (&done[0].course, TwoNodes::new([HELD_C - OUTDOOR_C; 2], 0.0));
    for (got, limit_c) in [(course.times.air_to_crop_limit_h, 5.0), (course.times.air_to_freezing_h, 0.0)] {
        let by_hand = exact.air_passes_h(limit_c);
        assert!(by_hand > 0.0 && (hours(got) - by_hand).abs() < READ_H, "{limit_c} °C: {got:?}, by hand {by_hand}");
    }
    // Third order in steps of minutes, then of 20 and 40 minutes behind the sixth hour.
    for (k, air_c) in course.air_c[..AT.hours].iter().enumerate() {
        let by_hand = exact.after(k as f64 + 1.0)[0] + OUTDOOR_C;
        assert!((air_c - by_hand).abs() < 0.02, "after {} h: {air_c}, by hand {by_hand}", k + 1);
    }
    assert_eq!(course.times.trays_to_freezing_h, Hold::NotApplicable);
    assert_eq!(course.water_to_freezing_h, Hold::NotApplicable);
}

#[test]
fn the_rated_heater_takes_as_long_as_two_nodes_need() {
    let (scenario, rated_w) = two_nodes();
    let course = &cut(&scenario, AT)[0].course;
    let cooled = TwoNodes::new([HELD_C - OUTDOOR_C; 2], 0.0).after(AT.hours as f64);
    let by_hand = TwoNodes::new(cooled, rated_w).air_passes_h(HELD_C - 0.1);
    assert!((hours(course.recovery_h) - by_hand).abs() < READ_H, "{:?}, by hand {by_hand}", course.recovery_h);
    // A heater that needs no mains never lets go.
    let mut own = scenario;
    own.heater.needs_mains = false;
    let course = &cut(&own, AT)[0].course;
    assert_eq!((course.times.air_to_crop_limit_h, course.recovery_h), (Hold::Beyond, Hold::Hours(0.0)));
    own.heater.present = false;
    assert_eq!(cut(&own, AT)[0].course.recovery_h, Hold::NotApplicable);
}

#[test]
fn each_measure_is_taken_away_in_turn() {
    let (mut scenario, _) = two_nodes();
    (scenario.tent.present, scenario.tent.opening) = (true, TentOpening::Never);
    (scenario.heater.zone, scenario.crop.zone) = (Zone::Tent, Zone::Tent);
    scenario.night_cover = NightCover { present: true, ..NightCover::default() };
    scenario.tent.night_cover = NightCover { present: true, ..NightCover::default() };
    scenario.water.present = true;
    // So little that what froze in the days run ahead without heat has thawed since.
    let cans = &mut scenario.water.vessels[0];
    (cans.zone, cans.count, cans.litres_each) = (Zone::Tent, 1, 20.0);
    let at = CutAt { hours: 72, ..AT };
    let done = cut(&scenario, at);
    let without: Vec<_> = done.iter().map(|c| c.without).collect();
    assert_eq!(without, [None, Some(Measure::Water), Some(Measure::Tent), Some(Measure::NightCovers)]);
    let holds: Vec<f64> = done.iter().map(|c| hours(c.course.times.air_to_crop_limit_h)).collect();
    assert!(holds[1..].iter().all(|h| *h < holds[0] && *h > 0.0), "{holds:?}");
    // Water holds 0 °C after the air has passed it, and there is none to freeze where it is taken away.
    let (ice, air) = (hours(done[0].course.water_to_freezing_h), hours(done[0].course.times.air_to_freezing_h));
    assert!(ice.is_finite() && ice > air, "{ice} {air}");
    assert_eq!(done[1].course.water_to_freezing_h, Hold::NotApplicable);
}

#[test]
fn the_cut_of_the_summary_is_one_of_these() {
    let (mut scenario, _) = two_nodes();
    scenario.water.present = true;
    let summary = run_limited(&scenario, &cold(), false).summary.power_cut;
    // In even weather the first hour of the season begins the coldest twelve.
    let done = cut(&scenario, CutAt { start: 0, hours: 120 });
    assert_eq!((done[0].course.times, done[1].course.times), (summary.with_water, summary.without_water));
    assert_eq!(done[0].course.air_c, summary.air_c);
}

/// The cut that a study asks for.
fn asked(scenario: &Scenario, cut_starts: CutStarts, cut_hours: u32) -> AskedCut {
    let mut study = study();
    (study.hard_night.cut_starts, study.hard_night.cut_hours) = (cut_starts, cut_hours);
    asked_cut(&study, scenario, &constant(&cold()), bundled_catalogue(), &|| false).expect("a cut")
}

#[test]
fn a_study_names_start_and_length() {
    let (scenario, _) = two_nodes();
    // The season begins on 10 March: noon of the 12th is its hour 60.
    let at = asked(&scenario, CutStarts::At { month: 3, day: 12, hour: 12 }, 10);
    assert_eq!((at.start, at.hours, at.starts_at.to_string()), (AT.start, AT.hours, "03-12 13:00".to_owned()));
    assert_eq!(at.courses, cut(&scenario, AT));
    // What the season lacks is the coldest twelve hours, in even weather the first.
    let beyond = asked(&scenario, CutStarts::At { month: 7, day: 1, hour: 12 }, 10);
    assert_eq!(beyond.start, 0);
    assert_eq!(beyond.courses, asked(&scenario, CutStarts::Coldest, 10).courses);
}

#[test]
fn limits_are_timed_beyond_the_end_of_a_short_cut() {
    let (scenario, _) = two_nodes();
    let exact = TwoNodes::new([HELD_C - OUTDOOR_C; 2], 0.0);
    let by_hand = exact.air_passes_h(5.0);
    // The mains are back before the air has reached its limit.
    let short = (by_hand / 2.0).floor().max(1.0);
    let limit_c = exact.after(2.0 * short)[0] + OUTDOOR_C;
    let mut scenario = scenario;
    scenario.crop.limit_c = limit_c;
    let done = &cut(&scenario, CutAt { hours: short as usize, ..AT })[0];
    assert_eq!(done.course.times.air_to_crop_limit_h, Hold::Beyond, "the heater has caught it");
    let held_h = hours(done.unbroken.times.air_to_crop_limit_h);
    assert!((held_h - 2.0 * short).abs() < READ_H, "{held_h}, by hand {}", 2.0 * short);
}
