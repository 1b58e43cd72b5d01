//! The window on a study, without a display.

#[path = "drawn.rs"]
mod drawn;

pub use drawn::Window;
use drawn::drawn_by;
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use std::time::{Duration, Instant};
use warmfold::gui::window_ui;
use warmfold::model::Study;

/// The window on a study, its seasons drawn.
pub fn window_on(study: Study) -> Window {
    let mut h = drawn_by([1280.0, 2400.0], study, window_ui);
    h.run_steps(4);
    until(&mut h, "the seasons", |h| !h.state().board.working());
    h
}

/// Steps until something holds.
pub fn until(h: &mut Window, what: &str, holds: impl Fn(&Window) -> bool) {
    let start = Instant::now();
    while !holds(h) {
        assert!(start.elapsed() < Duration::from_secs(120), "{what} did not come");
        std::thread::sleep(Duration::from_millis(5));
        h.step();
    }
    h.run_steps(4);
}

/// Goes to a view by its tab.
pub fn view(h: &mut Window, name: &str) {
    h.get_by_role_and_label(Role::Tab, name).click();
    h.run_steps(3);
}

/// Presses a button by its label.
pub fn press(h: &mut Window, name: &str) {
    h.get_by_role_and_label(Role::Button, name).click();
    h.run_steps(3);
}

/// Types into a number field.
pub fn enter(h: &mut Window, field: &str, text: &str) {
    h.get_by_role_and_label(Role::SpinButton, field).click();
    h.run_steps(3);
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::A);
    h.event(egui::Event::Text(text.to_owned()));
    h.key_press(egui::Key::Enter);
    h.run_steps(4);
}

/// Saves the figures of a plot by its button, and reads them.
pub fn figures(h: &mut Window, plot: &str) -> Vec<Vec<String>> {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("plot.csv");
    press(h, &format!("Save or copy {plot}"));
    h.get_by_label("Save figures as CSV…").click();
    h.run_steps(3);
    h.state_mut().filing.dialog.as_mut().expect("the dialog").text = path.display().to_string();
    h.run_steps(2);
    press(h, "Write");
    until(h, "the file", |h| h.state().export.is_none());
    assert_eq!(h.state().filing.error, None);
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_path(&path).expect("a file");
    reader.records().map(|row| row.expect("a row").iter().map(str::to_owned).collect()).collect()
}
