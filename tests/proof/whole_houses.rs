//! Worked examples through a whole scenario: its design load, and the light through its panes.

use serde::Deserialize;
use warmfold::model::{
    Catalogue, Scenario, Season, Shape, Sheet, SheetKind, Study, Tightness, Zone, bundled_catalogue,
};
use warmfold::season::plan::Plan;
use warmfold::season::run_scenario;

use super::figure::{Figure, hold};
use super::sheet::told_figures;
use crate::weather::{Hour, constant};

#[derive(Deserialize)]
enum Setting {
    /// Heat of a gable house in this unit at its design weather, W.
    DesignLoad {
        /// Length, width, eaves, ridge, m.
        house: (f64, f64, f64, f64),
        covering: Covering,
        changes_per_h: f64,
        /// W/(m·K) of the floor's edge.
        edge: f64,
        inside_c: f64,
        outdoor_c: f64,
        /// W in one unit of the answer.
        watts_per_unit: f64,
    },
    /// Light through panes of this transmittance one behind the other, %.
    Light { panes: usize, transmittance: f64 },
}

#[derive(Deserialize)]
enum Covering {
    /// A sheet of the catalogue.
    Known(String),
    /// A sheet of this U.
    U(f64),
}

/// The catalogue with one more sheet.
fn with_sheet(sheet: Sheet) -> Catalogue {
    let mut catalogue = bundled_catalogue().clone();
    catalogue.sheets.push(sheet);
    catalogue
}

const WORKED: &str = "worked";

fn worked_sheet() -> Sheet {
    Sheet { key: WORKED.to_owned(), kind: SheetKind::Rigid, ..Sheet::default() }
}

/// A house alone, its air held; nothing planted, no bench, vents, tent or water.
fn bare_house(house_m: (f64, f64, f64, f64), inside_c: f64) -> Scenario {
    let mut scenario = Scenario::default();
    let house = &mut scenario.house;
    house.shape = Shape::Gable;
    (house.length_m, house.width_m, house.eaves_height_m, house.ridge_height_m) = house_m;
    scenario.bench.present = false;
    scenario.vents.present = false;
    scenario.tent.present = false;
    scenario.water.present = false;
    let heater = &mut scenario.heater;
    heater.zone = Zone::House;
    (heater.setpoint_day_c, heater.setpoint_night_c) = (Some(inside_c), Some(inside_c));
    scenario
}

fn compute(setting: &Setting) -> f64 {
    match setting {
        Setting::DesignLoad { house, covering, changes_per_h, edge, inside_c, outdoor_c, watts_per_unit } => {
            let mut scenario = bare_house(*house, *inside_c);
            scenario.house.tightness = Tightness::Rate(*changes_per_h);
            scenario.house.edge_f_w_per_mk = *edge;
            let (key, u_as_skin_w_per_m2k) = match covering {
                Covering::Known(key) => (key.as_str(), 1.0),
                Covering::U(u) => (WORKED, *u),
            };
            scenario.covering.sheets = vec![key.to_owned()];
            let catalogue = with_sheet(Sheet { u_as_skin_w_per_m2k, ..worked_sheet() });
            // Deep ground as warm as the room: the examples know no floor.
            let weather = Hour { outdoor_c: *outdoor_c, deep_ground_c: Some(*inside_c), ..Hour::default() };
            let season = Season { from_month: 1, from_day: 1, to_month: 1, to_day: 2 };
            let study = Study { season, ..Study::default() };
            let run = run_scenario(&study, &scenario, &constant(&weather), &catalogue, &|| false).expect("a run");
            run.summary.design_load_w_99_6 / watts_per_unit
        }
        Setting::Light { panes, transmittance } => {
            let mut scenario = bare_house((6.0, 3.0, 1.8, 2.4), 5.0);
            scenario.covering.sheets = vec![WORKED.to_owned(); *panes];
            let catalogue = with_sheet(Sheet { solar_transmittance: *transmittance, ..worked_sheet() });
            let plan = Plan::new(&scenario, &catalogue).expect("a house");
            100.0 * plan.light.first().expect("a pane").transmittance
        }
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("whole_houses", compute)
}

#[test]
fn whole_houses_agree() {
    hold(&figures());
}
