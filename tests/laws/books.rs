//! Heat that is neither made nor lost, numbers that are numbers, and the bracket that a pencil can check.

use crate::random_houses::{any, held as house, set};
use crate::weathers::{CLIMATES, even};
use crate::{held, houses, season, seasons, study};
use proptest::prelude::*;
use warmfold::model::{BehindPartyWall, Season, Study, TentOpening};
use warmfold::season::{HourlySeries, RunOptions};

fn columns(hours: &HourlySeries) -> [&[f64]; 33] {
    [
        &hours.outdoor_c,
        &hours.house_air_c,
        &hours.house_floor_c,
        &hours.house_water_c,
        &hours.house_ice_share,
        &hours.tent_air_c,
        &hours.tent_floor_c,
        &hours.tent_water_c,
        &hours.tent_ice_share,
        &hours.heater_w,
        &hours.standby_w,
        &hours.sun_w,
        &hours.vapour_w,
        &hours.skin_loss_w,
        &hours.leakage_loss_w,
        &hours.vent_loss_w,
        &hours.ground_loss_w,
        &hours.party_wall_loss_w,
        &hours.tent_loss_w,
        &hours.store_change_w,
        &hours.air_exchange_m3_per_h,
        &hours.tent_exchange_m3_per_h,
        &hours.damp.house_humidity,
        &hours.damp.tent_humidity,
        &hours.damp.skin_condensation_g_per_m2h,
        &hours.damp.tent_wall_condensation_g_per_m2h,
        &hours.damp.house_mist_g_per_h,
        &hours.damp.tent_mist_g_per_h,
        &hours.vent_opening,
        &hours.fan_share,
        &hours.cost,
        &hours.baseline_w,
        &hours.baseline_cost,
    ]
}

proptest! {
    #![proptest_config(houses(60))]

    /// Any heater with its own rating, any month of the cold half of the year.
    #[test]
    fn everything_is_a_number_and_the_books_close(scenario in any(), station in 0usize..3, month in 1u32..=5) {
        let run = seasons::run(&season(month, 3, 23), &scenario, &CLIMATES[station], RunOptions::default());
        for column in columns(&run.hours) {
            prop_assert!(column.iter().all(|value| value.is_finite()));
        }
        prop_assert!(run.hours.heater_w.iter().chain(&run.hours.standby_w).all(|w| *w >= 0.0));
        let summary = serde_json::to_string(&run.summary).expect("JSON");
        prop_assert!(!summary.contains("NaN") && !summary.contains("inf"));
        // 1e-6 of sun, heat and all inward flows is the demand.
        prop_assert!(run.summary.books_closure.abs() < 1e-6, "{}", run.summary.books_closure);
        let damp = &run.hours.damp;
        // Implicit steps end at the solver's rounding at worst above saturation.
        prop_assert!(damp.house_humidity.iter().chain(&damp.tent_humidity).all(|h| (0.0..=1.0 + 1e-12).contains(h)));
        let waters = [&damp.skin_condensation_g_per_m2h, &damp.tent_wall_condensation_g_per_m2h];
        let mists = [&damp.house_mist_g_per_h, &damp.tent_mist_g_per_h];
        // What a step takes from rounding: 1e-16 of some kilograms.
        prop_assert!(waters.into_iter().chain(mists).flatten().all(|grams| *grams >= -1e-9));
        prop_assert!(run.summary.damp.moisture_books_closure <= 1e-6, "{}", run.summary.damp.moisture_books_closure);
    }

    #[test]
    fn without_a_difference_nothing_flows(mut still in house(), t_c in 0.5..12.0) {
        still.house.behind_party_wall = BehindPartyWall::Outdoors;
        still.heater = set(t_c);
        let run = seasons::run(&study(), &still, &even(t_c), RunOptions::default());
        // Rounding of a few hundred W/K times 12 °C in double precision is below 1e-9 W; the deep ground comes from a
        // fit that may be off by 1e-12 K.
        let hours = &run.hours;
        for column in [
            &hours.heater_w,
            &hours.sun_w,
            &hours.skin_loss_w,
            &hours.leakage_loss_w,
            &hours.vent_loss_w,
            &hours.ground_loss_w,
            &hours.party_wall_loss_w,
            &hours.tent_loss_w,
            &hours.store_change_w,
        ] {
            prop_assert!(column.iter().all(|w| w.abs() < 1e-6), "{column:?}");
        }
    }

    /// The conditions of the bracket: a constant setpoint, and no vessels, which carry more than a day.
    ///
    /// Nor a tent opened by day, nor a cover drawn at night: the day's mean load multiplies the mean conductance with the
    /// mean difference, and where the tent stands open in the warm hours, or the cover is drawn in the cold ones, that is
    /// more than the mean of the products. The lower end is then no bound; the run went below it by up to 0.5 %.
    ///
    /// Held at 8 °C or more, so that most nights need heat: where few do, the floor still holds what more than one day
    /// has brought, and the heat (2 kWh in eleven weeks) can lie below the lower end by a tenth.
    ///
    /// The season begins in October, while the floor is warm. One that begins in January first warms a floor that the
    /// days run ahead without heat left cold, 0.04 % to 2 % of three weeks' heat, which no formula without stores knows.
    #[test]
    fn heat_lies_within_its_bracket(mut scenario in house(), station in 0usize..3) {
        scenario.water.present = false;
        scenario.night_cover.present = false;
        scenario.heater = set(scenario.heater.setpoint_day_c.unwrap_or(0.0).max(8.0));
        if scenario.tent.opening == TentOpening::ByDay {
            scenario.tent.opening = TentOpening::Never;
        }
        let autumn = Season { from_month: 10, from_day: 15, to_month: 12, to_day: 31 };
        let study = Study { season: autumn, ..Study::default() };
        let summary = held(&study, &scenario, &CLIMATES[station]).summary;
        let (low, high) = summary
            .degree_hour_bracket_low_kwh
            .zip(summary.degree_hour_bracket_high_kwh)
            .expect("a heater that is always on has a bracket");
        let heat = summary.heat_delivered_kwh;
        prop_assert!(low <= heat && heat <= high, "{low} ≤ {heat} ≤ {high}");
    }
}
