//! The vapour of one and two zones: exact answers, books, and what one step an hour is worth.

use warmfold::physics::vapour::{DampAir, DampCourse, Face};

/// The step of an hour of a season.
const HOUR_S: [f64; 1] = [3600.0];
/// The same hour second by second.
static SECONDS: [f64; 3600] = [1.0; 3600];

/// A small house in g and s: 40 m³ changed once an hour, air that holds 9.4 g/m³, a bed as warm, 60 m² of cover at the
/// saturation of 3 °C, 10 m² at that of 7 °C.
const COVER: [Face; 2] = [face(60.0 * 0.00207, 5.95e-3), face(10.0 * 0.00207, 7.75e-3)];
const HOUSE: DampAir = DampAir {
    volume_m3: 40.0,
    gain_kg_per_s: 40.0 / 3600.0 * 3e-3,
    outflow_m3_per_s: 40.0 / 3600.0,
    bed: face(8.0 / 1200.0, 9.4e-3),
    surfaces: &COVER,
    most_kg_per_m3: 9.4e-3,
};
const WALL: [Face; 1] = [face(15.0 * 0.00207, 8.1e-3)];
const TENT: DampAir = DampAir {
    volume_m3: 6.0,
    gain_kg_per_s: 0.0,
    outflow_m3_per_s: 0.0,
    bed: face(5.0 / 1200.0, 10.7e-3),
    surfaces: &WALL,
    most_kg_per_m3: 10.7e-3,
};

const fn face(conductance_m3_per_s: f64, saturated_kg_per_m3: f64) -> Face {
    Face { conductance_m3_per_s, saturated_kg_per_m3 }
}

/// What came in less what left and what is kept, kg; `extra` came from elsewhere.
fn open_books_kg(air: &DampAir, course: &DampCourse, start: f64, seconds: f64, extra: f64) -> f64 {
    let came = (air.gain_kg_per_s - air.outflow_m3_per_s * course.mean_kg_per_m3) * seconds + extra;
    let stored = air.volume_m3 * (course.end_kg_per_m3 - start);
    came + course.evaporated_kg - course.condensed_kg - course.mist_kg - stored
}

#[test]
fn air_that_is_changed_goes_to_its_end_exponentially() {
    let air = DampAir { bed: Face::default(), surfaces: &[], most_kg_per_m3: 1.0, ..HOUSE };
    let course = air.advance(9e-3, &SECONDS);
    let (end, start) = (3e-3, 9e-3);
    // One time constant. Backward Euler of 1 s in 3600 is off by half a step's share of e⁻¹: 1.4e-4.
    let exact = end + (start - end) * (-1.0_f64).exp();
    assert!((course.end_kg_per_m3 / exact - 1.0).abs() < 1e-4, "{} {exact}", course.end_kg_per_m3);
    let mean = end + (start - end) * (1.0 - (-1.0_f64).exp());
    assert!((course.mean_kg_per_m3 / mean - 1.0).abs() < 1e-4, "{} {mean}", course.mean_kg_per_m3);
}

#[test]
fn a_wet_cover_holds_the_air_at_the_balance_of_its_flows() {
    let gain_kg_per_s = HOUSE.gain_kg_per_s + 2e-4;
    let rest = DampAir { gain_kg_per_s, ..HOUSE }.advance(6e-3, &[1e15]).end_kg_per_m3;
    let (bed, cover) = (HOUSE.bed, COVER[0]);
    // Only the colder cover is wet: gain + bed = what leaves + what condenses, solved by hand.
    let by_hand = (gain_kg_per_s
        + bed.conductance_m3_per_s * bed.saturated_kg_per_m3
        + cover.conductance_m3_per_s * cover.saturated_kg_per_m3)
        / (HOUSE.outflow_m3_per_s + bed.conductance_m3_per_s + cover.conductance_m3_per_s);
    assert!((rest - by_hand).abs() < 1e-12 && 5.95e-3 < rest && rest < 7.75e-3, "{rest} {by_hand}");
}

#[test]
fn books_close_from_any_start_through_dew_and_mist() {
    for source in [0.0, 2e-4, 2e-3] {
        for start in [0.0, 3e-3, 6.5e-3, 9.4e-3, 12e-3] {
            let air = DampAir { gain_kg_per_s: HOUSE.gain_kg_per_s + source, ..HOUSE };
            let course = air.advance(start, &HOUR_S);
            // Rounding of half a kilogram.
            assert!(open_books_kg(&air, &course, start, 3600.0, 0.0).abs() < 1e-15 * 1e3, "{source} {start}");
            assert!(course.condensed_kg >= 0.0 && course.evaporated_kg >= 0.0 && course.mist_kg >= 0.0);
            assert!(course.end_kg_per_m3 <= air.most_kg_per_m3 && course.mean_kg_per_m3 >= 0.0);

            let exchange = 0.02;
            let [house, tent] = air.advance_beside(&TENT, exchange, [start, 12e-3], &HOUR_S);
            let to_house = exchange * (tent.mean_kg_per_m3 - house.mean_kg_per_m3) * 3600.0;
            assert!(open_books_kg(&air, &house, start, 3600.0, to_house).abs() < 1e-12, "{source} {start}");
            assert!(open_books_kg(&TENT, &tent, 12e-3, 3600.0, -to_house).abs() < 1e-12, "{source} {start}");
            for course in [house, tent] {
                assert!(course.condensed_kg >= 0.0 && course.evaporated_kg >= 0.0 && course.mist_kg >= 0.0);
            }
        }
    }
    let soaked = DampAir { gain_kg_per_s: 2e-3, ..HOUSE }.advance(3e-3, &HOUR_S);
    assert!(soaked.mist_kg > 0.0, "two grams a second are more than the covers take");
}

#[test]
fn one_step_an_hour_is_off_by_what_backward_euler_is() {
    // Of a jump that decays λ times an hour, backward Euler leaves 1/(1 + λ) instead of e^−λ. That is 0.204 of the jump
    // too much at most (λ 2.5); its mean is that end, 0.134 too little at most (λ 0.8). A shut house has λ 1; a wet one
    // 10, whose mean is 0.01 off. (Through a threshold λ changes on the way.)
    let (end_share, mean_share) = (0.204, 0.134);
    let close = |coarse: &DampCourse, fine: &DampCourse, jump: f64| {
        let (end, mean) = (coarse.end_kg_per_m3 - fine.end_kg_per_m3, coarse.mean_kg_per_m3 - fine.mean_kg_per_m3);
        assert!(end.abs() < end_share * jump && mean.abs() < mean_share * jump, "{coarse:?} {fine:?}");
    };
    let dry = DampAir { bed: Face::default(), surfaces: &[], ..HOUSE };
    let wet = DampAir { gain_kg_per_s: HOUSE.gain_kg_per_s + 2e-4, ..HOUSE };
    for (air, start) in [(dry, 5e-3), (dry, 9e-3), (HOUSE, 4e-3), (HOUSE, 5.9e-3), (wet, 6e-3), (wet, 7.7e-3)] {
        let rest = air.advance(start, &[1e15]).end_kg_per_m3;
        let (coarse, fine) = (air.advance(start, &HOUR_S), air.advance(start, &SECONDS));
        let jump = (start - rest).abs();
        close(&coarse, &fine, jump);
        // What is left in the air has not condensed yet.
        let left_kg = end_share * jump * air.volume_m3;
        assert!((coarse.condensed_kg - fine.condensed_kg).abs() <= left_kg, "{coarse:?} {fine:?}");
    }
    let with_tent = |steps: &[f64]| HOUSE.advance_beside(&TENT, 0.001, [4e-3, 9e-3], steps);
    let rest = with_tent(&[1e15]);
    let starts = [4e-3, 9e-3];
    for i in 0..2 {
        close(&with_tent(&HOUR_S)[i], &with_tent(&SECONDS)[i], (starts[i] - rest[i].end_kg_per_m3).abs());
    }
}

#[test]
fn zones_without_exchange_are_alone_and_with_much_of_it_are_one() {
    let [house, tent] = HOUSE.advance_beside(&TENT, 0.0, [6e-3, 8e-3], &HOUR_S);
    for (beside, alone) in [(house, HOUSE.advance(6e-3, &HOUR_S)), (tent, TENT.advance(8e-3, &HOUR_S))] {
        // The rounding of one division.
        assert!((beside.end_kg_per_m3 - alone.end_kg_per_m3).abs() < 1e-17, "{beside:?} {alone:?}");
        assert!((beside.condensed_kg - alone.condensed_kg).abs() < 1e-14, "{beside:?} {alone:?}");
    }
    let [house, tent] = HOUSE.advance_beside(&TENT, 1e3, [6e-3, 8e-3], &HOUR_S);
    assert!((house.end_kg_per_m3 - tent.end_kg_per_m3).abs() < 1e-6);
}
