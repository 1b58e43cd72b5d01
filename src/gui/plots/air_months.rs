//! Overheated, humid and wet hours, month by month.

use super::axis::{self, Look};
use super::legend::{Sample, entry};
use super::room;
use crate::format;
use crate::gui::board::Season;
use crate::gui::palette;
use crate::season::airing::AirMonth;
use crate::units::{Quantity, UnitSystem};
use egui::{Color32, Theme, Ui, vec2};
use egui_plot::{Bar, BarChart};

/// One kind of hours.
struct Kind {
    name: String,
    colour: Color32,
    hours: fn(&AirMonth) -> usize,
}

/// The kinds that this season has; the tent's wall only with a tent.
fn kinds(months: &[AirMonth], units: UnitSystem, theme: Theme, look: &Look) -> Vec<Kind> {
    let kind = |name: &str, colour, hours| Kind { name: name.to_owned(), colour, hours };
    let limit = format::quantity(35.0, Quantity::Temperature, units, Some(0));
    let mut kinds = vec![
        kind(&format!("House above {limit}"), look.t.warn, |m| m.hours_above_35_c),
        kind("Humid at the crop", look.t.accent, |m| m.hours_crop_humidity_90),
        kind("Skin wet", palette::scenario(theme, 0), |m| m.hours_skin_wet),
    ];
    if months.iter().any(|m| m.hours_tent_wall_wet.is_some()) {
        kinds.push(kind("Tent wall wet", palette::scenario(theme, 2), |m| m.hours_tent_wall_wet.unwrap_or(0)));
    }
    kinds
}

/// Legend and bars.
pub fn months_ui(ui: &mut Ui, season: &Season, look: &Look) {
    let months = &season.run.summary.air_by_month;
    let theme = Theme::from_dark_mode(ui.visuals().dark_mode);
    let kinds = kinds(months, look.units, theme, look);
    ui.spacing_mut().interact_size.y = 18.0;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 0.0);
        for kind in &kinds {
            entry(ui, Sample::Line, kind.colour, &kind.name, 160.0);
        }
    });
    let highest = months.iter().flat_map(|m| kinds.iter().map(|k| (k.hours)(m))).max().unwrap_or(0);
    let height = room(ui.available_height(), 4.0);
    let names: Vec<u32> = months.iter().map(|m| m.month).collect();
    let plot = axis::months_plot("air months", names, &look.t).height(height).include_y((highest as f64).max(10.0));
    let wide = 0.8 / kinds.len() as f64;
    let response = plot.show(ui, |p| {
        for (place, kind) in kinds.iter().enumerate() {
            let offset = -0.4 + wide * (place as f64 + 0.5);
            let bar = |(i, m): (usize, &AirMonth)| {
                Bar::new(i as f64 + offset, (kind.hours)(m) as f64).width(wide * 0.9).fill(kind.colour)
            };
            let bars: Vec<Bar> = months.iter().enumerate().map(bar).collect();
            let (name, months) = (kind.name.clone(), months.clone());
            let text = move |bar: &Bar, _: &BarChart| {
                let month = months.get(bar.argument.round().max(0.0) as usize).map_or(0, |m| m.month);
                format!("{name}\n{} {} h", format::month(month), format::number(bar.value, 0))
            };
            p.bar_chart(BarChart::new(&kind.name, bars).color(kind.colour).element_formatter(Box::new(text)));
        }
    });
    let sums = kinds.iter().map(|k| format!("{} {}", k.name, format::hours(months.iter().map(k.hours).sum())));
    let said = format!("Hours by month. Season: {}", sums.collect::<Vec<_>>().join(", "));
    axis::tell(&response.response, &said);
}
