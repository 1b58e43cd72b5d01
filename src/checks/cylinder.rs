//! Gas cylinders: whether they give the gas on the coldest night, and where they stand.

use super::case::{Case, is_electric};
use super::{Check, Grade, Mend, remedy};
use crate::format;
use crate::model::{Cylinder, Heater};
use crate::safety::cylinder::{BOILING_POINT_C, PLANNING_SHARE_LEFT, alike, draw_limit_w};

pub(super) fn checks(case: &Case) -> Vec<Check> {
    let Some(fed) = Fed::of(case) else { return Vec::new() };
    vec![evaporation(case, &fed), place(&fed)]
}

/// The heater that burns from cylinders.
struct Fed<'a> {
    heater: &'a Heater,
    /// Its heat hour by hour, W.
    heat_w: &'a [f64],
    /// The unit that its fuel is bought in.
    unit: String,
}

impl<'a> Fed<'a> {
    /// The first of the two heaters whose fuel is bought by the cylinder.
    fn of(case: &Case<'a>) -> Option<Self> {
        let (s, hours) = (case.scenario, &case.run.hours);
        [(&s.heater, &hours.heater_w), (&s.standby, &hours.standby_w)].into_iter().find_map(|(heater, heat_w)| {
            if !heater.present || is_electric(heater) {
                return None;
            }
            let priced = case.study.prices.fuels.iter().find(|price| price.fuel == heater.fuel);
            let unit = match priced {
                Some(price) => price.unit.clone(),
                None => case.fuel(heater)?.units.first()?.unit.clone(),
            };
            unit.contains("cylinder").then_some(Self { heater, heat_w, unit })
        })
    }
}

/// The catalogue's row for a cylinder, or for one of nearly its content.
fn row<'a>(case: &Case<'a>, fed: &Fed) -> Option<&'a Cylinder> {
    if let Some(cylinder) = case.catalogue.cylinder(&fed.unit) {
        return Some(cylinder);
    }
    let units = &case.fuel(fed.heater)?.units;
    let heat = |unit: &str| units.iter().find(|u| u.unit == unit).map(|u| u.kwh_gross_per_unit);
    alike(&case.catalogue.cylinders, heat(&fed.unit)? / heat("kg")?)
}

fn evaporation(case: &Case, fed: &Fed) -> Check {
    let coldest_c = case.coldest_c();
    let full_w = case.full_input_w(fed.heater);
    let count = case.scenario.precautions.cylinders;
    let (grade, figure) = match row(case, fed) {
        None => (Grade::Look, format!("{}, no published limit for a {}", format::power(full_w), fed.unit)),
        Some(cylinder) => {
            let left_kg = PLANNING_SHARE_LEFT * cylinder.content_kg;
            let limit_w = f64::from(count) * draw_limit_w(cylinder, left_kg, coldest_c);
            let largest_w = fed.heat_w.iter().copied().fold(0.0, f64::max) / case.heat_per_energy(fed.heater);
            let grade = if largest_w > limit_w {
                Grade::Stop
            } else if full_w > limit_w {
                Grade::Look
            } else {
                Grade::Fine
            };
            let shown_w = if grade == Grade::Stop { largest_w } else { full_w };
            let at = case.temperature(coldest_c);
            (grade, format!("{} of {} at {at}", format::power(shown_w), format::power(limit_w)))
        }
    };
    Check {
        name: "Gas on the coldest night",
        grade,
        figure,
        rule: format!(
            "{count} × {} with a third left, as cold as the coldest hour; sustained draw chills the liquid, so the \
                limit is an upper bound overnight, and below {} propane gives no gas",
            fed.unit,
            case.temperature(BOILING_POINT_C)
        ),
        source: "Generator installation manual TP-6727, appendix D, for 100 lb; a national gas code table for cold \
            winters, quoted on a trade forum, for other sizes",
        remedy: remedy(
            grade,
            "Join several cylinders or take larger ones, by a licensed gas fitter, and change them before they \
            are a third full",
            "Change cylinders before they are a third full",
        ),
        mend: Mend::Heater,
    }
}

fn place(fed: &Fed) -> Check {
    Check {
        name: "Where cylinders stand",
        grade: Grade::Look,
        figure: fed.unit.clone(),
        rule: "Upright, outdoors, never in a pit: propane is 1.5 times heavier than air".to_owned(),
        source: "Trade property sheets and extension advice on gas cylinders",
        remedy: "Stand them outdoors and upright, and leak-test the joints with soapy water".to_owned(),
        mend: Mend::Heater,
    }
}
