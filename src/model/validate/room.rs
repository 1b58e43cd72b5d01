//! Checks whether benches and vessels have room.

use super::check::Check;
use super::fit::SLACK_M;
use super::kind::ProblemKind;
use super::scenario::zone_of;
use crate::model::crop::Bench;
use crate::model::house::Shape;
use crate::model::study::Scenario;
use crate::model::tent::TentBase;
use crate::model::water::{Vessels, WaterStore, Zone};

/// Slack for rounding of summed areas, m².
const SLACK_M2: f64 = 1e-6;

/// Where things can stand.
struct Room {
    length_m: f64,
    width_m: f64,
    free_m2: f64,
    inside: &'static str,
}

fn room(scenario: &Scenario, zone: Zone) -> Room {
    let (house, tent) = (&scenario.house, &scenario.tent);
    let tent_m2 = tent.length_m * tent.width_m;
    match zone_of(scenario, zone) {
        Zone::Tent => {
            let inside = if tent.base == TentBase::Floor { "the floor of the tent" } else { "the tent's bench board" };
            Room { length_m: tent.length_m, width_m: tent.width_m, free_m2: tent_m2, inside }
        }
        Zone::House => {
            let taken_m2 = if tent.present && tent.base == TentBase::Floor { tent_m2 } else { 0.0 };
            Room {
                length_m: house.length_m,
                width_m: house.width_m,
                free_m2: (house.length_m * house.width_m - taken_m2).max(0.0),
                inside: "the floor of the house",
            }
        }
    }
}

pub(super) fn bench(scenario: &Scenario, check: &mut Check) {
    let bench = &scenario.bench;
    check.numbers(bench, Bench::NUMBERS);
    if !bench.present {
        return;
    }
    let room = room(scenario, bench.zone);
    let (length_m, width_m) = (bench.length_m, bench.width_m);
    let lies = |l: f64, w: f64| l <= room.length_m + SLACK_M && w <= room.width_m + SLACK_M;
    if !lies(length_m, width_m) && !lies(width_m, length_m) {
        let kind = ProblemKind::DoesNotFit {
            length_m,
            width_m,
            room_length_m: room.length_m,
            room_width_m: room.width_m,
            inside: room.inside,
        };
        check.add("length_m", Bench::length_m.label, kind);
    }
    let area_m2 = f64::from(bench.count) * length_m * width_m;
    if room.free_m2 + SLACK_M2 < area_m2 {
        let kind =
            ProblemKind::TooMuchArea { what: "the benches", area_m2, room_m2: room.free_m2, inside: room.inside };
        check.add("count", Bench::count.label, kind);
    }
    bench_height(scenario, check);
}

/// A bench stands below the roof, and below the top of a tent on the floor; in a tent round a bench it is the base.
fn bench_height(scenario: &Scenario, check: &mut Check) {
    let (bench, house, tent) = (&scenario.bench, &scenario.house, &scenario.tent);
    let (room_m, inside) = match zone_of(scenario, bench.zone) {
        Zone::Tent if tent.base == TentBase::Floor => (tent.height_m, "the tent"),
        Zone::Tent => return,
        Zone::House if house.shape == Shape::FlatBox => (house.eaves_height_m, "the house"),
        Zone::House => (house.ridge_height_m, "the house"),
    };
    if room_m <= bench.height_m {
        let kind = ProblemKind::TooHigh { height_m: bench.height_m, room_m, inside };
        check.add("height_m", Bench::height_m.label, kind);
    }
}

/// Vessels may stand under benches, so benches take no floor from them.
pub(super) fn vessels(scenario: &Scenario, check: &mut Check) {
    if !scenario.water.present {
        return;
    }
    for zone in [Zone::House, Zone::Tent] {
        let here = |vessels: &&Vessels| zone_of(scenario, vessels.zone) == zone;
        let area_m2: f64 =
            scenario.water.vessels.iter().filter(here).map(|v| f64::from(v.count) * v.footprint_m2_each).sum();
        let room = room(scenario, zone);
        if room.free_m2 + SLACK_M2 < area_m2 {
            let kind =
                ProblemKind::TooMuchArea { what: "the vessels", area_m2, room_m2: room.free_m2, inside: room.inside };
            check.add("vessels", WaterStore::vessels.label, kind);
        }
    }
}
