//! What was swept, drawn.

use super::MapOf;
use crate::explore::{Axis, Measured, SweepPoint};
use crate::gui::board::Standing;
use crate::gui::handout::{Make, handout_ui};
use crate::gui::palette;
use crate::gui::plots::legend;
use crate::gui::plots::map::{self, Map};
use crate::gui::plots::swept::{Course, SweptLook, swept_ui};
use crate::gui::state::State;
use crate::gui::sweeps::SweptSeasons;
use crate::gui::theme::{SMALL, tokens};
use crate::season::lean::SeasonFigures;
use crate::units::UnitSystem;
use egui::{Align, Layout, Rect, RichText, Ui, vec2};
use egui_plot::PlotPoint;
use std::sync::Arc;

/// Height of the legend or title above the plot.
const TITLE: f32 = 22.0;

/// One input: a line for each scenario.
pub fn courses_ui(ui: &mut Ui, state: &mut State, known: &Arc<SweptSeasons>, height: f32) {
    let measured = state.sweep_view.measured;
    let courses = courses(ui, state, known, measured);
    let chosen_unit = courses.iter().find(|c| c.chosen).or(courses.first()).map_or("", |c| &c.fuel_unit).to_owned();
    // Litres and cylinders share no axis.
    let alike = |course: &Course| measured != Measured::Fuel || course.fuel_unit == chosen_unit;
    let (courses, others): (Vec<Course>, Vec<Course>) = courses.into_iter().partition(alike);
    let currency = state.document.draft.study.prices.currency.clone();
    let title = measured.title(&currency, &chosen_unit, state.prefs.units);
    let legend = title_ui(ui, state, &title, others.len());
    let limit = limit(state, known).filter(|_| measured == Measured::Lowest);
    let look = look(ui, state, &currency, measured, limit, height - TITLE - 4.0);
    handout_ui(
        ui,
        state,
        "sweep",
        Some(legend),
        || figures(known, look.units),
        |ui, _| {
            if let Some(axis) = known.axes.first() {
                swept_ui(ui, axis, &courses, &look);
            }
        },
    );
}

/// The table behind the plot.
fn figures(known: &Arc<SweptSeasons>, units: UnitSystem) -> Make {
    let known = Arc::clone(known);
    Box::new(move || known.sweep.figures(&known.study, &known.axes, units))
}

fn look<'a>(
    ui: &Ui,
    state: &State,
    currency: &'a str,
    measured: Measured,
    limit: Option<f64>,
    height: f32,
) -> SweptLook<'a> {
    SweptLook { t: tokens(ui), units: state.prefs.units, currency, measured, limit, height }
}

/// The crop limit, where all scenarios share it.
fn limit(state: &State, known: &SweptSeasons) -> Option<f64> {
    let limits: Vec<f64> = known.study.scenarios.iter().map(|s| s.crop.limit_c).collect();
    let first = *limits.first()?;
    // A swept limit is no line.
    let swept = known.axes.iter().any(|axis| axis.input.path.starts_with("crop.limit"));
    let shown = Measured::Lowest.shown(first, state.prefs.units);
    (!swept && limits.iter().all(|limit| *limit == first)).then_some(shown)
}

/// What the upright axis is, and the scenarios by mark and name; gives its place.
fn title_ui(ui: &mut Ui, state: &mut State, title: &str, others: usize) -> Rect {
    let t = tokens(ui);
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    let draft = &state.document.draft;
    let entries: Vec<(usize, String, bool)> =
        draft.study.scenarios.iter().zip(&draft.tags).map(|(s, tag)| (tag.mark, s.name.clone(), s.shown)).collect();
    let size = vec2(ui.available_width(), TITLE);
    let response = ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_size(size);
        ui.spacing_mut().item_spacing.x = 6.0;
        ui.label(RichText::new(title).size(SMALL).color(t.soft));
        ui.add_space(8.0);
        let room = (ui.available_width() - 30.0) / entries.len().max(1) as f32;
        for (index, (mark, name, on)) in entries.into_iter().enumerate() {
            let colour = palette::scenario(theme, mark);
            let entry = legend::scenario(ui, mark, colour, &name, on, (room - 30.0).max(12.0));
            if entry.clicked() {
                state.toggle_shown(index, entry.id);
            }
        }
        if others > 0 {
            ui.label(RichText::new(format!("{others} burn another fuel")).size(SMALL).color(t.soft));
        }
    });
    response.response.rect
}

fn courses(ui: &Ui, state: &State, known: &SweptSeasons, measured: Measured) -> Vec<Course> {
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    let draft = &state.document.draft;
    let (units, chosen) = (state.prefs.units, draft.tags.get(draft.selected()).map(|tag| tag.id));
    let Some(axis) = known.axes.first() else { return Vec::new() };
    let unit = axis.input.quantity.unit(units);
    let course = |(place, id): (usize, &u64)| {
        let tag = draft.tags.iter().find(|tag| tag.id == *id)?;
        let points: Vec<&SweepPoint> = known.sweep.of(place).collect();
        let shown = |point: &&SweepPoint| {
            let value = measured.of(point.season.as_ref().ok()?)?;
            Some(PlotPoint::new(unit.shown(*point.values.first()?), measured.shown(value, units)))
        };
        let pieces = pieces(points.iter().map(shown));
        let fuel_unit = points.iter().find_map(|p| Some(p.season.as_ref().ok()?.fuel_unit.clone())).unwrap_or_default();
        Some(Course {
            name: known.study.scenarios.get(place)?.name.clone(),
            mark: tag.mark,
            colour: palette::scenario(theme, tag.mark),
            chosen: Some(*id) == chosen,
            pieces,
            now: now(state, known, place, axis, measured),
            fuel_unit,
        })
    };
    known.ids.iter().enumerate().filter_map(course).collect()
}

/// Unbroken runs of known points.
fn pieces(points: impl Iterator<Item = Option<PlotPoint>>) -> Vec<Vec<PlotPoint>> {
    let mut pieces = vec![Vec::new()];
    for point in points {
        match (point, pieces.last_mut()) {
            (Some(point), Some(piece)) => piece.push(point),
            (None, Some(piece)) if !piece.is_empty() => pieces.push(Vec::new()),
            _ => {}
        }
    }
    pieces.retain(|piece| !piece.is_empty());
    pieces
}

/// Where a scenario stands, if its value lies within the range and its season is of today.
fn now(state: &State, known: &SweptSeasons, place: usize, axis: &Axis, measured: Measured) -> Option<PlotPoint> {
    let value = axis.input.value(&known.study, place).filter(|value| within(axis, *value))?;
    let (season, standing) = state.board.season(*known.ids.get(place)?)?;
    let figure = measured.of(&SeasonFigures::from(&season.run.summary)).filter(|_| standing == Standing::Fresh)?;
    let units = state.prefs.units;
    Some(PlotPoint::new(axis.input.quantity.unit(units).shown(value), measured.shown(figure, units)))
}

fn within(axis: &Axis, value: f64) -> bool {
    let ends = || axis.values.iter().copied();
    let (low, high) = (ends().fold(f64::INFINITY, f64::min), ends().fold(f64::NEG_INFINITY, f64::max));
    (low..=high).contains(&value)
}

/// Two inputs: a map of the chosen scenario.
pub fn map_ui(ui: &mut Ui, state: &mut State, known: &Arc<SweptSeasons>, height: f32) {
    let t = tokens(ui);
    let measured = state.sweep_view.measured;
    let currency = state.document.draft.study.prices.currency.clone();
    let season = |point: &SweepPoint| Some(point.season.as_ref().ok()?.fuel_unit.clone());
    let fuel = known.sweep.points.iter().find_map(season).unwrap_or_default();
    let title = measured.title(&currency, &fuel, state.prefs.units);
    let size = vec2(ui.available_width(), TITLE);
    let upright = known.axes.get(1).map_or("", |axis| axis.input.label.as_str());
    let response = ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_size(size);
        let text = format!("{title}. Upwards: {upright}");
        ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(t.soft)).truncate());
    });
    let look = look(ui, state, &currency, measured, None, height - TITLE - 4.0);
    let Some(map) = ready(ui, state, known, measured) else {
        ui.label(RichText::new("Too little is known yet for a map").color(t.soft));
        return;
    };
    let now = now_on_map(state, known);
    let legend = response.response.rect;
    handout_ui(
        ui,
        state,
        "map",
        Some(legend),
        || figures(known, look.units),
        |ui, _| {
            map::map_ui(ui, &map, &known.axes, now, &fuel, &look);
        },
    );
}

/// The map of what is known, made once.
fn ready(ui: &Ui, state: &mut State, known: &Arc<SweptSeasons>, measured: Measured) -> Option<Arc<Map>> {
    let units = state.prefs.units;
    let of_now =
        |held: &&MapOf| held.seasons.as_ptr() == Arc::as_ptr(known) && held.measured == measured && held.units == units;
    if let Some(held) = state.sweep_view.map.as_ref().filter(of_now) {
        return held.map.clone();
    }
    let made = made(ui, known, measured, units).map(Arc::new);
    state.sweep_view.map = Some(MapOf { seasons: Arc::downgrade(known), measured, units, map: made.clone() });
    made
}

fn made(ui: &Ui, known: &SweptSeasons, measured: Measured, units: UnitSystem) -> Option<Map> {
    let [x, y] = known.axes.as_slice() else { return None };
    let rising = |axis: &Axis| -> Vec<f64> {
        let mut values = axis.values.clone();
        values.sort_by(f64::total_cmp);
        values
    };
    let (xs, ys) = (rising(x), rising(y));
    let mut values = vec![None; xs.len() * ys.len()];
    for point in &known.sweep.points {
        let at = |axis: &[f64], k: usize| axis.iter().position(|v| point.values.get(k) == Some(v));
        if let (Some(i), Some(j)) = (at(&xs, 0), at(&ys, 1)) {
            let value = point.season.as_ref().ok().and_then(|season| measured.of(season));
            values[i * ys.len() + j] = value.map(|value| measured.shown(value, units));
        }
    }
    let shown = |axis: &Axis, values: Vec<f64>| -> Vec<f64> {
        values.into_iter().map(|value| axis.input.quantity.unit(units).shown(value)).collect()
    };
    Map::new(ui.ctx(), shown(x, xs), shown(y, ys), values)
}

fn now_on_map(state: &State, known: &SweptSeasons) -> Option<PlotPoint> {
    let units = state.prefs.units;
    let shown = |axis: &Axis| {
        let value = axis.input.value(&known.study, 0).filter(|value| within(axis, *value))?;
        Some(axis.input.quantity.unit(units).shown(value))
    };
    let [x, y] = known.axes.as_slice() else { return None };
    Some(PlotPoint::new(shown(x)?, shown(y)?))
}
