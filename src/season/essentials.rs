//! What a season comes to in heat, money, fuel and the crop's cold: all that follows from its hours alone.

use super::money::Purchase;
use super::plan::actual_zone;
use super::result::HourlySeries;
use super::run::Passed;
use super::summary::{Context, Held, SETPOINT_TOLERANCE_K, crop_air, kwh};
use super::thermostats::zone_nodes;
use crate::units::HOURS_PER_DAY;

/// The essentials of a season.
pub(super) struct Essentials {
    /// Heat given by all heaters, kWh.
    pub heat_kwh: f64,
    /// Energy bought for heat, kWh gross, fans included.
    pub energy_kwh: f64,
    /// Money: fuel, fans, standing charge. None when a price is missing.
    pub cost: Option<f64>,
    /// What the heaters buy.
    pub bought: Bought,
    /// The crop's air.
    pub crop: CropHours,
    /// The setpoint.
    pub held: Held,
}

impl Essentials {
    pub fn of(context: &Context, passed: &Passed) -> Self {
        let bought = Bought::of(context, passed);
        Self {
            heat_kwh: kwh(&passed.series.heater_w) + kwh(&passed.series.standby_w),
            energy_kwh: passed.money.energy_kwh.iter().sum::<f64>() + passed.money.fan_kwh,
            cost: passed.money.energy_cost().map(|cost| cost + bought.standing_charges),
            crop: CropHours::of(context, &passed.series),
            held: Held::of(context, &passed.series),
            bought,
        }
    }
}

/// How cold the crop's air became.
pub(super) struct CropHours {
    /// Lowest hourly mean, °C.
    pub min_c: f64,
    /// Hour of the season; none while held at setpoint.
    pub min_at: Option<usize>,
    /// Hours below the crop limit.
    pub hours_short: usize,
    /// Degree-hours below the crop limit, K·h.
    pub degree_hours: f64,
}

impl CropHours {
    fn of(context: &Context, s: &HourlySeries) -> Self {
        let scenario = context.scenario;
        let air = crop_air(context, s);
        let (coldest, min_c) = air.iter().copied().enumerate().min_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or((0, 0.0));
        let senses_crop_air = context.heating.first().is_some_and(|(_, node)| {
            node == zone_nodes(&context.plan.layout, actual_zone(scenario.crop.zone, scenario)).air
        });
        let setpoint_c = s.setpoint_c.get(coldest).copied().flatten();
        let held = senses_crop_air && setpoint_c.is_some_and(|set| min_c >= set - SETPOINT_TOLERANCE_K);
        let depths = air.iter().map(|t| scenario.crop.limit_c - t).filter(|depth| *depth > 0.0);
        let (hours_short, degree_hours) = depths.fold((0, 0.0), |(n, sum), depth| (n + 1, sum + depth));
        Self { min_c, min_at: (!held).then_some(coldest), hours_short, degree_hours }
    }
}

/// What first and standby heater buy.
pub(super) struct Bought {
    /// In the unit that it is bought in.
    pub quantity: [f64; 2],
    /// That unit; empty without the heater.
    pub unit: [String; 2],
    /// Name of the first heater's fuel; empty without it.
    pub name: String,
    /// Money.
    pub standing_charges: f64,
    /// None where a factor is missing.
    pub co2_kg: Option<f64>,
}

impl Bought {
    fn of(context: &Context, passed: &Passed) -> Self {
        let money = &passed.money;
        let of = |i: usize| money.purchases[i].as_ref();
        let quantity = [0, 1].map(|i| of(i).map_or(0.0, |p| money.energy_kwh[i] / p.kwh_per_unit));
        let unit = [0, 1].map(|i| of(i).map_or(String::new(), |p| p.unit.clone()));
        let electric = money.fan_kwh > 0.0 || (0..2).any(|i| of(i).is_some_and(Purchase::is_electric));
        let days = passed.series.record.len() as f64 / HOURS_PER_DAY as f64;
        let per_day = context.study.prices.electricity.standing_charge_per_day;
        Self {
            quantity,
            unit,
            name: of(0).map_or(String::new(), |p| p.fuel_name.clone()),
            standing_charges: if electric { per_day * days } else { 0.0 },
            co2_kg: co2_kg(passed),
        }
    }
}

/// CO₂ of all fuels; none where a factor is missing that is needed. Fans count as electricity, which has no factor.
fn co2_kg(passed: &Passed) -> Option<f64> {
    let mut sum = 0.0;
    for (purchase, energy_kwh) in passed.money.purchases.iter().zip(passed.money.energy_kwh) {
        if energy_kwh > 0.0 {
            sum += energy_kwh * purchase.as_ref()?.co2_kg_per_kwh?;
        }
    }
    Some(sum)
}
