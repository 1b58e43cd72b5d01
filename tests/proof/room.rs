//! A room with two stores, heated by day or held at two temperatures, hour by hour for sixty days.

use serde::Deserialize;
use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{Thermostat, advance};

use super::figure::{Expected, Figure, hold, published};
use super::network::{network, state};

const DAYS: usize = 60;
const HOURS_PER_DAY: usize = 24;
/// More than the room ever needs, W.
const UNLIMITED_W: f64 = 1e6;

/// The nodes, in this order.
const AIR: usize = 0;
const OUTER_WALL: usize = 1;
const INNER_WALLS: usize = 2;
const OUTER_STORE: usize = 3;
const INNER_STORE: usize = 4;

#[derive(Deserialize)]
struct Room {
    source: String,
    outdoor_c: f64,
    outer_wall_m2: f64,
    inner_walls_m2: f64,
    outer_wall_to_air: f64,
    inner_walls_to_air: f64,
    between_walls: f64,
    outdoor_film: f64,
    gain_w: f64,
    gain_hours: (usize, usize),
    tolerance_k: f64,
    tolerance_w: f64,
    k_because: String,
    w_because: String,
    cases: Vec<Case>,
    shown_hours: Vec<usize>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    /// Column of the reference file.
    column: usize,
    steps_per_hour: u32,
    walls: Walls,
    #[serde(default)]
    held_c: Option<Held>,
}

#[derive(Deserialize)]
struct Walls {
    r1_k_per_w: f64,
    r2_k_per_w: f64,
    c1_j_per_k: f64,
    r3_k_per_w: f64,
    c3_j_per_k: f64,
}

#[derive(Deserialize)]
struct Held {
    day: f64,
    night: f64,
}

/// An hour of the reference: day from 1, hour of the day from 1, value.
struct Reference {
    day: usize,
    hour: usize,
    value: f64,
}

impl Room {
    fn network(&self, walls: &Walls) -> Network {
        let nodes = [0.0, 0.0, 0.0, walls.c1_j_per_k, walls.c3_j_per_k].map(Node::Capacity);
        let links = [
            (AIR, OUTER_WALL, self.outer_wall_to_air * self.outer_wall_m2),
            (AIR, INNER_WALLS, self.inner_walls_to_air * self.inner_walls_m2),
            (OUTER_WALL, INNER_WALLS, self.between_walls * self.outer_wall_m2),
            (OUTER_WALL, OUTER_STORE, 1.0 / walls.r1_k_per_w),
            (INNER_WALLS, INNER_STORE, 1.0 / walls.r3_k_per_w),
        ];
        let mut network = network(&nodes, &links);
        let outwards = 1.0 / (walls.r2_k_per_w + 1.0 / (self.outdoor_film * self.outer_wall_m2));
        network.add_boundary(OUTER_STORE, outwards, self.outdoor_c);
        network
    }

    /// The room in use: a convective gain in free float, a radiant one by area where it is held.
    fn in_use(&self, case: &Case) -> Network {
        let mut room = self.network(&case.walls);
        if case.held_c.is_some() {
            let all_m2 = self.outer_wall_m2 + self.inner_walls_m2;
            room.add_input(OUTER_WALL, self.gain_w * self.outer_wall_m2 / all_m2);
            room.add_input(INNER_WALLS, self.gain_w * self.inner_walls_m2 / all_m2);
        } else {
            room.add_input(AIR, self.gain_w);
        }
        room
    }

    /// Mean of each hour: air in °C, or extracted heat in W where the room is held.
    fn hourly(&self, case: &Case) -> Vec<f64> {
        let (empty, in_use) = (self.network(&case.walls), self.in_use(case));
        let steps = f64::from(case.steps_per_hour);
        let mut now = state(&empty, &[self.outdoor_c; 5]);
        let hour = |hour: usize| {
            let by_day = (self.gain_hours.0..self.gain_hours.1).contains(&(hour % HOURS_PER_DAY));
            let room = if by_day { &in_use } else { &empty };
            let hold = case.held_c.as_ref().map(|held| Thermostat {
                node: AIR,
                setpoint_c: if by_day { held.day } else { held.night },
                min_w: -UNLIMITED_W,
                max_w: UNLIMITED_W,
            });
            let mut sum = 0.0;
            for _ in 0..case.steps_per_hour {
                let step = advance(room, &now, 3600.0 / steps, hold.as_slice());
                sum += if hold.is_some() { -step.heater_w[0] } else { step.mean_c[AIR] };
                now = step.end;
            }
            sum / steps
        };
        (0..DAYS * HOURS_PER_DAY).map(hour).collect()
    }

    fn of_case(&self, case: &Case) -> Vec<Figure> {
        let (unit, tolerance, because) = if case.held_c.is_some() {
            ("W", self.tolerance_w, &self.w_because)
        } else {
            ("°C", self.tolerance_k, &self.k_because)
        };
        let hourly = self.hourly(case);
        let found = |at: &Reference| hourly[(at.day - 1) * HOURS_PER_DAY + at.hour - 1];
        let figure = |what: String, unit: &str, decimals, expected, got| Figure {
            what: format!("{}: {what}", case.name),
            source: self.source.clone(),
            unit: unit.into(),
            decimals,
            expected,
            tolerance_because: because.clone(),
            got,
        };
        let quantity = if case.held_c.is_some() { "extracted heat" } else { "air" };
        let mut figures = Vec::new();
        for day in references(case.column).chunk_by(|a, b| a.day == b.day) {
            let number = day[0].day;
            for at in day.iter().filter(|at| self.shown_hours.contains(&at.hour)) {
                let what = format!("{quantity} in hour {} of day {number}", at.hour);
                let decimals = usize::from(case.held_c.is_none());
                figures.push(figure(what, unit, decimals, Expected::Value(at.value, tolerance), found(at)));
            }
            let largest = day.iter().map(|at| (found(at) - at.value).abs()).fold(0.0, f64::max);
            let what = format!("largest deviation of the {} hours of day {number}", day.len());
            let unit = if case.held_c.is_some() { "W" } else { "K" };
            figures.push(figure(what, unit, 2, Expected::Band(0.0, tolerance), largest));
        }
        figures
    }
}

fn references(column: usize) -> Vec<Reference> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/validation/vdi6007_refs.csv");
    let mut reader = csv::Reader::from_path(path).expect("the reference file");
    let row = |row: csv::StringRecord| {
        let number = |column: usize| row[column].parse::<f64>().expect("a number");
        let hours = (number(0) / 3600.0) as usize;
        Reference { day: number(1) as usize, hour: (hours - 1) % HOURS_PER_DAY + 1, value: number(column) }
    };
    let rows: Vec<Reference> = reader.records().map(|line| row(line.expect("a row"))).collect();
    assert_eq!(rows.len(), 3 * HOURS_PER_DAY, "three days");
    rows
}

pub fn figures() -> Vec<Figure> {
    let room: Room = published("room");
    room.cases.iter().flat_map(|case| room.of_case(case)).collect()
}

#[test]
fn the_room_agrees() {
    hold(&figures());
}
