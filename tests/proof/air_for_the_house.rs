//! Air through openings in full, and what fans and a sunny noon need.

use serde::Deserialize;
use warmfold::physics::neutral_level::{inflow, neutral_level_m, outflow, two_way_discharge, two_way_flow};
use warmfold::physics::vent::{
    DISCHARGE_COEFFICIENT, Openings, combined_flow, effective_area_m2, stack_flow, wind_flow,
};
use warmfold::physics::vent_sizing::{CIRCULATION_M3_PER_S_M2, Noon, fans_needed, flow_for_changes};
use warmfold::units::{METRES_PER_FOOT, Quantity, SECONDS_PER_HOUR, UnitSystem, c_from_fahrenheit};

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

#[derive(Deserialize)]
struct Cases {
    neutral_level: Sheets<Pair>,
    inflow: Sheets<Pair>,
    outflow: Sheets<Pair>,
    short_form: Sheets<Pair>,
    inflow_by_feet: Sheets<FeetPair>,
    one_opening: Sheets<Discharge>,
    area_ratio: Sheets<f64>,
    wind: Sheets<Gust>,
    wind_and_warmth: Sheets<Gust>,
    fan_by_floor: Sheets<Floor>,
    fan_by_changes: Sheets<Changes>,
    circulation_flow: Sheets<Floor>,
    circulation_fans: Sheets<Floor>,
    noon_rise: Sheets<f64>,
    noon_flow: Sheets<Rise>,
    noon_flow_cfm: Sheets<Rise>,
}

/// Discharge coefficient of separate inlet and outlet, or of one opening with flow both ways.
#[derive(Clone, Copy, Deserialize)]
enum Discharge {
    Two,
    One,
}

impl Discharge {
    fn at(self, inside_c: f64, outdoor_c: f64) -> f64 {
        match self {
            Self::Two => DISCHARGE_COEFFICIENT,
            Self::One => two_way_discharge(inside_c, outdoor_c),
        }
    }
}

/// A low and a high opening, m², and their distance, m.
#[derive(Deserialize)]
struct Pair {
    low: f64,
    high: f64,
    height: f64,
    inside_c: f64,
    outdoor_c: f64,
    discharge: Discharge,
}

impl Pair {
    fn openings(&self) -> Openings {
        Openings { inlet_m2: self.low, outlet_m2: self.high, height_m: self.height }
    }

    fn figure(&self, what: &str, flow: impl Fn(f64, Openings, f64, f64) -> f64) -> (String, f64) {
        let discharge = self.discharge.at(self.inside_c, self.outdoor_c);
        let words = format!(
            "{what}, {} m² low and {} m² high, C_d {discharge:.3}, {} °C inside, {} °C outside",
            self.low, self.high, self.inside_c, self.outdoor_c
        );
        (words, flow(discharge, self.openings(), self.inside_c, self.outdoor_c))
    }
}

#[derive(Deserialize)]
struct FeetPair {
    area_ft2: f64,
    height_ft: f64,
    inside_f: f64,
    outdoor_f: f64,
}

impl FeetPair {
    fn figure(&self) -> (String, f64) {
        let area = self.area_ft2 * METRES_PER_FOOT.powi(2);
        let openings = Openings { inlet_m2: area, outlet_m2: area, height_m: self.height_ft * METRES_PER_FOOT };
        let (inside, outdoor) = (c_from_fahrenheit(self.inside_f), c_from_fahrenheit(self.outdoor_f));
        let words = format!(
            "inflow, {} ft² low and high, {} °F inside, {} °F outside",
            self.area_ft2, self.inside_f, self.outdoor_f
        );
        (words, cfm(inflow(DISCHARGE_COEFFICIENT, openings, inside, outdoor)))
    }
}

#[derive(Deserialize)]
struct Gust {
    effectiveness: f64,
    area: f64,
    wind: f64,
}

impl Gust {
    fn flow(&self) -> f64 {
        let openings = Openings { inlet_m2: self.area, outlet_m2: self.area, height_m: 2.0 };
        wind_flow(self.effectiveness, openings, self.wind)
    }

    fn with_warmth(&self) -> f64 {
        let openings = Openings { inlet_m2: self.area, outlet_m2: self.area, height_m: 2.0 };
        combined_flow(stack_flow(DISCHARGE_COEFFICIENT, openings, 30.0, 20.0), self.flow(), 0.0)
    }
}

#[derive(Deserialize)]
struct Floor {
    length_ft: f64,
    width_ft: f64,
    cfm_per_ft2: f64,
}

impl Floor {
    fn m2(&self) -> f64 {
        self.length_ft * self.width_ft * METRES_PER_FOOT.powi(2)
    }

    /// A flow per floor is a speed: a volume as high as it goes in a minute is changed once a minute.
    fn cfm(&self) -> f64 {
        cfm(flow_for_changes(self.m2() * self.cfm_per_ft2 * METRES_PER_FOOT, 60.0))
    }

    fn words(&self) -> String {
        format!("{} × {} ft", self.length_ft, self.width_ft)
    }
}

#[derive(Deserialize)]
struct Changes {
    volume: Volume,
    changes_per_h: f64,
}

#[derive(Clone, Copy, Deserialize)]
enum Volume {
    CubicFeet(f64),
    CubicMetres(f64),
}

impl Changes {
    fn figure(&self) -> (String, f64) {
        let (words, m3) = match self.volume {
            Volume::CubicFeet(ft3) => (format!("{ft3} ft³"), ft3 * METRES_PER_FOOT.powi(3)),
            Volume::CubicMetres(m3) => (format!("{m3} m³"), m3),
        };
        let flow = cfm(flow_for_changes(m3, self.changes_per_h));
        (format!("flow that changes {words} {} times an hour", self.changes_per_h), flow)
    }
}

#[derive(Deserialize)]
struct Rise {
    rise_k: f64,
    covered: bool,
}

impl Rise {
    fn flow_per_m2(&self) -> f64 {
        let noon = Noon { cover_w_per_k: if self.covered { NOON.cover_w_per_k } else { 0.0 }, ..NOON };
        noon.flow_for_rise(self.rise_k) / noon.floor_m2
    }

    fn words(&self) -> String {
        let cover = if self.covered { "with" } else { "without" };
        format!("flow per floor that holds noon at {} K above outdoors, {cover} cover loss", self.rise_k)
    }
}

/// The noon of the worked examples.
const NOON: Noon =
    Noon { global_w_per_m2: 800.0, transmittance: 0.7, evaporated_share: 0.5, floor_m2: 10.0, cover_w_per_k: 180.0 };

fn cfm(flow_m3_per_s: f64) -> f64 {
    Quantity::AirFlow.unit(UnitSystem::Imperial).shown(flow_m3_per_s * SECONDS_PER_HOUR)
}

fn openings_figures(file: &Cases) -> Vec<Figure> {
    let smaller = effective_area_m2(1.0, 1.0);
    [
        file.neutral_level.figures(|p| p.figure("neutral level", |_, o, inside, out| neutral_level_m(o, inside, out))),
        file.inflow.figures(|p| p.figure("inflow", inflow)),
        file.outflow.figures(|p| p.figure("outflow", outflow)),
        file.short_form.figures(|p| p.figure("flow of the season", stack_flow)),
        file.inflow_by_feet.figures(FeetPair::figure),
        file.one_opening.figures(|discharge| {
            let coefficient = discharge.at(30.0, 20.0);
            let flow = two_way_flow(coefficient, 1.0, 0.6, 30.0, 20.0);
            (format!("one ridge flap, in and out, C_d {coefficient:.3}"), flow)
        }),
        file.area_ratio.figures(|ratio| {
            let size = if *ratio < 100.0 { format!("{ratio} times the lower") } else { "without bound".into() };
            (format!("flow gained by an upper opening {size}"), effective_area_m2(1.0, *ratio) / smaller)
        }),
        file.wind.figures(|g| (format!("wind of {} m/s on {} m²", g.wind, g.area), g.flow())),
        file.wind_and_warmth.figures(|g| (format!("wind of {} m/s and 10 K together", g.wind), g.with_warmth())),
    ]
    .concat()
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("air_for_the_house");
    let need = [
        file.fan_by_floor.figures(|f| (format!("fan at {} cfm/ft² of {}", f.cfm_per_ft2, f.words()), f.cfm())),
        file.fan_by_changes.figures(Changes::figure),
        file.circulation_flow
            .figures(|f| (format!("air to keep moving in {}", f.words()), cfm(CIRCULATION_M3_PER_S_M2 * f.m2()))),
        file.circulation_fans.figures(|f| {
            let fan = 1600.0 / cfm(1.0);
            (format!("fans of 1,600 cfm for {}", f.words()), fans_needed(CIRCULATION_M3_PER_S_M2 * f.m2(), fan))
        }),
        file.noon_rise.figures(|flow| {
            (format!("rise at noon with {flow} m³/s per m² of floor"), NOON.rise_k(flow * NOON.floor_m2))
        }),
        file.noon_flow.figures(|r| (r.words(), r.flow_per_m2())),
        file.noon_flow_cfm
            .figures(|r| (format!("{}, in cfm", r.words()), cfm(r.flow_per_m2()) * METRES_PER_FOOT.powi(2))),
    ]
    .concat();
    [openings_figures(&file), need].concat()
}

#[test]
fn air_for_the_house_agrees() {
    hold(&figures());
}
