//! Winter: running cost and heat, months, and daily heat against degree-hours.

use super::{choice, shown};
use crate::figures::{self, Named, RunningSum};
use crate::format;
use crate::gui::handout::{Make, handout_ui};
use crate::gui::palette;
use crate::gui::plots::axis::Look;
use crate::gui::plots::legend::{self, Sample};
use crate::gui::plots::running::{Shown, Sum, running_ui};
use crate::gui::plots::{daily, months};
use crate::gui::state::State;
use crate::gui::theme::{SMALL, semibold, tokens};
use crate::units::Quantity;
use egui::{Rect, RichText, Ui, vec2};

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
    let legend = legend_ui(ui, state);
    if shown.is_empty() {
        ui.label(
            RichText::new("All scenarios are hidden. Show one by its name above or by the eye on its card")
                .color(t.soft),
        );
        return;
    }
    let width = ui.available_width();
    let height = (ui.available_height() - 34.0).max(100.0);
    let cursor = state.hour_within(shown.first().map_or(0, |s| s.season.len()));
    let look = Look { t, units: state.prefs.units, cursor, height };
    let scene = Scene { shown: &shown, baseline: baseline.as_ref(), look: &look, legend };
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
                    (1, true) => panel(ui, state, &scene, false),
                    (1, false) => chosen_panel(ui, state, &scene),
                    _ => panel(ui, state, &scene, true),
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
    /// Where the legend stands.
    legend: Rect,
}

impl Scene<'_> {
    /// Makes a table of what is on show, away from the window.
    fn figures(&self, of: impl FnOnce(&[Named], Option<Named>) -> figures::Figures + Send + 'static) -> Make {
        let (shown, baseline) = (self.shown.to_vec(), self.baseline.cloned());
        Box::new(move || {
            let named: Vec<Named> = shown.iter().map(Shown::named).collect();
            of(&named, baseline.as_ref().map(Shown::named))
        })
    }

    /// Figures of the months or days.
    fn bars_or_points(&self, days: bool) -> Make {
        let units = self.look.units;
        self.figures(
            move |named, baseline| {
                if days { figures::days(named, units) } else { figures::months(named, baseline, units) }
            },
        )
    }
}

/// The scenarios by mark and name, each a switch of its own, and the baseline; gives its place.
fn legend_ui(ui: &mut Ui, state: &mut State) -> Rect {
    let t = tokens(ui);
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    let draft = &state.document.draft;
    let entries: Vec<(usize, String, bool)> =
        draft.study.scenarios.iter().zip(&draft.tags).map(|(s, tag)| (tag.mark, s.name.clone(), s.shown)).collect();
    let room = (ui.available_width() - BASELINE) / entries.len().max(1) as f32;
    row(ui, 18.0, |ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        for (index, (mark, name, on)) in entries.into_iter().enumerate() {
            let entry = legend::scenario(ui, mark, palette::scenario(theme, mark), &name, on, (room - 30.0).max(16.0));
            if entry.clicked() {
                state.toggle_shown(index, entry.id);
            }
        }
        legend::entry(ui, Sample::Dashed, t.soft, "baseline", 80.0).on_hover_text(
            "The pencil formula: heat-loss coefficient of the bare house times degree-hours.\nMarks and colours are those of the cards",
        );
    })
}

/// A row of its own height; gives its place.
fn row(ui: &mut Ui, height: f32, add: impl FnOnce(&mut Ui)) -> Rect {
    let size = vec2(ui.available_width(), height);
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    let response = ui.allocate_ui_with_layout(size, layout, |ui| {
        ui.set_min_size(size);
        add(ui);
    });
    response.response.rect
}

/// Room of the baseline's entry.
const BASELINE: f32 = 96.0;

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
    for (name, value) in [(first, false), (second, true)] {
        if choice(ui, name, *second_on == value, SMALL + 0.5) {
            *second_on = value;
        }
    }
}

fn running_panel(ui: &mut Ui, state: &mut State, scene: &Scene) {
    let currency = state.document.draft.study.prices.currency.clone();
    let sum = state.winter.sum;
    let (name, own) = (if sum == Sum::Heat { "running heat" } else { "running cost" }, currency.clone());
    let figures = || {
        scene.figures(move |named, baseline| {
            let sum = if sum == Sum::Heat { RunningSum::Heat } else { RunningSum::Cost(&own) };
            figures::running(named, baseline, sum)
        })
    };
    handout_ui(ui, state, name, Some(scene.legend), figures, |ui, state| {
        row(ui, TITLE, |ui| {
            let mut heat = state.winter.sum == Sum::Heat;
            either(ui, &format!("Running cost, {currency}"), "Running heat, kWh", &mut heat);
            state.winter.sum = if heat { Sum::Heat } else { Sum::Cost };
        });
        if let Some(hour) = running_ui(ui, scene.shown, scene.baseline, state.winter.sum, &currency, scene.look) {
            state.hour = Some(hour);
        }
    });
}

/// Months or days, whichever was chosen.
fn chosen_panel(ui: &mut Ui, state: &mut State, scene: &Scene) {
    let days = state.winter.days;
    handout_ui(
        ui,
        state,
        name_of(days),
        Some(scene.legend),
        || scene.bars_or_points(days),
        |ui, state| {
            row(ui, TITLE, |ui| {
                either(ui, "kWh by month", &format!("by day over {}·h", degree(scene)), &mut state.winter.days);
            });
            figure(ui, scene, state.winter.days);
        },
    );
}

/// Months or days, under a title.
fn panel(ui: &mut Ui, state: &mut State, scene: &Scene, days: bool) {
    let degree = degree(scene);
    handout_ui(
        ui,
        state,
        name_of(days),
        Some(scene.legend),
        || scene.bars_or_points(days),
        |ui, _| {
            row(ui, TITLE, |ui| {
                if days {
                    title(ui, &format!("Heat by day, kWh, over degree-hours, {degree}·h"));
                } else {
                    title(ui, &format!("{BY_MONTH}; above it 1000 {degree}·h"));
                }
            });
            figure(ui, scene, days);
        },
    );
}

fn name_of(days: bool) -> &'static str {
    if days { "heat by day" } else { "heat by month" }
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

/// Height of a figure's title.
const TITLE: f32 = 22.0;
/// Title of the bars.
const BY_MONTH: &str = "Heat by month, kWh";
