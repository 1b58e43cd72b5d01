//! Changing a scenario: entries, lists, drags, their limits and their undo.

use super::{choose, cost, demo, enter, headline, menu, settle};
use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use warmfold::gui::{self, State};

#[test]
fn a_copy_can_be_changed_and_every_figure_follows() {
    let mut h = demo();
    let tent = h.state().document.draft.study.scenarios.iter().position(|s| s.tent.present).unwrap();
    choose(&mut h, tent);
    let with_tent = cost(&h);
    menu(&mut h, "Edit", "Duplicate scenario");
    assert_eq!(h.state().document.draft.selected(), tent + 1);
    assert_eq!(cost(&h), with_tent);

    let said_before = headline(&h);
    h.get_by_role_and_label(Role::CheckBox, "Inner tent").click();
    settle(&mut h);
    assert!(!h.state().document.draft.scenario().unwrap().tent.present);
    let without = cost(&h);
    assert!(with_tent < without, "the tent saves: {with_tent} against {without}");
    assert_ne!(headline(&h), said_before);

    h.get_by_role_and_label(Role::Button, "Edit").click();
    h.run_steps(3);
    h.get_by_label("Undo tent inner tent").click();
    settle(&mut h);
    assert_eq!(cost(&h), with_tent);
    assert!(h.state().document.draft.scenario().unwrap().tent.present);
}

#[test]
fn fuel_and_setpoint_reach_cost_and_undo_names() {
    let mut h = demo();
    choose(&mut h, 0);
    let electric = cost(&h);
    h.get_by_role_and_label(Role::ComboBox, "Fuel").click();
    h.run_steps(4);
    h.get_by_role_and_label(Role::Button, "Propane").click();
    settle(&mut h);
    assert_eq!(h.state().document.draft.scenario().unwrap().heater.fuel, "propane");
    let gas = cost(&h);
    assert_ne!(gas, electric);
    assert_eq!(h.state().document.history.undo_name(), Some("heater fuel"));

    enter(&mut h, "Night setpoint", "5");
    assert_eq!(h.state().document.draft.scenario().unwrap().heater.setpoint_night_c, Some(5.0));
    assert!(cost(&h) < gas, "a lower setpoint costs less");
    assert_eq!(h.state().document.history.undo_name(), Some("heater night setpoint"));
}

/// Undo would be blind where the section of the field is folded.
#[test]
fn an_undone_change_comes_into_sight() {
    let mut h = demo();
    h.get_by_label("Section Vents").click();
    settle(&mut h);
    enter(&mut h, "Starts to open", "31");
    h.get_by_label("Section Vents").click();
    settle(&mut h);
    assert!(h.query_by_role_and_label(Role::SpinButton, "Starts to open").is_none(), "folded");
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::Z);
    settle(&mut h);
    let field = h.get_by_role_and_label(Role::SpinButton, "Starts to open");
    assert!(field.rect().top() < 2400.0, "in the window");
}

#[test]
fn a_drag_is_followed_and_is_one_step() {
    let mut h = demo();
    choose(&mut h, 0);
    let (study, before) = (h.state().document.draft.study.clone(), cost(&h));
    let from = h.get_by_role_and_label(Role::SpinButton, "Night setpoint").rect().center();
    h.hover_at(from);
    h.drag_at(from);
    h.step();
    let mut seen = vec![before];
    for stop in 1..=4 {
        h.hover_at(from - egui::vec2(12.0 * stop as f32, 0.0));
        settle(&mut h);
        seen.push(cost(&h));
    }
    h.drop_at(from - egui::vec2(48.0, 0.0));
    settle(&mut h);
    assert!(seen.windows(2).all(|pair| pair[1] < pair[0]), "the cost follows the drag down: {seen:?}");
    assert_eq!(h.state().document.history.undo_name(), Some("heater night setpoint"));
    h.get_by_role_and_label(Role::Button, "Edit").click();
    h.run_steps(3);
    h.get_by_label("Undo heater night setpoint").click();
    settle(&mut h);
    assert_eq!(h.state().document.draft.study, study);
}

#[test]
fn a_value_out_of_range_is_marked_and_the_last_figures_stay() {
    let mut h = demo();
    choose(&mut h, 0);
    let money = cost(&h);
    enter(&mut h, "Width", "500");
    assert!(h.state().blocked(0));
    assert!(h.query_all_by_label_contains("500").next().is_some());
    let (season, standing) = h.state().chosen_season().unwrap();
    assert_eq!(standing, gui::board::Standing::Stale);
    assert_eq!(season.run.summary.cost, Some(money));
}

#[test]
fn a_sheet_of_ones_own_can_be_typed_and_chosen() {
    let mut h = demo();
    choose(&mut h, 0);
    let with_film = cost(&h);
    h.get_by_label("Section Own materials").click();
    h.run_steps(20);
    h.get_by_label("Add a sheet of your own").click();
    settle(&mut h);
    let own = |h: &Harness<'static, State>| h.state().document.draft.study.own.sheets[0].clone();
    assert_eq!((own(&h).key.as_str(), own(&h).name.as_str()), ("own-sheet-1", "Own sheet"));
    // Without an origin the study says so.
    assert!(h.state().troubles.iter().any(|p| p.path == "own.sheets[0].source"));
    let film_u = own(&h).u_as_skin_w_per_m2k;
    enter(&mut h, "U as outer skin", "3.0");
    assert!((own(&h).u_as_skin_w_per_m2k - 3.0).abs() < 1e-9 && film_u > 3.0);
    h.state_mut().document.draft.study.own.sheets[0].source = "maker's data sheet".to_owned();
    h.state_mut().document.draft.study.scenarios[0].covering.sheets = vec!["own-sheet-1".to_owned()];
    choose(&mut h, 0);
    assert!(cost(&h) < 0.8 * with_film, "half the loss through the skin: {} of {with_film}", cost(&h));
    // A sheet in use stays.
    let away = h.get_by_label("Take it away");
    assert!(away.accesskit_node().is_disabled());
}

#[test]
fn a_crop_of_the_catalogue_brings_its_limits_and_sowing_days() {
    let mut h = demo();
    choose(&mut h, 0);
    h.get_by_label("Section Crop & bench").click();
    h.run_steps(20);
    assert!(h.query_by_label_contains("whole trays").is_some());
    h.state_mut().document.draft.study.scenarios[0].crop.kind = "tomato".to_owned();
    h.state_mut().document.draft.study.scenarios[0].crop.planting_out = Some((5, 15));
    choose(&mut h, 0);
    assert!(h.query_by_label_contains("Sow ").is_some(), "tomato has known weeks");
    // What one degree less and two weeks later would save stands beside the fields.
    assert!(h.query_by_label_contains("1.0 K less: −\u{2060}$").is_some());
    h.get_by_label("Section Season").click();
    h.run_steps(20);
    assert!(h.query_by_label_contains("Two weeks later: −\u{2060}$").is_some());
}

#[test]
fn entries_take_units_and_refuse_sums_beside_the_field() {
    let mut h = demo();
    let length = |h: &Harness<'static, State>| h.state().document.draft.scenario().unwrap().house.length_m;
    // The first field of that name is the house's; the tent is folded away in the first scenario.
    enter(&mut h, "Length", "20 ft 6");
    assert!((length(&h) - 20.5 * 0.3048).abs() < 1e-9, "{}", length(&h));
    let (kept, steps) = (length(&h), h.state().document.history.undo_name().map(str::to_owned));
    enter(&mut h, "Length", "2*3");
    assert_eq!(length(&h), kept);
    assert_eq!(h.state().document.history.undo_name().map(str::to_owned), steps, "a refused entry is no step");
    h.get_by_label("“2*3” is a sum to work out; type its result, like 1.98 m or 6 ft 6");
    enter(&mut h, "Length", "6,5 m");
    assert_eq!(length(&h), 6.5);
    assert!(h.query_by_label_contains("is a sum to work out").is_none());
    enter(&mut h, "Night setpoint", "45 F");
    let night = h.state().document.draft.scenario().unwrap().heater.setpoint_night_c.unwrap();
    assert!((night - 13.0 / 1.8).abs() < 1e-9, "{night}");
}

#[test]
fn a_missing_price_is_typed_beside_the_fuel() {
    let mut h = demo();
    h.state_mut().document.draft.study.prices.fuels.clear();
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::ComboBox, "Fuel").click();
    h.run_steps(4);
    h.get_by_role_and_label(Role::Button, "Propane").click();
    settle(&mut h);
    assert_eq!(h.state().chosen_season().unwrap().0.run.summary.cost, None);
    enter(&mut h, "Fuel price", "2.5");
    let price = h.state().document.draft.study.prices.fuels[0].clone();
    assert_eq!((price.fuel.as_str(), price.price_per_unit), ("propane", 2.5));
    assert!((cost(&h) - 2.5 * h.state().chosen_season().unwrap().0.run.summary.fuel_quantity).abs() < 0.01);
    assert_eq!(h.state().document.history.undo_name(), Some("heater fuel price"));
}
