//! Every command, every control and every plot of the window by its label, as a keyboard or a screen reader reaches them.

mod commands;
mod names;
mod tables;
#[path = "../common/settled.rs"]
mod window;

use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use warmfold::gui::command::Command;
use window::Window;

/// Names of the switches for the units.
const UNITS: [&str; 2] = ["°F · ft", "°C · m"];

/// The window on the demo.
fn demo(size: [f32; 2]) -> Window {
    window::drawn_by(size, warmfold::gui::window_ui)
}

/// The window on the last scenario with an inner tent, which has most fields and lines, with two months and few chance winters.
fn demo_of_tent(size: [f32; 2]) -> Window {
    let mut h = demo(size);
    let draft = &mut h.state_mut().document.draft;
    draft.selected = draft.study.scenarios.iter().rposition(|s| s.tent.present).unwrap();
    let season = &mut draft.study.season;
    (season.from_month, season.from_day, season.to_month, season.to_day) = (1, 1, 2, 28);
    draft.study.many_winters.count = 20;
    h.state_mut().document.revision += 1;
    window::settle(&mut h);
    h
}

/// Names of all views, as the commands call them.
fn views() -> Vec<&'static str> {
    let shows = |command: &Command| format!("{command:?}").ends_with("View");
    Command::ALL.into_iter().filter(shows).map(Command::text).collect()
}

/// Shows a view; the tab of the checks has their number behind its name.
fn show(h: &mut Window, view: &str) {
    let tabs: Vec<_> = h.get_all_by_role(Role::Tab).collect();
    assert_eq!(tabs.len(), views().len(), "each tab has its command");
    let tab = tabs.into_iter().find(|tab| label(tab) == view || label(tab).starts_with(&format!("{view} · "))).unwrap();
    tab.click();
    window::settle(h);
}

fn label(node: &egui_kittest::Node<'_>) -> String {
    node.accesskit_node().label().unwrap_or_default()
}
