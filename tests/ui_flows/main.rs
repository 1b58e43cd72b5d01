//! The window by its labels, as a person or a screen reader uses it; no display is needed.

mod editing;
#[path = "../common/epw_lines.rs"]
mod epw_lines;
mod everywhere;
mod explaining;
mod files;
mod handing_out;
mod keyboard;
mod views;
mod weather;
mod what_if;
#[path = "../common/settled.rs"]
mod window;

use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use warmfold::gui::{self, State, window_ui};
use window::settle;

/// The window on the demo, every result drawn.
fn demo() -> Harness<'static, State> {
    window::drawn_by([1280.0, 2400.0], window_ui)
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

/// Chooses from a list by its label.
fn pick(h: &mut Harness<'static, State>, list: &str, entry: &str) {
    h.get_by_role_and_label(Role::ComboBox, list).click();
    h.run_steps(4);
    h.get_by_role_and_label(Role::Button, entry).click();
    settle(h);
}
