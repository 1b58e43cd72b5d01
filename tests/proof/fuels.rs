//! What a unit of fuel holds and leaves behind, and what heat from it costs.

use serde::Deserialize;
use warmfold::model::{Catalogue, Fuel, FuelPrice, FuelUnit, Heater, Study, bundled_catalogue};
use warmfold::season::money::{ELECTRICITY, Purchase, heat_per_energy};
use warmfold::units::{JOULES_PER_BTU, JOULES_PER_KWH, kwh_from_joules};
use warmfold::weather::ClimateHour;

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

#[derive(Deserialize)]
struct Cases {
    heat_content: Sheets<(String, String)>,
    net_content: Sheets<String>,
    cylinder_btu: Sheets<String>,
    conversion: Sheets<Conversion>,
    other_units: Sheets<Converted>,
    net_per_gross: Sheets<String>,
    carbon_dioxide: Sheets<String>,
    carbon_dioxide_per_unit: Sheets<(String, String)>,
    cost: Sheets<Bought>,
    cost_per_kwh: Sheets<Bought>,
}

#[derive(Deserialize)]
enum Conversion {
    BtuPerKwh,
    KwhPerMillionBtu,
}

impl Conversion {
    fn figure(&self) -> (String, f64) {
        match self {
            Self::BtuPerKwh => ("Btu in a kilowatt-hour".into(), JOULES_PER_KWH / JOULES_PER_BTU),
            Self::KwhPerMillionBtu => ("kilowatt-hours in a million Btu".into(), million_btu_kwh()),
        }
    }
}

#[derive(Deserialize)]
struct Converted {
    fuel: String,
    unit: String,
    in_: Unit,
}

#[derive(Clone, Copy, Deserialize)]
enum Unit {
    Megajoules,
    PerTherm,
}

impl Converted {
    fn figure(&self) -> (String, f64) {
        let kwh = kwh(&self.fuel, &self.unit);
        match self.in_ {
            Unit::Megajoules => {
                (format!("megajoules in one {} of {}", self.unit, name(&self.fuel)), kwh * JOULES_PER_KWH / 1e6)
            }
            Unit::PerTherm => {
                (format!("{} of {} in a therm", self.unit, name(&self.fuel)), million_btu_kwh() / 10.0 / kwh)
            }
        }
    }
}

/// Energy of a published comparison: its own heat content per unit, or a row of the catalogue.
#[derive(Deserialize)]
enum Energy {
    Btu(f64),
    Catalogue(String, String),
    Electricity,
}

#[derive(Deserialize)]
enum Means {
    Efficiency(f64),
    /// Outdoors and warm side, °C.
    HeatPump(f64, f64),
}

#[derive(Deserialize)]
struct Bought {
    what: String,
    energy: Energy,
    price: f64,
    heater: Means,
}

impl Bought {
    /// Price of a kilowatt-hour of heat, the way a season is priced.
    fn per_kwh(&self) -> f64 {
        let mut study = Study::default();
        study.prices.electricity.price_per_kwh = self.price;
        let (key, unit) = match &self.energy {
            Energy::Electricity => (ELECTRICITY.to_owned(), "kWh".to_owned()),
            Energy::Catalogue(key, unit) => (key.clone(), unit.clone()),
            Energy::Btu(btu) => {
                study.own.fuels.push(fuel(&self.what, kwh_from_joules(btu * JOULES_PER_BTU)));
                (self.what.clone(), "unit".to_owned())
            }
        };
        study.prices.fuels.push(FuelPrice {
            fuel: key.clone(),
            unit,
            price_per_unit: self.price,
            ..FuelPrice::default()
        });
        let (heater, outdoor_c) = self.heater(key);
        let catalogue: Catalogue = bundled_catalogue().with_own(&study.own);
        let purchase = Purchase::of(&heater, &study, &catalogue).expect("a known fuel");
        purchase.price_per_kwh(&study, &noon(outdoor_c)).expect("a price") / heat_per_energy(&heater, 1.0, outdoor_c)
    }

    fn heater(&self, fuel: String) -> (Heater, f64) {
        match self.heater {
            Means::Efficiency(efficiency) => (Heater { fuel, efficiency, ..Heater::default() }, 0.0),
            Means::HeatPump(outdoor_c, sink_c) => {
                (Heater { fuel, heat_pump: true, sink_c, ..Heater::default() }, outdoor_c)
            }
        }
    }
}

fn fuel(key: &str, kwh_gross_per_unit: f64) -> Fuel {
    Fuel {
        key: key.to_owned(),
        name: key.to_owned(),
        units: vec![FuelUnit { unit: "unit".to_owned(), kwh_gross_per_unit }],
        net_per_gross: 1.0,
        co2_kg_per_kwh: None,
        piped: false,
        source: "the published comparison".to_owned(),
    }
}

/// An hour whose clock does not matter.
fn noon(outdoor_c: f64) -> ClimateHour {
    ClimateHour {
        month: 1,
        day: 1,
        hour: 12,
        outdoor_c,
        dew_point_c: outdoor_c,
        wind_m_per_s: 0.0,
        sky_c: outdoor_c,
        global_w_per_m2: 0.0,
        diffuse_w_per_m2: 0.0,
        beam_normal_w_per_m2: 0.0,
        anisotropy: 0.0,
        sun: [0.0, 0.0, 1.0],
        weekday: 0,
    }
}

fn million_btu_kwh() -> f64 {
    kwh_from_joules(1e6 * JOULES_PER_BTU)
}

fn row(key: &str) -> &'static Fuel {
    bundled_catalogue().fuel(key).expect("a fuel of the catalogue")
}

fn name(key: &str) -> String {
    row(key).name.to_lowercase()
}

fn kwh(key: &str, unit: &str) -> f64 {
    row(key).units.iter().find(|u| u.unit == unit).expect("a unit of the catalogue").kwh_gross_per_unit
}

fn carbon_dioxide(key: &str) -> f64 {
    row(key).co2_kg_per_kwh.expect("a factor")
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("fuels");
    [
        file.heat_content.figures(|(key, unit)| (format!("heat in one {unit} of {}", name(key)), kwh(key, unit))),
        file.net_content.figures(|unit| {
            (format!("net heat in one {unit} of propane"), kwh("propane", unit) * row("propane").net_per_gross)
        }),
        file.cylinder_btu
            .figures(|unit| (format!("heat in a {unit}"), kwh("propane", unit) * JOULES_PER_KWH / JOULES_PER_BTU)),
        file.conversion.figures(Conversion::figure),
        file.other_units.figures(Converted::figure),
        file.net_per_gross.figures(|key| (format!("net per gross heat of {}", name(key)), row(key).net_per_gross)),
        file.carbon_dioxide
            .figures(|key| (format!("carbon dioxide of {}", name(key)), carbon_dioxide(key) * million_btu_kwh())),
        file.carbon_dioxide_per_unit.figures(|(key, unit)| {
            (format!("carbon dioxide of one {unit} of {}", name(key)), carbon_dioxide(key) * kwh(key, unit))
        }),
        file.cost.figures(|b| (format!("a million Btu of heat, {}", b.what), b.per_kwh() * million_btu_kwh())),
        file.cost_per_kwh.figures(|b| (format!("a kilowatt-hour of heat, {}", b.what), b.per_kwh())),
    ]
    .concat()
}

#[test]
fn fuels_agree() {
    hold(&figures());
}
