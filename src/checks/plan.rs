//! Whether the plan can work: heater, thermostat, standby, alarm.

use super::case::Case;
use super::{Check, Grade, Mend, by_answer, remedy};
use crate::format;
use crate::model::{Answer, Heater};
use crate::safety::sizing::LEAST_MARGIN;

pub(super) fn checks(case: &Case) -> Vec<Check> {
    [size(case), thermostat(case), standby(case), Some(alarm(case))].into_iter().flatten().collect()
}

fn size(case: &Case) -> Option<Check> {
    let first = &case.scenario.heater;
    if !first.present {
        return None;
    }
    // The design load is that of the first heater's zone; another heater there helps to carry it.
    let beside = case.heaters().filter(|other| case.in_tent(other) == case.in_tent(first));
    let rated_w: f64 = beside.map(|heater| heater.rated_w).sum();
    let s = &case.run.summary;
    let load_w = s.design_load_w_99_6;
    let grade = if rated_w < load_w {
        Grade::Stop
    } else if rated_w < load_w * (1.0 + LEAST_MARGIN) || s.hours_below_setpoint > 0 {
        Grade::Look
    } else {
        Grade::Fine
    };
    let short = match s.hours_below_setpoint {
        0 => String::new(),
        hours => format!(", {} below setpoint", format::hours(hours)),
    };
    Some(Check {
        name: "Heater against design load",
        grade,
        figure: format!("{} of {} needed{short}", format::power(rated_w), format::power(load_w)),
        rule: format!(
            "The heaters carry the loss at {}, which is passed in 99.6 % of the year's hours, with 10 to 20 % \
                above it; colder hours do happen",
            case.temperature(s.design_outdoor_c_99_6)
        ),
        source: "ASHRAE Handbook Fundamentals ch. 14, Manitoba Agriculture, Greenhouse Heating and Venting; the \
            margin: common practice",
        remedy: remedy(
            grade,
            "A larger heater, a tighter or smaller warm space, or a lower setpoint",
            "Colder hours do happen: watch the thermometer in them",
        ),
        mend: Mend::Heater,
    })
}

fn thermostat(case: &Case) -> Option<Check> {
    let limit_c = case.scenario.crop.limit_c;
    let lowest = |heater: &Heater| Some(heater.setpoint_day_c?.min(heater.setpoint_night_c?));
    let mut round_crop = case.heaters().filter(|heater| case.warms_crop_air(heater)).peekable();
    round_crop.peek()?;
    // The heater that is set higher in its lowest hours decides; one with hours off holds nothing in them.
    let held_c = round_crop.filter_map(lowest).reduce(f64::max);
    let (grade, held) = match held_c {
        Some(held_c) if held_c >= limit_c => (Grade::Fine, case.temperature(held_c)),
        Some(held_c) => (Grade::Stop, case.temperature(held_c)),
        None => (Grade::Stop, "off".to_owned()),
    };
    Some(Check {
        name: "Thermostat against crop limit",
        grade,
        figure: format!("{held} at the lowest, limit {}", case.temperature(limit_c)),
        rule: "The thermostat round the crop is never set below the limit of the crop; its sensor is shaded, at \
            plant height, away from side walls"
            .to_owned(),
        source: "University of Maryland Extension, Planning a Home Greenhouse, quoted; chilling and freezing \
            classes of the crop",
        remedy: remedy(
            grade,
            "Raise the setpoint of day or night, or leave no hour without one",
            "Read a second thermometer at the crop now and then",
        ),
        mend: Mend::Heater,
    })
}

fn standby(case: &Case) -> Option<Check> {
    let s = case.scenario;
    if !s.heater.present && !s.standby.present {
        return None;
    }
    let both = s.heater.present && s.standby.present;
    let (grade, figure) = if !both {
        (Grade::Look, "one heater alone")
    } else if s.heater.needs_mains && s.standby.needs_mains {
        (Grade::Look, "both stop in a power cut")
    } else {
        (Grade::Fine, "two, one of them without mains")
    };
    Some(Check {
        name: "Standby heater",
        grade,
        figure: figure.to_owned(),
        rule: "A backup stands ready for the failure of one heater, and one that does not hang on the mains for a \
            power cut"
            .to_owned(),
        source: "Common practice, no source",
        remedy: remedy(
            grade,
            "Add a standby heater of another kind, with a setpoint at the crop limit",
            "Try it before the first frost",
        ),
        mend: Mend::Heater,
    })
}

fn alarm(case: &Case) -> Check {
    let answer = case.scenario.precautions.low_temperature_alarm;
    let remedy = match answer {
        Answer::Yes => "Try it before the first frost",
        _ => "Hang a thermometer and an alarm at the crop that wakes somebody, with a battery of its own",
    };
    Check {
        name: "Low-temperature alarm",
        grade: by_answer(answer, Grade::Look),
        figure: answer.name().to_owned(),
        rule: "Results are estimates: keep a thermometer and a low-temperature alarm, and have a backup".to_owned(),
        source: "Common practice, no source",
        remedy: remedy.to_owned(),
        mend: Mend::Crop,
    }
}
