//! Which inputs are swept, and how far: two rows of entries, kept with the study.

use crate::explore::{NumericInput, numeric_inputs};
use crate::gui::fields::{Form, Spec};
use crate::gui::marks::{self, Icon};
use crate::gui::state::State;
use crate::gui::theme::{ROW, SMALL, tokens};
use crate::model::{Study, SweptInput};
use crate::units::Quantity;
use egui::{Align, Layout, Popup, PopupCloseBehavior, RichText, TextEdit, Ui, vec2};

/// Inputs that move no season, or that another one moves better.
const HIDDEN: [&str; 6] = ["many_winters.", "hard_night.", "precautions.", "costs[", "season.from_", "season.to_"];
/// Width of an entry.
const ENTRY: f32 = 66.0;
/// Width of the list of inputs.
const LIST: f32 = 340.0;

/// Both rows.
pub fn asked_ui(ui: &mut Ui, state: &mut State) {
    let mut swept = state.document.draft.study.swept.clone();
    let inputs = offered(&state.document.draft.study);
    ui.spacing_mut().item_spacing.y = 2.0;
    input_ui(ui, state, &inputs, &mut swept.first, "swept.first");
    input_ui(ui, state, &inputs, &mut swept.second, "swept.second");
    ui.spacing_mut().item_spacing.y = 4.0;
    state.document.draft.study.swept = swept;
}

/// Inputs that can be swept.
fn offered(study: &Study) -> Vec<NumericInput> {
    let moves = |input: &NumericInput| !HIDDEN.iter().any(|hidden| input.path.starts_with(hidden));
    numeric_inputs(study).into_iter().filter(moves).collect()
}

fn input_ui(ui: &mut Ui, state: &mut State, inputs: &[NumericInput], asked: &mut SweptInput, place: &'static str) {
    let t = tokens(ui);
    let first = place == "swept.first";
    ui.push_id(place, |ui| {
        ui.allocate_ui_with_layout(vec2(ui.available_width(), ROW), Layout::left_to_right(Align::Center), |ui| {
            ui.spacing_mut().item_spacing.x = 6.0;
            let soft = |text: &str| RichText::new(text).color(t.soft);
            ui.add_sized(vec2(42.0, ROW), egui::Label::new(soft(if first { "Move" } else { "and" })));
            let chosen = inputs.iter().find(|input| input.path == asked.input);
            let room = ui.available_width() - 2.0 * ENTRY - 206.0;
            picker_ui(ui, state, inputs, chosen, asked, (first, room.clamp(140.0, 330.0)));
            let Some(input) = inputs.iter().find(|input| input.path == asked.input) else { return };
            let spec = |key, label, quantity, (min, max)| Spec { key, label, quantity, min, max, help: "", source: "" };
            let range = (input.min, input.max);
            let points = (SweptInput::points.min, SweptInput::points.max);
            let currency = state.document.draft.study.prices.currency.clone();
            let mut form = Form::new(state.prefs.units, &currency, (&mut state.edits, &state.troubles), place, "sweep");
            let which = if first { "" } else { " second" };
            let mut entry = |ui: &mut Ui, word: &str, spec: &Spec, value: f64, width: f32| {
                ui.label(soft(word));
                form.cell(ui, spec, value, &format!("Sweep{which} {}", spec.label), width)
            };
            if let Some(from) = entry(ui, "from", &spec("from", "from", input.quantity, range), asked.from, ENTRY) {
                asked.from = from;
            }
            if let Some(to) = entry(ui, "to", &spec("to", "to", input.quantity, range), asked.to, ENTRY) {
                asked.to = to;
            }
            let of_points = spec("points", "points", Quantity::Count, points);
            let symbol = input.quantity.unit(form.units).symbol;
            ui.label(soft(&format!("{symbol} in")));
            if let Some(points) =
                form.cell(ui, &of_points, f64::from(asked.points), &format!("Sweep{which} points"), 40.0)
            {
                asked.points = points.round() as u32;
            }
            ui.label(soft("points"));
        });
    });
}

/// The choice of the input, with a search.
fn picker_ui(
    ui: &mut Ui,
    state: &mut State,
    inputs: &[NumericInput],
    chosen: Option<&NumericInput>,
    asked: &mut SweptInput,
    (first, width): (bool, f32),
) {
    let t = tokens(ui);
    let shown = match chosen {
        Some(input) => input.label.clone(),
        None if asked.input.is_empty() => "nothing else".to_owned(),
        None => asked.input.clone(),
    };
    let text = RichText::new(shown.clone());
    let button = egui::Button::new((text, egui::Atom::grow(), "     ")).truncate().min_size(vec2(width, ROW - 2.0));
    let response = ui.add_sized(vec2(width, ROW - 2.0), button);
    marks::paint_icon(ui.painter(), Icon::Down, response.rect.right_center() - vec2(14.0, 0.0), t.soft);
    let said = format!("{}: {shown}", if first { "Input to sweep" } else { "Second input to sweep" });
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::ComboBox, true, &said));
    let mut taken: Option<SweptInput> = None;
    let search = &mut state.sweep_view.search;
    let study = &state.document.draft.study;
    let selected = state.document.draft.selected();
    Popup::menu(&response).close_behavior(PopupCloseBehavior::CloseOnClickOutside).show(|ui| {
        ui.set_width(LIST);
        let edit = TextEdit::singleline(search).hint_text("Search").desired_width(LIST - 12.0);
        let field = ui.add(edit);
        field.widget_info(|| egui::WidgetInfo::labeled(egui::Role::TextInput, true, "Search inputs"));
        if response.clicked() {
            field.request_focus();
        }
        egui::ScrollArea::vertical().max_height(280.0).show(ui, |ui| {
            ui.set_width(LIST - 8.0);
            if !first && search.is_empty() && ui.selectable_label(asked.input.is_empty(), "nothing else").clicked() {
                taken = Some(SweptInput::default());
            }
            let words = search.to_lowercase();
            let fits = |input: &&NumericInput| words.split_whitespace().all(|w| input.label.to_lowercase().contains(w));
            let mut none = true;
            for input in inputs.iter().filter(fits) {
                none = false;
                if ui.selectable_label(input.path == asked.input, &input.label).clicked() {
                    taken = Some(usual(input, study, selected));
                }
            }
            if none {
                ui.label(RichText::new("No input has such a name").size(SMALL));
            }
        });
        if taken.is_some() {
            ui.close();
        }
    });
    if let Some(taken) = taken {
        *asked = taken;
        state.edits.note("swept input", response.id.with(asked.input.as_str()));
        state.sweep_view.search.clear();
    }
}

/// A range round the value that the scenario has, within what is allowed.
fn usual(input: &NumericInput, study: &Study, scenario: usize) -> SweptInput {
    let value = input.value(study, scenario).unwrap_or(input.min);
    let (from, to) = match input.quantity {
        Quantity::Temperature | Quantity::TemperatureDifference => (value - 4.0, value + 4.0),
        Quantity::Direction => (0.0, 360.0),
        Quantity::HourOfDay => (value - 4.0, value + 4.0),
        _ if input.min < 0.0 && value == 0.0 => (-28.0, 28.0),
        _ if input.whole => (0.0, (2.0 * value).max(4.0)),
        _ if value == 0.0 => (0.0, 0.2 * input.max),
        _ => (0.5 * value, 1.5 * value),
    };
    let [from, to] = [from, to].map(|end| two_figures(end).clamp(input.min, input.max));
    let steps = (to - from).round() as u32 + 1;
    let points = if input.whole && (2..=9).contains(&steps) { steps } else { 9 };
    SweptInput { input: input.path.clone(), from, to, points }
}

/// A value in two figures.
fn two_figures(value: f64) -> f64 {
    if value == 0.0 {
        return 0.0;
    }
    let step = 10_f64.powf(value.abs().log10().floor() - 1.0);
    // Divided, since a power of a tenth is not exact.
    let count = (value / step).round();
    if step < 1.0 { count / (1.0 / step).round() } else { count * step }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_usual_range_lies_round_the_value_and_within_what_is_allowed() {
        let study = crate::storage::demo().expect("the opening study is embedded");
        let of = |path: &str| {
            let all = offered(&study);
            let input = all.iter().find(|input| input.path == path).expect("a path");
            let swept = usual(input, &study, 2);
            (swept.from, swept.to, swept.points)
        };
        let setpoint = study.scenarios[2].heater.setpoint_day_c.expect("a setpoint");
        assert_eq!(of("heater.setpoint_c"), (setpoint - 4.0, setpoint + 4.0, 9));
        assert_eq!(of("season.start_moved_d"), (-28.0, 28.0, 9));
        assert_eq!(of("house.shelter_class").0, 1.0, "from the least class on");
        for input in offered(&study) {
            let swept = usual(&input, &study, 2);
            assert!(input.min <= swept.from && swept.from < swept.to && swept.to <= input.max, "{input:?} {swept:?}");
        }
    }
}
