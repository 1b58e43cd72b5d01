//! What the grower describes: plain data, with every input defined once.

pub mod catalogue;
pub mod catalogue_rows;
pub mod costs;
pub mod covering;
pub mod crop;
pub mod crop_kind;
pub mod cylinder;
pub mod heater;
pub mod house;
pub mod input;
pub mod own;
pub mod prices;
pub mod study;
pub mod tent;
pub mod tray;
pub mod validate;
pub mod vents;
pub mod water;

pub use catalogue::{Catalogue, Fuel, FuelUnit, HeaterKind, Screen, Sheet, SheetKind};
pub use catalogue_rows::bundled as bundled_catalogue;
pub use costs::{CostLine, Measure};
pub use covering::{Covering, Drawn, NightCover, PartCovering, PartException};
pub use crop::{Bench, Crop};
pub use crop_kind::{Chilling, CropKind, Emergence, Frost, GerminationSoil, Span};
pub use cylinder::{Cylinder, Draw, DrawRow, DrawTable};
pub use heater::{HeatBasis, HeatTarget, Heater};
pub use house::{ArchCurve, BehindPartyWall, House, Part, Shape, Tightness};
pub use input::{ChoiceInput, NumberInput};
pub use own::OwnRows;
pub use prices::{BandDays, ElectricityTariff, FuelPrice, Prices, TariffBand};
pub use study::{FORMAT, Scenario, Season, Site, Study, WeatherChoice};
pub use tent::{Tent, TentBase, TentOpening};
pub use tray::{TrayCells, TrayKind};
pub use validate::{Problem, ProblemKind, Severity, problems};
pub use vents::Vents;
pub use water::{Vessels, WaterStore, Zone};
