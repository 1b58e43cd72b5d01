//! An address for every numeric input of a study: its path in the file, such as `tent.height_m`.
//!
//! Built from the rows of `inputs!`, so that a new input has an address without another list. What the rows do not hold,
//! numbers that can be off and two that move several fields, is in `derived`.

use super::derived;
use super::refusal::Refusal;
use crate::model::validate::nearest_name;
use crate::model::{
    Bench, CostLine, Crop, HardNight, Heater, House, ManyWinters, NumberInput, Precautions, Prices, Scenario, Season,
    Study, Tent, Vents, Vessels,
};
use crate::model::{ElectricityTariff, FuelPrice, TariffBand};
use crate::units::Quantity;
use thiserror::Error;

type Read = Box<dyn Fn(&Study, usize) -> Option<f64> + Send + Sync>;
type Write = Box<dyn Fn(&mut Study, usize, f64) -> Result<(), Refusal> + Send + Sync>;

/// A numeric input of a study and of one of its scenarios.
pub struct NumericInput {
    /// Its path in the file; within the scenario for what belongs to one.
    pub path: String,
    /// Name on screen, with the part that it belongs to.
    pub label: String,
    /// What the number means.
    pub quantity: Quantity,
    /// Smallest allowed value.
    pub min: f64,
    /// Largest allowed value.
    pub max: f64,
    /// Whether only whole numbers are allowed.
    pub whole: bool,
    pub(super) read: Read,
    pub(super) write: Write,
}

impl std::fmt::Debug for NumericInput {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "NumericInput({})", self.path)
    }
}

impl NumericInput {
    /// Its value in a scenario of the study; none where it is off or the scenario lacks the row.
    #[must_use]
    pub fn value(&self, study: &Study, scenario: usize) -> Option<f64> {
        (self.read)(study, scenario)
    }

    /// Writes a value, as if it were typed.
    ///
    /// # Errors
    /// A value outside the range, a broken number of whole things, a row that the scenario lacks.
    pub fn set(&self, study: &mut Study, scenario: usize, value: f64) -> Result<(), Refusal> {
        if !(self.min..=self.max).contains(&value) {
            let (label, min, max) = (self.label.clone(), self.min, self.max);
            return Err(Refusal::OutOfRange { label, value, min, max, quantity: self.quantity });
        }
        if self.whole && value.fract() != 0.0 {
            return Err(Refusal::NotWhole(value));
        }
        (self.write)(study, scenario, value)
    }
}

/// A path that names no numeric input.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("there is no numeric input \"{path}\"; {}", match nearest {
    Some(name) => format!("did you mean \"{name}\"?"),
    None => "name it by its path in the file, such as tent.height_m".to_owned(),
})]
pub struct UnknownInput {
    /// What was asked for.
    pub path: String,
    /// The nearest known path.
    pub nearest: Option<String>,
}

/// The input with this path.
///
/// # Errors
/// None has it; the nearest path is proposed.
pub fn find(study: &Study, path: &str) -> Result<NumericInput, UnknownInput> {
    let mut all = numeric_inputs(study);
    if let Some(at) = all.iter().position(|input| input.path == path) {
        return Ok(all.swap_remove(at));
    }
    let nearest = nearest_name(path, all.iter().map(|input| input.path.as_str())).map(str::to_owned);
    Err(UnknownInput { path: path.to_owned(), nearest })
}

/// Adds the inputs of one part: its place in the file, its name on screen, its rows, and the way to it.
macro_rules! part {
    ($list:ident, study, $label:expr, $type:ty, $($field:ident).+) => {
        rows($list, &path(&[$(stringify!($field)),+]), $label, <$type>::NUMBERS,
            |study, _| Some(&study.$($field).+), |study, _| Some(&mut study.$($field).+))
    };
    ($list:ident, scenario, $label:expr, $type:ty, $($field:ident).+) => {
        rows($list, &path(&[$(stringify!($field)),+]), $label, <$type>::NUMBERS,
            |study, at| Some(&study.scenarios.get(at)?.$($field).+),
            |study, at| Some(&mut study.scenarios.get_mut(at)?.$($field).+))
    };
    ($list:ident, study[$row:ident], $label:expr, $type:ty, $($field:ident).+) => {
        rows($list, &format!("{}[{}]", path(&[$(stringify!($field)),+]), $row), $label, <$type>::NUMBERS,
            move |study, _| study.$($field).+.get($row), move |study, _| study.$($field).+.get_mut($row))
    };
    ($list:ident, scenario[$row:ident], $label:expr, $type:ty, $($field:ident).+) => {
        rows($list, &format!("{}[{}]", path(&[$(stringify!($field)),+]), $row), $label, <$type>::NUMBERS,
            move |study, at| study.scenarios.get(at)?.$($field).+.get($row),
            move |study, at| study.scenarios.get_mut(at)?.$($field).+.get_mut($row))
    };
}

/// Every numeric input of a study and its scenarios.
#[must_use]
pub fn numeric_inputs(study: &Study) -> Vec<NumericInput> {
    let mut all = Vec::new();
    let list = &mut all;
    of_scenarios(study, list);
    part!(list, study, "Season", Season, season);
    part!(list, study, "Prices", Prices, prices);
    part!(list, study, "Electricity", ElectricityTariff, prices.electricity);
    for row in 0..study.prices.electricity.bands.len() {
        part!(list, study[row], "Band", TariffBand, prices.electricity.bands);
    }
    for (row, fuel) in study.prices.fuels.iter().enumerate() {
        part!(list, study[row], &fuel.fuel, FuelPrice, prices.fuels);
    }
    part!(list, study, "Hard nights", HardNight, hard_night);
    part!(list, study, "Many winters", ManyWinters, many_winters);
    derived::add(list);
    all
}

fn of_scenarios(study: &Study, list: &mut Vec<NumericInput>) {
    let most = |rows: fn(&Scenario) -> usize| study.scenarios.iter().map(rows).max().unwrap_or(0);
    part!(list, scenario, Scenario::house.label, House, house);
    part!(list, scenario, Scenario::tent.label, Tent, tent);
    for row in 0..most(|s| s.water.vessels.len()) {
        part!(list, scenario[row], &numbered("Vessels", row), Vessels, water.vessels);
    }
    part!(list, scenario, Scenario::heater.label, Heater, heater);
    part!(list, scenario, Scenario::standby.label, Heater, standby);
    part!(list, scenario, Scenario::crop.label, Crop, crop);
    part!(list, scenario, Scenario::bench.label, Bench, bench);
    part!(list, scenario, Scenario::vents.label, Vents, vents);
    part!(list, scenario, Scenario::precautions.label, Precautions, precautions);
    for row in 0..most(|s| s.costs.len()) {
        part!(list, scenario[row], &numbered("Buying costs", row), CostLine, costs);
    }
}

/// "Vessels", "Vessels 2".
fn numbered(name: &str, row: usize) -> String {
    if row == 0 { name.to_owned() } else { format!("{name} {}", row + 1) }
}

fn path(fields: &[&str]) -> String {
    fields.join(".")
}

fn rows<T: Default + 'static>(
    list: &mut Vec<NumericInput>,
    place: &str,
    part: &str,
    inputs: &'static [NumberInput<T>],
    read: impl Fn(&Study, usize) -> Option<&T> + Copy + Send + Sync + 'static,
    write: impl Fn(&mut Study, usize) -> Option<&mut T> + Copy + Send + Sync + 'static,
) {
    list.extend(inputs.iter().map(|input| {
        let (get, set) = (input.get, input.set);
        let path = format!("{place}.{}", input.key);
        let missing = path.clone();
        NumericInput {
            path,
            label: format!("{part}: {}", input.label),
            quantity: input.quantity,
            min: input.min,
            max: input.max,
            whole: is_whole(input),
            read: Box::new(move |study, at| read(study, at).map(get)),
            write: Box::new(move |study, at, value| {
                let part = write(study, at).ok_or_else(|| Refusal::NoSuchRow { path: missing.clone() })?;
                set(part, value);
                Ok(())
            }),
        }
    }));
}

/// Whether the field keeps whole numbers only: a half put into it does not come back.
fn is_whole<T: Default>(input: &NumberInput<T>) -> bool {
    let mut probe = T::default();
    (input.set)(&mut probe, 1.5);
    (input.get)(&probe) != 1.5
}
