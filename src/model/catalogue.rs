//! Catalogues of sheets, night screens, fuels, heaters, cylinders, crops and trays: data with a source per row.

use super::crop_kind::CropKind;
use super::cylinder::Cylinder;
use super::input::inputs;
use super::own::OwnRows;
use super::tray::TrayKind;
use serde::{Deserialize, Serialize};

/// How a sheet joins a stack.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum SheetKind {
    /// Thin film; a further film adds an air gap of 0.10 m²·K/W.
    Film,
    /// Rigid sheet; a further rigid sheet adds an air gap of 0.13 m²·K/W.
    Rigid,
    /// A liner whose measured added resistance already holds its gap.
    Liner,
}

inputs! {
    /// A sheet of covering.
    pub struct Sheet {
        choices {
            key: String = String::new(), "Key", "Name in files";
            name: String = String::new(), "Name", "Name on screen";
            kind: SheetKind = SheetKind::Film, "Kind", "Film, rigid sheet or liner";
            source: String = String::new(), "Source", "Where the numbers come from";
        }
        numbers {
            u_as_skin_w_per_m2k: f64, UValue, 0.2..=9.0, 6.5, "U as outer skin", "Thermal transmittance alone between indoors and outdoors, both surfaces, wind 6.7 m/s", "handbook basis";
            resistance_m2k_per_w: f64, Resistance, 0.0..=5.0, 0.0, "Sheet resistance", "Resistance that it adds as a further sheet, without its gap; a liner's whole added resistance", "";
            solar_transmittance: f64, Share, 0.0..=1.0, 0.85, "Solar transmittance", "Share of the sun passed at normal incidence", "";
            emissivity: f64, Share, 0.0..=1.0, 0.2, "Longwave emissivity", "Longwave emissivity of the dry sheet", "";
            longwave_transmittance: f64, Share, 0.0..=1.0, 0.7, "Longwave transmittance", "Share of heat radiation passed by the dry sheet", "";
            heat_capacity_kj_per_m2k: f64, AreaHeatCapacity, 0.0..=100.0, 0.2, "Heat capacity", "Heat capacity per square metre", "";
            price_per_m2: f64, Money, 0.0..=100000.0, 0.0, "Price per m²", "Buying price, in the study's currency", "";
            life_years: f64, Count, 0.0..=100.0, 4.0, "Life in years", "Years before it is replaced", "common practice";
        }
    }
}

inputs! {
    /// A cover or screen drawn at night.
    pub struct Screen {
        choices {
            key: String = String::new(), "Key", "Name in files";
            name: String = String::new(), "Name", "Name on screen";
            source: String = String::new(), "Source", "Where the numbers come from";
        }
        numbers {
            added_resistance_m2k_per_w: f64, Resistance, 0.0..=5.0, 0.1, "Added resistance", "Resistance that it adds while drawn, its gap included", "";
            solar_transmittance: f64, Share, 0.0..=1.0, 0.8, "Solar transmittance", "Share of the sun passed while drawn", "";
        }
    }
}

/// A unit that a fuel is bought in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FuelUnit {
    /// Name of the unit: "kg", "US gal", "20 lb cylinder".
    pub unit: String,
    /// Heat in one unit, kWh, gross.
    pub kwh_gross_per_unit: f64,
}

/// A fuel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fuel {
    /// Name in files.
    pub key: String,
    /// Name on screen.
    pub name: String,
    /// Units that it is bought in; the first is the default.
    pub units: Vec<FuelUnit>,
    /// Net per gross heat content: the sensible share of an unvented flame.
    pub net_per_gross: f64,
    /// kg CO₂ per kWh gross burnt; none where no factor was read (grid electricity).
    pub co2_kg_per_kwh: Option<f64>,
    /// Whether it comes by wire or pipe, so that nobody stores it.
    #[serde(default)]
    pub piped: bool,
    /// Where the numbers come from.
    pub source: String,
}

/// A kind of heater, to fill in an editor from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeaterKind {
    /// Name on screen.
    pub name: String,
    /// Fuel key.
    pub fuel: String,
    /// Heat to the house per gross heat in the fuel.
    pub efficiency: f64,
    /// Whether burnt gas leaves through a flue.
    pub vented: bool,
    /// Whether it stops in a power cut.
    pub needs_mains: bool,
    /// Efficiency follows the outdoor temperature.
    pub heat_pump: bool,
    /// Electric power while it runs full, W.
    pub fan_w: f64,
    /// Where the numbers come from.
    pub source: String,
}

/// The catalogues that a study can draw from: the program's rows and the study's own.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Catalogue {
    /// Sheets of covering.
    pub sheets: Vec<Sheet>,
    /// Night screens.
    pub screens: Vec<Screen>,
    /// Fuels.
    pub fuels: Vec<Fuel>,
    /// Kinds of heater.
    pub heaters: Vec<HeaterKind>,
    /// Gas cylinders.
    pub cylinders: Vec<Cylinder>,
    /// Kinds of crop.
    pub crops: Vec<CropKind>,
    /// Kinds of tray.
    pub trays: Vec<TrayKind>,
}

impl Catalogue {
    /// The program's rows with the study's own behind them; an own row hides a bundled one of the same key.
    #[must_use]
    pub fn with_own(&self, own: &OwnRows) -> Self {
        let mut all = self.clone();
        all.sheets.retain(|row| own.sheets.iter().all(|o| o.key != row.key));
        all.sheets.extend(own.sheets.iter().cloned());
        all.screens.retain(|row| own.screens.iter().all(|o| o.key != row.key));
        all.screens.extend(own.screens.iter().cloned());
        all.fuels.retain(|row| own.fuels.iter().all(|o| o.key != row.key));
        all.fuels.extend(own.fuels.iter().cloned());
        all
    }

    /// The sheet with this key.
    #[must_use]
    pub fn sheet(&self, key: &str) -> Option<&Sheet> {
        self.sheets.iter().find(|row| row.key == key)
    }

    /// The screen with this key.
    #[must_use]
    pub fn screen(&self, key: &str) -> Option<&Screen> {
        self.screens.iter().find(|row| row.key == key)
    }

    /// The fuel with this key.
    #[must_use]
    pub fn fuel(&self, key: &str) -> Option<&Fuel> {
        self.fuels.iter().find(|row| row.key == key)
    }

    /// The cylinder that is this unit of the fuel catalogue.
    #[must_use]
    pub fn cylinder(&self, unit: &str) -> Option<&Cylinder> {
        self.cylinders.iter().find(|row| row.unit == unit)
    }

    /// The crop with this key.
    #[must_use]
    pub fn crop(&self, key: &str) -> Option<&CropKind> {
        self.crops.iter().find(|row| row.key == key)
    }

    /// The tray with this key.
    #[must_use]
    pub fn tray(&self, key: &str) -> Option<&TrayKind> {
        self.trays.iter().find(|row| row.key == key)
    }
}
