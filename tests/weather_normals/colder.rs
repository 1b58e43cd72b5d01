//! Cold on top of a year: exact by its definition.

use warmfold::weather::Climate;
use warmfold::weather::bundled::load;
use warmfold::weather::colder::ColderBy;

const SHIFT: ColderBy = ColderBy { shift_k: 2.0, snap_depth_k: 0.0, snap_days: 3, snap_from: (1, 15) };
const SNAP: ColderBy = ColderBy { shift_k: 0.0, snap_depth_k: 10.0, snap_days: 3, snap_from: (1, 1) };

fn duluth() -> Climate {
    Climate::from_year(&load("duluth-mn").expect("a bundled year"))
}

#[test]
fn a_shift_lowers_air_dew_point_sky_ground_and_design_temperatures() {
    let (before, after) = (duluth(), duluth().colder(&SHIFT));
    for (a, b) in before.hours.iter().zip(&after.hours) {
        assert!((a.outdoor_c - b.outdoor_c - 2.0).abs() < 1e-9 && (a.sky_c - b.sky_c - 2.0).abs() < 1e-9);
        assert!(
            (a.dew_point_c - b.dew_point_c - 2.0).abs() < 1e-9 && a.wind_m_per_s.to_bits() == b.wind_m_per_s.to_bits()
        );
    }
    for (a, b) in [
        (before.deep_ground_c[0], after.deep_ground_c[0]),
        (before.deep_ground_min_c, after.deep_ground_min_c),
        (before.outdoor.at_99_6_c, after.outdoor.at_99_6_c),
        (before.outdoor.coldest_c, after.outdoor.coldest_c),
    ] {
        assert!((a - b - 2.0).abs() < 1e-9, "{a} {b}");
    }
}

/// Three days in full and half a day in and out, over New Year here; all else stays.
#[test]
fn a_snap_lowers_its_days_and_no_others() {
    let (before, after) = (duluth(), duluth().colder(&SNAP));
    let drop_k: Vec<f64> = before.hours.iter().zip(&after.hours).map(|(a, b)| a.outdoor_c - b.outdoor_c).collect();
    assert!(drop_k[..72].iter().all(|k| (k - 10.0).abs() < 1e-9));
    assert!(drop_k[84..8748].iter().all(|k| k.abs() < 1e-12));
    assert!(drop_k[72..84].windows(2).all(|w| w[1] < w[0]) && drop_k[8748..].windows(2).all(|w| w[0] < w[1]));
    assert!((before.deep_ground_c[0] - after.deep_ground_c[0]).abs() < 1e-12);
}
