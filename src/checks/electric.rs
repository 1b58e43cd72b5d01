//! Mains: the load on the circuit and on the plug, the residual-current device, extension leads.

use super::case::{Case, is_electric};
use super::{Check, Grade, Mend, by_answer};
use crate::format;
use crate::model::{Answer, Circuit, Heater, Plug};
use crate::safety::circuit::{continuous_limit_a, current_a, plug_limit_w, rating_needed_a};
use crate::units::Quantity;

pub(super) fn checks(case: &Case) -> Vec<Check> {
    [circuit(case), plug(case), residual_current_device(case), extension_leads(case)].into_iter().flatten().collect()
}

/// What a heater takes from the mains at full output, its fan included, W.
fn load_w(case: &Case, heater: &Heater) -> f64 {
    heater.fan_w + if is_electric(heater) { case.full_input_w(heater) } else { 0.0 }
}

fn circuit(case: &Case) -> Option<Check> {
    let load_w = case.heaters().map(|heater| load_w(case, heater)).sum::<f64>();
    if load_w <= 0.0 {
        return None;
    }
    let (grade, figure, remedy) = match &case.study.site.mains.circuit {
        None => (
            Grade::Look,
            format!("{}, circuit not known", format::power(load_w)),
            "Read volts and rating off the breaker and enter them under Site & weather".to_owned(),
        ),
        Some(circuit) => against_circuit(case, circuit, load_w),
    };
    Some(Check {
        name: "Load on the circuit",
        grade,
        figure,
        rule: "Heating is a continuous load: all heaters of a circuit together take at most 80 % of its rating"
            .to_owned(),
        source: "National Electrical Code 2017, 424.3(B), 210.19(A)(1), 210.20(A)",
        remedy,
        mend: Mend::Site,
    })
}

fn against_circuit(case: &Case, circuit: &Circuit, load_w: f64) -> (Grade, String, String) {
    let (load_a, limit_a) = (current_a(load_w, circuit.volts), continuous_limit_a(circuit.rating_a));
    let amperes = |a: f64| case.show(a, Quantity::Current);
    let figure = format!("{} of {}", amperes(load_a), amperes(limit_a));
    if load_a > limit_a {
        let needed = amperes(rating_needed_a(load_a));
        let remedy = format!("Smaller heaters, or a circuit of at least {needed} from a licensed electrician");
        return (Grade::Stop, figure, remedy);
    }
    (Grade::Fine, figure, "Nothing else that draws for hours on this circuit".to_owned())
}

fn plug(case: &Case) -> Option<Check> {
    let load_w = case.heaters().filter(|h| is_electric(h)).map(|h| load_w(case, h)).reduce(f64::max)?;
    let mains = &case.study.site.mains;
    let rating_a = match mains.plug {
        Plug::Wired => return None,
        Plug::NotKnown => None,
        Plug::Rated(rating_a) => Some(rating_a),
    };
    let volts = mains.circuit.as_ref().map(|circuit| circuit.volts);
    let limit_w = rating_a.and_then(|rating_a| plug_limit_w(rating_a, volts));
    let load = format::power(load_w);
    let (grade, figure, remedy) = match limit_w {
        None => (
            Grade::Look,
            format!("{load}, limit not known"),
            "Read the rating off plug or fuse and enter it, with the circuit's volts, under Site & weather",
        ),
        Some(limit_w) if load_w > limit_w => (
            Grade::Stop,
            format!("{load} of {}", format::power(limit_w)),
            "Have the heater wired in by a licensed electrician, or take a smaller one",
        ),
        Some(limit_w) => {
            (Grade::Fine, format!("{load} of {}", format::power(limit_w)), "Stop if plug or outlet is hot to the touch")
        }
    };
    Some(Check {
        name: "Load on the plug",
        grade,
        figure,
        rule: "The largest heater takes no more than its plug is rated for; by a 13 A fuse 3\u{202f}000 W per lead or socket"
            .to_owned(),
        source: "Guidance in the United Kingdom for 13 A; the marking of other plugs (common practice)",
        remedy: remedy.to_owned(),
        mend: Mend::Site,
    })
}

fn residual_current_device(case: &Case) -> Option<Check> {
    let vents_fan = case.scenario.vents.fan_present;
    let wired = case.heaters().any(|h| is_electric(h) || h.needs_mains || h.fan_w > 0.0);
    if !wired && !vents_fan {
        return None;
    }
    let answer = case.scenario.precautions.residual_current_device;
    let remedy = match answer {
        Answer::Yes => "Press its test button now and then; a trip means leakage: stop using it and have it checked",
        _ => {
            "Have one fitted by a licensed electrician; keep every connection dry, above splash height, away from \
                drums, drip lines and mist, and isolate before touching"
        }
    };
    Some(Check {
        name: "Residual-current device",
        grade: by_answer(answer, Grade::Stop),
        figure: answer.name().to_owned(),
        rule: "Electricity outdoors and in the damp is guarded by a residual-current device, 30 mA; a ground-fault \
            interrupter in North America"
            .to_owned(),
        source: "RoSPA Northern Ireland, garden electric safety; 30 mA and advice of CPSC and ESFI, quoted",
        remedy: remedy.to_owned(),
        mend: Mend::Heater,
    })
}

fn extension_leads(case: &Case) -> Option<Check> {
    let electric = case.heaters().filter(|h| is_electric(h)).count();
    if electric == 0 || case.study.site.mains.plug == Plug::Wired {
        return None;
    }
    Some(Check {
        name: "No extension leads",
        grade: Grade::Look,
        figure: super::case::counted(electric, "electric heater"),
        rule: "A heater is plugged straight into a fixed outlet: no extension leads, strips or coiled reels for \
            heating a greenhouse"
            .to_owned(),
        source: "RoSPA Northern Ireland, garden electric safety; CPSC advice, quoted",
        remedy: "Have an outlet fitted where the heater stands, or the heater wired in".to_owned(),
        mend: Mend::Site,
    })
}
