//! The window by its labels, as a person or a screen reader uses it; no display is needed.

#[path = "common/epw_lines.rs"]
mod epw_lines;

use egui::accesskit::Role;
use egui_kittest::{
    Harness,
    kittest::{NodeT, Queryable},
};
use std::time::{Duration, Instant};
use warmfold::gui::prefs::Prefs;
use warmfold::gui::{self, State, window_ui};
use warmfold::model::WeatherChoice;
use warmfold::storage;
use warmfold::units::UnitSystem;

/// The window on the demo, every result drawn, with the in-app path dialog only.
fn demo() -> Harness<'static, State> {
    let ctx = egui::Context::default();
    let mut state = State::new(&ctx, storage::demo().unwrap(), None, Prefs::default());
    state.filing.in_app_only = true;
    let builder = Harness::builder()
        .with_size([1280.0, 2400.0])
        .with_theme(egui::Theme::Light)
        .with_max_steps(64)
        .with_step_dt(1.0 / 60.0);
    // Fonts hold from the second frame on.
    let mut dressed = false;
    let ui = move |ui: &mut egui::Ui, state: &mut State| {
        if dressed {
            window_ui(ui, state)
        } else {
            gui::dress(ui.ctx())
        }
        dressed = true;
    };
    let mut h = builder.build_ui_state(ui, state);
    settle(&mut h);
    h
}

/// Steps until the worker is idle and nothing moves.
fn settle(h: &mut Harness<'static, State>) {
    let start = Instant::now();
    h.run_steps(4);
    while h.state().import.is_some()
        || h.state().board.working()
        || h.state().insights.working()
        || h.state().air.working()
        || h.state().nights.working()
    {
        assert!(start.elapsed() < Duration::from_secs(60), "the results did not come");
        std::thread::sleep(Duration::from_millis(5));
        h.step();
    }
    h.run_steps(4);
}

fn menu(h: &mut Harness<'static, State>, menu: &str, entry: &str) {
    h.get_by_role_and_label(Role::Button, menu).click();
    h.run_steps(3);
    h.get_by_label(entry).click();
    settle(h);
}

/// Types into a number field.
fn enter(h: &mut Harness<'static, State>, field: &str, text: &str) {
    h.get_by_role_and_label(Role::SpinButton, field).click();
    h.run_steps(3);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::A);
    h.event(egui::Event::Text(text.to_owned()));
    h.key_press(egui::Key::Enter);
    settle(h);
}

/// Cost of the chosen scenario, from its result on show.
fn cost(h: &Harness<'static, State>) -> f64 {
    let (season, standing) = h.state().chosen_season().unwrap();
    assert_eq!(standing, gui::board::Standing::Fresh);
    season.run.summary.cost.unwrap()
}

/// The headline's cost as it is read out.
fn headline(h: &Harness<'static, State>) -> String {
    let said = |n: &egui_kittest::Node<'_>| n.accesskit_node().value().filter(|v| v.starts_with("Winter cost"));
    h.get_all_by_role(Role::Label).find_map(|n| said(&n)).unwrap()
}

fn choose(h: &mut Harness<'static, State>, place: usize) {
    h.state_mut().document.draft.selected = place;
    h.state_mut().document.revision += 1;
    settle(h);
}

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
fn air_and_damp_follows_the_allowed_rise_and_names_what_would_help() {
    let mut h = demo();
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::Tab, "Air & damp").click();
    settle(&mut h);
    let needed = |h: &Harness<'static, State>| {
        h.state().chosen_season().unwrap().0.run.summary.air_advice.unwrap().flow_needed_m3_per_h
    };
    let said = |h: &Harness<'static, State>, start: &str| h.query_all_by_label_contains(start).next().is_some();
    let of_eight = needed(&h);
    assert!(said(&h, &format!("Fan or vents move {} m³/h", warmfold::format::number(of_eight, 0))));
    assert!(said(&h, "Hours by month. Season: House above 35 °C 0 hours"));
    // A rise half as large asks for more than twice the air: the skin carries less, too.
    enter(&mut h, "Allowed rise", "4");
    assert!(needed(&h) > 2.0 * of_eight, "{} and {of_eight}", needed(&h));
    assert_eq!(h.state().document.history.undo_name(), Some("vents allowed rise"));
    // What other air would change has come: an hour of airing costs money and dries the skin.
    let airing = h.state().air.last().unwrap().1.morning_airing;
    let money = warmfold::format::money_difference(airing.cost.unwrap(), "$");
    assert!(airing.cost.unwrap() > 0.0 && airing.hours_skin_wet < 0, "{airing:?}");
    assert!(said(&h, &format!("Winter {money}")) && said(&h, &format!("Skin wet −{} h", -airing.hours_skin_wet)));
    // An unvented flame is offered a flue.
    assert!(!said(&h, "Water from flames 1") && h.state().air.last().unwrap().1.flue.is_none());
    h.state_mut().document.draft.study.scenarios[0].heater = warmfold::model::Heater {
        fuel: "kerosene".to_owned(),
        ..h.state().document.draft.study.scenarios[0].heater.clone()
    };
    choose(&mut h, 0);
    let flue = h.state().air.last().unwrap().1.flue.expect("a flame without a flue");
    assert!(flue.hours_skin_wet < 0 && flue.hours_crop_humidity_90 <= 0);
    // The hint of the trade's range comes and goes with the openers' start.
    assert!(!said(&h, "wax openers are made for"));
    h.state_mut().document.draft.study.scenarios[0].vents.opens_at_c = 12.0;
    choose(&mut h, 0);
    assert!(said(&h, "Openers begin at 12.0 °C; wax openers are made for 15 °C to 24 °C"));
    // A click on the days moves the time cursor into them.
    h.get_by_role_and_label(Role::RadioButton, "Sunniest mild day").click();
    settle(&mut h);
    let plot = h.query_all_by_label_contains("three days hour by hour").next().unwrap().rect();
    h.hover_at(plot.center());
    h.drag_at(plot.center());
    h.step();
    h.drop_at(plot.center());
    settle(&mut h);
    let (season, _) = h.state().chosen_season().unwrap();
    let sunny = season.run.summary.air_advice.unwrap().hour;
    assert!(h.state().hour.unwrap().abs_diff(sunny) <= 36, "{:?} {sunny}", h.state().hour);
}

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
fn an_imported_weather_file_travels_with_the_study() {
    let (home, away) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let year = warmfold::weather::bundled::load("aachen-2021").unwrap();
    let (head, rows) = epw_lines::epw_lines(&year);
    let text = [head, rows].concat().join("\n") + "\n";
    let file = home.path().join("garden.epw");
    std::fs::write(&file, &text).unwrap();
    let mut h = demo();
    let ctx = h.ctx.clone();
    h.state_mut().take_path(gui::Ask::Weather, file.clone(), &ctx);
    settle(&mut h);
    let figures = cost(&h);
    h.state_mut().take_path(gui::Ask::Save, away.path().join("study.ron"), &ctx);
    settle(&mut h);
    std::fs::remove_file(&file).unwrap();
    let mut again = demo();
    again.state_mut().open_file(&away.path().join("study.ron"), &ctx);
    settle(&mut again);
    assert_eq!(cost(&again), figures, "the weather lies beside the study");
    // Another file of that name is noticed, with what to do.
    std::fs::write(away.path().join("garden.epw"), text.replacen(",5.0,", ",5.1,", 1) + "\n").unwrap();
    let mut third = demo();
    third.state_mut().open_file(&away.path().join("study.ron"), &ctx);
    settle(&mut third);
    let state = third.state();
    let reason = state.board.failure(state.document.draft.tags[0].id).expect("it is not run on other weather");
    assert!(reason.contains("not the one that this study was made with"), "{reason}");
}

#[test]
fn the_report_is_written_beside_the_window() {
    let folder = tempfile::tempdir().unwrap();
    let mut h = demo();
    menu(&mut h, "File", "Export report…");
    let path = folder.path().join("winter.html");
    h.state_mut().filing.dialog.as_mut().unwrap().text = path.display().to_string();
    h.run_steps(2);
    h.get_by_role_and_label(Role::Button, "Write").click();
    h.run_steps(2);
    let start = Instant::now();
    while h.state().export.is_some() {
        assert!(start.elapsed() < Duration::from_secs(60), "the report did not come");
        std::thread::sleep(Duration::from_millis(10));
        h.step();
    }
    assert_eq!(h.state().filing.error, None);
    let page = std::fs::read_to_string(&path).unwrap();
    assert!(page.contains("Whole tunnel, electricity") && page.trim_end().ends_with("</html>"));
}

/// Waits until what is being written is written.
fn written(h: &mut Harness<'static, State>) {
    let start = Instant::now();
    h.run_steps(2);
    while h.state().export.is_some() {
        assert!(start.elapsed() < Duration::from_secs(60), "the file did not come");
        std::thread::sleep(Duration::from_millis(10));
        h.step();
    }
    assert_eq!(h.state().filing.error, None);
}

/// Saves the figures of a plot by its button, and reads them.
fn figures(h: &mut Harness<'static, State>, plot: &str) -> Vec<Vec<String>> {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("plot.csv");
    h.get_by_role_and_label(Role::Button, &format!("Save or copy {plot}")).click();
    h.run_steps(3);
    h.get_by_label("Save figures as CSV…").click();
    h.run_steps(3);
    let dialog = h.state_mut().filing.dialog.as_mut().unwrap();
    assert!(dialog.text.ends_with(".csv"), "{}", dialog.text);
    dialog.text = path.display().to_string();
    h.run_steps(2);
    h.get_by_role_and_label(Role::Button, "Write").click();
    written(h);
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_path(&path).unwrap();
    reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect()
}

#[test]
fn every_plot_hands_out_its_figures_in_the_units_on_screen() {
    let mut h = demo();
    let tent = h.state().document.draft.study.scenarios.iter().position(|s| s.tent.present).unwrap();
    choose(&mut h, tent);
    let name = h.state().document.draft.scenario().unwrap().name.clone();
    let running = figures(&mut h, "running cost");
    let column = running[0].iter().position(|title| *title == format!("{name}, $")).unwrap();
    let last: f64 = running.last().unwrap()[column].parse().unwrap();
    assert!((last - cost(&h)).abs() < 0.001, "the last hour has the winter's cost: {last}");
    let months = figures(&mut h, "heat by month");
    let heat = h.state().chosen_season().unwrap().0.run.summary.heat_delivered_kwh;
    let column = months[0].iter().position(|title| *title == format!("{name}, kWh")).unwrap();
    let sum: f64 = months[1..].iter().map(|row| row[column].parse::<f64>().unwrap()).sum();
    assert!((sum - heat).abs() < 0.36, "seven months rounded to a tenth: {sum} of {heat}");
    h.get_by_label("°F · ft").click();
    settle(&mut h);
    assert!(figures(&mut h, "heat by month")[0].contains(&"degree-hours, °F·h".to_owned()));
    h.get_by_role_and_label(Role::Tab, "Coldest nights").click();
    settle(&mut h);
    let nights = figures(&mut h, "coldest spell");
    let outdoors = nights[0].iter().position(|title| title == "outdoors, °F").unwrap();
    let coldest = nights[1..].iter().map(|row| row[outdoors].parse::<f64>().unwrap()).fold(f64::INFINITY, f64::min);
    let said = h.state().chosen_season().unwrap().0.run.summary.coldest_outdoor_c * 1.8 + 32.0;
    assert!((coldest - said).abs() < 0.006, "{coldest} of {said}");
    h.get_by_role_and_label(Role::Tab, "Side by side").click();
    settle(&mut h);
    let steps = figures(&mut h, "steps of the saving");
    assert!((steps.last().unwrap()[2].parse::<f64>().unwrap() - heat).abs() < 0.051);
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
fn a_power_cut_is_chosen_by_date_and_length() {
    let mut h = demo();
    let tent = h.state().document.draft.study.scenarios.iter().position(|s| s.tent.present).unwrap();
    choose(&mut h, tent);
    h.get_by_role_and_label(Role::Tab, "Coldest nights").click();
    settle(&mut h);
    let figures = cost(&h);
    h.get_by_role_and_label(Role::Button, "Power cut").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("Without mains the crop").is_some());
    // As described, without water, without the tent: a column each.
    assert!(h.query_by_label_contains("Columns: As described, Without water, Without inner tent").is_some());
    let caught_up = |h: &Harness<'static, State>| h.get_by_label_contains("caught up in").accesskit_node().value();
    let before = caught_up(&h);
    enter(&mut h, "Hours without mains", "48");
    assert_eq!(h.state().document.draft.study.hard_night.cut_hours, 48);
    assert!(h.query_by_label_contains("lowest air ").is_some());
    assert_ne!(caught_up(&h), before);
    enter(&mut h, "Power cut from", "24 Dec 17:00");
    let at = warmfold::model::CutStarts::At { month: 12, day: 24, hour: 17 };
    assert_eq!(h.state().document.draft.study.hard_night.cut_starts, at);
    assert_eq!(h.state().document.history.undo_name(), Some("power cut start"));
    // Nonsense is not taken.
    enter(&mut h, "Power cut from", "soon");
    assert_eq!(h.state().document.draft.study.hard_night.cut_starts, at);
    h.get_by_label("Back to the coldest twelve hours").click();
    settle(&mut h);
    assert_eq!(h.state().document.draft.study.hard_night.cut_starts, warmfold::model::CutStarts::Coldest);
    h.get_by_role_and_label(Role::Button, "Trays").click();
    settle(&mut h);
    assert!(h.state().coldest.trays);
    // What is asked about hard nights moves no season.
    assert_eq!(cost(&h), figures);
}

#[test]
fn a_colder_spell_is_answered_beside_the_loads() {
    let mut h = demo();
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::Tab, "Coldest nights").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("and would down to").is_some());
    assert!(h.query_by_label_contains("Margin at 99.6 % +").is_some());
    assert!(h.query_by_label_contains("Next size").is_some());
    assert!(h.query_by_label_contains("Floors hold").is_some());
    enter(&mut h, "Colder by", "20");
    assert!((h.state().document.draft.study.hard_night.colder_by_k - 20.0).abs() < 1e-9);
    assert!(h.query_by_label_contains("falls short, lowest").is_some());
    assert_eq!(h.state().document.history.undo_name(), Some("colder by"));
    // In °F the same cold is another number.
    h.get_by_label("°F · ft").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("36.0 °F colder").is_some());
}

#[test]
fn many_winters_come_in_and_can_be_stopped() {
    let mut h = demo();
    h.state_mut().document.draft.study.many_winters.count = 1000;
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::Tab, "Many winters").click();
    h.run_steps(3);
    h.get_by_role_and_label(Role::Button, "Stop").click();
    h.run_steps(3);
    assert!(!h.state().outlook.working());
    h.get_by_label("Stopped");
    enter(&mut h, "Winters", "20");
    let start = Instant::now();
    while h.state().outlook.working() || h.query_by_label_contains("20 winters").is_none() {
        assert!(start.elapsed() < Duration::from_secs(120), "the winters did not come");
        std::thread::sleep(Duration::from_millis(5));
        h.step();
    }
    assert_eq!(h.state().document.draft.study.many_winters.count, 20);
    h.get_by_label_contains("One winter in ten costs more than");
    assert_eq!(h.get_all_by_label_contains("Half below").count(), 4, "one of each scenario");
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

/// Chooses from a list by its label.
fn pick(h: &mut Harness<'static, State>, list: &str, entry: &str) {
    h.get_by_role_and_label(Role::ComboBox, list).click();
    h.run_steps(4);
    h.get_by_role_and_label(Role::Button, entry).click();
    settle(h);
}

#[test]
fn monthly_means_are_pasted_and_taken_colder() {
    let mut h = demo();
    h.get_by_label("Section Site & weather").click();
    settle(&mut h);
    let before = cost(&h);
    pick(&mut h, "Weather", "Monthly means");
    assert!(h.query_all_by_label_contains("Is needed, since it decides the sun").count() == 2, "both are asked for");
    h.get_by_role_and_label(Role::CheckBox, "Latitude").click();
    settle(&mut h);
    h.get_by_role_and_label(Role::CheckBox, "Longitude").click();
    settle(&mut h);
    enter(&mut h, "Latitude", "52.5");
    enter(&mut h, "Minimum of Jan", "20");
    assert!(h.query_by_label_contains("not above the minimum").is_some(), "said beside the month");
    h.get_by_label("Paste twelve rows…").click();
    h.run_steps(3);
    let field = h.get_by_label("Twelve rows");
    field.click();
    h.run_steps(3);
    h.event(egui::Event::Paste("1 7\n1 8".to_owned()));
    h.run_steps(3);
    assert!(h.query_by_label_contains("2 rows with numbers were found").is_some());
    h.event(egui::Event::Paste("\n3 10\n4 13\n7 17\n10 20\n12 22\n12 21\n10 18\n7 14\n4 10\n2 7".to_owned()));
    h.run_steps(3);
    h.get_by_label("Take these rows").click();
    settle(&mut h);
    let WeatherChoice::Normals(table) = &h.state().document.draft.study.site.weather else { panic!("a table") };
    assert_eq!((table.months[0].min_c, table.months[11].max_c), (1.0, 7.0));
    assert!(h.query_by_label_contains("the built-in station with the most similar winter").is_some());
    let made = cost(&h);
    assert!(made < before, "England is milder than the demo's town: {made} against {before}");
    enter(&mut h, "Colder all year by", "3");
    assert!(made < cost(&h), "colder costs more");
    let undo = format!("Undo {}", h.state().document.history.undo_name().unwrap());
    menu(&mut h, "Edit", &undo);
    assert_eq!(cost(&h), made);
}

#[test]
fn a_thermometers_log_is_opened_by_the_sea_or_inland() {
    let log = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/measured/seattle_daily_2012_2015.csv");
    let mut h = demo();
    {
        let site = &mut h.state_mut().document.draft.study.site;
        (site.latitude_deg, site.longitude_deg) = (Some(47.6), Some(-122.3));
    }
    h.get_by_label("Section Site & weather").click();
    settle(&mut h);
    pick(&mut h, "Weather", "Thermometer log");
    h.get_by_label("No log chosen yet");
    let ctx = h.ctx.clone();
    h.state_mut().take_path(gui::Ask::Weather, log, &ctx);
    settle(&mut h);
    assert!(h.query_by_label_contains("2014/2015").is_some(), "which winter was taken is said");
    let inland = cost(&h);
    h.get_by_role_and_label(Role::CheckBox, "By the sea").click();
    settle(&mut h);
    assert!(cost(&h) < inland, "more sun is reckoned from the same swing by the sea");
}
