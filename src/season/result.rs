//! What a season run gives: hour by hour, and as a summary whose field names are the keys of the JSON output.

use super::airing::{AirAdvice, AirMonth};
use super::buying::Buying;
use super::damp::{DampFigures, DampSeries};
use super::fuel_calendar::FuelCalendar;
use super::record::Money;
use super::steady::DesignBalance;
use super::worst_spell::WorstSpell;
use crate::weather::ClimateHour;
use serde::{Serialize, Serializer};

/// The end of an hour in a year without a number: month, day and hour ending, local standard time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct HourStamp {
    /// 1 to 12.
    pub month: u32,
    /// 1 to 31.
    pub day: u32,
    /// 1 to 24.
    pub hour: u32,
}

impl HourStamp {
    /// The end of this hour of the weather.
    #[must_use]
    pub fn of(hour: &ClimateHour) -> Self {
        Self { month: hour.month, day: hour.day, hour: hour.hour }
    }
}

impl std::fmt::Display for HourStamp {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:02}-{:02} {:02}:00", self.month, self.day, self.hour)
    }
}

impl Serialize for HourStamp {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// How long something holds in a power cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hold {
    /// Hours until the limit is reached; 0 when it is already broken.
    Hours(f64),
    /// Longer than the 120 hours that are looked at.
    Beyond,
    /// There is nothing to hold, such as trays without medium.
    NotApplicable,
}

/// Hours that a power cut is followed for.
pub const POWER_CUT_HOURS: usize = 120;

impl Serialize for Hold {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Hours(h) => serializer.serialize_f64(*h),
            Self::Beyond => serializer.serialize_str("more than 120"),
            Self::NotApplicable => serializer.serialize_none(),
        }
    }
}

/// Times from the start of a power cut.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PowerCutTimes {
    /// Air of the crop's zone to the crop limit.
    pub air_to_crop_limit_h: Hold,
    /// Air of the crop's zone to 0 °C.
    pub air_to_freezing_h: Hold,
    /// Trays to the crop limit.
    pub trays_to_crop_limit_h: Hold,
    /// Trays to 0 °C.
    pub trays_to_freezing_h: Hold,
}

/// A power cut in the coldest twelve hours.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PowerCut {
    /// End of the first hour without mains.
    pub starts_at: HourStamp,
    /// With everything as described.
    pub with_water: PowerCutTimes,
    /// The same with the vessels taken away.
    pub without_water: PowerCutTimes,
    /// Until the first water begins to freeze; not applicable without water.
    pub water_to_freezing_h: Hold,
    /// Air of the crop's zone hour by hour from the start, °C, with everything as described.
    #[serde(skip)]
    pub air_c: Vec<f64>,
    /// Trays hour by hour, °C; empty without medium.
    #[serde(skip)]
    pub trays_c: Vec<f64>,
}

/// Hour by hour; every column has one value per hour of the season, each the mean over its hour.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HourlySeries {
    /// Index of the hour in the weather year.
    pub record: Vec<usize>,
    /// Outdoor air, °C.
    pub outdoor_c: Vec<f64>,
    /// House air, °C.
    pub house_air_c: Vec<f64>,
    /// Floor and benches of the house, °C.
    pub house_floor_c: Vec<f64>,
    /// Water in the house, °C; empty without vessels.
    pub house_water_c: Vec<f64>,
    /// Share of the house's water that is ice; empty without vessels.
    pub house_ice_share: Vec<f64>,
    /// Tent air, °C; empty without a tent.
    pub tent_air_c: Vec<f64>,
    /// Floor and benches of the tent, °C; empty without a tent.
    pub tent_floor_c: Vec<f64>,
    /// Water in the tent, °C; empty without vessels there.
    pub tent_water_c: Vec<f64>,
    /// Share of the tent's water that is ice; empty without vessels there.
    pub tent_ice_share: Vec<f64>,
    /// Setpoint of the first heater, °C; none while off.
    pub setpoint_c: Vec<Option<f64>>,
    /// Heat given by the first heater, W.
    pub heater_w: Vec<f64>,
    /// Heat given by the standby heater, W.
    pub standby_w: Vec<f64>,
    /// Sun that stays in house and tent, vapour included, W.
    pub sun_w: Vec<f64>,
    /// Sun that leaves as vapour, W.
    pub vapour_w: Vec<f64>,
    /// Loss through the skin, W, positive outwards. So are the following.
    pub skin_loss_w: Vec<f64>,
    /// Loss by air leakage, W.
    pub leakage_loss_w: Vec<f64>,
    /// Loss through open vents and fan, W.
    pub vent_loss_w: Vec<f64>,
    /// Loss to ground, edge and core, W.
    pub ground_loss_w: Vec<f64>,
    /// Loss through a lean-to's party wall, W.
    pub party_wall_loss_w: Vec<f64>,
    /// Heat from the tent to the house through wall, base and air, W; empty without a tent.
    pub tent_loss_w: Vec<f64>,
    /// Heat from the water in the house to its air, W; empty without vessels there.
    pub house_water_heat_w: Vec<f64>,
    /// Heat from the water in the tent to its air, W; empty without vessels there.
    pub tent_water_heat_w: Vec<f64>,
    /// Heat taken up by air, floor, benches and water, W.
    pub store_change_w: Vec<f64>,
    /// Air that leakage, vents and fan change with outdoors, m³/h.
    pub air_exchange_m3_per_h: Vec<f64>,
    /// Air that the tent changes with the house, m³/h; empty without a tent.
    pub tent_exchange_m3_per_h: Vec<f64>,
    /// Share that the vents stand open.
    pub vent_opening: Vec<f64>,
    /// Share of the fan's full speed.
    pub fan_share: Vec<f64>,
    /// Money for the hour's energy of this scenario.
    pub cost: Vec<f64>,
    /// Heat of the degree-hour baseline, W.
    pub baseline_w: Vec<f64>,
    /// Money for the hour's energy of the baseline.
    pub baseline_cost: Vec<f64>,
    /// Humidity, wet covers and mist.
    pub damp: DampSeries,
}

/// The season in figures. Field names are the JSON keys.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Summary {
    /// Name of the scenario.
    pub name: String,
    /// First hour.
    pub season_start: HourStamp,
    /// Last hour.
    pub season_end: HourStamp,
    /// Hours of the season.
    pub season_hours: usize,
    /// Heat given by all heaters, kWh.
    pub heat_delivered_kwh: f64,
    /// Energy bought for heat, kWh gross, fans included.
    pub energy_bought_kwh: f64,
    /// Fuel of the first heater in the unit it is bought in.
    pub fuel_quantity: f64,
    /// That unit; empty without a heater.
    pub fuel_unit: String,
    /// Name of that fuel; empty without a heater.
    pub fuel_name: String,
    /// Fuel of the standby heater in its unit.
    pub standby_fuel_quantity: f64,
    /// That unit; empty without a standby heater.
    pub standby_fuel_unit: String,
    /// Electricity of fans, kWh.
    pub fan_kwh: f64,
    /// Money: fuel, fans, standing charge. None when a price is missing.
    pub cost: Option<f64>,
    /// Of that, standing charges.
    pub standing_charges: f64,
    /// kg CO₂; none where a factor is missing.
    pub co2_kg: Option<f64>,
    /// Largest hourly mean of all heaters, W.
    pub peak_heater_w: f64,
    /// Its first hour; none without heat.
    pub peak_heater_at: Option<HourStamp>,
    /// Rated output of the first heater, W.
    pub rated_heater_w: f64,
    /// Design load at the 99 % outdoor temperature of the year, W.
    pub design_load_w_99: f64,
    /// Design load at the 99.6 % outdoor temperature of the year, W.
    pub design_load_w_99_6: f64,
    /// Design load at the coldest hour of the year, W.
    pub design_load_w_coldest: f64,
    /// Rated output less the design load at 99.6 %, W; negative where the heater is too small, none without one.
    pub heater_margin_w_99_6: Option<f64>,
    /// Rated output less the first heater's largest hourly mean, W: zero where it ran full; none without a heater.
    pub heater_margin_w_largest_hour: Option<f64>,
    /// Smallest size on sale that gives the design load at 99.6 % with a tenth over, W; none without a load.
    pub next_heater_w: Option<f64>,
    /// That 99 % temperature, °C.
    pub design_outdoor_c_99: f64,
    /// That 99.6 % temperature, °C.
    pub design_outdoor_c_99_6: f64,
    /// Coldest hour of the year, °C.
    pub coldest_outdoor_c: f64,
    /// When it is.
    pub coldest_outdoor_at: HourStamp,
    /// Hours below setpoint by more than 0.1 K.
    pub hours_below_setpoint: usize,
    /// Degree-hours below setpoint, K·h.
    pub degree_hours_below_setpoint_kh: f64,
    /// Hours below the crop limit.
    pub hours_below_crop_limit: usize,
    /// Degree-hours below the crop limit, K·h.
    pub degree_hours_below_crop_limit_kh: f64,
    /// Crop limit, °C.
    pub crop_limit_c: f64,
    /// Lowest hourly mean of the crop's zone air, °C.
    pub crop_zone_min_c: f64,
    /// Its first hour; none while held at setpoint.
    pub crop_zone_min_at: Option<HourStamp>,
    /// Lowest house air, °C.
    pub house_min_c: f64,
    /// Lowest water, °C; none without water.
    pub water_min_c: Option<f64>,
    /// Largest share of ice in any store; none without water.
    pub water_ice_share_max: Option<f64>,
    /// Degree-hours of the season below the baseline's temperature, K·h.
    pub degree_hours_kh: f64,
    /// Baseline temperature, °C.
    pub baseline_setpoint_c: f64,
    /// Heat-loss coefficient of the baseline, W/K.
    pub baseline_ua_w_per_k: f64,
    /// Heat of the baseline, kWh.
    pub baseline_heat_kwh: f64,
    /// Money of the baseline; none without heater or price.
    pub baseline_cost: Option<f64>,
    /// Lower end of the degree-hour bracket, kWh; none for a heater with off hours or no heater.
    pub degree_hour_bracket_low_kwh: Option<f64>,
    /// Upper end of the bracket, kWh.
    pub degree_hour_bracket_high_kwh: Option<f64>,
    /// Why the season's heat may lie outside the bracket; empty if it should not.
    pub bracket_note: String,
    /// Sun that stays, kWh, vapour included.
    pub sun_kept_kwh: f64,
    /// Sun that leaves as vapour, kWh.
    pub vapour_loss_kwh: f64,
    /// Loss to ground, kWh.
    pub ground_kwh: f64,
    /// Loss through the skin, kWh.
    pub skin_loss_kwh: f64,
    /// Loss by leakage, kWh.
    pub leakage_loss_kwh: f64,
    /// Loss through vents, kWh.
    pub vent_loss_kwh: f64,
    /// Loss through the party wall, kWh.
    pub party_wall_kwh: f64,
    /// Heat left in the stores, kWh.
    pub store_change_kwh: f64,
    /// Residual of the books per throughput.
    pub books_closure: f64,
    /// Hours with house air above 35 °C.
    pub hours_above_35_c: usize,
    /// Humidity, wet covers and mist.
    #[serde(flatten)]
    pub damp: DampFigures,
    /// Overheated, wet and humid hours, month by month.
    pub air_by_month: Vec<AirMonth>,
    /// The sunniest mild hour, and the vents for it; none in a season without sun.
    pub air_advice: Option<AirAdvice>,
    /// Where the scenario comes nearest to failing.
    pub worst_spell: WorstSpell,
    /// Power cut in the coldest spell.
    pub power_cut: PowerCut,
}

/// Heat-loss figures of the house as described, for the editor's sections.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ShellFigures {
    /// Floor of the house, m².
    pub floor_m2: f64,
    /// Volume of the house, m³.
    pub volume_m3: f64,
    /// Skin, handbook wind, W/K.
    pub ua_skin_w_per_k: f64,
    /// Mean U of the skin, W/(m²·K).
    pub u_skin_w_per_m2k: f64,
    /// Leakage at design weather, W/K.
    pub ua_leakage_w_per_k: f64,
    /// Edge and core, W/K.
    pub ua_ground_w_per_k: f64,
    /// Tent wall and top, base and air, W/K; zero without a tent.
    pub ua_tent_w_per_k: f64,
    /// U of the tent wall, W/(m²·K).
    pub u_tent_w_per_m2k: f64,
    /// Water, kWh per kelvin.
    pub water_kwh_per_k: f64,
    /// Heat of freezing all water, kWh.
    pub water_freezing_kwh: f64,
    /// Bench under trays, m².
    pub bench_m2: f64,
    /// Whole trays that it holds, each turned the better way; zero for an unknown kind of tray.
    pub trays: u32,
    /// Plants in them.
    pub plants: u32,
}

/// All of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct ScenarioRun {
    /// The season in figures.
    pub summary: Summary,
    /// Hour by hour.
    pub hours: HourlySeries,
    /// Heat-loss figures.
    pub shell: ShellFigures,
    /// What it costs to buy.
    pub buying: Buying,
    /// When its stored fuel runs out; none for what comes by wire or pipe.
    pub fuel_calendar: Option<FuelCalendar>,
    /// Energy and money by taker and price.
    pub money: Money,
    /// The house in the design weather of 99.6 %.
    pub design: DesignBalance,
}
