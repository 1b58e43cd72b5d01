//! Numeric inputs that the rows of `inputs!` do not hold: setpoints, which can be off, a leakage of one's own, and two
//! that move several fields at once.

use super::inputs::NumericInput;
use super::refusal::Refusal;
use crate::model::heater::SETPOINT_RANGE_C;
use crate::model::house::RATE_RANGE_PER_H;
use crate::model::{ChoiceInput, Heater, House, Scenario, Study, Tightness};
use crate::season::alternatives::moved;
use crate::units::Quantity;
use std::ops::RangeInclusive;

/// Days by which the first day of a season can be moved.
const MOVED_D: RangeInclusive<f64> = -180.0..=180.0;

type OfHeater = fn(&mut Heater) -> &mut Option<f64>;

pub(super) fn add(list: &mut Vec<NumericInput>) {
    let fields: [(ChoiceInput, OfHeater); 2] = [
        (Heater::setpoint_day_c, |heater| &mut heater.setpoint_day_c),
        (Heater::setpoint_night_c, |heater| &mut heater.setpoint_night_c),
    ];
    for (input, field) in fields {
        let path = input.key;
        list.push(setpoint("heater", &Scenario::heater, path, input.label, |s| &mut s.heater, &[field]));
        list.push(setpoint("standby", &Scenario::standby, path, input.label, |s| &mut s.standby, &[field]));
    }
    let both: &'static [OfHeater] = &[|heater| &mut heater.setpoint_day_c, |heater| &mut heater.setpoint_night_c];
    let label = "Setpoint, day and night";
    list.push(setpoint("heater", &Scenario::heater, "setpoint_c", label, |s| &mut s.heater, both));
    list.push(leakage());
    list.push(start());
}

/// A setpoint, or several that move together.
fn setpoint(
    part: &str,
    part_input: &ChoiceInput,
    key: &str,
    label: &str,
    of: fn(&mut Scenario) -> &mut Heater,
    fields: &[OfHeater],
) -> NumericInput {
    let path = format!("{part}.{key}");
    let (missing, fields) = (path.clone(), fields.to_vec());
    let read_from = fields.clone();
    NumericInput {
        path,
        label: format!("{}: {label}", part_input.label),
        quantity: Quantity::Temperature,
        min: *SETPOINT_RANGE_C.start(),
        max: *SETPOINT_RANGE_C.end(),
        whole: false,
        read: Box::new(move |study, at| {
            let mut scenario = study.scenarios.get(at)?.clone();
            read_from.first().and_then(|field| *field(of(&mut scenario)))
        }),
        write: Box::new(move |study, at, value| {
            let scenario = scenario_of(study, at, &missing)?;
            for field in &fields {
                *field(of(scenario)) = Some(value);
            }
            Ok(())
        }),
    }
}

fn leakage() -> NumericInput {
    let path = format!("{}.{}", Scenario::house.key, House::tightness.key);
    let missing = path.clone();
    NumericInput {
        path,
        label: format!("{}: {}", Scenario::house.label, House::tightness.label),
        quantity: Quantity::AirChanges,
        min: *RATE_RANGE_PER_H.start(),
        max: *RATE_RANGE_PER_H.end(),
        whole: false,
        read: Box::new(|study, at| Some(study.scenarios.get(at)?.house.tightness.design_air_changes_per_h())),
        write: Box::new(move |study, at, value| {
            scenario_of(study, at, &missing)?.house.tightness = Tightness::Rate(value);
            Ok(())
        }),
    }
}

/// The first day of the season, moved from the study's own: a day of a month alone could not cross into the next.
fn start() -> NumericInput {
    NumericInput {
        path: "season.start_moved_d".to_owned(),
        label: "Season: First day later by, days".to_owned(),
        quantity: Quantity::Count,
        min: *MOVED_D.start(),
        max: *MOVED_D.end(),
        whole: true,
        read: Box::new(|_, _| Some(0.0)),
        write: Box::new(|study, _, days| {
            study.season = moved(&study.season, days as i32).ok_or(Refusal::SeasonTooMoved { days })?;
            Ok(())
        }),
    }
}

fn scenario_of<'a>(study: &'a mut Study, at: usize, path: &str) -> Result<&'a mut Scenario, Refusal> {
    study.scenarios.get_mut(at).ok_or_else(|| Refusal::NoSuchRow { path: path.to_owned() })
}
