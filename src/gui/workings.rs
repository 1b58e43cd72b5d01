//! "How it was worked out": a window beside the study with the chosen figure's formula, this scenario's numbers and the
//! result. It stays open while inputs change, and its numbers follow.

use super::board::{Season, Standing};
use super::state::State;
use super::theme::{BODY, HEADING, SMALL, Tokens, semibold, tokens};
use super::worker::Inputs;
use crate::format;
use crate::units::UnitSystem;
use crate::working::{Account, Case, Panel, Topic, panels};
use egui::{Align, Align2, Button, Context, Grid, Id, Layout, RichText, ScrollArea, Ui, vec2};
use std::sync::Arc;

/// Width of the window.
const WIDTH: f32 = 660.0;
/// Height of a row.
const ROW: f32 = 20.0;
/// Narrowest column of the working between name and number.
const MIDDLE: f32 = 260.0;

/// What is on show, and the panels as they were made last.
#[derive(Default)]
pub struct Workings {
    /// The figure on show; none while the window is closed.
    pub topic: Option<Topic>,
    made: Option<Made>,
}

/// Panels with what they were made from.
struct Made {
    inputs: Arc<Inputs>,
    reference: Option<(String, Arc<Inputs>)>,
    units: UnitSystem,
    panels: Arc<Vec<Panel>>,
}

/// The window.
pub fn workings_ui(ctx: &Context, state: &mut State) {
    let Some(topic) = state.workings.topic else { return };
    let mut open = true;
    let size = ctx.content_rect().size();
    let frame = egui::Frame::window(&ctx.global_style());
    egui::Window::new(RichText::new("How it was worked out").font(semibold(HEADING)))
        .id(Id::unique("workings"))
        .frame(frame)
        .open(&mut open)
        .collapsible(false)
        .resizable(false)
        .pivot(Align2::RIGHT_TOP)
        .default_pos(egui::pos2(size.x - 24.0, 132.0))
        .show(ctx, |ui| {
            ui.set_width(WIDTH.min(size.x - 80.0));
            content_ui(ui, state, topic, (size.y - 330.0).clamp(220.0, 700.0));
        });
    if !open || (ctx.input(|i| i.key_pressed(egui::Key::Escape)) && state.leaflet.is_none()) {
        state.workings.topic = None;
    }
}

fn content_ui(ui: &mut Ui, state: &mut State, topic: Topic, height: f32) {
    let t = tokens(ui);
    let Some((season, standing)) = state.chosen_season().map(|(s, standing)| (s.clone(), standing)) else {
        ui.label(RichText::new("There is no season to work out yet. Mend what is marked in the editor").color(t.soft));
        return;
    };
    let name = state.document.draft.scenario().map(|s| s.name.clone()).unwrap_or_default();
    ui.add(egui::Label::new(RichText::new(name).size(SMALL).color(t.soft)).truncate());
    let panels = panels_of(state, &season);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        for panel in panels.iter() {
            let on = panel.topic == topic;
            let text = RichText::new(panel.topic.name()).size(SMALL + 0.5).color(if on { t.ink } else { t.soft });
            if ui.add(Button::selectable(on, text)).clicked() {
                state.workings.topic = Some(panel.topic);
            }
        }
    });
    ui.separator();
    if standing == Standing::Stale {
        ui.set_opacity(0.45);
    }
    let area = ScrollArea::vertical().max_height(height).min_scrolled_height(height).auto_shrink([false, false]);
    area.show(ui, |ui| {
        // The scroll bar floats over the rightmost points.
        ui.set_max_width(ui.available_width() - 12.0);
        match panels.iter().find(|panel| panel.topic == topic) {
            Some(panel) => panel_ui(ui, panel, &t),
            None => {
                ui.label(RichText::new(missing(topic)).color(t.soft));
            }
        }
    });
}

/// Why a scenario has no such panel, and the step.
fn missing(topic: Topic) -> &'static str {
    match topic {
        Topic::Fuel => "No heater gave heat, so nothing is bought. Put one in under Heater.",
        Topic::Difference => {
            "This scenario is the reference. Choose another card, or take another reference in its menu."
        }
        _ => "There is nothing to work out for this scenario.",
    }
}

fn panel_ui(ui: &mut Ui, panel: &Panel, t: &Tokens) {
    ui.spacing_mut().item_spacing.y = 6.0;
    ui.label(panel.formula);
    for (index, account) in panel.accounts.iter().enumerate().filter(|(_, account)| !account.is_empty()) {
        ui.add_space(4.0);
        account_ui(ui, account, index, t);
    }
    ui.add_space(4.0);
    let source = format!("Source: {}", panel.source);
    ui.label(RichText::new(source).size(SMALL).color(t.soft));
}

fn account_ui(ui: &mut Ui, account: &Account, index: usize, t: &Tokens) {
    ui.label(RichText::new(&account.heading).font(semibold(BODY)));
    let width = ui.available_width();
    ui.spacing_mut().interact_size.y = ROW;
    let grid = Grid::new(("account", index)).num_columns(3).min_row_height(ROW).spacing(vec2(10.0, 1.0));
    grid.show(ui, |ui| {
        for row in &account.rows {
            ui.set_max_width(width);
            ui.label(&row.name);
            middle_ui(ui, &row.working(), t);
            number_ui(ui, RichText::new(row.signed_text()));
            ui.end_row();
        }
        if let Some((name, total)) = &account.total {
            let line = ui.cursor().top();
            ui.painter().hline(ui.max_rect().left()..=ui.max_rect().left() + width - 8.0, line, (1.0, t.soft));
            ui.label(RichText::new(name).font(semibold(BODY)));
            middle_ui(ui, "", t);
            number_ui(ui, RichText::new(total.text()).font(semibold(BODY)));
            ui.end_row();
        }
    });
    if !account.note.is_empty() {
        ui.label(RichText::new(&account.note).color(t.soft));
    }
}

fn middle_ui(ui: &mut Ui, text: &str, t: &Tokens) {
    ui.horizontal(|ui| {
        ui.set_min_width(MIDDLE);
        ui.label(RichText::new(text).size(SMALL + 0.5).color(t.soft));
    });
}

fn number_ui(ui: &mut Ui, text: RichText) {
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
        ui.set_min_width(96.0);
        ui.label(text);
    });
}

/// The panels of a season, made anew only where something has changed.
pub fn panels_of(state: &mut State, season: &Season) -> Arc<Vec<Panel>> {
    let study = &state.document.draft.study;
    let name = study.scenarios.get(study.reference).map(|s| format::short_name(&s.name)).unwrap_or_default();
    let other = (study.reference != state.document.draft.selected())
        .then(|| state.reference_season().map(|(reference, _)| reference.clone()))
        .flatten();
    let (units, key) = (state.prefs.units, other.as_ref().map(|season| (name.clone(), Arc::clone(&season.inputs))));
    if let Some(made) = &state.workings.made
        && Arc::ptr_eq(&made.inputs, &season.inputs)
        && same(made.reference.as_ref(), key.as_ref())
        && made.units == units
    {
        return Arc::clone(&made.panels);
    }
    let inputs = &season.inputs;
    let panels = Arc::new(panels(&Case {
        study: &inputs.study,
        scenario: &inputs.scenario,
        climate: &season.climate,
        catalogue: &state.catalogue.with_own(&inputs.study.own),
        run: &season.run,
        reference: other.as_ref().map(|reference| (name.as_str(), &*reference.run)),
        units,
    }));
    state.workings.made = Some(Made { inputs: Arc::clone(inputs), reference: key, units, panels: Arc::clone(&panels) });
    panels
}

fn same(a: Option<&(String, Arc<Inputs>)>, b: Option<&(String, Arc<Inputs>)>) -> bool {
    match (a, b) {
        (Some((name, inputs)), Some((other, theirs))) => name == other && Arc::ptr_eq(inputs, theirs),
        (None, None) => true,
        _ => false,
    }
}
