//! The skin of a planned house in an hour of wind under cloud, and what a further layer saves.

use serde::Deserialize;
use warmfold::model::{NightCover, Scenario, bundled_catalogue};
use warmfold::physics::skin::site_wind_m_per_s;
use warmfold::season::drive::{DriveSettings, HourDrive};
use warmfold::season::plan::Plan;

use super::figure::{Expected, Figure, hold, published};
use crate::weather::{Hour, constant};

#[derive(Deserialize)]
struct Lines {
    source: String,
    tolerance_because: String,
    tolerance_share: f64,
    winds_m_per_s: Vec<f64>,
    lines: Vec<Line>,
}

#[derive(Deserialize)]
struct Line {
    name: String,
    sheets: Vec<String>,
    still: f64,
    slope: f64,
}

#[derive(Deserialize)]
struct Curtains {
    curtains: Vec<Curtain>,
}

#[derive(Deserialize)]
struct Curtain {
    what: String,
    outside: Vec<String>,
    inside: Inner,
    wind_m_per_s: f64,
    saved: Expected,
    source: String,
    because: String,
}

#[derive(Deserialize)]
enum Inner {
    Sheets(Vec<String>),
    Screen(String),
}

/// U of the skin, W/m²K, in this wind at the house on a night as cold above as below.
fn skin_u(sheets: &[String], screen: Option<&str>, wind_m_per_s: f64) -> f64 {
    let mut scenario = Scenario::default();
    sheets.clone_into(&mut scenario.covering.sheets);
    if let Some(screen) = screen {
        scenario.night_cover = NightCover { present: true, screen: screen.to_owned(), ..NightCover::default() };
    }
    let plan = Plan::new(&scenario, bundled_catalogue()).expect("a house");
    let mast_m_per_s = wind_m_per_s / site_wind_m_per_s(1.0, scenario.house.shelter_class);
    let climate = constant(&Hour { wind_m_per_s: mast_m_per_s, ..Hour::default() });
    let drive = HourDrive::new(&plan, DriveSettings::of(&scenario), &climate, 0);
    drive.skin_w_per_k / plan.skin.iter().map(|group| group.area_m2).sum::<f64>()
}

fn wind_lines() -> Vec<Figure> {
    let file: Lines = published("coverings_in_wind");
    let figure = |line: &Line, wind: f64| {
        let value = line.still + line.slope * wind;
        Figure {
            what: format!("{} in wind of {wind:.0} m/s", line.name),
            source: file.source.clone(),
            unit: "W/(m²·K)".into(),
            decimals: 2,
            expected: Expected::Value(value, file.tolerance_share * value),
            tolerance_because: file.tolerance_because.clone(),
            got: skin_u(&line.sheets, None, wind),
        }
    };
    file.lines.iter().flat_map(|line| file.winds_m_per_s.iter().map(move |&wind| figure(line, wind))).collect()
}

fn savings() -> Vec<Figure> {
    let file: Curtains = published("curtain_savings");
    let figure = |curtain: Curtain| {
        let bare = skin_u(&curtain.outside, None, curtain.wind_m_per_s);
        let closed = match &curtain.inside {
            Inner::Sheets(sheets) => skin_u(sheets, None, curtain.wind_m_per_s),
            Inner::Screen(screen) => skin_u(&curtain.outside, Some(screen), curtain.wind_m_per_s),
        };
        Figure {
            what: format!("{}: saves", curtain.what),
            source: curtain.source,
            unit: "%".into(),
            decimals: 0,
            expected: curtain.saved,
            tolerance_because: curtain.because,
            got: 100.0 * (1.0 - closed / bare),
        }
    };
    file.curtains.into_iter().map(figure).collect()
}

pub fn figures() -> Vec<Figure> {
    wind_lines().into_iter().chain(savings()).collect()
}

#[test]
fn coverings_in_wind_agree() {
    hold(&figures());
}
