//! The coldest spell taken colder than this year's: whether the crop lives through it, and how cold it may become.
//!
//! Outdoor air, dew point and sky of [`SPELL_HOURS`] are lowered together, so that clouds and damp stay as they were;
//! wind, sun and deep ground stay too. The house enters the spell as the season leaves it there, and is followed for
//! [`AFTER_HOURS`] more, since floor and water lag.

use super::error::RunError;
use super::power_cut::{COLDEST_SPELL_HOURS, coldest_spell_start};
use super::result::HourStamp;
use super::run::{RunOptions, Season, with_season};
use super::thermostats::{Heating, UNLIMITED_W, zone_nodes};
use super::worst_spell::FULL_SHARE;
use crate::model::{Catalogue, Scenario, Study};
use crate::physics::step::State;
use crate::season::plan::actual_zone;
use crate::weather::Climate;
use serde::Serialize;

/// Hours that are colder: three days with the coldest twelve hours in their middle, as long as the cold waves that
/// weather services name. A modelling choice.
pub const SPELL_HOURS: usize = 72;
/// Hours that the house is followed behind them.
pub const AFTER_HOURS: usize = 24;
/// Most that a spell is taken colder or milder in search of its bound, K.
pub const MOST_K: f64 = 40.0;
/// The bound is found to this, K.
const BOUND_K: f64 = 0.02;
/// The heater that is needed is found to this share.
const NEEDED_SHARE: f64 = 0.01;

/// How much colder the spell may become before the crop's air falls below its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bound {
    /// So many kelvin; negative where this year's is too cold already.
    Kelvin(f64),
    /// More than [`MOST_K`].
    Beyond,
    /// Not even [`MOST_K`] milder.
    Never,
}

/// The spell as asked for.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ColderSpell {
    /// First hour that is colder.
    pub starts_at: HourStamp,
    /// The same, counted from 0 in the season.
    #[serde(skip)]
    pub start: usize,
    /// Hours that are colder.
    pub hours: usize,
    /// Its coldest hour this year, °C.
    pub outdoor_min_c: f64,
    /// How much colder it is taken, K.
    pub colder_by_k: f64,
    /// Whether the crop's air keeps its limit, taken so.
    pub holds: bool,
    /// Lowest hourly mean of the crop's air, taken so, °C.
    pub crop_air_min_c: f64,
    /// Hours below the crop limit, taken so.
    pub hours_below_crop_limit: usize,
    /// Hours in which the first heater gives all that it can, taken so.
    pub hours_at_full_output: usize,
    /// Smallest rated output of the first heater with which the crop's air keeps its limit, taken so, W, to a hundredth;
    /// the standby heater stays as it is. None without a heater, or where no output does.
    pub heater_needed_w: Option<f64>,
    /// Coldest outdoor hour with which the limit is still kept, °C; none where it is more than 40 K away.
    pub holds_down_to_c: Option<f64>,
    /// How much colder than this year's that is, K; negative where this year's is too cold already.
    pub most_colder_by_k: Option<f64>,
    /// The same with what lies beyond.
    #[serde(skip)]
    pub bound: Bound,
    /// Crop air of each hour, taken so, °C.
    #[serde(skip)]
    pub crop_air_c: Vec<f64>,
    /// Heat of the first heater in each hour, taken so, W.
    #[serde(skip)]
    pub heater_w: Vec<f64>,
}

/// Follows the coldest spell `colder_by_k` kelvin colder, and seeks its bound. `cancelled` is asked once per simulated
/// day of the season and once per try.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn colder_spell(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    colder_by_k: f64,
    cancelled: &dyn Fn() -> bool,
) -> Result<ColderSpell, RunError> {
    let (spell, needs) = with_season(study, scenario, climate, catalogue, RunOptions::default(), |season, _| {
        let spell = Spell::of(season, climate, cancelled)?;
        let asked = spell.passage(season.heating, colder_by_k)?;
        let bound = spell.bound(cancelled)?;
        let kelvin = if let Bound::Kelvin(k) = bound { Some(k) } else { None };
        let limit_c = scenario.crop.limit_c;
        let full_w = FULL_SHARE * scenario.heater.rated_w;
        let full = |w: &&f64| scenario.heater.present && **w > 0.0 && **w >= full_w;
        let found = ColderSpell {
            starts_at: season.stamp(spell.start),
            start: spell.start,
            hours: SPELL_HOURS,
            outdoor_min_c: spell.outdoor_min_c,
            colder_by_k,
            holds: asked.holds(limit_c),
            crop_air_min_c: asked.lowest_c(),
            hours_below_crop_limit: asked.crop_air_c.iter().filter(|t| **t < limit_c).count(),
            hours_at_full_output: asked.heater_w.iter().filter(full).count(),
            heater_needed_w: None,
            holds_down_to_c: kelvin.map(|k| spell.outdoor_min_c - k),
            most_colder_by_k: kelvin,
            bound,
            crop_air_c: asked.crop_air_c,
            heater_w: asked.heater_w,
        };
        Ok((found, scenario.heater.present))
    })?;
    if !needs {
        return Ok(spell);
    }
    // A house that fell short before the spell would enter it too cold for any heater: it enters as one that was held.
    let unlimited = RunOptions { unlimited_heat: true, ..RunOptions::default() };
    let heater_needed_w = with_season(study, scenario, climate, catalogue, unlimited, |season, _| {
        Spell::of(season, climate, cancelled)?.heater_needed_w(scenario, colder_by_k, cancelled)
    })?;
    Ok(ColderSpell { heater_needed_w, ..spell })
}

/// What the house does in a spell.
struct Passage {
    crop_air_c: Vec<f64>,
    heater_w: Vec<f64>,
}

impl Passage {
    fn lowest_c(&self) -> f64 {
        self.crop_air_c.iter().copied().reduce(f64::min).unwrap_or(0.0)
    }

    fn holds(&self, limit_c: f64) -> bool {
        self.crop_air_c.iter().all(|t| *t >= limit_c)
    }
}

/// The coldest spell of a season, and the house at its start.
struct Spell<'a> {
    season: &'a Season<'a>,
    climate: &'a Climate,
    start: usize,
    state: State,
    outdoor_min_c: f64,
    crop_air: usize,
    limit_c: f64,
}

impl<'a> Spell<'a> {
    fn of(season: &'a Season<'a>, climate: &'a Climate, cancelled: &dyn Fn() -> bool) -> Result<Self, RunError> {
        let outdoor_c = season.outdoor_c();
        let before = (SPELL_HOURS - COLDEST_SPELL_HOURS) / 2;
        let start = coldest_spell_start(&outdoor_c).saturating_sub(before);
        let within = outdoor_c.iter().skip(start).take(SPELL_HOURS);
        let zone = actual_zone(season.scenario.crop.zone, season.scenario);
        Ok(Self {
            season,
            climate,
            start,
            state: season.state_at(start, cancelled)?,
            outdoor_min_c: within.copied().reduce(f64::min).unwrap_or(0.0),
            crop_air: zone_nodes(&season.plan.layout, zone).air,
            limit_c: season.scenario.crop.limit_c,
        })
    }

    fn passage(&self, heating: &Heating, colder_by_k: f64) -> Result<Passage, RunError> {
        let mut colder = self.climate.clone();
        for k in 0..SPELL_HOURS {
            colder.hours[self.season.record(self.start + k)].warm_by(-colder_by_k);
        }
        let hours = self.season.through(heating, &colder, &self.state, self.start, SPELL_HOURS + AFTER_HOURS)?;
        let of = |take: &dyn Fn(&super::hour::HourMeans) -> f64| hours.iter().map(take).collect();
        Ok(Passage { crop_air_c: of(&|h| h.mean_c[self.crop_air]), heater_w: of(&|h| h.heater_w[0]) })
    }

    fn bound(&self, cancelled: &dyn Fn() -> bool) -> Result<Bound, RunError> {
        let holds = |k: f64| -> Result<bool, RunError> {
            if cancelled() {
                return Err(RunError::Cancelled);
            }
            Ok(self.passage(self.season.heating, k)?.holds(self.limit_c))
        };
        if holds(MOST_K)? {
            return Ok(Bound::Beyond);
        }
        if !holds(-MOST_K)? {
            return Ok(Bound::Never);
        }
        let (mut kept, mut broken) = (-MOST_K, MOST_K);
        while broken - kept > BOUND_K {
            let middle = f64::midpoint(kept, broken);
            if holds(middle)? { kept = middle } else { broken = middle }
        }
        Ok(Bound::Kelvin(kept))
    }

    fn heater_needed_w(
        &self,
        scenario: &Scenario,
        colder_by_k: f64,
        cancelled: &dyn Fn() -> bool,
    ) -> Result<Option<f64>, RunError> {
        let mut sized = scenario.clone();
        let mut holds = |rated_w: f64| -> Result<bool, RunError> {
            if cancelled() {
                return Err(RunError::Cancelled);
            }
            sized.heater.rated_w = rated_w;
            let heating = Heating::of(&sized, &self.season.plan.layout)?;
            Ok(self.passage(&heating, colder_by_k)?.holds(self.limit_c))
        };
        if holds(0.0)? {
            return Ok(Some(0.0));
        }
        let (mut broken_w, mut kept_w) = (0.0, 250.0);
        while !holds(kept_w)? {
            (broken_w, kept_w) = (kept_w, 2.0 * kept_w);
            if kept_w > UNLIMITED_W {
                return Ok(None);
            }
        }
        while kept_w - broken_w > NEEDED_SHARE * kept_w {
            let middle_w = f64::midpoint(broken_w, kept_w);
            if holds(middle_w)? { kept_w = middle_w } else { broken_w = middle_w }
        }
        Ok(Some(kept_w))
    }
}
