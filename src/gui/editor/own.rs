//! Materials of the study's own: sheets, night screens and fuels that the catalogues lack, each with its origin.

use crate::gui::fields::{Form, Spec, row};
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, semibold, tokens};
use crate::model::{
    Catalogue, ChoiceInput, Fuel, FuelUnit, OwnRows, PartCovering, Scenario, Screen, Sheet, SheetKind, Study,
};
use crate::units::Quantity;
use egui::{RichText, Ui};

/// The section.
pub fn own_ui(ui: &mut Ui, state: &mut State) {
    let mut own = state.document.draft.study.own.clone();
    let before = lengths(&own);
    let rows = state.rows.clone();
    let currency = state.document.draft.study.prices.currency.clone();
    let mut form = Form::new(state.prefs.units, &currency, (&mut state.edits, &state.troubles), "", "own material");
    let study = &state.document.draft.study;
    note_ui(ui, "What is typed here is kept in the study and can be chosen like any other row of the lists.");
    list_ui(ui, &mut form, "sheets", "Sheet", &mut own.sheets, study, sheet_ui, |key| copy_of_sheet(&rows, key));
    list_ui(ui, &mut form, "screens", "Night screen", &mut own.screens, study, screen_ui, |key| Screen {
        key,
        name: "Own screen".to_owned(),
        ..Screen::default()
    });
    list_ui(ui, &mut form, "fuels", "Fuel", &mut own.fuels, study, fuel_ui, new_fuel);
    if lengths(&own) != before {
        form.note("list", ui.make_persistent_id(("own rows", ui.ctx().cumulative_frame_nr())));
    }
    state.document.draft.study.own = own;
}

fn lengths(own: &OwnRows) -> [usize; 3] {
    [own.sheets.len(), own.screens.len(), own.fuels.len()]
}

fn note_ui(ui: &mut Ui, text: &str) {
    ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(tokens(ui).soft)).wrap());
}

/// A row that a study can own.
trait OwnRow {
    fn key(&self) -> &str;
    /// The first scenario that uses the row of this key.
    fn used_by<'a>(study: &'a Study, key: &str) -> Option<&'a Scenario>;
}

impl OwnRow for Sheet {
    fn key(&self) -> &str {
        &self.key
    }

    fn used_by<'a>(study: &'a Study, key: &str) -> Option<&'a Scenario> {
        let has = |sheets: &[String]| sheets.iter().any(|sheet| sheet == key);
        study.scenarios.iter().find(|s| {
            let parts = &s.covering.exceptions;
            has(&s.covering.sheets)
                || has(&s.tent.sheets)
                || parts.iter().any(|e| matches!(&e.covering, PartCovering::Sheets(sheets) if has(sheets)))
        })
    }
}

impl OwnRow for Screen {
    fn key(&self) -> &str {
        &self.key
    }

    fn used_by<'a>(study: &'a Study, key: &str) -> Option<&'a Scenario> {
        study.scenarios.iter().find(|s| s.night_cover.screen == key || s.tent.night_cover.screen == key)
    }
}

impl OwnRow for Fuel {
    fn key(&self) -> &str {
        &self.key
    }

    fn used_by<'a>(study: &'a Study, key: &str) -> Option<&'a Scenario> {
        study.scenarios.iter().find(|s| s.heater.fuel == key || s.standby.fuel == key)
    }
}

/// One list: its rows, each with a way to take it out, and a button for a new one.
#[allow(clippy::too_many_arguments)]
fn list_ui<T: OwnRow>(
    ui: &mut Ui,
    form: &mut Form,
    list: &'static str,
    title: &str,
    rows: &mut Vec<T>,
    study: &Study,
    row_ui: fn(&mut Ui, &mut Form, &mut T),
    new: impl FnOnce(String) -> T,
) {
    let mut gone = None;
    for (index, own) in rows.iter_mut().enumerate() {
        form.place = format!("own.{list}[{index}]");
        ui.push_id((list, index), |ui| {
            ui.add_space(4.0);
            row(ui, false, |ui| {
                ui.label(RichText::new(format!("{title} {}", index + 1)).font(semibold(BODY)));
            });
            form.troubles_here(ui);
            row_ui(ui, form, own);
            row(ui, false, |ui| {
                let user = T::used_by(study, own.key());
                let button = ui.add_enabled(user.is_none(), egui::Button::new("Take it away"));
                let button = match user {
                    Some(scenario) => button.on_disabled_hover_text(format!("“{}” uses it", scenario.name)),
                    None => button,
                };
                if button.clicked() {
                    gone = Some(index);
                }
            });
        });
    }
    if let Some(index) = gone {
        rows.remove(index);
    }
    row(ui, false, |ui| {
        if ui.button(format!("Add a {} of your own", title.to_lowercase())).clicked() {
            rows.push(new(free_key(list, rows)));
        }
    });
}

/// A key that no own row of the list has.
fn free_key<T: OwnRow>(list: &str, rows: &[T]) -> String {
    let keys = (1..).map(|number| format!("own-{}-{number}", list.trim_end_matches('s')));
    keys.into_iter().find(|key| rows.iter().all(|row| row.key() != key)).unwrap_or_default()
}

/// A new sheet begins as a copy of the plain film, so that every number is plausible.
fn copy_of_sheet(rows: &Catalogue, key: String) -> Sheet {
    let like = rows.sheets.first().cloned().unwrap_or_default();
    Sheet { key, name: "Own sheet".to_owned(), source: String::new(), ..like }
}

fn new_fuel(key: String) -> Fuel {
    Fuel {
        key,
        name: "Own fuel".to_owned(),
        units: vec![FuelUnit { unit: "kg".to_owned(), kwh_gross_per_unit: 5.0 }],
        net_per_gross: 0.93,
        co2_kg_per_kwh: None,
        piped: false,
        source: String::new(),
    }
}

/// Where the numbers of an own row come from.
const SOURCE: ChoiceInput = ChoiceInput {
    key: "source",
    label: "Origin",
    help: "Where the numbers come from: a data sheet, a measurement",
    doubt: None,
};

fn sheet_ui(ui: &mut Ui, form: &mut Form, sheet: &mut Sheet) {
    form.text(ui, &Sheet::name, &mut sheet.name, None);
    let kinds = [
        (SheetKind::Film, "Film".to_owned()),
        (SheetKind::Rigid, "Rigid sheet".to_owned()),
        (SheetKind::Liner, "Liner, its gap included".to_owned()),
    ];
    form.choice(ui, &Sheet::kind, &mut sheet.kind, &kinds, None);
    for input in Sheet::NUMBERS {
        form.number(ui, input, sheet, None);
    }
    form.text(ui, &SOURCE, &mut sheet.source, None);
}

fn screen_ui(ui: &mut Ui, form: &mut Form, screen: &mut Screen) {
    form.text(ui, &Screen::name, &mut screen.name, None);
    for input in Screen::NUMBERS {
        form.number(ui, input, screen, None);
    }
    form.text(ui, &SOURCE, &mut screen.source, None);
}

fn fuel_ui(ui: &mut Ui, form: &mut Form, fuel: &mut Fuel) {
    let name = ChoiceInput { key: "name", label: "Name", help: "Name on screen", doubt: None };
    form.text(ui, &name, &mut fuel.name, None);
    let place = form.place.clone();
    if let Some(unit) = fuel.units.first_mut() {
        form.place = format!("{place}.units[0]");
        let bought_in =
            ChoiceInput { key: "unit", label: "Bought in", help: "Unit in which it is bought", doubt: None };
        form.text(ui, &bought_in, &mut unit.unit, None);
        let heat =
            spec("kwh_gross_per_unit", "Heat in one unit", Quantity::Energy, (0.001, 1.0e7), "Gross heat content");
        if let Some(new) = form.value_row(ui, &heat, unit.kwh_gross_per_unit, None, None) {
            unit.kwh_gross_per_unit = new;
        }
        form.place = place;
    }
    let help = "Net per gross heat content: the sensible share of an unvented flame";
    let net = spec("net_per_gross", "Net per gross", Quantity::Ratio, (0.5, 1.0), help);
    if let Some(new) = form.value_row(ui, &net, fuel.net_per_gross, None, None) {
        fuel.net_per_gross = new;
    }
    let co2 = spec("co2_kg_per_kwh", "CO₂, kg per kWh", Quantity::Ratio, (0.0, 2.0), "Carbon dioxide per kWh gross");
    form.optional(ui, &co2, &mut fuel.co2_kg_per_kwh, 0.2, None);
    form.text(ui, &SOURCE, &mut fuel.source, None);
}

fn spec(key: &'static str, label: &'static str, quantity: Quantity, range: (f64, f64), help: &'static str) -> Spec {
    Spec { key, label, quantity, min: range.0, max: range.1, help, source: "" }
}
