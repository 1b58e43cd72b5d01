//! Flames: carbon monoxide, carbon dioxide, ethylene, and vents that are shut while they burn.

use super::case::{Case, counted};
use super::{Check, Grade, Mend, by_answer};
use crate::format;
use crate::model::{Answer, Heater};
use crate::physics::combustion::{CARBON_DIOXIDE, Hydrocarbon, gas_m3_per_kg};
use crate::safety::indoor_air::{BurnerHour, CARBON_DIOXIDE_LIMIT_PPM, ETHYLENE_HARM_PPM, highest_carbon_dioxide_ppm};

/// Temperature at which the volume of carbon dioxide is taken, °C.
const ROOM_C: f64 = 20.0;
/// Beyond this the air no longer carries a flame, and a figure means nothing, ppm: a tenth of the air.
const BEYOND_PPM: f64 = 100_000.0;

const FLUE: &str = "A heater with a flue";

pub(super) fn checks(case: &Case) -> Vec<Check> {
    [carbon_monoxide(case), carbon_dioxide(case), ethylene(case), vents_shut(case)].into_iter().flatten().collect()
}

fn carbon_monoxide(case: &Case) -> Option<Check> {
    let burners = case.burners().count();
    if burners == 0 {
        return None;
    }
    let unvented = case.unvented().count();
    let alarm = case.scenario.precautions.carbon_monoxide_alarm;
    let grade = by_answer(alarm, Grade::Stop);
    let alarm = match alarm {
        Answer::Yes => "alarm fitted",
        Answer::No => "no alarm",
        Answer::NotKnown => "alarm not known",
    };
    let (grade, flames, remedy) = if unvented > 0 {
        let remedy = format!(
            "{FLUE} and an alarm; give fresh air, do not sleep in the house, people leave first when the alarm sounds"
        );
        (grade.min(Grade::Look), format!("{} without flue", counted(unvented, "flame")), remedy)
    } else {
        let remedy = "Keep flue and alarm checked; people leave first when the alarm sounds".to_owned();
        (grade, format!("{} with flue", counted(burners, "flame")), remedy)
    };
    Some(Check {
        name: "Carbon monoxide",
        grade,
        figure: format!("{flames}, {alarm}"),
        rule: "Any flame can make carbon monoxide, and how much no plan can tell: vent burners outdoors, and hang \
            an alarm"
            .to_owned(),
        source: "UMass and Michigan State University Extension on unvented greenhouse heaters; NIOSH: 35 ppm mean \
            of 8 hours, 200 ppm at any time",
        remedy,
        mend: Mend::Heater,
    })
}

/// Carbon dioxide per kWh of gross heat, m³; none where no factor is known.
fn carbon_dioxide_m3_per_kwh(case: &Case, burner: &Heater) -> Option<f64> {
    if let Some(fuel) = Hydrocarbon::of_fuel(&burner.fuel) {
        return Some(fuel.carbon_dioxide_m3_per_kwh_gross(ROOM_C));
    }
    Some(case.fuel(burner)?.co2_kg_per_kwh? * gas_m3_per_kg(CARBON_DIOXIDE, ROOM_C))
}

/// Highest carbon dioxide of the season in house and tent, ppm; none where a fuel's factor is missing.
fn highest_ppm(case: &Case) -> Option<[f64; 2]> {
    let hours = &case.run.hours;
    let scenario = case.scenario;
    let heaters = [(&scenario.heater, &hours.heater_w), (&scenario.standby, &hours.standby_w)];
    let mut burners = Vec::new();
    for (heater, heat_w) in heaters {
        if case.unvented().any(|burner| std::ptr::eq(burner, heater)) {
            let per_heat_wh = carbon_dioxide_m3_per_kwh(case, heater)? / case.heat_per_energy(heater) / 1000.0;
            burners.push((heat_w, per_heat_wh, case.in_tent(heater)));
        }
    }
    let hour = |k: usize| {
        let made = |tent_alone: bool| {
            let there = burners.iter().filter(|(_, _, in_tent)| *in_tent || !tent_alone);
            there.map(|(heat_w, per_heat_wh, _)| heat_w[k] * per_heat_wh).sum::<f64>()
        };
        BurnerHour {
            made_m3_per_h: made(false),
            made_in_tent_m3_per_h: made(true),
            exchange_m3_per_h: hours.air_exchange_m3_per_h[k],
            tent_exchange_m3_per_h: hours.tent_exchange_m3_per_h.get(k).copied().unwrap_or(0.0),
        }
    };
    Some(highest_carbon_dioxide_ppm((0..hours.record.len()).map(hour), case.run.shell.volume_m3, case.tent_m3()))
}

fn carbon_dioxide(case: &Case) -> Option<Check> {
    case.unvented().next()?;
    let highest = highest_ppm(case);
    let (grade, figure) = match highest {
        None => (Grade::Look, "not known for this fuel".to_owned()),
        Some([house, tent]) => {
            let (worst, place) = if tent > house { (tent, " in the tent") } else { (house, "") };
            let grade = if worst > CARBON_DIOXIDE_LIMIT_PPM { Grade::Stop } else { Grade::Look };
            let shown = if worst > BEYOND_PPM {
                format!("over {}", format::number(BEYOND_PPM, 0))
            } else {
                format::number((worst / 10.0).round() * 10.0, 0)
            };
            (grade, format!("{shown} ppm{place}, limit {} ppm", format::number(CARBON_DIOXIDE_LIMIT_PPM, 0)))
        }
    };
    Some(Check {
        name: "Carbon dioxide",
        grade,
        figure,
        rule:
            "Highest of the season with leaks and vents as planned, well mixed, beside the limit of a working place, a \
            mean of 8 hours; it tells how little fresh air the burner has"
                .to_owned(),
        source: "Stoichiometry of the fuel; OSHA 29 CFR 1910.1000 table Z-1 (from memory)",
        remedy: format!("{FLUE}, or more fresh air; stay out while it burns"),
        mend: Mend::Heater,
    })
}

fn ethylene(case: &Case) -> Option<Check> {
    let unvented = case.unvented().count();
    (unvented > 0).then(|| Check {
        name: "Ethylene",
        grade: Grade::Look,
        figure: format!("{}, harm from {} ppm", counted(unvented, "flame"), format::number(ETHYLENE_HARM_PPM, 2)),
        rule: "Ethylene of an unvented flame injures plants from 0.01 to 1 ppm; tomato shows twisting or wilting \
            within 24 hours, and no household alarm detects it"
            .to_owned(),
        source: "Michigan State University Extension, Malfunctioning greenhouse unit heaters",
        remedy: format!("{FLUE}, and fresh air while it burns; watch the leaves for twisting"),
        mend: Mend::Heater,
    })
}

fn vents_shut(case: &Case) -> Option<Check> {
    case.unvented().next()?;
    let hours = &case.run.hours;
    let first = case.unvented().any(|burner| std::ptr::eq(burner, &case.scenario.heater));
    let standby = case.unvented().any(|burner| std::ptr::eq(burner, &case.scenario.standby));
    let burns = |k: usize| (first && hours.heater_w[k] > 0.0) || (standby && hours.standby_w[k] > 0.0);
    let shut = |k: &usize| burns(*k) && hours.vent_opening[*k] <= 0.0 && hours.fan_share[*k] <= 0.0;
    let count = (0..hours.record.len()).filter(shut).count();
    if count == 0 {
        return None;
    }
    let opening_m2 = case.scenario.precautions.combustion_air_m2;
    let (grade, opening) = match opening_m2 {
        None => (Grade::Look, "openings not known"),
        Some(area_m2) if area_m2 > 0.0 => (Grade::Fine, "openings never shut"),
        Some(_) => (Grade::Stop, "no openings"),
    };
    Some(Check {
        name: "Vents shut while a burner runs",
        grade,
        figure: format!("{}, {opening}", format::hours(count)),
        rule: "An unvented flame needs fresh air in every hour that it burns: an opening that is never shut, since \
            vents open only when it is warm"
            .to_owned(),
        source: "UMass and Michigan State University Extension on unvented greenhouse heaters",
        remedy: format!("{FLUE}, or an opening to outdoors that cannot be shut; enter its area under Heater & fuel"),
        mend: Mend::Heater,
    })
}
