//! Where the saving comes from: the baseline, what each change takes away or adds, and the scenario as it is.

use crate::figures;
use crate::format;
use crate::gui::asked::Standing;
use crate::gui::board::Season;
use crate::gui::handout::{Make, handout_ui};
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, Tokens, regular, semibold, tokens};
use crate::gui::views::choice;
use crate::season::saving::{RUNS, SavingStep};
use egui::{Align2, Rect, RichText, Sense, Stroke, Ui, pos2, vec2};

/// Width of the names and of the numbers beside the bars.
const NAMES: f32 = 200.0;
const NUMBERS: f32 = 110.0;
/// Most that the bars take.
const WIDEST: f32 = 640.0;
/// Height of a bar's row.
const ROW: f32 = 24.0;

/// The chart of the chosen scenario.
pub fn steps_ui(ui: &mut Ui, state: &mut State, width: f32) {
    let name = state.document.draft.scenario().map(|s| s.name.clone()).unwrap_or_default();
    let Some(season) = state.chosen_season().map(|(season, _)| season.clone()) else { return };
    let steps = match state.insights.standing(&season) {
        Standing::Known(insight) => insight.steps.clone(),
        _ => Vec::new(),
    };
    let currency = state.document.draft.study.prices.currency.clone();
    let figures = || -> Make {
        let name = name.clone();
        Box::new(move || figures::steps(&[(&name, &steps)], &currency))
    };
    handout_ui(ui, state, "steps of the saving", None, figures, |ui, state| {
        chart_ui(ui, state, &season, &name, width);
    });
}

fn chart_ui(ui: &mut Ui, state: &mut State, season: &Season, name: &str, width: f32) {
    let t = tokens(ui);
    ui.horizontal(|ui| {
        ui.label(
            RichText::new(format!("Where the saving of {} comes from", format::short_name(name))).font(semibold(BODY)),
        );
        ui.add_space(12.0);
        for (name, money) in [("Heat, kWh", false), ("Money", true)] {
            if choice(ui, name, state.side.money == money, SMALL + 0.5) {
                state.side.money = money;
            }
        }
    });
    let (money, currency) = (state.side.money, state.document.draft.study.prices.currency.clone());
    let steps = match state.insights.standing(season) {
        Standing::Known(insight) => insight.steps.clone(),
        Standing::Working(done) => {
            let share = done as f32 / RUNS as f32;
            let text = format!("{done} of {RUNS} winters");
            ui.horizontal(|ui| {
                ui.add(egui::ProgressBar::new(share).desired_width(320.0).text(text));
                if ui.button("Cancel").clicked() {
                    state.insights.give_up();
                }
            });
            return;
        }
        Standing::Failed(why) => {
            let why = why.to_owned();
            ui.horizontal(|ui| {
                ui.label(RichText::new(why).color(t.soft));
                if ui.button("Work it out").clicked() {
                    state.insights.try_again();
                }
            });
            return;
        }
    };
    let values: Option<Vec<f64>> = steps.iter().map(|s| if money { s.cost } else { Some(s.heat_kwh) }).collect();
    let Some(values) = values else {
        ui.label(RichText::new("A price is missing, or there is no heater that buys anything").color(t.soft));
        return;
    };
    let show = |value: f64, signed: bool| match (money, signed) {
        (true, true) => format::money_difference(value, &currency),
        (true, false) => format::money(value, &currency),
        (false, true) => format::signed(value, 0),
        (false, false) => format::number(value, 0),
    };
    bars_ui(ui, &steps, &values, &show, width, &t);
    ui.label(
        RichText::new("Each bar is the difference of two whole winters; fans and standing charges are outside.")
            .size(SMALL)
            .color(t.soft),
    );
}

fn bars_ui(
    ui: &mut Ui,
    steps: &[SavingStep],
    values: &[f64],
    show: &dyn Fn(f64, bool) -> String,
    width: f32,
    t: &Tokens,
) {
    let most = values.iter().copied().fold(1e-9, f64::max);
    let bars = (width.min(ui.clip_rect().width()) - NAMES - NUMBERS).clamp(120.0, WIDEST);
    let x = |value: f64| (value / most) as f32 * bars;
    let row = NAMES + bars + NUMBERS;
    for (index, (step, value)) in steps.iter().zip(values).enumerate() {
        let before = index.checked_sub(1).and_then(|i| values.get(i)).copied();
        let (from, to, text) = match before {
            None => (0.0, *value, show(*value, false)),
            Some(before) => (before, *value, show(value - before, true)),
        };
        bar_ui(ui, step.change.name(), row, (x(from), x(to)), &text, before.is_none(), t);
    }
    if let Some(last) = values.last() {
        bar_ui(ui, "The scenario", row, (0.0, x(*last)), &show(*last, false), true, t);
    }
}

/// One bar: a total is solid, a saving is filled lightly, an increase is outlined and says so by its sign.
fn bar_ui(ui: &mut Ui, name: &str, width: f32, (from, to): (f32, f32), text: &str, total: bool, t: &Tokens) {
    let (rect, response) = ui.allocate_exact_size(vec2(width, ROW), Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, format!("{name} {text}")));
    let painter = ui.painter();
    let middle = rect.center().y;
    let font = if total { semibold(BODY - 0.5) } else { regular(BODY - 0.5) };
    painter.text(pos2(rect.left(), middle), Align2::LEFT_CENTER, name, font.clone(), t.ink);
    let zero = rect.left() + NAMES;
    let bar = Rect::from_x_y_ranges(
        zero + from.min(to)..=zero + from.max(to).max(from.min(to) + 1.0),
        middle - 7.0..=middle + 7.0,
    );
    if total {
        painter.rect_filled(bar, 0.0, t.soft);
    } else if to <= from {
        painter.rect_filled(bar, 0.0, t.accent.gamma_multiply(0.55));
    } else {
        painter.rect_stroke(bar, 0.0, Stroke::new(1.6, t.warn), egui::StrokeKind::Inside);
    }
    painter.vline(zero, rect.y_range(), Stroke::new(1.0, t.hairline));
    painter.text(pos2(bar.right() + 8.0, middle), Align2::LEFT_CENTER, text, font, t.ink);
}
