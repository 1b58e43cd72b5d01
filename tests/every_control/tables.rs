//! Each plot has a table of the same figures, which can be read out cell by cell.

use super::window::{self, Window};
use super::{UNITS, demo, demo_of_tent, label, show, views};
use egui::accesskit::{Action, Role};
use egui_kittest::kittest::{NodeT, Queryable};

/// Names of the buttons at the corners of the plots.
fn corners(h: &Window) -> Vec<String> {
    h.get_all_by_role(Role::Button).map(|node| label(&node)).filter(|name| name.starts_with("Save or copy ")).collect()
}

/// Opens the table of a plot; gives its head and the cells in sight.
fn table(h: &mut Window, corner: &str) -> (Vec<String>, Vec<String>) {
    h.get_by_role_and_label(Role::Button, corner).click();
    h.run_steps(3);
    let entry = h.query_by_label("Show figures as table…");
    entry.unwrap_or_else(|| panic!("{corner}: no menu")).click();
    h.run_steps(2);
    window::settle(h);
    h.get_by_label(&corner.replace("Save or copy ", "Figures: "));
    let texts = |role| h.query_all_by_role(role).map(|node| label(&node)).collect::<Vec<_>>();
    let read = (texts(Role::ColumnHeader), texts(Role::Cell));
    h.get_by_label("Close").click();
    h.run_steps(3);
    assert_eq!(h.query_all_by_role(Role::ColumnHeader).count(), 0, "{corner}: the table stays");
    read
}

/// Names of the switches between figures, below the tabs of the views.
fn choices(h: &Window) -> Vec<String> {
    let below = h.get_by_role_and_label(Role::Tab, "Winter").rect();
    let inside =
        |node: &egui_kittest::Node<'_>| node.rect().left() >= below.left() && node.rect().top() > below.bottom();
    h.query_all_by_role(Role::RadioButton).filter(inside).map(|node| label(&node)).collect()
}

/// Plots that answer to the pointer and say nothing: each has to be named, or the walk would not know that it is there.
fn mute_plots(h: &Window) -> Vec<egui::Rect> {
    let mute = |node: &egui_kittest::Node<'_>| {
        let inner = node.accesskit_node();
        inner.role() == Role::Unknown && inner.data().supports_action(Action::Click) && label(node).is_empty()
    };
    let boxes = h.root().children_recursive().filter(mute).map(|node| node.rect());
    boxes.filter(|rect| rect.width() > 60.0 && rect.height() > 40.0).collect()
}

/// Each plot on show has a name and a corner; gives the corners.
fn corners_of_all_plots(h: &Window, place: &str) -> Vec<String> {
    assert_eq!(mute_plots(h), Vec::new(), "{place}: plots without a name");
    // Beside the cross-section, whose words stand in its name, each picture is a plot with a corner.
    let plots = h.query_all_by_role(Role::Image).filter(|image| !label(image).starts_with("Cross-section"));
    let plots: Vec<egui::Rect> = plots.map(|image| image.rect()).collect();
    let corners = corners(h);
    let places: Vec<egui::Rect> =
        corners.iter().map(|name| h.get_by_role_and_label(Role::Button, name).rect()).collect();
    for plot in plots {
        let above = |at: &&egui::Rect| at.top() <= plot.top() + 8.0 && plot.x_range().contains(at.left());
        assert!(places.iter().any(|at| above(&at)), "{place}: a plot at {plot:?} without a table");
    }
    corners
}

#[test]
fn every_plot_has_its_table_in_both_units() {
    let mut h = demo_of_tent([1500.0, 2400.0]);
    for units in UNITS {
        h.get_by_label(units).click();
        let mut read = Vec::new();
        for view in views() {
            show(&mut h, view);
            let switches = choices(&h);
            for choice in std::iter::once(None).chain(switches.iter().map(Some)) {
                if let Some(choice) = choice {
                    h.get_by_role_and_label(Role::RadioButton, choice).click();
                    window::settle(&mut h);
                }
                let corners = corners_of_all_plots(&h, view);
                assert_eq!(corners.is_empty(), view == "Checks", "{view}");
                for corner in corners.into_iter().filter(|corner| !read.contains(corner)).collect::<Vec<_>>() {
                    let (head, cells) = table(&mut h, &corner);
                    assert!(head.len() >= 3 && cells.len() >= 2 * head.len(), "{corner}: {head:?} {cells:?}");
                    // A cell that is read alone says its column.
                    let said = |(cell, title): (&String, &String)| cell.starts_with(&format!("{title}: "));
                    assert!(cells.iter().zip(head.iter().cycle()).all(said), "{corner}: {head:?} {cells:?}");
                    read.push(corner);
                }
            }
        }
        assert!(read.len() >= 11, "{read:?}");
    }
}

#[test]
fn the_table_of_the_months_adds_up_to_the_winter() {
    let mut h = demo([1500.0, 1000.0]);
    let name = h.state().document.draft.scenario().unwrap().name.clone();
    let (_, cells) = table(&mut h, "Save or copy heat by month");
    let column = format!("{name}, kWh: ");
    let heat: Vec<f64> = cells.iter().filter_map(|cell| cell.strip_prefix(&column)?.parse().ok()).collect();
    let whole = h.state().chosen_season().unwrap().0.run.summary.heat_delivered_kwh;
    // Each month is rounded to a tenth.
    assert!(
        heat.len() > 5 && (heat.iter().sum::<f64>() - whole).abs() <= 0.05 * heat.len() as f64 + 1e-9,
        "{heat:?} {whole}"
    );
}
