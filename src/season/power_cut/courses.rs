//! A power cut at any hour, with each measure taken away in turn: what each is worth when the mains fail.

use super::{Course, coldest_spell_start, without_vessels};
use crate::model::{Catalogue, CutStarts, HeatTarget, Scenario, Study, Zone};
use crate::physics::step::State;
use crate::season::error::RunError;
use crate::season::hours::SeasonHours;
use crate::season::plan::Plan;
use crate::season::result::{Hold, HourStamp, POWER_CUT_HOURS, PowerCutTimes};
use crate::season::run::{RunOptions, Season, with_season};
use crate::weather::Climate;
use serde::{Serialize, Serializer};

/// Something that holds the warmth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// The water store.
    Water,
    /// The inner tent.
    Tent,
    /// Night covers of house and tent.
    NightCovers,
}

impl Measure {
    /// All of them, in the order in which they are taken away.
    pub const ALL: [Self; 3] = [Self::Water, Self::Tent, Self::NightCovers];

    /// In words, behind "without".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Water => "water",
            Self::Tent => "inner tent",
            Self::NightCovers => "night covers",
        }
    }

    fn is_in(self, scenario: &Scenario) -> bool {
        match self {
            Self::Water => scenario.water.present,
            Self::Tent => scenario.tent.present,
            Self::NightCovers => {
                scenario.night_cover.present || (scenario.tent.present && scenario.tent.night_cover.present)
            }
        }
    }
}

/// When the mains fail, and for how long.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CutAt {
    /// Hour of the season with which it begins, counted from 0; behind the season its last hour.
    pub start: usize,
    /// Hours without mains, [`POWER_CUT_HOURS`] at most.
    pub hours: usize,
}

impl CutAt {
    /// The power cut that a study asks for; a start that its season lacks is the coldest twelve hours.
    ///
    /// # Errors
    /// As [`SeasonHours::find`].
    pub fn of(study: &Study, climate: &Climate) -> Result<Self, RunError> {
        let hours = SeasonHours::find(&study.season, climate)?;
        let of_season = || (0..hours.len()).map(|k| &climate.hours[hours.record(k)]);
        let named = match study.hard_night.cut_starts {
            CutStarts::Coldest => None,
            // The weather names an hour by its end.
            CutStarts::At { month, day, hour } => {
                of_season().position(|h| (h.month, h.day, h.hour) == (month, day, hour + 1))
            }
        };
        let coldest = || coldest_spell_start(&of_season().map(|h| h.outdoor_c).collect::<Vec<_>>());
        Ok(Self { start: named.unwrap_or_else(coldest), hours: study.hard_night.cut_hours as usize })
    }
}

/// A power cut as described or with a measure taken away.
#[derive(Debug, Clone, PartialEq)]
pub struct CutCourse {
    /// What is taken away; none as described.
    pub without: Option<Measure>,
    /// What happens.
    pub course: Course,
    /// What would happen if the mains stayed away for [`POWER_CUT_HOURS`]: how long each limit is kept.
    pub unbroken: Course,
}

/// As JSON: the times to the limits without end, the lowest air and trays with the mains back, and the recovery.
impl Serialize for CutCourse {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Keys<'a> {
            without: Option<Measure>,
            #[serde(flatten)]
            times: &'a PowerCutTimes,
            water_to_freezing_h: Hold,
            air_min_c: Option<f64>,
            trays_min_c: Option<f64>,
            recovery_h: Hold,
        }
        let keys = Keys {
            without: self.without,
            times: &self.unbroken.times,
            water_to_freezing_h: self.unbroken.water_to_freezing_h,
            air_min_c: self.course.air_min_c(),
            trays_min_c: self.course.trays_min_c(),
            recovery_h: self.course.recovery_h,
        };
        keys.serialize(serializer)
    }
}

/// The power cut that a study asks for.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AskedCut {
    /// End of the first hour without mains.
    pub starts_at: HourStamp,
    /// Hour of the season with which it begins, counted from 0.
    #[serde(skip)]
    pub start: usize,
    /// Hours without mains.
    pub hours: usize,
    /// Temperature outdoors hour by hour, as long as the longest course, °C.
    #[serde(skip)]
    pub outdoor_c: Vec<f64>,
    /// As described, then without each measure.
    pub courses: Vec<CutCourse>,
}

/// Follows the power cut that a study asks for.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn asked_cut(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &dyn Fn() -> bool,
) -> Result<AskedCut, RunError> {
    let at = CutAt::of(study, climate)?;
    let season = SeasonHours::find(&study.season, climate)?;
    let courses = courses(study, scenario, climate, catalogue, at, cancelled)?;
    let longest = courses.iter().map(|c| c.course.air_c.len()).max().unwrap_or(0);
    let hour = |k: usize| &climate.hours[season.record(at.start + k)];
    Ok(AskedCut {
        starts_at: HourStamp::of(hour(0)),
        start: at.start,
        hours: at.hours,
        outdoor_c: (0..longest).map(|k| hour(k).outdoor_c).collect(),
        courses,
    })
}

/// The power cut as described, then without each measure that the scenario has. `cancelled` is asked once per
/// simulated day.
///
/// Water and night covers are taken away in the moment of the failure, so that the house begins as warm. Without its
/// tent the house is another one: it is run through the season with its air held at the first heater's setpoint by
/// unlimited heat, so that the crop begins as warm; the rated heater then has to catch up.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn courses(
    study: &Study,
    scenario: &Scenario,
    climate: &Climate,
    catalogue: &Catalogue,
    at: CutAt,
    cancelled: &dyn Fn() -> bool,
) -> Result<Vec<CutCourse>, RunError> {
    let hours = at.hours.min(POWER_CUT_HOURS);
    let removable = Measure::ALL.into_iter().filter(|measure| measure.is_in(scenario));
    let mut all = with_season(study, scenario, climate, catalogue, RunOptions::default(), |season, catalogue| {
        let state = season.state_at(at.start, cancelled)?;
        let mut all = vec![both(season, None, scenario, season.plan, &state, (at.start, hours))?];
        for measure in removable.clone() {
            let (fewer, plan, state) = match measure {
                Measure::Tent => continue,
                Measure::Water => without_vessels(scenario, catalogue, season.plan, &state)?,
                Measure::NightCovers => {
                    let bare = without_covers(scenario);
                    let plan = Plan::new(&bare, catalogue)?;
                    (bare, plan, state)
                }
            };
            all.push(both(season, Some(measure), &fewer, &plan, &state, (at.start, hours))?);
        }
        Ok(all)
    })?;
    if Measure::Tent.is_in(scenario) {
        let open = without_tent(scenario);
        let options = RunOptions { unlimited_heat: true, ..RunOptions::default() };
        let course = with_season(study, &open, climate, catalogue, options, |season, _| {
            let state = season.state_at(at.start, cancelled)?;
            both(season, Some(Measure::Tent), &open, season.plan, &state, (at.start, hours))
        })?;
        let place = all.iter().position(|c| c.without == Some(Measure::NightCovers)).unwrap_or(all.len());
        all.insert(place, course);
    }
    Ok(all)
}

/// The cut of so many hours from an hour of the season on, and the same without end.
fn both(
    season: &Season,
    without: Option<Measure>,
    scenario: &Scenario,
    plan: &Plan,
    state: &State,
    (start, hours): (usize, usize),
) -> Result<CutCourse, RunError> {
    Ok(CutCourse {
        without,
        course: season.cut(scenario, plan, state, start, hours)?,
        unbroken: season.cut(scenario, plan, state, start, POWER_CUT_HOURS)?,
    })
}

fn without_covers(scenario: &Scenario) -> Scenario {
    let mut bare = scenario.clone();
    bare.night_cover.present = false;
    bare.tent.night_cover.present = false;
    bare
}

/// The same house without its tent; a mat, which belongs to a tent, becomes a heater of the air that the crop wants.
fn without_tent(scenario: &Scenario) -> Scenario {
    let mut open = scenario.clone();
    open.tent.present = false;
    for heater in [&mut open.heater, &mut open.standby] {
        heater.zone = Zone::House;
        if heater.target == HeatTarget::Bench {
            heater.target = HeatTarget::Air;
            heater.setpoint_day_c = heater.setpoint_day_c.map(|_| scenario.crop.wanted_air_c);
            heater.setpoint_night_c = heater.setpoint_night_c.map(|_| scenario.crop.wanted_air_c);
        }
    }
    open
}
