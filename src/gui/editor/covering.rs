//! Covering: the stack of sheets, parts that differ, the night cover.

use super::Figures;
use super::layers::layers_ui;
use crate::format;
use crate::gui::fields::{Form, Spec, row};
use crate::gui::marks::{Icon, icon_button};
use crate::gui::theme::{SMALL, tokens};
use crate::model::{Catalogue, Covering, Drawn, NightCover, Part, PartCovering, PartException, Scenario};
use crate::units::Quantity;
use egui::{RichText, Ui};

/// The parts with their names.
pub const PARTS: [(Part, &str); 4] =
    [(Part::Front, "Front wall"), (Part::Back, "Back wall"), (Part::Ends, "End walls"), (Part::Roof, "Roof")];

/// The section.
pub fn covering_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    form.place = format!("{}.covering", figures.place);
    form.part = "covering";
    form.troubles_here(ui);
    let other = reference.map(|r| &r.covering);
    layers_ui(ui, form, &Covering::sheets, &mut s.covering.sheets, figures.rows, other.map(|o| &o.sheets));
    if let Some(shell) = figures.shell {
        let u = format::quantity(shell.u_skin_w_per_m2k, Quantity::UValue, form.units, None);
        let leak = format::quantity(shell.ua_leakage_w_per_k, Quantity::HeatLossCoefficient, form.units, None);
        row(ui, false, |ui| {
            ui.label(RichText::new(format!("U of the skin {u}, leakage {leak}")).size(SMALL).color(tokens(ui).soft));
        });
    }
    exceptions_ui(ui, form, &mut s.covering, other, figures.rows);
    form.place = format!("{}.night_cover", figures.place);
    form.part = "";
    night_cover_ui(ui, form, &mut s.night_cover, reference.map(|r| &r.night_cover), figures.rows, true);
}

fn exceptions_ui(ui: &mut Ui, form: &mut Form, covering: &mut Covering, other: Option<&Covering>, rows: &Catalogue) {
    let before = covering.exceptions.clone();
    let differs = other.is_some_and(|o| o.exceptions != covering.exceptions);
    row(ui, differs, |ui| {
        let input = &Covering::exceptions;
        ui.label(RichText::new(input.label).color(tokens(ui).soft)).on_hover_text(input.help);
    });
    let mut gone = None;
    for (index, exception) in covering.exceptions.iter_mut().enumerate() {
        ui.push_id(("exception", index), |ui| exception_ui(ui, form, index, exception, rows, &mut gone));
    }
    if let Some(index) = gone {
        covering.exceptions.remove(index);
    }
    row(ui, false, |ui| {
        let free = PARTS.iter().find(|(part, _)| covering.exceptions.iter().all(|e| e.part != *part));
        let button = ui.add_enabled(free.is_some(), egui::Button::new("Add a part that differs"));
        if let (true, Some((part, _))) = (button.clicked(), free) {
            covering.exceptions.push(PartException { part: *part, covering: PartCovering::Opaque(1.0) });
        }
    });
    if before.len() != covering.exceptions.len() {
        let id = ui.make_persistent_id(("parts", ui.ctx().cumulative_frame_nr()));
        form.note("parts that differ", id);
    }
    form.troubles_at(ui, "exceptions");
}

fn exception_ui(
    ui: &mut Ui,
    form: &mut Form,
    index: usize,
    exception: &mut PartException,
    rows: &Catalogue,
    gone: &mut Option<usize>,
) {
    let parts = PARTS.map(|(part, name)| (part, name.to_owned()));
    let part = crate::model::ChoiceInput { key: "part", label: "Part", help: "Which part of the house", doubt: None };
    form.choice(ui, &part, &mut exception.part, &parts, None);
    let kind = crate::model::ChoiceInput {
        key: "covering",
        label: "Closed by",
        help: "Sheets of its own, or a wall that passes no light",
        doubt: None,
    };
    let (u, sheets) = match &exception.covering {
        PartCovering::Opaque(u) => (*u, vec!["film".to_owned()]),
        PartCovering::Sheets(sheets) => (1.0, sheets.clone()),
    };
    let options = [
        (PartCovering::Opaque(u), "A boarded wall".to_owned()),
        (PartCovering::Sheets(sheets), "Sheets of its own".to_owned()),
    ];
    form.choice(ui, &kind, &mut exception.covering, &options, None);
    match &mut exception.covering {
        PartCovering::Opaque(u) => {
            let spec = Spec {
                key: "u",
                label: "Its U",
                quantity: Quantity::UValue,
                min: 0.05,
                max: 9.0,
                help: "Thermal transmittance of the boarded wall, both surfaces",
                source: "",
            };
            if let Some(new) = form.value_row(ui, &spec, *u, None, None) {
                *u = new;
            }
        }
        PartCovering::Sheets(sheets) => layers_ui(ui, form, &Covering::sheets, sheets, rows, None),
    }
    row(ui, false, |ui| {
        if icon_button(ui, Icon::Cross, "Cover this part like the rest").clicked() {
            *gone = Some(index);
        }
        ui.label(RichText::new("cover like the rest").size(SMALL).color(tokens(ui).soft));
    });
}

/// A night cover; `parts` for one that can leave parts of the house free.
pub fn night_cover_ui(
    ui: &mut Ui,
    form: &mut Form,
    cover: &mut NightCover,
    other: Option<&NightCover>,
    rows: &Catalogue,
    parts: bool,
) {
    form.switch(ui, &NightCover::present, &mut cover.present, other.map(|o| o.present));
    if !cover.present {
        return;
    }
    let screens: Vec<_> = rows.screens.iter().map(|row| (row.key.clone(), row.name.clone())).collect();
    form.choice(ui, &NightCover::screen, &mut cover.screen, &screens, other.map(|o| &o.screen));
    let (from_hour, to_hour) = match cover.drawn {
        Drawn::Between { from_hour, to_hour } => (from_hour, to_hour),
        Drawn::BySun => (17.0, 8.0),
    };
    let drawn = [
        (Drawn::BySun, "When the sun is gone".to_owned()),
        (Drawn::Between { from_hour, to_hour }, "Between two hours".to_owned()),
    ];
    form.choice(ui, &NightCover::drawn, &mut cover.drawn, &drawn, other.map(|o| &o.drawn));
    if let Drawn::Between { from_hour, to_hour } = &mut cover.drawn {
        for (key, label, hour) in [("from_hour", "Drawn from", from_hour), ("to_hour", "Open from", to_hour)] {
            let help = "Clock hour, standard time";
            let spec = Spec { key, label, quantity: Quantity::HourOfDay, min: 0.0, max: 24.0, help, source: "" };
            if let Some(new) = form.value_row(ui, &spec, *hour, None, None) {
                *hour = new;
            }
        }
    }
    if parts {
        covered_parts_ui(ui, form, cover, other);
    }
}

fn covered_parts_ui(ui: &mut Ui, form: &mut Form, cover: &mut NightCover, other: Option<&NightCover>) {
    for (part, name) in PARTS {
        let mut on = cover.parts.contains(&part);
        let input = crate::model::ChoiceInput { key: "parts", label: name, help: NightCover::parts.help, doubt: None };
        let was = on;
        row(ui, other.is_some_and(|o| o.parts.contains(&part) != on), |ui| {
            ui.add_space(22.0);
            ui.checkbox(&mut on, input.label).on_hover_text(input.help);
        });
        if on != was {
            cover.parts.retain(|p| *p != part);
            if on {
                cover.parts.push(part);
            }
            form.note("parts under the night cover", ui.make_persistent_id(("covers", name)));
        }
    }
    form.troubles_at(ui, "parts");
}
