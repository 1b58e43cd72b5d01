//! The first steps, on the very first start: they stand in the line at the bottom until the first edit or a click.

use super::marks::{Icon, icon_button_sized};
use super::state::State;
use super::theme::{SMALL, semibold, tokens};
use egui::{RichText, Ui, vec2};

/// The first three steps: where, and what.
const STEPS: [(&str, &str); 3] = [
    ("1  Place", "choose the weather under Site & weather"),
    ("2  House", "give it your size, covering and heater"),
    ("3  Compare", "duplicate the scenario and change one thing"),
];

/// The steps, in a row that is laid out already: nothing else moves when they go.
pub fn hint_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    ui.spacing_mut().item_spacing.x = 6.0;
    for (step, what) in STEPS {
        ui.label(RichText::new(step).font(semibold(SMALL)).color(t.accent));
        ui.label(RichText::new(what).size(SMALL));
        ui.add_space(10.0);
    }
    ui.label(RichText::new("F1 opens the guide").size(SMALL).color(t.soft));
    if icon_button_sized(ui, Icon::Cross, "Put the first steps away", vec2(18.0, 18.0)).clicked() {
        state.prefs.started = true;
    }
}
