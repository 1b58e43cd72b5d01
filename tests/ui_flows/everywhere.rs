//! One change goes to one scenario or to all, and which is said.

use crate::{demo, enter, settle};
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use warmfold::model::Study;

fn ridges_m(study: &Study) -> Vec<f64> {
    study.scenarios.iter().map(|s| s.house.ridge_height_m).collect()
}

#[test]
fn a_change_goes_to_all_scenarios_while_that_is_chosen() {
    let mut h = demo();
    let before = h.state().document.draft.study.clone();
    enter(&mut h, "Ridge height", "2.3");
    assert_eq!(ridges_m(&h.state().document.draft.study), [2.3, 2.2, 2.2, 2.2]);
    h.get_by_label("Change all scenarios alike").click();
    settle(&mut h);
    h.get_by_label("Changes go to all 4 scenarios");
    enter(&mut h, "Ridge height", "2.4");
    let mut wanted = before.clone();
    for scenario in &mut wanted.scenarios {
        scenario.house.ridge_height_m = 2.4;
    }
    assert_eq!(h.state().document.draft.study, wanted);
    assert_eq!(h.state().document.history.undo_name(), Some("house ridge height in all scenarios"));
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::Z);
    settle(&mut h);
    assert_eq!(ridges_m(&h.state().document.draft.study), [2.3, 2.2, 2.2, 2.2]);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::L);
    settle(&mut h);
    enter(&mut h, "Ridge height", "2.5");
    assert_eq!(ridges_m(&h.state().document.draft.study), [2.5, 2.2, 2.2, 2.2]);
}

#[test]
fn one_value_is_given_to_all_scenarios() {
    let mut h = demo();
    enter(&mut h, "Ridge height", "2.3");
    h.get_by_role_and_label(Role::SpinButton, "Ridge height").click_secondary();
    h.run_steps(3);
    h.get_by_label("Use in all scenarios").click();
    settle(&mut h);
    assert_eq!(ridges_m(&h.state().document.draft.study), [2.3; 4]);
    assert_eq!(h.state().document.history.undo_name(), Some("house ridge height in all scenarios"));
}
