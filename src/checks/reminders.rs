//! What no program can see: clear space round heaters, snow on film.

use super::case::{Case, counted, is_electric};
use super::{Check, Grade, Mend};
use crate::format;
use crate::model::{HeatTarget, Heater, Part, PartCovering, Scenario, SheetKind};
use crate::safety::circuit::CLEAR_SPACE_M;
use crate::safety::weight::snow_kg;
use crate::units::{METRES_PER_FOOT, Quantity};

/// Depth of water for which the weight of snow is shown: an inch, m.
const INCH_M: f64 = METRES_PER_FOOT / 12.0;

/// House air that building codes assume under snow, °C: 50 °F (Bartok, University of Connecticut, 2013).
const CODE_HEAT_C: f64 = 10.0;

pub(super) fn checks(case: &Case) -> Vec<Check> {
    [clearance(case), snow(case)].into_iter().flatten().collect()
}

/// Whether a heater can set fire to what stands near it: a flame, or a heater of the air with an element.
fn is_hot(heater: &Heater) -> bool {
    !is_electric(heater) || (heater.target == HeatTarget::Air && !heater.heat_pump)
}

fn clearance(case: &Case) -> Option<Check> {
    let hot = case.heaters().filter(|heater| is_hot(heater)).count();
    let clear = case.show(CLEAR_SPACE_M, Quantity::Length);
    (hot > 0).then(|| Check {
        name: "Clear space round the heater",
        grade: Grade::Look,
        figure: format!("{clear} round {}", counted(hot, "heater")),
        rule: format!(
            "Keep film, fleece and anything else that burns {clear} away from a heater, unless its maker asks for \
                more"
        ),
        source: "CPSC advice, quoted: 3 ft clear of anything combustible",
        remedy: "Measure it in the house, tent and screens included".to_owned(),
        mend: Mend::Heater,
    })
}

/// Whether the roof's outermost sheet is film.
fn roof_is_film(case: &Case) -> bool {
    let s: &Scenario = case.scenario;
    let roof = s.covering.exceptions.iter().find(|exception| exception.part == Part::Roof);
    let sheets = match roof.map(|exception| &exception.covering) {
        Some(PartCovering::Opaque(_)) => return false,
        Some(PartCovering::Sheets(sheets)) => sheets,
        None => &s.covering.sheets,
    };
    let outermost = sheets.first().and_then(|key| case.catalogue.sheet(key));
    outermost.is_some_and(|sheet| sheet.kind == SheetKind::Film)
}

fn snow(case: &Case) -> Option<Check> {
    if !roof_is_film(case) || case.coldest_c() >= 0.0 {
        return None;
    }
    let mass = case.show(snow_kg(case.run.shell.floor_m2, INCH_M), Quantity::Mass);
    let inch = case.show(INCH_M, Quantity::Depth);
    let depth = |inches: f64| format::quantity(inches * INCH_M, Quantity::Depth, case.units, Some(0));
    let heated = case.heaters().next().is_some();
    let remedy = if heated {
        "Clear snow early and evenly and keep the heat on; do not enter a bending house, and cut the film only as \
            a last resort"
    } else {
        "Clear snow early and evenly: codes assume heat under snow, and there is none here; do not enter a bending \
            house, and cut the film only as a last resort"
    };
    Some(Check {
        name: "Snow on film",
        grade: Grade::Look,
        figure: format!("{mass} for each {inch} of water"),
        rule: format!(
            "Each {inch} of water in the snow, {} of fluffy or {} to {} of wet snow, lays {} on the house; uneven load is \
             worse, and codes assume heat ({}) under snow",
            depth(12.0),
            depth(3.0),
            depth(4.0),
            case.show(snow_kg(1.0, INCH_M), Quantity::AreaLoad),
            case.temperature(CODE_HEAT_C)
        ),
        source: "Grubinger, University of Vermont; Bartok, University of Connecticut, 2013",
        remedy: remedy.to_owned(),
        mend: Mend::Covering,
    })
}
