//! What a plant house does in a real winter: bands that a wrong model falls out of, on the bundled weather.
//!
//! Sources are named beside each check; they are those of the published measurements on small unheated houses, row
//! covers, double coverings and drums of water. Bands without a source of their own are "common practice".

#[path = "common/nights.rs"]
mod nights;

use nights::{Night, mean, nights};
use warmfold::model::{House, Scenario, Shape, Study, WeatherChoice, Zone, bundled_catalogue};
use warmfold::physics::skin::{added_resistance, resistance_in_wind, stack_resistance};
use warmfold::season::damp::WET_HOUR_G_PER_M2;
use warmfold::season::{Hold, ScenarioRun, run_scenario};
use warmfold::weather::{Climate, bundled};

/// Lowest house air of a night over its lowest outdoor air, K.
fn gain_k(night: &Night) -> f64 {
    night.house_min_c - night.outdoor_min_c
}

/// An unheated tunnel of 6 × 3 m under single film from October to April, changed by `change`.
fn winter(station: &str, change: impl Fn(&mut Scenario)) -> (Climate, ScenarioRun) {
    let mut study = Study::default();
    study.site.weather = WeatherChoice::Station(station.to_owned());
    (study.season.from_month, study.season.from_day) = (10, 1);
    (study.season.to_month, study.season.to_day) = (4, 30);
    let scenario = &mut study.scenarios[0];
    scenario.house.shape = Shape::Tunnel;
    (scenario.house.length_m, scenario.house.width_m) = (6.0, 3.0);
    (scenario.house.eaves_height_m, scenario.house.ridge_height_m) = (0.6, 2.2);
    scenario.heater.present = false;
    change(scenario);
    let climate = Climate::from_year(&bundled::load(station).expect("bundled station"));
    let run = run_scenario(&study, &study.scenarios[0], &climate, bundled_catalogue(), &|| false).expect("valid run");
    (climate, run)
}

fn double_film(scenario: &mut Scenario) {
    scenario.covering.sheets = vec!["film".to_owned(), "film".to_owned()];
}

/// 90 L/m² of drums: eight of 202.5 L on 18 m².
fn drums(exposed_m2_each: f64) -> impl Fn(&mut Scenario) {
    move |scenario| {
        scenario.water.present = true;
        let vessels = &mut scenario.water.vessels[0];
        (vessels.zone, vessels.count, vessels.litres_each) = (Zone::House, 8, 202.5);
        vessels.exposed_area_m2_each = exposed_m2_each;
    }
}

#[test]
fn calm_clear_nights_under_single_film() {
    // Savage 1980, Agrochemophysica 12: an unheated tunnel's minima lie +1.3 K over outdoors on average, and can be
    // below; Oregon State 1988, row covers: 0 to +2 K. Band −1.5 to +4 K, mean below +2.5 K. Stations with observed
    // cloud and some calm clear nights.
    for station in ["duluth-mn", "denver-co", "chicago-il"] {
        let (climate, run) = winter(station, |_| {});
        let all = nights(&climate, &run);
        let calm_clear: Vec<_> =
            all.iter().filter(|n| n.mean_wind_m_per_s < 3.0 && n.mean_sky_gap_k > 18.0).map(gain_k).collect();
        assert!(calm_clear.len() >= 4, "{station}: {} nights", calm_clear.len());
        assert!(calm_clear.iter().all(|gain| (-1.5..=4.0).contains(gain)), "{station}: {calm_clear:?}");
        assert!(mean(calm_clear.iter().copied()) < 2.5, "{station}: {calm_clear:?}");
    }
}

#[test]
fn a_cloudy_mild_winter_leaves_the_house_colder_than_outdoors_on_many_nights() {
    // Minute log of an unheated hobby tunnel, 2021/22: colder than outdoors on 71 % of nights, mean −0.27 K; a third to
    // half of the nights is what a tunnel with benches and moist floor does in a like climate, most without benches.
    let colder_share = |bench: bool| {
        let (climate, run) = winter("port-angeles-wa", |s| s.bench.present = bench);
        let all = nights(&climate, &run);
        all.iter().filter(|n| gain_k(n) < 0.0).count() as f64 / all.len() as f64
    };
    let (with_bench, without_bench) = (colder_share(true), colder_share(false));
    assert!((1.0 / 3.0..=0.5).contains(&with_bench), "{with_bench}");
    assert!((1.0 / 3.0..=0.5).contains(&without_bench) && without_bench > with_bench, "{without_bench}");
}

#[test]
fn nights_of_hard_frost_under_one_and_two_films() {
    // Farm notes and the ranking of SARE SW09-041 (single < double): mean gain of nights below −12 °C, +1 to +3 K under
    // one film, +2.5 to +5 K under two.
    for station in ["duluth-mn", "chicago-il", "denver-co"] {
        let gain = |change: &dyn Fn(&mut Scenario)| {
            let (climate, run) = winter(station, change);
            let all = nights(&climate, &run);
            mean(all.iter().filter(|n| n.outdoor_min_c < -12.0).map(gain_k))
        };
        let (one, two) = (gain(&|_| {}), gain(&double_film));
        assert!((1.0..=3.0).contains(&one), "{station}: {one}");
        assert!((2.5..=5.0).contains(&two), "{station}: {two}");
    }
}

#[test]
fn an_unheated_tent_is_warmer_than_its_unheated_house() {
    // Inner covers add about one hardiness zone or less (hightunnels.org; Oregon State 1988): +1 to +4.5 K at night.
    for station in ["duluth-mn", "denver-co", "chicago-il", "port-angeles-wa"] {
        let (climate, run) = winter(station, |s| s.tent.present = true);
        let gains: Vec<f64> =
            nights(&climate, &run).iter().map(|n| n.tent_min_c.expect("tent") - n.house_min_c).collect();
        let mean_gain = mean(gains.iter().copied());
        assert!((1.0..=4.5).contains(&mean_gain), "{station}: {mean_gain}");
        assert!(gains.iter().all(|gain| *gain < 4.5), "{station}");
    }
}

#[test]
fn drums_in_a_row_lift_the_night_minimum() {
    // 90 L/m² of drums: +1 to +1.5 K on the mean night minimum, +3 to +4 K on the coldest (common practice; trials of
    // water tubes of 100 L/m² report +3 to +5 °C, Grafiadellis et al. 1990). In Duluth they freeze through and give
    // less, which is why the check stands on a place where they do not.
    let minima = |change: &dyn Fn(&mut Scenario)| {
        let (climate, run) = winter("chicago-il", change);
        let all = nights(&climate, &run);
        (mean(all.iter().map(|n| n.house_min_c)), run.summary.house_min_c)
    };
    let (bare, row) = (minima(&|_| {}), minima(&drums(1.25)));
    assert!((1.0..=1.5).contains(&(row.0 - bare.0)), "{}", row.0 - bare.0);
    assert!((3.0..=4.0).contains(&(row.1 - bare.1)), "{}", row.1 - bare.1);
}

#[test]
fn drums_that_show_all_of_themselves_lift_the_coldest_night_further() {
    // +4 to +5 K on the coldest night (common practice), for drums that stand clear on slats: side, lid and bottom,
    // 2.04 m², are in the air. With the bottom on the floor they show 1.79 m² and stay a little below 4 K in Denver.
    let whole_m2 = 2.04;
    let coldest = |station: &str, exposed_m2: Option<f64>| {
        let (_, run) = winter(station, |s| exposed_m2.into_iter().for_each(|area| drums(area)(s)));
        (run.summary.house_min_c, run.summary.water_ice_share_max.unwrap_or(0.0))
    };
    for station in ["denver-co", "greensboro-nc"] {
        let gain_k = coldest(station, Some(whole_m2)).0 - coldest(station, None).0;
        assert!((4.0..=5.0).contains(&gain_k), "{station}: {gain_k}");
    }
    // Where a week of frost comes before the coldest night, the surface that gives more also empties the drums sooner:
    // in Chicago they are ice by then and lift it less than drums in a row, which still have half of their water.
    let ((row_c, row_ice), (clear_c, clear_ice)) =
        (coldest("chicago-il", Some(1.25)), coldest("chicago-il", Some(whole_m2)));
    assert!(clear_ice >= 1.0 && row_ice < 0.7, "{row_ice} {clear_ice}");
    assert!(clear_c < row_c, "{row_c} {clear_c}");
}

#[test]
fn a_glass_house_cools_in_minutes_its_trays_in_an_hour() {
    // A light house loses 5 K in about ten minutes when heat fails, trays take an hour or two (common practice: the
    // air weighs little). Heated glass house of 3 × 2.4 m 22 to 25 K warmer than outdoors, as it is in the coldest
    // twelve hours of a winter in Greensboro; limit 5 K below setpoint. Twice the difference would halve the times.
    let (_, run) = winter("greensboro-nc", |s| {
        s.house.shape = Shape::Gable;
        (s.house.length_m, s.house.width_m) = (3.0, 2.4);
        (s.house.eaves_height_m, s.house.ridge_height_m) = (1.6, 2.3);
        s.covering.sheets = vec!["glass".to_owned()];
        (s.heater.present, s.heater.rated_w) = (true, 20_000.0);
        s.crop.limit_c = 3.0;
        (s.bench.length_m, s.bench.width_m) = (2.0, 0.8);
    });
    let times = run.summary.power_cut.with_water;
    let hours = |hold: Hold| if let Hold::Hours(h) = hold { h } else { f64::INFINITY };
    let (air, trays) = (hours(times.air_to_crop_limit_h), hours(times.trays_to_crop_limit_h));
    assert!((5.0 / 60.0..=15.0 / 60.0).contains(&air), "{air}");
    assert!((0.75..=2.25).contains(&trays), "{trays}");
}

#[test]
fn glass_in_wind_under_cloud() {
    // Mihara and Hayashi 1979: glass 4.41 + 0.40 w, with an inner film 3.00 + 0.16 w W/m²K; to one decimal at 1, 2 and
    // 4 m/s under cloud (sky as cold as the air): 4.7–4.8, 5.2, 5.8–6.0 and 3.2, 3.3–3.4, 3.6–3.7.
    let catalogue = bundled_catalogue();
    let (glass, film) = (catalogue.sheet("glass").expect("glass"), catalogue.sheet("film").expect("film"));
    let h_r = warmfold::physics::radiation::radiative_coefficient(0.0, 0.0);
    let u = |added: f64, wind: f64| 1.0 / (resistance_in_wind(stack_resistance([glass]), wind, h_r) + added);
    let half = 0.05;
    for (wind, bare, lined) in
        [(1.0, (4.7, 4.8), (3.2, 3.2)), (2.0, (5.2, 5.2), (3.3, 3.4)), (4.0, (5.8, 6.0), (3.6, 3.7))]
    {
        let (one, two) = (u(0.0, wind), u(added_resistance(film), wind));
        assert!((bare.0 - half..=bare.1 + half).contains(&one), "{wind} m/s: {one}");
        assert!((lined.0 - half..=lined.1 + half).contains(&two), "{wind} m/s: {two}");
    }
}

/// A glass house of 6 × 3 m held at 10 °C through a mild, cloudy winter, its floor planted by this share.
fn planted_glass(planted_share: f64, change: impl Fn(&mut Scenario)) -> (Climate, ScenarioRun) {
    winter("port-angeles-wa", |scenario| {
        scenario.house = House { shape: Shape::Gable, planted_share, ..House::default() };
        scenario.covering.sheets = vec!["glass".to_owned()];
        let heater = &mut scenario.heater;
        (heater.present, heater.zone, heater.rated_w) = (true, Zone::House, 20_000.0);
        (heater.setpoint_day_c, heater.setpoint_night_c) = (Some(10.0), Some(10.0));
        change(scenario);
    })
}

/// Hours in the dark with the heater on.
fn heated_nights(climate: &Climate, run: &ScenarioRun) -> Vec<usize> {
    let dark = |k: &usize| climate.hours[run.hours.record[*k]].global_w_per_m2 <= 5.0;
    (0..run.hours.record.len()).filter(|k| dark(k) && run.hours.heater_w[*k] > 0.0).collect()
}

#[test]
fn nights_of_a_heated_planted_glass_house_are_damp() {
    // Common practice: 70 to 85 % relative humidity at night in a heated, planted glasshouse of a mild winter; in hard
    // cold the glass dries the air (inside 15 °C, outside −5 °C single glass runs wet above 36 %: hand-worked from the
    // handbook's surface coefficients).
    for planted_share in [0.2, 0.6] {
        let (climate, run) = planted_glass(planted_share, |_| ());
        let nights = heated_nights(&climate, &run);
        let humidity = mean(nights.iter().map(|k| run.hours.damp.house_humidity[*k]));
        assert!((0.70..=0.85).contains(&humidity), "{planted_share}: {humidity}");
    }
}

#[test]
fn a_flame_without_a_flue_keeps_the_glass_wet() {
    // Common practice, after the warnings of extension services against unvented heaters (UMass, Problems With Using
    // Unvented Greenhouse Heaters): the glass is wet nearly always, taken as nine hours in ten or more of those with
    // heat; behind a flue on far fewer.
    let wet_share = |vented: bool| {
        let (_, run) = planted_glass(0.2, |scenario| {
            (scenario.heater.fuel, scenario.heater.efficiency) = ("propane".to_owned(), 0.921);
            scenario.heater.vented = vented;
        });
        let heated: Vec<usize> = (0..run.hours.record.len()).filter(|k| run.hours.heater_w[*k] > 0.0).collect();
        mean(
            heated
                .iter()
                .map(|k| f64::from(u8::from(run.hours.damp.skin_condensation_g_per_m2h[*k] > WET_HOUR_G_PER_M2))),
        )
    };
    let (without_flue, with_flue) = (wet_share(false), wet_share(true));
    assert!(without_flue >= 0.9 && with_flue < 0.5, "{without_flue} {with_flue}");
}
