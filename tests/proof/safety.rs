//! Gas cylinders, circuits, air for a flame, drums of water.

use std::f64::consts::PI;

use serde::Deserialize;
use warmfold::model::{Cylinder, bundled_catalogue};
use warmfold::physics::stores::{HEAT_OF_FUSION, WATER_SPECIFIC_HEAT};
use warmfold::safety::circuit::{
    continuous_limit_w, current_a, plug_limit_w, rating_needed_a, smallest_breaker_a, voltage_drop_v,
};
use warmfold::safety::combustion_air::{
    AirPath, ROOM_M3_PER_W, input_supported_w, opening_m2, pipe_diameter_m, room_needed_m3,
};
use warmfold::safety::cylinder::{draw_limit_w, lasts_h};
use warmfold::safety::weight::{ICE_GROWTH, STEEL_DRUM_KG, cylinder_litres, filled_kg, pressure_pa, snow_kg};
use warmfold::units::{
    GRAVITY, JOULES_PER_BTU, JOULES_PER_KWH, KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON, METRES_PER_FOOT,
    c_from_fahrenheit, kwh_from_joules,
};

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

/// Watts in a Btu per hour.
const BTU_PER_H: f64 = JOULES_PER_BTU / 3600.0;
const INCH: f64 = METRES_PER_FOOT / 12.0;

#[derive(Deserialize)]
struct Cases {
    draw: Sheets<Left>,
    draw_kw: Sheets<Left>,
    cold_winter: Sheets<String>,
    content: Sheets<String>,
    lasts: Sheets<(String, f64)>,
    pounds_per_hour: Sheets<f64>,
    current: Sheets<Load>,
    rating: Sheets<f64>,
    breaker: Sheets<f64>,
    circuit: Sheets<Circuit>,
    voltage_drop: Sheets<Cable>,
    heat: Sheets<f64>,
    room_rule: Sheets<f64>,
    room: Sheets<f64>,
    supports: Sheets<Room>,
    opening: Sheets<Inlet>,
    pipe: Sheets<f64>,
    drum: Sheets<Drum>,
    filled: Sheets<f64>,
    floor: Sheets<Stand>,
    floor_metric: Sheets<Stand>,
    heat_store: Sheets<f64>,
    freezing: Sheets<f64>,
    ice: Sheets<()>,
    snow: Sheets<Snow>,
    plug: Sheets<f64>,
}

/// What is left in a 100 lb cylinder, and its temperature.
#[derive(Deserialize)]
struct Left {
    left_lb: f64,
    liquid_f: f64,
}

impl Left {
    fn draw_w(&self) -> f64 {
        let kg = self.left_lb * KILOGRAMS_PER_POUND;
        draw_limit_w(cylinder("100 lb cylinder"), kg, c_from_fahrenheit(self.liquid_f))
    }

    fn words(&self) -> String {
        format!("most draw from a 100 lb cylinder, {} lb left, {} °F", self.left_lb, self.liquid_f)
    }
}

#[derive(Deserialize)]
struct Load {
    watts: f64,
    volts: f64,
}

#[derive(Deserialize)]
struct Circuit {
    rating: f64,
    volts: f64,
}

#[derive(Deserialize)]
struct Cable {
    amperes: f64,
    feet: f64,
    ohm_per_1000_ft: f64,
}

#[derive(Clone, Copy, Deserialize)]
enum Room {
    CubicFeet(f64),
    CubicMetres(f64),
}

#[derive(Clone, Copy, Deserialize)]
enum Path {
    Direct,
    LevelDucts,
    One,
    Greenhouse,
}

#[derive(Deserialize)]
struct Inlet {
    path: Path,
    btu: f64,
}

impl Inlet {
    fn figure(&self) -> (String, f64) {
        let (words, path) = match self.path {
            Path::Direct => ("each of two openings", AirPath::TwoDirect),
            Path::LevelDucts => ("each of two level ducts", AirPath::TwoLevelDucts),
            Path::One => ("one opening", AirPath::One),
            Path::Greenhouse => ("greenhouse inlet", AirPath::GreenhouseInlet),
        };
        (format!("{words} for {} Btu/h", self.btu), opening_m2(path, self.btu * BTU_PER_H) / INCH.powi(2))
    }
}

#[derive(Deserialize)]
struct Drum {
    diameter_in: f64,
    height_in: f64,
}

/// What a drum stands on: its own round footprint, in, or a square of its own, ft.
#[derive(Clone, Copy, Deserialize)]
enum Stand {
    Footprint(f64),
    Square(f64),
}

impl Stand {
    fn pressure_pa(self) -> (String, f64) {
        let (words, area) = match self {
            Self::Footprint(inches) => (format!("its {inches} in footprint"), PI / 4.0 * (inches * INCH).powi(2)),
            Self::Square(feet) => (format!("{feet} × {feet} ft"), (feet * METRES_PER_FOOT).powi(2)),
        };
        let mass = filled_kg(55.0 * LITRES_PER_US_GALLON, STEEL_DRUM_KG);
        (format!("filled drum on {words}"), pressure_pa(mass, area))
    }
}

/// Snow on a house, by the inches of water that it melts to.
#[derive(Deserialize)]
struct Snow {
    feet: (f64, f64),
    inches: f64,
}

impl Snow {
    fn pounds(&self) -> f64 {
        let area_m2 = self.feet.0 * self.feet.1 * METRES_PER_FOOT.powi(2);
        snow_kg(area_m2, self.inches * INCH) / KILOGRAMS_PER_POUND
    }
}

fn cylinder(unit: &str) -> &'static Cylinder {
    bundled_catalogue().cylinder(unit).expect("a cylinder of the catalogue")
}

/// Heat of propane in one unit of the fuel catalogue, kWh.
fn propane_kwh(unit: &str) -> f64 {
    let propane = bundled_catalogue().fuel("propane").expect("propane");
    propane.units.iter().find(|u| u.unit == unit).expect("a unit").kwh_gross_per_unit
}

fn cylinders(file: &Cases) -> Vec<Figure> {
    [
        file.draw.figures(|c| (c.words(), c.draw_w() / BTU_PER_H)),
        file.draw_kw.figures(|c| (format!("{}, in kW", c.words()), c.draw_w() / 1000.0)),
        file.cold_winter.figures(|unit| {
            let row = cylinder(unit);
            (format!("draw from a {unit} in a cold winter"), draw_limit_w(row, row.content_kg, 0.0) / 1000.0)
        }),
        file.content.figures(|unit| (format!("propane in a {unit}"), cylinder(unit).content_kg)),
        file.lasts.figures(|(unit, btu)| {
            (format!("hours from a {unit} at {btu} Btu/h"), lasts_h(propane_kwh(unit), btu * BTU_PER_H))
        }),
        file.pounds_per_hour
            .figures(|btu| (format!("propane burnt at {btu} Btu/h"), btu * BTU_PER_H / 1000.0 / propane_kwh("lb"))),
    ]
    .concat()
}

fn circuits(file: &Cases) -> Vec<Figure> {
    [
        file.current.figures(|l| (format!("current of {} W at {} V", l.watts, l.volts), current_a(l.watts, l.volts))),
        file.rating.figures(|amperes| (format!("rating for {amperes} A of heating"), rating_needed_a(*amperes))),
        file.breaker.figures(|amperes| {
            let breaker = smallest_breaker_a(*amperes).expect("a breaker that large");
            (format!("smallest breaker for {amperes} A of heating"), breaker)
        }),
        file.circuit.figures(|c| {
            let words = format!("heating on a circuit of {} A, {} V", c.rating, c.volts);
            (words, continuous_limit_w(c.rating, c.volts))
        }),
        file.voltage_drop.figures(|c| {
            let ohm_per_m = c.ohm_per_1000_ft / 1000.0 / METRES_PER_FOOT;
            let words = format!("voltage lost over {} ft at {} A", c.feet, c.amperes);
            (words, voltage_drop_v(c.amperes, c.feet * METRES_PER_FOOT, ohm_per_m))
        }),
        file.plug.figures(|rating| {
            let watts = plug_limit_w(*rating, Some(230.0)).expect("volts are given");
            (format!("heater on a plug fused {rating} A, 230 V"), watts)
        }),
        file.heat.figures(|watts| (format!("heat of {watts} W"), watts / BTU_PER_H)),
    ]
    .concat()
}

fn air_for_flames(file: &Cases) -> Vec<Figure> {
    let cubic_foot = METRES_PER_FOOT.powi(3);
    [
        file.room_rule.figures(|kilowatts| ("room per kilowatt of flame".into(), kilowatts * 1000.0 * ROOM_M3_PER_W)),
        file.room.figures(|btu| (format!("room for {btu} Btu/h"), room_needed_m3(btu * BTU_PER_H) / cubic_foot)),
        file.supports.figures(|room| {
            let (words, m3) = match room {
                Room::CubicFeet(ft3) => (format!("{ft3} ft³"), ft3 * cubic_foot),
                Room::CubicMetres(m3) => (format!("{m3} m³"), *m3),
            };
            (format!("flame that a room of {words} carries"), input_supported_w(m3) / BTU_PER_H)
        }),
        file.opening.figures(Inlet::figure),
        file.pipe.figures(|in2| (format!("round pipe of {in2} in²"), pipe_diameter_m(in2 * INCH.powi(2)) / INCH)),
    ]
    .concat()
}

fn water(file: &Cases) -> Vec<Figure> {
    let pound_per_ft2 = KILOGRAMS_PER_POUND * GRAVITY / METRES_PER_FOOT.powi(2);
    let litres = |gallons: &f64| gallons * LITRES_PER_US_GALLON;
    [
        file.drum.figures(|d| {
            let words = format!("drum of {} × {} in", d.diameter_in, d.height_in);
            (words, cylinder_litres(d.diameter_in * INCH, d.height_in * INCH))
        }),
        file.filled.figures(|gallons| {
            let pounds = filled_kg(litres(gallons), STEEL_DRUM_KG) / KILOGRAMS_PER_POUND;
            (format!("steel drum with {gallons} US gal of water"), pounds)
        }),
        file.floor.figures(|stand| {
            let (words, pa) = stand.pressure_pa();
            (words, pa / pound_per_ft2)
        }),
        file.floor_metric.figures(|stand| {
            let (words, pa) = stand.pressure_pa();
            (format!("{words}, in kPa"), pa / 1000.0)
        }),
        file.heat_store.figures(|gallons| {
            let kwh = litres(gallons) * WATER_SPECIFIC_HEAT / JOULES_PER_KWH;
            (format!("heat per kelvin in {gallons} US gal of water"), kwh)
        }),
        file.freezing.figures(|gallons| {
            let kwh = kwh_from_joules(litres(gallons) * HEAT_OF_FUSION);
            (format!("heat from {gallons} US gal of water that freeze"), kwh)
        }),
        file.snow.figures(|s| {
            let (width, length) = s.feet;
            (format!("snow on {width} × {length} ft, {} in of water", s.inches), s.pounds())
        }),
        file.ice.figures(|()| ("growth of water that freezes".into(), 100.0 * ICE_GROWTH)),
    ]
    .concat()
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("safety");
    [cylinders(&file), circuits(&file), air_for_flames(&file), water(&file)].concat()
}

#[test]
fn safety_rules_agree() {
    hold(&figures());
}
