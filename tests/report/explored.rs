//! What was worked out beyond the seasons: printed as it is if it was asked for, and said to be missing if not.

use super::opening::{opened, runs};
use super::{saving, sound, words};
use warmfold::explore::BestBuy;
use warmfold::format;
use warmfold::model::{Candidate, CandidateChange, Season, Tightness, Vessels, bundled_catalogue};
use warmfold::report::{Explored, Report, WeatherUsed, html};
use warmfold::season::pool::Workers;
use warmfold::units::UnitSystem;

#[test]
fn bands_winters_and_the_best_buy_are_printed_as_they_were_found() {
    let (mut study, climate) = opened();
    study.season = Season { from_month: 1, from_day: 1, to_month: 1, to_day: 14 };
    study.many_winters.count = 20;
    let measure = |name: &str, change, ticked| Candidate {
        name: name.to_owned(),
        change,
        ticked,
        price: 25.0,
        note: "read <today>".to_owned(),
        ..Candidate::default()
    };
    study.candidates = vec![
        measure("new seals", CandidateChange::Tightness(Tightness::Sealed), true),
        measure("two drums", CandidateChange::Vessels(Vessels { count: 2, ..Vessels::default() }), true),
        measure("insulated edge", CandidateChange::Edge(0.94), false),
    ];
    let runs = runs(&study, &climate);
    let explored = Explored::of(&study, &climate, bundled_catalogue(), Workers::all()).expect("runs");
    let text = |explored: &Explored, units| {
        let page = html(&Report {
            study: &study,
            catalogue: bundled_catalogue(),
            weather: WeatherUsed { climate: &climate, credit: "", notes: &[] },
            runs: runs.iter().map(Some).collect(),
            saving: saving(&study, &climate, &runs),
            air: Vec::new(),
            hard_nights: Vec::new(),
            explored: explored.clone(),
            marks: &[],
            units,
            program_version: "1.2.3",
        });
        words(sound(&page, "explored").root_element()).replace('\u{a0}', " ")
    };
    let metric = text(&explored, UnitSystem::Metric);
    let matters = |slot: usize| explored.matters[slot].as_ref().expect("tried");
    for slot in 0..study.scenarios.len() {
        let likely = matters(slot).likely().expect("a price");
        assert!(metric.contains(&likely.text("$")) && metric.contains(&likely.band("$")), "{slot}");
        let cost = explored.winters[slot].as_ref().and_then(|w| w.cost).expect("a price");
        assert!(metric.contains(&format::money(cost.p90, "$")), "{slot}: one winter in ten");
    }
    // Of the cheapest, every doubt in full.
    let cheapest =
        (0..runs.len()).min_by(|a, b| runs[*a].summary.cost.partial_cmp(&runs[*b].summary.cost).expect("prices"));
    for effect in &matters(cheapest.expect("scenarios")).effects {
        assert!(metric.contains(effect.name) && metric.contains(&effect.range), "{}", effect.name);
    }
    let (place, combinations) = explored.measures.as_ref().expect("tried");
    assert_eq!(*place, study.reference);
    let best = BestBuy::of(combinations, study.prices.budget, study.prices.winters);
    for sentence in best.verdict(&study, UnitSystem::Metric) {
        assert!(metric.contains(&sentence), "{sentence}");
    }
    assert!(metric.contains("insulated edge") && metric.contains("not looked at") && metric.contains("read <today>"));
    assert!(text(&explored, UnitSystem::Imperial).contains("±1.8 °F"), "ranges in the reader's units");
    // Nobody asked: the list of measures stands, and what is missing is said.
    let short = text(&Explored::default(), UnitSystem::Metric);
    assert!(short.contains("was not tried for this report") && short.contains("were not run for this report"));
    assert!(!short.contains("likely $") && !short.contains("Many winters"));
}
