//! The scenario's heaters as thermostats of the network, hour by hour.

use super::error::RunError;
use super::layout::Layout;
use super::plan::actual_zone;
use crate::model::{HeatTarget, Heater, Scenario, Zone};
use crate::physics::step::{MAX_THERMOSTATS, Thermostat};

/// Output of a heater without limit, W: far above what any house of the allowed sizes can use.
pub const UNLIMITED_W: f64 = 1e8;

/// The first heater and the standby heater, each on its node.
#[derive(Debug, Clone, Copy)]
pub struct Heating<'a> {
    /// First and standby heater; none where it is not installed.
    pub heaters: [Option<(&'a Heater, usize)>; MAX_THERMOSTATS],
}

/// The thermostats of one hour and the heater that each belongs to.
#[derive(Debug, Clone, Copy)]
pub struct HourThermostats {
    list: [Thermostat; MAX_THERMOSTATS],
    owner: [usize; MAX_THERMOSTATS],
    used: usize,
}

impl HourThermostats {
    /// No heater runs.
    #[must_use]
    pub fn none() -> Self {
        let idle = Thermostat { node: 0, setpoint_c: 0.0, min_w: 0.0, max_w: 0.0 };
        Self { list: [idle; MAX_THERMOSTATS], owner: [0; MAX_THERMOSTATS], used: 0 }
    }

    /// The thermostats that are on.
    #[must_use]
    pub fn active(&self) -> &[Thermostat] {
        &self.list[..self.used]
    }

    /// Powers of the thermostats, sorted by heater: first, standby.
    #[must_use]
    pub fn by_heater(&self, powers: &[f64; MAX_THERMOSTATS]) -> [f64; MAX_THERMOSTATS] {
        let mut sorted = [0.0; MAX_THERMOSTATS];
        for (owner, power) in self.owner[..self.used].iter().zip(powers) {
            sorted[*owner] = *power;
        }
        sorted
    }
}

impl<'a> Heating<'a> {
    /// Puts the scenario's heaters on their nodes.
    ///
    /// # Errors
    /// [`RunError::NoWater`] for an immersion heater where no water stands.
    pub fn of(scenario: &'a Scenario, layout: &Layout) -> Result<Self, RunError> {
        let place = |heater: &'a Heater| -> Result<Option<(&'a Heater, usize)>, RunError> {
            if heater.present { Ok(Some((heater, heated_node(heater, scenario, layout)?))) } else { Ok(None) }
        };
        Ok(Self { heaters: [place(&scenario.heater)?, place(&scenario.standby)?] })
    }

    /// The first heater with its node.
    #[must_use]
    pub fn first(&self) -> Option<(&'a Heater, usize)> {
        self.heaters[0]
    }

    /// Thermostats of the hour that ends at `hour`; without mains only heaters that need none are on.
    #[must_use]
    pub fn at(&self, hour: u32, mains: bool, unlimited: bool) -> HourThermostats {
        let mut hour_thermostats = HourThermostats::none();
        for (i, heater) in self.heaters.iter().enumerate() {
            if let Some((heater, node)) = heater
                && (mains || !heater.needs_mains)
                && let Some(setpoint_c) = heater.setpoint_c(f64::from(hour) - 0.5)
            {
                let max_w = if unlimited { UNLIMITED_W } else { heater.rated_w };
                let used = hour_thermostats.used;
                hour_thermostats.list[used] = Thermostat { node: *node, setpoint_c, min_w: 0.0, max_w };
                hour_thermostats.owner[used] = i;
                hour_thermostats.used += 1;
            }
        }
        hour_thermostats
    }
}

fn heated_node(heater: &Heater, scenario: &Scenario, layout: &Layout) -> Result<usize, RunError> {
    let nodes = zone_nodes(layout, actual_zone(heater.zone, scenario));
    match heater.target {
        HeatTarget::Air => Ok(nodes.air),
        HeatTarget::Bench => Ok(nodes.floor),
        HeatTarget::Water => nodes.water.ok_or(RunError::NoWater),
    }
}

/// Nodes of a zone; the house's while there is no tent.
#[must_use]
pub fn zone_nodes(layout: &Layout, zone: Zone) -> super::layout::ZoneNodes {
    match zone {
        Zone::House => layout.house,
        Zone::Tent => layout.tent.unwrap_or(layout.house),
    }
}
