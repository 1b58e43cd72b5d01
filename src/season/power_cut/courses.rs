//! A power cut at any hour, with each measure taken away in turn: what each is worth when the mains fail.

use super::{Course, without_vessels};
use crate::model::{Catalogue, HeatTarget, Scenario, Study, Zone};
use crate::season::error::RunError;
use crate::season::plan::Plan;
use crate::season::result::POWER_CUT_HOURS;
use crate::season::run::{RunOptions, with_season};
use crate::weather::Climate;

/// Something that holds the warmth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
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

/// A power cut as described or with a measure taken away.
#[derive(Debug, Clone, PartialEq)]
pub struct CutCourse {
    /// What is taken away; none as described.
    pub without: Option<Measure>,
    /// What happens.
    pub course: Course,
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
        let course = season.cut(scenario, season.plan, &state, at.start, hours)?;
        let mut all = vec![CutCourse { without: None, course }];
        for measure in removable.clone() {
            let course = match measure {
                Measure::Tent => continue,
                Measure::Water => {
                    let (dry, plan, state) = without_vessels(scenario, catalogue, season.plan, &state)?;
                    season.cut(&dry, &plan, &state, at.start, hours)?
                }
                Measure::NightCovers => {
                    let bare = without_covers(scenario);
                    season.cut(&bare, &Plan::new(&bare, catalogue)?, &state, at.start, hours)?
                }
            };
            all.push(CutCourse { without: Some(measure), course });
        }
        Ok(all)
    })?;
    if Measure::Tent.is_in(scenario) {
        let open = without_tent(scenario);
        let options = RunOptions { unlimited_heat: true, ..RunOptions::default() };
        let course = with_season(study, &open, climate, catalogue, options, |season, _| {
            season.cut(&open, season.plan, &season.state_at(at.start, cancelled)?, at.start, hours)
        })?;
        let place = all.iter().position(|c| c.without == Some(Measure::NightCovers)).unwrap_or(all.len());
        all.insert(place, CutCourse { without: Some(Measure::Tent), course });
    }
    Ok(all)
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
