//! Choices of a scenario in words, as tables and report write them.

use crate::model::{
    BehindPartyWall, Catalogue, Drawn, HeatBasis, HeatTarget, Heater, NightCover, Part, PartCovering, PartException,
    Plug, Stand, TentBase, TentOpening, Tightness, Vents, Zone,
};
use crate::units::{Quantity, UnitSystem};

/// What is not there.
pub const NONE: &str = "none";

/// Sheets by name, outermost first.
#[must_use]
pub fn sheets(keys: &[String], catalogue: &Catalogue) -> String {
    let name = |key: &String| catalogue.sheet(key).map_or_else(|| key.clone(), |sheet| sheet.name.clone());
    keys.iter().map(name).collect::<Vec<_>>().join(" + ")
}

/// A part of the house with a covering of its own.
#[must_use]
pub fn exception(exception: &PartException, catalogue: &Catalogue, units: UnitSystem) -> String {
    let part = match exception.part {
        Part::Front => "front wall",
        Part::Back => "back wall",
        Part::Ends => "end walls",
        Part::Roof => "roof",
    };
    match &exception.covering {
        PartCovering::Sheets(keys) => format!("{part}: {}", sheets(keys, catalogue)),
        PartCovering::Opaque(u) => format!("{part}: boarded, U {}", quantity(*u, Quantity::UValue, units)),
    }
}

/// A night cover and when it is drawn.
#[must_use]
pub fn cover(cover: &NightCover, catalogue: &Catalogue) -> String {
    if !cover.present {
        return NONE.to_owned();
    }
    let name = catalogue.screen(&cover.screen).map_or(cover.screen.as_str(), |screen| screen.name.as_str());
    match cover.drawn {
        Drawn::BySun => format!("{name}, by the sun"),
        Drawn::Between { from_hour, to_hour } => format!("{name}, {from_hour:02.0} to {to_hour:02.0} h"),
    }
}

/// What a tent stands on.
#[must_use]
pub fn base(base: TentBase) -> &'static str {
    match base {
        TentBase::Floor => "the floor",
        TentBase::Bench => "a bench",
        TentBase::InsulatedBench => "an insulated bench",
    }
}

/// When a tent is opened.
#[must_use]
pub fn opening(opening: TentOpening) -> &'static str {
    match opening {
        TentOpening::Never => "kept shut",
        TentOpening::ByDay => "by day",
        TentOpening::Above(_) => "when warm",
    }
}

/// Name of a heater's fuel.
#[must_use]
pub fn fuel(heater: &Heater, catalogue: &Catalogue) -> String {
    catalogue.fuel(&heater.fuel).map_or_else(|| heater.fuel.clone(), |fuel| fuel.name.clone())
}

/// The heat content that an efficiency is measured on.
#[must_use]
pub fn basis(basis: HeatBasis) -> &'static str {
    match basis {
        HeatBasis::Gross => "gross heat content",
        HeatBasis::Net => "net heat content",
    }
}

/// What a heater warms, and where.
#[must_use]
pub fn place(heater: &Heater) -> String {
    let what = match heater.target {
        HeatTarget::Air => "air",
        HeatTarget::Bench => "benches",
        HeatTarget::Water => "water",
    };
    match heater.zone {
        Zone::House => format!("{what} of the house"),
        Zone::Tent => format!("{what} of the tent"),
    }
}

/// Which of vents and fan there are.
#[must_use]
pub fn vents(vents: &Vents) -> &'static str {
    match (vents.present, vents.fan_present) {
        (true, true) => "openers and fan",
        (true, false) => "openers",
        (false, true) => "fan",
        (false, false) => NONE,
    }
}

/// How tight a house is.
#[must_use]
pub fn tightness(tightness: Tightness) -> String {
    let name = match tightness {
        Tightness::Sealed => "sealed",
        Tightness::Sound => "sound",
        Tightness::Worn => "worn",
        Tightness::Leaky => "leaky",
        Tightness::Rate(_) => "a rate of its own",
    };
    format!("{name}, {} air changes per hour at design weather", tightness.design_air_changes_per_h())
}

/// What a lean-to leans on.
#[must_use]
pub fn behind(behind: BehindPartyWall, units: UnitSystem) -> String {
    match behind {
        BehindPartyWall::Outdoors => "outdoor air".to_owned(),
        BehindPartyWall::HeldAt(t_c) => format!("a building at {}", quantity(t_c, Quantity::Temperature, units)),
    }
}

/// A zone.
#[must_use]
pub fn zone(zone: Zone) -> &'static str {
    match zone {
        Zone::House => "house",
        Zone::Tent => "tent",
    }
}

fn quantity(value: f64, quantity: Quantity, units: UnitSystem) -> String {
    crate::format::quantity(value, quantity, units, None)
}

/// What vessels stand on.
#[must_use]
pub fn stand(stand: Stand) -> &'static str {
    match stand {
        Stand::Floor => "the floor",
        Stand::Bench => "a bench",
    }
}

/// How heaters hang on the mains.
#[must_use]
pub fn plug(plug: Plug, units: UnitSystem) -> String {
    match plug {
        Plug::NotKnown => "not known".to_owned(),
        Plug::Wired => "wired in".to_owned(),
        Plug::Rated(rating_a) => format!("plug of {}", quantity(rating_a, Quantity::Current, units)),
    }
}
