//! The climate table: twelve months typed one by one, or pasted at once.

use crate::gui::fields::{Form, Spec, row, warning};
use crate::gui::theme::{SMALL, tokens};
use crate::model::climate_table::{MOST_SUNSHINE_H, MOST_WIND_M_PER_S};
use crate::model::{ChoiceInput, ClimateTable, MonthRow, climate_paste::pasted};
use crate::units::Quantity;
use egui::{Id, RichText, Ui};

/// Widths of the month's name and of a value.
const NAME: f32 = 34.0;
const VALUE: f32 = 56.0;
/// What a switched-on column begins with: three hours of sun a day, half of the sky, a light wind.
const SUNSHINE_H: f64 = 90.0;
const CLOUD_SHARE: f64 = 0.5;
const WIND_M_PER_S: f64 = 3.0;

/// A column that may be absent.
struct Column {
    input: &'static ChoiceInput,
    quantity: Quantity,
    most: f64,
    first: f64,
    of: fn(&mut MonthRow) -> &mut Option<f64>,
}

const COLUMNS: [Column; 3] = [
    Column {
        input: &MonthRow::sunshine_h,
        quantity: Quantity::Count,
        most: MOST_SUNSHINE_H,
        first: SUNSHINE_H,
        of: |m| &mut m.sunshine_h,
    },
    Column {
        input: &MonthRow::cloud_share,
        quantity: Quantity::Share,
        most: 1.0,
        first: CLOUD_SHARE,
        of: |m| &mut m.cloud_share,
    },
    Column {
        input: &MonthRow::wind_m_per_s,
        quantity: Quantity::Speed,
        most: MOST_WIND_M_PER_S,
        first: WIND_M_PER_S,
        of: |m| &mut m.wind_m_per_s,
    },
];

/// The table and the field to paste into.
pub fn months_ui(ui: &mut Ui, form: &mut Form<'_>, table: &mut ClimateTable) {
    form.troubles_at(ui, "weather.months");
    for column in &COLUMNS {
        let mut on = table.months.iter_mut().any(|m| (column.of)(m).is_some());
        let label =
            ChoiceInput { label: column.input.label, key: column.input.key, help: column.input.help, doubt: None };
        let before = on;
        form.switch(ui, &label, &mut on, None);
        if on != before {
            table.months.iter_mut().for_each(|m| *(column.of)(m) = on.then_some(column.first));
        }
    }
    head_ui(ui, form, table);
    let place = form.place.clone();
    for (m, month) in (1..).zip(&mut table.months) {
        form.place = format!("{place}.weather.months[{}]", m - 1);
        month_ui(ui, form, m, month);
    }
    form.place = place;
    paste_ui(ui, form, table);
}

fn head_ui(ui: &mut Ui, form: &Form<'_>, table: &mut ClimateTable) {
    let soft = tokens(ui).soft;
    row(ui, false, |ui| {
        let mut cell = |width: f32, text: String| {
            ui.add_sized([width, 18.0], egui::Label::new(RichText::new(text).size(SMALL).color(soft)).truncate());
        };
        let degrees = Quantity::Temperature.unit(form.units).symbol;
        cell(NAME, String::new());
        cell(VALUE, format!("Min {degrees}"));
        cell(VALUE, format!("Max {degrees}"));
        for column in &COLUMNS {
            if table.months.iter_mut().any(|m| (column.of)(m).is_some()) {
                let unit =
                    if column.quantity == Quantity::Count { "h" } else { column.quantity.unit(form.units).symbol };
                let name = column.input.label.split(' ').next().unwrap_or_default();
                cell(VALUE, format!("{} {unit}", name.replace("Sunshine", "Sun")));
            }
        }
    });
}

fn month_ui(ui: &mut Ui, form: &mut Form<'_>, m: u32, month: &mut MonthRow) {
    let name = crate::format::month(m);
    row(ui, false, |ui| {
        ui.add_sized([NAME, 18.0], egui::Label::new(name));
        for input in MonthRow::NUMBERS {
            let spoken = format!("{} of {name}", input.label);
            if let Some(new) = form.cell(ui, &Spec::of(input), (input.get)(month), &spoken, VALUE) {
                (input.set)(month, new);
            }
        }
        for column in &COLUMNS {
            let value = (column.of)(month);
            if let Some(held) = *value {
                let spoken = format!("{} of {name}", column.input.label);
                *value = form.cell(ui, &spec_of(column), held, &spoken, VALUE).or(Some(held));
            }
        }
    });
    for key in ["min_c", "max_c", "sunshine_h", "cloud_share", "wind_m_per_s"] {
        form.troubles_at(ui, key);
    }
}

fn spec_of(column: &Column) -> Spec {
    Spec {
        key: column.input.key,
        label: column.input.label,
        quantity: column.quantity,
        min: 0.0,
        max: column.most,
        help: column.input.help,
        source: "",
    }
}

/// A field that takes twelve rows at once.
fn paste_ui(ui: &mut Ui, form: &mut Form<'_>, table: &mut ClimateTable) {
    let id = Id::unique("pasted months");
    let Some(mut text) = ui.data(|data| data.get_temp::<String>(id)) else {
        row(ui, false, |ui| {
            let help = "From a web page or a spreadsheet: minimum and maximum, then sunshine hours and wind if known";
            if ui.button("Paste twelve rows…").on_hover_text(help).clicked() {
                ui.data_mut(|data| data.insert_temp(id, String::new()));
            }
        });
        return;
    };
    row(ui, false, |ui| {
        let hint = RichText::new("One row a month: minimum, maximum").color(tokens(ui).soft);
        let edit = egui::TextEdit::multiline(&mut text).hint_text(hint).desired_rows(4);
        ui.add(edit.desired_width(ui.available_width() - 20.0)).accessible_name("Twelve rows");
    });
    let read = pasted(&text, form.units);
    if let (Err(error), false) = (&read, text.trim().is_empty()) {
        warning(ui, &error.to_string());
    }
    let mut open = true;
    row(ui, false, |ui| {
        if ui.add_enabled(read.is_ok(), egui::Button::new("Take these rows")).clicked()
            && let Ok(months) = read
        {
            table.months = months;
            form.note("climate table", id);
            open = false;
        }
        ui.add_space(8.0);
        open &= !ui.button("Leave").clicked();
    });
    ui.data_mut(|data| {
        data.remove::<String>(id);
        if open {
            data.insert_temp(id, text);
        }
    });
}
