//! The best buy.

use crate::short;
use crate::window::{Window, enter, figures, press, until, view, window_on};
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use warmfold::model::{Candidate, CandidateChange, Study, Tightness, Vessels};

fn found(h: &Window) -> bool {
    !h.state().purchases.working() && h.query_all_by_label_contains("So far").next().is_none()
}

/// The whole tunnel with two measures.
fn with_measures() -> Study {
    let mut study = short();
    study.scenarios.truncate(1);
    let measure =
        |name: &str, change, price| Candidate { name: name.to_owned(), change, price, ..Candidate::default() };
    study.candidates = vec![
        measure("seals", CandidateChange::Tightness(Tightness::Sealed), 20.0),
        measure("drums", CandidateChange::Vessels(Vessels { count: 2, ..Vessels::default() }), 30.0),
    ];
    study
}

fn said(h: &Window, text: &str) -> bool {
    h.query_all_by_label_contains(text).next().is_some()
}

#[test]
fn from_an_empty_list_to_a_best_buy() {
    let mut study = short();
    study.scenarios.truncate(1);
    study.candidates.clear();
    let mut h = window_on(study);
    view(&mut h, "Best buy");
    assert!(said(&h, "Nothing to choose from yet"));
    press(&mut h, "Add the usual ones");
    let count = h.state().document.draft.study.candidates.len();
    assert!(count >= 5, "{count}");
    assert!(said(&h, "price?"), "a price is asked for");
    until(&mut h, "the best buy", found);
    assert!(said(&h, "Best buy: "));
    // All of it is one step.
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::Z);
    h.run_steps(4);
    assert!(h.state().document.draft.study.candidates.is_empty());
}

#[test]
fn prices_budget_and_winters_rank_without_a_new_run() {
    let mut h = window_on(with_measures());
    view(&mut h, "Best buy");
    until(&mut h, "the best buy", found);
    let table = figures(&mut h, "best buy");
    assert_eq!(table.len(), 1 + 4, "every combination of two");
    // A price beyond what the winters can save takes it out of the best buy, at once.
    enter(&mut h, "Price of seals", "100000");
    assert!(!h.state().purchases.working(), "a price runs nothing");
    let best = |h: &Window| {
        let label = h.get_all_by_label_contains("Best buy: ").next();
        label.map(|n| egui_kittest::kittest::NodeT::accesskit_node(&n).value().unwrap_or_default()).unwrap_or_default()
    };
    assert!(!best(&h).contains("seals"), "{}", best(&h));
    h.get_by_role_and_label(Role::CheckBox, "Budget").click();
    h.run_steps(4);
    enter(&mut h, "Most to spend at once", "0");
    assert!(best(&h).contains("nothing, $0.00 to buy"), "{}", best(&h));
    assert_eq!(h.state().document.draft.study.prices.budget, Some(0.0));
    enter(&mut h, "Winters to plan for", "1");
    assert!(best(&h).contains("in one winter"), "{}", best(&h));
    // Without a tick there is nothing to combine.
    for name in ["Look at seals", "Look at drums"] {
        h.get_by_role_and_label(Role::CheckBox, name).click();
        h.run_steps(4);
    }
    assert!(said(&h, "Tick what may be bought"));
}

#[test]
fn none_that_holds_the_crop_is_an_answer() {
    let mut study = with_measures();
    study.scenarios[0].heater.present = false;
    study.scenarios[0].crop.limit_c = 15.0;
    let mut h = window_on(study);
    view(&mut h, "Best buy");
    until(&mut h, "the answer", |h| found(h) && said(h, "None of the combinations"));
    assert!(said(&h, "Nearest to it: ") && said(&h, "Does not hold the crop (4)"));
}

#[test]
fn particulars_of_a_measure_can_be_changed_and_a_broken_one_says_so() {
    let mut h = window_on(with_measures());
    view(&mut h, "Best buy");
    press(&mut h, "Open the particulars of drums");
    h.get_all_by_role_and_label(Role::SpinButton, "How many").next().expect("the field").click();
    h.run_steps(3);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::A);
    h.event(egui::Event::Text("9".to_owned()));
    h.key_press(egui::Key::Enter);
    h.run_steps(4);
    let change = &h.state().document.draft.study.candidates[1].change;
    assert!(matches!(change, CandidateChange::Vessels(vessels) if vessels.count == 9), "{change:?}");
    h.state_mut().document.draft.study.candidates[0].name = "drums".to_owned();
    h.state_mut().document.revision += 1;
    h.run_steps(6);
    assert!(said(&h, "1 problem"));
    h.get_all_by_role_and_label(Role::Button, "Take drums off the list").next().expect("the button").click();
    h.run_steps(4);
    assert_eq!(h.state().document.draft.study.candidates.len(), 1);
}
