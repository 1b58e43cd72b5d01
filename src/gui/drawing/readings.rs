//! The readings of the hour beside the drawing, and the scale of the colours.

use crate::format;
use crate::gui::board::{Season, Standing};
use crate::gui::palette;
use crate::gui::theme::{BODY, HEADING, SMALL, regular, semibold, tokens};
use crate::units::{Quantity, UnitSystem};
use egui::{Align2, Color32, Mesh, Painter, Rect, Stroke, Ui, pos2, vec2};

/// The readings.
pub fn readings_ui(ui: &Ui, rect: Rect, season: &Season, hour: usize, standing: Standing, units: UnitSystem) {
    let t = tokens(ui);
    let painter = ui.painter_at(rect);
    let fade = if standing == Standing::Stale { 0.45 } else { 1.0 };
    let when = season.stamp(hour).map(format::stamp).unwrap_or_default();
    painter.text(rect.left_top() + vec2(0.0, 16.0), Align2::LEFT_CENTER, when, semibold(HEADING), t.accent);
    let mut rows = rows(season, hour, units);
    let room = ((rect.height() - 74.0) / 20.0).floor().max(3.0) as usize;
    if rows.len() > room {
        rows.retain(|(_, value)| value.is_some());
    }
    rows.truncate(room);
    for (index, (label, value)) in rows.iter().enumerate() {
        let y = rect.top() + 42.0 + 20.0 * index as f32;
        painter.text(pos2(rect.left(), y), Align2::LEFT_CENTER, *label, regular(BODY), t.soft);
        let value = value.as_deref().unwrap_or("–");
        painter.text(
            pos2(rect.right() - 4.0, y),
            Align2::RIGHT_CENTER,
            value,
            regular(BODY),
            t.ink.gamma_multiply(fade),
        );
    }
    let below = Rect::from_min_max(pos2(rect.left(), rect.bottom() - 28.0), rect.right_bottom() - vec2(4.0, 0.0));
    scale(&painter, below, units, t.soft);
}

fn rows(season: &Season, hour: usize, units: UnitSystem) -> Vec<(&'static str, Option<String>)> {
    let h = &season.run.hours;
    let temperature = |column: &[f64]| column.get(hour).map(|v| format::temperature(*v, units));
    let heat = h.heater_w.get(hour).copied().unwrap_or(0.0) + h.standby_w.get(hour).copied().unwrap_or(0.0);
    let global = h.record.get(hour).and_then(|r| season.climate.hours.get(*r)).map_or(0.0, |w| w.global_w_per_m2);
    vec![
        ("Outdoors", temperature(&h.outdoor_c)),
        ("House", temperature(&h.house_air_c)),
        ("Inner tent", temperature(&h.tent_air_c)),
        ("Heaters", Some(format::power(heat))),
        ("Water", temperature(&h.house_water_c).or_else(|| temperature(&h.tent_water_c))),
        ("Sun", (global > 0.5).then(|| format!("{} W/m²", format::number(global, 0)))),
    ]
}

/// The scale from cold to warm.
fn scale(painter: &Painter, rect: Rect, units: UnitSystem, ink: Color32) {
    const STEPS: u32 = 34;
    let (low, high) = palette::SCALE_RANGE_C;
    let bar = Rect::from_min_max(rect.min + vec2(0.0, 2.0), pos2(rect.right(), rect.top() + 10.0));
    let mut mesh = Mesh::default();
    for i in 0..=STEPS {
        let share = f64::from(i) / f64::from(STEPS);
        let x = bar.left() + bar.width() * share as f32;
        let colour = palette::temperature(low + (high - low) * share);
        mesh.colored_vertex(pos2(x, bar.top()), colour);
        mesh.colored_vertex(pos2(x, bar.bottom()), colour);
        if i > 0 {
            let v = 2 * i;
            mesh.add_triangle(v - 2, v - 1, v);
            mesh.add_triangle(v - 1, v, v + 1);
        }
    }
    painter.add(mesh);
    let unit = Quantity::Temperature.unit(units);
    let marks: [f64; 4] = match units {
        UnitSystem::Metric => [-20.0, 0.0, 15.0, 30.0],
        UnitSystem::Imperial => [0.0, 32.0, 60.0, 90.0],
    };
    for (index, shown) in marks.iter().enumerate() {
        let share = ((unit.value(*shown) - low) / (high - low)) as f32;
        let x = bar.left() + bar.width() * share;
        painter.vline(x, bar.bottom()..=bar.bottom() + 3.0, Stroke::new(1.0, ink));
        let symbol = if index + 1 == marks.len() { unit.symbol } else { "" };
        let text = format!("{} {symbol}", format::number(*shown, 0));
        painter.text(pos2(x, bar.bottom() + 4.0), Align2::CENTER_TOP, text.trim_end(), regular(SMALL - 0.5), ink);
    }
}
