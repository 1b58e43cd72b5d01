//! Crop and bench: what is grown, when it leaves the house, and how many trays the bench holds.

use super::Figures;
use super::precautions;
use super::water::zones;
use crate::format;
use crate::gui::fields::{Form, Spec, row};
use crate::gui::theme::{SMALL, tokens};
use crate::model::{Bench, Catalogue, Crop, CropKind, Scenario};
use crate::season::alternatives::sowing;
use crate::units::Quantity;
use egui::{RichText, Ui};

/// The section; `cost` is that of the season, for the share of each tray.
pub fn crop_ui(
    ui: &mut Ui,
    form: &mut Form,
    s: &mut Scenario,
    reference: Option<&Scenario>,
    figures: &Figures,
    cost: Option<f64>,
) {
    form.place = format!("{}.crop", figures.place);
    form.part = "crop";
    form.troubles_here(ui);
    let (crop, other) = (&mut s.crop, reference.map(|r| &r.crop));
    kind_ui(ui, form, crop, other, figures.rows);
    form.text(ui, &Crop::name, &mut crop.name, None);
    form.choice(ui, &Crop::zone, &mut crop.zone, &zones(), other.map(|o| &o.zone));
    for input in Crop::NUMBERS {
        form.number(ui, input, crop, other);
    }
    planting_out_ui(ui, form, crop, figures.rows);
    precautions::crop_ui(ui, form, s, reference, figures);
    form.place = format!("{}.bench", figures.place);
    form.part = "bench";
    form.troubles_here(ui);
    let (bench, other) = (&mut s.bench, reference.map(|r| &r.bench));
    form.switch(ui, &Bench::present, &mut bench.present, other.map(|o| o.present));
    if bench.present {
        form.choice(ui, &Bench::zone, &mut bench.zone, &zones(), other.map(|o| &o.zone));
        let trays: Vec<_> = figures.rows.trays.iter().map(|tray| (tray.key.clone(), tray.name.clone())).collect();
        form.choice(ui, &Bench::tray, &mut bench.tray, &trays, other.map(|o| &o.tray));
        ui.push_id("bench", |ui| {
            for input in Bench::NUMBERS {
                form.number(ui, input, bench, other);
            }
        });
        if let Some(shell) = figures.shell {
            note_ui(ui, &trays_text(shell.trays, shell.plants, cost, form.currency));
        }
    }
}

fn note_ui(ui: &mut Ui, text: &str) {
    row(ui, false, |ui| {
        ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(tokens(ui).soft)).wrap());
    });
}

/// "22 whole trays, 1 584 plants; $23.09 a tray, $0.32 a plant".
fn trays_text(trays: u32, plants: u32, cost: Option<f64>, currency: &str) -> String {
    let mut text =
        format!("{} whole trays, {} plants", format::number(f64::from(trays), 0), format::number(f64::from(plants), 0));
    if let (Some(cost), true) = (cost, trays > 0 && plants > 0) {
        text += &format!(
            "; {} a tray, {} a plant",
            format::money(cost / f64::from(trays), currency),
            format::money(cost / f64::from(plants), currency)
        );
    }
    text
}

/// Takes a crop of the catalogue, which fills in its name and limits, and says what they are.
fn kind_ui(ui: &mut Ui, form: &mut Form, crop: &mut Crop, other: Option<&Crop>, rows: &Catalogue) {
    let mut kinds = vec![(String::new(), "One of my own".to_owned())];
    kinds.extend(rows.crops.iter().map(|kind| (kind.key.clone(), kind.name.clone())));
    let taken = form.choice(ui, &Crop::kind, &mut crop.kind, &kinds, other.map(|o| &o.kind));
    let Some(kind) = rows.crop(&crop.kind) else { return };
    if taken {
        fill_in(crop, kind);
    }
    let span = |low: f64, high: f64| {
        let text = |c: f64| format::quantity(c, Quantity::Temperature, form.units, Some(0));
        if (high - low).abs() < 0.05 { text(low) } else { format!("{} to {}", text(low), text(high)) }
    };
    let mut known = Vec::new();
    if let Some(cold) = kind.cold_limits_c() {
        known.push(format!("suffers below {}", span(cold.low, cold.high)));
    }
    if let Some(soil) = &kind.soil {
        known.push(format!("sprouts best at {} in the soil", span(soil.best_c.low, soil.best_c.high)));
    } else if let Some(mix) = kind.germination_c {
        known.push(format!("sprouts at {}", span(mix.low, mix.high)));
    }
    if let Some(day) = kind.day_c {
        known.push(format!("grows by day at {}", span(day.low, day.high)));
    }
    if let Some(night_c) = kind.fast_night_c {
        known.push(format!("nights of {} to keep to schedule", span(night_c, night_c)));
    }
    if !known.is_empty() {
        note_ui(ui, &format!("{}. {}", known.join("; "), kind.source));
    }
}

/// Name, limit and wanted air of a kind; what no source tells stays as it is.
fn fill_in(crop: &mut Crop, kind: &CropKind) {
    crop.name.clone_from(&kind.name);
    if let Some(cold) = kind.cold_limits_c() {
        crop.limit_c = cold.low;
    }
    if let Some(night_c) = kind.fast_night_c {
        crop.wanted_air_c = night_c;
    }
    crop.wanted_air_c = crop.wanted_air_c.max(crop.limit_c);
}

/// The day on which the crop leaves the house, and the days of sowing counted back from it.
fn planting_out_ui(ui: &mut Ui, form: &mut Form, crop: &mut Crop, rows: &Catalogue) {
    let mut on = crop.planting_out.is_some();
    form.switch(ui, &Crop::planting_out, &mut on, None);
    if !on {
        crop.planting_out = None;
        return;
    }
    let (month, day) = crop.planting_out.unwrap_or((5, 15));
    let spec = |key, label, max| Spec {
        key,
        label,
        quantity: Quantity::Count,
        min: 1.0,
        max,
        help: Crop::planting_out.help,
        source: "",
    };
    let new_month = form.value_row(ui, &spec("planting_month", "Month", 12.0), f64::from(month), None, None);
    let new_day = form.value_row(ui, &spec("planting_day", "Day", 31.0), f64::from(day), None, None);
    let whole = |new: Option<f64>, old: u32| new.map_or(old, |n| n.round().clamp(0.0, 99.0) as u32);
    crop.planting_out = Some((whole(new_month, month), whole(new_day, day)));
    let weeks = rows.crop(&crop.kind).and_then(|kind| kind.weeks);
    match (crop.planting_out, weeks) {
        (Some(out), Some(weeks)) => {
            if let Some([first, last]) = sowing(out, weeks) {
                let date = |(month, day): (u32, u32)| format!("{day} {}", format::month(month));
                let weeks = if weeks.low == weeks.high {
                    format!("{:.0} weeks", weeks.low)
                } else {
                    format!("{:.0} to {:.0} weeks", weeks.low, weeks.high)
                };
                let days = if first == last { date(first) } else { format!("{} to {}", date(first), date(last)) };
                note_ui(ui, &format!("Sow {days}: {weeks} from seed to planting out"));
            }
        }
        _ => note_ui(ui, "Choose a kind with known weeks to count sowing back from this day"),
    }
}
