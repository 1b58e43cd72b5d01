//! Nights of unheated houses through whole winters.

use std::collections::BTreeMap;

use serde::Deserialize;
use warmfold::model::{Scenario, Season, Study};
use warmfold::season::RunOptions;
use warmfold::weather::Climate;

use super::figure::{Expected, Figure, hold, published};
use crate::nights::{Night, mean, nights};
use crate::seasons::{climate, run};

#[derive(Deserialize)]
struct Cases {
    houses: BTreeMap<String, Scenario>,
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    what: String,
    house: String,
    #[serde(default)]
    than: String,
    station: String,
    /// First and last month; October to March where none is given.
    #[serde(default = "winter")]
    season: (u32, u32),
    nights: Which,
    statistic: Statistic,
    unit: String,
    expected: Expected,
    source: String,
    because: String,
}

/// Which nights count, and what of them.
#[derive(Deserialize, Clone, Copy, PartialEq)]
enum Which {
    All,
    Frost,
    HardFrost,
    CalmClearMild,
    TentOverHouse,
}

impl Which {
    fn holds(self, night: &Night) -> bool {
        match self {
            Self::All | Self::TentOverHouse => true,
            Self::Frost => night.outdoor_min_c < 0.0,
            Self::HardFrost => night.outdoor_min_c < -12.0,
            Self::CalmClearMild => {
                night.mean_wind_m_per_s < 3.0 && night.mean_sky_gap_k > 15.0 && night.outdoor_min_c > -5.0
            }
        }
    }
}

#[derive(Deserialize, Clone, Copy)]
enum Statistic {
    Mean,
    Spread,
    ShareColder,
}

impl Statistic {
    /// Decimals that are worth showing.
    fn decimals(self) -> usize {
        if matches!(self, Self::ShareColder) { 0 } else { 2 }
    }

    fn of(self, gains_k: &[f64]) -> f64 {
        let centre = mean(gains_k.iter().copied());
        match self {
            Self::Mean => centre,
            Self::Spread => mean(gains_k.iter().map(|gain| (gain - centre).powi(2))).sqrt(),
            Self::ShareColder => 100.0 * mean(gains_k.iter().map(|gain| f64::from(u8::from(*gain < 0.0)))),
        }
    }
}

fn winter() -> (u32, u32) {
    (10, 3)
}

fn nights_of(scenario: &Scenario, climate: &Climate, (from_month, to_month): (u32, u32)) -> Vec<Night> {
    let season = Season { from_month, from_day: 1, to_month, to_day: 30 };
    let study = Study { season, ..Study::default() };
    nights(climate, &run(&study, scenario, climate, RunOptions::default()))
}

fn gains_k(file: &Cases, case: &Case) -> Vec<f64> {
    let climate = climate(&case.station);
    let of_house = |name: &str| nights_of(&file.houses[name], &climate, case.season);
    let inside = of_house(&case.house);
    let inside_c = |night: &Night| match case.nights {
        Which::TentOverHouse => night.tent_min_c.expect("a tent"),
        _ => night.house_min_c,
    };
    let base_c: Vec<f64> = match (case.nights, case.than.as_str()) {
        (Which::TentOverHouse, _) => inside.iter().map(|night| night.house_min_c).collect(),
        (_, "") => inside.iter().map(|night| night.outdoor_min_c).collect(),
        (_, other) => of_house(other).iter().map(|night| night.house_min_c).collect(),
    };
    inside
        .iter()
        .zip(base_c)
        .filter(|(night, _)| case.nights.holds(night))
        .map(|(night, base_c)| inside_c(night) - base_c)
        .collect()
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("unheated_nights");
    let figure = |case: &Case| {
        let gains_k = gains_k(&file, case);
        assert!(gains_k.len() >= 8, "{}: {} nights", case.what, gains_k.len());
        Figure {
            what: case.what.clone(),
            source: case.source.clone(),
            unit: case.unit.clone(),
            decimals: case.statistic.decimals(),
            expected: case.expected,
            tolerance_because: case.because.clone(),
            got: case.statistic.of(&gains_k),
        }
    };
    file.cases.iter().map(figure).collect()
}

#[test]
fn unheated_nights_agree() {
    hold(&figures());
}
