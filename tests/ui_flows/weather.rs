//! Where the weather comes from.

use super::{cost, demo, enter, menu, pick, settle};
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use warmfold::gui;
use warmfold::model::WeatherChoice;

#[test]
fn an_imported_weather_file_travels_with_the_study() {
    let (home, away) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let year = warmfold::weather::bundled::load("aachen-2021").unwrap();
    let (head, rows) = super::epw_lines::epw_lines(&year);
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

/// A pipe is a file that takes as long as one likes.
#[cfg(unix)]
#[test]
fn reading_a_file_can_be_cancelled_and_the_study_edited_meanwhile() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("years.csv");
    assert!(std::process::Command::new("mkfifo").arg(&file).status().unwrap().success());
    let mut h = demo();
    let (ctx, weather) = (h.ctx.clone(), h.state().document.draft.study.site.weather.clone());
    h.state_mut().take_path(gui::Ask::Weather, file.clone(), &ctx);
    h.run_steps(3);
    h.get_by_label_contains("Reading years.csv");
    h.get_by_role_and_label(Role::SpinButton, "Ridge height").click();
    h.run_steps(3);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::A);
    h.event(egui::Event::Text("2.3".to_owned()));
    h.key_press(egui::Key::Enter);
    h.run_steps(3);
    assert!(h.state().import.is_some(), "it is still being read");
    h.get_by_label("Cancel").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("Reading years.csv").is_none());
    let study = &h.state().document.draft.study;
    assert_eq!((study.scenarios[0].house.ridge_height_m, &study.site.weather), (2.3, &weather));
    // The thread that waits for the pipe may end.
    std::fs::OpenOptions::new().write(true).open(&file).unwrap();
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
