//! What matters.

use crate::window::{Window, enter, figures, press, until, view, window_on};
use crate::{choose, short};
use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use warmfold::gui::state::View;

fn known(h: &Window) -> bool {
    h.state().chosen_matters().is_some()
}

/// The headline's cost as it is read out.
fn headline(h: &Window) -> String {
    let said = |n: &egui_kittest::Node<'_>| n.accesskit_node().value().filter(|v| v.starts_with("Winter cost"));
    h.get_all_by_role(Role::Label).find_map(|n| said(&n)).expect("the headline")
}

#[test]
fn doubts_are_ranked_and_a_click_opens_the_input() {
    let mut h = window_on(short());
    choose(&mut h, 1);
    view(&mut h, "What matters");
    assert_eq!(h.state().view, View::Matters);
    until(&mut h, "what matters", known);
    let matters = h.state().chosen_matters().expect("known");
    let likely = matters.likely().expect("a price and the weather");
    assert!(headline(&h).contains(&likely.band("$")), "{}", headline(&h));
    h.get_by_label_contains(&likely.text("$"));
    // A folded section of the scenario, one of the study, and that of the place.
    for (doubt, field) in
        [("Covering, ±10 %", "Add a sheet"), ("Prices of energy, ±20 %", "Price per kWh"), ("Weather, one", "Latitude")]
    {
        assert!(h.query_all_by_label_contains(field).next().is_none(), "{field} is folded away");
        h.get_all_by_role(Role::Button)
            .find(|n| n.accesskit_node().label().is_some_and(|l| l.starts_with(doubt)))
            .unwrap_or_else(|| panic!("no {doubt}"))
            .click();
        h.run_steps(4);
        assert!(h.query_all_by_label_contains(field).next().is_some(), "{doubt} opens {field}");
    }
    let table = figures(&mut h, "what matters");
    assert_eq!(table.len(), 2 + matters.effects.len(), "a head, the season and each doubt");
    assert_eq!(table[2][0], matters.effects[0].name);
}

#[test]
fn the_headlines_band_comes_by_itself_and_goes_with_a_change() {
    let mut h = window_on(short());
    choose(&mut h, 1);
    assert!(!headline(&h).contains("likely"), "{}", headline(&h));
    until(&mut h, "the band", known);
    let band = headline(&h);
    assert!(band.contains("likely"), "{band}");
    // From card to card and back nothing is asked twice.
    choose(&mut h, 0);
    choose(&mut h, 1);
    assert_eq!(headline(&h), band);
    enter(&mut h, "Rated output", "3000");
    until(&mut h, "the season", |h| !h.state().board.working());
    assert!(!headline(&h).contains("likely"), "an old band is no band: {}", headline(&h));
}

#[test]
fn trying_the_doubts_can_be_stopped_and_gone_on_with() {
    let mut study = short();
    study.many_winters.count = 1000;
    let mut h = window_on(study);
    view(&mut h, "What matters");
    press(&mut h, "Stop");
    assert!(!h.state().matters.working());
    h.get_by_label("Stopped");
    press(&mut h, "Go on");
    assert!(h.state().matters.working());
}
