//! The window by keys alone, as someone without a mouse walks through it.

use super::{demo, settle};
use egui::accesskit::Role;
use egui::{Key, Modifiers, Rect};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use warmfold::gui::State;

/// Most stops of the demo's window.
const MOST: usize = 400;

/// What the keys would act on: role, name and place.
#[derive(Debug, Clone, PartialEq)]
struct Stop {
    role: Role,
    name: String,
    rect: Rect,
}

fn stop(h: &Harness<'static, State>) -> Option<Stop> {
    // Without a focus of its own the window has it.
    let on = |node: &egui_kittest::Node<'_>| node.accesskit_node().is_focused();
    let node = h.root().children_recursive().find(on)?;
    let inner = node.accesskit_node();
    Some(Stop { role: inner.role(), name: inner.label().unwrap_or_default(), rect: node.rect() })
}

/// Presses a key and gives where the focus is then.
fn press(h: &mut Harness<'static, State>, key: Key) -> Option<Stop> {
    h.key_press(key);
    h.run_steps(3);
    stop(h)
}

/// Walks from the first stop on until one has this name.
fn walk_to(h: &mut Harness<'static, State>, name: &str) -> Vec<Stop> {
    let mut stops = Vec::new();
    while stops.last().is_none_or(|stop: &Stop| stop.name != name) {
        let stop = press(h, Key::Tab).unwrap_or_else(|| panic!("the focus is lost behind {:?}", stops.last()));
        assert!(!stops.contains(&stop) && stops.len() < MOST, "{name} cannot be reached: again {stop:?}");
        stops.push(stop);
    }
    stops
}

#[test]
fn tab_goes_once_through_everything_in_the_order_in_which_it_is_read() {
    let mut h = demo();
    let stops = walk_to(&mut h, LAST);
    let names: Vec<&str> = stops.iter().map(|stop| stop.name.as_str()).collect();
    assert_eq!(names[..9], ["File", "Edit", "View", "Help", "°C · m", "°F · ft", "Light", "Dark", "Auto"]);
    let nameless: Vec<&Stop> = stops.iter().filter(|stop| stop.name.is_empty()).collect();
    assert!(nameless.is_empty(), "{nameless:?}");
    // The bar, the cards, the editor, the results, the lowest line.
    let place = |name: &str| names.iter().position(|n| *n == name).unwrap_or_else(|| panic!("{name} is no stop"));
    let order =
        ["Auto", "Add", "Section House", "Length", "Width", "Heater", "How Winter cost was worked out", "Winter"];
    let places: Vec<usize> = order.iter().map(|name| place(name)).collect();
    assert!(places.is_sorted(), "{order:?} at {places:?}");
    // Within the editor downwards, and rightwards in a row.
    let editor = &stops[place("Section House")..place("How Winter cost was worked out")];
    assert!(editor.iter().filter(|stop| stop.role == Role::SpinButton).count() > 10);
    for pair in editor.windows(2) {
        let (a, b) = (pair[0].rect, pair[1].rect);
        let on =
            if a.y_range().contains(b.center().y) { a.center().x < b.center().x } else { a.center().y < b.center().y };
        assert!(on, "{:?} comes before {:?}", pair[0], pair[1]);
    }
    // Back the same way.
    h.key_press_modifiers(Modifiers::SHIFT, Key::Tab);
    h.run_steps(3);
    assert_eq!(stop(&h).as_ref(), stops.get(stops.len() - 2));
}

/// What of a picture can be seen within a place: corners of what is painted there, with their colours.
fn seen(painted: &[egui::ClippedPrimitive], place: Rect) -> Vec<([u32; 2], egui::Color32)> {
    let mut corners = Vec::new();
    for primitive in painted {
        if let egui::epaint::Primitive::Mesh(mesh) = &primitive.primitive {
            let visible = mesh.vertices.iter().filter(|v| v.color.a() > 0 && place.contains(v.pos));
            corners.extend(visible.map(|v| ([v.pos.x.to_bits(), v.pos.y.to_bits()], v.color)));
        }
    }
    corners
}

/// Last stop of the window.
const LAST: &str = "Put the first steps away";

/// Stops from here on to the last one that look the same with the keys and without.
fn unseen(h: &mut Harness<'static, State>) -> Vec<Stop> {
    let paint = |h: &Harness<'static, State>| h.ctx.tessellate(h.output().shapes.clone(), h.ctx.pixels_per_point());
    let (mut before, mut unseen, mut name) = (paint(h), Vec::new(), String::new());
    while name != LAST {
        let stop = press(h, Key::Tab).expect("a stop");
        // Colours fade in.
        h.run_steps(5);
        let now = paint(h);
        if seen(&before, stop.rect.expand(3.0)) == seen(&now, stop.rect.expand(3.0)) {
            unseen.push(stop.clone());
        }
        (before, name) = (now, stop.name);
    }
    unseen
}

/// WCAG 2.2, criterion 2.4.7: what the keys would act on is seen.
#[test]
fn every_stop_of_the_keys_looks_otherwise_while_they_are_there() {
    let mut h = demo();
    assert_eq!(unseen(&mut h), Vec::<Stop>::new());
    let tabs: Vec<String> = h.get_all_by_role(Role::Tab).filter_map(|tab| tab.accesskit_node().label()).collect();
    let last = tabs.last().expect("a tab").clone();
    for tab in &tabs[1..] {
        h.get_by_role_and_label(Role::Tab, tab).click();
        settle(&mut h);
        h.get_by_role_and_label(Role::Tab, &last).focus();
        h.run_steps(12);
        assert_eq!(unseen(&mut h), Vec::<Stop>::new(), "{tab}");
    }
}

#[test]
fn a_value_is_typed_taken_and_left_as_it_was_by_keys_alone() {
    let mut h = demo();
    let length = |h: &Harness<'static, State>| h.state().document.draft.scenario().unwrap().house.length_m;
    let before = length(&h);
    walk_to(&mut h, "Length");
    // What is there is marked, so that typing replaces it.
    h.event(egui::Event::Text("9".to_owned()));
    h.run_steps(2);
    assert_eq!(length(&h), before, "nothing is taken while it is typed");
    press(&mut h, Key::Enter);
    settle(&mut h);
    assert_eq!(length(&h), 9.0);
    walk_to(&mut h, "Length");
    h.event(egui::Event::Text("4".to_owned()));
    h.run_steps(2);
    press(&mut h, Key::Escape);
    settle(&mut h);
    assert_eq!(length(&h), 9.0, "Escape leaves the value as it was");
    walk_to(&mut h, "Length");
    h.event(egui::Event::Text("8".to_owned()));
    let next = press(&mut h, Key::Tab);
    settle(&mut h);
    assert_eq!(length(&h), 8.0, "Tab takes the value and goes on");
    assert!(next.is_some_and(|stop| stop.name.starts_with("Back to the default for length")));
    assert_eq!(press(&mut h, Key::Enter), stop(&h));
    settle(&mut h);
    assert_eq!(length(&h), 6.0);
}

#[test]
fn a_row_side_by_side_is_hidden_by_keys() {
    let mut h = demo();
    h.get_by_role_and_label(Role::Tab, "Side by side").click();
    settle(&mut h);
    let row = h.get_all_by_role(Role::Row).next().unwrap();
    row.focus();
    h.run_steps(2);
    press(&mut h, Key::Enter);
    h.get_by_label("Hide this row").click();
    settle(&mut h);
    assert_eq!(h.state().prefs.table.hidden.len(), 1);
}
