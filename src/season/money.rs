//! What energy costs in an hour, and what it leaves behind.

use super::error::RunError;
use crate::model::{BandDays, Catalogue, ElectricityTariff, Fuel, Heater, Study, TariffBand};
use crate::units::within_clock_span;
use crate::weather::ClimateHour;

/// Key of electricity in the fuel catalogue.
pub const ELECTRICITY: &str = "electricity";

/// COP of an air-source heat pump at this outdoor temperature: `6.81 − 0.121 ΔT + 0.000630 ΔT²`, ΔT from outdoors to
/// the warm side, held within the regression's 15 to 60 K.
///
/// Optimistic in hard cold: field means are 1.5 to 2 below −10 °C (Oxford and the Regulatory Assistance Project, 2023).
///
/// # References
/// Staffell et al. 2012, A review of domestic heat pumps, Energy Environ. Sci. 5:9291.
#[must_use]
pub fn heat_pump_cop(outdoor_c: f64, sink_c: f64) -> f64 {
    let lift_k = (sink_c - outdoor_c).clamp(15.0, 60.0);
    6.81 - 0.121 * lift_k + 0.000_630 * lift_k * lift_k
}

/// Heat to the house per gross energy bought at this outdoor temperature; `net_per_gross` is that of the fuel.
#[must_use]
pub fn heat_per_energy(heater: &Heater, net_per_gross: f64, outdoor_c: f64) -> f64 {
    if heater.heat_pump { heat_pump_cop(outdoor_c, heater.sink_c) } else { heater.gross_efficiency(net_per_gross) }
}

/// Price of electricity in the hour that ends at the stamp, local standard time.
#[must_use]
pub fn electricity_price(tariff: &ElectricityTariff, hour: &ClimateHour) -> f64 {
    let middle = f64::from(hour.hour) - 0.5;
    let holds = |band: &&TariffBand| {
        let on_day = match band.days {
            BandDays::All => true,
            BandDays::Weekdays => hour.weekday < 5,
            BandDays::Weekend => hour.weekday >= 5,
        };
        on_day && within_clock_span(middle, band.from_hour, band.to_hour)
    };
    tariff.bands.iter().find(holds).map_or(tariff.price_per_kwh, |band| band.price_per_kwh)
}

/// How a heater's energy is bought.
#[derive(Debug, Clone, PartialEq)]
pub struct Purchase {
    /// Name of the fuel.
    pub fuel_name: String,
    /// Unit that it is bought in.
    pub unit: String,
    /// Gross heat in one unit, kWh.
    pub kwh_per_unit: f64,
    /// Net per gross heat content.
    pub net_per_gross: f64,
    /// kg CO₂ per kWh gross; none where it is not known.
    pub co2_kg_per_kwh: Option<f64>,
    /// Whether it comes by wire or pipe, so that nobody stores it.
    pub piped: bool,
    price: Price,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Price {
    Tariff,
    PerKwh(f64),
    Missing,
}

impl Purchase {
    /// Looks up fuel, unit and price of a heater.
    ///
    /// # Errors
    /// [`RunError::UnknownFuel`] if the catalogue lacks the fuel.
    pub fn of(heater: &Heater, study: &Study, catalogue: &Catalogue) -> Result<Self, RunError> {
        let unknown = || RunError::UnknownFuel(heater.fuel.clone());
        let fuel: &Fuel = catalogue.fuel(&heater.fuel).ok_or_else(unknown)?;
        let quoted = study.prices.fuels.iter().find(|p| p.fuel == fuel.key);
        let unit = quoted
            .and_then(|p| fuel.units.iter().find(|u| u.unit == p.unit))
            .or_else(|| fuel.units.first())
            .ok_or_else(unknown)?;
        let price = if fuel.key == ELECTRICITY {
            Price::Tariff
        } else {
            match quoted {
                Some(p) if p.unit == unit.unit => Price::PerKwh(p.price_per_unit / unit.kwh_gross_per_unit),
                _ => Price::Missing,
            }
        };
        Ok(Self {
            fuel_name: fuel.name.clone(),
            unit: unit.unit.clone(),
            kwh_per_unit: unit.kwh_gross_per_unit,
            net_per_gross: fuel.net_per_gross,
            co2_kg_per_kwh: fuel.co2_kg_per_kwh,
            piped: fuel.piped,
            price,
        })
    }

    /// Price of a gross kWh in this hour; none where it is missing.
    #[must_use]
    pub fn price_per_kwh(&self, study: &Study, hour: &ClimateHour) -> Option<f64> {
        match self.price {
            Price::Tariff => Some(electricity_price(&study.prices.electricity, hour)),
            Price::PerKwh(price) => Some(price),
            Price::Missing => None,
        }
    }

    /// Whether it runs on the meter.
    #[must_use]
    pub fn is_electric(&self) -> bool {
        self.price == Price::Tariff
    }
}
