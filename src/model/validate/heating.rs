//! Checks of the heaters against the rest of the scenario.

use super::check::Check;
use super::kind::ProblemKind;
use super::rows;
use super::scenario::zone_of;
use crate::model::catalogue::Catalogue;
use crate::model::heater::{HeatTarget, Heater, SETPOINT_RANGE_C};
use crate::model::study::Scenario;
use crate::model::tent::TentOpening;
use crate::model::water::Zone;
use crate::units::Quantity;

pub(super) fn heaters(scenario: &Scenario, catalogue: &Catalogue, check: &mut Check) {
    for (field, heater) in [("heater", &scenario.heater), ("standby", &scenario.standby)] {
        let mut check = check.within(field);
        numbers_and_fuel(heater, catalogue, &mut check);
        if heater.present {
            place(heater, scenario, &mut check);
            openers(heater, scenario, &mut check);
        }
    }
    standby_is_lower(scenario, &mut check.within("standby"));
}

pub(super) fn numbers_and_fuel(heater: &Heater, catalogue: &Catalogue, check: &mut Check) {
    check.numbers(heater, Heater::NUMBERS);
    let range = (*SETPOINT_RANGE_C.start(), *SETPOINT_RANGE_C.end());
    for (input, setpoint_c) in setpoints(heater) {
        if let Some(setpoint_c) = setpoint_c {
            check.number(input.key, input.label, setpoint_c, range, Quantity::Temperature);
        }
    }
    if catalogue.fuel(&heater.fuel).is_none() {
        let known = catalogue.fuels.iter().map(|f| f.key.as_str());
        rows::unknown("fuel", &heater.fuel, known, "fuel", Heater::fuel.label, check);
    } else if heater.heat_pump && heater.fuel != "electricity" {
        check.add("fuel", Heater::fuel.label, ProblemKind::HeatPumpFuel { fuel: heater.fuel.clone() });
    }
}

fn setpoints(heater: &Heater) -> [(crate::model::input::ChoiceInput, Option<f64>); 2] {
    [(Heater::setpoint_day_c, heater.setpoint_day_c), (Heater::setpoint_night_c, heater.setpoint_night_c)]
}

/// A mat needs a tent, an immersion heater needs water.
fn place(heater: &Heater, scenario: &Scenario, check: &mut Check) {
    let zone = zone_of(scenario, heater.zone);
    match heater.target {
        HeatTarget::Air => {}
        HeatTarget::Bench if zone == Zone::Tent => {}
        HeatTarget::Bench => check.add("target", Heater::target.label, ProblemKind::MatWithoutTent),
        HeatTarget::Water => {
            let vessels = &scenario.water.vessels;
            let wet =
                scenario.water.present && vessels.iter().any(|v| v.count > 0 && zone_of(scenario, v.zone) == zone);
            if !wet {
                check.add("target", Heater::target.label, ProblemKind::ImmersionWithoutWater);
            }
        }
    }
}

/// A setpoint above what opens the vents, starts the fan or opens the tent wastes the heat.
fn openers(heater: &Heater, scenario: &Scenario, check: &mut Check) {
    if heater.target != HeatTarget::Air {
        return;
    }
    let vents = &scenario.vents;
    for (input, setpoint_c) in setpoints(heater) {
        let Some(setpoint_c) = setpoint_c.filter(|c| SETPOINT_RANGE_C.contains(c)) else { continue };
        if zone_of(scenario, heater.zone) == Zone::House {
            let openers = [
                (vents.present, vents.opens_at_c, "vents start to open"),
                (vents.fan_present, vents.fan_starts_at_c, "fan starts"),
            ];
            for (present, opens_at_c, opener) in openers {
                if present && opens_at_c < setpoint_c {
                    let kind = ProblemKind::HeatsTheGarden { setpoint_c, opens_at_c, opener };
                    check.add(input.key, input.label, kind);
                }
            }
        } else if let TentOpening::Above(opens_at_c) = scenario.tent.opening
            && opens_at_c < setpoint_c
        {
            check.add(input.key, input.label, ProblemKind::OpensItsTent { setpoint_c, opens_at_c });
        }
    }
}

/// On the same sensor a standby heater must wait below the first one, at every hour of the day.
fn standby_is_lower(scenario: &Scenario, check: &mut Check) {
    let (first, standby) = (&scenario.heater, &scenario.standby);
    let same_sensor =
        first.target == standby.target && zone_of(scenario, first.zone) == zone_of(scenario, standby.zone);
    if !(first.present && standby.present && same_sensor) {
        return;
    }
    for hour in 0..24_u32 {
        // The middle of the hour, so that a change on the full hour falls on one side.
        let clock = f64::from(hour) + 0.5;
        if let (Some(first_c), Some(standby_c)) = (first.setpoint_c(clock), standby.setpoint_c(clock))
            && first_c <= standby_c
        {
            let input = if standby.setpoint_day_c == Some(standby_c) {
                Heater::setpoint_day_c
            } else {
                Heater::setpoint_night_c
            };
            check.add(input.key, input.label, ProblemKind::StandbyNotLower { standby_c, first_c, hour });
            return;
        }
    }
}
