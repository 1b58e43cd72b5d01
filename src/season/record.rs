//! Writes each hour into the series and adds up energy and money.

use super::baseline::Baseline;
use super::drive::HourDrive;
use super::error::RunError;
use super::hour::HourMeans;
use super::layout::Layout;
use super::money::{Purchase, electricity_price, heat_per_energy};
use super::plan::Plan;
use super::result::HourlySeries;
use crate::model::{Catalogue, Heater, Scenario, Study};
use crate::physics::air::flow_m3_per_h;
use crate::physics::network::NodeValues;
use crate::physics::step::MAX_THERMOSTATS;
use crate::weather::ClimateHour;

/// Who takes energy.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Taker {
    /// The first heater.
    Heater,
    /// The standby heater.
    Standby,
    /// Fans and pumps.
    Fans,
}

impl Taker {
    /// Heaters by their place in a scenario.
    const HEATERS: [Self; MAX_THERMOSTATS] = [Self::Heater, Self::Standby];
}

/// Energy that was bought at one price.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Portion {
    /// Who took it.
    pub taker: Taker,
    /// Price of a gross kWh; none where it is missing.
    pub price_per_kwh: Option<f64>,
    /// Gross energy, kWh.
    pub energy_kwh: f64,
}

/// Energy and money of a season.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Money {
    /// Gross energy bought by first and standby heater, kWh.
    pub energy_kwh: [f64; MAX_THERMOSTATS],
    /// Electricity of fans, kWh.
    pub fan_kwh: f64,
    /// Cost of the heaters' energy; none when a price is missing that is needed.
    pub heat_cost: Option<f64>,
    /// Cost of fans.
    pub fan_cost: f64,
    /// Gross energy of the baseline, kWh.
    pub baseline_energy_kwh: f64,
    /// Cost of the baseline; none without a heater or its price.
    pub baseline_cost: Option<f64>,
    /// How first and standby heater buy; none where not installed.
    pub purchases: [Option<Purchase>; MAX_THERMOSTATS],
    /// The same energy by taker and price, in the order in which the season met them.
    pub portions: Vec<Portion>,
}

/// Writes the season's series.
pub struct SeriesWriter<'a> {
    study: &'a Study,
    heaters: [Option<(&'a Heater, Purchase)>; MAX_THERMOSTATS],
    vent_fan_w: f64,
    layout: Layout,
    baseline: Baseline,
    series: HourlySeries,
    money: Money,
}

impl<'a> SeriesWriter<'a> {
    /// A writer for `hours` hours.
    ///
    /// # Errors
    /// An unknown fuel.
    pub fn new(
        study: &'a Study,
        scenario: &'a Scenario,
        catalogue: &Catalogue,
        plan: &Plan,
        baseline: Baseline,
        hours: usize,
    ) -> Result<Self, RunError> {
        let buying = |heater: &'a Heater| -> Result<Option<(&'a Heater, Purchase)>, RunError> {
            if heater.present { Ok(Some((heater, Purchase::of(heater, study, catalogue)?))) } else { Ok(None) }
        };
        let heaters = [buying(&scenario.heater)?, buying(&scenario.standby)?];
        let baseline_cost = heaters[0].as_ref().map(|_| 0.0);
        Ok(Self {
            study,
            heaters,
            vent_fan_w: if scenario.vents.fan_present { scenario.vents.fan_w } else { 0.0 },
            layout: plan.layout,
            baseline,
            series: with_room(hours),
            money: Money { heat_cost: Some(0.0), baseline_cost, ..Money::default() },
        })
    }

    /// Adds one hour.
    pub fn push(
        &mut self,
        record: usize,
        weather: &ClimateHour,
        drive: &HourDrive,
        means: &HourMeans,
        ice: &NodeValues,
    ) {
        let (layout, s) = (self.layout, &mut self.series);
        s.record.push(record);
        s.outdoor_c.push(drive.outdoor_c);
        s.house_air_c.push(means.mean_c[layout.house.air]);
        s.house_floor_c.push(means.mean_c[layout.house.floor]);
        if let Some(water) = layout.house.water {
            s.house_water_c.push(means.mean_c[water]);
            s.house_ice_share.push(ice[water]);
            s.house_water_heat_w.push(means.house_water_heat_w);
        }
        if let Some(tent) = layout.tent {
            s.tent_air_c.push(means.mean_c[tent.air]);
            s.tent_floor_c.push(means.mean_c[tent.floor]);
            s.tent_loss_w.push(means.tent_loss_w);
            s.tent_exchange_m3_per_h.push(flow_m3_per_h(means.tent_exchange_w_per_k));
            if let Some(water) = tent.water {
                s.tent_water_c.push(means.mean_c[water]);
                s.tent_ice_share.push(ice[water]);
                s.tent_water_heat_w.push(means.tent_water_heat_w);
            }
        }
        let setpoint = |(heater, _): &(&Heater, Purchase)| heater.setpoint_c(f64::from(weather.hour) - 0.5);
        s.setpoint_c.push(self.heaters[0].as_ref().and_then(setpoint));
        s.heater_w.push(means.heater_w[0]);
        s.standby_w.push(means.heater_w[1]);
        s.sun_w.push(drive.house_sun.kept_w() + drive.tent_sun.kept_w());
        s.vapour_w.push(drive.house_sun.vapour_w + drive.tent_sun.vapour_w);
        s.skin_loss_w.push(means.skin_loss_w);
        s.leakage_loss_w.push(means.leakage_loss_w);
        s.vent_loss_w.push(means.vent_loss_w);
        s.ground_loss_w.push(means.ground_loss_w);
        s.party_wall_loss_w.push(means.party_wall_loss_w);
        s.store_change_w.push(means.store_change_w);
        s.air_exchange_m3_per_h.push(flow_m3_per_h(means.air_exchange_w_per_k));
        s.vent_opening.push(means.vent_opening);
        s.fan_share.push(means.fan_share);
        self.push_money(weather, means);
    }

    fn push_money(&mut self, weather: &ClimateHour, means: &HourMeans) {
        let tariff = electricity_price(&self.study.prices.electricity, weather);
        let mut fan_kwh = self.vent_fan_w * means.fan_share / 1000.0;
        let mut cost = Some(0.0);
        for (i, buying) in self.heaters.iter().enumerate() {
            let Some((heater, purchase)) = buying else { continue };
            let energy_kwh =
                means.heater_w[i] / 1000.0 / heat_per_energy(heater, purchase.net_per_gross, weather.outdoor_c);
            if heater.rated_w > 0.0 {
                fan_kwh += heater.fan_w * (means.heater_w[i] / heater.rated_w).min(1.0) / 1000.0;
            }
            self.money.energy_kwh[i] += energy_kwh;
            if energy_kwh > 0.0 {
                let price_per_kwh = purchase.price_per_kwh(self.study, weather);
                self.money.take(Taker::HEATERS[i], price_per_kwh, energy_kwh);
                cost = add(cost, price_per_kwh.map(|price| price * energy_kwh));
            }
        }
        if fan_kwh > 0.0 {
            self.money.take(Taker::Fans, Some(tariff), fan_kwh);
        }
        self.money.fan_kwh += fan_kwh;
        self.money.fan_cost += fan_kwh * tariff;
        self.money.heat_cost = add(self.money.heat_cost, cost);
        self.series.cost.push(add(cost, Some(fan_kwh * tariff)).unwrap_or(0.0));
        self.push_baseline(weather);
    }

    fn push_baseline(&mut self, weather: &ClimateHour) {
        let heat_w = self.baseline.heat_w(weather.outdoor_c);
        let mut cost = None;
        if let Some((heater, purchase)) = &self.heaters[0] {
            let energy_kwh = heat_w / 1000.0 / heat_per_energy(heater, purchase.net_per_gross, weather.outdoor_c);
            self.money.baseline_energy_kwh += energy_kwh;
            cost = purchase.price_per_kwh(self.study, weather).map(|price| price * energy_kwh);
        }
        self.money.baseline_cost = add(self.money.baseline_cost, cost);
        self.series.baseline_w.push(heat_w);
        self.series.baseline_cost.push(cost.unwrap_or(0.0));
    }

    /// The series and what they cost.
    #[must_use]
    pub fn finish(self) -> (HourlySeries, Money) {
        let mut money = self.money;
        money.purchases = self.heaters.map(|buying| buying.map(|(_, purchase)| purchase));
        (self.series, money)
    }
}

impl Money {
    /// Books energy under its taker and price.
    fn take(&mut self, taker: Taker, price_per_kwh: Option<f64>, energy_kwh: f64) {
        match self.portions.iter_mut().find(|p| p.taker == taker && p.price_per_kwh == price_per_kwh) {
            Some(portion) => portion.energy_kwh += energy_kwh,
            None => self.portions.push(Portion { taker, price_per_kwh, energy_kwh }),
        }
    }

    /// Cost of all energy without standing charges; none when a price is missing that is needed.
    #[must_use]
    pub fn energy_cost(&self) -> Option<f64> {
        add(self.heat_cost, Some(self.fan_cost))
    }
}

/// Sum of two amounts, unknown if one is.
fn add(a: Option<f64>, b: Option<f64>) -> Option<f64> {
    Some(a? + b?)
}

/// Empty series with room for the columns that every scenario has.
fn with_room(hours: usize) -> HourlySeries {
    let room = || Vec::with_capacity(hours);
    HourlySeries {
        record: Vec::with_capacity(hours),
        setpoint_c: Vec::with_capacity(hours),
        outdoor_c: room(),
        house_air_c: room(),
        house_floor_c: room(),
        heater_w: room(),
        standby_w: room(),
        sun_w: room(),
        vapour_w: room(),
        skin_loss_w: room(),
        leakage_loss_w: room(),
        vent_loss_w: room(),
        ground_loss_w: room(),
        party_wall_loss_w: room(),
        store_change_w: room(),
        air_exchange_m3_per_h: room(),
        vent_opening: room(),
        fan_share: room(),
        cost: room(),
        baseline_w: room(),
        baseline_cost: room(),
        ..HourlySeries::default()
    }
}
