//! What a grower cannot know exactly about a house, how far it may be off, and why so far.

use crate::model::{Catalogue, Heater, Scenario, Sheet, Study};

/// Which way an input is moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Towards less heat or money.
    Less,
    /// Towards more.
    More,
}

/// A study in which one thing may be otherwise.
pub struct Case {
    /// Prices and the study's own sheets.
    pub study: Study,
    /// The scenario itself.
    pub scenario: Scenario,
    /// The sheets that it is built of.
    pub catalogue: Catalogue,
}

/// One thing that may be otherwise.
#[derive(Clone, Copy)]
pub struct Doubt {
    /// What it is.
    pub name: &'static str,
    /// How far it is moved, each way.
    pub range: &'static str,
    /// Why so far, with the source.
    pub reason: &'static str,
    /// Moves it.
    pub(super) turn: fn(&mut Case, Way),
}

/// Transmittance of coverings is moved by this share.
const U_SHARE: f64 = 0.10;
/// Prices are moved by this share.
const PRICE_SHARE: f64 = 0.20;
/// The floor's edge is moved by this share.
const EDGE_SHARE: f64 = 0.25;
/// Setpoints are moved by this, K.
const SETPOINT_K: f64 = 1.0;
/// Fullness of the house is moved by this share of the light.
const FULLNESS: f64 = 0.1;

/// All of them but the weather, which takes many winters.
pub const DOUBTS: [Doubt; 7] = [
    Doubt {
        name: "Leakage",
        range: "one class of tightness",
        reason: "Handbook ranges of neighbouring classes overlap, and a house is seldom measured",
        turn: |case, way| {
            let now = case.scenario.house.tightness;
            case.scenario.house.tightness = if way == Way::Less { now.tighter() } else { now.looser() };
        },
    },
    Doubt {
        name: "Covering",
        range: "±10 % of the thermal transmittance",
        reason: "Single film has 5.7 to 6.8 W/(m²·K) in published tables (eXtension farm energy course), makers' tables of one twin-wall sheet differ by 3 %, and wind moves all of them",
        turn: |case, way| {
            let share = way.share(U_SHARE);
            let own = &mut case.study.own.sheets;
            case.catalogue.sheets.iter_mut().chain(own).for_each(|sheet| move_u(sheet, share));
        },
    },
    Doubt {
        name: "Setpoint",
        range: "±1 K",
        reason: "Dials and sensors of small heaters are a kelvin off (common practice)",
        turn: |case, way| {
            move_setpoints(&mut case.scenario.heater, way.share(1.0) - 1.0);
            move_setpoints(&mut case.scenario.standby, way.share(1.0) - 1.0);
        },
    },
    Doubt {
        name: "Shelter from wind",
        range: "one class",
        reason: "The five classes are told by looking round (ASHRAE Handbook Fundamentals, infiltration chapter)",
        turn: |case, way| {
            let class = &mut case.scenario.house.shelter_class;
            *class = if way == Way::Less { (*class + 1).min(5) } else { class.saturating_sub(1).max(1) };
        },
    },
    Doubt {
        name: "Floor edge",
        range: "±25 %",
        reason: "Bare and insulated edge, 1.26 and 0.94 W/(m·K), lie a quarter apart (Washington Administrative Code 51-11C)",
        turn: |case, way| case.scenario.house.edge_f_w_per_mk *= way.share(EDGE_SHARE),
    },
    Doubt {
        name: "Plants and benches in the light",
        range: "±10 % of the light",
        reason: "How full a house stands is a guess, and changes over the winter (modelling choice)",
        turn: |case, way| {
            let fullness = &mut case.scenario.house.fullness;
            *fullness = (*fullness - (way.share(FULLNESS) - 1.0)).clamp(0.0, 0.5);
        },
    },
    Doubt {
        name: "Prices of energy",
        range: "±20 %",
        reason: "What a season's fuel or power may move from one winter to the next (common practice)",
        turn: |case, way| {
            let (share, prices) = (way.share(PRICE_SHARE), &mut case.study.prices);
            prices.fuels.iter_mut().for_each(|fuel| fuel.price_per_unit *= share);
            prices.electricity.price_per_kwh *= share;
            prices.electricity.standing_charge_per_day *= share;
            prices.electricity.bands.iter_mut().for_each(|band| band.price_per_kwh *= share);
        },
    },
];

impl Way {
    fn share(self, by: f64) -> f64 {
        match self {
            Self::Less => 1.0 - by,
            Self::More => 1.0 + by,
        }
    }
}

/// As skin by its transmittance, further in by the resistance that it adds.
fn move_u(sheet: &mut Sheet, share: f64) {
    sheet.u_as_skin_w_per_m2k *= share;
    sheet.resistance_m2k_per_w /= share;
}

fn move_setpoints(heater: &mut Heater, steps: f64) {
    for setpoint_c in [&mut heater.setpoint_day_c, &mut heater.setpoint_night_c].into_iter().flatten() {
        *setpoint_c += steps * SETPOINT_K;
    }
}
