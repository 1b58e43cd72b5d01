//! Worked examples of what heat takes in fuel and money.

use serde::Deserialize;
use warmfold::model::{Catalogue, Fuel, FuelPrice, FuelUnit, Heater, Prices, Study, bundled_catalogue};
use warmfold::season::baseline::Baseline;
use warmfold::season::money::{Purchase, heat_per_energy};
use warmfold::units::{HOURS_PER_DAY, JOULES_PER_BTU, Quantity, UnitSystem, kwh_from_joules};
use warmfold::weather::{Climate, bundled};

use super::figure::{Figure, hold};
use super::sheet::told_figures;

#[derive(Deserialize)]
enum Setting {
    /// Units of a catalogue fuel for this heat.
    Units { fuel: String, unit: String, heat_btu: f64, efficiency: f64 },
    /// Units of a fuel with the gross heat of an amount of another, each a fuel, a unit and an amount.
    SameHeat { of: (String, String, f64), fuel: String, unit: String },
    /// Money for this heat.
    Cost { fuel: String, unit: String, price: f64, heat_btu: f64, efficiency: f64 },
    /// Heat of a season of degree-days, kWh.
    Season { btu_per_h_f: f64, degree_days_f: f64 },
    /// Oil for it, US gal.
    SeasonOil { btu_per_h_f: f64, degree_days_f: f64, btu_per_gal: f64, efficiency: f64 },
}

/// A study that buys this fuel by this unit.
fn study_with_price(fuel: &str, unit: &str, price_per_unit: f64) -> Study {
    let price = FuelPrice { fuel: fuel.to_owned(), unit: unit.to_owned(), price_per_unit, ..FuelPrice::default() };
    Study { prices: Prices { fuels: vec![price], ..Prices::default() }, ..Study::default() }
}

fn heater(fuel: &str, efficiency: f64) -> Heater {
    Heater { fuel: fuel.to_owned(), efficiency, ..Heater::default() }
}

/// Gross energy that is bought for this heat, kWh.
fn bought_kwh(heat_btu: f64, efficiency: f64) -> f64 {
    kwh_from_joules(heat_btu * JOULES_PER_BTU) / heat_per_energy(&heater("", efficiency), 1.0, 0.0)
}

fn purchase(fuel: &str, unit: &str) -> Purchase {
    let study = study_with_price(fuel, unit, 0.0);
    Purchase::of(&heater(fuel, 1.0), &study, bundled_catalogue()).expect("a known fuel")
}

/// Heat of a season at a constant difference by the program's baseline, kWh.
fn season_kwh(btu_per_h_f: f64, degree_days_f: f64) -> f64 {
    let (setpoint_c, colder_k) = (18.0, 10.0);
    let w_per_k = Quantity::HeatLossCoefficient.unit(UnitSystem::Imperial).value(btu_per_h_f);
    let days = degree_days_f / 1.8 / colder_k;
    Baseline { setpoint_c, ua_w_per_k: w_per_k }.heat_w(setpoint_c - colder_k) * days * HOURS_PER_DAY as f64 / 1000.0
}

/// Oil of this gross heat, bought by the US gallon.
fn oil(btu_per_gal: f64) -> Catalogue {
    let kwh_gross_per_unit = kwh_from_joules(btu_per_gal * JOULES_PER_BTU);
    let oil = Fuel {
        key: "oil".to_owned(),
        name: "Heating oil".to_owned(),
        units: vec![FuelUnit { unit: "US gal".to_owned(), kwh_gross_per_unit }],
        net_per_gross: 1.0,
        co2_kg_per_kwh: None,
        piped: false,
        source: String::new(),
    };
    Catalogue { fuels: vec![oil], ..Catalogue::default() }
}

fn compute(setting: &Setting) -> f64 {
    match setting {
        Setting::Units { fuel, unit, heat_btu, efficiency } => {
            bought_kwh(*heat_btu, *efficiency) / purchase(fuel, unit).kwh_per_unit
        }
        Setting::SameHeat { of: (other, other_unit, amount), fuel, unit } => {
            amount * purchase(other, other_unit).kwh_per_unit / purchase(fuel, unit).kwh_per_unit
        }
        Setting::Cost { fuel, unit, price, heat_btu, efficiency } => {
            let study = study_with_price(fuel, unit, *price);
            let bought = Purchase::of(&heater(fuel, *efficiency), &study, bundled_catalogue()).expect("a known fuel");
            let climate = Climate::from_year(&bundled::load("chicago-il").expect("a bundled station"));
            let price_per_kwh = bought.price_per_kwh(&study, &climate.hours[0]).expect("a price");
            bought_kwh(*heat_btu, *efficiency) * price_per_kwh
        }
        Setting::Season { btu_per_h_f, degree_days_f } => season_kwh(*btu_per_h_f, *degree_days_f),
        Setting::SeasonOil { btu_per_h_f, degree_days_f, btu_per_gal, efficiency } => {
            let burner = heater("oil", *efficiency);
            let bought = Purchase::of(&burner, &Study::default(), &oil(*btu_per_gal)).expect("a known fuel");
            season_kwh(*btu_per_h_f, *degree_days_f) / heat_per_energy(&burner, 1.0, 0.0) / bought.kwh_per_unit
        }
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("fuel_examples", compute)
}

#[test]
fn fuel_examples_agree() {
    hold(&figures());
}
