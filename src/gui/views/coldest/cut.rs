//! The power cut: when and how long, how air or trays cool, and how long each limit is kept.

use super::fields::{hours_ui, start_ui};
use crate::figures;
use crate::format;
use crate::gui::board::Season;
use crate::gui::handout::{BUTTON, Make, handout_ui};
use crate::gui::nights::Answer;
use crate::gui::plots::column::heading;
use crate::gui::plots::legend::{Sample, entry, sample};
use crate::gui::plots::power_cut::{course_name, cut_ui as plot_ui, style};
use crate::gui::plots::room;
use crate::gui::plots::rows::row_of;
use crate::gui::state::State;
use crate::gui::theme::{SMALL, Tokens, regular, tokens};
use crate::gui::views::choice;
use crate::model::Heater;
use crate::season::power_cut::{AskedCut, CutCourse, Measure};
use crate::season::{Hold, POWER_CUT_HOURS};
use crate::units::UnitSystem;
use egui::{Color32, Ui, vec2};
use std::sync::Arc;

/// Width of the names of the times, and of each course's column.
const NAMES: f32 = 94.0;
const COLUMN: f32 = 58.0;

/// Controls of the row above.
pub fn controls_ui(ui: &mut Ui, state: &mut State, season: &Season, cut: Option<&AskedCut>) {
    start_ui(ui, state, season, cut.map_or(0, |cut| cut.start));
    hours_ui(ui, state);
}

/// The answer as the state holds it, taken out of it for this frame.
pub fn ask(ui: &Ui, state: &mut State, season: &Season) -> (Option<Arc<AskedCut>>, bool, Option<String>) {
    let asked = state.document.draft.study.hard_night.clone();
    let answer = state.nights.cut(season, &asked, &state.catalogue, ui.ctx());
    let failed = if let Answer::Failed(why) = &answer { Some((*why).to_owned()) } else { None };
    (answer.shown().cloned(), matches!(answer, Answer::Fresh(_)), failed)
}

/// One sentence that says what there is to see.
pub fn finding(heater: &Heater, cut: &AskedCut, limit_c: f64, units: UnitSystem) -> String {
    let Some(whole) = cut.courses.first() else { return String::new() };
    let limit = format::temperature(limit_c, units);
    let of = |c: &CutCourse| c.unbroken.times.air_to_crop_limit_h;
    let as_described = match of(whole) {
        Hold::Hours(h) if h <= 0.0 => format!("the crop’s air is below {limit} already"),
        Hold::Hours(h) => format!("the crop’s air keeps {limit} for {}", spelt(h)),
        _ => format!("the crop’s air keeps {limit} for over {POWER_CUT_HOURS} hours"),
    };
    let hours_of = |hold: Hold| if let Hold::Hours(h) = hold { h } else { f64::INFINITY };
    let worth = cut.courses.iter().skip(1).min_by(|a, b| hours_of(of(a)).total_cmp(&hours_of(of(b))));
    let without = match worth.and_then(|c| Some((c.without?, of(c)))) {
        Some((measure, Hold::Hours(h))) if hours_of(of(whole)) > h => {
            format!(", without {} for {}", measure.name(), spelt(h))
        }
        _ => String::new(),
    };
    let goes_on = if heater.present && !heater.needs_mains { "the heater goes on and " } else { "" };
    format!("Without mains {goes_on}{as_described}{without}")
}

fn spelt(h: f64) -> String {
    if h < 1.0 {
        format!("{} min", format::number((60.0 * h).max(1.0), 0))
    } else {
        format!("{} h", format::number(h, 1))
    }
}

/// Plot and table.
pub fn cut_ui(ui: &mut Ui, state: &mut State, season: &Season, cut: &Arc<AskedCut>) {
    let t = tokens(ui);
    let units = state.prefs.units;
    let limit_c = season.run.summary.crop_limit_c;
    let figures_width = (NAMES + COLUMN * cut.courses.len() as f32).max(210.0);
    let height = room(ui.available_height(), 4.0);
    let width = ui.available_width() - figures_width - 16.0;
    let down = egui::Layout::top_down(egui::Align::Min);
    let name = state.document.draft.scenario().map(|s| s.name.clone()).unwrap_or_default();
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 16.0;
        ui.allocate_ui_with_layout(vec2(width, height), down, |ui| {
            ui.set_width(width);
            let theirs = Arc::clone(cut);
            let figures = move || -> Make { Box::new(move || figures::power_cut(&name, &theirs, units)) };
            handout_ui(ui, state, "power cut", None, figures, |ui, state| {
                let has_trays = cut.courses.first().is_some_and(|c| !c.course.trays_c.is_empty());
                what_ui(ui, state, has_trays, &t);
                let height = (ui.available_height() - 4.0).max(110.0);
                plot_ui(ui, cut, limit_c, state.coldest.trays && has_trays, units, height, &t);
            });
        });
        ui.allocate_ui_with_layout(vec2(figures_width, height), down, |ui| {
            ui.set_width(figures_width);
            egui::ScrollArea::vertical().id_salt("power cut times").show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 1.0;
                table_ui(ui, cut, limit_c, units, &t);
            });
        });
    });
}

/// Air or trays, and the lines that no column explains.
fn what_ui(ui: &mut Ui, state: &mut State, has_trays: bool, t: &Tokens) {
    ui.horizontal(|ui| {
        ui.set_max_width(ui.available_width() - BUTTON.x);
        ui.spacing_mut().item_spacing.x = 8.0;
        for (name, trays) in [("Air", false), ("Trays", true)] {
            if trays && !has_trays {
                continue;
            }
            if choice(ui, name, (state.coldest.trays && has_trays) == trays, SMALL + 0.5) {
                state.coldest.trays = trays;
            }
        }
        entry(ui, Sample::Line, t.soft, "Outdoors", 80.0);
        entry(ui, Sample::Fine, t.warn, "Crop limit", 80.0);
    });
}

/// How long each limit is kept, a column per course.
fn table_ui(ui: &mut Ui, cut: &AskedCut, limit_c: f64, units: UnitSystem, t: &Tokens) {
    let theme = egui::Theme::from_dark_mode(ui.visuals().dark_mode);
    heads_ui(ui, cut, theme, t);
    heading(ui, "Time until", "");
    let column = |value: &dyn Fn(&CutCourse) -> String| -> Vec<(String, Color32)> {
        cut.courses.iter().map(|c| (value(c), style(c.without, theme, t).0)).collect()
    };
    let limit = format::quantity(limit_c, crate::units::Quantity::Temperature, units, Some(0));
    let freezing = format::quantity(0.0, crate::units::Quantity::Temperature, units, Some(0));
    let unbroken = "If the mains stayed away";
    type Time = fn(&CutCourse) -> Hold;
    let times: [(String, Time); 5] = [
        (format!("air at {limit}"), |c| c.unbroken.times.air_to_crop_limit_h),
        (format!("air at {freezing}"), |c| c.unbroken.times.air_to_freezing_h),
        (format!("trays at {limit}"), |c| c.unbroken.times.trays_to_crop_limit_h),
        (format!("trays at {freezing}"), |c| c.unbroken.times.trays_to_freezing_h),
        ("water freezes".to_owned(), |c| c.unbroken.water_to_freezing_h),
    ];
    for (label, time) in &times {
        row_of(ui, label, &column(&|c| hold(time(c))), COLUMN, unbroken);
    }
    ui.add_space(4.0);
    heading(ui, &format!("{} h without mains", cut.hours), "");
    let degree = |t_c: Option<f64>| t_c.map_or("–".to_owned(), |t_c| short_degree(t_c, units));
    row_of(ui, "lowest air", &column(&|c| degree(c.course.air_min_c())), COLUMN, "Until the heater has caught up");
    row_of(ui, "lowest trays", &column(&|c| degree(c.course.trays_min_c())), COLUMN, "Until the heater has caught up");
    let back = "From the return of the mains until the first heater is at its setpoint again";
    row_of(ui, "caught up in", &column(&|c| hold(c.course.recovery_h)), COLUMN, back);
}

/// What each column stands for: the line of the plot over its name.
fn heads_ui(ui: &mut Ui, cut: &AskedCut, theme: egui::Theme, t: &Tokens) {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 28.0), egui::Sense::hover());
    for (place, course) in cut.courses.iter().rev().enumerate() {
        let right = rect.right() - place as f32 * COLUMN;
        let (colour, line) = style(course.without, theme, t);
        sample(ui.painter(), egui::pos2(right - 21.0, rect.top() + 6.0), line, colour);
        let text = match course.without {
            None => "as it is",
            Some(Measure::Water) => "no water",
            Some(Measure::Tent) => "no tent",
            Some(Measure::NightCovers) => "no covers",
        };
        let at = egui::pos2(right, rect.top() + 19.0);
        ui.painter().text(at, egui::Align2::RIGHT_CENTER, text, regular(SMALL), t.ink);
    }
    let said = cut.courses.iter().map(|c| course_name(c.without)).collect::<Vec<_>>().join(", ");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, format!("Columns: {said}")));
}

/// A temperature that fits a narrow column.
fn short_degree(t_c: f64, units: UnitSystem) -> String {
    let unit = crate::units::Quantity::Temperature.unit(units);
    format!("{}°", format::number(unit.shown(t_c), 1))
}

fn hold(hold: Hold) -> String {
    match hold {
        Hold::Hours(h) if h <= 0.0 => "0".to_owned(),
        Hold::Hours(h) => spelt(h),
        Hold::Beyond => format!(">{POWER_CUT_HOURS} h"),
        Hold::NotApplicable => "–".to_owned(),
    }
}
