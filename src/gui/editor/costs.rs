//! Costs: what the scenario takes to buy, line by line; areas and numbers follow the drawing.

use super::Figures;
use crate::format;
use crate::gui::fields::{Form, row};
use crate::gui::marks::{Icon, icon_button};
use crate::gui::theme::{SMALL, tokens};
use crate::model::{CostLine, Measure, Scenario};
use crate::season::buying::BuyingLine;
use crate::units::Quantity;
use egui::{RichText, Ui};

/// The section; `bought` is what the last run made of the lines.
pub fn costs_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, figures: &Figures, bought: &[BuyingLine]) {
    let measures = Measure::ALL.map(|measure| (measure, measure.name().to_owned()));
    let count = s.costs.len();
    let mut gone = None;
    form.part = "cost";
    for (index, line) in s.costs.iter_mut().enumerate() {
        form.place = format!("{}.costs[{index}]", figures.place);
        ui.push_id(("cost", index), |ui| {
            form.choice(ui, &CostLine::measure, &mut line.measure, &measures, None);
            form.number(ui, &CostLine::price, line, None);
            form.number(ui, &CostLine::life_years, line, None);
            form.text(ui, &CostLine::note, &mut line.note, None);
            let of_this = bought.iter().find(|b| b.name == line.measure.name() && b.note == line.note);
            row(ui, false, |ui| {
                if icon_button(ui, Icon::Cross, "Take this line away").clicked() {
                    gone = Some(index);
                }
                ui.label(RichText::new(sum_text(of_this, form)).size(SMALL).color(tokens(ui).soft));
            });
            ui.add_space(6.0);
        });
    }
    if let Some(index) = gone {
        s.costs.remove(index);
    }
    row(ui, false, |ui| {
        if ui.button("Add something to buy").clicked() {
            let used = |measure: &Measure| s.costs.iter().any(|line| line.measure == *measure);
            let measure = Measure::ALL.into_iter().find(|m| !used(m)).unwrap_or(Measure::Other);
            s.costs.push(CostLine { measure, ..CostLine::default() });
        }
    });
    if s.costs.len() != count {
        form.note("lines", ui.make_persistent_id(("cost lines", ui.ctx().cumulative_frame_nr())));
    }
}

/// "38.2 m² at $2.50: $95.50", or that the scenario has none of it.
fn sum_text(line: Option<&BuyingLine>, form: &Form) -> String {
    let Some(line) = line else { return "the scenario has none of it".to_owned() };
    let quantity = if line.by_area {
        format::quantity(line.quantity, Quantity::Area, form.units, Some(1))
    } else {
        format::number(line.quantity, 0)
    };
    let per = if line.by_area { " a square metre" } else { "" };
    format!(
        "{quantity} at {}{per}: {}",
        format::money(line.price, form.currency),
        format::money(line.cost(), form.currency)
    )
}
