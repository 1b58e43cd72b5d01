//! The coldest spell, colder.

use crate::random_houses::held as house;
use crate::weathers::CLIMATES;
use crate::{houses, season};
use proptest::prelude::*;
use warmfold::model::bundled_catalogue;
use warmfold::season::colder::{Bound, colder_spell};

/// The iteration of the leakage may leave an air temperature this far from its rest, K.
const ITERATION_K: f64 = 0.02;

proptest! {
    #![proptest_config(houses(30))]

    #[test]
    fn what_holds_colder_holds_milder(some in house(), station in 0usize..3, by_k in 0.0..15.0_f64) {
        let spell = |k: f64| {
            colder_spell(&season(1, 10, 30), &some, &CLIMATES[station], bundled_catalogue(), k, &|| false)
                .expect("a spell")
        };
        let (this_year, colder) = (spell(0.0), spell(by_k));
        prop_assert!(colder.crop_air_min_c <= this_year.crop_air_min_c + ITERATION_K);
        prop_assert_eq!(this_year.bound, colder.bound, "the bound is the house's own");
        if let Bound::Kelvin(k) = colder.bound {
            prop_assert!((colder.outdoor_min_c - k - colder.holds_down_to_c.unwrap_or(f64::NAN)).abs() < 1e-9);
            prop_assert!(spell(k).holds, "the bound itself is kept");
            prop_assert!(by_k > k || colder.holds, "{by_k} K colder falls short, {k} K holds");
        }
        let needed = [&this_year, &colder].map(|s| s.heater_needed_w);
        if let [Some(now_w), Some(then_w)] = needed {
            // Each is found to a hundredth.
            prop_assert!(now_w <= 1.011 * then_w, "{now_w} W now, {then_w} W colder");
        }
    }
}
