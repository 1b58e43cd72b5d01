//! The scenarios at the left edge, one card each.

use super::board::Standing;
use super::command::Command;
use super::document::ScenarioId;
use super::marks::{self, Icon};
use super::palette;
use super::state::State;
use super::theme::{BODY, HEADING, SMALL, Tokens, regular, semibold, tokens};
use crate::format;
use egui::{Align2, Button, FontId, Id, Popup, Rect, Sense, Stroke, Ui, UiBuilder, pos2, vec2};

/// Height of a card.
const CARD: f32 = 88.0;

/// The column of cards.
pub fn cards_ui(ui: &mut Ui, state: &mut State) {
    ui.spacing_mut().item_spacing.y = 0.0;
    let bottom = 40.0;
    let height = (ui.available_height() - bottom).max(CARD);
    egui::ScrollArea::vertical().id_salt("cards").max_height(height).auto_shrink([false, true]).show(ui, |ui| {
        let top = ui.cursor().top();
        for index in 0..state.document.draft.tags.len() {
            card_ui(ui, state, index, top);
        }
    });
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        ui.add_space(14.0);
        ui.spacing_mut().item_spacing.x = 4.0;
        for (text, command) in [("Add", Command::AddScenario), ("Duplicate", Command::DuplicateScenario)] {
            if ui.button(text).on_hover_text(command.text()).clicked() {
                state.queue.push(command);
            }
        }
    });
}

fn card_ui(ui: &mut Ui, state: &mut State, index: usize, top: f32) {
    let t = tokens(ui);
    let draft = &state.document.draft;
    let (Some(tag), Some(scenario)) = (draft.tags.get(index).copied(), draft.study.scenarios.get(index)) else {
        return;
    };
    let (name, shown, chosen) = (scenario.name.clone(), scenario.shown, draft.selected() == index);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), CARD), Sense::hover());
    let body = Rect::from_min_max(rect.min, pos2(rect.right() - 1.0, rect.bottom()));
    let id = Id::unique(("card", tag.id));
    let response = ui.interact(body, id, Sense::click_and_drag());
    response.widget_info(|| {
        let stops = match state.verdicts.stops(tag.id) {
            0 => String::new(),
            1 => ", 1 check says stop".to_owned(),
            n => format!(", {n} checks say stop"),
        };
        let said = format!("Scenario {name}, {}{stops}", marks::NAMES[tag.mark % palette::MARKS]);
        egui::WidgetInfo::selected(egui::Role::Button, true, chosen, said)
    });
    let painter = ui.painter().clone();
    if chosen {
        painter.rect_filled(body, 0.0, t.raised);
        painter.rect_filled(Rect::from_min_size(body.min, vec2(3.0, body.height())), 0.0, t.accent);
    } else if response.hovered() || response.has_focus() {
        painter.rect_filled(body, 0.0, t.raised.gamma_multiply(0.55));
    }
    marks::focus_ring(ui, &response, body.shrink(1.0));
    painter.hline(body.left() + 16.0..=body.right() - 12.0, body.bottom(), Stroke::new(1.0, t.hairline));
    let colour = palette::scenario(ui.theme_now(), tag.mark);
    let colour = if shown { colour } else { colour.gamma_multiply(0.35) };
    marks::scenario(&painter, pos2(body.left() + 23.0, body.top() + 21.0), 6.0, tag.mark, colour);
    if response.clicked() || response.dragged() {
        state.document.draft.selected = index;
    }
    if response.double_clicked() {
        state.renaming = Some(tag.id);
    }
    let within = id.with("keys within");
    let keys_within = ui.data(|data| data.get_temp(within).unwrap_or(false));
    let pointed = ui.rect_contains_pointer(body) || response.has_focus() || keys_within;
    name_ui(ui, state, index, tag.id, body, pointed || !shown);
    figures(&painter, state, index, body, &t);
    if buttons_ui(ui, state, index, tag.id, (shown, pointed), body) != keys_within {
        ui.data_mut(|data| data.insert_temp(within, !keys_within));
        ui.ctx().request_repaint();
    }
    reorder(ui, state, index, &response, top);
}

/// Theme in use, for palette look-ups.
trait ThemeNow {
    fn theme_now(&self) -> egui::Theme;
}

impl ThemeNow for Ui {
    fn theme_now(&self) -> egui::Theme {
        egui::Theme::from_dark_mode(self.visuals().dark_mode)
    }
}

fn name_ui(ui: &mut Ui, state: &mut State, index: usize, id: ScenarioId, body: Rect, beside_buttons: bool) {
    let right = body.right() - if beside_buttons { 58.0 } else { 12.0 };
    let rect = Rect::from_min_max(body.min + vec2(36.0, 8.0), pos2(right, body.top() + 34.0));
    let mut child =
        ui.new_child(UiBuilder::new().max_rect(rect).layout(egui::Layout::left_to_right(egui::Align::Center)));
    let Some(scenario) = state.document.draft.study.scenarios.get_mut(index) else { return };
    if state.renaming != Some(id) {
        let t = tokens(ui);
        let colour = if scenario.shown { t.ink } else { t.soft };
        let mut text = egui::RichText::new(&scenario.name).font(semibold(BODY)).color(colour);
        if scenario.name.trim().is_empty() {
            text = egui::RichText::new("No name").font(semibold(BODY)).color(t.warn);
        }
        child.add(egui::Label::new(text).truncate().selectable(false).sense(Sense::empty()));
        return;
    }
    let field = egui::TextEdit::singleline(&mut scenario.name).font(semibold(BODY)).id(Id::unique(("rename", id)));
    let response = child.add(field.desired_width(rect.width() - 8.0)).accessible_name("Scenario name");
    if response.changed() {
        state.edits.note("rename scenario", response.id);
    }
    if response.lost_focus() {
        state.renaming = None;
    } else if !response.has_focus() {
        response.request_focus();
    }
}

/// Size at which a cost has room beside what stands at the right, and whether both fit.
fn fitting(painter: &egui::Painter, cost: &str, beside: &str, width: f32) -> (f32, bool) {
    let wide = |text: &str, font| painter.layout_no_wrap(text.to_owned(), font, egui::Color32::PLACEHOLDER).size().x;
    let room = width - wide(beside, regular(SMALL)) - 8.0;
    let sizes = [HEADING + 2.0, HEADING, BODY];
    match sizes.into_iter().find(|size| wide(cost, semibold(*size)) <= room) {
        Some(size) => (size, true),
        None => (BODY, false),
    }
}

fn figures(painter: &egui::Painter, state: &State, index: usize, body: Rect, t: &Tokens) {
    let draft = &state.document.draft;
    let Some(tag) = draft.tags.get(index) else { return };
    let left = body.left() + 36.0;
    let right = body.right() - 14.0;
    let put = |align: Align2, x: f32, y: f32, text: String, font: FontId, colour| {
        painter.text(pos2(x, body.top() + y), align, text, font, colour);
    };
    let is_reference = draft.study.reference == index;
    if is_reference {
        put(Align2::RIGHT_CENTER, right, 47.0, "reference".to_owned(), regular(SMALL), t.accent);
    }
    let blocked = state.blocked(index);
    if blocked || state.board.failure(tag.id).is_some() {
        marks::paint_warning(painter, pos2(left + 6.0, body.top() + 71.0), t.warn);
        let why = if blocked { "does not add up" } else { "could not be run" };
        put(Align2::LEFT_CENTER, left + 18.0, 71.0, why.to_owned(), regular(SMALL), t.warn);
    }
    let Some((season, standing)) = state.board.season(tag.id) else {
        put(Align2::LEFT_CENTER, left, 47.0, "–".to_owned(), semibold(HEADING), t.soft);
        return;
    };
    let fade = if standing == Standing::Stale { 0.45 } else { 1.0 };
    let s = &season.run.summary;
    let currency = &draft.study.prices.currency;
    let cost = s.cost.map_or_else(|| "no price".to_owned(), |cost| format::money(cost, currency));
    let reference_cost = state.reference_season().and_then(|(r, _)| r.run.summary.cost);
    let difference = match (is_reference, s.cost, reference_cost) {
        (false, Some(cost), Some(reference)) => format::money_difference(cost - reference, currency),
        _ => String::new(),
    };
    let beside = if is_reference { "reference" } else { difference.as_str() };
    let (size, both) = fitting(painter, &cost, beside, right - left);
    put(Align2::LEFT_CENTER, left, 47.0, cost, semibold(size), t.ink.gamma_multiply(fade));
    let percent = |(cost, reference)| format!("{} %", format::signed((cost / reference - 1.0) * 100.0, 0));
    let short = s.cost.zip(reference_cost).filter(|(_, reference)| *reference > 0.0).map(percent);
    match (is_reference, short) {
        (true, _) => {}
        (false, Some(short)) if !both => {
            put(Align2::RIGHT_CENTER, right, 47.0, short, regular(SMALL), t.soft.gamma_multiply(fade));
        }
        _ => put(Align2::RIGHT_CENTER, right, 47.0, difference, regular(SMALL), t.soft.gamma_multiply(fade)),
    }
    if blocked || state.board.failure(tag.id).is_some() {
        return;
    }
    let lowest = format!("lowest {}", format::temperature(s.crop_zone_min_c, state.prefs.units));
    put(Align2::LEFT_CENTER, left, 71.0, lowest, regular(SMALL), t.soft.gamma_multiply(fade));
    let stops = state.verdicts.stops(tag.id);
    if stops > 0 {
        let centre = pos2(body.left() + 23.0, body.top() + 71.0);
        marks::paint_octagon(painter, centre, 8.0, t.warn.gamma_multiply(fade));
        painter.text(centre, Align2::CENTER_CENTER, stops.to_string(), semibold(SMALL - 2.0), t.paper);
    }
    let (verdict, colour) = match s.hours_below_crop_limit {
        0 => ("holds".to_owned(), t.ink),
        n => (format!("short {} h", format::number(n as f64, 0)), t.warn),
    };
    put(Align2::RIGHT_CENTER, right, 71.0, verdict, semibold(SMALL), colour.gamma_multiply(fade));
}

/// The eye and the menu; drawn while the pointer or the keys are at the card, or to say that the scenario is hidden. Gives
/// whether the keys are at one of the two.
fn buttons_ui(
    ui: &mut Ui,
    state: &mut State,
    index: usize,
    id: ScenarioId,
    (shown, pointed): (bool, bool),
    body: Rect,
) -> bool {
    let rect =
        Rect::from_min_max(pos2(body.right() - 56.0, body.top() + 9.0), pos2(body.right() - 8.0, body.top() + 33.0));
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).layout(layout).id_salt(("card buttons", id)));
    let ui = &mut child;
    ui.spacing_mut().item_spacing.x = 0.0;
    if !pointed && shown {
        ui.set_opacity(0.0);
    }
    let (icon, text) = if shown { (Icon::Eye, "Hide in plots") } else { (Icon::EyeOff, "Show in plots") };
    let eye = marks::icon_button(ui, icon, text);
    if eye.clicked() {
        state.toggle_shown(index, eye.id);
    }
    let more = marks::icon_button(ui, Icon::More, "More for this scenario");
    if more.clicked() {
        state.document.draft.selected = index;
    }
    Popup::menu(&more).show(|ui| {
        if ui.add(Button::new("Rename")).clicked() {
            state.renaming = Some(id);
            ui.close();
        }
        for command in [
            Command::DuplicateScenario,
            Command::MakeReference,
            Command::MoveUp,
            Command::MoveDown,
            Command::DeleteScenario,
        ] {
            super::menu::entry(ui, state, command, false);
        }
    });
    eye.has_focus() || more.has_focus()
}

/// Moves the card under the pointer while it is dragged.
fn reorder(ui: &Ui, state: &mut State, index: usize, response: &egui::Response, top: f32) {
    if !response.dragged() {
        return;
    }
    ui.ctx().set_cursor_icon(egui::CursorIcon::Grabbing);
    let Some(pointer) = response.interact_pointer_pos() else { return };
    let last = state.document.draft.tags.len().saturating_sub(1);
    let target = (((pointer.y - top) / CARD).floor().max(0.0) as usize).min(last);
    if target != index {
        state.document.draft.shift(index, target);
        state.edits.note("order of scenarios", Id::unique("card order"));
    }
}
