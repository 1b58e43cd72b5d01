//! What the checks look at: a scenario with its season, and the questions that several checks ask.

use crate::format;
use crate::geometry::TentBox;
use crate::model::{Catalogue, Fuel, HeatTarget, Heater, Scenario, Study, Zone};
use crate::season::ScenarioRun;
use crate::season::money::{ELECTRICITY, heat_per_energy};
use crate::season::plan::actual_zone;
use crate::units::{Quantity, UnitSystem};

/// A scenario and its season.
#[derive(Clone, Copy)]
pub struct Case<'a> {
    /// For mains and prices.
    pub study: &'a Study,
    /// The scenario.
    pub scenario: &'a Scenario,
    /// The program's rows with the study's own.
    pub catalogue: &'a Catalogue,
    /// The scenario's season.
    pub run: &'a ScenarioRun,
    /// Units of the figures.
    pub units: UnitSystem,
}

impl<'a> Case<'a> {
    /// Both heaters, as far as they are there.
    pub(super) fn heaters(&self) -> impl Iterator<Item = &'a Heater> + use<'a> {
        [&self.scenario.heater, &self.scenario.standby].into_iter().filter(|heater| heater.present)
    }

    /// Heaters with a flame.
    pub(super) fn burners(&self) -> impl Iterator<Item = &'a Heater> + use<'a> {
        self.heaters().filter(|heater| !is_electric(heater))
    }

    /// Flames whose burnt gas stays in the house.
    pub(super) fn unvented(&self) -> impl Iterator<Item = &'a Heater> + use<'a> {
        self.burners().filter(|burner| !burner.vented)
    }

    /// The fuel of a heater.
    pub(super) fn fuel(&self, heater: &Heater) -> Option<&'a Fuel> {
        self.catalogue.fuel(&heater.fuel)
    }

    /// Energy that a heater takes at full output in the season's coldest hour, W gross.
    pub(super) fn full_input_w(&self, heater: &Heater) -> f64 {
        heater.rated_w / self.heat_per_energy(heater)
    }

    /// Heat per energy of a heater in the season's coldest hour.
    pub(super) fn heat_per_energy(&self, heater: &Heater) -> f64 {
        let net_per_gross = self.fuel(heater).map_or(1.0, |fuel| fuel.net_per_gross);
        heat_per_energy(heater, net_per_gross, self.coldest_c())
    }

    /// Coldest outdoor hour of the season, °C.
    pub(super) fn coldest_c(&self) -> f64 {
        let hours = self.run.hours.outdoor_c.iter().copied();
        hours.reduce(f64::min).unwrap_or(self.run.summary.coldest_outdoor_c)
    }

    /// Volume of the tent, m³, if there is one.
    pub(super) fn tent_m3(&self) -> Option<f64> {
        TentBox::of(&self.scenario.tent).map(|tent| tent.volume_m3)
    }

    /// Whether a heater stands in the tent.
    pub(super) fn in_tent(&self, heater: &Heater) -> bool {
        actual_zone(heater.zone, self.scenario) == Zone::Tent
    }

    /// Whether a heater warms the air round the crop.
    pub(super) fn warms_crop_air(&self, heater: &Heater) -> bool {
        heater.target == HeatTarget::Air
            && actual_zone(heater.zone, self.scenario) == actual_zone(self.scenario.crop.zone, self.scenario)
    }

    pub(super) fn show(&self, value: f64, quantity: Quantity) -> String {
        format::quantity(value, quantity, self.units, None)
    }

    pub(super) fn temperature(&self, t_c: f64) -> String {
        format::temperature(t_c, self.units)
    }
}

/// Whether a heater runs on electricity.
pub(super) fn is_electric(heater: &Heater) -> bool {
    heater.fuel == ELECTRICITY
}

/// "1 heater", "2 heaters".
pub(super) fn counted(count: usize, one: &str) -> String {
    format!("{count} {one}{}", if count == 1 { "" } else { "s" })
}
