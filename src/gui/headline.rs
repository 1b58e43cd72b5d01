//! The figures that decide, for the chosen scenario, each with its difference from the reference.

use super::board::Standing;
use super::fields::{lower, sentence};
use super::marks::{Icon, icon_button_sized};
use super::state::State;
use super::theme::{FIGURE, HEADING, SMALL, Tokens, regular, semibold, tokens};
use super::workings::panels_of;
use crate::format;
use crate::season::Summary;
use crate::season::sensitivity::Sensitivity;
use crate::units::{Quantity, UnitSystem};
use crate::working::{Panel, Topic};
use egui::{Align2, Color32, FontId, Rect, Response, Sense, Stroke, Ui, pos2, vec2};

/// Height of the row of figures.
const HEIGHT: f32 = 92.0;

/// Share of the width that each figure takes.
const SHARES: [f32; 5] = [0.2, 0.172, 0.205, 0.228, 0.195];

/// One figure.
struct Figure {
    topic: Topic,
    value: String,
    note: String,
    /// A second note below it; empty for none.
    more: String,
    hover: String,
    /// How sure the figure is, and why.
    sureness: String,
    warn: bool,
}

/// How sure money and fuel are. The spread of winters is the standard deviation of a season's degree-days in 86 seasons of
/// Clemson, South Carolina (NOAA daily record, 1930 to 2020): 12 % at a base of 65 °F, 27 % at 50 °F.
const SURE_OF_SUMS: &str = "How sure: this is a typical year, not a forecast. Winters differ by about an eighth to a quarter \
    in what they ask for, the more the lower the setpoint. Of the house, air leakage is the largest unknown: look at its \
    tightness before trusting the sum. Differences between scenarios are surer than either sum.";
/// How sure temperatures are.
const SURE_OF_COLD: &str = "How sure: the air is taken as well mixed. Edges and corners can be 2 K colder, leaves under a clear \
    sky too, and a colder night than this year's coldest will come.";
/// What is said of a house whose doubts have not been tried.
const LARGEST_UNKNOWN: &str = "Leakage is the largest unknown.";
/// How sure the heater's margin is.
const SURE_OF_LOAD: &str = "How sure: the load rests on handbook values for sheets and air leakage, good to about a quarter for \
    a small house. Wind through gaps is the largest unknown.";

/// The row of figures.
pub fn headline_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT), Sense::hover());
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.hairline));
    let Some((season, standing)) = state.chosen_season() else {
        let text = match state
            .document
            .draft
            .tags
            .get(state.document.draft.selected())
            .and_then(|tag| state.board.failure(tag.id))
        {
            Some(reason) => sentence(reason),
            None if !state.troubles.is_empty() => "No figures yet. Mend what is marked in the editor".to_owned(),
            None => "Working out the winter…".to_owned(),
        };
        let galley = ui.painter().layout(text, regular(HEADING), t.soft, rect.width());
        ui.painter().galley(rect.left_top() + vec2(0.0, 16.0), galley, t.soft);
        return;
    };
    let fade = if standing == Standing::Stale { 0.45 } else { 1.0 };
    let own = &season.run.summary;
    let other = state
        .reference_season()
        .filter(|_| state.document.draft.study.reference != state.document.draft.selected())
        .map(|(reference, _)| &reference.run.summary);
    let currency = &state.document.draft.study.prices.currency;
    let mut figures = figures(own, other, currency, state.prefs.units);
    if let Some(matters) = state.chosen_matters() {
        say_how_sure(&mut figures, &matters, currency, state.prefs.units);
    }
    let season = season.clone();
    let panels = panels_of(state, &season);
    let (mut x, mut asked) = (rect.left(), None);
    for (index, (figure, share)) in figures.iter().zip(SHARES).enumerate() {
        let width = rect.width() * share;
        let cell = Rect::from_min_size(pos2(x, rect.top()), vec2(width - 8.0, HEIGHT - 6.0));
        x += width;
        let size = if index == 0 { FIGURE } else { HEADING + 2.0 };
        let panel = panels.iter().find(|panel| panel.topic == figure.topic);
        let response = paint(ui, cell, figure, size, fade, &t).on_hover_ui(|ui| explain_ui(ui, figure, panel, &t));
        if response.clicked() || how_ui(ui, cell, figure.topic).clicked() {
            asked = Some(figure.topic);
        }
    }
    if asked.is_some() {
        state.workings.topic = asked;
    }
}

/// What the figure is, its formula with this scenario's numbers, its source, and how sure it is.
fn explain_ui(ui: &mut Ui, figure: &Figure, panel: Option<&Panel>, t: &Tokens) {
    ui.label(&figure.hover);
    let last = panel.and_then(|panel| panel.accounts.iter().rev().find(|account| !account.rows.is_empty()));
    for row in last.iter().flat_map(|account| &account.rows).filter(|row| !row.factors.is_empty()) {
        ui.label(format!("{}: {} = {}", row.name, row.working(), row.number.text()));
    }
    let small = |text: String| egui::RichText::new(text).small().color(t.soft);
    if let Some(panel) = panel {
        ui.label(small(format!("{} Source: {}", panel.formula, panel.source)));
    }
    ui.label(small(figure.sureness.clone()));
    ui.label(egui::RichText::new("Click for every line of it").small().color(t.accent));
}

/// The small button behind a caption, for keyboard and screen reader; the whole figure can be clicked too.
fn how_ui(ui: &mut Ui, cell: Rect, topic: Topic) -> Response {
    let caption = ui.painter().layout_no_wrap(topic.name().to_owned(), regular(SMALL), Color32::PLACEHOLDER);
    let place = Rect::from_center_size(cell.left_top() + vec2(caption.size().x + 13.0, 10.0), vec2(20.0, 20.0));
    let mut child = ui.new_child(egui::UiBuilder::new().max_rect(place).id_salt(("how", topic.name())));
    icon_button_sized(&mut child, Icon::How, &format!("How {} was worked out", topic.name()), place.size())
}

/// The size at which a figure fits its cell: long ones, such as millions with a word for a currency, are set smaller.
fn fitting(painter: &egui::Painter, text: &str, font: FontId, least: f32, width: f32) -> FontId {
    let natural = painter.layout_no_wrap(text.to_owned(), font.clone(), Color32::PLACEHOLDER).size().x;
    if natural <= width { font } else { FontId { size: (font.size * width / natural).max(least), ..font } }
}

fn paint(ui: &Ui, cell: Rect, figure: &Figure, size: f32, fade: f32, t: &Tokens) -> Response {
    let painter = ui.painter().with_clip_rect(cell.expand2(vec2(4.0, 4.0)));
    let colour = |c: Color32| c.gamma_multiply(fade);
    painter.text(cell.left_top() + vec2(0.0, 10.0), Align2::LEFT_CENTER, figure.topic.name(), regular(SMALL), t.soft);
    let ink = if figure.warn { t.warn } else { t.ink };
    let font = fitting(&painter, &figure.value, semibold(size), SMALL, cell.width());
    painter.text(pos2(cell.left(), cell.top() + 36.0), Align2::LEFT_CENTER, &figure.value, font, colour(ink));
    for (text, y) in [(&figure.note, 61.0), (&figure.more, 78.0)] {
        let font = fitting(&painter, text, regular(SMALL), 0.85 * SMALL, cell.width());
        painter.text(pos2(cell.left(), cell.top() + y), Align2::LEFT_CENTER, text, font, colour(t.soft));
    }
    let response = ui.interact(cell, ui.scope_id().with(figure.topic.name()), Sense::CLICK);
    response.widget_info(|| {
        egui::WidgetInfo::labeled(
            egui::Role::Label,
            true,
            format!("{} {} {} {}", figure.topic.name(), figure.value, figure.note, figure.more).trim_end().to_owned(),
        )
    });
    response
}

fn figures(own: &Summary, other: Option<&Summary>, currency: &str, units: UnitSystem) -> Vec<Figure> {
    vec![cost(own, other, currency), fuel(own, other), lowest(own, other, units), short(own, other), margin(own, units)]
}

/// Puts what was worked out of the doubts in the place of what is said of any house.
fn say_how_sure(figures: &mut [Figure], matters: &Sensitivity, currency: &str, units: UnitSystem) {
    let Some(likely) = matters.likely() else { return };
    let first = matters.effects.first().map_or("", |effect| effect.name);
    let house = matters.largest_of_the_house().filter(|name| *name != first);
    let also = house.map_or(String::new(), |name| format!(", of the house {}", lower(name)));
    let sure = format!(
        "How sure: {}, if what nobody knows exactly is off by as much as it may be, each for itself, and the winter is milder \
         or harder than nine in ten. {first} moves it most{also}. The view What matters shows each. Differences between \
         scenarios are surer than either sum.",
        lower(&likely.text(currency)),
    );
    let coldest = matters
        .effects
        .iter()
        .max_by(|a, b| a.moves_crop_air_k(&matters.as_it_is).total_cmp(&b.moves_crop_air_k(&matters.as_it_is)));
    if let (Some(effect), Some(figure)) = (coldest, figures.iter_mut().find(|f| f.topic == Topic::Lowest)) {
        let [less, more] = [&effect.less, &effect.more].map(|outcome| outcome.crop_air_min_c);
        let lowest = format::temperature(less.min(more), units);
        figure.sureness = format!(
            "{SURE_OF_COLD} Of what nobody knows exactly, {} moves it most: down to {lowest}. The view What matters \
             shows each.",
            lower(effect.name)
        );
    }
    for figure in figures.iter_mut().filter(|f| matches!(f.topic, Topic::Cost | Topic::Fuel)) {
        figure.sureness.clone_from(&sure);
        if figure.topic == Topic::Cost {
            figure.more = std::mem::replace(&mut figure.note, likely.band(currency));
        }
    }
}

fn cost(own: &Summary, other: Option<&Summary>, currency: &str) -> Figure {
    let note = match (own.cost, other.map(|o| o.cost)) {
        (Some(cost), Some(Some(reference))) if (cost - reference).abs() < 0.005 => "as the reference".to_owned(),
        (Some(cost), Some(Some(reference))) => {
            let percent = if reference > 0.0 {
                format!(" ({} %)", format::signed((cost / reference - 1.0) * 100.0, 0))
            } else {
                String::new()
            };
            format!("{}{percent}", format::money_difference(cost - reference, currency))
        }
        (None, _) => "a price is missing".to_owned(),
        (Some(_), None) => "the reference".to_owned(),
        (Some(_), Some(None)) => "the reference has no price".to_owned(),
    };
    let standing = format::money(own.standing_charges, currency);
    Figure {
        topic: Topic::Cost,
        value: own.cost.map_or_else(|| "–".to_owned(), |c| format::money(c, currency)),
        note,
        hover: format!(
            "Fuel, fans and standing charges of the season; below, the difference from the reference.\nHeat delivered {} kWh, energy bought {} kWh, standing charges {standing}",
            format::number(own.heat_delivered_kwh, 0),
            format::number(own.energy_bought_kwh, 0),
        ),
        more: String::new(),
        sureness: SURE_OF_SUMS.to_owned(),
        warn: own.cost.is_none(),
    }
}

fn fuel(own: &Summary, other: Option<&Summary>) -> Figure {
    let alike = |o: &&Summary| !o.fuel_unit.is_empty() && o.fuel_unit == own.fuel_unit && o.fuel_name == own.fuel_name;
    let note = match other.filter(alike) {
        Some(o) => format!("{} {}", format::signed(own.fuel_quantity - o.fuel_quantity, 0), own.fuel_unit),
        None if own.fuel_name.is_empty() => "no heater".to_owned(),
        None => own.fuel_name.clone(),
    };
    let bought = if own.fuel_unit.is_empty() {
        "–".to_owned()
    } else {
        format!("{} {}", format::fuel(own.fuel_quantity), own.fuel_unit)
    };
    let mut hover = format!("{} for the first heater, in the unit it is bought in", own.fuel_name);
    if !own.standby_fuel_unit.is_empty() {
        hover += &format!("\nStandby heater {} {}", format::fuel(own.standby_fuel_quantity), own.standby_fuel_unit);
    }
    if own.fan_kwh > 0.5 {
        hover += &format!("\nFans {} kWh", format::number(own.fan_kwh, 0));
    }
    Figure {
        topic: Topic::Fuel,
        value: bought,
        note,
        hover,
        more: String::new(),
        sureness: SURE_OF_SUMS.to_owned(),
        warn: false,
    }
}

fn lowest(own: &Summary, other: Option<&Summary>, units: UnitSystem) -> Figure {
    let when = own.crop_zone_min_at.map_or_else(|| "held at setpoint".to_owned(), format::stamp);
    let step = Quantity::TemperatureDifference.unit(units);
    let mut hover = format!(
        "Lowest hourly mean of the air round the crop. Crop limit {}",
        format::temperature(own.crop_limit_c, units)
    );
    if let Some(o) = other {
        let difference = step.shown(own.crop_zone_min_c - o.crop_zone_min_c);
        hover += &format!("\n{} {} against the reference", format::signed(difference, 1), step.symbol);
    }
    Figure {
        topic: Topic::Lowest,
        value: format::temperature(own.crop_zone_min_c, units),
        note: when,
        hover,
        more: String::new(),
        sureness: format!("{SURE_OF_COLD} {LARGEST_UNKNOWN}"),
        warn: own.hours_below_crop_limit > 0,
    }
}

fn short(own: &Summary, other: Option<&Summary>) -> Figure {
    let hours = own.hours_below_crop_limit;
    let note = match other {
        Some(o) if o.hours_below_crop_limit != hours => {
            format!("{} h to reference", format::signed(hours as f64 - o.hours_below_crop_limit as f64, 0))
        }
        _ => format!("setpoint {} h", format::number(own.hours_below_setpoint as f64, 0)),
    };
    Figure {
        topic: Topic::BelowLimit,
        value: format!("{} h", format::number(hours as f64, 0)),
        note,
        hover: format!(
            "Hours of the season below the crop limit; {} K·h in all.\nBelow setpoint {} h, {} K·h",
            format::number(own.degree_hours_below_crop_limit_kh, 0),
            format::number(own.hours_below_setpoint as f64, 0),
            format::number(own.degree_hours_below_setpoint_kh, 0),
        ),
        more: String::new(),
        sureness: format!("{SURE_OF_COLD} {LARGEST_UNKNOWN}"),
        warn: hours > 0,
    }
}

fn margin(own: &Summary, units: UnitSystem) -> Figure {
    let ratio = own.rated_heater_w / own.design_load_w_99_6;
    let sensible = own.design_load_w_99_6 > 1.0 && own.rated_heater_w > 0.0;
    Figure {
        topic: Topic::Margin,
        value: if sensible { format!("{}×", format::number(ratio, 1)) } else { "–".to_owned() },
        note: format!("load {}", format::power(own.design_load_w_99_6)),
        hover: format!(
            "Rated output {} over the design load {} at {} outdoors (colder in 0.4 % of the year's hours).\nLargest hour of the season {}",
            format::power(own.rated_heater_w),
            format::power(own.design_load_w_99_6),
            format::temperature(own.design_outdoor_c_99_6, units),
            format::power(own.peak_heater_w),
        ),
        more: String::new(),
        sureness: SURE_OF_LOAD.to_owned(),
        warn: sensible && ratio < 1.0,
    }
}
