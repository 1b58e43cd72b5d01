//! What burning makes, and an unvented flame in a closed room.

use serde::Deserialize;
use warmfold::physics::combustion::{Hydrocarbon, KEROSENE, PROPANE, rise_after, steady_rise};
use warmfold::units::{JOULES_PER_BTU, JOULES_PER_KWH, KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON};

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

/// Temperature at which volumes are worked out, °C.
const ROOM_C: f64 = 20.0;

#[derive(Deserialize)]
struct Cases {
    water_per_kg: Sheets<String>,
    carbon_dioxide_per_kg: Sheets<String>,
    oxygen_per_kg: Sheets<String>,
    air_per_kg: Sheets<String>,
    heavier_oil: Sheets<Product>,
    air_by_volume: Sheets<String>,
    air_per_heat: Sheets<f64>,
    fuel_heat: Sheets<Basis>,
    net_heat: Sheets<String>,
    sensible: Sheets<String>,
    water_per_kwh_gross: Sheets<String>,
    water_per_kwh_net: Sheets<String>,
    carbon_dioxide_per_kwh: Sheets<String>,
    carbon_dioxide_volume: Sheets<String>,
    air_volume: Sheets<String>,
    water_by_pounds: Sheets<String>,
    floor_of_carbon_dioxide: Sheets<String>,
    water_of_a_heater: Sheets<(String, f64)>,
    carbon_dioxide_rise: Sheets<Room>,
}

#[derive(Debug, Deserialize)]
enum Product {
    Water,
    CarbonDioxide,
    Oxygen,
    Air,
}

#[derive(Deserialize)]
enum Basis {
    Gross,
    Net,
}

/// Air changes per hour of a room, after one hour or after many.
#[derive(Deserialize)]
enum Room {
    FirstHour(f64),
    Steady(f64),
}

impl Room {
    fn figure(&self) -> (String, f64) {
        let (source, volume) = (PROPANE.carbon_dioxide_m3_per_kwh_gross(ROOM_C), 50.0);
        let (when, share) = match self {
            Self::FirstHour(changes) => {
                (format!("in one hour at {changes}"), rise_after(source, volume, *changes, 1.0))
            }
            Self::Steady(changes) => (format!("after long at {changes}"), steady_rise(source, volume, *changes)),
        };
        (format!("carbon dioxide of 1 kW of propane in 50 m³, {when} air changes per hour"), 1e6 * share)
    }
}

fn burnt(fuel: &str) -> Hydrocarbon {
    Hydrocarbon::of_fuel(fuel).expect("a hydrocarbon")
}

/// A figure of one fuel: the words with its name, and the value.
fn of(words: &'static str, value: impl Fn(Hydrocarbon) -> f64) -> impl Fn(&String) -> (String, f64) {
    move |fuel| (format!("{}: {words}", fuel.replace('-', " ")), value(burnt(fuel)))
}

fn dodecane(product: &Product) -> (String, f64) {
    let oil = Hydrocarbon { carbon: 12.0, hydrogen: 26.0, ..KEROSENE };
    match product {
        Product::Water => ("dodecane: water made per kg".into(), oil.water_kg_per_kg()),
        Product::CarbonDioxide => ("dodecane: carbon dioxide made per kg".into(), oil.carbon_dioxide_kg_per_kg()),
        Product::Oxygen => ("dodecane: oxygen used per kg".into(), oil.oxygen_kg_per_kg()),
        Product::Air => ("dodecane: air needed per kg".into(), oil.air_kg_per_kg()),
    }
}

/// Water made by a heater of this input, kg/h.
fn water_kg_per_h(fuel: &Hydrocarbon, btu_per_h: f64) -> f64 {
    fuel.water_kg_per_kg() * btu_per_h * JOULES_PER_BTU / fuel.gross_j_per_kg
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("flames");
    let million_btu_kwh = 1e6 * JOULES_PER_BTU / JOULES_PER_KWH;
    [
        file.water_per_kg.figures(of("water made per kg", |f| f.water_kg_per_kg())),
        file.carbon_dioxide_per_kg.figures(of("carbon dioxide made per kg", |f| f.carbon_dioxide_kg_per_kg())),
        file.oxygen_per_kg.figures(of("oxygen used per kg", |f| f.oxygen_kg_per_kg())),
        file.air_per_kg.figures(of("air needed per kg", |f| f.air_kg_per_kg())),
        file.heavier_oil.figures(dodecane),
        file.air_by_volume.figures(of("air needed per volume of gas", |f| f.air_m3_per_m3())),
        file.air_per_heat.figures(|btu_per_ft3| {
            ("air needed for 1,000 Btu of propane".into(), 1000.0 / btu_per_ft3 * PROPANE.air_m3_per_m3())
        }),
        file.fuel_heat.figures(|basis| match basis {
            Basis::Gross => ("heat in a kilogram of pure propane, gross".into(), 1.0 / PROPANE.kg_per_kwh_gross()),
            Basis::Net => ("heat in a kilogram of pure propane, net".into(), 1.0 / PROPANE.kg_per_kwh_net()),
        }),
        file.net_heat.figures(of("net heat, gross less the heat in its water", |f| f.net_by_water_j_per_kg() / 1e6)),
        file.sensible.figures(of("warmth of an unvented flame per gross heat", |f| f.sensible_share())),
        file.water_per_kwh_gross.figures(of("water per kWh gross", |f| f.water_kg_per_kg() * f.kg_per_kwh_gross())),
        file.water_per_kwh_net.figures(of("water per kWh net", |f| f.water_kg_per_kg() * f.kg_per_kwh_net())),
        file.carbon_dioxide_per_kwh
            .figures(of("carbon dioxide per kWh gross", |f| f.carbon_dioxide_kg_per_kg() * f.kg_per_kwh_gross())),
        file.carbon_dioxide_volume
            .figures(of("volume of carbon dioxide per kWh gross", |f| f.carbon_dioxide_m3_per_kwh_gross(ROOM_C))),
        file.air_volume.figures(of("volume of air needed per kWh gross", |f| f.air_m3_per_kwh_gross(ROOM_C))),
        file.water_by_pounds
            .figures(of("water per 100,000 Btu gross", |f| water_kg_per_h(&f, 100_000.0) / KILOGRAMS_PER_POUND)),
        file.floor_of_carbon_dioxide.figures(of("carbon dioxide of the pure fuel per million Btu", |f| {
            f.carbon_dioxide_kg_per_kg() * f.kg_per_kwh_gross() * million_btu_kwh
        })),
        file.water_of_a_heater.figures(|(fuel, btu_per_h)| {
            let litres = water_kg_per_h(&burnt(fuel), *btu_per_h);
            let words = format!("water from an unvented heater of {btu_per_h} Btu/h, {}", fuel.replace('-', " "));
            (words, litres / LITRES_PER_US_GALLON)
        }),
        file.carbon_dioxide_rise.figures(Room::figure),
    ]
    .concat()
}

#[test]
fn flames_agree() {
    hold(&figures());
}
