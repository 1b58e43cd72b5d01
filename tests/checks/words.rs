//! The words of the checks: complete, and never a promise.

use super::{of, pairs, study};
use warmfold::checks::{Check, Grade};
use warmfold::model::{Answer, Circuit, FuelPrice, Heater, Plug, Scenario, Study};
use warmfold::safety::cautions::{CAUTIONS, LAST_WORD};
use warmfold::units::UnitSystem;

/// Scenarios that bring out every check, with every answer.
fn many() -> Vec<Check> {
    let mut all = Vec::new();
    for units in [UnitSystem::Metric, UnitSystem::Imperial] {
        for answer in [Answer::NotKnown, Answer::Yes, Answer::No] {
            for (vented, room_w) in [(false, 500.0), (false, 60_000.0), (true, 2000.0)] {
                let (study, scenario) = with(answer, vented, room_w);
                all.extend(of(&study, &scenario, units));
            }
        }
    }
    all
}

fn with(answer: Answer, vented: bool, rated_w: f64) -> (Study, Scenario) {
    let (mut study, mut s) = (study(), Scenario::default());
    study.prices.fuels = vec![FuelPrice { unit: "100 lb cylinder".to_owned(), ..FuelPrice::default() }];
    let known = answer != Answer::NotKnown;
    if known {
        study.site.mains.circuit =
            Some(Circuit { volts: 120.0, rating_a: if answer == Answer::Yes { 30.0 } else { 10.0 } });
        study.site.mains.plug = Plug::Rated(15.0);
    }
    s.standby = Heater { present: true, ..Heater::default() };
    s.heater = Heater { fuel: "propane".to_owned(), vented, rated_w, efficiency: 0.9, ..Heater::default() };
    s.water.present = true;
    s.water.vessels[0].bears_kg_per_m2 = known.then_some(if answer == Answer::Yes { 2000.0 } else { 100.0 });
    s.water.vessels[0].headspace = known.then_some(if answer == Answer::Yes { 0.1 } else { 0.0 });
    s.covering.sheets = vec!["film".to_owned()];
    s.precautions.residual_current_device = answer;
    s.precautions.carbon_monoxide_alarm = answer;
    s.precautions.low_temperature_alarm = answer;
    s.precautions.combustion_air_m2 = known.then_some(if answer == Answer::Yes { 0.5 } else { 0.0 });
    (study, s)
}

#[test]
fn every_check_says_all_that_it_must() {
    let all = many();
    for name in pairs::all_names() {
        assert!(all.iter().any(|check| check.name == name), "{name} is among them");
    }
    for check in &all {
        for text in [check.name, &check.figure, &check.rule, check.source, &check.remedy] {
            assert!(!text.trim().is_empty(), "{check:?}");
            assert!(!text.contains("NaN") && !text.contains("inf") && !text.contains("  "), "{text:?}");
        }
    }
}

#[test]
fn nothing_is_ever_called_harmless() {
    let checks = many();
    let texts = checks.iter().flat_map(|c| [c.name, &c.figure, &c.rule, c.source, &c.remedy]);
    let meanings = Grade::ALL.iter().flat_map(|grade| [grade.name(), grade.meaning()]);
    for text in texts.chain(CAUTIONS).chain([LAST_WORD]).chain(meanings) {
        // The one source whose name holds the word is "Consumer Product Safety Commission", which is not written out.
        let lower = text.to_lowercase();
        let claims = ["safe", "harmless", "no danger", "no risk", "risk-free", "guarantee"];
        let words = lower.replace("garden electric safety", "");
        assert!(claims.iter().all(|claim| !words.contains(claim)), "{text:?}");
    }
    assert!(Grade::Fine.meaning().contains("local codes"));
}
