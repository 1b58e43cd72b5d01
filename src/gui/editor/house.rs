//! House: shape, size, exposure.

use super::Figures;
use crate::gui::fields::{Form, Spec};
use crate::model::{ArchCurve, BehindPartyWall, House, Scenario, Shape, Tightness};
use crate::units::Quantity;
use egui::Ui;

/// The section.
pub fn house_ui(ui: &mut Ui, form: &mut Form, s: &mut Scenario, reference: Option<&Scenario>, figures: &Figures) {
    form.place = format!("{}.house", figures.place);
    form.part = "house";
    let (house, other) = (&mut s.house, reference.map(|r| &r.house));
    form.troubles_here(ui);
    let shapes = [Shape::Gable, Shape::LeanTo, Shape::Tunnel, Shape::FlatBox].map(|v| (v, v.name().to_owned()));
    form.choice(ui, &House::shape, &mut house.shape, &shapes, other.map(|o| &o.shape));
    if house.shape == Shape::Tunnel {
        let curves = [
            (ArchCurve::Circle, "Part of a circle".to_owned()),
            (ArchCurve::HalfEllipse, "Half an ellipse".to_owned()),
        ];
        form.choice(ui, &House::arch, &mut house.arch, &curves, other.map(|o| &o.arch));
    }
    form.number(ui, &House::length_m, house, other);
    form.number(ui, &House::width_m, house, other);
    form.number(ui, &House::eaves_height_m, house, other);
    if house.shape != Shape::FlatBox {
        form.number(ui, &House::ridge_height_m, house, other);
    }
    form.number(ui, &House::front_faces_deg, house, other);
    tightness_ui(ui, form, house, other);
    form.number(ui, &House::shelter_class, house, other);
    form.number(ui, &House::edge_f_w_per_mk, house, other);
    if house.shape == Shape::LeanTo {
        party_wall_ui(ui, form, house, other);
    }
    form.number(ui, &House::fullness, house, other);
    form.number(ui, &House::planted_share, house, other);
}

fn tightness_ui(ui: &mut Ui, form: &mut Form, house: &mut House, other: Option<&House>) {
    let rate = house.tightness.design_air_changes_per_h();
    let own = match house.tightness {
        Tightness::Rate(_) => house.tightness,
        _ => Tightness::Rate(rate),
    };
    let options = [
        (Tightness::Sealed, "Sealed, 0.5 per hour".to_owned()),
        (Tightness::Sound, "Sound, 1 per hour".to_owned()),
        (Tightness::Worn, "Worn, 1.5 per hour".to_owned()),
        (Tightness::Leaky, "Leaky, 3 per hour".to_owned()),
        (own, "A rate of your own".to_owned()),
    ];
    form.choice(ui, &House::tightness, &mut house.tightness, &options, other.map(|o| &o.tightness));
    if let Tightness::Rate(held) = house.tightness {
        let spec = Spec {
            key: "tightness",
            label: "Air changes",
            quantity: Quantity::AirChanges,
            min: 0.0,
            max: 20.0,
            help: "Air changes at design weather: wind 6.7 m/s, 20 K warmer than outdoors",
            source: "",
        };
        let reference = other.map(|o| o.tightness.design_air_changes_per_h());
        if let Some(new) = form.value_row(ui, &spec, held, reference, None) {
            house.tightness = Tightness::Rate(new);
        }
    }
}

fn party_wall_ui(ui: &mut Ui, form: &mut Form, house: &mut House, other: Option<&House>) {
    form.number(ui, &House::party_wall_u_w_per_m2k, house, other);
    let held = match house.behind_party_wall {
        BehindPartyWall::HeldAt(t) => t,
        BehindPartyWall::Outdoors => 15.0,
    };
    let options = [
        (BehindPartyWall::HeldAt(held), "A heated building".to_owned()),
        (BehindPartyWall::Outdoors, "Outdoor air".to_owned()),
    ];
    form.choice(
        ui,
        &House::behind_party_wall,
        &mut house.behind_party_wall,
        &options,
        other.map(|o| &o.behind_party_wall),
    );
    if let BehindPartyWall::HeldAt(held) = house.behind_party_wall {
        let spec = Spec {
            key: "behind_party_wall",
            label: "Held there at",
            quantity: Quantity::Temperature,
            min: -20.0,
            max: 40.0,
            help: "Temperature of the building behind the wall",
            source: "",
        };
        if let Some(new) = form.value_row(ui, &spec, held, None, None) {
            house.behind_party_wall = BehindPartyWall::HeldAt(new);
        }
    }
}
