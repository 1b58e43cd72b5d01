//! Vessels of water: their weight on floor or bench, and room for ice.

use super::case::Case;
use super::{Check, Grade, Mend, remedy};
use crate::format;
use crate::model::{Stand, Vessels};
use crate::safety::weight::{DWELLING_FLOOR_PA, ICE_GROWTH, LEAST_HEADSPACE, STEEL_DRUM_KG, filled_kg, pressure_pa};
use crate::units::{GRAVITY, LITRES_PER_US_GALLON, Quantity};

/// Empty mass per litre, kg: that of a 55 gallon steel drum. Plastic ones weigh less. A modelling choice.
const EMPTY_KG_PER_LITRE: f64 = STEEL_DRUM_KG / (55.0 * LITRES_PER_US_GALLON);
/// Ice beyond this share of a store is ice and not rounding.
const SOME_ICE: f64 = 1e-3;

pub(super) fn checks(case: &Case) -> Vec<Check> {
    if !case.scenario.water.present {
        return Vec::new();
    }
    [weight(case), ice(case)].into_iter().flatten().collect()
}

fn vessels<'a>(case: &Case<'a>) -> impl Iterator<Item = &'a Vessels> {
    case.scenario.water.vessels.iter().filter(|v| v.count > 0)
}

/// Load of a vessel on its own footprint, kg/m²; none without one.
fn load_kg_per_m2(v: &Vessels) -> Option<f64> {
    let mass_kg = filled_kg(v.litres_each, EMPTY_KG_PER_LITRE * v.litres_each);
    (v.footprint_m2_each > 0.0).then(|| pressure_pa(mass_kg, v.footprint_m2_each) / GRAVITY)
}

/// The vessels that come out worst, the heaviest of these.
fn weight(case: &Case) -> Option<Check> {
    let graded = vessels(case).filter_map(|v| {
        let load = load_kg_per_m2(v);
        let heavy = load.is_none_or(|load| load * GRAVITY > DWELLING_FLOOR_PA);
        let grade = match (load, v.bears_kg_per_m2) {
            (Some(load), Some(bears)) if load > bears => Grade::Stop,
            (Some(_), Some(_)) => Grade::Fine,
            _ if v.stand == Stand::Bench || heavy => Grade::Look,
            _ => return None,
        };
        Some((grade, load.unwrap_or(f64::INFINITY), v))
    });
    let (grade, load, v) = graded.min_by(|a, b| a.0.cmp(&b.0).then(b.1.total_cmp(&a.1)))?;
    let each_kg = filled_kg(v.litres_each, EMPTY_KG_PER_LITRE * v.litres_each);
    let on = if v.stand == Stand::Bench { "bench" } else { "floor" };
    let shown = |load: f64| case.show(load, Quantity::AreaLoad);
    let limit = v.bears_kg_per_m2.map_or("limit not known".to_owned(), |bears| format!("of {}", shown(bears)));
    let load = if load.is_finite() { shown(load) } else { "footprint not known".to_owned() };
    Some(Check {
        name: "Weight of water",
        grade,
        figure: format!("{load} {limit}"),
        rule: format!(
            "{}, {} each when filled, stand on the {on}, which must bear their weight without tipping; the floor \
                of a dwelling, {}, cannot carry drums",
            v.name,
            case.show(each_kg, Quantity::Mass),
            shown(DWELLING_FLOOR_PA / GRAVITY)
        ),
        source: "Water 8.34 lb per US gallon, steel drum 40 lb (drum seller's table); 40 lb/ft² (from memory)",
        remedy: remedy(
            grade,
            "Spread the load, lower the vessels to firm ground, or have floor or bench checked; enter what it bears under \
             Water store",
            "See that none can tip, and keep small children away",
        ),
        mend: Mend::Water,
    })
}

fn ice(case: &Case) -> Option<Check> {
    let share = case.run.summary.water_ice_share_max.filter(|share| *share > SOME_ICE)?;
    let headspace = vessels(case).map(|v| v.headspace).reduce(|a, b| a.zip(b).map(|(a, b)| a.min(b))).flatten();
    let percent = |share: f64| format!("{} %", format::number(100.0 * share, 0));
    let (grade, empty) = match headspace {
        None => (Grade::Look, "headspace not known".to_owned()),
        Some(empty) => {
            let grade = if empty < ICE_GROWTH {
                Grade::Stop
            } else if empty < LEAST_HEADSPACE {
                Grade::Look
            } else {
                Grade::Fine
            };
            (grade, format!("{} left empty", percent(empty)))
        }
    };
    Some(Check {
        name: "Water that freezes",
        grade,
        figure: format!("{} ice, {empty}", percent(share)),
        rule: format!(
            "Freezing water grows by {} % of its volume: leave about 10 % headspace and do not seal",
            format::number(100.0 * ICE_GROWTH, 1)
        ),
        source: "Densities of water and ice (from memory); headspace: common practice",
        remedy: remedy(
            grade,
            "Take a tenth of the water out, leave the bung loose, and enter what is left empty under Water store",
            "Leave the bung loose",
        ),
        mend: Mend::Water,
    })
}
