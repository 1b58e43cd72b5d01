//! One input, or two, over a range: as a table, as JSON and as CSV. Values are in the file's units.

use super::evaluate::Opened;
use super::page::{amount, table};
use super::{REFUSED, open, print, refuse, save};
use crate::explore::{Axis, NumericInput, Sweep, SweepPoint, Workers, find, numeric_inputs, sweep};
use crate::model::bundled_catalogue;
use crate::season::lean::SeasonFigures;
use crate::units::UnitSystem;
use clap::Args;
use serde::Serialize;
use std::path::PathBuf;
use std::process::ExitCode;

/// Units of what is printed: those of the file, in which the values were given.
const UNITS: UnitSystem = UnitSystem::Metric;

/// What is asked for.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// Study file
    file: PathBuf,
    /// Path of the input, such as tent.height_m; a second one makes a map of two
    #[arg(long, required_unless_present = "list")]
    input: Vec<String>,
    /// First value, one for each input, in the file's units
    #[arg(long, allow_negative_numbers = true)]
    from: Vec<f64>,
    /// Last value
    #[arg(long, allow_negative_numbers = true)]
    to: Vec<f64>,
    /// How many values, both ends included; 9 if left out
    #[arg(long)]
    points: Vec<usize>,
    /// Name of a scenario; all that are shown if left out
    #[arg(long)]
    scenario: Vec<String>,
    /// Print JSON
    #[arg(long)]
    json: bool,
    /// CSV file to write
    #[arg(long)]
    csv: Option<PathBuf>,
    /// Print the paths of all numeric inputs with their ranges, and run nothing
    #[arg(long)]
    list: bool,
}

/// Most inputs of one sweep.
const MOST_INPUTS: usize = 2;
/// Points of an axis if nothing else is asked for.
const POINTS: usize = 9;

pub(super) fn run(asked: &Asked) -> ExitCode {
    let Some(opened) = open(&asked.file) else { return ExitCode::from(REFUSED) };
    if asked.list {
        return print(&list(&numeric_inputs(&opened.study)));
    }
    match result(asked, &opened) {
        Ok(text) => print(&text),
        Err(reason) => refuse(&reason),
    }
}

fn result(asked: &Asked, opened: &Opened) -> Result<String, String> {
    let named = |error: &dyn std::fmt::Display| format!("{}: {error}", opened.file);
    let study = &opened.study;
    let axes = axes(asked, opened)?;
    let scenarios = if asked.scenario.is_empty() {
        (0..study.scenarios.len()).filter(|index| study.scenarios[*index].shown).collect()
    } else {
        asked.scenario.iter().map(|name| opened.scenario(name)).collect::<Result<Vec<_>, _>>()?
    };
    let climate = &opened.weather.climate;
    let swept =
        sweep(study, &scenarios, &axes, climate, bundled_catalogue(), Workers::all()).map_err(|error| named(&error))?;
    if let Some(out) = &asked.csv {
        let text = swept.figures(study, &axes, UNITS).csv().map_err(|error| named(&error))?;
        save::save(text.as_bytes(), &asked.file, out, "table")?;
    }
    Ok(if asked.json { json(opened, &axes, &scenarios, &swept) } else { page(opened, &axes, &scenarios, &swept) })
}

/// The axes asked for, each with as many ends as inputs.
fn axes(asked: &Asked, opened: &Opened) -> Result<Vec<Axis>, String> {
    let inputs = asked.input.len();
    if MOST_INPUTS < inputs {
        return Err(format!("{inputs} inputs cannot be shown together; name one or two"));
    }
    if asked.from.len() != inputs || asked.to.len() != inputs {
        return Err("each --input needs its own --from and --to, in the same order".to_owned());
    }
    let axis = |at: usize| {
        let input = find(&opened.study, &asked.input[at])
            .map_err(|error| format!("{}: {error} (\"--list\" prints all)", opened.file))?;
        let points = asked.points.get(at).or(asked.points.last()).copied().unwrap_or(POINTS);
        let path = input.path.clone();
        Axis::new(input, asked.from[at], asked.to[at], points).map_err(|error| format!("{path}: {error}"))
    };
    (0..inputs).map(axis).collect()
}

fn list(inputs: &[NumericInput]) -> String {
    let mut rows = vec![["Path", "Input", "From", "To", "Unit"].map(str::to_owned).to_vec()];
    rows.extend(inputs.iter().map(|input| {
        let unit = input.quantity.unit(UNITS);
        // A file holds shares and depths in their base unit, which no symbol on screen tells.
        let unit = if unit.shown(1.0) - unit.shown(0.0) == 1.0 { unit.symbol } else { "" };
        vec![input.path.clone(), input.label.clone(), input.min.to_string(), input.max.to_string(), unit.to_owned()]
    }));
    table(&rows, 1)
}

fn page(opened: &Opened, axes: &[Axis], scenarios: &[usize], swept: &Sweep) -> String {
    let study = &opened.study;
    let title = if study.title.is_empty() { &opened.file } else { &study.title };
    let mut text = format!("{title}\n");
    for axis in axes {
        text.push_str(&format!("{} ({})\n", axis.input.label, axis.input.path));
    }
    let mut titles = vec!["Scenario".to_owned()];
    titles.extend(axes.iter().map(|axis| last_part(&axis.input.path)));
    titles.extend(
        ["Cost", "Fuel bought", "Heat kWh", "Lowest crop air °C", "Hours below limit", "below setpoint"]
            .map(str::to_owned),
    );
    let mut rows = vec![titles];
    rows.extend(swept.points.iter().filter_map(|point| {
        let season = point.season.as_ref().ok()?;
        let mut row = vec![study.scenarios[point.scenario].name.clone()];
        row.extend(point.values.iter().map(f64::to_string));
        row.extend(cells(season, &study.prices.currency));
        Some(row)
    }));
    text.push_str(&format!("\n{}", table(&rows, 1)));
    text.push_str(&notes(opened, axes, scenarios, swept));
    text
}

/// Points left out, with the reason, and scenarios that the input does not concern.
fn notes(opened: &Opened, axes: &[Axis], scenarios: &[usize], swept: &Sweep) -> String {
    let name = |scenario: usize| &opened.study.scenarios[scenario].name;
    let left_out = swept.points.iter().filter_map(|point| {
        let reason = point.season.as_ref().err()?.text(UNITS);
        let at: Vec<String> =
            axes.iter().zip(&point.values).map(|(axis, value)| format!("{} {value}", axis.input.path)).collect();
        Some(format!("Left out: {}, {}: {reason}\n", name(point.scenario), at.join(", ")))
    });
    let flat = scenarios.iter().filter(|scenario| swept.is_flat(**scenario));
    let flat = flat.map(|scenario| format!("{}: this makes no difference to it.\n", name(*scenario)));
    let notes: String = left_out.chain(flat).collect();
    if notes.is_empty() { notes } else { format!("\n{notes}") }
}

/// "height_m" of "tent.height_m".
fn last_part(path: &str) -> String {
    path.rsplit('.').next().unwrap_or(path).to_owned()
}

/// Cost, fuel, heat, lowest crop air, hours below limit and setpoint.
pub(super) fn cells(season: &SeasonFigures, currency: &str) -> [String; 6] {
    [
        season.cost.map_or("unknown".to_owned(), |cost| format!("{currency} {cost:.2}")),
        fuel(season),
        format!("{:.0}", season.heat_delivered_kwh),
        format!("{:.1}", season.crop_zone_min_c),
        season.hours_below_crop_limit.to_string(),
        season.hours_below_setpoint.to_string(),
    ]
}

fn fuel(season: &SeasonFigures) -> String {
    let both = [(season.fuel_quantity, &season.fuel_unit), (season.standby_fuel_quantity, &season.standby_fuel_unit)];
    let parts: Vec<String> =
        both.iter().filter(|(_, unit)| !unit.is_empty()).map(|(quantity, unit)| amount(*quantity, unit)).collect();
    if parts.is_empty() { "none".to_owned() } else { parts.join(" + ") }
}

/// The README documents the keys.
#[derive(Serialize)]
struct SweepResult<'a> {
    study: &'a str,
    file: &'a str,
    program_version: &'static str,
    currency: &'a str,
    axes: Vec<AxisResult<'a>>,
    scenarios: Vec<ScenarioResult<'a>>,
}

#[derive(Serialize)]
struct AxisResult<'a> {
    path: &'a str,
    label: &'a str,
    values: &'a [f64],
}

impl<'a> AxisResult<'a> {
    fn of(axis: &'a Axis) -> Self {
        Self { path: &axis.input.path, label: &axis.input.label, values: &axis.values }
    }
}

#[derive(Serialize)]
struct ScenarioResult<'a> {
    name: &'a str,
    makes_no_difference: bool,
    points: Vec<PointResult<'a>>,
}

#[derive(Serialize)]
struct PointResult<'a> {
    values: &'a [f64],
    #[serde(flatten)]
    season: Option<&'a SeasonFigures>,
    left_out: Option<String>,
}

impl<'a> PointResult<'a> {
    fn of(point: &'a SweepPoint) -> Self {
        Self {
            values: &point.values,
            season: point.season.as_ref().ok(),
            left_out: point.season.as_ref().err().map(|refusal| refusal.text(UNITS)),
        }
    }
}

fn json(opened: &Opened, axes: &[Axis], scenarios: &[usize], swept: &Sweep) -> String {
    let study = &opened.study;
    let of_scenario = |scenario: &usize| ScenarioResult {
        name: &study.scenarios[*scenario].name,
        makes_no_difference: swept.is_flat(*scenario),
        points: swept.of(*scenario).map(PointResult::of).collect(),
    };
    let result = SweepResult {
        study: &study.title,
        file: &opened.file,
        program_version: env!("CARGO_PKG_VERSION"),
        currency: &study.prices.currency,
        axes: axes.iter().map(AxisResult::of).collect(),
        scenarios: scenarios.iter().map(of_scenario).collect(),
    };
    // Texts, numbers and lists under fixed keys can always be written.
    serde_json::to_string_pretty(&result).unwrap_or_default() + "\n"
}
