//! The parts of the drawing under the pointer: what each tells, and where it is edited.

use super::frame::Frame;
use super::hour::Hour;
use crate::format;
use crate::geometry::section::{Block, Section};
use crate::gui::editor::Section as EditorSection;
use crate::model::{Scenario, Zone};
use crate::units::{Quantity, UnitSystem};
use egui::{Pos2, Rect};

/// How near the pointer must come to a line, points.
const NEAR: f32 = 6.0;

/// Something that is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// First heater.
    Heater,
    /// Standby heater.
    Standby,
    /// Vessels of a zone.
    Water(Zone),
    /// Trays and their bench.
    Trays,
    /// A vent.
    Vent,
    /// The tent's wall and air.
    Tent,
    /// The covering.
    Skin,
    /// The air of the house.
    House,
    /// The ground below.
    Ground,
    /// The wall that a lean-to leans on.
    PartyWall,
    /// All else.
    Outdoors,
}

impl Part {
    /// What lies at a point of the screen, smallest things first.
    #[must_use]
    pub fn at(section: &Section, frame: &Frame, hour: &Hour, point: Pos2) -> Self {
        let within = |block: &Block| frame.block(block).expand(2.0).contains(point);
        if let Some((_, standby)) = section.heaters.iter().find(|(block, _)| within(block)) {
            return if *standby { Self::Standby } else { Self::Heater };
        }
        if let Some(row) = section.vessels.iter().find(|row| row.blocks.iter().any(within)) {
            let in_tent = row.zone == Zone::Tent && section.tent.is_some();
            return Self::Water(if in_tent { Zone::Tent } else { Zone::House });
        }
        if section.trays.iter().chain(&section.boards).any(within) {
            return Self::Trays;
        }
        let flap =
            |f: &crate::geometry::section::Flap| near(point, frame.at(f.hinge), frame.at(f.tip(hour.vent_opening)));
        if section.flaps.iter().any(flap) {
            return Self::Vent;
        }
        if section.party_wall.as_ref().is_some_and(within) {
            return Self::PartyWall;
        }
        if section.skin.windows(2).any(|pair| near(point, frame.at(pair[0]), frame.at(pair[1]))) {
            return Self::Skin;
        }
        if section.tent.as_ref().is_some_and(within) {
            return Self::Tent;
        }
        let [x, y] = frame.metres(point);
        match () {
            () if y < 0.0 => Self::Ground,
            () if (0.0..=section.width_m).contains(&x) && y < section.roof_at(x) => Self::House,
            () => Self::Outdoors,
        }
    }

    /// Where it is edited; the weather is not.
    #[must_use]
    pub fn section(self) -> Option<EditorSection> {
        match self {
            Self::Heater | Self::Standby => Some(EditorSection::Heater),
            Self::Water(_) => Some(EditorSection::Water),
            Self::Trays => Some(EditorSection::Crop),
            Self::Vent => Some(EditorSection::Vents),
            Self::Tent => Some(EditorSection::Tent),
            Self::Skin => Some(EditorSection::Covering),
            Self::House | Self::Ground | Self::PartyWall => Some(EditorSection::House),
            Self::Outdoors => None,
        }
    }

    /// What it is called.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Heater => "Heater",
            Self::Standby => "Standby heater",
            Self::Water(Zone::House) => "Water in the house",
            Self::Water(Zone::Tent) => "Water in the tent",
            Self::Trays => "Bench and trays",
            Self::Vent => "Vents",
            Self::Tent => "Inner tent",
            Self::Skin => "Covering",
            Self::House => "House",
            Self::Ground => "Ground",
            Self::PartyWall => "Party wall",
            Self::Outdoors => "Outdoors",
        }
    }

    /// Its figures in this hour.
    #[must_use]
    pub fn figures(self, hour: &Hour, scenario: &Scenario, units: UnitSystem) -> Vec<String> {
        let air = |label: &str, t_c: Option<f64>| t_c.map(|t| format!("{label} {}", format::temperature(t, units)));
        let loss = |watts: f64, way_out: &str, way_in: &str| match watts {
            w if w < 0.0 => Some(format!("{} {way_in}", format::power(-w))),
            w => Some(format!("{} {way_out}", format::power(w))),
        };
        let output =
            |watts: f64, rated_w: f64| Some(format!("Gives {} of {}", format::power(watts), format::power(rated_w)));
        let ice = |share: f64| (share > 0.001).then(|| format!("{} % ice", format::number(share * 100.0, 0)));
        let lines = match self {
            Self::Heater => vec![output(hour.heater_w, scenario.heater.rated_w)],
            Self::Standby => vec![output(hour.standby_w, scenario.standby.rated_w)],
            Self::Water(Zone::House) => vec![
                air("Water", hour.house_water_c),
                ice(hour.house_ice_share),
                loss(hour.house_water_w, "to the air", "from the air"),
            ],
            Self::Water(Zone::Tent) => vec![
                air("Water", hour.tent_water_c),
                ice(hour.tent_ice_share),
                loss(hour.tent_water_w, "to the air", "from the air"),
            ],
            Self::Trays if scenario.tent.present && scenario.bench.zone == Zone::Tent => {
                vec![air("Air round them", hour.tent_c), air("Floor and benches", hour.tent_floor_c)]
            }
            Self::Trays => vec![air("Air round them", hour.house_c), air("Floor and benches", hour.house_floor_c)],
            Self::Vent => vec![
                Some(format!("{} % open", format::number(hour.vent_opening * 100.0, 0))),
                loss(hour.vent_w, "lost", "gained"),
                Some(format!(
                    "Air changed with outdoors, leakage too: {} per hour",
                    format::quantity(hour.air_exchange_m3_per_h, Quantity::Volume, units, Some(0))
                )),
            ],
            Self::Tent => vec![
                air("Air", hour.tent_c),
                loss(hour.tent_w, "to the house", "from the house"),
                hour.tent_cover_drawn.then(|| "Night cover drawn".to_owned()),
            ],
            Self::Skin => vec![
                loss(hour.skin_w, "lost", "gained"),
                loss(hour.leakage_w, "lost by leakage", "gained by leakage"),
                hour.cover_drawn.then(|| "Night cover drawn".to_owned()),
            ],
            Self::House => vec![air("Air", hour.house_c), air("Floor and benches", hour.house_floor_c)],
            Self::Ground => vec![loss(hour.ground_w, "into the ground", "from the ground")],
            Self::PartyWall => vec![loss(hour.party_wall_w, "through the wall", "from the wall")],
            Self::Outdoors => vec![
                air("Air", hour.outdoor_c),
                hour.wind_m_per_s.map(|v| format!("Wind {}", format::quantity(v, Quantity::Speed, units, Some(1)))),
                hour.sun.map(|_| format!("{} of sun stay", format::power(hour.sun_w))),
            ],
        };
        lines.into_iter().flatten().collect()
    }
}

/// Whether a point lies near a stretch of line.
fn near(p: Pos2, a: Pos2, b: Pos2) -> bool {
    let bounds = Rect::from_two_pos(a, b).expand(NEAR);
    let (along, from) = (b - a, p - a);
    let share = if along.length_sq() > 0.0 { (from.dot(along) / along.length_sq()).clamp(0.0, 1.0) } else { 0.0 };
    bounds.contains(p) && (from - along * share).length() <= NEAR
}
