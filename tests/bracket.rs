//! With a constant setpoint, no vessels and unlimited heat, a season's heat lies between the steady load taken day by
//! day, as if stores carried a whole day, and hour by hour, as if there were none (the degree-hour bracket).

#[path = "common/seasons.rs"]
mod seasons;

use seasons::{climate, run};
use warmfold::model::{
    Covering, Heater, House, NightCover, Part, Scenario, Shape, Study, Tent, TentBase, TentOpening, Tightness, Zone,
};
use warmfold::season::RunOptions;

/// Houses of every kind, held at one temperature day and night.
fn houses() -> Vec<Scenario> {
    vec![
        Scenario { covering: covered(&["glass"]), ..held("glass, whole house", Zone::House, 8.0) },
        Scenario {
            house: House { shape: Shape::Tunnel, eaves_height_m: 0.8, ridge_height_m: 2.2, ..House::default() },
            covering: covered(&["film", "film"]),
            ..held("tunnel, double film, whole house", Zone::House, 5.0)
        },
        Scenario {
            tent: tent(TentBase::Floor, TentOpening::Never),
            ..held("floor tent in single film", Zone::Tent, 8.0)
        },
        Scenario {
            covering: covered(&["twinwall-8"]),
            tent: tent(TentBase::Bench, TentOpening::Never),
            ..held("hung tent in twin wall", Zone::Tent, 10.0)
        },
        Scenario {
            covering: covered(&["glass", "bubble-liner"]),
            tent: tent(TentBase::InsulatedBench, TentOpening::ByDay),
            ..held("hung insulated tent, open by day", Zone::Tent, 8.0)
        },
        Scenario {
            house: House { shape: Shape::LeanTo, width_m: 2.0, tightness: Tightness::Worn, ..House::default() },
            covering: covered(&["glass"]),
            ..held("lean-to", Zone::House, 6.0)
        },
        Scenario {
            house: House { shape: Shape::FlatBox, eaves_height_m: 1.4, ..House::default() },
            covering: covered(&["film"]),
            night_cover: NightCover { present: true, parts: vec![Part::Roof, Part::Front], ..screen() },
            ..held("box with a cover on roof and front", Zone::House, 5.0)
        },
        Scenario {
            covering: covered(&["glass"]),
            night_cover: screen(),
            tent: Tent { night_cover: screen(), ..tent(TentBase::Floor, TentOpening::Never) },
            ..held("screens over house and tent", Zone::Tent, 12.0)
        },
    ]
}

fn held(name: &str, zone: Zone, setpoint_c: f64) -> Scenario {
    let heater =
        Heater { zone, setpoint_day_c: Some(setpoint_c), setpoint_night_c: Some(setpoint_c), ..Heater::default() };
    Scenario { name: name.to_owned(), heater, ..Scenario::default() }
}

fn covered(sheets: &[&str]) -> Covering {
    Covering { sheets: sheets.iter().map(|&key| key.to_owned()).collect(), ..Covering::default() }
}

fn screen() -> NightCover {
    NightCover { present: true, screen: "energy-screen".to_owned(), ..NightCover::default() }
}

fn tent(base: TentBase, opening: TentOpening) -> Tent {
    Tent { present: true, base, opening, ..Tent::default() }
}

/// No tolerance: the run lies well inside, by 8 % to 44 % of the bracket's width.
#[test]
fn season_heat_lies_within_the_bracket() {
    let study = Study::default();
    let options = RunOptions { unlimited_heat: true, ..RunOptions::default() };
    let mut outside = Vec::new();
    for station in ["duluth-mn", "sand-point-ak", "chicago-il", "port-angeles-wa", "denver-co", "aachen-2021"] {
        let climate = climate(station);
        for house in houses() {
            let summary = run(&study, &house, &climate, options).summary;
            let heat = summary.heat_delivered_kwh;
            let (low, high) = summary
                .degree_hour_bracket_low_kwh
                .zip(summary.degree_hour_bracket_high_kwh)
                .expect("a heater that is always on has a bracket");
            let line = format!("{station}, {}: {low:.1} ≤ {heat:.1} ≤ {high:.1} kWh", house.name);
            println!("{line}");
            if heat < low || heat > high {
                outside.push(line);
            }
        }
    }
    assert!(outside.is_empty(), "{outside:#?}");
}
