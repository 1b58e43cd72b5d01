//! Air for the flame: the room round it, and openings to outdoors.

use super::case::Case;
use super::{Check, Grade, Mend, remedy};
use crate::format;
use crate::model::Heater;
use crate::safety::combustion_air::{AirPath, LEAST_AIR_CHANGES_PER_H, opening_m2, room_needed_m3};
use crate::units::Quantity;

pub(super) fn checks(case: &Case) -> Vec<Check> {
    [volume(case), opening(case)].into_iter().flatten().collect()
}

/// A room and the flames in it.
struct Room {
    volume_m3: f64,
    needed_m3: f64,
    /// Least air changes of an hour in which a flame burns, per hour; none if none burns.
    least_air_changes_per_h: Option<f64>,
}

impl Room {
    fn is_large_enough(&self) -> bool {
        self.volume_m3 >= self.needed_m3
    }

    /// Whether the rule of the room can be used at all.
    fn leaks_enough(&self) -> bool {
        self.least_air_changes_per_h.is_none_or(|changes| changes >= LEAST_AIR_CHANGES_PER_H)
    }

    /// The tent if a flame burns in it, the house otherwise.
    fn of(case: &Case) -> Self {
        let tent_m3 = case.tent_m3().filter(|_| case.burners().any(|burner| case.in_tent(burner)));
        let counts = |burner: &&Heater| tent_m3.is_none() || case.in_tent(burner);
        let input_w = case.burners().filter(counts).map(|burner| case.full_input_w(burner)).sum::<f64>();
        let volume_m3 = tent_m3.unwrap_or(case.run.shell.volume_m3);
        let hours = &case.run.hours;
        let exchange = if tent_m3.is_some() { &hours.tent_exchange_m3_per_h } else { &hours.air_exchange_m3_per_h };
        let heat_w = hours.heater_w.iter().zip(&hours.standby_w).map(|(first, standby)| first + standby);
        let burning = exchange.iter().zip(heat_w).filter(|(_, heat_w)| *heat_w > 0.0);
        Self {
            volume_m3,
            needed_m3: room_needed_m3(input_w),
            least_air_changes_per_h: burning.map(|(m3_per_h, _)| m3_per_h / volume_m3).reduce(f64::min),
        }
    }
}

/// Free area that the flames need to outdoors, m²: the larger of the two rules.
fn needed_m2(case: &Case) -> f64 {
    let sum = |of: &dyn Fn(&Heater) -> f64| case.burners().map(of).sum::<f64>();
    let by_input = opening_m2(AirPath::One, sum(&|burner| case.full_input_w(burner)));
    by_input.max(opening_m2(AirPath::GreenhouseInlet, sum(&|burner| burner.rated_w)))
}

/// Whether the openings that were entered suffice; none while they are not known.
fn opening_suffices(case: &Case) -> Option<bool> {
    case.scenario.precautions.combustion_air_m2.map(|area_m2| area_m2 >= needed_m2(case))
}

fn volume(case: &Case) -> Option<Check> {
    case.unvented().next()?;
    let room = Room::of(case);
    let grade = match (room.is_large_enough(), room.leaks_enough()) {
        (true, true) => Grade::Fine,
        (true, false) => Grade::Look,
        (false, _) if opening_suffices(case) == Some(true) => Grade::Look,
        (false, _) => Grade::Stop,
    };
    let changes = room
        .least_air_changes_per_h
        .map_or_else(String::new, |changes| format!(", {} air changes per hour at least", format::number(changes, 2)));
    let needed = case.show(room.needed_m3, Quantity::Volume);
    let rule = format!(
        "Without air from outdoors a flame needs 50 ft³ of room for each 1\u{202f}000 Btu/h, 4.8 m³ per kW; not in a room \
            known to have under {} air changes per hour",
        format::number(LEAST_AIR_CHANGES_PER_H, 2)
    );
    Some(Check {
        name: "Room round the flame",
        grade,
        figure: format!("{} of {needed} needed{changes}", case.show(room.volume_m3, Quantity::Volume)),
        rule,
        source: "NFPA 54 and International Fuel Gas Code; NREL Standard Work Specification 5.0502.1a",
        remedy: remedy(
            grade,
            "A smaller burner, one with a flue that draws its air outdoors, or openings that bring air in",
            "Leave no joint so tight that the rule no longer holds",
        ),
        mend: Mend::Heater,
    })
}

fn opening(case: &Case) -> Option<Check> {
    case.burners().next()?;
    let needed = case.show(needed_m2(case), Quantity::SmallArea);
    let room = Room::of(case);
    let (grade, figure) = match (case.scenario.precautions.combustion_air_m2, opening_suffices(case)) {
        (Some(area_m2), Some(enough)) => {
            let by_room = room.is_large_enough() && room.leaks_enough();
            let grade = match (enough, by_room) {
                (true, _) => Grade::Fine,
                (false, true) => Grade::Look,
                (false, false) => Grade::Stop,
            };
            (grade, format!("{} of {needed}", case.show(area_m2, Quantity::SmallArea)))
        }
        _ => (Grade::Look, format!("not known, {needed} needed")),
    };
    Some(Check {
        name: "Opening for the flame's air",
        grade,
        figure,
        rule: "Free area to outdoors: 1 in² for each 2\u{202f}500 Btu/h of output in a greenhouse (8.8 cm² per kW), and 1 in² \
               for each 3\u{202f}000 Btu/h of input by one opening (7.3 cm² per kW)"
            .to_owned(),
        source: "Michigan State University Extension, Malfunctioning greenhouse unit heaters; NFPA 54 and \
            International Fuel Gas Code, quoted",
        remedy: remedy(
            grade,
            "Give the flame an inlet from outdoors that cannot be shut, and enter its free area under Heater & \
            fuel",
            "Keep it free of snow, leaves and film",
        ),
        mend: Mend::Heater,
    })
}
