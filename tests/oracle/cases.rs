//! Six plant houses that between them use every part of the model.

use warmfold::model::{
    ArchCurve, BehindPartyWall, Bench, Covering, Crop, Drawn, HeatTarget, Heater, House, NightCover, Part,
    PartCovering, PartException, Scenario, Season, Shape, Study, Tent, TentBase, TentOpening, Tightness, Vents,
    Vessels, WaterStore, WeatherChoice, Zone,
};

pub struct Case {
    pub station: &'static str,
    pub study: Study,
}

impl Case {
    fn new(station: &'static str, from: (u32, u32), to: (u32, u32), scenario: Scenario) -> Self {
        let season = Season { from_month: from.0, from_day: from.1, to_month: to.0, to_day: to.1 };
        let mut study = Study { season, scenarios: vec![scenario], ..Study::default() };
        study.site.weather = WeatherChoice::Station(station.to_owned());
        Self { station, study }
    }

    pub fn scenario(&self) -> &Scenario {
        &self.study.scenarios[0]
    }
}

pub fn all() -> Vec<Case> {
    vec![
        Case::new("duluth-mn", (3, 15), (4, 30), gable()),
        Case::new("duluth-mn", (12, 10), (1, 31), lean_to()),
        Case::new("denver-co", (3, 1), (4, 20), tunnel()),
        Case::new("greensboro-nc", (1, 5), (2, 28), ellipse()),
        Case::new("denver-co", (1, 10), (2, 28), flat_box()),
        Case::new("aachen-2021", (2, 1), (3, 31), free_lean_to()),
    ]
}

fn sheets(keys: &[&str]) -> Vec<String> {
    keys.iter().map(|&key| key.to_owned()).collect()
}

fn covering(keys: &[&str], exceptions: Vec<(Part, PartCovering)>) -> Covering {
    let exceptions = exceptions.into_iter().map(|(part, covering)| PartException { part, covering });
    Covering { sheets: sheets(keys), exceptions: exceptions.collect() }
}

fn screen(key: &str, drawn: Drawn) -> NightCover {
    NightCover { present: true, screen: key.to_owned(), drawn, ..NightCover::default() }
}

fn vessels(zone: Zone, count: u32, litres_each: f64) -> Vessels {
    let surface = f64::powf(litres_each / 208.0, 2.0 / 3.0);
    Vessels {
        zone,
        count,
        litres_each,
        exposed_area_m2_each: 1.25 * surface,
        sunlit_area_m2_each: 0.5 * surface,
        footprint_m2_each: 0.0,
        ..Vessels::default()
    }
}

/// Glass with a boarded north wall, a standing tent opened by day, both covers, stack vents, a weak heater with setback.
fn gable() -> Scenario {
    Scenario {
        name: "gable with boarded back, standing tent, two night covers".to_owned(),
        house: House { front_faces_deg: 160.0, shelter_class: 2, tightness: Tightness::Worn, ..House::default() },
        covering: covering(&["glass"], vec![(Part::Back, PartCovering::Opaque(0.6))]),
        night_cover: NightCover { parts: vec![Part::Roof, Part::Ends], ..screen("energy-screen", Drawn::BySun) },
        tent: Tent {
            present: true,
            base: TentBase::Floor,
            opening: TentOpening::ByDay,
            width_m: 1.4,
            height_m: 1.5,
            night_cover: screen("fleece-screen", Drawn::Between { from_hour: 17.0, to_hour: 8.0 }),
            ..Tent::default()
        },
        heater: Heater {
            rated_w: 700.0,
            setpoint_day_c: Some(12.0),
            setpoint_night_c: Some(6.0),
            day_from_hour: 6.0,
            day_to_hour: 20.0,
            ..Heater::default()
        },
        vents: Vents { opens_at_c: 16.0, full_at_c: 24.0, height_difference_m: 1.0, ..Vents::default() },
        ..Scenario::default()
    }
}

/// Twin wall with a liner on a held building, freezing drums, a standby heater below a weak first one.
fn lean_to() -> Scenario {
    Scenario {
        name: "lean-to on a warm building, drums, standby heater".to_owned(),
        house: House {
            shape: Shape::LeanTo,
            length_m: 5.0,
            width_m: 2.2,
            eaves_height_m: 1.7,
            ridge_height_m: 2.5,
            front_faces_deg: 135.0,
            shelter_class: 4,
            behind_party_wall: BehindPartyWall::HeldAt(8.0),
            ..House::default()
        },
        covering: covering(&["twinwall-8", "bubble-liner"], vec![]),
        water: WaterStore { present: true, vessels: vec![vessels(Zone::House, 2, 208.0)] },
        heater: Heater {
            zone: Zone::House,
            rated_w: 250.0,
            setpoint_day_c: None,
            setpoint_night_c: Some(7.0),
            fuel: "propane".to_owned(),
            efficiency: 0.9,
            ..Heater::default()
        },
        standby: Heater {
            zone: Zone::House,
            rated_w: 350.0,
            setpoint_day_c: Some(3.0),
            setpoint_night_c: Some(3.0),
            ..Heater::default()
        },
        crop: Crop { zone: Zone::House, ..Crop::default() },
        bench: Bench { zone: Zone::House, count: 2, width_m: 0.6, medium_depth_m: 0.08, ..Bench::default() },
        ..Scenario::default()
    }
}

/// Double film on a round arch, a hung tent with a mat that opens above a temperature, bottles in it, a fan, spring sun.
fn tunnel() -> Scenario {
    Scenario {
        name: "round tunnel, hung tent with a mat and bottles, fan".to_owned(),
        house: House {
            shape: Shape::Tunnel,
            arch: ArchCurve::Circle,
            length_m: 9.0,
            width_m: 4.2,
            eaves_height_m: 0.7,
            ridge_height_m: 2.3,
            front_faces_deg: 200.0,
            shelter_class: 1,
            edge_f_w_per_mk: 0.94,
            ..House::default()
        },
        covering: covering(&["film", "film"], vec![(Part::Ends, PartCovering::Sheets(sheets(&["twinwall-6"])))]),
        tent: Tent { present: true, opening: TentOpening::Above(24.0), ..Tent::default() },
        water: WaterStore {
            present: true,
            vessels: vec![vessels(Zone::Tent, 20, 4.0), vessels(Zone::House, 1, 120.0)],
        },
        heater: Heater {
            target: HeatTarget::Bench,
            rated_w: 400.0,
            setpoint_day_c: Some(16.0),
            setpoint_night_c: Some(18.0),
            ..Heater::default()
        },
        bench: Bench { width_m: 1.2, ..Bench::default() },
        vents: Vents {
            inlet_area_m2: 0.5,
            outlet_area_m2: 0.9,
            opens_at_c: 21.0,
            full_at_c: 30.0,
            fan_present: true,
            fan_starts_at_c: 25.0,
            fan_flow_m3_per_h: 1500.0,
            ..Vents::default()
        },
        ..Scenario::default()
    }
}

/// Infrared film on half an ellipse, an immersion heater on night hours, a standby heater in the air of the tent.
fn ellipse() -> Scenario {
    Scenario {
        name: "elliptic tunnel, immersion heater by night, standby in the tent".to_owned(),
        house: House {
            shape: Shape::Tunnel,
            arch: ArchCurve::HalfEllipse,
            eaves_height_m: 0.4,
            ridge_height_m: 2.2,
            front_faces_deg: 270.0,
            tightness: Tightness::Leaky,
            ..House::default()
        },
        covering: covering(&["ir-film"], vec![]),
        tent: Tent {
            present: true,
            base: TentBase::Floor,
            sheets: sheets(&["fleece", "film"]),
            opening: TentOpening::Above(28.0),
            width_m: 1.0,
            ..Tent::default()
        },
        water: WaterStore { present: true, vessels: vec![vessels(Zone::Tent, 4, 60.0)] },
        heater: Heater {
            target: HeatTarget::Water,
            rated_w: 900.0,
            setpoint_day_c: None,
            setpoint_night_c: Some(22.0),
            day_from_hour: 7.0,
            day_to_hour: 23.0,
            ..Heater::default()
        },
        standby: Heater { rated_w: 400.0, setpoint_day_c: Some(5.0), setpoint_night_c: Some(5.0), ..Heater::default() },
        bench: Bench { width_m: 0.9, length_m: 3.9, height_m: 0.4, ..Bench::default() },
        ..Scenario::default()
    }
}

/// A cold frame without heat whose bottles freeze; one opening only.
fn flat_box() -> Scenario {
    Scenario {
        name: "unheated flat box, freezing bottles, one opening".to_owned(),
        house: House {
            shape: Shape::FlatBox,
            length_m: 3.0,
            width_m: 1.5,
            eaves_height_m: 0.9,
            shelter_class: 5,
            tightness: Tightness::Sealed,
            fullness: 0.45,
            planted_share: 0.9,
            ..House::default()
        },
        covering: covering(&["acrylic-single"], vec![(Part::Front, PartCovering::Sheets(sheets(&["double-glass"])))]),
        water: WaterStore { present: true, vessels: vec![vessels(Zone::House, 6, 2.0)] },
        heater: Heater { present: false, ..Heater::default() },
        crop: Crop { zone: Zone::House, transpiration_share: 0.65, ..Crop::default() },
        bench: Bench { present: false, ..Bench::default() },
        vents: Vents {
            inlet_area_m2: 0.0,
            outlet_area_m2: 0.3,
            height_difference_m: 0.0,
            opens_at_c: 6.0,
            full_at_c: 14.0,
            ..Vents::default()
        },
        ..Scenario::default()
    }
}

/// Single film against a free wall, a tent on an insulated board without medium, a heated house beside it.
fn free_lean_to() -> Scenario {
    Scenario {
        name: "free lean-to, insulated hung tent without medium, house heated".to_owned(),
        house: House {
            shape: Shape::LeanTo,
            front_faces_deg: 225.0,
            behind_party_wall: BehindPartyWall::Outdoors,
            party_wall_u_w_per_m2k: 0.4,
            tightness: Tightness::Rate(0.8),
            ..House::default()
        },
        covering: covering(&["film"], vec![]),
        night_cover: screen("cloth-screen", Drawn::Between { from_hour: 18.0, to_hour: 7.0 }),
        tent: Tent {
            present: true,
            base: TentBase::InsulatedBench,
            sheets: sheets(&["film", "bubble-liner"]),
            opening: TentOpening::Never,
            night_cover: screen("energy-plus-blackout", Drawn::BySun),
            ..Tent::default()
        },
        heater: Heater {
            zone: Zone::House,
            rated_w: 6000.0,
            setpoint_day_c: Some(10.0),
            setpoint_night_c: Some(4.0),
            heat_pump: true,
            ..Heater::default()
        },
        standby: Heater {
            present: true,
            rated_w: 100.0,
            setpoint_day_c: Some(9.0),
            setpoint_night_c: Some(9.0),
            ..Heater::default()
        },
        bench: Bench { present: false, ..Bench::default() },
        vents: Vents { opens_at_c: 18.0, full_at_c: 26.0, inlet_area_m2: 0.3, ..Vents::default() },
        ..Scenario::default()
    }
}
