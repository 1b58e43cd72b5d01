//! A measured glasshouse with two night screens, hour by hour: the program is told the air of house and weather and
//! answers with the heat. Stores are left out: in the measured nights heat per kelvin stays level from the third to the
//! twelfth dark hour.

use serde::Deserialize;
use warmfold::model::{NightCover, Scenario, bundled_catalogue};
use warmfold::physics::moist_air::{dew_point_c, saturation_pa};
use warmfold::season::drive::{DriveSettings, HourDrive};
use warmfold::season::house_model::HouseModel;
use warmfold::season::plan::Plan;
use warmfold::units::{STEFAN_BOLTZMANN, kelvin_from_c};
use warmfold::weather::fill::fill;
use warmfold::weather::raw::{RawRow, RawYear, Setting};
use warmfold::weather::stats::mean;
use warmfold::weather::{Climate, Place};

use super::figure::{Expected, Figure, hold, published};

#[derive(Deserialize)]
pub struct Case {
    pub source: String,
    tolerance_because: String,
    tolerance_share: f64,
    slope_because: String,
    second_screen_because: String,
    pub scenario: Scenario,
    latitude_deg: f64,
    longitude_deg: f64,
    utc_offset_h: f64,
}

/// One measured hour.
#[derive(Deserialize)]
pub struct Measured {
    hour_start: String,
    pub t_in_c: f64,
    vent_lee_pct: f64,
    vent_wind_pct: f64,
    screen_energy_pct: f64,
    screen_black_pct: f64,
    q_pipe_wm2: f64,
    par_in_umol: f64,
    t_out_c: f64,
    global_wm2: f64,
    wind_ms: f64,
    net_lw_wm2: f64,
    pub rh_in_pct: f64,
    rh_out_pct: f64,
}

/// Which of the two screens are closed.
#[derive(Clone, Copy, PartialEq)]
pub enum Screens {
    Open,
    Blackout,
    Energy,
    Both,
}

impl Screens {
    const ALL: [(Self, Option<&'static str>); 4] = [
        (Self::Open, None),
        (Self::Blackout, Some("cloth-screen")),
        (Self::Energy, Some("energy-screen")),
        (Self::Both, Some("energy-plus-blackout")),
    ];

    fn of(hour: &Measured) -> Self {
        match (hour.screen_energy_pct > 50.0, hour.screen_black_pct > 50.0) {
            (false, false) => Self::Open,
            (false, true) => Self::Blackout,
            (true, false) => Self::Energy,
            (true, true) => Self::Both,
        }
    }
}

pub fn measured() -> Vec<Measured> {
    let mut reader = csv::Reader::from_path("tests/data/validation/glasshouse_2022_hourly.csv").expect("test data");
    reader.deserialize().collect::<Result<_, _>>().expect("rows")
}

/// The measured weather; the net radiation of the sky belongs to a surface as warm as the air, and the ground a metre
/// under a heated range is as warm as the house in the mean of the weeks.
pub fn climate(case: &Case, hours: &[Measured]) -> Climate {
    let row = |hour: &Measured| {
        let part = |range: std::ops::Range<usize>| hour.hour_start[range].parse::<u32>().expect("stamp");
        RawRow {
            year: part(0..4) as i32,
            month: part(5..7),
            day: part(8..10),
            hour: part(11..13) + 1,
            dry_bulb_c: Some(hour.t_out_c),
            dew_point_c: Some(dew_point_c(hour.rh_out_pct / 100.0 * saturation_pa(hour.t_out_c))),
            wind_m_per_s: Some(hour.wind_ms),
            global_w_per_m2: Some(hour.global_wm2),
            infrared_w_per_m2: Some(STEFAN_BOLTZMANN * kelvin_from_c(hour.t_out_c).powi(4) + hour.net_lw_wm2),
            ..RawRow::default()
        }
    };
    let place = Place {
        name: "Bleiswijk".into(),
        latitude_deg: case.latitude_deg,
        longitude_deg: case.longitude_deg,
        utc_offset_h: case.utc_offset_h,
        elevation_m: 0.0,
    };
    let year = fill(RawYear {
        place,
        setting: Setting::Coast,
        credit: String::new(),
        sun_offset_h: -0.5,
        typical: false,
        rows: hours.iter().map(row).collect(),
        notes: Vec::new(),
    });
    let mut climate = Climate::from_year(&year.expect("no long gap"));
    climate.deep_ground_c = vec![mean(&hours.iter().map(|hour| hour.t_in_c).collect::<Vec<_>>()); hours.len()];
    climate
}

/// Heat per floor that holds the measured air, W/m², hour by hour, with these screens or with those that were closed.
fn heat_w_per_m2(case: &Case, hours: &[Measured], always: Option<Screens>) -> Vec<f64> {
    let climate = climate(case, hours);
    let plans = Screens::ALL.map(|(screens, key)| {
        let mut scenario = case.scenario.clone();
        if let Some(key) = key {
            scenario.night_cover = NightCover { present: true, screen: key.to_owned(), ..NightCover::default() };
            scenario.night_cover.parts = vec![warmfold::model::Part::Roof];
        }
        (screens, Plan::new(&scenario, bundled_catalogue()).expect("a house"))
    });
    let settings = DriveSettings::of(&case.scenario);
    let mut model = HouseModel::new(&plans[0].1, &case.scenario, hours[0].t_in_c).expect("a network");
    let (air, floor_m2) = (plans[0].1.layout.house.air, plans[0].1.shell.floor_m2);
    let hour_heat = |(k, hour): (usize, &Measured)| {
        let screens = always.unwrap_or_else(|| Screens::of(hour));
        let (_, plan) = plans.iter().find(|(of, _)| *of == screens).expect("a plan for every position");
        let drive = HourDrive::new(plan, settings, &climate, k);
        let flows = model.openings().shut(&drive, hour.t_in_c);
        model.steady_load(&drive, &flows, air, hour.t_in_c).1 / floor_m2
    };
    hours.iter().enumerate().map(hour_heat).collect()
}

/// Dark, shut, heated hours whose air is steady, with these screens fully closed.
pub fn chosen(hours: &[Measured], screens: Screens) -> Vec<usize> {
    let closed = |hour: &Measured| match screens {
        Screens::Both => hour.screen_energy_pct > 95.0 && hour.screen_black_pct > 95.0,
        _ => hour.screen_energy_pct > 95.0 && hour.screen_black_pct < 5.0,
    };
    let is_chosen = |k: &usize| {
        let (hour, before) = (&hours[*k], &hours[*k - 1]);
        hour.global_wm2 < 2.0
            && hour.par_in_umol < 2.0
            && hour.vent_lee_pct.max(hour.vent_wind_pct) < 1.0
            && (hour.t_in_c - before.t_in_c).abs() < 0.4
            && hour.q_pipe_wm2 > 0.0
            && closed(hour)
    };
    (1..hours.len()).filter(is_chosen).collect()
}

/// Mean of a column over hours, per kelvin between inside and outside.
fn per_kelvin(hours: &[Measured], chosen: &[usize], heat: impl Fn(usize) -> f64) -> f64 {
    let over = |value: &dyn Fn(usize) -> f64| chosen.iter().map(|&k| value(k)).sum::<f64>();
    over(&heat) / over(&|k| hours[k].t_in_c - hours[k].t_out_c)
}

pub fn figures() -> Vec<Figure> {
    let case: Case = published("glasshouse");
    let hours = measured();
    let heat = heat_w_per_m2(&case, &hours, None);
    let both = chosen(&hours, Screens::Both);
    let in_wind = |from: f64, to: f64| -> Vec<usize> {
        both.iter().copied().filter(|&k| (from..to).contains(&hours[k].wind_ms)).collect()
    };
    let figure = |what: String, unit: &str, decimals, expected, because: &str, got| Figure {
        what,
        source: case.source.clone(),
        unit: unit.into(),
        decimals,
        expected,
        tolerance_because: because.into(),
        got,
    };
    let coefficient = |what: &str, chosen: &[usize]| {
        let measured = per_kelvin(&hours, chosen, |k| hours[k].q_pipe_wm2);
        let expected = Expected::Value(measured, case.tolerance_share * measured);
        let got = per_kelvin(&hours, chosen, |k| heat[k]);
        figure(
            format!("glasshouse, {what}: heat per floor and kelvin"),
            "W/(m²·K)",
            2,
            expected,
            &case.tolerance_because,
            got,
        )
    };
    let (calm, windy) = (in_wind(0.0, 6.0), in_wind(6.0, 10.0));
    let wind = |chosen: &[usize]| mean(&chosen.iter().map(|&k| hours[k].wind_ms).collect::<Vec<_>>());
    let slope = (per_kelvin(&hours, &windy, |k| heat[k]) - per_kelvin(&hours, &calm, |k| heat[k]))
        / (wind(&windy) - wind(&calm));
    let one_screen = heat_w_per_m2(&case, &hours, Some(Screens::Energy));
    let second_saves = 1.0 - per_kelvin(&hours, &both, |k| heat[k]) / per_kelvin(&hours, &both, |k| one_screen[k]);
    vec![
        coefficient("two night screens closed, wind near 3 m/s", &calm),
        coefficient("two night screens closed, wind near 8 m/s", &windy),
        coefficient("energy screen alone", &chosen(&hours, Screens::Energy)),
        figure(
            "glasshouse, two night screens closed: what each m/s of wind adds".into(),
            "W/(m²·K)",
            2,
            Expected::Band(0.0, 0.11),
            &case.slope_because,
            slope,
        ),
        figure(
            "glasshouse: what the second screen saves".into(),
            "%",
            0,
            Expected::Band(10.0, 30.0),
            &case.second_screen_because,
            100.0 * second_saves,
        ),
    ]
}

#[test]
fn the_measured_glasshouse_agrees() {
    hold(&figures());
}
