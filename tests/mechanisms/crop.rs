//! The zone in which the crop grows.

use warmfold::model::Zone;

use crate::house::{bare, run};
use crate::weather::Hour;

#[test]
fn the_crop_limit_is_counted_where_the_crop_grows() {
    let hours_below = |zone| {
        let mut scenario = bare();
        (scenario.tent.present, scenario.heater.zone) = (true, Zone::Tent);
        (scenario.crop.zone, scenario.crop.limit_c) = (zone, 5.0);
        let summary = run(&scenario, &Hour::default()).summary;
        (summary.hours_below_crop_limit, summary.season_hours, summary.degree_hours_below_crop_limit_kh)
    };
    // The tent is held at 10 °C; the house round it stays a few kelvin above 0 °C.
    assert_eq!(hours_below(Zone::Tent).0, 0);
    let (below, all, degree_hours) = hours_below(Zone::House);
    assert_eq!(below, all);
    assert!((2.0..4.0).contains(&(degree_hours / all as f64)), "{degree_hours}");
}
