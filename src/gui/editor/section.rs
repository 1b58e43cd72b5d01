//! A section that folds: its title, its own small result, and whether it differs from the reference.

use super::Figures;
use crate::format;
use crate::gui::cut::cut;
use crate::gui::fields::Form;
use crate::gui::marks;
use crate::gui::theme::{BODY, SMALL, regular, semibold, tokens};
use crate::model::{Answer, Precautions, Scenario};
use crate::units::{Quantity, UnitSystem};
use egui::{Align2, Sense, Stroke, Ui, collapsing_header::CollapsingState, pos2, vec2};

/// The sections of a scenario.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Section {
    /// Shape and size.
    House,
    /// Skin and night cover.
    Covering,
    /// The tent.
    Tent,
    /// Vessels.
    Water,
    /// Heaters.
    Heater,
    /// Crop and bench.
    Crop,
    /// Vents and fan.
    Vents,
    /// What it takes to buy.
    Costs,
}

impl Section {
    /// In reading order.
    pub const OF_SCENARIO: [Self; 8] =
        [Self::House, Self::Covering, Self::Tent, Self::Water, Self::Heater, Self::Crop, Self::Vents, Self::Costs];

    /// Title.
    pub fn title(self) -> &'static str {
        match self {
            Self::House => "House",
            Self::Covering => "Covering",
            Self::Tent => "Inner tent",
            Self::Water => "Water store",
            Self::Heater => "Heater & fuel",
            Self::Crop => "Crop & bench",
            Self::Vents => "Vents",
            Self::Costs => "Buying costs",
        }
    }

    /// Whether it is open on the first start.
    pub fn open_at_first(self) -> bool {
        matches!(self, Self::House | Self::Tent | Self::Heater)
    }

    /// Whether anything in it differs between two scenarios.
    pub fn differs(self, a: &Scenario, b: &Scenario) -> bool {
        match self {
            Self::House => a.house != b.house,
            Self::Covering => a.covering != b.covering || a.night_cover != b.night_cover,
            Self::Tent => a.tent != b.tent,
            Self::Water => a.water != b.water,
            Self::Heater => a.heater != b.heater || a.standby != b.standby || guards(a) != guards(b),
            Self::Crop => {
                let alarm = |s: &Scenario| s.precautions.low_temperature_alarm;
                a.crop != b.crop || a.bench != b.bench || alarm(a) != alarm(b)
            }
            Self::Vents => a.vents != b.vents,
            Self::Costs => a.costs != b.costs,
        }
    }

    /// Whether something in it is wrong.
    pub fn troubled(self, form: &Form, place: &str) -> bool {
        let parts: &[&str] = match self {
            Self::House => &["house"],
            Self::Covering => &["covering", "night_cover"],
            Self::Tent => &["tent"],
            Self::Water => &["water"],
            Self::Heater => &["heater", "standby", "precautions"],
            Self::Crop => &["crop", "bench"],
            Self::Vents => &["vents"],
            Self::Costs => &["costs"],
        };
        parts.iter().any(|part| form.troubles.iter().any(|t| t.path.starts_with(&format!("{place}.{part}"))))
    }

    /// Its own small result.
    pub fn result(self, s: &Scenario, figures: &Figures, units: UnitSystem) -> String {
        let show = |value: f64, quantity: Quantity| format::quantity(value, quantity, units, None);
        let none = || "none".to_owned();
        match (self, figures.shell) {
            (Self::House, Some(shell)) => {
                format!(
                    "{}, {}",
                    format::quantity(shell.floor_m2, Quantity::Area, units, Some(1)),
                    show(shell.volume_m3, Quantity::Volume)
                )
            }
            (Self::Covering, Some(shell)) => {
                format!("UA {}", show(shell.ua_skin_w_per_k, Quantity::HeatLossCoefficient))
            }
            (Self::Tent, _) if !s.tent.present => none(),
            (Self::Tent, Some(shell)) => format!("UA {}", show(shell.ua_tent_w_per_k, Quantity::HeatLossCoefficient)),
            (Self::Water, _) if !s.water.present => none(),
            (Self::Water, Some(shell)) => {
                let step = Quantity::TemperatureDifference.unit(units);
                format!("{} kWh per {}", format::number(shell.water_kwh_per_k / step.shown(1.0), 2), step.symbol)
            }
            (Self::Heater, _) if !s.heater.present => none(),
            (Self::Heater, _) => {
                super::heater::full_output(&s.heater, figures.rows).unwrap_or_else(|| format::power(s.heater.rated_w))
            }
            (Self::Crop, _) => format!("limit {}", show(s.crop.limit_c, Quantity::Temperature)),
            (Self::Vents, _) if !s.vents.present => none(),
            (Self::Vents, _) => {
                format!("open from {}", format::quantity(s.vents.opens_at_c, Quantity::Temperature, units, Some(0)))
            }
            (Self::Costs, _) if s.costs.is_empty() => none(),
            (Self::Costs, _) => format!("{} to buy", s.costs.len()),
            _ => String::new(),
        }
    }
}

/// Precautions without the alarm at the crop.
fn guards(s: &Scenario) -> Precautions {
    Precautions { low_temperature_alarm: Answer::NotKnown, ..s.precautions.clone() }
}

fn fold_id(title: &str) -> egui::Id {
    egui::Id::unique(("section", title))
}

/// Opens the section that comes next and scrolls to it.
pub fn reveal(ui: &Ui, title: &str) {
    let mut fold = CollapsingState::load_with_default_open(ui.ctx(), fold_id(title), true);
    fold.set_open(true);
    fold.store(ui.ctx());
    ui.scroll_to_cursor(Some(egui::Align::TOP));
}

/// Shows a section; its content only while open.
pub fn section_ui(
    ui: &mut Ui,
    title: &str,
    result: &str,
    differs: bool,
    troubled: bool,
    open_at_first: bool,
    content: impl FnOnce(&mut Ui),
) {
    let t = tokens(ui);
    let mut collapsing = CollapsingState::load_with_default_open(ui.ctx(), fold_id(title), open_at_first);
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 32.0), Sense::click());
    response.widget_info(|| {
        egui::WidgetInfo::selected(egui::Role::Button, true, collapsing.is_open(), format!("Section {title}"))
    });
    if response.clicked() {
        collapsing.toggle(ui);
    }
    marks::focus_ring(ui, &response, rect.shrink2(vec2(0.0, 2.0)));
    let painter = ui.painter();
    painter.hline(rect.x_range(), rect.top(), Stroke::new(1.0, t.hairline));
    let lit = response.hovered() || response.has_focus();
    let triangle = if lit { t.accent } else { t.soft };
    let middle = rect.center().y;
    marks::paint_disclosure(painter, pos2(rect.left() + 4.0, middle), collapsing.openness(ui.ctx()), triangle);
    let name = painter.text(pos2(rect.left() + 14.0, middle), Align2::LEFT_CENTER, title, semibold(BODY), t.ink);
    if troubled {
        marks::paint_warning(painter, pos2(name.right() + 12.0, middle), t.warn);
    } else if differs {
        painter.circle_filled(pos2(name.right() + 9.0, middle + 1.0), 2.5, t.accent);
    }
    let room = rect.right() - name.right() - 24.0;
    let galley = cut(painter, result, regular(SMALL), t.soft, room);
    painter.galley(pos2(rect.right() - galley.size().x, middle - galley.size().y / 2.0), galley, t.soft);
    collapsing.show_body_unindented(ui, |ui| {
        content(ui);
        ui.add_space(8.0);
    });
}
