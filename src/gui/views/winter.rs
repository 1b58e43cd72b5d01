//! Winter: running cost and heat, months, and daily heat against degree-hours.

use super::shown;
use crate::format;
use crate::gui::plots::axis::Look;
use crate::gui::plots::running::{Shown, Sum, running_ui};
use crate::gui::plots::{daily, months};
use crate::gui::state::State;
use crate::gui::theme::{SMALL, semibold, tokens};
use crate::units::Quantity;
use egui::{Button, RichText, Ui, vec2};

/// From this width on all three figures stand side by side.
const ALL_THREE: f32 = 1000.0;

/// What this view remembers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct WinterView {
    /// What the running plot adds up.
    pub sum: Sum,
    /// Days instead of months, where there is room for one of them only.
    pub days: bool,
}

/// The view.
pub fn winter_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let shown = shown(ui, state);
    let reference = state.document.draft.tags.get(state.document.draft.study.reference).map(|tag| tag.id);
    let baseline = reference.and_then(|id| {
        let (season, standing) = state.board.season(id)?;
        let season = season.clone();
        let curves = state.plots.curves(id, &season);
        Some(Shown { name: String::new(), mark: 0, colour: t.soft, chosen: false, season, standing, curves })
    });
    finding_ui(ui, state);
    if shown.is_empty() {
        ui.label(RichText::new("All scenarios are hidden. Show one by the eye on its card").color(t.soft));
        return;
    }
    let width = ui.available_width();
    let height = (ui.available_height() - 34.0).max(100.0);
    let cursor = state.hour_within(shown.first().map_or(0, |s| s.season.len()));
    let look = Look { t, units: state.prefs.units, cursor, height };
    let scene = Scene { shown: &shown, baseline: baseline.as_ref(), look: &look };
    let all = width >= ALL_THREE;
    let shares: &[f32] = if all { &[0.42, 0.29, 0.29] } else { &[0.56, 0.44] };
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 12.0;
        for (place, share) in shares.iter().enumerate() {
            let size = vec2(width * share - 12.0, height + 28.0);
            ui.allocate_ui_with_layout(size, egui::Layout::top_down(egui::Align::Min), |ui| {
                ui.set_width(size.x);
                match (place, all) {
                    (0, _) => running_panel(ui, state, &scene),
                    (1, true) => panel(ui, &scene, false),
                    (1, false) => chosen_panel(ui, state, &scene),
                    _ => panel(ui, &scene, true),
                }
            });
        }
    });
}

/// What the panels of this view draw.
struct Scene<'a> {
    shown: &'a [Shown],
    baseline: Option<&'a Shown>,
    look: &'a Look,
}

/// One sentence that says what there is to see.
fn finding_ui(ui: &mut Ui, state: &State) {
    let text = finding(state).unwrap_or_default();
    ui.add(egui::Label::new(RichText::new(text)).truncate());
}

fn finding(state: &State) -> Option<String> {
    let draft = &state.document.draft;
    let (own, _) = state.chosen_season()?;
    let s = &own.run.summary;
    let name = format::short_name(&draft.scenario()?.name);
    let mut text = match s.cost {
        Some(cost) => format!("{name} costs {}", format::money(cost, &draft.study.prices.currency)),
        None => format!("{name} takes {} kWh of heat", format::number(s.heat_delivered_kwh, 0)),
    };
    let other = state.reference_season().filter(|_| draft.selected() != draft.study.reference);
    if let (Some(cost), Some(reference)) = (s.cost, other.and_then(|(r, _)| r.run.summary.cost))
        && reference > 0.0
    {
        let percent = (1.0 - cost / reference) * 100.0;
        text += &match (percent.abs() < 0.5, percent > 0.0) {
            (true, _) => ", as much as the reference".to_owned(),
            (false, less) => {
                let word = if less { "less" } else { "more" };
                format!(", {} % {word} than the reference", format::number(percent.abs(), 0))
            }
        };
    }
    if s.baseline_heat_kwh > 1.0 {
        let share = s.heat_delivered_kwh / s.baseline_heat_kwh * 100.0;
        text += &format!("; heat {} % of the baseline", format::number(share, 0));
    }
    Some(text)
}

fn title(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).font(semibold(SMALL + 0.5)));
}

/// A small switch between two figures.
fn either(ui: &mut Ui, first: &str, second: &str, second_on: &mut bool) {
    let t = tokens(ui);
    for (name, value) in [(first, false), (second, true)] {
        let on = *second_on == value;
        let text = RichText::new(name).font(semibold(SMALL + 0.5)).color(if on { t.ink } else { t.soft });
        let text = if on { text } else { text.underline() };
        let response = ui.add(Button::new(text).frame(false).min_size(vec2(0.0, 20.0)));
        response.widget_info(|| egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, name));
        if response.clicked() {
            *second_on = value;
        }
    }
}

fn running_panel(ui: &mut Ui, state: &mut State, scene: &Scene) {
    let currency = state.document.draft.study.prices.currency.clone();
    ui.horizontal(|ui| {
        ui.set_height(22.0);
        let mut heat = state.winter.sum == Sum::Heat;
        either(ui, &format!("Running cost, {currency}"), "Running heat, kWh", &mut heat);
        state.winter.sum = if heat { Sum::Heat } else { Sum::Cost };
    });
    if let Some(hour) = running_ui(ui, scene.shown, scene.baseline, state.winter.sum, &currency, scene.look) {
        state.hour = Some(hour);
    }
}

/// Months or days, whichever was chosen.
fn chosen_panel(ui: &mut Ui, state: &mut State, scene: &Scene) {
    ui.horizontal(|ui| {
        ui.set_height(22.0);
        either(ui, BY_MONTH, &format!("by day over {}·h", degree(scene)), &mut state.winter.days);
    });
    figure(ui, scene, state.winter.days);
}

/// Months or days, under a title.
fn panel(ui: &mut Ui, scene: &Scene, days: bool) {
    let degree = degree(scene);
    ui.horizontal(|ui| {
        ui.set_height(22.0);
        if days {
            title(ui, &format!("Heat by day, kWh, over degree-hours, {degree}·h"));
        } else {
            title(ui, &format!("{BY_MONTH}; above it 1000 {degree}·h"));
        }
    });
    figure(ui, scene, days);
}

fn figure(ui: &mut Ui, scene: &Scene, days: bool) {
    if days {
        daily::daily_ui(ui, scene.shown, scene.look);
    } else {
        months::months_ui(ui, scene.shown, scene.baseline, scene.look);
    }
}

fn degree(scene: &Scene) -> &'static str {
    Quantity::TemperatureDifference.unit(scene.look.units).symbol
}

/// Title of the bars.
const BY_MONTH: &str = "Heat by month, kWh";
