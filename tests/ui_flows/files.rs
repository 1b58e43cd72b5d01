//! Studies on disk and on the clipboard: saving, opening, keeping, asking before anything is lost.

use super::{choose, cost, demo, enter, menu, settle};
use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use std::time::{Duration, Instant};
use warmfold::gui::State;
use warmfold::storage;
use warmfold::units::UnitSystem;

#[test]
fn the_unit_switch_changes_no_byte_of_the_study() {
    let mut h = demo();
    let before = storage::write_study(&h.state().document.draft.study);
    h.get_by_label("°F · ft").click();
    settle(&mut h);
    assert_eq!(h.state().prefs.units, UnitSystem::Imperial);
    h.get_by_role_and_label(Role::SpinButton, "Length").click();
    h.run_steps(3);
    h.key_press(egui::Key::Enter);
    settle(&mut h);
    h.get_by_label("°C · m").click();
    settle(&mut h);
    assert_eq!(storage::write_study(&h.state().document.draft.study), before);
    assert!(!h.state().document.changed_since_save());

    h.get_by_label("°F · ft").click();
    settle(&mut h);
    enter(&mut h, "Night setpoint", "50");
    let held = h.state().document.draft.scenario().unwrap().heater.setpoint_night_c.unwrap();
    // 50 °F is 10 °C by definition of the scales.
    assert!((held - 10.0).abs() < 1e-9);
}

#[test]
fn a_saved_study_opens_with_the_same_figures() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("winter.ron");
    let mut h = demo();
    enter(&mut h, "Night setpoint", "6.5");
    let (study, money) = (h.state().document.draft.study.clone(), cost(&h));
    assert!(h.state().document.changed_since_save());

    menu(&mut h, "File", "Save as…");
    h.get_by_role_and_label(Role::TextInput, "File path").focus();
    h.run_steps(2);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::A);
    h.get_by_role_and_label(Role::TextInput, "File path").type_text(&path.display().to_string());
    h.run_steps(2);
    h.get_by_role_and_label(Role::Button, "Save").click();
    settle(&mut h);
    assert!(path.is_file());
    assert!(!h.state().document.changed_since_save());

    let mut again = demo();
    let ctx = again.ctx.clone();
    again.state_mut().open_file(&path, &ctx);
    settle(&mut again);
    assert_eq!(again.state().document.draft.study, study);
    assert_eq!(cost(&again), money);
}

#[test]
fn deleting_offers_its_undo_and_closing_asks() {
    let mut h = demo();
    let before = h.state().document.draft.study.clone();
    menu(&mut h, "Edit", "Delete scenario");
    assert_eq!(h.state().document.draft.study.scenarios.len(), before.scenarios.len() - 1);
    h.get_by_role_and_label(Role::Button, "Undo").click();
    settle(&mut h);
    assert_eq!(h.state().document.draft.study, before);

    menu(&mut h, "Edit", "Delete scenario");
    menu(&mut h, "File", "New");
    h.get_by_label("Keep editing").click();
    settle(&mut h);
    assert_eq!(h.state().document.draft.study.scenarios.len(), before.scenarios.len() - 1);
    menu(&mut h, "File", "New");
    h.get_by_label("Discard changes").click();
    settle(&mut h);
    assert_eq!(h.state().document.draft.study.scenarios.len(), 1);
}

#[test]
fn a_scenario_travels_as_text_between_two_windows() {
    let mut h = demo();
    let tent = h.state().document.draft.study.scenarios.iter().position(|s| s.tent.present).unwrap();
    choose(&mut h, tent);
    let own = h.state().document.draft.study.scenarios[tent].clone();
    menu(&mut h, "Edit", "Copy scenario as text");
    let copied = warmfold::model::Study { scenarios: vec![own.clone()], ..h.state().document.draft.study.clone() };
    let text = storage::write_study(&copied);
    let mut other = demo();
    let before = other.state().document.draft.study.scenarios.len();
    other.event(egui::Event::Paste(text));
    settle(&mut other);
    let study = &other.state().document.draft.study;
    assert_eq!(study.scenarios.len(), before + 1);
    let pasted = study.scenarios.iter().find(|s| s.name != own.name && s.name.starts_with(&own.name)).unwrap();
    assert_eq!(warmfold::model::Scenario { name: own.name.clone(), ..pasted.clone() }, own);
    menu(&mut other, "Edit", "Undo paste scenario");
    assert_eq!(other.state().document.draft.study.scenarios.len(), before);
    // Any other text is said to hold no scenario, and changes nothing.
    other.event(egui::Event::Paste("milk, bread".to_owned()));
    settle(&mut other);
    assert!(other.query_by_label_contains("holds no scenario").is_some());
    assert_eq!(other.state().document.draft.study.scenarios.len(), before);
}

#[test]
fn changes_outlive_a_window_that_dies_and_no_file_is_overwritten_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let (aside, file) = (folder.path().join("aside"), folder.path().join("house.ron"));
    storage::save(&file, &storage::demo().unwrap()).unwrap();
    let open = |h: &mut Harness<'static, State>| {
        h.state_mut().keep_in(aside.clone());
        let ctx = h.ctx.clone();
        h.state_mut().open_file(&file, &ctx);
        settle(h);
    };
    let mut first = demo();
    open(&mut first);
    enter(&mut first, "Length", "22 ft");
    // More than the two seconds between a change and its being kept, then time for the thread.
    first.run_steps(150);
    let draft = aside.join("drafts/draft-0.ron");
    let start = Instant::now();
    while !draft.exists() {
        assert!(start.elapsed() < Duration::from_secs(20), "nothing was kept");
        std::thread::sleep(Duration::from_millis(5));
    }
    let mut second = demo();
    open(&mut second);
    assert!(second.state().left.is_empty(), "the first window is still open");
    assert!(second.state().opened_twice);
    second.get_by_label("Open in another window too");
    enter(&mut second, "Width", "4 m");
    menu(&mut second, "File", "Save");
    drop(second);
    menu(&mut first, "File", "Save");
    first.get_by_label("The file was changed elsewhere");
    first.get_by_label("Keep editing").click();
    settle(&mut first);
    assert_eq!(storage::load(&file).unwrap().scenarios[0].house.width_m, 4.0);
    let changed = first.state().document.draft.study.clone();
    drop(first);

    let mut third = demo();
    third.state_mut().keep_in(aside.clone());
    third.run_steps(3);
    third.get_by_label("Changes that were not saved");
    third.get_by_role_and_label(Role::Button, "Open").click();
    settle(&mut third);
    assert_eq!(third.state().document.draft.study, changed);
    assert_eq!(third.state().document.path.as_deref(), Some(file.as_path()));
    assert!(third.state().document.changed_since_save());
    menu(&mut third, "File", "Save");
    third.get_by_label("The file was changed elsewhere");
    third.get_by_label("Replace it").click();
    settle(&mut third);
    third.run_steps(150);
    let start = Instant::now();
    while draft.exists() {
        assert!(start.elapsed() < Duration::from_secs(20), "what is saved needs no draft");
        third.step();
        std::thread::sleep(Duration::from_millis(5));
    }
    assert_eq!(storage::load(&file).unwrap().scenarios[0].house.length_m, 22.0 * 0.3048);
}

#[test]
fn a_name_without_its_ending_replaces_no_file_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let there = folder.path().join("house.ron");
    storage::save(&there, &warmfold::model::Study::default()).unwrap();
    let before = std::fs::read(&there).unwrap();
    let mut h = demo();
    menu(&mut h, "File", "Save as…");
    h.get_by_label("File path").focus();
    h.run_steps(2);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::A);
    h.event(egui::Event::Text(folder.path().join("house").display().to_string()));
    h.run_steps(2);
    h.get_by_role_and_label(Role::Button, "Save").click();
    settle(&mut h);
    h.get_by_label("A file of that name is there already");
    assert_eq!(std::fs::read(&there).unwrap(), before);
}

#[test]
fn dialogs_fit_into_a_tiny_window() {
    let mut h = demo();
    h.set_size(egui::vec2(300.0, 200.0));
    h.run_steps(3);
    for key in [egui::Key::O, egui::Key::K] {
        h.key_press_modifiers(egui::Modifiers::COMMAND, key);
        h.run_steps(6);
        h.key_press(egui::Key::Escape);
        h.run_steps(3);
    }
}
