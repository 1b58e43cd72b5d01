//! Puts a season into figures.

use super::airing::{AirAdvice, air_months};
use super::baseline::Baseline;
use super::damp::DampFigures;
use super::essentials::Essentials;
use super::house_model::HouseModel;
use super::openings::Openings;
use super::plan::{Plan, actual_zone};
use super::result::{HourStamp, HourlySeries, PowerCut, ShellFigures, Summary};
use super::run::{Cut, Passed};
use super::sizing::heater_size_w;
use super::steady::{Bracket, DesignBalance, design_balance};
use super::thermostats::Heating;
use super::worst_spell::Sought;
use crate::geometry::trays::{TrayFit, trays_on};
use crate::model::{Catalogue, HeatTarget, Scenario, Study, TentOpening, Zone};
use crate::physics::stores::{HEAT_OF_FUSION, WATER_SPECIFIC_HEAT};
use crate::units::kwh_from_joules;
use crate::weather::Climate;

/// How far below its setpoint an hour may be without counting as short, K.
pub const SETPOINT_TOLERANCE_K: f64 = 0.1;
/// House air above this counts as overheated, °C.
pub const OVERHEATED_C: f64 = 35.0;

/// What a summary is made from, besides the hours.
pub(super) struct Context<'a> {
    pub study: &'a Study,
    pub scenario: &'a Scenario,
    pub climate: &'a Climate,
    pub plan: &'a Plan,
    pub heating: &'a Heating<'a>,
    pub baseline: Baseline,
}

impl Context<'_> {
    fn stamp(&self, record: usize) -> HourStamp {
        HourStamp::of(&self.climate.hours[record])
    }
}

pub(super) fn summarise(
    context: &Context,
    model: &mut HouseModel,
    passed: &Passed,
    (bracket, design): (Option<Bracket>, &[DesignBalance; 3]),
    damp: DampFigures,
    cut: &Cut,
) -> Summary {
    let s = &passed.series;
    let scenario = context.scenario;
    let load_w = design.map(|balance| balance.load_w);
    let peak = Peak::of(s);
    let Essentials { heat_kwh, energy_kwh, cost, bought, crop, held } = Essentials::of(context, passed);
    let stamp_at = |k: usize| context.stamp(s.record[k]);
    Summary {
        name: scenario.name.clone(),
        season_start: stamp_at(0),
        season_end: stamp_at(s.record.len() - 1),
        season_hours: s.record.len(),
        heat_delivered_kwh: heat_kwh,
        energy_bought_kwh: energy_kwh,
        fuel_quantity: bought.quantity[0],
        fuel_unit: bought.unit[0].clone(),
        fuel_name: bought.name.clone(),
        standby_fuel_quantity: bought.quantity[1],
        standby_fuel_unit: bought.unit[1].clone(),
        fan_kwh: passed.money.fan_kwh,
        cost,
        standing_charges: bought.standing_charges,
        co2_kg: bought.co2_kg,
        peak_heater_w: peak.w,
        peak_heater_at: peak.hour.map(stamp_at),
        rated_heater_w: if scenario.heater.present { scenario.heater.rated_w } else { 0.0 },
        design_load_w_99: load_w[0],
        design_load_w_99_6: load_w[1],
        design_load_w_coldest: load_w[2],
        heater_margin_w_99_6: margin_w(scenario, load_w[1]),
        heater_margin_w_largest_hour: margin_w(scenario, highest(&s.heater_w).unwrap_or(0.0)),
        next_heater_w: heater_size_w(load_w[1]),
        design_outdoor_c_99: context.climate.outdoor.at_99_c,
        design_outdoor_c_99_6: context.climate.outdoor.at_99_6_c,
        coldest_outdoor_c: context.climate.outdoor.coldest_c,
        coldest_outdoor_at: context.stamp(context.climate.outdoor.coldest_record),
        hours_below_setpoint: held.hours_short,
        degree_hours_below_setpoint_kh: held.degree_hours,
        hours_below_crop_limit: crop.hours_short,
        degree_hours_below_crop_limit_kh: crop.degree_hours,
        crop_limit_c: scenario.crop.limit_c,
        crop_zone_min_c: crop.min_c,
        crop_zone_min_at: crop.min_at.map(stamp_at),
        house_min_c: lowest(&s.house_air_c).unwrap_or(0.0),
        water_min_c: lowest(&s.house_water_c).into_iter().chain(lowest(&s.tent_water_c)).reduce(f64::min),
        water_ice_share_max: highest(&s.house_ice_share).into_iter().chain(highest(&s.tent_ice_share)).reduce(f64::max),
        degree_hours_kh: s.outdoor_c.iter().map(|t| (context.baseline.setpoint_c - t).max(0.0)).sum(),
        baseline_setpoint_c: context.baseline.setpoint_c,
        baseline_ua_w_per_k: context.baseline.ua_w_per_k,
        baseline_heat_kwh: kwh(&s.baseline_w),
        baseline_cost: passed.money.baseline_cost,
        degree_hour_bracket_low_kwh: bracket.map(|b| b.low_kwh),
        degree_hour_bracket_high_kwh: bracket.map(|b| b.high_kwh),
        bracket_note: bracket_note(scenario),
        sun_kept_kwh: kwh(&s.sun_w),
        vapour_loss_kwh: kwh(&s.vapour_w),
        ground_kwh: kwh(&s.ground_loss_w),
        skin_loss_kwh: kwh(&s.skin_loss_w),
        leakage_loss_kwh: kwh(&s.leakage_loss_w),
        vent_loss_kwh: kwh(&s.vent_loss_w),
        party_wall_kwh: kwh(&s.party_wall_loss_w),
        store_change_kwh: kwh(&s.store_change_w),
        books_closure: closure(s, passed.throughput_wh),
        hours_above_35_c: s.house_air_c.iter().filter(|t| **t > OVERHEATED_C).count(),
        damp,
        air_by_month: air_months(s, context.climate, actual_zone(scenario.crop.zone, scenario) == Zone::Tent),
        air_advice: AirAdvice::of(model, scenario, s, &passed.drives, context.climate),
        worst_spell: worst_spell(context, s).find(stamp_at),
        power_cut: PowerCut {
            starts_at: stamp_at(passed.cut_hour),
            with_water: cut.with_water.times,
            without_water: cut.without_water.times,
            water_to_freezing_h: cut.with_water.water_to_freezing_h,
            air_c: cut.with_water.air_c.clone(),
            trays_c: cut.with_water.trays_c.clone(),
        },
    }
}

/// Residual of the books per throughput: what came in less what went out and what is stored.
fn closure(s: &HourlySeries, throughput_wh: f64) -> f64 {
    let sum = |column: &[f64]| column.iter().sum::<f64>();
    let came = sum(&s.heater_w) + sum(&s.standby_w) + sum(&s.sun_w);
    let left = sum(&s.vapour_w)
        + sum(&s.skin_loss_w)
        + sum(&s.leakage_loss_w)
        + sum(&s.vent_loss_w)
        + sum(&s.ground_loss_w)
        + sum(&s.party_wall_loss_w);
    if throughput_wh > 0.0 { (came - left - sum(&s.store_change_w)).abs() / throughput_wh } else { 0.0 }
}

fn bracket_note(scenario: &Scenario) -> String {
    if !scenario.heater.present {
        return "No heater, so there is no load to bracket".to_owned();
    }
    let (day, night) = (scenario.heater.setpoint_day_c, scenario.heater.setpoint_night_c);
    if day.is_none() || night.is_none() {
        return "The heater has hours in which it is off, so there is no bracket".to_owned();
    }
    let mut notes = Vec::new();
    if scenario.water.present {
        notes.push("water carries heat over several days, so the season's heat can lie below the bracket");
    }
    if day != night {
        notes.push("stores slow the setback, so the season's heat can lie above the bracket");
    }
    let by_the_sun = scenario.tent.present && scenario.tent.opening == TentOpening::ByDay;
    if by_the_sun || scenario.night_cover.present || (scenario.tent.present && scenario.tent.night_cover.present) {
        notes.push("what opens or closes with the sun follows the hour, so the season's heat can lie a little below the bracket");
    }
    if scenario.standby.present || scenario.heater.rated_w < 1.0 {
        notes.push("a second heater is not in the bracket");
    }
    notes.join("; ")
}

pub(super) fn kwh(column_w: &[f64]) -> f64 {
    column_w.iter().sum::<f64>() / 1000.0
}

pub(super) fn lowest(column: &[f64]) -> Option<f64> {
    column.iter().copied().reduce(f64::min)
}

fn highest(column: &[f64]) -> Option<f64> {
    column.iter().copied().reduce(f64::max)
}

/// The house in the design weather of 99 %, of 99.6 %, and of the year's coldest hour.
pub(super) fn design_balances(context: &Context, model: &mut HouseModel) -> [DesignBalance; 3] {
    let outdoor = &context.climate.outdoor;
    let ground_c = context.climate.deep_ground_min_c;
    [outdoor.at_99_c, outdoor.at_99_6_c, outdoor.coldest_c]
        .map(|outdoor_c| design_balance(model, context.heating, context.scenario, outdoor_c, ground_c))
}

/// How well the first heater held what it senses. Degree-hours are counted in the hours that are short.
pub(super) struct Held {
    pub hours_short: usize,
    pub degree_hours: f64,
}

impl Held {
    pub fn of(context: &Context, s: &HourlySeries) -> Self {
        let mut held = Self { hours_short: 0, degree_hours: 0.0 };
        let Some(sensed) = sensed_column(context, s) else { return held };
        for (t_c, setpoint_c) in sensed.iter().zip(&s.setpoint_c) {
            if let Some(setpoint_c) = setpoint_c
                && *t_c < setpoint_c - SETPOINT_TOLERANCE_K
            {
                held.hours_short += 1;
                held.degree_hours += setpoint_c - t_c;
            }
        }
        held
    }
}

/// What the first heater senses, hour by hour.
fn sensed_column<'a>(context: &Context, s: &'a HourlySeries) -> Option<&'a [f64]> {
    let (heater, _) = context.heating.first()?;
    let in_tent = actual_zone(heater.zone, context.scenario) == Zone::Tent;
    Some(match (heater.target, in_tent) {
        (HeatTarget::Air, false) => &s.house_air_c,
        (HeatTarget::Air, true) => &s.tent_air_c,
        (HeatTarget::Bench, false) => &s.house_floor_c,
        (HeatTarget::Bench, true) => &s.tent_floor_c,
        (HeatTarget::Water, false) => &s.house_water_c,
        (HeatTarget::Water, true) => &s.tent_water_c,
    })
}

fn worst_spell<'a>(context: &'a Context, s: &'a HourlySeries) -> Sought<'a> {
    Sought {
        plan: context.plan,
        series: s,
        crop_air_c: crop_air(context, s),
        sensed_c: sensed_column(context, s),
        rated_w: context.scenario.heater.rated_w,
        limit_c: context.scenario.crop.limit_c,
    }
}

/// Air of the crop's zone, hour by hour.
pub(super) fn crop_air<'a>(context: &Context, s: &'a HourlySeries) -> &'a [f64] {
    let in_tent = actual_zone(context.scenario.crop.zone, context.scenario) == Zone::Tent;
    if in_tent { &s.tent_air_c } else { &s.house_air_c }
}

/// What the first heater's rated output has over a load, W; none without a heater.
fn margin_w(scenario: &Scenario, load_w: f64) -> Option<f64> {
    scenario.heater.present.then_some(scenario.heater.rated_w - load_w)
}

struct Peak {
    w: f64,
    hour: Option<usize>,
}

impl Peak {
    fn of(s: &HourlySeries) -> Self {
        let mut peak = Self { w: 0.0, hour: None };
        for (k, (first, standby)) in s.heater_w.iter().zip(&s.standby_w).enumerate() {
            if first + standby > peak.w {
                peak = Self { w: first + standby, hour: Some(k) };
            }
        }
        peak
    }
}

/// Heat-loss figures of a planned scenario at handbook weather.
#[must_use]
pub fn shell_figures(scenario: &Scenario, plan: &Plan, openings: &Openings, catalogue: &Catalogue) -> ShellFigures {
    let trays = trays(scenario, plan, catalogue);
    let ua_skin: f64 = plan.skin.iter().map(|g| g.area_m2 / g.resistance).sum();
    let water_kg = plan.house.water_kg + plan.tent.as_ref().map_or(0.0, |t| t.zone.water_kg);
    let tent = plan.tent.as_ref();
    let tent_wall = tent.map_or(0.0, |t| t.measures.wall_and_top_m2 / t.resistance + t.exchange_w_per_k);
    ShellFigures {
        floor_m2: plan.shell.floor_m2,
        volume_m3: plan.shell.volume_m3,
        ua_skin_w_per_k: ua_skin,
        u_skin_w_per_m2k: ua_skin / plan.shell.surface_m2().max(f64::MIN_POSITIVE),
        ua_leakage_w_per_k: openings.design_leakage_w_per_k(),
        ua_ground_w_per_k: plan.edge_w_per_k + plan.core_w_per_k + tent.map_or(0.0, |t| t.core_w_per_k),
        ua_tent_w_per_k: tent_wall + tent.map_or(0.0, |t| t.base_w_per_k),
        u_tent_w_per_m2k: tent.map_or(0.0, |t| 1.0 / t.resistance),
        water_kwh_per_k: kwh_from_joules(water_kg * WATER_SPECIFIC_HEAT),
        water_freezing_kwh: kwh_from_joules(water_kg * HEAT_OF_FUSION),
        bench_m2: bench_m2(scenario, plan),
        trays,
        plants: trays * scenario.bench.cells,
    }
}

/// Whole trays on the benches, or on the base of a tent that hangs round the bench.
fn trays(scenario: &Scenario, plan: &Plan, catalogue: &Catalogue) -> u32 {
    let bench = &scenario.bench;
    let Some(tray) = catalogue.tray(&bench.tray).filter(|_| bench.present) else { return 0 };
    match &plan.tent {
        Some(tent) if bench.zone == Zone::Tent && !tent.measures.stands_on_floor => {
            TrayFit::of(scenario.tent.length_m, scenario.tent.width_m, tray).best()
        }
        _ => trays_on(bench, tray),
    }
}

/// Bench under trays: the tent's base if it hangs round the bench, the benches elsewhere.
fn bench_m2(scenario: &Scenario, plan: &Plan) -> f64 {
    let bench = &scenario.bench;
    if !bench.present {
        return 0.0;
    }
    match &plan.tent {
        Some(tent) if bench.zone == Zone::Tent && !tent.measures.stands_on_floor => tent.measures.base_m2,
        _ => f64::from(bench.count) * bench.length_m * bench.width_m,
    }
}
