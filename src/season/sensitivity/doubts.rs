//! What a grower cannot know exactly about a house. How far each may be off, and why so far, stands beside the input
//! itself (`inputs!`); here stands what is moved.

use crate::format::{self, number};
use crate::model::input::{self, Off};
use crate::model::{Catalogue, Covering, ElectricityTariff, Heater, House, NumberInput, Scenario, Sheet, Study, Tent};
use crate::units::{Quantity, UnitSystem};

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
    /// Its path in the file, within the scenario for what belongs to one.
    pub input: &'static str,
    /// How far it may be off, and why.
    pub doubt: Option<input::Doubt>,
    /// What the distance is a part of, behind it; its quantity where it is no share.
    of: (&'static str, Quantity),
    /// Whether the scenario has it.
    pub(super) applies: fn(&Scenario) -> bool,
    /// Moves it.
    pub(super) turn: fn(&mut Case, Way),
}

/// All of them but the weather, which takes many winters.
pub const DOUBTS: [Doubt; 10] = [
    Doubt {
        name: "Leakage",
        input: "house.tightness",
        doubt: House::tightness.doubt,
        of: (" of tightness", Quantity::Count),
        applies: |_| true,
        turn: |case, way| {
            let now = case.scenario.house.tightness;
            case.scenario.house.tightness = if way == Way::Less { now.tighter() } else { now.looser() };
        },
    },
    Doubt {
        name: "Covering",
        input: "covering.sheets",
        doubt: Covering::sheets.doubt,
        of: (" of the thermal transmittance", Quantity::UValue),
        applies: |_| true,
        turn: |case, way| {
            let share = way.moved(Covering::sheets.doubt, 1.0);
            let own = &mut case.study.own.sheets;
            case.catalogue.sheets.iter_mut().chain(own).for_each(|sheet| move_u(sheet, share));
        },
    },
    Doubt {
        name: "Setpoint",
        input: "heater.setpoint_day_c",
        doubt: Heater::setpoint_day_c.doubt,
        of: ("", Quantity::TemperatureDifference),
        applies: |scenario| scenario.heater.present || scenario.standby.present,
        turn: |case, way| {
            for heater in [&mut case.scenario.heater, &mut case.scenario.standby] {
                for setpoint_c in [&mut heater.setpoint_day_c, &mut heater.setpoint_night_c].into_iter().flatten() {
                    *setpoint_c = way.moved(Heater::setpoint_day_c.doubt, *setpoint_c);
                }
            }
        },
    },
    Doubt {
        name: "Heater efficiency",
        input: "heater.efficiency",
        doubt: Heater::efficiency.doubt,
        of: (" of it", Quantity::Share),
        // All the current becomes heat, and a heat pump follows its own curve.
        applies: |scenario| burns(&scenario.heater) || burns(&scenario.standby),
        turn: |case, way| {
            for heater in [&mut case.scenario.heater, &mut case.scenario.standby] {
                if burns(heater) {
                    Heater::efficiency.misjudge(heater, way == Way::Less);
                }
            }
        },
    },
    Doubt {
        name: "Tent leakage",
        input: "tent.air_changes_per_h",
        doubt: Tent::air_changes_per_h.doubt,
        of: (" of it", Quantity::AirChanges),
        applies: |scenario| scenario.tent.present,
        turn: |case, way| way.turn(&Tent::air_changes_per_h, &mut case.scenario.tent, More::Costs),
    },
    Doubt {
        name: "Shelter from wind",
        input: "house.shelter_class",
        doubt: House::shelter_class.doubt,
        of: (" of shelter", Quantity::Count),
        applies: |_| true,
        turn: |case, way| way.turn(&House::shelter_class, &mut case.scenario.house, More::Saves),
    },
    Doubt {
        name: "Floor edge",
        input: "house.edge_f_w_per_mk",
        doubt: House::edge_f_w_per_mk.doubt,
        of: (" of it", Quantity::EdgeFactor),
        applies: |_| true,
        turn: |case, way| way.turn(&House::edge_f_w_per_mk, &mut case.scenario.house, More::Costs),
    },
    Doubt {
        name: "Plants and benches in the light",
        input: "house.fullness",
        doubt: House::fullness.doubt,
        of: (" of the light", Quantity::Share),
        applies: |_| true,
        turn: |case, way| way.turn(&House::fullness, &mut case.scenario.house, More::Saves),
    },
    Doubt {
        name: "Planted floor",
        input: "house.planted_share",
        doubt: House::planted_share.doubt,
        of: (" of the floor", Quantity::Share),
        applies: |_| true,
        turn: |case, way| way.turn(&House::planted_share, &mut case.scenario.house, More::Costs),
    },
    Doubt {
        name: "Prices of energy",
        input: "prices",
        doubt: ElectricityTariff::price_per_kwh.doubt,
        of: (" of all of them", Quantity::Money),
        applies: |_| true,
        turn: |case, way| {
            let (share, prices) = (way.moved(ElectricityTariff::price_per_kwh.doubt, 1.0), &mut case.study.prices);
            prices.fuels.iter_mut().for_each(|fuel| fuel.price_per_unit *= share);
            prices.electricity.price_per_kwh *= share;
            prices.electricity.standing_charge_per_day *= share;
            prices.electricity.bands.iter_mut().for_each(|band| band.price_per_kwh *= share);
        },
    },
];

/// What more of an input does.
#[derive(Clone, Copy, PartialEq, Eq)]
enum More {
    /// It costs heat.
    Costs,
    /// It saves heat.
    Saves,
}

impl Doubt {
    /// How far it is moved, in a reader's units.
    #[must_use]
    pub fn range(&self, units: UnitSystem) -> String {
        let (of, quantity) = self.of;
        match self.doubt.map(|doubt| doubt.off) {
            Some(Off::Share(share)) => format!("±{} %{of}", number(100.0 * share, 0)),
            Some(Off::By(step)) => {
                let decimals = if quantity.unit(units).shown(step).fract() == 0.0 { 0 } else { 1 };
                format!("±{}{of}", format::quantity(step, quantity, units, Some(decimals)))
            }
            Some(Off::Class) => format!("one class{of}"),
            None => String::new(),
        }
    }
}

impl Way {
    /// A value that costs more the larger it is, moved.
    fn moved(self, doubt: Option<input::Doubt>, value: f64) -> f64 {
        doubt.map_or(value, |doubt| doubt.off.moved(value, self == Self::More))
    }

    /// Moves a numeric input.
    fn turn<T>(self, input: &NumberInput<T>, part: &mut T, more: More) {
        input.misjudge(part, (self == Self::More) == (more == More::Costs));
    }
}

/// Whether it loses some of what it is fed.
fn burns(heater: &Heater) -> bool {
    heater.present && !heater.heat_pump && heater.efficiency < 1.0
}

/// As skin by its transmittance, further in by the resistance that it adds.
fn move_u(sheet: &mut Sheet, share: f64) {
    sheet.u_as_skin_w_per_m2k *= share;
    sheet.resistance_m2k_per_w /= share;
}
