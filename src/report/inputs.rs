//! All inputs of the reference scenario, so that a reader can run it again.

use super::content::Content;
use super::figure::named;
use crate::compare::words;
use crate::format;
use crate::model::{
    Bench, Catalogue, Circuit, Crop, Heater, House, Mains, NumberInput, Precautions, Scenario, Shape, Tent,
    TentOpening, Vents, Vessels, WaterStore,
};
use crate::units::{Quantity, UnitSystem};
use maud::{Markup, html};

/// A part of the scenario: its name, and each input with its value.
type Part = (String, Vec<(String, String)>);

/// The section.
pub(super) fn inputs(content: &Content) -> Markup {
    let study = content.report.study;
    let Some(scenario) = study.scenarios.get(study.reference) else { return html! {} };
    html! {
        section {
            h2 { @if content.several() { "Inputs of the reference" } @else { "Inputs" } }
            p { (named(content.mark(study.reference), &scenario.name)) @if !scenario.notes.is_empty() { ": " (scenario.notes) } }
            div class="inputs" {
                @for (name, rows) in parts(scenario, &study.site.mains, &content.catalogue, content.units()) {
                    table class="pairs-of-words" {
                        thead { tr { th colspan="2" { (name) } } }
                        tbody { @for (label, value) in rows { tr { th { (label) } td { (value) } } } }
                    }
                }
            }
        }
    }
}

fn parts(s: &Scenario, site_mains: &Mains, catalogue: &Catalogue, units: UnitSystem) -> Vec<Part> {
    let part = |name: &str, rows: Vec<(String, String)>| (name.to_owned(), rows);
    let mut parts = vec![part("House", house(&s.house, units)), part("Covering", covering(s, catalogue, units))];
    if s.tent.present {
        parts.push(part("Inner tent", tent(&s.tent, catalogue, units)));
    }
    if s.water.present {
        parts.extend(water(&s.water, units));
    }
    for (heater, name) in [(&s.heater, "Heater"), (&s.standby, "Standby heater")] {
        if heater.present {
            parts.push(part(name, self::heater(heater, catalogue, units)));
        }
    }
    parts.push(part("Crop", crop(&s.crop, units)));
    if s.bench.present {
        parts.push(part("Bench", bench(&s.bench, catalogue, units)));
    }
    if s.vents.present || s.vents.fan_present {
        parts.push(part("Vents", vents(&s.vents, units)));
    }
    parts.push(part("Precautions", precautions(&s.precautions, units)));
    parts.push(part("Mains", mains(site_mains, units)));
    parts
}

fn row(label: &str, value: impl Into<String>) -> (String, String) {
    (label.to_owned(), value.into())
}

/// Every number of a part under its label; `skip` names those that mean nothing here.
fn numbers<T>(part: &T, inputs: &[NumberInput<T>], skip: &[&str], units: UnitSystem) -> Vec<(String, String)> {
    let wanted = inputs.iter().filter(|input| !skip.contains(&input.key));
    wanted.map(|input| row(input.label, format::quantity((input.get)(part), input.quantity, units, None))).collect()
}

fn temperature(t_c: Option<f64>, units: UnitSystem) -> String {
    t_c.map_or_else(|| "off".to_owned(), |t| format::temperature(t, units))
}

fn house(house: &House, units: UnitSystem) -> Vec<(String, String)> {
    let mut rows = vec![
        row(House::shape.label, house.shape.name()),
        row(House::tightness.label, words::tightness(house.tightness)),
    ];
    let mut skip = Vec::new();
    if house.shape == Shape::LeanTo {
        rows.push(row(House::behind_party_wall.label, words::behind(house.behind_party_wall, units)));
    } else {
        skip.push(House::party_wall_u_w_per_m2k.key);
    }
    if house.shape == Shape::FlatBox {
        skip.push(House::ridge_height_m.key);
    }
    rows.extend(numbers(house, House::NUMBERS, &skip, units));
    rows
}

fn covering(s: &Scenario, catalogue: &Catalogue, units: UnitSystem) -> Vec<(String, String)> {
    let mut rows = vec![row("Sheets", words::sheets(&s.covering.sheets, catalogue))];
    let exceptions = s.covering.exceptions.iter();
    rows.extend(exceptions.map(|e| row("Part that differs", words::exception(e, catalogue, units))));
    rows.push(row("Night cover", words::cover(&s.night_cover, catalogue)));
    rows
}

fn tent(tent: &Tent, catalogue: &Catalogue, units: UnitSystem) -> Vec<(String, String)> {
    let opened = match tent.opening {
        TentOpening::Above(t_c) => format!("above {}", format::temperature(t_c, units)),
        other => words::opening(other).to_owned(),
    };
    let mut rows = vec![
        row(Tent::base.label, words::base(tent.base)),
        row(Tent::sheets.label, words::sheets(&tent.sheets, catalogue)),
        row(Tent::opening.label, opened),
        row("Night cover", words::cover(&tent.night_cover, catalogue)),
    ];
    rows.extend(numbers(tent, Tent::NUMBERS, &[], units));
    rows
}

fn water(water: &WaterStore, units: UnitSystem) -> Vec<Part> {
    let part = |vessels: &Vessels| {
        let known = |value: Option<f64>, of: Quantity| {
            value.map_or_else(|| "not known".to_owned(), |value| format::quantity(value, of, units, None))
        };
        let mut rows = vec![
            row(Vessels::zone.label, words::zone(vessels.zone)),
            row(Vessels::stand.label, words::stand(vessels.stand)),
            row(Vessels::bears_kg_per_m2.label, known(vessels.bears_kg_per_m2, Quantity::AreaLoad)),
            row(Vessels::headspace.label, known(vessels.headspace, Quantity::Share)),
        ];
        rows.extend(numbers(vessels, Vessels::NUMBERS, &[], units));
        (format!("Water: {}", vessels.name), rows)
    };
    water.vessels.iter().map(part).collect()
}

fn heater(heater: &Heater, catalogue: &Catalogue, units: UnitSystem) -> Vec<(String, String)> {
    let yes = |b: bool| if b { "yes" } else { "no" };
    let mut rows = vec![
        row(Heater::name.label, heater.name.clone()),
        row("Energy", words::fuel(heater, catalogue)),
        row("Warms", words::place(heater)),
        row(Heater::setpoint_day_c.label, temperature(heater.setpoint_day_c, units)),
        row(Heater::setpoint_night_c.label, temperature(heater.setpoint_night_c, units)),
        row(Heater::vented.label, yes(heater.vented)),
        row(Heater::needs_mains.label, yes(heater.needs_mains)),
    ];
    // A heat pump's efficiency follows the weather; any other heater has no warm side.
    let skip = if heater.heat_pump { Heater::efficiency.key } else { Heater::sink_c.key };
    if heater.heat_pump {
        rows.push(row(Heater::heat_pump.label, "yes"));
    } else {
        rows.push(row(Heater::basis.label, words::basis(heater.basis)));
    }
    rows.extend(numbers(heater, Heater::NUMBERS, &[skip], units));
    rows
}

fn crop(crop: &Crop, units: UnitSystem) -> Vec<(String, String)> {
    let mut rows = vec![row(Crop::name.label, crop.name.clone()), row(Crop::zone.label, words::zone(crop.zone))];
    if let Some((month, day)) = crop.planting_out {
        rows.push(row(Crop::planting_out.label, format!("{day} {}", format::month(month))));
    }
    rows.extend(numbers(crop, Crop::NUMBERS, &[], units));
    rows
}

fn bench(bench: &Bench, catalogue: &Catalogue, units: UnitSystem) -> Vec<(String, String)> {
    let tray = catalogue.tray(&bench.tray).map_or(bench.tray.as_str(), |tray| tray.name.as_str());
    let mut rows = vec![row(Bench::zone.label, words::zone(bench.zone)), row(Bench::tray.label, tray)];
    rows.extend(numbers(bench, Bench::NUMBERS, &[], units));
    rows
}

fn vents(vents: &Vents, units: UnitSystem) -> Vec<(String, String)> {
    let of_fan = |key: &str| key.starts_with("fan_");
    let there = |input: &&NumberInput<Vents>| if of_fan(input.key) { vents.fan_present } else { vents.present };
    let shown = Vents::NUMBERS.iter().filter(there);
    shown.map(|input| row(input.label, format::quantity((input.get)(vents), input.quantity, units, None))).collect()
}

fn precautions(p: &Precautions, units: UnitSystem) -> Vec<(String, String)> {
    let air = p
        .combustion_air_m2
        .map_or_else(|| "not known".to_owned(), |area_m2| format::quantity(area_m2, Quantity::SmallArea, units, None));
    let mut rows = vec![
        row(Precautions::residual_current_device.label, p.residual_current_device.name()),
        row(Precautions::carbon_monoxide_alarm.label, p.carbon_monoxide_alarm.name()),
        row(Precautions::low_temperature_alarm.label, p.low_temperature_alarm.name()),
        row(Precautions::combustion_air_m2.label, air),
    ];
    rows.extend(numbers(p, Precautions::NUMBERS, &[], units));
    rows
}

fn mains(mains: &Mains, units: UnitSystem) -> Vec<(String, String)> {
    let mut rows = match &mains.circuit {
        Some(circuit) => numbers(circuit, Circuit::NUMBERS, &[], units),
        None => vec![row(Mains::circuit.label, "not known")],
    };
    rows.push(row(Mains::plug.label, words::plug(mains.plug, units)));
    rows
}
