//! Checks of the prices.

use super::check::Check;
use super::kind::ProblemKind;
use super::nearest::nearest_name;
use crate::model::catalogue::Catalogue;
use crate::model::heater::Heater;
use crate::model::prices::{ElectricityTariff, FuelPrice, Prices, TariffBand};
use crate::model::study::Scenario;

/// Catalogue key of electricity, which has a tariff and not a price per unit.
const ELECTRICITY: &str = "electricity";

pub(super) fn prices(prices: &Prices, catalogue: &Catalogue, check: &mut Check) {
    let mut check = check.within("prices");
    check.numbers(prices, Prices::NUMBERS);
    let mut electricity = check.within("electricity");
    electricity.numbers(&prices.electricity, ElectricityTariff::NUMBERS);
    for (index, band) in prices.electricity.bands.iter().enumerate() {
        electricity.within(&format!("bands[{index}]")).numbers(band, TariffBand::NUMBERS);
    }
    for (index, price) in prices.fuels.iter().enumerate() {
        let mut check = check.within(&format!("fuels[{index}]"));
        check.numbers(price, FuelPrice::NUMBERS);
        fuel_and_unit(price, catalogue, &mut check);
        if prices.fuels.iter().take(index).any(|other| other.fuel == price.fuel) {
            check.add("fuel", FuelPrice::fuel.label, ProblemKind::Twice { name: price.fuel.clone() });
        }
    }
}

fn fuel_and_unit(price: &FuelPrice, catalogue: &Catalogue, check: &mut Check) {
    if price.fuel == ELECTRICITY {
        check.add("fuel", FuelPrice::fuel.label, ProblemKind::ElectricityAmongFuels);
    } else if let Some(fuel) = catalogue.fuel(&price.fuel) {
        if fuel.units.iter().all(|u| u.unit != price.unit) {
            let known: Vec<String> = fuel.units.iter().map(|u| u.unit.clone()).collect();
            let nearest = nearest_name(&price.unit, known.iter().map(String::as_str)).map(str::to_owned);
            let kind = ProblemKind::UnknownUnit { fuel: fuel.name.clone(), unit: price.unit.clone(), nearest, known };
            check.add("unit", FuelPrice::unit.label, kind);
        }
    } else {
        let known = catalogue.fuels.iter().map(|f| f.key.as_str());
        super::rows::unknown("fuel", &price.fuel, known, "fuel", FuelPrice::fuel.label, check);
    }
}

/// A fuel without a price leaves the cost unknown.
pub(super) fn fuels_have_prices(scenario: &Scenario, prices: &Prices, check: &mut Check) {
    for (field, heater) in [("heater", &scenario.heater), ("standby", &scenario.standby)] {
        let priced = heater.fuel == ELECTRICITY || prices.fuels.iter().any(|p| p.fuel == heater.fuel);
        if heater.present && !priced {
            let kind = ProblemKind::NoPrice { fuel: heater.fuel.clone() };
            check.within(field).add("fuel", Heater::fuel.label, kind);
        }
    }
}
