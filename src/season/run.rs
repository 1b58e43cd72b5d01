//! One scenario through one season.

use super::baseline::Baseline;
use super::buying::Buying;
use super::damp::{DampInputs, damp_season};
use super::drive::{DriveSettings, HourDrive, SkinFace, drives_of};
use super::error::RunError;
use super::essentials::Essentials;
use super::fuel_calendar::FuelCalendar;
use super::hour::{HourMeans, run_hour};
use super::hours::{RUN_AHEAD_DAYS, RUN_AHEAD_HEATED_DAYS, SeasonHours};
use super::house_model::HouseModel;
use super::plan::Plan;
use super::power_cut::{self, Course, coldest_spell_start};
use super::record::SeriesWriter;
use super::result::{HourStamp, HourlySeries, POWER_CUT_HOURS, ScenarioRun};
use super::steady::bracket;
use super::summary;
use super::thermostats::{Heating, HourThermostats};
use crate::model::{Catalogue, Scenario, Study};
use crate::physics::step::State;
use crate::units::HOURS_PER_DAY;
use crate::weather::Climate;

/// How a run is made; the default is what the program shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RunOptions {
    /// Heaters without limit of output.
    pub unlimited_heat: bool,
    /// Equal parts that each step is cut into; 1 as a rule, more to prove that the step is short enough.
    pub refine: u32,
    /// The house is aired for an hour every morning, to see what that changes.
    pub morning_airing: bool,
}

impl Default for RunOptions {
    fn default() -> Self {
        Self { unlimited_heat: false, refine: 1, morning_airing: false }
    }
}

/// Runs a scenario of the study on a climate. `cancelled` is asked once per simulated day.
///
/// # Errors
/// [`RunError::Cancelled`]; otherwise what the study's validation would have refused: unknown catalogue keys, empty
/// stacks, an immersion heater without water, a season that the weather lacks.
pub fn run_scenario(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
) -> Result<ScenarioRun, RunError> {
    run_scenario_with(study, scenario, climate, catalogue, cancelled, RunOptions::default())
}

/// As [`run_scenario`], with options.
///
/// # Errors
/// As [`run_scenario`].
pub fn run_scenario_with(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
    options: RunOptions,
) -> Result<ScenarioRun, RunError> {
    let catalogue = catalogue.with_own(&study.own);
    let plan = Plan::new(scenario, &catalogue)?;
    let heating = Heating::of(scenario, &plan.layout)?;
    let hours = SeasonHours::find(&study.season, climate)?;
    let season = Season {
        scenario,
        climate,
        plan: &plan,
        heating: &heating,
        settings: settings(scenario, &plan, options),
        hours,
        options,
    };
    let (mut model, mut passed) = season.pass(study, &catalogue, cancelled)?;
    let baseline = Baseline::of(scenario, &plan, model.openings());

    let clock: Vec<u32> = passed.series.record.iter().map(|&r| climate.hours[r].hour).collect();
    let bracket = bracket(&mut model, &heating, &passed.drives, &clock);
    let cut = season.power_cut(&passed, &catalogue)?;
    let damp = damp_season(DampInputs {
        plan: &plan,
        scenario,
        catalogue: &catalogue,
        climate,
        series: &passed.series,
        drives: &passed.drives,
        faces: &passed.faces,
    });
    passed.series.damp = damp.series;
    let context = summary::Context { study, scenario, climate, plan: &plan, heating: &heating, baseline };
    let design = summary::design_balances(&context, &mut model);
    let summary = summary::summarise(&context, &mut model, &passed, (bracket, &design), damp.figures, &cut);
    let purchase = passed.money.purchases[0].as_ref();
    Ok(ScenarioRun {
        summary,
        shell: summary::shell_figures(scenario, &plan, model.openings(), &catalogue),
        buying: Buying::of(scenario, &plan),
        fuel_calendar: purchase.and_then(|p| FuelCalendar::of(&scenario.heater, p, &passed.series, climate)),
        hours: passed.series,
        money: passed.money,
        design: design[1],
    })
}

/// Heat of a season, kWh, and what that heat costs without fans and standing charges; none where a price is missing.
///
/// # Errors
/// As [`run_scenario`].
pub(super) fn heat_and_money(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
    options: RunOptions,
) -> Result<(f64, Option<f64>), RunError> {
    with_season(study, scenario, climate, catalogue, options, |season, catalogue| {
        let passed = season.pass(study, catalogue, cancelled)?.1;
        let heat_w = passed.series.heater_w.iter().chain(&passed.series.standby_w);
        Ok((heat_w.sum::<f64>() / 1000.0, passed.money.heat_cost))
    })
}

/// A season without what takes further runs (bracket, damp, power cut): its essentials and its hours.
///
/// # Errors
/// As [`run_scenario`].
pub(super) fn lean_season(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
) -> Result<(Essentials, Passed), RunError> {
    with_season(study, scenario, climate, catalogue, RunOptions::default(), |season, catalogue| {
        let (model, passed) = season.pass(study, catalogue, cancelled)?;
        let baseline = Baseline::of(scenario, season.plan, model.openings());
        let (plan, heating) = (season.plan, season.heating);
        let context = summary::Context { study, scenario, climate, plan, heating, baseline };
        Ok((Essentials::of(&context, &passed), passed))
    })
}

/// Measures a scenario, finds its season, and works on them with the catalogue and the study's own rows.
///
/// # Errors
/// As [`run_scenario`].
pub(super) fn with_season<T>(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    options: RunOptions,
    work: impl FnOnce(&Season, &Catalogue) -> Result<T, RunError>,
) -> Result<T, RunError> {
    let catalogue = catalogue.with_own(&study.own);
    let plan = Plan::new(scenario, &catalogue)?;
    let heating = Heating::of(scenario, &plan.layout)?;
    let hours = SeasonHours::find(&study.season, climate)?;
    let settings = settings(scenario, &plan, options);
    work(&Season { scenario, climate, plan: &plan, heating: &heating, settings, hours, options }, &catalogue)
}

fn settings(scenario: &Scenario, plan: &Plan, options: RunOptions) -> DriveSettings {
    let settings = DriveSettings::of(scenario);
    if options.morning_airing { settings.with_morning_airing(plan) } else { settings }
}

/// What a season run leaves behind for its summary.
pub(super) struct Passed {
    pub series: HourlySeries,
    pub money: super::record::Money,
    pub drives: Vec<HourDrive>,
    /// The groups of the skin, hour after hour.
    pub faces: Vec<SkinFace>,
    /// Sum of sun, heat and inward boundary flows, Wh.
    pub throughput_wh: f64,
    /// First hour of the coldest spell, and the state at its start.
    pub cut_hour: usize,
    pub cut_state: State,
}

/// Two courses of a power cut.
pub(super) struct Cut {
    pub with_water: Course,
    pub without_water: Course,
}

pub(super) struct Season<'a> {
    pub scenario: &'a Scenario,
    climate: &'a Climate,
    pub plan: &'a Plan,
    pub heating: &'a Heating<'a>,
    settings: DriveSettings,
    hours: SeasonHours,
    options: RunOptions,
}

impl<'a> Season<'a> {
    /// Runs ahead and through the season.
    fn pass(
        &self,
        study: &Study,
        catalogue: &Catalogue,
        cancelled: &dyn Fn() -> bool,
    ) -> Result<(HouseModel<'a>, Passed), RunError> {
        let mut model = self.run_ahead(cancelled)?;
        let baseline = Baseline::of(self.scenario, self.plan, model.openings());
        let writer = SeriesWriter::new(study, self.scenario, catalogue, self.plan, baseline, self.hours.len())?;
        let passed = self.run(&mut model, writer, cancelled)?;
        Ok((model, passed))
    }

    /// The hour at this index of the weather year.
    fn drive(&self, record: usize) -> HourDrive {
        HourDrive::new(self.plan, self.settings, self.climate, record)
    }

    /// Every hour of the season, with the groups of the skin.
    fn drives(&self) -> (Vec<HourDrive>, Vec<SkinFace>) {
        let count = self.hours.len();
        drives_of(self.plan, self.settings, self.climate, (0..count).map(|k| self.hours.record(k)))
    }

    /// Runs the days before the season, from the mean outdoor temperature of their first day.
    fn run_ahead(&self, cancelled: &dyn Fn() -> bool) -> Result<HouseModel<'a>, RunError> {
        let first_day = (0..HOURS_PER_DAY).map(|k| self.climate.hours[self.hours.ahead_record(k)].outdoor_c);
        let mut model = HouseModel::new(self.plan, self.scenario, first_day.sum::<f64>() / HOURS_PER_DAY as f64)?;
        let heated_from = (RUN_AHEAD_DAYS - RUN_AHEAD_HEATED_DAYS) * HOURS_PER_DAY;
        for k in 0..RUN_AHEAD_DAYS * HOURS_PER_DAY {
            if k % HOURS_PER_DAY == 0 && cancelled() {
                return Err(RunError::Cancelled);
            }
            let record = self.hours.ahead_record(k);
            let thermostats = if k < heated_from { HourThermostats::none() } else { self.thermostats_at(record) };
            run_hour(&mut model, &self.drive(record), &thermostats, true, self.options.refine);
        }
        Ok(model)
    }

    fn run(
        &self,
        model: &mut HouseModel,
        mut writer: SeriesWriter,
        cancelled: &dyn Fn() -> bool,
    ) -> Result<Passed, RunError> {
        let (drives, faces) = self.drives();
        let outdoor_c: Vec<f64> = drives.iter().map(|d| d.outdoor_c).collect();
        let cut_hour = coldest_spell_start(&outdoor_c);
        let (mut cut_state, mut throughput_wh) = (model.state, 0.0);
        for (k, drive) in drives.iter().enumerate() {
            if k % HOURS_PER_DAY == 0 && cancelled() {
                return Err(RunError::Cancelled);
            }
            if k == cut_hour {
                cut_state = model.state;
            }
            let record = self.hours.record(k);
            let thermostats = self.thermostats_at(record);
            let means = run_hour(model, drive, &thermostats, true, self.options.refine);
            throughput_wh += throughput_w(drive, &means);
            let ice = &model.state.ice_share;
            writer.push(record, &self.climate.hours[record], drive, &means, ice);
        }
        let (series, money) = writer.finish();
        Ok(Passed { series, money, drives, faces, throughput_wh, cut_hour, cut_state })
    }

    fn thermostats_at(&self, record: usize) -> HourThermostats {
        self.heating.at(self.climate.hours[record].hour, true, self.options.unlimited_heat)
    }

    fn power_cut(&self, passed: &Passed, catalogue: &Catalogue) -> Result<Cut, RunError> {
        let (state, hour) = (&passed.cut_state, passed.cut_hour);
        let with_water = self.cut(self.scenario, self.plan, state, hour, POWER_CUT_HOURS)?;
        if !self.scenario.water.present {
            return Ok(Cut { without_water: with_water.clone(), with_water });
        }
        let (dry, dry_plan, dry_state) = power_cut::without_vessels(self.scenario, catalogue, self.plan, state)?;
        let without_water = self.cut(&dry, &dry_plan, &dry_state, hour, POWER_CUT_HOURS)?;
        Ok(Cut { with_water, without_water })
    }

    /// Follows a scenario through a power cut that begins with hour `start` of this season, or with its last hour.
    pub fn cut(
        &self,
        scenario: &Scenario,
        plan: &Plan,
        state: &State,
        start: usize,
        hours: usize,
    ) -> Result<Course, RunError> {
        let settings = DriveSettings::of(scenario);
        let start = start.min(self.hours.len() - 1);
        let drive_at = |k: usize| {
            let record = self.hours.record(start + k);
            (HourDrive::new(plan, settings, self.climate, record), self.climate.hours[record].hour)
        };
        power_cut::follow(plan, scenario, state, hours, &drive_at)
    }

    /// Hours from a state at the start of hour `start` of this season on, with heaters of their rated output, on a
    /// climate that may differ from the season's own.
    pub fn through(
        &self,
        heating: &Heating,
        climate: &Climate,
        state: &State,
        start: usize,
        hours: usize,
    ) -> Result<Vec<HourMeans>, RunError> {
        let mut model = HouseModel::new(self.plan, self.scenario, 0.0)?;
        model.state = *state;
        let mut hour = |k: usize| {
            let record = self.hours.record(start + k);
            let drive = HourDrive::new(self.plan, self.settings, climate, record);
            run_hour(
                &mut model,
                &drive,
                &heating.at(climate.hours[record].hour, true, false),
                true,
                self.options.refine,
            )
        };
        Ok((0..hours).map(&mut hour).collect())
    }

    /// Outdoor air of each hour of the season, °C.
    pub fn outdoor_c(&self) -> Vec<f64> {
        (0..self.hours.len()).map(|k| self.climate.hours[self.hours.record(k)].outdoor_c).collect()
    }

    /// Index in the weather year of hour `k` of the season; behind the season the year goes on.
    pub fn record(&self, k: usize) -> usize {
        self.hours.record(k)
    }

    /// Date and hour ending of hour `k` of the season.
    pub fn stamp(&self, k: usize) -> HourStamp {
        HourStamp::of(&self.climate.hours[self.hours.record(k)])
    }

    /// The house at the start of hour `start` of the season, or of the season's last hour.
    pub fn state_at(&self, start: usize, cancelled: &dyn Fn() -> bool) -> Result<State, RunError> {
        let mut model = self.run_ahead(cancelled)?;
        for k in 0..start.min(self.hours.len() - 1) {
            if k % HOURS_PER_DAY == 0 && cancelled() {
                return Err(RunError::Cancelled);
            }
            let record = self.hours.record(k);
            run_hour(&mut model, &self.drive(record), &self.thermostats_at(record), true, self.options.refine);
        }
        Ok(model.state)
    }
}

/// Sun, heat and inward boundary flows of an hour, W.
fn throughput_w(drive: &HourDrive, means: &HourMeans) -> f64 {
    drive.house_sun.kept_w() + drive.tent_sun.kept_w() + means.heater_w.iter().sum::<f64>() + means.boundary_inflow_w
}
