//! What can be wrong with a study, in words that end with the remedy.

use super::problem::Severity;
use crate::model::catalogue::SheetKind;
use crate::units::{Quantity, UnitSystem};

/// What is wrong.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum ProblemKind {
    /// Not a number, or endless.
    NotANumber { min: f64, max: f64, quantity: Quantity },
    /// Outside its range.
    OutOfRange { value: f64, min: f64, max: f64, quantity: Quantity },
    /// A day that its month does not have.
    NoSuchDay { month: u32, day: u32, last: u32 },
    /// No scenario at all.
    NoScenarios,
    /// More scenarios than can be compared.
    TooManyScenarios { found: usize, most: usize },
    /// The reference is not among the scenarios.
    NoSuchReference { found: usize, scenarios: usize },
    /// A name or key left empty.
    Empty,
    /// A name or key that stands twice.
    Twice { name: String },
    /// A catalogue key that nobody knows.
    Unknown { what: &'static str, key: String, nearest: Option<String>, known: Vec<String> },
    /// A unit that the fuel is not sold in.
    UnknownUnit { fuel: String, unit: String, nearest: Option<String>, known: Vec<String> },
    /// A skin or tent without sheets.
    NoSheet,
    /// A liner with nothing outside it.
    LinerOutermost { key: String, kind: SheetKind },
    /// The ridge does not rise over the eaves.
    RidgeTooLow { ridge_m: f64, eaves_m: f64, least_rise_m: f64 },
    /// A box without walls.
    WallsTooLow { height_m: f64, least_m: f64 },
    /// A lean-to's back described twice.
    PartyWallException,
    /// A night cover that covers nothing.
    CoversNothing,
    /// A tent's corner above the roof.
    TentThroughRoof { corner: &'static str, overlap_m: f64, roof_m: f64 },
    /// A tent's side beyond the long wall.
    TentThroughWall { side: &'static str, overlap_m: f64 },
    /// Longer than what it stands in.
    TooLong { length_m: f64, room_m: f64, inside: &'static str },
    /// Neither way round does it fit.
    DoesNotFit { length_m: f64, width_m: f64, room_length_m: f64, room_width_m: f64, inside: &'static str },
    /// Higher than what it stands in.
    TooHigh { height_m: f64, room_m: f64, inside: &'static str },
    /// Together larger than the place they have.
    TooMuchArea { what: &'static str, area_m2: f64, room_m2: f64, inside: &'static str },
    /// Full open before it starts to open.
    OpenerReversed { opens_at_c: f64, full_at_c: f64 },
    /// The heater would heat the garden.
    HeatsTheGarden { setpoint_c: f64, opens_at_c: f64, opener: &'static str },
    /// The heater opens its own tent.
    OpensItsTent { setpoint_c: f64, opens_at_c: f64 },
    /// A mat where there is no tent.
    MatWithoutTent,
    /// An immersion heater without water.
    ImmersionWithoutWater,
    /// A standby heater that would run before the first.
    StandbyNotLower { standby_c: f64, first_c: f64, hour: u32 },
    /// A heat pump on a flame.
    HeatPumpFuel { fuel: String },
    /// A crop limit above the air that the crop wants.
    LimitAboveWanted { limit_c: f64, wanted_c: f64 },
    /// No price for a fuel that is burnt.
    NoPrice { fuel: String },
    /// A price of electricity among the fuels.
    ElectricityAmongFuels,
    /// A fuel without any unit.
    NoUnit,
    /// More radiation leaves than comes.
    SharesAboveOne { sum: f64 },
    /// An own row without a note on its origin.
    NoSource,
    /// A place that the sun of the weather needs.
    NeededForSun,
    /// A climate table that has not twelve rows.
    NotTwelveMonths { found: usize },
    /// A mean maximum that is not above the mean minimum.
    MaximumTooLow { min_c: f64, max_c: f64 },
    /// A power cut on a day that the season lacks.
    CutOutsideSeason { month: u32, day: u32 },
}

impl ProblemKind {
    /// How bad it is.
    #[must_use]
    pub fn severity(&self) -> Severity {
        match self {
            Self::NoPrice { .. }
            | Self::OpensItsTent { .. }
            | Self::LimitAboveWanted { .. }
            | Self::NoSource
            | Self::CutOutsideSeason { .. } => Severity::Warning,
            _ => Severity::Error,
        }
    }

    /// What is wrong and what to do, in a family of units.
    #[must_use]
    pub fn text(&self, system: UnitSystem) -> String {
        let length = |m: f64| shown(m, Quantity::Length, system);
        let area = |m2: f64| shown(m2, Quantity::Area, system);
        let temperature = |c: f64| shown(c, Quantity::Temperature, system);
        match self {
            Self::NotANumber { min, max, quantity } => {
                format!("is not a number; enter one {}", range(*min, *max, *quantity, system))
            }
            Self::OutOfRange { value, min, max, quantity } => format!(
                "{} is not allowed; enter a value {}",
                shown(*value, *quantity, system),
                range(*min, *max, *quantity, system)
            ),
            Self::NoSuchDay { month, day, last } => {
                format!("month {month} has no day {day}; enter a day from 1 to {last}")
            }
            Self::NoScenarios => "the study has none; add at least one".to_owned(),
            Self::TooManyScenarios { found, most } => {
                format!("{found} are more than the {most} that can be compared; split the study into several files")
            }
            Self::NoSuchReference { found, scenarios } => {
                format!(
                    "{found} points past the {scenarios} scenarios, which are counted from 0; enter 0 to {}",
                    scenarios.saturating_sub(1)
                )
            }
            Self::Empty => "is empty; enter a name".to_owned(),
            Self::Twice { name } => format!("\"{name}\" stands twice; give each its own"),
            Self::Unknown { what, key, nearest, known } => {
                format!("there is no {what} \"{key}\"; {}", proposal(nearest.as_deref(), known))
            }
            Self::UnknownUnit { fuel, unit, nearest, known } => {
                format!("{fuel} has no unit \"{unit}\"; {}", proposal(nearest.as_deref(), known))
            }
            Self::NoSheet => "the list is empty; name at least one sheet".to_owned(),
            Self::LinerOutermost { key, .. } => {
                format!(
                    "\"{key}\" is a liner and cannot be the outermost sheet; put film, glass or a rigid sheet before it"
                )
            }
            Self::RidgeTooLow { ridge_m, eaves_m, least_rise_m } => format!(
                "{} does not rise over the eaves at {}; make it at least {} higher, or choose the flat box",
                length(*ridge_m),
                length(*eaves_m),
                length(*least_rise_m)
            ),
            Self::WallsTooLow { height_m, least_m } => {
                format!("a flat box {} high has no room; make it at least {}", length(*height_m), length(*least_m))
            }
            Self::PartyWallException => {
                "a lean-to's back is its party wall; set the party wall U instead and remove this exception".to_owned()
            }
            Self::CoversNothing => "covers no part; name at least one of Front, Back, Ends, Roof".to_owned(),
            Self::TentThroughRoof { corner, overlap_m, roof_m } => format!(
                "the tent's {corner} corner stands {} above the roof, which is {} high there; lower it, make it narrower or move it",
                length(*overlap_m),
                length(*roof_m)
            ),
            Self::TentThroughWall { side, overlap_m } => format!(
                "the tent's {side} side stands {} beyond the house wall; make it narrower or move it",
                length(*overlap_m)
            ),
            Self::TooLong { length_m, room_m, inside } => {
                format!("{} is longer than {inside}, which has {}; shorten it", length(*length_m), length(*room_m))
            }
            Self::DoesNotFit { length_m, width_m, room_length_m, room_width_m, inside } => format!(
                "{} × {} does not fit {inside} of {} × {}; make it smaller",
                length(*length_m),
                length(*width_m),
                length(*room_length_m),
                length(*room_width_m)
            ),
            Self::TooHigh { height_m, room_m, inside } => {
                format!("{} is higher than {inside}, which has {}; lower it", length(*height_m), length(*room_m))
            }
            Self::TooMuchArea { what, area_m2, room_m2, inside } => format!(
                "{what} need {}, but {inside} has {} free; take fewer or smaller ones",
                area(*area_m2),
                area(*room_m2)
            ),
            Self::OpenerReversed { opens_at_c, full_at_c } => format!(
                "{} is not above {}, where the vents start to open; enter a higher temperature",
                temperature(*full_at_c),
                temperature(*opens_at_c)
            ),
            Self::HeatsTheGarden { setpoint_c, opens_at_c, opener } => format!(
                "{} is above {}, where the {opener}: the heater would heat the garden; lower the setpoint or let it open later",
                temperature(*setpoint_c),
                temperature(*opens_at_c)
            ),
            Self::OpensItsTent { setpoint_c, opens_at_c } => format!(
                "{} is above {}, where the tent is opened: the heater would heat the house; lower the setpoint or open the tent later",
                temperature(*setpoint_c),
                temperature(*opens_at_c)
            ),
            Self::MatWithoutTent => {
                "a mat in a house without a tent would heat the whole floor; put up the tent or heat the air".to_owned()
            }
            Self::ImmersionWithoutWater => "no vessels stand in its zone; add vessels there or heat the air".to_owned(),
            Self::StandbyNotLower { standby_c, first_c, hour } => format!(
                "{} at {hour}:00 is not below the first heater's {}; lower the standby setpoint",
                temperature(*standby_c),
                temperature(*first_c)
            ),
            Self::HeatPumpFuel { fuel } => {
                format!(
                    "a heat pump runs on electricity, not on \"{fuel}\"; choose electricity or switch the heat pump off"
                )
            }
            Self::LimitAboveWanted { limit_c, wanted_c } => format!(
                "{} is above the wanted air of {}; check which is which",
                temperature(*limit_c),
                temperature(*wanted_c)
            ),
            Self::NoPrice { fuel } => {
                format!("\"{fuel}\" has no price, so the cost stays unknown; add it to the prices")
            }
            Self::ElectricityAmongFuels => {
                "electricity has its own tariff; enter its price there and remove it from the fuels".to_owned()
            }
            Self::NoUnit => "has no unit; add one with its heat content".to_owned(),
            Self::SharesAboveOne { sum } => format!(
                "emissivity and longwave transmittance together make {sum:.2}, but no sheet passes and gives off more than all; lower one so that both make 1 at most"
            ),
            Self::CutOutsideSeason { month, day } => format!(
                "day {day} of month {month} lies outside the season, so the cut starts with the coldest twelve hours; choose a day of the season"
            ),
            Self::NeededForSun => "is needed, since it decides the sun of this weather; enter it".to_owned(),
            Self::NotTwelveMonths { found } => {
                format!("{found} months are not a year; enter January to December, twelve rows")
            }
            Self::MaximumTooLow { min_c, max_c } => format!(
                "{} is not above the minimum of {}; check which is which",
                temperature(*max_c),
                temperature(*min_c)
            ),
            Self::NoSource => "does not say where its numbers come from; add a note".to_owned(),
        }
    }
}

/// A value with its unit: as few decimals as show it truly, four at most.
fn shown(value: f64, quantity: Quantity, system: UnitSystem) -> String {
    let unit = quantity.unit(system);
    let text = format!("{:.4}", unit.shown(value));
    let number = text.trim_end_matches('0').trim_end_matches('.');
    let number = if number == "-0" { "0" } else { number };
    if unit.symbol.is_empty() { number.to_owned() } else { format!("{number} {}", unit.symbol) }
}

fn range(min: f64, max: f64, quantity: Quantity, system: UnitSystem) -> String {
    format!("from {} to {}", shown(min, quantity, system), shown(max, quantity, system))
}

/// "did you mean …?", or what there is to choose from.
fn proposal(nearest: Option<&str>, known: &[String]) -> String {
    let known = known.join(", ");
    match nearest {
        Some(name) => format!("did you mean \"{name}\"? (known: {known})"),
        None => format!("choose one of: {known}"),
    }
}
