//! What never costs more heat.

use crate::random_houses::{held as house, set, sheet};
use crate::weathers::{CLIMATES, DARK, warmer};
use crate::{heat_kwh, houses};
use proptest::prelude::*;
use warmfold::model::NightCover;

proptest! {
    #![proptest_config(houses(40))]

    /// In the dark: a further sheet takes light as well, which can cost a sunny house more than the sheet saves.
    #[test]
    fn a_further_sheet(before in house(), further in sheet()) {
        let mut after = before.clone();
        after.covering.sheets.push(further);
        let (one, two) = (heat_kwh(&before, &DARK), heat_kwh(&after, &DARK));
        prop_assert!(two <= one, "{one} {two}");
    }

    #[test]
    fn a_further_sheet_on_the_tent(before in house(), further in sheet(), station in 0usize..3) {
        let mut after = before.clone();
        after.tent.sheets.push(further);
        let (one, two) = (heat_kwh(&before, &CLIMATES[station]), heat_kwh(&after, &CLIMATES[station]));
        prop_assert!(two <= one, "{one} {two}");
    }

    /// Drawn by the sun, so that it takes no light; one drawn by the clock can take more than it saves.
    #[test]
    fn a_night_cover(mut before in house(), station in 0usize..3) {
        before.night_cover.present = false;
        let mut after = before.clone();
        after.night_cover = NightCover { present: true, ..NightCover::default() };
        let (open, drawn) = (heat_kwh(&before, &CLIMATES[station]), heat_kwh(&after, &CLIMATES[station]));
        prop_assert!(drawn <= open, "{open} {drawn}");
    }

    /// With the heater in the tent.
    #[test]
    fn a_smaller_tent(before in house(), share in 0.7..1.0, station in 0usize..3) {
        let mut large = before;
        large.tent.present = true;
        let mut small = large.clone();
        small.tent.length_m *= share;
        small.tent.width_m *= share;
        small.tent.height_m *= share;
        let (more, less) = (heat_kwh(&large, &CLIMATES[station]), heat_kwh(&small, &CLIMATES[station]));
        prop_assert!(less <= more, "{more} {less}");
    }

    #[test]
    fn a_lower_setpoint(warm in house(), by_k in 0.5..4.0, station in 0usize..3) {
        let mut cool = warm.clone();
        cool.heater = set(warm.heater.setpoint_day_c.unwrap_or(0.0) - by_k);
        let (more, less) = (heat_kwh(&warm, &CLIMATES[station]), heat_kwh(&cool, &CLIMATES[station]));
        prop_assert!(less <= more, "{more} {less}");
    }
}

proptest! {
    // Each of these prepares a weather year of its own.
    #![proptest_config(houses(20))]

    #[test]
    fn warmer_weather(any in house(), by_k in 0.5..5.0, station in 0usize..3) {
        let (cold, mild) = (heat_kwh(&any, &CLIMATES[station]), heat_kwh(&any, &warmer(station, by_k)));
        prop_assert!(mild <= cold, "{cold} {mild}");
    }
}
