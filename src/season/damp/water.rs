//! Water that heaters without a flue leave in the air of their zone.

use crate::model::{Catalogue, Heater, Scenario, Zone};
use crate::physics::combustion::water_kg_per_kwh_gross;
use crate::physics::step::MAX_THERMOSTATS;
use crate::season::plan::actual_zone;
use crate::units::JOULES_PER_KWH;

/// Where the water of a heater's flame goes, and how much it is.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct BurnerWater {
    /// Whether into the tent; otherwise into the house.
    pub in_tent: bool,
    /// kg per joule of heat that the heater gives.
    pub kg_per_j: f64,
}

/// First and standby heater.
pub(super) fn burner_water(scenario: &Scenario, catalogue: &Catalogue) -> [BurnerWater; MAX_THERMOSTATS] {
    [&scenario.heater, &scenario.standby].map(|heater| BurnerWater {
        in_tent: actual_zone(heater.zone, scenario) == Zone::Tent,
        kg_per_j: water_kg_per_kwh(heater, catalogue) / JOULES_PER_KWH,
    })
}

/// Water left inside per kWh of heat given, kg: none behind a flue, and none of a heat pump, which burns nothing.
fn water_kg_per_kwh(heater: &Heater, catalogue: &Catalogue) -> f64 {
    if !heater.present || heater.vented || heater.heat_pump {
        return 0.0;
    }
    let per_gross = |net_per_gross| water_kg_per_kwh_gross(&heater.fuel, net_per_gross);
    catalogue.fuel(&heater.fuel).map_or(0.0, |fuel| per_gross(fuel.net_per_gross) / heater.efficiency)
}
