//! Sweeps.

use crate::short;
use crate::window::{Window, enter, figures, press, until, view, window_on};
use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};

fn swept(h: &Window) -> bool {
    !h.state().sweeps.working() && h.state().sweeps.grown().whole().is_some()
}

fn points(h: &Window) -> usize {
    h.state().sweeps.grown().whole().expect("known").sweep.points.len()
}

/// Chooses an input from a list by the words of its name.
fn pick(h: &mut Window, list: &str, words: &str, entry: &str) {
    let starts = |n: &egui_kittest::Node<'_>| n.accesskit_node().label().is_some_and(|l| l.starts_with(list));
    h.get_all_by_role(Role::ComboBox).find(starts).unwrap_or_else(|| panic!("no {list}")).click();
    h.run_steps(3);
    h.event(egui::Event::Text(words.to_owned()));
    h.run_steps(3);
    h.get_by_label(entry).click();
    h.run_steps(4);
}

#[test]
fn one_input_of_all_scenarios_as_lines_and_figures() {
    let mut h = window_on(short());
    let count = h.state().document.draft.study.scenarios.len();
    view(&mut h, "Sweep");
    until(&mut h, "the sweep", swept);
    assert_eq!(points(&h), 9 * count);
    enter(&mut h, "Sweep to", "10");
    until(&mut h, "the sweep", swept);
    h.get_by_label_contains("Winter cost over Heater: Setpoint, day and night: Whole tunnel, electricity from ");
    let table = figures(&mut h, "sweep");
    assert_eq!(table[0][1], "heater.setpoint_c [°C]");
    assert_eq!((table[1][1].as_str(), table[9][1].as_str(), table.len()), ("4", "10", 1 + 9 * count));
    // The study keeps it, and a step back takes it back.
    assert_eq!(h.state().document.draft.study.swept.first.to, 10.0);
    assert!(h.state().document.changed_since_save());
    let name = h.state().document.history.undo_name().map(str::to_owned);
    assert_eq!(name.as_deref(), Some("sweep to"));
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::Z);
    h.run_steps(4);
    assert_eq!(h.state().document.draft.study.swept.first.to, 12.0);
}

#[test]
fn two_inputs_of_the_chosen_scenario_make_a_map() {
    let mut h = window_on(short());
    let tent = h.state().document.draft.study.scenarios.iter().position(|s| s.tent.present).expect("a tent");
    crate::choose(&mut h, tent);
    view(&mut h, "Sweep");
    pick(&mut h, "Input to sweep", "tent height", "Inner tent: Height");
    until(&mut h, "the sweep", swept);
    let first = h.state().document.draft.study.swept.first.clone();
    let height = h.state().document.draft.study.scenarios[tent].tent.height_m;
    assert!(first.from < height && height < first.to, "{first:?} round {height}");
    pick(&mut h, "Second input to sweep", "vessels how many", "Vessels: How many");
    enter(&mut h, "Sweep points", "3");
    enter(&mut h, "Sweep second points", "3");
    until(&mut h, "the map", swept);
    assert_eq!(points(&h), 9);
    h.get_by_label_contains("Upwards: Vessels: How many");
    h.get_by_label_contains("Winter cost over Inner tent: Height and Vessels: How many, from ");
    let table = figures(&mut h, "map");
    assert_eq!(table.len(), 1 + 9);
    for (measured, title) in
        [("Fuel", "Fuel, "), ("Lowest at the crop", "Lowest at the crop, °C"), ("Hours short", "Hours short, h")]
    {
        h.get_by_role_and_label(Role::RadioButton, measured).click();
        h.run_steps(3);
        assert!(h.query_all_by_label_contains(title).next().is_some(), "{title}");
    }
}

#[test]
fn what_cannot_be_swept_says_why_in_its_place() {
    let mut study = short();
    study.swept.first.input = "tent.heigth_m".to_owned();
    let mut h = window_on(study);
    view(&mut h, "Sweep");
    h.get_by_label_contains("did you mean \"tent.height_m\"?");
    h.state_mut().document.draft.study.swept.first.input = "tent.height_m".to_owned();
    for field in ["Sweep from", "Sweep to"] {
        h.run_steps(2);
        enter(&mut h, field, "1");
    }
    h.get_by_label_contains("choose two that differ");
    // A tent higher than the tunnel is left out, and the points below it stand.
    enter(&mut h, "Sweep to", "4");
    until(&mut h, "the sweep", swept);
    assert!(h.query_all_by_label_contains("left out; the first:").next().is_some());
}

#[test]
fn a_sweep_can_be_stopped() {
    let mut study = short();
    study.swept.first.points = 41;
    study.season = warmfold::model::Season::default();
    let mut h = window_on(study);
    view(&mut h, "Sweep");
    press(&mut h, "Stop");
    h.get_by_label("Stopped");
    assert!(!h.state().sweeps.working());
}
