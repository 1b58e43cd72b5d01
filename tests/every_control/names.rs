//! No control without a name, in any view, with every section of the editor open, in both unit systems.
//!
//! WCAG 2.2, criterion 4.1.2: name and role of every part of the user interface can be determined by programs.

use super::window::{self, Window};
use super::{UNITS, demo, demo_of_tent, label, show, views};
use egui::accesskit::{Action, Role};
use egui_kittest::kittest::{NodeT, Queryable};

/// Roles that a person acts on, and pictures.
const CONTROLS: [Role; 15] = [
    Role::Button,
    Role::CheckBox,
    Role::RadioButton,
    Role::ComboBox,
    Role::SpinButton,
    Role::Slider,
    Role::TextInput,
    Role::MultilineTextInput,
    Role::SearchInput,
    Role::Tab,
    Role::Link,
    Role::MenuItem,
    Role::ColorWell,
    Role::Image,
    Role::ProgressIndicator,
];

/// Opens what is folded in the editor.
fn unfold(h: &mut Window) {
    let sections: Vec<String> =
        h.get_all_by_role(Role::Button).map(|node| label(&node)).filter(|name| name.starts_with("Section ")).collect();
    assert!(sections.len() > 8, "{sections:?}");
    for section in sections {
        let node = h.get_by_label(&section);
        if node.accesskit_node().toggled() != Some(egui::accesskit::Toggled::True) {
            node.click();
            h.run_steps(20);
        }
    }
}

/// Controls without a name or out of reach of the keys, and what answers to a click without saying what it is.
fn nameless(h: &Window) -> Vec<String> {
    let bad = |node: &egui_kittest::Node<'_>| {
        let inner = node.accesskit_node();
        let (role, named) = (inner.role(), !label(node).trim().is_empty());
        let acts = CONTROLS.contains(&role);
        // What can be done by pointer can be done by keys (WCAG 2.2, criterion 2.1.1).
        let pictured = matches!(role, Role::Image | Role::ProgressIndicator);
        let unreached = acts && !pictured && !inner.is_disabled() && !inner.data().supports_action(Action::Focus);
        // What only takes clicks, such as the background of a dialog or a text that can be marked, holds no meaning.
        let mute = role == Role::Unknown && inner.data().supports_action(Action::Click) && named;
        (acts && !named) || mute || unreached
    };
    let told = |node: egui_kittest::Node<'_>| {
        let inner = node.accesskit_node();
        format!("{:?} “{}” at {:?}", inner.role(), label(&node), inner.raw_bounds().map(|_| node.rect()))
    };
    h.root().children_recursive().filter(bad).map(told).collect()
}

/// How many of a role there are.
fn count(h: &Window, role: Role) -> usize {
    h.query_all_by_role(role).count()
}

#[test]
fn every_control_has_a_name_in_every_view_and_both_units() {
    // High enough for the whole editor with all its sections.
    let mut h = demo_of_tent([1280.0, 4200.0]);
    unfold(&mut h);
    window::settle(&mut h);
    // The walk sees what it is meant to see.
    assert!(count(&h, Role::SpinButton) > 30, "{}", count(&h, Role::SpinButton));
    assert!(count(&h, Role::ComboBox) > 5 && count(&h, Role::CheckBox) > 5);
    for units in UNITS {
        h.get_by_label(units).click();
        for view in views() {
            show(&mut h, view);
            assert_eq!(nameless(&h), Vec::<String>::new(), "{view}, {units}");
        }
    }
}

#[test]
fn every_menu_and_leaflet_has_names() {
    let mut h = demo([1280.0, 900.0]);
    for menu in ["File", "Edit", "View", "Help"] {
        h.get_by_role_and_label(Role::Button, menu).click();
        h.run_steps(3);
        assert_eq!(nameless(&h), Vec::<String>::new(), "{menu}");
        h.key_press(egui::Key::Escape);
        h.run_steps(3);
    }
    for leaflet in ["About Warmfold", "Cautions", "How we know", "Keyboard"] {
        h.get_by_role_and_label(Role::Button, "Help").click();
        h.run_steps(3);
        h.get_by_label(leaflet).click();
        h.run_steps(3);
        assert_eq!(nameless(&h), Vec::<String>::new(), "{leaflet}");
        h.get_by_label("Close").click();
        h.run_steps(3);
    }
    h.key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::O);
    h.run_steps(3);
    h.get_by_role_and_label(Role::TextInput, "File path");
    assert_eq!(nameless(&h), Vec::<String>::new(), "path dialog");
}
