//! Air that warm and cold move through two openings.

use serde::Deserialize;
use warmfold::physics::vent::{Openings, stack_flow};

use super::figure::{Expected, Figure, hold, published};

#[derive(Deserialize)]
struct Cases {
    source: String,
    tolerance_because: String,
    tolerance_share: f64,
    discharge_coefficient: f64,
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    inlet_m2: f64,
    outlet_m2: f64,
    height_m: f64,
    inside_c: f64,
    outdoor_c: f64,
    flow_m3_per_s: f64,
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("stack_flow");
    let figure = |case: &Case| {
        let openings = Openings { inlet_m2: case.inlet_m2, outlet_m2: case.outlet_m2, height_m: case.height_m };
        Figure {
            what: format!(
                "stack flow, {} m² low and {} m² high, {} °C inside, {} °C outside",
                case.inlet_m2, case.outlet_m2, case.inside_c, case.outdoor_c
            ),
            source: file.source.clone(),
            unit: "m³/s".into(),
            decimals: 5,
            expected: Expected::Value(case.flow_m3_per_s, case.flow_m3_per_s * file.tolerance_share),
            tolerance_because: file.tolerance_because.clone(),
            got: stack_flow(file.discharge_coefficient, openings, case.inside_c, case.outdoor_c),
        }
    };
    file.cases.iter().map(figure).collect()
}

#[test]
fn stack_flow_agrees() {
    hold(&figures());
}
