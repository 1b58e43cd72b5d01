//! Where figures come from, and the first steps.

use super::{choose, demo, enter, menu, settle};
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;

#[test]
fn the_page_of_evidence_opens_from_help() {
    let mut h = demo();
    menu(&mut h, "Help", "How we know");
    assert!(h.query_by_label_contains("figures from standards").is_some());
    h.get_by_label("Close").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("figures from standards").is_none());
}

#[test]
fn each_headline_figure_shows_how_it_was_worked_out_and_follows_the_study() {
    let mut h = demo();
    choose(&mut h, 1);
    for figure in ["Winter cost", "Fuel", "Lowest at crop", "Below crop limit", "Heater margin"] {
        h.get_by_label(&format!("How {figure} was worked out")).click();
        settle(&mut h);
        assert_eq!(h.state().workings.topic.map(|topic| topic.name()), Some(figure));
    }
    h.get_by_role_and_label(Role::Button, "Winter cost").click();
    settle(&mut h);
    assert!(h.query_by_label("Heat from the heaters").is_some());
    let cost = h.state().chosen_season().unwrap().0.run.summary.cost.unwrap();
    let said = format!("${}", warmfold::format::number(cost, 2));
    assert!(h.query_all_by_label(&said).next().is_some(), "{said}");

    enter(&mut h, "Night setpoint", "5");
    assert!(h.query_all_by_label(&said).next().is_none(), "the numbers follow the study");
    h.get_by_role_and_label(Role::Button, "Baseline").click();
    settle(&mut h);
    assert!(h.query_by_label("Skin, leakage and edge").is_some());
    h.key_press(egui::Key::F2);
    settle(&mut h);
    assert!(h.state().workings.topic.is_none());
}

#[test]
fn the_first_steps_go_with_the_first_edit_and_the_guide_is_a_key_away() {
    let mut h = demo();
    assert!(h.query_by_label("Put the first steps away").is_some());
    enter(&mut h, "Night setpoint", "6");
    assert!(h.query_by_label("Put the first steps away").is_none() && h.state().prefs.started);
    h.key_press(egui::Key::F1);
    settle(&mut h);
    assert!(h.query_by_label("Your first study in five minutes").is_some());
    h.get_by_label("Close").click();
    settle(&mut h);

    let mut h = demo();
    h.get_by_label("Put the first steps away").click();
    settle(&mut h);
    assert!(h.state().prefs.started && h.state().document.history.undo_name().is_none());
}
