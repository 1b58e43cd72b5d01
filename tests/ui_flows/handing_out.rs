//! What the window writes: the report, pictures and figures of plots.

use super::{choose, cost, demo, menu, settle};
use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use std::time::{Duration, Instant};
use warmfold::gui::State;

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
