//! What matters: each doubtful input moved as far as it may be off, as bars ranked by what they move.

use crate::figures;
use crate::format;
use crate::gui::cut::cut;
use crate::gui::editor::{PRICES, SITE, Section};
use crate::gui::fields::lower;
use crate::gui::handout::{Make, handout_ui};
use crate::gui::marks;
use crate::gui::palette;
use crate::gui::plots::doubts::{Bar, Scale, bar_ui, scale_ui};
use crate::gui::state::State;
use crate::gui::streamed::Grown;
use crate::gui::theme::{BODY, ROW, SMALL, Tokens, regular, semibold, tokens};
use crate::gui::views::choice;
use crate::season::sensitivity::{Effect, Outcome, Sensitivity};
use crate::units::Quantity;
use egui::{Align, Label, Layout, Rect, RichText, Sense, Ui, pos2, vec2};

/// What this view remembers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct MattersView {
    /// Ranked by the crop's lowest air instead of by money.
    pub by_cold: bool,
    /// Row whose reason is told.
    told: usize,
}

/// Height of a doubt's row.
const HEIGHT: f32 = 38.0;
/// Height of the reason below.
const REASON: f32 = 38.0;
/// Room between the columns.
const GAP: f32 = 14.0;

/// The view.
pub fn matters_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let Some((grown, count)) = state.what_matters(&ui.ctx().clone()) else {
        let text = if state.board.working() {
            "The winter is being worked out"
        } else {
            "This scenario has no figures yet. Mend what is marked in the editor"
        };
        ui.label(RichText::new(text).color(t.soft));
        return;
    };
    let name = state.document.draft.scenario().map(|s| format::short_name(&s.name)).unwrap_or_default();
    ui.add(Label::new(finding(&name, &grown, &state.document.draft.study.prices.currency)).truncate());
    controls_ui(ui, state, &grown, count);
    let Some(found) = grown.answer.clone() else {
        ui.label(RichText::new("The first doubts are being tried").color(t.soft));
        return;
    };
    if grown.stale {
        ui.set_opacity(0.5);
    }
    let (table, units) = (found.clone(), state.prefs.units);
    let currency = state.document.draft.study.prices.currency.clone();
    let figures = move || -> Make { Box::new(move || figures::doubts(&table, &currency, units)) };
    let effects = ranked(&found, state.matters_view.by_cold);
    handout_ui(ui, state, "what matters", None, figures, |ui, state| table_ui(ui, state, &found, &effects, &t));
    reason_ui(ui, &effects, state.matters_view.told, units, &t);
}

/// One sentence on the whole.
fn finding(name: &str, grown: &Grown<Sensitivity>, currency: &str) -> String {
    let likely = grown.answer.as_ref().and_then(|found| found.likely());
    match (likely, &grown.answer) {
        (Some(likely), Some(found)) => {
            let most: Vec<String> = found.effects.iter().take(2).map(|effect| lower(effect.name)).collect();
            format!("{}: most of it from {}", likely.text(currency), most.join(" and "))
        }
        (None, Some(found)) if found.as_it_is.cost.is_none() => {
            format!("{name}: without a price there is no cost, but still a crop")
        }
        _ => format!("{name}: what nobody knows exactly, moved as far as it may be off"),
    }
}

fn ranked(found: &Sensitivity, by_cold: bool) -> Vec<Effect> {
    let mut effects = found.effects.clone();
    if by_cold {
        let cold = |effect: &Effect| effect.moves_crop_air_k(&found.as_it_is);
        effects.sort_by(|a, b| cold(b).total_cmp(&cold(a)));
    }
    effects
}

/// What it is ranked by, how far it is, and the way to stop it.
fn controls_ui(ui: &mut Ui, state: &mut State, grown: &Grown<Sensitivity>, count: usize) {
    let t = tokens(ui);
    ui.allocate_ui_with_layout(vec2(ui.available_width(), ROW), Layout::left_to_right(Align::Center), |ui| {
        ui.label(RichText::new("Ranked by").color(t.soft));
        for (name, by_cold) in [("cost", false), ("lowest at the crop", true)] {
            if choice(ui, name, state.matters_view.by_cold == by_cold, BODY) {
                state.matters_view.by_cold = by_cold;
            }
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let press = super::progress_ui(ui, grown.working, count, grown.failed.as_deref());
            match press {
                Some(super::Press::Stop) => state.matters.stop(),
                Some(super::Press::GoOn) => state.matters.again(),
                None => {}
            }
        });
    });
}

/// Where the columns stand.
struct Columns {
    name: f32,
    bars: f32,
}

impl Columns {
    fn of(width: f32) -> Self {
        let name = (0.36 * width).clamp(170.0, 280.0);
        Self { name, bars: (width - name - 2.0 * GAP) / 2.0 }
    }

    fn bar(&self, row: Rect, place: usize) -> Rect {
        let left = row.left() + self.name + GAP + place as f32 * (self.bars + GAP);
        Rect::from_min_size(pos2(left, row.top()), vec2(self.bars, row.height()))
    }
}

fn table_ui(ui: &mut Ui, state: &mut State, found: &Sensitivity, effects: &[Effect], t: &Tokens) {
    let units = state.prefs.units;
    let currency = state.document.draft.study.prices.currency.clone();
    let columns = Columns::of(ui.available_width());
    let degrees = Quantity::Temperature.unit(units);
    let cold = |outcome: &Outcome| degrees.shown(outcome.crop_air_min_c);
    let money = Scale::of(found.as_it_is.cost, effects.iter().map(|e| [e.less.cost, e.more.cost]));
    let degree =
        Scale::of(Some(cold(&found.as_it_is)), effects.iter().map(|e| [Some(cold(&e.less)), Some(cold(&e.more))]));
    let amount = |v: f64| format::amount(v);
    let tenth = |v: f64| format::number(v, 1);
    let (head, response) = ui.allocate_exact_size(vec2(ui.available_width(), 36.0), Sense::hover());
    let names: Vec<&str> = effects.iter().map(|effect| effect.name).collect();
    let said = format!("What matters, most first: {}", names.join(", "));
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, &said));
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    let draft = &state.document.draft;
    let colour = draft.tags.get(draft.selected()).map_or(t.accent, |tag| palette::scenario(theme, tag.mark));
    scale_ui(ui, columns.bar(head, 0), &format!("Winter cost, {currency}"), &money, &amount, t);
    scale_ui(ui, columns.bar(head, 1), &format!("Lowest at the crop, {}", degrees.symbol), &degree, &tenth, t);
    legend_ui(ui, Rect::from_min_size(head.min, vec2(columns.name, head.height())), colour, t);
    ui.painter().hline(head.x_range(), head.bottom(), egui::Stroke::new(1.0, t.hairline));
    let height = (ui.available_height() - REASON).max(4.0 * HEIGHT);
    egui::ScrollArea::vertical().id_salt("doubts").max_height(height).auto_shrink([false, true]).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        for (place, effect) in effects.iter().enumerate() {
            let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT), Sense::hover());
            let name = Rect::from_min_size(row.min, vec2(columns.name, HEIGHT));
            name_ui(ui, state, name, place, effect, t);
            if ui.rect_contains_pointer(row) {
                state.matters_view.told = place;
            }
            let bar = |less, more| Bar { less, more, colour };
            bar_ui(ui, columns.bar(row, 0), &bar(effect.less.cost, effect.more.cost), &money, &amount, t);
            let degrees = bar(Some(cold(&effect.less)), Some(cold(&effect.more)));
            bar_ui(ui, columns.bar(row, 1), &degrees, &degree, &tenth, t);
        }
    });
}

/// What a bar's two ends mean.
fn legend_ui(ui: &Ui, rect: Rect, colour: egui::Color32, t: &Tokens) {
    let painter = ui.painter();
    let mut x = rect.left();
    for (text, filled) in [("less heat", false), ("more heat or money", true)] {
        let sample = Rect::from_min_size(pos2(x, rect.bottom() - 14.0), vec2(14.0, 9.0));
        crate::gui::plots::doubts::half(painter, sample, colour, filled);
        let place = pos2(sample.right() + 5.0, sample.center().y);
        let drawn = painter.text(place, egui::Align2::LEFT_CENTER, text, regular(SMALL), t.soft);
        x = drawn.right() + 12.0;
    }
}

/// A doubt's name and range; a click opens the input.
fn name_ui(ui: &mut Ui, state: &mut State, rect: Rect, place: usize, effect: &Effect, t: &Tokens) {
    let response = ui.interact(rect, ui.scope_id().with(("doubt", effect.name)), Sense::click());
    let (title, open) = way_to(effect.input);
    let money = |o: &Outcome| {
        o.cost.map_or("unknown".to_owned(), |c| format::money(c, &state.document.draft.study.prices.currency))
    };
    let cold = |o: &Outcome| format::temperature(o.crop_air_min_c, state.prefs.units);
    let range = effect.range_in(state.prefs.units);
    let said = format!(
        "{}, {range}: cost {} to {}, lowest at the crop {} to {}. Open {title} in the editor",
        effect.name,
        money(&effect.less),
        money(&effect.more),
        cold(&effect.less),
        cold(&effect.more)
    );
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &said));
    let lit = response.hovered() || response.has_focus();
    let painter = ui.painter().with_clip_rect(rect.intersect(ui.clip_rect()));
    let clipped = |text: &str, font, colour| cut(&painter, text, font, colour, rect.width());
    let name = clipped(effect.name, semibold(BODY), if lit { t.accent } else { t.ink });
    painter.galley(rect.left_top() + vec2(0.0, 2.0), name, t.ink);
    painter.galley(rect.left_top() + vec2(0.0, 20.0), clipped(&range, regular(SMALL), t.soft), t.soft);
    if response.has_focus() {
        state.matters_view.told = place;
    }
    if response.gained_focus() {
        response.scroll_to_me(None);
    }
    marks::focus_ring(ui, &response, rect);
    if response.clicked() {
        match open {
            Opens::Section(section) => state.sought = Some(section),
            Opens::Site => state.site_sought = true,
            Opens::Prices => state.prices_sought = true,
        }
        ui.ctx().request_repaint();
    }
    response.on_hover_cursor(egui::CursorIcon::PointingHand).on_hover_text(format!("Click to edit: {title}"));
}

/// What a click opens.
enum Opens {
    Section(Section),
    Site,
    Prices,
}

/// The editor's section of an input, by its path in the file.
fn way_to(input: &str) -> (&'static str, Opens) {
    let section = match input.split('.').next() {
        Some("site") => return (SITE, Opens::Site),
        Some("prices") => return (PRICES, Opens::Prices),
        Some("covering") => Section::Covering,
        Some("tent") => Section::Tent,
        Some("heater") => Section::Heater,
        _ => Section::House,
    };
    (section.title(), Opens::Section(section))
}

/// Why the doubt under the pointer is moved so far.
fn reason_ui(ui: &mut Ui, effects: &[Effect], told: usize, units: crate::units::UnitSystem, t: &Tokens) {
    let Some(effect) = effects.get(told).or(effects.first()) else { return };
    let text = format!("{}, {}: {}.", effect.name, effect.range_in(units), effect.reason);
    ui.add(Label::new(RichText::new(text).size(SMALL).color(t.soft)).wrap());
}
