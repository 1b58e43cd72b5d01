//! The views and what can be done in them.

use super::{choose, demo, enter, menu, settle};
use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use warmfold::gui::State;
use warmfold::storage;

#[test]
fn every_view_and_leaflet_can_be_shown_in_both_units() {
    let mut h = demo();
    for units in ["°F · ft", "°C · m"] {
        h.get_by_label(units).click();
        settle(&mut h);
        for view in ["Coldest nights", "Air & damp", "Winter"] {
            h.get_by_role_and_label(Role::Tab, view).click();
            settle(&mut h);
        }
    }
    for section in ["Covering", "Water store", "Crop & bench", "Vents", "Site & weather", "Season", "Prices"] {
        h.get_by_label(&format!("Section {section}")).click();
        settle(&mut h);
    }
    for leaflet in ["Guide", "About Warmfold", "Cautions", "Keyboard"] {
        menu(&mut h, "Help", leaflet);
        h.get_by_label("Close").click();
        settle(&mut h);
        assert!(h.state().leaflet.is_none(), "{leaflet} closes");
    }
}

#[test]
fn scenarios_stand_side_by_side_with_a_price_and_its_payback() {
    let mut h = demo();
    h.get_by_role_and_label(Role::Tab, "Side by side").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("Running cost of a winter:").is_some());
    assert!(h.query_by_label_contains("Simple payback:").is_some());
    // The tent costs something: the table puts its payback into words.
    let tent = h.state().document.draft.study.scenarios.iter().position(|s| s.tent.present).unwrap();
    h.state_mut().document.draft.study.scenarios.iter_mut().for_each(|s| s.costs.clear());
    choose(&mut h, tent);
    h.get_by_label("Section Buying costs").click();
    h.run_steps(20);
    h.get_by_label("Add something to buy").click();
    settle(&mut h);
    h.state_mut().document.draft.study.scenarios[tent].costs[0].measure = warmfold::model::Measure::Tent;
    choose(&mut h, tent);
    enter(&mut h, "Price", "12");
    let line = h.state().document.draft.study.scenarios[tent].costs[0].clone();
    assert!((line.price - 12.0).abs() < 1e-9);
    assert!(h.query_by_label_contains("in the first winter").is_some());
    // Where the saving comes from: the last line is the scenario's own heat.
    assert!(h.query_by_label_contains("The scenario ").is_some(), "the steps did not come");
    assert!(h.query_by_label_contains("Inner tent −").is_some(), "the tent's bar is a saving");
    // A hidden row goes and comes back.
    h.state_mut().prefs.table.hidden.push("heat".to_owned());
    settle(&mut h);
    assert!(h.query_by_label_contains("Heat delivered:").is_none());
    h.get_by_label("Show 1 hidden").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("Heat delivered:").is_some());
}

#[test]
fn a_click_in_the_legend_hides_a_scenario_as_its_card_does() {
    let mut h = demo();
    let name = h.state().document.draft.study.scenarios[0].name.clone();
    let entry = format!("{name} in plots");
    h.get_by_role_and_label(Role::CheckBox, &entry).click();
    settle(&mut h);
    assert!(!h.state().document.draft.study.scenarios[0].shown);
    assert_eq!(h.state().document.history.undo_name(), Some("hide scenario"));
    menu(&mut h, "Edit", "Undo hide scenario");
    assert!(h.state().document.draft.study.scenarios[0].shown);
    // With all of them hidden the legend still brings one back.
    for index in 0..h.state().document.draft.study.scenarios.len() {
        h.state_mut().document.draft.study.scenarios[index].shown = false;
    }
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::CheckBox, &entry).click();
    settle(&mut h);
    assert!(h.state().document.draft.study.scenarios[0].shown);
}

#[test]
fn the_coldest_spell_plays_and_a_part_of_the_drawing_opens_its_section() {
    let mut h = demo();
    let rest = h.state().hour;
    h.get_by_role_and_label(Role::Button, "Play the coldest spell").click();
    h.run_steps(4);
    let begun = h.state().hour.unwrap();
    assert!(begun < rest.unwrap(), "it begins before the coldest hour");
    // Six hours pass in a second; sixty steps make one.
    h.run_steps(60);
    let passed = h.state().hour.unwrap() - begun;
    assert!((5..=7).contains(&passed), "{passed} hours in a second");
    h.get_by_role_and_label(Role::Button, "Stop playing").click();
    h.run_steps(3);
    let stopped = h.state().hour;
    h.run_steps(60);
    assert_eq!(h.state().hour, stopped);

    let field = |h: &Harness<'static, State>| h.query_by_role_and_label(Role::SpinButton, "Starts to open").is_some();
    assert!(!field(&h), "the section of the vents is folded at first");
    let drawing = h.query_all_by_role(Role::Image).next().unwrap();
    let label = drawing.accesskit_node().label().unwrap();
    assert!(label.contains("Outdoors: Air −") && label.contains("Heater: Gives"), "{label}");
    // The flap of the tunnel's roof is hinged at the crown, in the middle of the picture.
    let (x, top) = (drawing.rect().center().x + 3.0, drawing.rect().top());
    let on_the_flap = (5..150).map(|y| egui::pos2(x, top + 2.0 * y as f32)).find(|at| {
        h.hover_at(*at);
        h.run_steps(1);
        h.drag_at(*at);
        h.drop_at(*at);
        h.run_steps(4);
        field(&h)
    });
    let on_the_flap = on_the_flap.expect("a click on the flap opens its section");
    for at in [on_the_flap + egui::vec2(0.0, 400.0), on_the_flap] {
        h.hover_at(at);
        h.run_steps(60);
    }
    h.get_by_label("Click to edit: Vents");
}

#[test]
fn checks_say_stop_and_lead_to_where_they_are_mended() {
    let mut h = demo();
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/checks/fails.ron");
    let study = storage::read_bytes(&storage::read_file(&path).unwrap()).unwrap();
    h.state_mut().open(study, None);
    settle(&mut h);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::Num5);
    settle(&mut h);
    let stops = |h: &Harness<'static, State>| {
        let (checks, _) = h.state().chosen_checks().unwrap();
        warmfold::checks::count(&checks, warmfold::checks::Grade::Stop)
    };
    let before = stops(&h);
    assert!(before > 5);
    h.get_by_role_and_label(Role::Tab, &format!("Checks · {before}"));
    h.get_by_label("Stop: Load on the circuit");
    h.get_by_label("Look: Snow on film");

    // The button opens the section, and an answer there takes two stops away: those of circuit and plug.
    assert!(h.query_by_role_and_label(Role::ComboBox, "Circuit").is_none());
    h.get_by_label("Open Site & weather for Load on the circuit").click();
    settle(&mut h);
    h.get_by_role_and_label(Role::ComboBox, "Circuit").click();
    h.run_steps(4);
    h.get_by_role_and_label(Role::Button, "230 V, 32 A").click();
    settle(&mut h);
    assert_eq!(stops(&h), before - 2);
    h.get_by_label("Fine: Load on the circuit");
    assert_eq!(h.state().document.history.undo_name(), Some("site circuit"));
}

#[test]
fn the_steps_of_the_saving_can_be_stopped_and_taken_up_again() {
    let mut h = demo();
    h.state_mut().document.draft.selected = 1;
    h.state_mut().document.revision += 1;
    h.get_by_role_and_label(Role::Tab, "Side by side").click();
    h.run_steps(2);
    while h.query_by_label("Cancel").is_none() {
        h.step();
    }
    h.get_by_label("Cancel").click();
    h.run_steps(3);
    assert!(!h.state().insights.working());
    assert!(h.query_by_label("Stopped before it was known").is_some());
    h.get_by_label("Work it out").click();
    h.run_steps(3);
    settle(&mut h);
    assert!(h.query_by_label("Stopped before it was known").is_none());
}
