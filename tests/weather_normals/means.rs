//! The year has the means that were typed, and the degree-days that follow from them.

use crate::climates::{mean_min_max_c, same_place, temperatures_of};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use warmfold::weather::Place;
use warmfold::weather::WeatherYear;
use warmfold::weather::bundled::stations;
use warmfold::weather::degree_days::hitchin_k_d;
use warmfold::weather::normals::{
    Brightness, MonthNormal, Normals, year_from_normals, year_without, zone_of_longitude_h,
};
use warmfold::weather::stats::{DayMean, degree_days_k_d};

/// What the product promises, K: a tenth, to which climate tables are printed.
const MEAN_K: f64 = 0.1;
/// What the product promises: the spread that the estimate itself keeps against the British standard year in winter.
const DEGREE_DAYS_SHARE: f64 = 0.02;
/// Base of degree-days, °C.
const BASE_C: f64 = 18.3;
/// The estimate is good from October to March, in months well below the base: against the British standard year it is
/// within 2 % of months 5.7 K and more below, and 16 % off in April at base 10 °C, 2.1 K below.
const BELOW_BASE_K: f64 = 5.0;
const WINTER: [(u32, f64); 6] = [(10, 31.0), (11, 30.0), (12, 31.0), (1, 31.0), (2, 28.0), (3, 31.0)];

fn assert_means(normals: &Normals, made: &WeatherYear) {
    for (m, month) in (1..).zip(&normals.months) {
        let [min_c, max_c] = mean_min_max_c(made, m);
        assert!((min_c - month.min_c).abs() < MEAN_K, "month {m}: minimum {min_c}, wanted {}", month.min_c);
        assert!((max_c - month.max_c).abs() < MEAN_K, "month {m}: maximum {max_c}, wanted {}", month.max_c);
    }
}

#[test]
fn the_year_has_the_typed_minima_and_maxima() {
    for station in stations() {
        let normals = temperatures_of(&station.load().expect("a bundled year"));
        assert_means(&normals, &year_without(&normals, &same_place(station)).expect("a lender"));
    }
}

/// The published estimate is Hitchin's, from each month's mean alone (`weather::degree_days`).
#[test]
fn winter_degree_days_are_the_estimate_from_monthly_means() {
    for station in stations() {
        let normals = temperatures_of(&station.load().expect("a bundled year"));
        let made = year_without(&normals, &same_place(station)).expect("a lender");
        let (mut estimate, mut found) = (0.0, 0.0);
        for (m, days) in WINTER {
            let month = &normals.months[m as usize - 1];
            if BASE_C - month.middle_c() < BELOW_BASE_K {
                continue;
            }
            estimate += hitchin_k_d(days, month.middle_c(), BASE_C);
            let hours: Vec<f64> = made.records.iter().filter(|r| r.month == m).map(|r| r.dry_bulb_c).collect();
            found += degree_days_k_d(&hours, BASE_C, DayMean::MinMax);
        }
        assert!((found / estimate - 1.0).abs() < DEGREE_DAYS_SHARE, "{}: {found}, estimate {estimate}", station.key);
    }
}

fn climate() -> impl Strategy<Value = Normals> {
    let month = (0.0..1.0, 3.0..16.0_f64, proptest::option::of(0.0..10.0_f64), proptest::option::of(0.0..8.0_f64));
    let place = (-65.0..65.0_f64, -180.0..180.0_f64, 0.0..2500.0_f64, -25.0..22.0_f64, 1.0..18.0_f64);
    (place, proptest::collection::vec(month, 12)).prop_map(
        |((latitude_deg, longitude_deg, elevation_m, mean_c, yearly_k), rows)| {
            let towards = if latitude_deg < 0.0 { 1.0 } else { -1.0 };
            let months = std::array::from_fn(|m| {
                let (jitter, swing_k, cloud, wind_m_per_s) = rows[m];
                let middle_c = mean_c + towards * yearly_k * (std::f64::consts::TAU * m as f64 / 12.0).cos() + jitter;
                MonthNormal {
                    min_c: middle_c - swing_k / 2.0,
                    max_c: middle_c + swing_k / 2.0,
                    brightness: cloud.map(Brightness::CloudTenths),
                    wind_m_per_s,
                }
            });
            let utc_offset_h = zone_of_longitude_h(longitude_deg);
            Normals {
                place: Place { name: "Anywhere".to_owned(), latitude_deg, longitude_deg, utc_offset_h, elevation_m },
                months,
            }
        },
    )
}

/// Winters as they were, summers of damp days alike: swings of down to a seventh of the lender's in the same year.
#[test]
fn small_swings_are_met_beside_great_ones() {
    for station in stations() {
        let mut normals = temperatures_of(&station.load().expect("a bundled year"));
        for month in &mut normals.months[3..9] {
            let middle_c = month.middle_c();
            (month.min_c, month.max_c) = (middle_c - 1.25, middle_c + 1.25);
        }
        assert_means(&normals, &year_from_normals(&normals).expect("a year"));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..ProptestConfig::default() })]

    /// Any climate between the polar circles, north or south: its means are met, every figure can be computed with, and
    /// the same figures give the same bits.
    #[test]
    fn any_climate_becomes_a_sound_year(normals in climate()) {
        let made = year_from_normals(&normals).expect("a year");
        assert_means(&normals, &made);
        prop_assert_eq!(made.records.len(), 8760);
        for r in &made.records {
            prop_assert!(r.dry_bulb_c.is_finite() && r.dew_point_c <= r.dry_bulb_c + 1e-9, "{:?}", r);
            prop_assert!((0.0..=1500.0).contains(&r.global_w_per_m2), "{:?}", r);
            prop_assert!(r.diffuse_w_per_m2 >= 0.0 && r.diffuse_w_per_m2 <= r.global_w_per_m2, "{:?}", r);
            prop_assert!((0.0..=1400.0).contains(&r.direct_normal_w_per_m2), "{:?}", r);
            prop_assert!((0.0..=10.0).contains(&r.cloud_tenths) && r.wind_m_per_s >= 0.0, "{:?}", r);
            prop_assert!(r.infrared_w_per_m2.is_none_or(|w| w > 20.0 && w < 700.0), "{:?}", r);
        }
        for (m, month) in (1..).zip(&normals.months) {
            let of_month: Vec<_> = made.records.iter().filter(|r| r.month == m).collect();
            if let Some(wanted) = month.wind_m_per_s {
                let found = of_month.iter().map(|r| r.wind_m_per_s).sum::<f64>() / of_month.len() as f64;
                prop_assert!((found - wanted).abs() < 1e-6, "month {}: wind {}, wanted {}", m, found, wanted);
            }
            if let Some(Brightness::CloudTenths(wanted)) = month.brightness {
                let found = of_month.iter().map(|r| r.cloud_tenths).sum::<f64>() / of_month.len() as f64;
                prop_assert!((found - wanted).abs() < 1e-6, "month {}: cloud {}, wanted {}", m, found, wanted);
            }
        }
        prop_assert_eq!(year_from_normals(&normals).expect("a year"), made);
    }
}
