//! Random plant houses that a grower could build, for laws that hold for any of them.

use proptest::prelude::*;
use warmfold::model::{
    ArchCurve, BehindPartyWall, Bench, Covering, Crop, Drawn, HeatTarget, Heater, House, NightCover, Part,
    PartCovering, PartException, Scenario, Shape, Tent, TentBase, TentOpening, Tightness, Vents, Vessels, WaterStore,
    Zone,
};

/// Any of the four shapes; large enough for any of the tents.
pub fn house() -> impl Strategy<Value = House> {
    let shape = prop_oneof![Just(Shape::Gable), Just(Shape::LeanTo), Just(Shape::Tunnel), Just(Shape::FlatBox)];
    let arch = prop_oneof![Just(ArchCurve::Circle), Just(ArchCurve::HalfEllipse)];
    let size = (3.0..12.0, 2.5..6.0, 1.5..2.2, 0.3..1.2);
    (shape, arch, size, 0.0..360.0, 1u32..=5, 0.3..3.0, prop::bool::ANY).prop_map(
        |(shape, arch, (length_m, width_m, eaves_height_m, rise_m), front_faces_deg, shelter_class, rate, outdoors)| {
            House {
                shape,
                arch,
                length_m,
                width_m,
                eaves_height_m,
                ridge_height_m: eaves_height_m + rise_m,
                front_faces_deg,
                shelter_class,
                tightness: Tightness::Rate(rate),
                behind_party_wall: if outdoors { BehindPartyWall::Outdoors } else { BehindPartyWall::HeldAt(15.0) },
                ..House::default()
            }
        },
    )
}

pub fn sheet() -> impl Strategy<Value = String> {
    prop_oneof![Just("glass"), Just("film"), Just("ir-film"), Just("twinwall-8")].prop_map(str::to_owned)
}

pub fn tent() -> impl Strategy<Value = Tent> {
    let base = prop_oneof![Just(TentBase::Floor), Just(TentBase::Bench), Just(TentBase::InsulatedBench)];
    let opening = prop_oneof![Just(TentOpening::Never), Just(TentOpening::ByDay), Just(TentOpening::Above(28.0))];
    let size = (1.5..2.9, 0.8..2.0, 0.5..1.0);
    (base, opening, size, sheet(), 0.0..2.0).prop_map(
        |(base, opening, (length_m, width_m, height_m), sheet, air_changes_per_h)| Tent {
            present: true,
            base,
            opening,
            length_m,
            width_m,
            height_m,
            base_height_m: 0.5,
            sheets: vec![sheet],
            air_changes_per_h,
            ..Tent::default()
        },
    )
}

pub fn water() -> impl Strategy<Value = WaterStore> {
    let zone = prop_oneof![Just(Zone::House), Just(Zone::Tent)];
    (prop::bool::ANY, zone, 1u32..6, 20.0..208.0).prop_map(|(present, zone, count, litres_each)| {
        let surface = f64::powf(litres_each / 208.0, 2.0 / 3.0);
        let vessel = Vessels {
            zone,
            count,
            litres_each,
            exposed_area_m2_each: 1.25 * surface,
            sunlit_area_m2_each: 0.5 * surface,
            ..Vessels::default()
        };
        WaterStore { present, vessels: vec![vessel] }
    })
}

/// Openers as the trade sells them, which start at 15 to 24 °C.
pub fn vents() -> impl Strategy<Value = Vents> {
    let areas = (prop_oneof![Just(0.0), 0.1..1.5], 0.1..1.5, 0.0..2.0);
    (areas, 15.0..24.0, 8.0..11.0, prop::bool::ANY, 200.0..2000.0).prop_map(
        |((inlet_area_m2, outlet_area_m2, height_difference_m), opens_at_c, over_k, fan_present, fan_flow_m3_per_h)| {
            Vents {
                inlet_area_m2,
                outlet_area_m2,
                height_difference_m,
                opens_at_c,
                full_at_c: opens_at_c + over_k,
                fan_present,
                fan_flow_m3_per_h,
                fan_starts_at_c: opens_at_c + 4.0,
                ..Vents::default()
            }
        },
    )
}

/// A heater held at one temperature day and night.
pub fn set(setpoint_c: f64) -> Heater {
    Heater { setpoint_day_c: Some(setpoint_c), setpoint_night_c: Some(setpoint_c), ..Heater::default() }
}

/// A house whose air, or whose tent's air, is held at one temperature; the bench is as large as the smallest tent.
pub fn held() -> impl Strategy<Value = Scenario> {
    (house(), sheet(), tent(), prop::bool::ANY, water(), 2.0..12.0, prop::bool::ANY, vents()).prop_map(
        |(house, sheet, tent, with_tent, water, setpoint_c, night_cover, vents)| Scenario {
            house,
            covering: Covering { sheets: vec![sheet], ..Covering::default() },
            night_cover: NightCover { present: night_cover, ..NightCover::default() },
            tent: Tent { present: with_tent, ..tent },
            water,
            heater: set(setpoint_c),
            bench: Bench { length_m: 1.0, width_m: 0.6, height_m: 0.5, ..Bench::default() },
            vents,
            ..Scenario::default()
        },
    )
}

fn night_cover() -> impl Strategy<Value = NightCover> {
    let screen = prop_oneof![Just("fleece-screen"), Just("cloth-screen"), Just("energy-screen")];
    let drawn = prop_oneof![
        Just(Drawn::BySun),
        (15.0..19.0, 6.0..9.0).prop_map(|(from_hour, to_hour)| Drawn::Between { from_hour, to_hour })
    ];
    let parts = prop::sample::subsequence(vec![Part::Front, Part::Back, Part::Ends, Part::Roof], 1..=4);
    (prop::bool::ANY, screen, drawn, parts).prop_map(|(present, screen, drawn, parts)| NightCover {
        present,
        screen: screen.to_owned(),
        drawn,
        parts,
    })
}

/// One part in sheets of its own or boarded; a lean-to has no covering at its back.
fn exceptions() -> impl Strategy<Value = Vec<PartException>> {
    let part = prop_oneof![Just(Part::Front), Just(Part::Ends), Just(Part::Roof)];
    let covering =
        prop_oneof![sheet().prop_map(|key| PartCovering::Sheets(vec![key])), (0.3..3.0).prop_map(PartCovering::Opaque)];
    prop::collection::vec((part, covering).prop_map(|(part, covering)| PartException { part, covering }), 0..=1)
}

/// A first heater of any kind, to be placed; a standby heater 4 K below it, on the air of house or tent.
fn heaters() -> impl Strategy<Value = (Heater, Heater)> {
    let target = prop_oneof![2 => Just(HeatTarget::Air), 1 => Just(HeatTarget::Bench), 1 => Just(HeatTarget::Water)];
    let zone = || prop_oneof![Just(Zone::House), Just(Zone::Tent)];
    let setpoints = (prop::option::weighted(0.8, 4.0..14.0), 4.0..14.0, 5.0..9.0, 16.0..22.0);
    ((target, zone(), 200.0..3000.0, setpoints), prop::bool::ANY, zone()).prop_map(
        |((target, first, rated_w, (day, night, day_from_hour, day_to_hour)), standby, second)| {
            let heater = Heater {
                target,
                zone: first,
                rated_w,
                setpoint_day_c: day,
                setpoint_night_c: Some(night),
                day_from_hour,
                day_to_hour,
                ..Heater::default()
            };
            let below = day.unwrap_or(night).min(night) - 4.0;
            let standby = Heater { present: standby, zone: second, rated_w: 500.0, ..set(below) };
            (heater, standby)
        },
    )
}

/// Any house: a heater of any kind as far as it has its place, covers, boarded parts, fan.
pub fn any() -> impl Strategy<Value = Scenario> {
    let further = (night_cover(), night_cover(), exceptions(), heaters(), 0.0..=0.7, 0.0..=0.5, prop::bool::ANY);
    (held(), further).prop_map(
        |(mut scenario, (cover, tent_cover, exceptions, (heater, standby), transpiration, fullness, medium))| {
            scenario.night_cover = cover;
            scenario.tent.night_cover = tent_cover;
            scenario.covering.exceptions = exceptions;
            scenario.crop = Crop { transpiration_share: transpiration, ..scenario.crop };
            scenario.house.fullness = fullness;
            scenario.heater = placed(heater, &scenario);
            scenario.standby = standby;
            scenario.bench.present = medium || scenario.heater.target == HeatTarget::Bench;
            scenario
        },
    )
}

/// The heater where it can work: a mat in a tent, an immersion heater where water stands, else in the air.
fn placed(mut heater: Heater, scenario: &Scenario) -> Heater {
    match heater.target {
        HeatTarget::Bench if scenario.tent.present => heater.zone = Zone::Tent,
        HeatTarget::Water if scenario.water.present => heater.zone = scenario.water.vessels[0].zone,
        _ => heater.target = HeatTarget::Air,
    }
    heater
}
